import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intersection, overlap, thickerThan, union } from '../../../src/calc/space/clip.ts';
import { letsThrough, widestPassages } from '../../../src/calc/space/passage.ts';
import { type Outline, rectangle } from '../../../src/calc/space/plane.ts';

// What rectangles and yes-or-no questions are spared must come to the same as the long way.

const rectangles = (most: number, least = 1): fc.Arbitrary<Outline> =>
  fc
    .tuple(
      fc.integer({ min: 0, max: most }),
      fc.integer({ min: 0, max: most }),
      fc.integer({ min: least, max: most }),
      fc.integer({ min: least, max: most }),
      fc.integer({ min: 0, max: 3 }),
      fc.boolean(),
    )
    .map(([x, y, length, width, first, isTurned]) => {
      const corners = rectangle(x / 1000, y / 1000, length / 1000, width / 1000);
      const begun = [...corners.slice(first), ...corners.slice(0, first)];
      return isTurned ? begun.reverse() : begun;
    });

/** The same outline with a fifth corner, in the middle of an edge: no rectangle to the short way. */
function withFifthCorner(outline: Outline): Outline {
  const [a, b] = outline;
  if (!a || !b) return outline;
  return [a, { xM: (a.xM + b.xM) / 2, yM: (a.yM + b.yM) / 2 }, ...outline.slice(1)];
}

test('rectangles are cut like all other outlines, to the last corner', () => {
  // Beside a second outline, even one far away, a rectangle goes the long way.
  const far = rectangle(5, 5, 1, 1);
  fc.assert(
    fc.property(rectangles(12), rectangles(12), (a, b) => {
      const long = intersection([a, far], [b]).outlines;
      expect(intersection([a], [b]).outlines).toEqual(long);
      expect(overlap(a, b)).toEqual(long);
      const { outlines } = union([a, far]);
      expect(outlines).toHaveLength(2);
      expect(outlines).toContainEqual(union([a]).outlines[0]);
    }),
    { numRuns: 300 },
  );
});

test('a rectangle is as thick as every other outline', () => {
  fc.assert(
    fc.property(rectangles(12), fc.integer({ min: 1, max: 12 }), (outline, thickness) => {
      const isThick = (each: Outline) => thickerThan({ outlines: [each], holes: [] }, thickness / 1000);
      expect(isThick(outline)).toBe(isThick(withFifthCorner(outline)));
    }),
    { numRuns: 300 },
  );
});

test('a way lets a disc through up to its width and no wider', () => {
  const floor = rectangle(0, 0, 3, 2);
  const start = rectangle(0, 0, 0.01, 2);
  fc.assert(
    fc.property(
      fc.array(rectangles(1500, 100), { minLength: 1, maxLength: 8 }),
      fc.integer({ min: 1, max: 100 }),
      (obstacles, share) => {
        const goals = obstacles.slice(0, 2);
        const plan = { floor, obstacles, start, reachM: 0 };
        const widthM = Math.max(...widestPassages({ ...plan, goals }).map((passage) => passage.widthM));
        const isWay = (atLeastM: number) => letsThrough(plan, atLeastM)(goals);
        expect(isWay(widthM + 0.0005)).toBe(false);
        if (widthM > 0.0105) {
          expect(isWay(widthM - 0.0005)).toBe(true);
          expect(isWay((widthM * share) / 101)).toBe(true);
        }
      },
    ),
    { numRuns: 100 },
  );
});
