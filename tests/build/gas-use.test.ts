import { expect, test } from 'vitest';
import { gasUseOf } from '../../src/build/gas-use.ts';
import { buildOf } from '../support/check.ts';
import { gasPlan } from '../support/gas-plan.ts';

const useOf = async (changes: Parameters<typeof gasPlan>[0]) => gasUseOf(await buildOf(gasPlan(changes)));

test('a hob burns at its full input while food is cooked', async () => {
  const use = await useOf({ living: 'cooking: 30 min' });
  // 3600 W / 46.1 MJ/kg for 1800 s.
  expect(use.day?.winterKg).toBeCloseTo((3600 / 46.1e6) * 1800, 9);
  expect(use.day?.summerKg).toBeCloseTo(use.day?.winterKg ?? 0, 12);
  expect(use.fullRateKgPerS).toBeCloseTo(3600 / 46.1e6, 12);
});

test('a refrigerator burns all day', async () => {
  const use = await useOf({ hob: 'use: refrigerator, input: 15 g/h' });
  expect(use.day?.winterKg).toBeCloseTo(0.36, 9);
});

test('a heater burns for the heat that is wanted, in winter more than in summer', async () => {
  const use = await useOf({
    hob: 'use: room heating, input: 160 g/h',
    living: 'place: {latitude: 48.2, longitude: 11.6}',
    rest: `heat: {heater: {output: 2 kW, heated_by: gas, efficiency: 80 %}, air_changes_per_hour: 1, cab: {closed_by: insulated cover}}
build_ups:
  walls: {of: walls, layers: [{material: XPS, thickness: 40 mm}]}
  floor: {of: floor, layers: [{material: XPS, thickness: 40 mm}]}
  ceiling: {of: ceiling, layers: [{material: XPS, thickness: 40 mm}]}
  doors: {of: rear doors, layers: [{material: XPS, thickness: 40 mm}]}`,
  });
  expect(use.missing).toEqual([]);
  expect(use.day?.winterKg).toBeGreaterThan(3 * (use.day?.summerKg ?? Number.POSITIVE_INFINITY));
});

test('what is missing is named, with what its use would need', async () => {
  expect((await useOf({})).missing).toEqual(['living.cooking']);
  expect((await useOf({ hob: 'input: 100 g/h' })).missing).toEqual(['gas.appliances.hob.use']);
  expect((await useOf({ hob: 'use: water heating' })).missing).toEqual(['water.heater']);
  expect((await useOf({ hob: 'use: cooking' })).rateMissing).toEqual(['gas.appliances.hob.input']);
});
