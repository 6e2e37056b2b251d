// The squares that edges are laid out in, against looking at every edge.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Edge, pointToEdge } from '../../../src/calc/space/distance.ts';
import { edgeGrid } from '../../../src/calc/space/edge-grid.ts';
import { boundsNear, boundsOf, edgesOf, rectangle } from '../../../src/calc/space/plane.ts';

const millimetres = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => value / 1000);
const rings = fc.array(
  fc
    .tuple(millimetres(0, 3000), millimetres(0, 1500), millimetres(1, 700), millimetres(1, 400))
    .map(([xM, yM, lengthM, widthM]) => rectangle(xM, yM, lengthM, widthM)),
  { minLength: 1, maxLength: 40, size: 'max' },
);
const places = fc.record({ xM: millimetres(-1000, 4000), yM: millimetres(-1000, 3000) });

test('the nearest edge up to a cap, and whether one comes within a distance', () => {
  fc.assert(
    fc.property(rings, places, millimetres(1, 2500), (outlines, place, capM) => {
      const grid = edgeGrid(outlines);
      const nearestM = Math.min(
        ...outlines.flatMap(edgesOf).map((edge) => pointToEdge(place, edge).distanceM),
      );
      expect(grid.distanceUpTo(place, capM)).toBeCloseTo(Math.min(nearestM, capM), 9);
      if (Math.abs(nearestM - capM) > 1e-9) expect(grid.comesWithin(place, capM)).toBe(nearestM < capM);
      expect(grid.comesWithin(place, -capM)).toBe(false);
    }),
    { numRuns: 400 },
  );
});

test('the edges near bounds, each once', () => {
  fc.assert(
    fc.property(rings, places, places, millimetres(0, 600), (outlines, one, other, marginM) => {
      const bounds = boundsOf([one, other]);
      const inOrder = (edges: readonly Edge[]) => edges.map((edge) => JSON.stringify(edge)).sort();
      const expected = outlines
        .flatMap(edgesOf)
        .filter((edge) => boundsNear(boundsOf(edge), bounds, marginM));
      expect(inOrder(edgeGrid(outlines).near(bounds, marginM))).toEqual(inOrder(expected));
    }),
    { numRuns: 200 },
  );
});

test('no edges at all', () => {
  const grid = edgeGrid([]);
  expect(grid.distanceUpTo({ xM: 0, yM: 0 }, 0.3)).toBe(0.3);
  expect(grid.comesWithin({ xM: 0, yM: 0 }, 0.3)).toBe(false);
});
