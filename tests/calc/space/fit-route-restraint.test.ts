// What fits into what, the way through chases, and what these calculations refuse.
import { describe, expect, test } from 'vitest';
import { fillFraction } from '../../../src/calc/space/chase-fill.ts';
import { boxFits, diagonal, longestLying, rectangleFitsTurned } from '../../../src/calc/space/fit-in.ts';
import { restraintForceN } from '../../../src/calc/space/restraint.ts';
import {
  type Chase,
  rectilinearDistance,
  routesThrough,
  shortestRoute,
} from '../../../src/calc/space/route.ts';

const size = (lengthM: number, widthM: number, heightM: number) => ({ lengthM, widthM, heightM });

describe('a box in a hole', () => {
  const hole = size(0.9, 0.4, 0.3);
  const any = { upright: false };
  const upright = { upright: true };
  test('lying on its side it fits, upright it does not', () => {
    expect(boxFits(size(0.3, 0.35, 0.8), hole, any)).toBe(true);
    expect(boxFits(size(0.3, 0.35, 0.8), hole, upright)).toBe(false);
  });
  test('upright it may be turned on the plan', () => {
    expect(boxFits(size(0.35, 0.85, 0.3), hole, upright)).toBe(true);
    expect(boxFits(size(0.35, 0.85, 0.31), hole, upright)).toBe(false);
    expect(boxFits(size(0.45, 0.85, 0.3), hole, upright)).toBe(false);
  });
  test('exactly as large fits, whatever the sums behind the sizes rounded to', () => {
    expect(boxFits(size(0.1 + 0.2, 0.4, 0.9), hole, any)).toBe(true);
    expect(boxFits(size(0.301, 0.4, 0.9), hole, any)).toBe(false);
  });
});

describe('lying on a mattress', () => {
  const mattress = { lengthM: 1.8, widthM: 1.2 };
  test('a narrow body may be longer than the mattress, a broad one not', () => {
    expect(longestLying(0.3, mattress)).toBeGreaterThan(1.8);
    expect(longestLying(0.3, mattress)).toBeLessThan(diagonal(mattress));
    expect(longestLying(1.1, mattress)).toBeCloseTo(1.8, 5);
    expect(longestLying(1.3, mattress)).toBeUndefined();
  });
  test('it is the greatest that fits', () => {
    const longest = longestLying(0.45, mattress) ?? Number.NaN;
    expect(rectangleFitsTurned({ lengthM: longest, widthM: 0.45 }, mattress)).toBe(true);
    expect(rectangleFitsTurned({ lengthM: longest + 1e-5, widthM: 0.45 }, mattress)).toBe(false);
  });
});

