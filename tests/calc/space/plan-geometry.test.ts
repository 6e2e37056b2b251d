// Outlines on the plan: what overlaps, how far apart, which way out.
import { describe, expect, test } from 'vitest';
import { clearingMoves, shortestClearingMove } from '../../../src/calc/space/clearing-move.ts';
import {
  contains,
  crossesItself,
  difference,
  intersection,
  offset,
  offsetRoughly,
  overlap,
  overlapArea,
  union,
} from '../../../src/calc/space/clip.ts';
import { disc } from '../../../src/calc/space/disc.ts';
import { distanceBetween } from '../../../src/calc/space/distance.ts';
import {
  boundsOf,
  type Outline,
  outlineArea,
  outlineCentroid,
  rectangle,
} from '../../../src/calc/space/plane.ts';

const bed = rectangle(1.37, 0, 1.9, 1.2);
/** A horseshoe of counters, open to the rear: 1 m square, 0.3 m deep arms. */
const horseshoe: Outline = [
  { xM: 0, yM: 0 },
  { xM: 1, yM: 0 },
  { xM: 1, yM: 0.3 },
  { xM: 0.3, yM: 0.3 },
  { xM: 0.3, yM: 0.7 },
  { xM: 1, yM: 0.7 },
  { xM: 1, yM: 1 },
  { xM: 0, yM: 1 },
];

describe('area and centroid', () => {
  test('of a bed', () => {
    expect(outlineArea(bed)).toBeCloseTo(2.28, 12);
    expect(outlineCentroid(bed)).toEqual({ xM: expect.closeTo(2.32, 12), yM: expect.closeTo(0.6, 12) });
  });
  test('far from the origin no digits are lost', () => {
    const far = rectangle(30, 30, 0.001, 0.001);
    expect(outlineArea(far) / 1e-6).toBeCloseTo(1, 9);
    expect(outlineCentroid(far).xM).toBeCloseTo(30.0005, 9);
  });
});

describe('overlap', () => {
  test('two cupboards that go into each other by 40 mm', () => {
    const pieces = overlap(rectangle(0, 0, 0.6, 0.4), rectangle(0.56, 0.1, 0.5, 0.4));
    expect(pieces).toHaveLength(1);
    expect(pieces.map(boundsOf)).toEqual([{ leastXM: 0.56, leastYM: 0.1, mostXM: 0.6, mostYM: 0.4 }]);
    expect(overlapArea(rectangle(0, 0, 0.6, 0.4), rectangle(0.56, 0.1, 0.5, 0.4))).toBeCloseTo(0.012, 12);
  });
  test('side by side shares no area, either way round', () => {
    expect(overlapArea(rectangle(0, 0, 0.6, 0.4), [...rectangle(0.6, 0, 0.6, 0.4)].reverse())).toBe(0);
  });
  test('a bar across a horseshoe lies on both arms', () => {
    expect(overlap(horseshoe, rectangle(0.5, -0.1, 0.1, 1.2))).toHaveLength(2);
    expect(overlapArea(horseshoe, rectangle(0.5, -0.1, 0.1, 1.2))).toBeCloseTo(0.06, 9);
  });
  test('union, difference and intersection of lists', () => {
    const { outlines, holes } = union([
      rectangle(0, 0, 1, 0.2),
      rectangle(0, 0.8, 1, 0.2),
      rectangle(0, 0, 0.2, 1),
      rectangle(0.8, 0, 0.2, 1),
    ]);
    expect(outlines.map(outlineArea)).toEqual([expect.closeTo(1, 9)]);
    expect(holes.map(outlineArea)).toEqual([expect.closeTo(0.36, 9)]);
    expect(difference([rectangle(0, 0, 3, 1)], [rectangle(1, -1, 1, 3)]).outlines).toHaveLength(2);
    const both = intersection([rectangle(0, 0, 1, 1), rectangle(2, 0, 1, 1)], [rectangle(0.5, 0, 2, 0.5)]);
    expect(both.outlines.map(outlineArea)).toEqual([expect.closeTo(0.25, 9), expect.closeTo(0.25, 9)]);
  });
  test('offset: a square grown by its own side has quarter discs at its corners', () => {
    const [grown] = offset([rectangle(0, 0, 0.5, 0.5)], 0.5).outlines;
    const exact = 0.25 + 4 * 0.25 + Math.PI * 0.25;
    expect(grown === undefined ? 0 : outlineArea(grown)).toBeLessThanOrEqual(exact);
    expect(grown === undefined ? 0 : outlineArea(grown)).toBeGreaterThan(exact - Math.PI * 0.0001);
    expect(offset([rectangle(0, 0, 0.5, 0.5)], -0.26).outlines).toEqual([]);
  });
});

