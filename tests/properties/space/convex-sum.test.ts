import { Minkowski } from 'clipper2-ts/dist/Minkowski.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { overlapArea, ringsOf, union } from '../../../src/calc/space/clip.ts';
import { convexSum, isConvex } from '../../../src/calc/space/convex-sum.ts';
import { type Outline, outlineArea } from '../../../src/calc/space/plane.ts';

type Path = { x: number; y: number }[];

/** Corners on an ellipse, in order, so that the outline is convex; in micrometres. */
const convex: fc.Arbitrary<Path> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 3, maxLength: 40 }),
    fc.integer({ min: 50_000, max: 900_000 }),
    fc.integer({ min: 50_000, max: 900_000 }),
    fc.integer({ min: -2_000_000, max: 2_000_000 }),
  )
  .map(([degrees, a, b, off]) =>
    degrees
      .sort((one, other) => one - other)
      .map((each) => (each * Math.PI) / 180)
      .map((angle) => ({
        x: Math.round(off + a * Math.cos(angle)),
        y: Math.round(-off + b * Math.sin(angle)),
      })),
  )
  .filter((path) => isConvex(path));

const metres = (path: Path): Outline => path.map(({ x, y }) => ({ xM: x / 1e6, yM: y / 1e6 }));

test('the sum of two convex outlines is that of the library, filled', () => {
  fc.assert(
    fc.property(convex, convex, (a, b) => {
      const own = metres(convexSum(a, b));
      // The library sums edges only; what is left open inside is within the outer ring.
      const [outer] = ringsOf(union(Minkowski.sum(a, b, true).map(metres))).sort(
        (one, other) => outlineArea(other) - outlineArea(one),
      );
      if (!outer) throw new Error('the library gives no sum');
      const area = outlineArea(own);
      expect(outlineArea(outer)).toBeCloseTo(area, 4);
      expect(overlapArea(own, outer)).toBeCloseTo(area, 4);
    }),
    { numRuns: 60 },
  );
});

test.each([
  [
    'a box',
    [
      [0, 0],
      [4, 0],
      [4, 2],
      [0, 2],
    ],
    true,
  ],
  [
    'one with a corner on an edge',
    [
      [0, 0],
      [2, 0],
      [4, 0],
      [4, 2],
      [0, 2],
    ],
    true,
  ],
  [
    'an L',
    [
      [0, 0],
      [4, 0],
      [4, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ],
    false,
  ],
  [
    'a star that goes round twice',
    [
      [0, 3],
      [2, -3],
      [-3, 1],
      [3, 1],
      [-2, -3],
    ],
    false,
  ],
  [
    'a box the other way round',
    [
      [0, 0],
      [0, 2],
      [4, 2],
      [4, 0],
    ],
    false,
  ],
  [
    'a spike',
    [
      [0, 0],
      [4, 0],
      [2, 0],
      [2, 2],
    ],
    false,
  ],
] as const)('%s: convex %s', (_, corners, expected) => {
  expect(isConvex(corners.map(([x, y]) => ({ x, y })))).toBe(expected);
});
