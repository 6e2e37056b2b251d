// What is free in a room, and what goes into it.
import { describe, expect, test } from 'vitest';
import { boxesBeside, boxesOver } from '../../../src/calc/space/box-cover.ts';
import { disc } from '../../../src/calc/space/disc.ts';
import {
  bestFit,
  type Cuboid,
  extentOf,
  freeBoxes,
  packsTogether,
  type ThingToPack,
  waysRound,
} from '../../../src/calc/space/packing.ts';
import { rectangle } from '../../../src/calc/space/plane.ts';

const box = (x: number, y: number, z: number, l: number, w: number, h: number): Cuboid => ({
  least: [x, y, z],
  most: [x + l, y + w, z + h],
});
const thing = (lengthM: number, widthM: number, heightM: number, upright = false): ThingToPack => ({
  size: { lengthM, widthM, heightM },
  upright,
});
const goes = (one: ThingToPack, free: readonly Cuboid[]): boolean => bestFit(one, free)?.fits === true;
const cube = box(0, 0, 0, 1, 1, 1);

describe('free boxes', () => {
  test('an empty room is one, a full one has none', () => {
    expect(freeBoxes(cube, [])).toEqual([cube]);
    expect(freeBoxes(cube, [box(-1, -1, -1, 3, 3, 3)])).toEqual([]);
    expect(freeBoxes(cube, [cube])).toEqual([]);
  });
  test('a box in a corner leaves three, one along each axis', () => {
    expect(freeBoxes(cube, [box(0, 0, 0, 0.4, 0.3, 0.2)]).map(extentOf)).toEqual([
      [0.6, 1, 1],
      [1, 0.7, 1],
      [1, 1, 0.8],
    ]);
  });
  test('one in the middle leaves six, and what only touches takes nothing', () => {
    expect(freeBoxes(cube, [box(0.4, 0.4, 0.4, 0.2, 0.2, 0.2)])).toHaveLength(6);
    expect(freeBoxes(cube, [box(1, 0, 0, 1, 1, 1), box(0, 0, -1, 1, 1, 1)])).toEqual([cube]);
  });
  test('a slit of rounding is none', () => {
    expect(freeBoxes(cube, [box(0, 0, 0, 1 - 1e-9, 1, 1)])).toEqual([]);
  });
  test('what they refuse', () => {
    expect(() => freeBoxes(box(0, 0, 0, 0, 1, 1), [])).toThrow(RangeError);
    expect(() => freeBoxes(cube, [box(Number.NaN, 0, 0, 1, 1, 1)])).toThrow(/finite/);
    expect(() => waysRound(thing(1, 0, 1))).toThrow(/size of a thing/);
  });
});

describe('one thing', () => {
  test('six ways round, two upright, alike ones once', () => {
    expect(waysRound(thing(1, 2, 3))).toHaveLength(6);
    expect(waysRound(thing(1, 2, 3, true))).toEqual([
      [1, 2, 3],
      [2, 1, 3],
    ]);
    expect(waysRound(thing(2, 2, 3))).toHaveLength(3);
    expect(waysRound(thing(2, 2, 2))).toHaveLength(1);
  });
  test('10 × 10 does not go into 8 × 8, and misses by 2 each way', () => {
    const free = freeBoxes(box(0, 0, 0, 8, 8, 1), []);
    expect(bestFit(thing(10, 10, 1), free)).toMatchObject({ fits: false, spare: [-2, -2, 0] });
    expect(goes(thing(8, 8, 1), free)).toBe(true);
  });
  test('lying it goes, upright it does not', () => {
    const free = freeBoxes(box(0, 0, 0, 0.9, 0.4, 0.3), []);
    expect(goes(thing(0.3, 0.35, 0.8), free)).toBe(true);
    expect(goes(thing(0.3, 0.35, 0.8, true), free)).toBe(false);
    expect(goes(thing(0.35, 0.85, 0.3, true), free)).toBe(true);
  });
  test('it takes the place with the most to spare, or the one that it misses by least', () => {
    const free = freeBoxes(cube, [box(0.4, 0, 0, 0.1, 1, 1)]);
    expect(bestFit(thing(0.3, 0.3, 0.3), free)?.free.least[0]).toBe(0.5);
    const best = bestFit(thing(0.6, 0.6, 0.9, true), free);
    expect(best?.fits).toBe(false);
    expect(best?.spare[0]).toBeCloseTo(-0.1, 12);
  });
  test('exactly as large goes, a tenth of a millimetre more does not', () => {
    const free = freeBoxes(box(0, 0, 0, 0.1 + 0.2, 1, 1), []);
    expect(goes(thing(1, 1, 0.3), free)).toBe(true);
    expect(goes(thing(1, 1, 0.3001), free)).toBe(false);
    expect(bestFit(thing(1, 1, 1), [])).toBeUndefined();
  });
});

