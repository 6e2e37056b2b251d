import { expect, test } from 'vitest';
import { airy, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { buildOf, findingOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.vent-heights';
const wall = (level: string, above: string) =>
  `wall: {in: left wall, level: ${level}, free_area: 20 cm2, closes: false, at: {from_front: 1 m, from_left: 0 m, above_floor: ${above}}}`;
const found = (vents: string, codes = 'uk', rest = twoAsleep) => findingOf(airy(vents, rest, {}, codes), id);

test('vents in the ceiling and the floor need no height', async () => {
  const finding = await found(twoVents(20, 20));
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain('low and high, are in the ceiling and the floor');
});

test('a low one is at most 100 mm above the floor, 150 mm in Australia', async () => {
  expect((await found(wall('low', '100 mm'))).verdict).toBe('pass');
  const finding = await found(wall('low', '120 mm'));
  expect(finding.verdict).toBe('warn');
  expect(words(finding.remedy)).toContain('Lower it by 20 mm');
  expect((await found(wall('low', '150 mm'), 'au')).verdict).toBe('pass');
  expect((await found(wall('low', '151 mm'), 'au')).verdict).toBe('warn');
});

test('a high one is at least 1.8 m up, in Australia within 150 mm of the roof', async () => {
  expect((await found(wall('high', '1800 mm'))).verdict).toBe('pass');
  expect(words((await found(wall('high', '1750 mm'))).remedy)).toContain('Raise it by 50 mm');
  expect((await found(wall('high', '1850 mm'), 'au')).verdict).toBe('pass');
  expect((await found(wall('high', '1840 mm'), 'au')).verdict).toBe('warn');
});

test('a bunk under the roof asks for more than 1.8 m', async () => {
  const bunk =
    'fixtures: {bunk: {is: bed, mass: 9 kg, size: {length: 1 m, width: 1 m, height: 100 mm}, at: {from_front: 0 m, from_left: 0 m, above_floor: 1500 mm}}}\n';
  const finding = await found(wall('high', '1850 mm'), 'uk', `${twoAsleep}${bunk}`);
  expect(finding.verdict).toBe('warn');
  // 1600 + 300.
  expect(finding.limit?.measure.value).toBeCloseTo(1.9, 9);
  expect(words(finding.reason)).toContain('300 mm above the top mattress');
});

const without = (at: string, level = 'high', surface = 'left wall') =>
  `wall: {in: ${surface}, level: ${level}, free_area: 20 cm2, closes: false, at: {${at}}}`;

test('how high a vent in a wall is needs its height alone', async () => {
  for (const at of ['from_front: 1 m, above_floor: 1750 mm', 'above_floor: 1750 mm'])
    expect(words((await found(without(at))).remedy)).toContain('Raise it by 50 mm');
  expect((await found(without('from_front: 1 m, from_left: 0 m'))).missing).toEqual([
    'air.vents.wall.at.above_floor',
  ]);
  expect((await found(without('from_left: 0 m', 'low', 'rear doors'))).verdict).toBe('pass');
});

test('a vent in a wall is where the wall is', async () => {
  const placeOf = async (text: string) => {
    const { air } = await buildOf(airy(text));
    return air?.vents[0]?.place;
  };
  // The load bay is 4 m long and 2 m wide.
  expect(await placeOf(without('from_front: 1 m, above_floor: 1 m'))).toEqual({ xM: 1, yM: -1, zM: 1 });
  expect(await placeOf(without('from_front: 1 m, above_floor: 1 m', 'high', 'right wall'))).toMatchObject({
    yM: 1,
  });
  expect(await placeOf(without('centred: true, above_floor: 1 m', 'high', 'rear doors'))).toMatchObject({
    xM: 4,
    yM: 0,
  });
  expect(await placeOf(without('from_left: 1 m, above_floor: 1 m', 'high', 'bulkhead'))).toMatchObject({
    xM: 0,
  });
  expect(await placeOf(without('above_floor: 1 m'))).toBeUndefined();
});

test('not checked: no level, no height, nothing fixed, no vents', async () => {
  expect((await found('wall: {in: left wall, free_area: 20 cm2, closes: false}')).missing).toEqual([
    'air.vents.wall.level',
    'air.vents.wall.at.above_floor',
  ]);
  expect((await found('hatch: {in: ceiling, free_area: 20 cm2, closes: true}')).missing).toEqual([
    'air.vents.NAME.closes',
  ]);
  expect((await findingOf(plan(), id)).missing).toEqual(['air.vents']);
});
