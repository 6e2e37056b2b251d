import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const found = (text: string) => findingOf(text, 'water.heater-recovery');
const heater = (keys: string, rest = '') =>
  plan(`water: {cold: 10 degC, heater: {kind: storage, ${keys}}}\n${rest}`);
const tenL = 'holds: 10 L, temperature: 60 degC';

/** 10 L of 999.7 kg/m³ by 50 K at 4182 J/(kg K) (35 °C): 2.0902 MJ, 581 W for an hour. */
test.each([
  { power: '1.5 kW', seconds: 1393, verdict: 'pass' },
  { power: '582 W', seconds: 3592, verdict: 'pass' },
  { power: '579 W', seconds: 3610, verdict: 'warn' },
])('$power: $seconds s, $verdict', async ({ power, seconds, verdict }) => {
  const finding = await found(heater(`${tenL}, power: ${power}`));
  expect(finding.verdict).toBe(verdict);
  expect(Math.abs(measured(finding) - seconds)).toBeLessThan(3);
});

// 580.6 W are enough, and 580 W, as they would be rounded, are not.
test('the remedy is a power that is enough', async () => {
  expect(words((await found(heater(`${tenL}, power: 200 W`))).remedy)).toContain('A heater of 581 W');
});

test('a plan may wait longer', async () => {
  const own = 'rules: {water.heater-recovery: {limit: 3 h, reason: one of us showers in the morning}}';
  expect((await found(heater(`${tenL}, power: 200 W`, own))).verdict).toBe('pass');
});

describe('all hot water of a day', () => {
  const habits = (litres: string) =>
    `people: {sleepers: [{}]}\nliving: {litres_per_person_day: 200 L, hot_litres_per_person_day: ${litres}}`;

  // 100 L are ten times as much: 20.9 MJ, and 242 W for a day.
  test.each([
    { power: '250 W', verdict: 'warn' },
    { power: '235 W', verdict: 'fail' },
  ])('100 L with $power: $verdict', async ({ power, verdict }) => {
    const finding = await found(heater(`${tenL}, power: ${power}`, habits('100 L')));
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'fail') expect(words(finding.remedy)).toContain('It takes 242 W');
  });

  test('is told in hours of the heater', async () => {
    // A tenth of the store's heat: 58 Wh.
    expect(words((await found(heater(`${tenL}, power: 1 kW`, habits('1 L')))).reason)).toContain(
      'All hot water of a day takes 58 Wh',
    );
  });
});

test('a store no warmer than the cold water needs no time', async () => {
  const finding = await found(heater('holds: 10 L, temperature: 5 degC, power: 1 kW'));
  expect(measured(finding)).toBe(0);
});

test('an instant heater has nothing to warm again', async () => {
  expect((await found(plan('water: {heater: {kind: instant}}'))).verdict).toBe('pass');
});

test.each([
  { text: plan('water: {}'), missing: ['water.heater'] },
  {
    text: heater('efficiency: 80 %'),
    missing: ['water.heater.holds', 'water.heater.temperature', 'water.heater.power'],
  },
])('missing: $missing', async ({ text, missing }) => {
  expect(await found(text)).toMatchObject({ verdict: 'not checked', missing });
});
