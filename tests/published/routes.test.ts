// Shortest ways and chase fill against published answers.
import { describe, expect, test } from 'vitest';
import { fillFraction } from '../../src/calc/space/chase-fill.ts';
import { type Chase, shortestRoute } from '../../src/calc/space/route.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { chaseFillFor } from '../../src/catalogue/fit-limits.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

describe('nine points, fourteen ways', () => {
  const source: Citation = {
    title:
      'lesson on shortest paths, nine vertices: distances 0 4 12 19 21 11 9 8 14 from vertex 0, with the paths',
    readAt: 'https://www.scholarhat.com/labs/java/dijkstra%E2%80%99s-shortest-path-algorithm',
    provenance: 'read',
    caution: 'the edges stand in a figure that was not seen; they are from memory of the usual example',
  };
  const edges = [
    [0, 1, 4],
    [0, 7, 8],
    [1, 2, 8],
    [1, 7, 11],
    [2, 3, 7],
    [2, 8, 2],
    [2, 5, 4],
    [3, 4, 9],
    [3, 5, 14],
    [4, 5, 10],
    [5, 6, 2],
    [6, 7, 1],
    [6, 8, 6],
    [7, 8, 7],
  ] as const;
  const chases: Chase[] = edges.map(([from, to, lengthM]) => {
    return { id: `${from}-${to}`, from: `${from}`, to: `${to}`, lengthM };
  });

  test.each([
    { to: 1, lengthM: 4, path: ['0-1'] },
    { to: 2, lengthM: 12, path: ['0-1', '1-2'] },
    { to: 3, lengthM: 19, path: ['0-1', '1-2', '2-3'] },
    { to: 4, lengthM: 21, path: ['0-7', '6-7', '5-6', '4-5'] },
    { to: 5, lengthM: 11, path: ['0-7', '6-7', '5-6'] },
    { to: 6, lengthM: 9, path: ['0-7', '6-7'] },
    { to: 7, lengthM: 8, path: ['0-7'] },
    { to: 8, lengthM: 14, path: ['0-1', '1-2', '2-8'] },
  ])('from 0 to $to', ({ to, lengthM, path }) => {
    const route = shortestRoute(chases, '0', `${to}`, () => true);
    expectPublished(route?.lengthM ?? Number.NaN, exactly(lengthM), source);
    expect(route?.chases.map(({ id }) => id)).toEqual(path);
  });
});

describe('chase fill', () => {
  test('four 10 AWG wires in half-inch tubing: 27.8 %', () => {
    const example: Citation = {
      title: 'conduit fill calculator, step-by-step example: 4 × 0.0211 / 0.304 sq in',
      readAt: 'https://bulkcalculator.com/electricalpowercalculator/calculators/conduit-fill.html',
      provenance: 'read',
      caution:
        'diameter 0.164 in read in NEC 2008, chapter 9, table 5; bore 0.622 in is from memory of table 4',
    };
    const published: Published = { value: 0.278, within: 0.0005, because: 'printed to 0.1 %' };
    expectPublished(fillFraction([0.164, 0.164, 0.164, 0.164], 0.622), published, example);
    expect(0.278).toBeLessThan(chaseFillFor(4).share);
  });

  test.each([
    { diameterIn: 0.111, areaIn2: 0.0097 },
    { diameterIn: 0.13, areaIn2: 0.0133 },
    { diameterIn: 0.216, areaIn2: 0.0366 },
    { diameterIn: 0.532, areaIn2: 0.2223 },
  ])('a wire of $diameterIn in covers $areaIn2 sq in of a bore of 1 sq in', ({ diameterIn, areaIn2 }) => {
    const table5: Citation = {
      title: 'NEC 2008, chapter 9, table 5',
      readAt: 'https://buildmyowncabin.com/nec/nec2008_chap9_table5.html',
      provenance: 'read',
    };
    const bore = Math.sqrt(4 / Math.PI);
    const published: Published = { value: areaIn2, within: 0.00005, because: 'printed to 0.0001 sq in' };
    expectPublished(fillFraction([diameterIn], bore), published, table5);
  });
});
