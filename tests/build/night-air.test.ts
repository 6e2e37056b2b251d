import { expect, test } from 'vitest';
import { type NightAir, nightAirOf } from '../../src/build/night-air.ts';
import { airy, hob, twoAsleep, twoVents } from '../support/air-plan.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

async function nightOf(text: string): Promise<NightAir> {
  const found = nightAirOf(await buildOf(text));
  if (!('airM3' in found)) throw new Error(`missing: ${found.missing.join(', ')}`);
  return found;
}
const missingOf = async (text: string) => nightAirOf(await buildOf(text)).missing;

test('warmth draws through the low and the high vents one behind the other', async () => {
  const { vents, worst, nights } = await nightOf(airy(twoVents(50, 100)));
  expect(vents).toMatchObject({ lowM2: 0.005, highM2: 0.01, heightM: 2, missing: [] });
  // 1/√(1/50² + 1/100²) = 44.72 cm².
  expect(vents.seriesM2).toBeCloseTo(44.7214e-4, 8);
  // A mild night alone: 15 °C inside, 10 °C outside. h = 2 / (1 + 0.25 · 288.15 / 283.15) = 1.5944 m,
  // Q = 0.65 · 0.005 · √(2 · 9.81 · 1.5944 · 5 / 288.15) = 0.0023945 m³/s.
  expect(nights).toHaveLength(1);
  expect(worst).toMatchObject({ when: 'mild', insideC: 15, outsideC: 10 });
  expect(worst.flowM3PerS).toBeCloseTo(0.0023945, 6);
});

test('the mild night changes less air than the coldest, and the winter decides about damp', async () => {
  const cold = await nightOf(airy(twoVents(50, 100), `${twoAsleep}living: {winter_low: -10 degC}`));
  expect(cold.nights.map(({ when, outsideC }) => [when, outsideC])).toEqual([
    ['mild', 10],
    ['winter', -10],
  ]);
  expect(cold.worst.when).toBe('mild');
  expect(cold.humid.map(({ when, part, insideC, outsideC }) => [when, part, insideC, outsideC])).toEqual([
    ['winter', 'day', 20, -10],
    ['winter', 'night', 15, -10],
  ]);
});

test('of vents and leaks the larger counts, not the sum', async () => {
  const vents = twoVents(50, 100);
  const leaky = `${twoAsleep.replace('15 degC}', '15 degC, air_changes_per_hour: 1}')}`;
  const { worst, leaksM3PerS, airM3 } = await nightOf(airy(vents, leaky));
  expect(airM3).toBeCloseTo(16, 9);
  expect(leaksM3PerS).toBeCloseTo(16 / 3600, 9);
  expect(worst.flowM3PerS).toBeCloseTo(16 / 3600, 9);
  const tight = `${twoAsleep.replace('15 degC}', '15 degC, air_changes_per_hour: 0.1}')}`;
  expect((await nightOf(airy(vents, tight))).worst.flowM3PerS).toBeCloseTo(0.0023945, 6);
});

test('what can be shut, and what ventilates a thing, does not count', async () => {
  const more =
    'hatch: {in: ceiling, free_area: 500 cm2, closes: true}, unsaid: {in: ceiling, free_area: 500 cm2}, locker: {in: floor, free_area: 500 cm2, closes: false, serves: box}';
  const { vents } = await nightOf(
    airy(`${twoVents(50, 100)}, ${more}`, `${twoAsleep}fixtures: {box: {mass: 1 kg}}`),
  );
  expect(vents).toMatchObject({ lowM2: 0.005, highM2: 0.01 });
  expect(vents.closable.map(({ name }) => name)).toEqual(['hatch']);
  expect(vents.unsaid.map(({ name }) => name)).toEqual(['unsaid']);
});