describe('the way through chases', () => {
  const chase = (id: string, from: string, to: string, lengthM: number): Chase => ({ id, from, to, lengthM });
  const chases = [
    chase('left', 'battery', 'kitchen', 2.4),
    chase('floor', 'battery', 'door', 0.8),
    chase('ceiling', 'door', 'kitchen', 1.9),
    chase('step', 'door', 'kitchen', 0.7),
  ];
  const ids = (permitted: (chase: Chase) => boolean, from = 'battery', to = 'kitchen') =>
    shortestRoute(chases, from, to, permitted)?.chases.map(({ id }) => id);

  test('of two chases between the same points the shorter', () => {
    expect(ids(() => true)).toEqual(['floor', 'step']);
    expect(shortestRoute(chases, 'battery', 'kitchen', () => true)?.lengthM).toBeCloseTo(1.5, 12);
  });
  test('what is not permitted is left out', () => {
    expect(ids(({ id }) => id !== 'step')).toEqual(['left']);
    expect(ids(({ id }) => id !== 'step' && id !== 'left')).toEqual(['floor', 'ceiling']);
    expect(ids(({ id }) => id === 'floor')).toBeUndefined();
  });
  test('either way, to itself, and to a point that no chase ends at', () => {
    expect(ids(() => true, 'kitchen', 'battery')).toEqual(['step', 'floor']);
    expect(shortestRoute(chases, 'door', 'door', () => true)).toEqual({ lengthM: 0, chases: [] });
    expect(ids(() => true, 'battery', 'roof')).toBeUndefined();
    expect(shortestRoute([], 'roof', 'roof', () => true)).toEqual({ lengthM: 0, chases: [] });
  });
  test('a chase that comes back to its own point, and one of no length', () => {
    const odd = [chase('loop', 'a', 'a', 1), chase('gland', 'a', 'b', 0)];
    expect(shortestRoute(odd, 'a', 'b', () => true)).toEqual({ lengthM: 0, chases: [odd[1]] });
  });
  test('points may bear any name', () => {
    const named = [chase('one', 'constructor', 'toString', 1), chase('two', 'toString', '__proto__', 2)];
    expect(shortestRoute(named, 'constructor', '__proto__', () => true)?.lengthM).toBe(3);
  });
  test('many ways through the same chases, and points that none of them ends at', () => {
    const routeBetween = routesThrough(chases, ({ id }) => id !== 'step');
    const lengths = [
      ['battery', 'kitchen'],
      ['battery', 'roof'],
      ['door', 'kitchen'],
      ['roof', 'roof'],
      ['battery', 'kitchen'],
    ].map(([from = '', to = '']) => routeBetween(from, to)?.lengthM);
    expect(lengths).toEqual([2.4, undefined, 1.9, 0, 2.4]);
  });
  test('rectilinear distance', () => {
    const from = { xM: 0.2, yM: 1.5, zM: 0.3 };
    expect(rectilinearDistance(from, { xM: 2.2, yM: 0.1, zM: 1.1 })).toBeCloseTo(4.2, 12);
  });
});

describe('fill of a chase', () => {
  test('none, one as large as the bore, and more than goes in', () => {
    expect(fillFraction([], 0.025)).toBe(0);
    expect(fillFraction([0.025], 0.025)).toBe(1);
    expect(fillFraction([0.02, 0.02], 0.025)).toBeCloseTo(1.28, 12);
  });
});

describe('what they refuse', () => {
  test.each([
    [
      'a box without a size',
      () => boxFits(size(0, 1, 1), size(1, 1, 1), { upright: false }),
      /size of a box/,
    ],
    [
      'a hole without a size',
      () => boxFits(size(1, 1, 1), size(1, -1, 1), { upright: true }),
      /size of a hole/,
    ],
    [
      'a flat nothing',
      () => rectangleFitsTurned({ lengthM: 0, widthM: 1 }, { lengthM: 1, widthM: 1 }),
      /rectangle/,
    ],
    ['a mattress without a width', () => diagonal({ lengthM: 1, widthM: 0 }), /width must be greater than 0/],
    ['a body without a width', () => longestLying(0, { lengthM: 2, widthM: 1 }), RangeError],
    ['a massless fridge', () => restraintForceN(0, 1), /mass must be greater than 0, not 0/],
    ['a pull the other way', () => restraintForceN(1, -1), /coefficient must not be less than 0, not -1/],
    ['a cable without a diameter', () => fillFraction([0], 1), /diameter of a cable/],
    ['a chase without a bore', () => fillFraction([1], 0), /bore of a chase/],
    [
      'a chase of negative length',
      () => shortestRoute([{ id: 'odd', from: 'a', to: 'b', lengthM: -1 }], 'a', 'b', () => true),
      /length of the chase "odd" must not be less than 0/,
    ],
    [
      'a place nowhere',
      () => rectilinearDistance({ xM: 0, yM: 0, zM: 0 }, { xM: 0, yM: Number.NaN, zM: 0 }),
      /place must be a finite number/,
    ],
  ] as const)('%s', (_, use, message) => {
    expect(use).toThrow(RangeError);
    expect(use).toThrow(message);
  });
});
