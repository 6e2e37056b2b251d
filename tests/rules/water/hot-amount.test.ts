import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

const found = (text: string) => findingOf(text, 'water.hot-amount');
const people = 'people: {sleepers: [{}, {}]}';

const store = (heater: string, living: string) =>
  plan(`${people}\nliving: {${living}}\nwater: {cold: 10 degC, heater: {kind: storage, ${heater}}}`);
const shower = (litres: string) =>
  `litres_per_person_day: 9 L, hot_litres_per_person_day: 0 L, showers_per_person_day: 0.5, litres_per_shower: ${litres}`;

/** 28 K above the cold to 38 °C, 50 K to 60 °C: 10 L make 10 · 22/28 = 7.857 L stirred, 10 · 50/28 = 17.857 L layered. */
describe('a store of 10 L at 60 °C', () => {
  const tenL = 'holds: 10 L, temperature: 60 degC';

  test.each([
    { litres: '7.8 L', verdict: 'pass' },
    { litres: '8 L', verdict: 'warn' },
    { litres: '18 L', verdict: 'warn' },
  ])('a shower of $litres: $verdict', async ({ litres, verdict }) => {
    const finding = await found(store(tenL, shower(litres)));
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding) * 1000).toBeCloseTo(7.857, 3);
    expect(words(finding.reason)).toMatch(/7\.9 L to (18|17\.9) L at 38 °C/);
  });

  test('between the two it depends on the layers', async () => {
    expect(words((await found(store(tenL, shower('12 L')))).reason)).toContain('stays in layers');
    expect(words((await found(store(tenL, shower('20 L')))).reason)).not.toContain('stays in layers');
  });

  // 14 L at the same ratio: 10 · 14 / 7.857 = 17.818 L
  test('the remedy is enough', async () => {
    expect(words((await found(store(tenL, shower('14 L')))).remedy)).toContain('a store of 18 L');
    expect((await found(store('holds: 17.82 L, temperature: 60 degC', shower('14 L')))).verdict).toBe('pass');
  });

  // 2 · 6 L at 60 °C are 12 · 50/28 = 21.43 L mixed, a third of it 7.143 L at a time.
  test('without showers a third of a day is drawn at once', async () => {
    const washing = (litres: string) => `litres_per_person_day: 9 L, hot_litres_per_person_day: ${litres}`;
    const finding = await found(store(tenL, washing('6 L')));
    expect(finding.verdict).toBe('pass');
    expect((finding.limit?.measure.value ?? 0) * 1000).toBeCloseTo(7.143, 3);
    expect((await found(store(tenL, washing('7 L')))).verdict).toBe('warn');
    expect(words((await found(store(tenL, washing('0 L')))).reason)).toContain('nobody uses hot water');
  });
});

// V·22/28 = 11: V = 14 L
test('exactly what is wanted is kept', async () => {
  expect((await found(store('holds: 14 L, temperature: 60 degC', shower('11 L')))).verdict).toBe('pass');
});

test('a store that is cooler than a shower warns', async () => {
  const finding = await found(store('holds: 10 L, temperature: 35 degC', shower('5 L')));
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('heated to 35 °C');
});

test('water that comes as warm as a shower needs no heater', async () => {
  const warm = plan(
    `${people}\nliving: {${shower('5 L')}}\nwater: {cold: 40 degC, heater: {kind: storage, holds: 10 L, temperature: 60 degC}}`,
  );
  expect((await found(warm)).verdict).toBe('pass');
});

describe('an instant heater', () => {
  const instant = (power: string, flow = '3 L/min') =>
    waterPlan({
      outlets: `{sink: {use: tap, flow: ${flow}, above_floor: 0 m}, cold tap: {use: tap, flow: 9 L/min}}`,
      pipes: `{hot: {from: heater, to: sink, ${wide}}}`,
      more: `heater: {kind: instant, power: ${power}}`,
    });

  // ρ c Q ΔT = 999.7 · 4195.2 · 5e-5 · 28 = 5871 W
  test.each([
    { power: '5.88 kW', verdict: 'pass' },
    { power: '5.86 kW', verdict: 'warn' },
  ])('$power for 3 L/min: $verdict', async ({ power, verdict }) => {
    const finding = await found(instant(power));
    expect(finding).toMatchObject({ verdict, subject: 'sink' });
    expect(measured(finding) * 60_000).toBeCloseTo((3 * Number.parseFloat(power)) / 5.871, 2);
  });

  test('the remedy is a power', async () => {
    expect(words((await found(instant('2 kW'))).remedy)).toContain('It takes 5,872 W');
  });

  test('without a power it is not checked', async () => {
    const text = plan('water: {heater: {kind: instant}}');
    expect(await found(text)).toMatchObject({ missing: ['water.heater.power', 'water.pipes.NAME.from'] });
  });
});

test.each([
  { text: plan('water: {}'), missing: ['water.heater'] },
  {
    text: plan('water: {heater: {kind: storage}}'),
    missing: [
      'water.heater.holds',
      'water.heater.temperature',
      'people.sleepers',
      'living.hot_litres_per_person_day',
    ],
  },
])('missing: $missing', async ({ text, missing }) => {
  expect(await found(text)).toMatchObject({ verdict: 'not checked', missing });
});