test('carbon dioxide of two sleepers settles by what they breathe out', async () => {
  const { carbonDioxide, worst } = await nightOf(airy(twoVents(50, 100)));
  // The most of all grown people in the table: men from 21 to 29, 0.0039 L/s at 1 met and 0 °C; asleep 0.95 met.
  const generation = (2 * 0.0039 * 0.95 * (288.15 / 273.15)) / 1000;
  expect(carbonDioxide.generationM3PerS).toBeCloseTo(generation, 9);
  expect(carbonDioxide.steadyPpm).toBeCloseTo(425 + (1e6 * generation) / worst.flowM3PerS, 6);
  // 8 h are 4.3 changes of 16 m³: all but 1.3 % of the way from 1000 ppm.
  const left = Math.exp((-worst.flowM3PerS * 28_800) / 16);
  expect(carbonDioxide.endPpm).toBeCloseTo(
    carbonDioxide.steadyPpm - (carbonDioxide.steadyPpm - 1000) * left,
    6,
  );
  expect(carbonDioxide.greatestPpm).toBe(carbonDioxide.endPpm);
  expect(carbonDioxide.secondsUntil(1000)).toBe(0);
  expect(carbonDioxide.secondsUntil(9000)).toBe(Number.POSITIVE_INFINITY);
});

test('a day sets free what people breathe, cook, shower and bring in', async () => {
  const living =
    'living: {winter_low: -10 degC, cooking: 30 min, wet_clothes: 0.5 L, showers_per_person_day: 1}';
  const gas = `tanks: {cylinder: {contents: propane, holds: 6 kg}}\ngas: {appliances: {${hob}}}\n`;
  const { waterKgPerDay: water, humid } = await nightOf(
    airy(twoVents(50, 100), `${twoAsleep}${gas}${living}`),
  );
  // Two at 50 g/h for 24 h; half an hour at 600 g/h; two showers of 0.6 kg; 3 kW / 46.1 MJ/kg · 1800 s · 1.634.
  expect(water.peopleKg).toBeCloseTo(2.4, 9);
  expect(water.cookingKg).toBeCloseTo(0.3, 9);
  expect(water.showersKg).toBeCloseTo(1.2, 9);
  expect(water.clothesKg).toBeCloseTo(0.5, 9);
  expect(water.flamesKg).toBeCloseTo((3000 / 46.1e6) * 1800 * 1.634, 9);
  expect(water.totalKg).toBeCloseTo(4.5914, 3);
  expect(humid[0]?.releaseKgPerS).toBeCloseTo(water.totalKg / 86_400, 12);
  expect(humid[1]?.releaseKgPerS).toBeCloseTo(0.1 / 3600, 12);
  const { waterKgPerDay: usual } = await nightOf(airy(twoVents(50, 100)));
  expect(usual).toMatchObject({ cookingAssumed: true, cookingKg: 2.4, flamesKg: 0 });
});

test('the dew point belongs to the damper part of the day, and is never above the room', async () => {
  const cold = await nightOf(
    airy(twoVents(50, 100), `${twoAsleep}living: {winter_low: -10 degC, cooking: 0 min}`),
  );
  const [day, night] = cold.humid;
  expect(Math.max(day?.dewPointC ?? 0, night?.dewPointC ?? 0)).toBe(cold.dewPointC);
  // Without any fresh air the room is as damp as air can be.
  const shut = await nightOf(airy('high: {in: ceiling, free_area: 1 cm2, closes: false}'));
  expect(shut.flowM3PerS).toBe(0);
  expect(shut.insideRelativeHumidity).toBe(1);
  expect(shut.dewPointC).toBeCloseTo(shut.insideC, 6);
  expect(shut.carbonDioxide.steadyPpm).toBe(Number.POSITIVE_INFINITY);
});

test('what lacks is named', async () => {
  expect(await missingOf(plan())).toEqual(['people.sleepers', 'air.vents']);
  expect(await missingOf('storystick: 1\nvan: {}')).toEqual(['van.load_bay', 'people.sleepers', 'air.vents']);
  const wall =
    'low: {in: floor, free_area: 9 cm2, closes: false}, high: {in: left wall, level: high, free_area: 9 cm2, closes: false}';
  expect(await missingOf(airy(wall))).toEqual(['air.vents.high.at.above_floor']);
  expect(
    await missingOf(airy('roof: {in: ceiling, free_area: 9 cm2}, wall: {in: left wall, free_area: 9 cm2}')),
  ).toEqual(['air.vents.roof.closes', 'air.vents.wall.closes', 'air.vents.wall.level']);
});

test('it is worked out once for a build', async () => {
  const build = await buildOf(airy(twoVents(50, 100)));
  expect(nightAirOf(build)).toBe(nightAirOf(build));
});
