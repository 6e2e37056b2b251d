import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { warmVan, warmVanWPerK } from '../../support/warm-van.ts';

const dayJ = 20 * warmVanWPerK * 86_400;
const fuel = (heater: string, nights = '2', tank = '75 L', rest = '') =>
  findingOf(
    warmVan({
      heat: `heater: {${heater}}`,
      living: `winter_low: 0 degC, nights_off_grid: ${nights}`,
      van: { fuel_tank: `{holds: ${tank}, fuel: diesel}` },
      rest,
    }),
    'heat.fuel',
  );

describe('diesel', () => {
  // 694.5 W · 86,400 s / (0.8 · 9.905 kWh/L) = 2.10 L a day; a quarter of the tank stays for the engine.
  test('pass', async () => {
    const finding = await fuel('heated_by: diesel');
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'diesel' });
    expect(measured(finding)).toBeCloseTo((2 * dayJ) / (0.8 * 9905 * 3.6e6), 6);
    expect(finding.limit?.measure.value).toBeCloseTo(0.05625, 9);
    expect(words(finding.reason)).toContain('2.1 L of diesel a day (at an efficiency of 80 %)');
  });

  test('its own efficiency', async () => {
    const finding = await fuel('heated_by: diesel, efficiency: 40 %');
    expect(measured(finding)).toBeCloseTo((2 * dayJ) / (0.4 * 9905 * 3.6e6), 6);
  });

  test('more than the tank gives warns; exactly that passes', async () => {
    expect((await fuel('heated_by: diesel', '30')).verdict).toBe('warn');
    const litres = (measured(await fuel('heated_by: diesel')) / 0.75) * 1000;
    expect((await fuel('heated_by: diesel', '2', `${litres} L`)).verdict).toBe('pass');
    expect((await fuel('heated_by: diesel', '2', `${litres * 0.99} L`)).verdict).toBe('warn');
  });

  test('without a tank it is not checked', async () => {
    const text = warmVan({ heat: 'heater: {heated_by: diesel}' });
    expect(await findingOf(text, 'heat.fuel')).toMatchObject({
      verdict: 'not checked',
      missing: ['van.fuel_tank', 'living.nights_off_grid'],
    });
  });
});

// 46.1 MJ/kg net, at 80 %.
test('gas is counted by mass, and left to the checks of gas', async () => {
  const finding = await fuel(
    'heated_by: gas',
    '2',
    '75 L',
    'tanks: {cylinder: {contents: propane, holds: 6 kg, mass: 7 kg}}\ngas: {stored_in: cylinders}',
  );
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'propane' });
  expect(measured(finding)).toBeCloseTo(dayJ / (0.8 * 46.1e6), 4);
  expect(await fuel('heated_by: gas')).toMatchObject({ verdict: 'not checked', missing: ['gas'] });
});

test('from the battery warns', async () => {
  const battery =
    'electrical: {voltage: 12 V, battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}}';
  const finding = await fuel('heated_by: battery', '2', '75 L', battery);
  expect(finding.verdict).toBe('warn');
  expect(measured(finding) / dayJ).toBeCloseTo(1, 4);
});

test.each([
  { by: 'mains', nights: '2', verdict: 'warn' },
  { by: 'engine', nights: '2', verdict: 'warn' },
])('by $by, $nights nights away: $verdict', async ({ by, nights, verdict }) => {
  expect((await fuel(`heated_by: ${by}`, nights)).verdict).toBe(verdict);
});

test('by the hook-up alone, with no nights away, passes', async () => {
  const text = warmVan({ heat: 'heater: {heated_by: mains}' });
  expect((await findingOf(text, 'heat.fuel')).verdict).toBe('pass');
});

test('what heats is missing', async () => {
  expect(await fuel('output: 1 kW')).toMatchObject({
    verdict: 'not checked',
    missing: ['heat.heater.heated_by'],
  });
});

test('where it is as warm outside there is nothing to heat, whatever heats', async () => {
  for (const by of ['diesel', 'gas', 'battery', 'mains', 'engine']) {
    const found = await findingOf(
      warmVan({ living: 'winter_low: 25 degC', heat: `heater: {heated_by: ${by}}` }),
      'heat.fuel',
    );
    expect(found.verdict, by).toBe('pass');
    expect(found.measured).toBeUndefined();
    expect(words(found.reason)).toContain('no colder than it is inside: there is nothing to heat');
  }
});

test('people alone may keep it warm', async () => {
  const found = await findingOf(
    warmVan({
      living: 'winter_low: 19 degC',
      heat: 'heater: {heated_by: mains}',
      rest: 'people: {sleepers: [{stature: 1.7 m}, {stature: 1.6 m}]}',
    }),
    'heat.fuel',
  );
  expect(found.verdict).toBe('pass');
  expect(words(found.reason)).toContain('people keep the living space warm by themselves');
});

describe('what a remedy says is enough as it is printed', () => {
  // Nights whose tank is not a whole number of litres.
  test.each(['29', '31', '41.3'])('the tank for %s nights', async (nights) => {
    const litres =
      /tank of ([\d.]+) L/.exec(words((await fuel('heated_by: diesel', nights)).remedy))?.[1] ?? '';
    expect((await fuel('heated_by: diesel', nights, `${litres} L`)).verdict).toBe('pass');
  });

  test('the nights', async () => {
    const remedy = words((await fuel('heated_by: diesel', '60')).remedy);
    const nights = /at most ([\d.]+) nights/.exec(remedy)?.[1] ?? '';
    expect((await fuel('heated_by: diesel', nights)).verdict).toBe('pass');
  });

  test('the loss that a battery can cover', async () => {
    for (const ampereHours of [200, 137, 203, 209]) {
      const battery = `electrical: {voltage: 12 V, battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: ${ampereHours} Ah}}`;
      const finding = await fuel('heated_by: battery', '2', '75 L', battery);
      const watts = Number(/cut the loss to ([\d.,]+) W/.exec(words(finding.remedy))?.[1]?.replace(',', ''));
      expect(watts * 86_400).toBeLessThanOrEqual(finding.limit?.measure.value ?? 0);
    }
  });
});
