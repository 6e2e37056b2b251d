// Free boxes against a room of whole cells, in which every box can be tried.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxesBeside, boxesOver } from '../../../src/calc/space/box-cover.ts';
import { bestFit, type Cuboid, extentOf, freeBoxes, packsTogether } from '../../../src/calc/space/packing.ts';
import { boundsOf, within } from '../../../src/calc/space/plane.ts';

const size = 5;
const room: Cuboid = { least: [0, 0, 0], most: [size, size, size] };
const side = fc.tuple(fc.integer({ min: 0, max: size - 1 }), fc.integer({ min: 1, max: 3 }));
const cuboids: fc.Arbitrary<Cuboid> = fc
  .tuple(side, side, side)
  .map(([[x, l], [y, w], [z, h]]) => ({ least: [x, y, z], most: [x + l, y + w, z + h] }));
const rooms = fc.array(cuboids, { minLength: 3, maxLength: 9, size: 'max' });

const cells = [...Array(size).keys()];
const isTaken = (taken: readonly Cuboid[], at: readonly [number, number, number]): boolean =>
  taken.some(({ least, most }) =>
    at.every((value, axis) => value >= (least[axis] ?? 0) && value < (most[axis] ?? 0)),
  );

/** Whether some place for a box of whole sides keeps clear of all taken cells: every place is tried. */
function goesByTrying(taken: readonly Cuboid[], [l, w, h]: readonly [number, number, number]): boolean {
  const isFree = cells.map((x) => cells.map((y) => cells.map((z) => !isTaken(taken, [x, y, z]))));
  const all = (from: number, length: number) => Array.from({ length }, (_, index) => from + index);
  return cells.some((x) =>
    cells.some((y) =>
      cells.some((z) =>
        all(x, l).every((i) => all(y, w).every((j) => all(z, h).every((k) => isFree[i]?.[j]?.[k] === true))),
      ),
    ),
  );
}

describe('free boxes', () => {
  test('a thing goes in exactly where trying every place finds one', () => {
    const seen = { yes: 0, no: 0 };
    fc.assert(
      fc.property(
        rooms,
        fc.tuple(
          fc.integer({ min: 1, max: 4 }),
          fc.integer({ min: 1, max: 4 }),
          fc.integer({ min: 1, max: 4 }),
        ),
        (taken, [l, w, h]) => {
          const free = freeBoxes(room, taken);
          for (const upright of [true, false]) {
            const turned = [
              [l, w, h],
              [w, l, h],
              ...(upright
                ? []
                : [
                    [l, h, w],
                    [h, l, w],
                    [w, h, l],
                    [h, w, l],
                  ]),
            ];
            const expected = turned.some(([a = 0, b = 0, c = 0]) => goesByTrying(taken, [a, b, c]));
            const found = bestFit({ size: { lengthM: l, widthM: w, heightM: h }, upright }, free);
            expect(found?.fits === true).toBe(expected);
            seen[expected ? 'yes' : 'no']++;
          }
        },
      ),
      { numRuns: 150 },
    );
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(30);
  });

  test('none lies in another, none meets what is taken', () => {
    fc.assert(
      fc.property(rooms, (taken) => {
        const free = freeBoxes(room, taken);
        for (const [index, one] of free.entries()) {
          for (const { least, most } of taken)
            expect(
              [0, 1, 2].some(
                (axis) =>
                  (one.most[axis] ?? 0) <= (least[axis] ?? 0) || (one.least[axis] ?? 0) >= (most[axis] ?? 0),
              ),
            ).toBe(true);
          for (const [other, outer] of free.entries())
            expect(
              other !== index &&
                [0, 1, 2].every(
                  (axis) =>
                    (outer.least[axis] ?? 0) <= (one.least[axis] ?? 0) &&
                    (outer.most[axis] ?? 0) >= (one.most[axis] ?? 0),
                ),
            ).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  /** A room cut in two again and again is filled by its parts, in whatever order they come. */
  test('two halves and the rest go back into the room they were cut from', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }), (x, y) => {
        const parts: readonly Cuboid[] = [
          { least: [0, 0, 0], most: [x, size, size] },
          { least: [x, 0, 0], most: [size, y, size] },
          { least: [x, y, 0], most: [size, size, size] },
        ];
        const things = parts.map((part) => {
          const [lengthM, widthM, heightM] = extentOf(part);
          return { size: { lengthM, widthM, heightM }, upright: false };
        });
        expect(packsTogether(things, [room])).toBe(true);
      }),
      { numRuns: 16 },
    );
  });
});

describe('covers of odd outlines', () => {
  /** A star about (0.5, 0.5): one corner at each angle, near or far. */
  const stars = fc.array(fc.integer({ min: 100, max: 500 }), { minLength: 3, maxLength: 20 }).map((radii) =>
    radii.map((radius, index) => {
      const angle = (2 * Math.PI * index) / radii.length;
      const radiusM = radius / 1000;
      return { xM: 0.5 + radiusM * Math.cos(angle), yM: 0.5 + radiusM * Math.sin(angle) };
    }),
  );
  const has = (boxes: readonly Cuboid[], xM: number, yM: number): boolean =>
    boxes.some(({ least, most }) => xM >= least[0] && xM <= most[0] && yM >= least[1] && yM <= most[1]);

  test('every point of the body is covered by one, every other point of its box by the other', () => {
    const seen = { inside: 0, outside: 0, notTwice: 0 };
    fc.assert(
      fc.property(stars, (outline) => {
        const prism = { outline, bottomM: 0, topM: 1 };
        const { leastXM, mostXM, leastYM, mostYM } = boundsOf(outline);
        const [over, beside] = [boxesOver(prism), boxesBeside(prism)];
        for (let i = 1; i < 40; i++) {
          for (let j = 1; j < 40; j++) {
            const xM = leastXM + (i * (mostXM - leastXM)) / 40 + 1e-5;
            const yM = leastYM + (j * (mostYM - leastYM)) / 40 + 1e-5;
            const isInside = within({ xM, yM }, [outline]);
            expect(has(isInside ? over : beside, xM, yM)).toBe(true);
            seen[isInside ? 'inside' : 'outside']++;
            if (!has(isInside ? beside : over, xM, yM)) seen.notTwice++;
          }
        }
      }),
      { numRuns: 30 },
    );
    expect(Math.min(seen.inside, seen.outside)).toBeGreaterThan(3000);
    // Covers stand out a little, not by half the box.
    expect(seen.notTwice / (seen.inside + seen.outside)).toBeGreaterThan(0.8);
  });
});