describe('contains', () => {
  const bay = [rectangle(0, 0, 3.27, 1.76)];
  test('a bed in the bay, and one that stands out by 1 mm', () => {
    expect(contains(bay, bed)).toBe(true);
    expect(contains(bay, rectangle(1.371, 0, 1.9, 1.2))).toBe(false);
  });
  test('sticking out by 0.3 mm is touching, all round too', () => {
    expect(contains(bay, rectangle(1.3703, 0, 1.9, 1.2))).toBe(true);
    expect(contains([rectangle(0, 0, 1, 1)], rectangle(-0.0003, -0.0003, 1.0006, 1.0006))).toBe(true);
    expect(contains([rectangle(0, 0, 1, 1)], rectangle(-0.001, -0.001, 1.002, 1.002))).toBe(false);
  });
  test('two floors side by side hold what stands across both', () => {
    expect(contains([rectangle(0, 0, 1, 1), rectangle(1, 0, 1, 1)], rectangle(0.5, 0.2, 1, 0.5))).toBe(true);
  });
});

describe('distance', () => {
  test('straight across, and where', () => {
    const { distanceM, from, to } = distanceBetween(rectangle(0, 0, 1, 0.5), rectangle(0.2, 1.1, 0.4, 0.2));
    expect(distanceM).toBeCloseTo(0.6, 12);
    expect(from).toEqual({ xM: expect.closeTo(0.4, 12), yM: expect.closeTo(0.5, 12) });
    expect(to).toEqual({ xM: expect.closeTo(0.4, 12), yM: expect.closeTo(1.1, 12) });
  });
  test('corner to corner: 3, 4, 5', () => {
    const { distanceM, from, to } = distanceBetween(rectangle(0, 0, 1, 1), rectangle(1.3, 1.4, 1, 1));
    expect(distanceM).toBeCloseTo(0.5, 12);
    expect(from).toEqual({ xM: 1, yM: 1 });
    expect(to).toEqual({ xM: 1.3, yM: 1.4 });
  });
  test('touching, crossing and within are 0', () => {
    expect(distanceBetween(rectangle(0, 0, 1, 1), rectangle(1, 0.5, 1, 1)).distanceM).toBe(0);
    expect(distanceBetween(rectangle(0, 0.4, 1, 0.2), rectangle(0.4, 0, 0.2, 1)).distanceM).toBe(0);
    expect(distanceBetween(rectangle(0, 0, 1, 1), rectangle(0.4, 0.4, 0.1, 0.1)).distanceM).toBe(0);
    expect(distanceBetween(rectangle(0.4, 0.4, 0.1, 0.1), rectangle(0, 0, 1, 1)).distanceM).toBe(0);
  });
  test('in the hollow of a horseshoe it is not within it', () => {
    expect(distanceBetween(rectangle(0.5, 0.45, 0.1, 0.1), horseshoe).distanceM).toBeCloseTo(0.15, 12);
  });
});

describe('clearing moves', () => {
  test('shortest first, all four ways', () => {
    expect(clearingMoves(rectangle(0.9, 0.2, 0.5, 0.5), rectangle(0, 0, 1, 1))).toEqual([
      { direction: 'rearward', distanceM: 0.1 },
      { direction: 'left', distanceM: 0.7 },
      { direction: 'right', distanceM: 0.8 },
      { direction: 'forward', distanceM: 1.4 },
    ]);
  });
  test('a table in the way of a horseshoe is drawn into the hollow', () => {
    // In the arm on the left, 0.25 m across; the hollow is 0.4 m wide.
    const table = rectangle(0.5, 0.1, 0.3, 0.25);
    expect(clearingMoves(table, horseshoe)).toEqual([
      { direction: 'right', distanceM: 0.2 },
      { direction: 'left', distanceM: 0.35 },
      { direction: 'rearward', distanceM: 0.5 },
      { direction: 'forward', distanceM: 0.8 },
    ]);
  });
  test('nor does a small thing within a large one count as clear', () => {
    expect(shortestClearingMove(rectangle(0.4, 0.45, 0.02, 0.02), rectangle(0, 0, 1, 1))).toEqual({
      direction: 'forward',
      distanceM: 0.42,
    });
    expect(shortestClearingMove(rectangle(0, 0, 1, 1), rectangle(0.4, 0.45, 0.02, 0.02))).toEqual({
      direction: 'rearward',
      distanceM: 0.42,
    });
  });
  test('flush faces: moves along the shared line are exact', () => {
    expect(clearingMoves(rectangle(0, 0, 0.5, 0.5), rectangle(0.3, 0, 0.5, 0.5))[0]).toEqual({
      direction: 'forward',
      distanceM: 0.2,
    });
  });
  test('a slanted corner is met where it is, not at its bounds', () => {
    const wedge: Outline = [
      { xM: 0, yM: 0 },
      { xM: 1, yM: 0 },
      { xM: 0, yM: 1 },
    ];
    const box = rectangle(0.4, 0.4, 0.5, 0.5);
    const [shortest] = clearingMoves(box, wedge);
    expect(shortest?.direction).toBe('rearward');
    expect(shortest?.distanceM).toBeCloseTo(0.2, 5);
  });
  test('apart or touching: nothing to move', () => {
    expect(clearingMoves(rectangle(0, 0, 1, 1), rectangle(1, 0, 1, 1))).toEqual([]);
    expect(clearingMoves(rectangle(0, 0, 1, 1), rectangle(2, 0, 1, 1))).toEqual([]);
    expect(shortestClearingMove(rectangle(0, 0, 1, 1), rectangle(0.9997, 0, 1, 1))).toBeUndefined();
  });
});

