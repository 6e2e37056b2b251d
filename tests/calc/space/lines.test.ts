// Distances of straight lines in space, by hand and against a search.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  distanceOfLines,
  distanceToLine,
  type Line,
  straightDistance,
} from '../../../src/calc/space/lines.ts';

const at = (xM: number, yM: number, zM: number) => ({ xM, yM, zM });
const along: Line = [at(0, 0, 0), at(2, 0, 0)];

describe('by hand', () => {
  test.each<{ what: string; other: Line; distanceM: number }>([
    { what: 'parallel, above', other: [at(0, 0, 0.3), at(2, 0, 0.3)], distanceM: 0.3 },
    { what: 'parallel, further on', other: [at(5, 4, 0), at(9, 4, 0)], distanceM: 5 },
    { what: 'in one line, with a gap', other: [at(2.5, 0, 0), at(3, 0, 0)], distanceM: 0.5 },
    { what: 'the same', other: along, distanceM: 0 },
    { what: 'crossing above', other: [at(1, -1, 0.2), at(1, 1, 0.2)], distanceM: 0.2 },
    { what: 'crossing', other: [at(1, -1, 0), at(1, 1, 0)], distanceM: 0 },
    { what: 'pointing at the middle', other: [at(1, 0.7, 0), at(1, 2, 0)], distanceM: 0.7 },
    { what: 'skew, past the end', other: [at(5, -1, 4), at(5, 1, 4)], distanceM: 5 },
    { what: 'of no length', other: [at(1, 0.3, 0.4), at(1, 0.3, 0.4)], distanceM: 0.5 },
  ])('$what', ({ other, distanceM }) => {
    expect(distanceOfLines(along, other)).toBeCloseTo(distanceM, 12);
    expect(distanceOfLines(other, along)).toBeCloseTo(distanceM, 12);
    expect(distanceOfLines([along[1], along[0]], other)).toBeCloseTo(distanceM, 12);
  });

  test('a place and a line', () => {
    expect(distanceToLine(at(1, 3, 4), along)).toBe(5);
    expect(distanceToLine(at(-3, 4, 0), along)).toBe(5);
  });
});

// The distance to a line is convex along the other one, so a search by thirds finds its least.
test('against a search', () => {
  const place = fc.record({
    xM: fc.double({ min: -2, max: 2, noNaN: true }),
    yM: fc.double({ min: -2, max: 2, noNaN: true }),
    zM: fc.double({ min: -2, max: 2, noNaN: true }),
  });
  const line = fc.tuple(place, place);
  const searched = ([from, to]: Line, other: Line): number => {
    const distanceM = (share: number) =>
      distanceToLine(
        at(
          from.xM + share * (to.xM - from.xM),
          from.yM + share * (to.yM - from.yM),
          from.zM + share * (to.zM - from.zM),
        ),
        other,
      );
    let [low, high] = [0, 1];
    for (let step = 0; step < 200; step += 1) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
      if (distanceM(a) <= distanceM(b)) high = b;
      else low = a;
    }
    return distanceM((low + high) / 2);
  };
  fc.assert(
    fc.property(line, line, (a, b) => {
      expect(distanceOfLines(a, b)).toBeCloseTo(searched(a, b), 6);
      expect(distanceOfLines(a, b)).toBeLessThanOrEqual(straightDistance(a[0], b[0]) + 1e-12);
    }),
  );
});