describe('several things', () => {
  const two = freeBoxes(box(0, 0, 0, 2, 2, 2), []);
  test('eight cubes fill a host of 2 × 2 × 2, a ninth does not go', () => {
    const cubes = Array.from({ length: 8 }, () => thing(1, 1, 1));
    expect(packsTogether(cubes, two)).toBe(true);
    expect(packsTogether([...cubes, thing(1, 1, 1)], two)).toBe(false);
    expect(packsTogether([...cubes.slice(1), thing(1, 1, 1.01)], two)).toBe(false);
  });
  // The larger goes into either niche, the smaller only into the one that comes first.
  test('it goes back: the largest must not stay where it goes first', () => {
    const niches = [box(0, 0, 0, 2, 1.2, 1.5), box(5, 0, 0, 3, 1, 1.5)];
    expect(packsTogether([thing(2, 1, 1.5), thing(1.2, 1.2, 1.5)], niches)).toBe(true);
    expect(packsTogether([thing(2, 1, 1.5), thing(1.2, 1.2, 1.5), thing(1.2, 1, 1.5)], niches)).toBe(false);
  });
  test('round a pinwheel of four planks and a cube', () => {
    const room = freeBoxes(box(0, 0, 0, 3, 3, 1), []);
    expect(packsTogether([...Array.from({ length: 4 }, () => thing(2, 1, 1)), thing(1, 1, 1)], room)).toBe(
      true,
    );
  });
  test('nothing goes anywhere', () => {
    expect(packsTogether([], [])).toBe(true);
    expect(packsTogether([thing(1, 1, 1)], [])).toBe(false);
  });
});

describe('odd outlines', () => {
  const ell = [
    { xM: 0, yM: 0 },
    { xM: 0.6, yM: 0 },
    { xM: 0.6, yM: 0.3 },
    { xM: 0.4, yM: 0.3 },
    { xM: 0.4, yM: 0.5 },
    { xM: 0, yM: 0.5 },
  ];
  test('an L is exact, from inside and from outside', () => {
    const prism = { outline: ell, bottomM: 0, topM: 1 };
    expect(boxesBeside(prism)).toEqual([{ least: [0.4, 0.3, 0], most: [0.6, 0.5, 1] }]);
    expect(boxesOver(prism)).toEqual([
      { least: [0, 0, 0], most: [0.6, 0.3, 1] },
      { least: [0, 0.3, 0], most: [0.4, 0.5, 1] },
    ]);
    const free = freeBoxes({ least: [0, 0, 0], most: [0.6, 0.5, 1] }, boxesBeside(prism));
    expect(free.map(extentOf)).toEqual([
      [0.4, 0.5, 1],
      [0.6, 0.3, 1],
    ]);
  });
  test('a box has nothing beside it', () => {
    const prism = { outline: rectangle(0, 0, 1, 1), bottomM: 0, topM: 1 };
    expect(boxesBeside(prism)).toEqual([]);
    expect(boxesOver(prism)).toEqual([cube]);
  });
  // The square in a circle of 500 mm has sides of 353.6 mm; strips of 20 mm cost up to 20 mm of it.
  test('a drum holds a little less than the square in its circle, never more', () => {
    const prism = { outline: disc({ xM: 0.25, yM: 0.25 }, 0.25), bottomM: 0, topM: 1 };
    const free = freeBoxes({ least: [0, 0, 0], most: [0.5, 0.5, 1] }, boxesBeside(prism));
    expect(goes(thing(0.333, 0.333, 1), free)).toBe(true);
    expect(goes(thing(0.354, 0.354, 1), free)).toBe(false);
  });
});
