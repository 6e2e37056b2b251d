// Outlines against counting, scanning and trying, on random shapes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearingMoves } from '../../../src/calc/space/clearing-move.ts';
import { contains, difference, offset, overlap, overlapArea, union } from '../../../src/calc/space/clip.ts';
import { disc } from '../../../src/calc/space/disc.ts';
import { distanceBetween } from '../../../src/calc/space/distance.ts';
import {
  type Outline,
  outlineArea,
  outlineCentroid,
  type Point,
  rectangle,
} from '../../../src/calc/space/plane.ts';

const millimetres = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => value / 1000);

/** Simple and mostly hollow: corners at random distances about a centre, the angles in order. */
const stars: fc.Arbitrary<Outline> = fc
  .tuple(
    millimetres(-400, 400),
    millimetres(-400, 400),
    fc.array(millimetres(80, 700), { minLength: 3, maxLength: 9 }),
    fc.boolean(),
  )
  .map(([xM, yM, radii, reversed]) => {
    const corners = radii.map((radiusM, index): Point => {
      const angle = (2 * Math.PI * index) / radii.length + 0.1;
      return { xM: xM + radiusM * Math.cos(angle), yM: yM + radiusM * Math.sin(angle) };
    });
    return reversed ? corners.reverse() : corners;
  });
const boxes = fc
  .tuple(millimetres(-800, 800), millimetres(-800, 800), millimetres(20, 900), millimetres(20, 900))
  .map(([xM, yM, lengthM, widthM]) => rectangle(xM, yM, lengthM, widthM));
const shapes = fc.oneof(stars, boxes);

const perimeter = (outline: Outline): number =>
  outline.reduce((sum, to, index) => {
    const from = outline.at(index - 1) ?? to;
    return sum + Math.hypot(to.xM - from.xM, to.yM - from.yM);
  }, 0);

/** Where a line y = constant lies in an outline: the ends of the stretches, in order. */
function scan(outline: Outline, yM: number): number[] {
  const found: number[] = [];
  outline.forEach((to, index) => {
    const from = outline.at(index - 1) ?? to;
    if (from.yM > yM !== to.yM > yM) {
      found.push(from.xM + ((to.xM - from.xM) * (yM - from.yM)) / (to.yM - from.yM));
    }
  });
  return found.sort((a, b) => a - b);
}

/** The length of a line in all of some outlines (`every`) or in at least one. */
function lengthIn(outlines: readonly Outline[], yM: number, every: boolean): number {
  const events = outlines
    .flatMap((outline) => scan(outline, yM).map((xM, index) => ({ xM, change: index % 2 === 0 ? 1 : -1 })))
    .sort((a, b) => a.xM - b.xM);
  let [inside, lengthM, fromM] = [0, 0, 0];
  for (const { xM, change } of events) {
    if (inside >= (every ? outlines.length : 1)) lengthM += xM - fromM;
    inside += change;
    fromM = xM;
  }
  return lengthM;
}

const STEP_M = 0.0005;
function scannedArea(outlines: readonly Outline[], every: boolean): number {
  let sum = 0;
  for (let yM = -1.2; yM < 1.9; yM += STEP_M)
    sum += lengthIn(outlines, yM + STEP_M / 2 + 1e-7, every) * STEP_M;
  return sum;
}
/** A scan is off by half a step along what runs along it, at most. */
const scanError = (outlines: readonly Outline[]): number =>
  outlines.reduce((sum, outline) => sum + perimeter(outline) * STEP_M, 1e-5);

describe('areas against scanning line by line', () => {
  test('overlap, union and difference', () => {
    fc.assert(
      fc.property(shapes, shapes, (a, b) => {
        const both = scannedArea([a, b], true);
        const error = scanError([a, b]);
        expect(Math.abs(overlapArea(a, b) - both)).toBeLessThan(error);
        const { outlines, holes } = union([a, b]);
        const areaOf = (rings: readonly Outline[]) => rings.reduce((sum, ring) => sum + outlineArea(ring), 0);
        expect(Math.abs(areaOf(outlines) - areaOf(holes) - scannedArea([a, b], false))).toBeLessThan(error);
        const rest = difference([a], [b]);
        expect(areaOf(rest.outlines) - areaOf(rest.holes) + overlapArea(a, b)).toBeCloseTo(outlineArea(a), 5);
        expect(Math.abs(outlineArea(a) - scannedArea([a], true))).toBeLessThan(error);
      }),
      { numRuns: 40 },
    );
  });
  test('the centroid is where the scanned area balances', () => {
    fc.assert(
      fc.property(shapes, (outline) => {
        let [area, moment] = [0, 0];
        for (let yM = -1.2; yM < 1.9; yM += STEP_M) {
          const lengthM = lengthIn([outline], yM + STEP_M / 2 + 1e-7, true);
          area += lengthM;
          moment += lengthM * (yM + STEP_M / 2);
        }
        expect(outlineCentroid(outline).yM).toBeCloseTo(moment / area, 2);
      }),
      { numRuns: 40 },
    );
  });
});