describe('impossible outlines', () => {
  test.each([
    [
      'two corners',
      [bed[0], bed[1]].filter((corner) => corner !== undefined),
      /at least three corners, not 2/,
    ],
    ['no area', [0, 1, 2].map((xM) => ({ xM, yM: xM })), /enclose some area/],
    ['a corner nowhere', [...bed.slice(1), { xM: Number.NaN, yM: 0 }], /corner .* finite number, not NaN/],
  ] as const)('%s', (_, outline, message) => {
    for (const use of [outlineArea, outlineCentroid, (o: Outline) => overlap(o, bed)]) {
      expect(() => use(outline)).toThrow(RangeError);
      expect(() => use(outline)).toThrow(message);
    }
    expect(() => distanceBetween(bed, outline)).toThrow(message);
    expect(() => clearingMoves(outline, bed)).toThrow(message);
  });
  test('sizes and places', () => {
    expect(() => rectangle(0, 0, 0, 1)).toThrow(/length of a rectangle must be greater than 0, not 0/);
    expect(() => rectangle(0, 0, 1, -1)).toThrow(/width of a rectangle must be greater than 0, not -1/);
    expect(() => rectangle(Number.POSITIVE_INFINITY, 0, 1, 1)).toThrow(RangeError);
    expect(() => disc({ xM: 0, yM: 0 }, 0)).toThrow(/radius of a disc/);
    expect(() => disc({ xM: Number.NaN, yM: 0 }, 1)).toThrow(/centre of a disc/);
    expect(() => overlap(rectangle(39.9, 0, 0.2, 1), bed)).toThrow(
      /within 40 m of the origin, not at 40.1 m/,
    );
    expect(() => boundsOf([])).toThrow(/at least one point/);
    expect(() => offset([bed], Number.NaN)).toThrow(/offset must be a finite number/);
  });
  test('edges that cross', () => {
    const [a, b, c, d] = rectangle(0, 0, 1, 1);
    const bowTie = [a, c, b, d].filter((corner) => corner !== undefined);
    expect(crossesItself([...bowTie, { xM: 0.2, yM: 0.9 }])).toBe(true);
    expect(crossesItself(horseshoe)).toBe(false);
    expect(crossesItself(disc({ xM: 0.3, yM: 0.3 }, 0.25))).toBe(false);
  });
});

describe('a rough offset', () => {
  const square = rectangle(0, 0, 1, 1);
  const [fine, rough] = [offset([square], 0.5), offsetRoughly([square], 0.5)];

  test('stays within a hundredth of the offset of the true arc', () => {
    const corners = rough.outlines.flat();
    expect(corners.length).toBeGreaterThan(12);
    for (const corner of corners) {
      const farM = Math.hypot(Math.max(0, -corner.xM, corner.xM - 1), Math.max(0, -corner.yM, corner.yM - 1));
      expect(farM).toBeGreaterThan(0.495 - 1e-6);
      expect(farM).toBeLessThan(0.5 + 1e-6);
    }
  });
  test('has far fewer edges', () => {
    expect(5 * rough.outlines.flat().length).toBeLessThan(fine.outlines.flat().length);
  });
});
