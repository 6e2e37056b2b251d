import { expect, test } from 'vitest';
import { hotWaterC, waterUseOf } from '../../src/build/water-use.ts';
import { buildOf, words } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const use = async (living: string, water: string, people = 'people: {sleepers: [{}, {}]}') =>
  waterUseOf(await buildOf(plan(`${people}\nliving: {${living}}\nwater: {${water}}`)));

const boiler = 'cold: 10 degC, heater: {kind: storage, holds: 10 L, temperature: 60 degC}';

test('fresh water is what all use, waste is that less what they drink and eat', async () => {
  const { freshM3PerDay, wasteM3PerDay, missing, assumed } = await use(
    'litres_per_person_day: 9 L',
    'pump: {}',
  );
  expect(freshM3PerDay).toBeCloseTo(0.018, 12);
  // 2 × (9 − 2.5) L
  expect(wasteM3PerDay).toBeCloseTo(0.013, 12);
  expect(missing).toEqual([]);
  expect(assumed.map(words)).toEqual(['2.5 L a person and day are drunk or eaten and drain nowhere.']);
});

test('who uses less than one drinks drains nothing', async () => {
  const { freshM3PerDay, wasteM3PerDay } = await use('litres_per_person_day: 2 L', 'pump: {}');
  expect(freshM3PerDay).toBeCloseTo(0.004, 12);
  expect(wasteM3PerDay).toBe(0);
});

test('nothing drains where no outlet has a waste pipe', async () => {
  const { wasteM3PerDay } = await use('litres_per_person_day: 9 L', 'outlets: {hose: {use: outside}}');
  expect(wasteM3PerDay).toBe(0);
});

test('showers come on top, all of them down the drain', async () => {
  const { freshM3PerDay, wasteM3PerDay, showersM3PerDay } = await use(
    'litres_per_person_day: 9 L, showers_per_person_day: 0.5, litres_per_shower: 12 L',
    'outlets: {shower: {use: shower}}',
  );
  // 2 × (9 + 6) L, and 2 × (6.5 + 6) L
  expect(freshM3PerDay).toBeCloseTo(0.03, 12);
  expect(wasteM3PerDay).toBeCloseTo(0.025, 12);
  expect(showersM3PerDay).toBeCloseTo(0.012, 12);
});

test('hot water is what leaves the heater; a shower is mixed from it', async () => {
  const { hotM3PerDay, hotEnergyJPerDay, hotMissing } = await use(
    'litres_per_person_day: 9 L, hot_litres_per_person_day: 3 L, showers_per_person_day: 1, litres_per_shower: 10 L',
    boiler,
  );
  // 2 × (3 + 10 × (38 − 10)/(60 − 10)) = 2 × 8.6 L
  expect(hotM3PerDay).toBeCloseTo(0.0172, 12);
  // 17.2 L of 999.7 kg/m³ by 50 K at 4.18 kJ/(kg K): 3.594 MJ
  expect((hotEnergyJPerDay ?? 0) / 1e6).toBeCloseTo(3.594, 2);
  expect(hotMissing).toEqual([]);
});

test('without a heater there is no hot water, and nothing is missing for it', async () => {
  expect(await use('litres_per_person_day: 9 L', 'pump: {}')).toMatchObject({
    hotM3PerDay: 0,
    hotEnergyJPerDay: 0,
    hotMissing: [],
  });
});

test.each([
  // A store no warmer than the cold water, and one that does not reach a shower's warmth.
  { temperature: '5 degC', hotL: 13, energyMJ: 0 },
  // 13 L by 20 K
  { temperature: '30 degC', hotL: 13, energyMJ: 1.088 },
])('a store of $temperature is drawn unmixed', async ({ temperature, hotL, energyMJ }) => {
  const { hotM3PerDay, hotEnergyJPerDay } = await use(
    'litres_per_person_day: 9 L, hot_litres_per_person_day: 3 L, showers_per_person_day: 1, litres_per_shower: 10 L',
    `cold: 10 degC, heater: {kind: storage, temperature: ${temperature}}`,
    'people: {sleepers: [{}]}',
  );
  expect(hotM3PerDay).toBeCloseTo(hotL / 1000, 12);
  expect((hotEnergyJPerDay ?? Number.NaN) / 1e6).toBeCloseTo(energyMJ, 2);
});

test.each([
  { temperature: undefined, kind: 'instant', hotC: 38 },
  { temperature: '300 degC', kind: 'storage', hotC: 100 },
  { temperature: undefined, kind: 'storage', hotC: undefined },
])('$kind, $temperature: $hotC', async ({ temperature, kind, hotC }) => {
  const stated = temperature === undefined ? '' : `, temperature: ${temperature}`;
  expect(hotWaterC(await buildOf(plan(`water: {heater: {kind: ${kind}${stated}}}`)))).toBe(hotC);
});

test('the pump runs no longer than if all were drawn at the slowest outlet', async () => {
  const { pumpSecondsPerDay } = await use(
    'litres_per_person_day: 9 L',
    'pump: {flow: 10 L/min}, outlets: {sink: {use: tap, flow: 3 L/min}, hose: {use: outside, flow: 6 L/min}}',
  );
  // 18 L at 3 L/min
  expect(pumpSecondsPerDay).toBeCloseTo(360, 9);
});

test('what is missing is named, for fresh and for hot water apart', async () => {
  const found = await use('', `${boiler}, outlets: {shower: {use: shower}}`, '');
  expect(found.freshMissing).toEqual([
    'people.sleepers',
    'living.litres_per_person_day',
    'living.showers_per_person_day',
    'living.litres_per_shower',
  ]);
  expect(found.hotMissing).toEqual([
    'people.sleepers',
    'living.hot_litres_per_person_day',
    'living.showers_per_person_day',
    'living.litres_per_shower',
  ]);
  expect(found.missing).toHaveLength(5);
  expect(found.freshM3PerDay).toBeUndefined();
  expect(found.hotM3PerDay).toBeUndefined();
});