describe('distance', () => {
  test('is that of the nearest of many points on the edges, and its ends lie on them', () => {
    fc.assert(
      fc.property(shapes, shapes, millimetres(0, 2500), (a, b, shiftM) => {
        const moved = b.map(({ xM, yM }) => ({ xM: xM + shiftM, yM }));
        const { distanceM, from, to } = distanceBetween(a, moved);
        if (overlap(a, moved).length > 0) {
          expect(distanceM).toBe(0);
          return;
        }
        const pointsOn = (outline: Outline) =>
          outline.flatMap((end, index) => {
            const start = outline.at(index - 1) ?? end;
            return Array.from({ length: 60 }, (_, step) => ({
              xM: start.xM + ((end.xM - start.xM) * step) / 60,
              yM: start.yM + ((end.yM - start.yM) * step) / 60,
            }));
          });
        let nearest = Number.POSITIVE_INFINITY;
        for (const p of pointsOn(a)) {
          for (const q of pointsOn(moved)) nearest = Math.min(nearest, Math.hypot(p.xM - q.xM, p.yM - q.yM));
        }
        expect(distanceM).toBeLessThanOrEqual(nearest + 1e-9);
        expect(distanceM).toBeGreaterThan(nearest - 0.03);
        expect(Math.hypot(to.xM - from.xM, to.yM - from.yM)).toBeCloseTo(distanceM, 9);
        const speck = (point: Point) => rectangle(point.xM - 1e-5, point.yM - 1e-5, 2e-5, 2e-5);
        expect(distanceBetween(speck(from), a).distanceM).toBe(0);
        expect(distanceBetween(speck(to), moved).distanceM).toBe(0);
      }),
      { numRuns: 60 },
    );
  });
});

describe('clearing moves', () => {
  const ways = { forward: [-1, 0], rearward: [1, 0], left: [0, -1], right: [0, 1] } as const;
  test('each clears, and no shorter move that way does', () => {
    let overlapping = 0;
    fc.assert(
      fc.property(shapes, shapes, (moving, fixed) => {
        const moves = clearingMoves(moving, fixed);
        const before = overlapArea(moving, fixed);
        if (before === 0) {
          expect(moves).toEqual([]);
          return;
        }
        if (before < 1e-4) return;
        overlapping += 1;
        expect(moves).toHaveLength(4);
        for (const { direction, distanceM } of moves) {
          const [dx, dy] = ways[direction];
          const leftAfter = (shareM: number) =>
            overlapArea(
              moving.map(({ xM, yM }) => ({ xM: xM + dx * shareM, yM: yM + dy * shareM })),
              fixed,
            );
          expect(leftAfter(distanceM)).toBeLessThan(5e-6);
          for (const share of [0.2, 0.5, 0.8, 0.97]) expect(leftAfter(distanceM * share)).toBeGreaterThan(0);
        }
        expect([...moves].sort((a, b) => a.distanceM - b.distanceM)).toEqual(moves);
      }),
      { numRuns: 200 },
    );
    expect(overlapping).toBeGreaterThan(60);
  });
});

describe('offset and contains', () => {
  test('what is grown by a distance holds discs of that radius about the corners, shrunk again it is held', () => {
    fc.assert(
      fc.property(shapes, millimetres(5, 200), (outline, byM) => {
        const grown = offset([outline], byM);
        for (const corner of outline) expect(contains(grown.outlines, disc(corner, byM))).toBe(true);
        expect(contains(grown.outlines, outline)).toBe(true);
        const [tooFar] = offset(grown.outlines, 0.003).outlines;
        expect(tooFar !== undefined && contains(grown.outlines, tooFar)).toBe(false);
        for (const core of offset([outline], -byM).outlines) expect(contains([outline], core)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a disc as an outline', () => {
  test('holds every point of the circle and stands out by at most 0.25 mm', () => {
    fc.assert(
      fc.property(
        millimetres(5, 1500),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (radiusM, angle) => {
          const outline = disc({ xM: 0, yM: 0 }, radiusM);
          const onCircle = { xM: radiusM * Math.cos(angle), yM: radiusM * Math.sin(angle) };
          const edges = outline.map((to, index) => [outline.at(index - 1) ?? to, to] as const);
          for (const [from, to] of edges) {
            const cross =
              (to.xM - from.xM) * (onCircle.yM - from.yM) - (to.yM - from.yM) * (onCircle.xM - from.xM);
            expect(cross).toBeGreaterThan(-1e-9);
          }
          for (const { xM, yM } of outline)
            expect(Math.hypot(xM, yM)).toBeLessThan(radiusM + 0.00025 + 1e-12);
        },
      ),
    );
  });
});
