// Bodies, shells, openings, fits and routes against brute force, on random ones.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { disc } from '../../../src/calc/space/disc.ts';
import { boxFits, longestLying, rectangleFitsTurned } from '../../../src/calc/space/fit-in.ts';
import { boundsOf, rectangle, within } from '../../../src/calc/space/plane.ts';
import { type Prism, pairsThatOverlap, prismOverlap } from '../../../src/calc/space/prism.ts';
import { type Chase, routesThrough } from '../../../src/calc/space/route.ts';
import { outOfShell, type Shell } from '../../../src/calc/space/shell.ts';
import { doorSweep } from '../../../src/calc/space/swing.ts';

const millimetres = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => value / 1000);

const prisms: fc.Arbitrary<Prism> = fc
  .tuple(
    fc.oneof(
      fc
        .tuple(millimetres(0, 2000), millimetres(0, 1500), millimetres(10, 900), millimetres(10, 600))
        .map(([xM, yM, lengthM, widthM]) => rectangle(xM, yM, lengthM, widthM)),
      fc
        .tuple(millimetres(0, 2000), millimetres(0, 1500), millimetres(20, 300))
        .map(([xM, yM, radiusM]) => disc({ xM, yM }, radiusM)),
    ),
    millimetres(-100, 1500),
    millimetres(5, 900),
  )
  .map(([outline, bottomM, heightM]) => ({ outline, bottomM, topM: bottomM + heightM }));

describe('bodies', () => {
  test('the sweep finds the pairs that comparing each with each finds', () => {
    let pairs = 0;
    fc.assert(
      fc.property(fc.array(prisms, { minLength: 10, maxLength: 25, size: 'max' }), (bodies) => {
        const expected = bodies.flatMap((a, first) =>
          bodies.flatMap((b, second) => {
            const overlap = first < second ? prismOverlap(a, b) : undefined;
            return overlap === undefined ? [] : [{ first, second, overlap }];
          }),
        );
        expect(pairsThatOverlap(bodies)).toEqual(expected);
        pairs += expected.length;
      }),
      { numRuns: 40 },
    );
    expect(pairs).toBeGreaterThan(150);
  });
  test('boxes share what their bounds share', () => {
    const boxes = prisms.filter(({ outline }) => outline.length === 4);
    fc.assert(
      fc.property(boxes, boxes, (a, b) => {
        const [one, other] = [boundsOf(a.outline), boundsOf(b.outline)];
        const lengthM = Math.min(one.mostXM, other.mostXM) - Math.max(one.leastXM, other.leastXM);
        const widthM = Math.min(one.mostYM, other.mostYM) - Math.max(one.leastYM, other.leastYM);
        const heightM = Math.min(a.topM, b.topM) - Math.max(a.bottomM, b.bottomM);
        const found = prismOverlap(a, b);
        if (Math.min(lengthM, widthM, heightM) < 0.0005) expect(found).toBeUndefined();
        else expect(found?.volumeM3).toBeCloseTo(lengthM * widthM * heightM, 9);
        // With one more corner in the middle of a side it is no box to the eye, but the same body.
        const [first, second] = a.outline;
        if (first === undefined || second === undefined) return;
        const halfway = { xM: (first.xM + second.xM) / 2, yM: (first.yM + second.yM) / 2 };
        const sameBody = { ...a, outline: [first, halfway, ...a.outline.slice(1)] };
        expect(prismOverlap(sameBody, b)?.volumeM3 ?? 0).toBeCloseTo(found?.volumeM3 ?? 0, 6);
      }),
      { numRuns: 300 },
    );
  });
});

describe('the shell', () => {
  const shells: fc.Arbitrary<Shell> = fc
    .record({
      profile: fc.uniqueArray(fc.record({ heightM: millimetres(0, 2000), widthM: millimetres(900, 1900) }), {
        minLength: 1,
        maxLength: 6,
        selector: ({ heightM }) => heightM,
      }),
      heights: fc.uniqueArray(
        fc.record({ fromFrontM: millimetres(0, 3300), heightM: millimetres(900, 2100) }),
        {
          minLength: 1,
          maxLength: 5,
          selector: ({ fromFrontM }) => fromFrontM,
        },
      ),
      lengthM: millimetres(1500, 3300),
    })
    .map((shell) => ({ ...shell, centreYM: 0.9 }));

  /** By the two given places about it, found by looking at all pairs. */
  const valueAt = (given: readonly (readonly [number, number])[], at: number): number => {
    const before = given.filter(([place]) => place <= at).sort((a, b) => b[0] - a[0])[0];
    const after = given.filter(([place]) => place >= at).sort((a, b) => a[0] - b[0])[0];
    if (before === undefined) return after?.[1] ?? Number.NaN;
    if (after === undefined || after[0] === before[0]) return before[1];
    return before[1] + ((after[1] - before[1]) * (at - before[0])) / (after[0] - before[0]);
  };

  test('sticking out is what a search in steps of a millimetre finds', () => {
    fc.assert(
      fc.property(prisms, shells, fc.boolean(), (body, shell, leans) => {
        const { leastXM, leastYM, mostXM, mostYM } = boundsOf(body.outline);
        const profile = shell.profile.map(({ heightM, widthM }) => [heightM, widthM] as const);
        const heights = shell.heights.map(({ fromFrontM, heightM }) => [fromFrontM, heightM] as const);
        const worst = { front: -leastXM, rear: mostXM - shell.lengthM, left: -9, right: -9, top: -9 };
        const topM = leans ? body.bottomM : body.topM;
        for (let heightM = body.bottomM; heightM <= topM + 1e-9; heightM += 0.001) {
          const halfM = valueAt(profile, heightM) / 2;
          worst.left = Math.max(worst.left, 0.9 - halfM - leastYM);
          worst.right = Math.max(worst.right, mostYM - 0.9 - halfM);
        }
        for (let xM = leastXM; xM <= mostXM + 1e-9; xM += 0.001) {
          worst.top = Math.max(worst.top, body.topM - valueAt(heights, xM));
        }
        const found = outOfShell(body, shell, { leans });
        for (const face of ['front', 'rear', 'left', 'right', 'top'] as const) {
          const byM = found.find((out) => out.face === face)?.byM ?? 0;
          const expected = worst[face] > 0.0005 ? worst[face] : 0;
          // A slope of the profile may be steep: a step of the search is then worth more than a millimetre of width.
          expect(byM).toBeGreaterThanOrEqual(expected - 1e-6);
          if (byM > 0 && steepest([...profile, ...heights]) < 2)
            expect(byM).toBeLessThan(worst[face] + 0.004);
        }
      }),
      { numRuns: 150 },
    );
  });
  const steepest = (given: readonly (readonly [number, number])[]): number =>
    Math.max(
      0,
      ...given.flatMap((a) =>
        given.map((b) => (a[0] === b[0] ? 0 : Math.abs((a[1] - b[1]) / (a[0] - b[0])))),
      ),
    );
});

describe('a door', () => {
  test('every place the leaf passes is in its sweep, wherever it stands open', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('front', 'rear', 'left', 'right'),
        fc.constantFrom('left', 'right'),
        millimetres(50, 400),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (face, hinge, leafM, opened, along) => {
          const box = { xM: 0.3, yM: 0.2, lengthM: 0.4, widthM: 0.4 };
          const sweep = doorSweep(box, face, hinge, leafM);
          // Turned so that the face looks rearward, someone before it has the left end at y = 0.
          const angle = (opened * Math.PI) / 2;
          const fromEnd = along * leafM * Math.cos(angle);
          const out = along * leafM * Math.sin(angle);
          const across = hinge === 'left' ? fromEnd : 0.4 - fromEnd;
          const place = {
            rear: { xM: 0.7 + out, yM: 0.2 + across },
            right: { xM: 0.7 - across, yM: 0.6 + out },
            front: { xM: 0.3 - out, yM: 0.6 - across },
            left: { xM: 0.3 + across, yM: 0.2 - out },
          }[face];
          expect(within(place, [sweep])).toBe(true);
        },
      ),
      { numRuns: 400 },
    );
  });
});

describe('fits', () => {
  test('a rectangle in a rectangle, against trying angles', () => {
    fc.assert(
      fc.property(
        millimetres(50, 3000),
        millimetres(50, 3000),
        millimetres(200, 2000),
        millimetres(200, 2000),
        (p, q, a, b) => {
          // How far the turned rectangle sticks out at the best of many angles; it changes by at most (p + q) · step.
          const angles = 4000;
          let least = Number.POSITIVE_INFINITY;
          for (let index = 0; index <= angles; index++) {
            const angle = (Math.PI / 2) * (index / angles);
            const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
            least = Math.min(least, Math.max(p * cos + q * sin - a, p * sin + q * cos - b));
          }
          const fits = rectangleFitsTurned({ lengthM: p, widthM: q }, { lengthM: a, widthM: b });
          if (least <= 0) expect(fits).toBe(true);
          if (least > (p + q) * (Math.PI / 2 / angles)) expect(fits).toBe(false);
        },
      ),
      { numRuns: 600 },
    );
  });
  test('a rectangle made to fit exactly at an angle fits, a little longer it does not', () => {
    fc.assert(
      fc.property(
        millimetres(1200, 2200),
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        fc.double({ min: 0.05, max: 0.7, noNaN: true }),
        (p, slenderness, angle) => {
          const q = p * slenderness;
          const room = {
            lengthM: p * Math.cos(angle) + q * Math.sin(angle),
            widthM: p * Math.sin(angle) + q * Math.cos(angle),
          };
          expect(rectangleFitsTurned({ lengthM: p, widthM: q }, room)).toBe(true);
          const longest = longestLying(q, room) ?? 0;
          expect(longest).toBeGreaterThan(p - 1e-5);
          expect(rectangleFitsTurned({ lengthM: longest + 1e-4, widthM: q }, room)).toBe(false);
        },
      ),
    );
  });
  test('a box in a hole, against trying all ways round', () => {
    const sizes = fc.tuple(millimetres(1, 9), millimetres(1, 9), millimetres(1, 9));
    fc.assert(
      fc.property(sizes, sizes, fc.boolean(), ([a, b, c], [x, y, z], upright) => {
        const ways = [
          [a, b, c],
          [b, a, c],
          ...(upright
            ? []
            : [
                [a, c, b],
                [c, a, b],
                [b, c, a],
                [c, b, a],
              ]),
        ];
        const expected = ways.some(([l = 0, w = 0, h = 0]) => l <= x && w <= y && h <= z);
        const box = { lengthM: a, widthM: b, heightM: c };
        expect(boxFits(box, { lengthM: x, widthM: y, heightM: z }, { upright })).toBe(expected);
      }),
      { numRuns: 500 },
    );
  });
});

describe('routes', () => {
  const networks = fc.array(
    fc.record({
      from: fc.integer({ min: 0, max: 8 }),
      to: fc.integer({ min: 0, max: 8 }),
      lengthM: millimetres(0, 3000),
      use: fc.constantFrom('cable', 'water', 'both'),
    }),
    { maxLength: 24 },
  );
  test('as short as the table of all shortest ways (Floyd and Warshall) says, and made of permitted chases', () => {
    fc.assert(
      fc.property(networks, (network) => {
        const chases = network.map(({ from, to, lengthM, use }, index): Chase & { use: string } => {
          return { id: `${index}`, from: `p${from}`, to: `p${to}`, lengthM, use };
        });
        const permitted = ({ use }: { use: string }) => use !== 'water';
        const points = Array.from({ length: 9 }, (_, index) => `p${index}`);
        const table = new Map<string, number>(points.map((point) => [`${point} ${point}`, 0]));
        const known = (from: string, to: string) => table.get(`${from} ${to}`) ?? Number.POSITIVE_INFINITY;
        for (const { from, to, lengthM } of chases.filter(permitted)) {
          table.set(`${from} ${to}`, Math.min(known(from, to), lengthM));
          table.set(`${to} ${from}`, Math.min(known(to, from), lengthM));
        }
        for (const via of points) {
          for (const from of points) {
            for (const to of points) {
              table.set(`${from} ${to}`, Math.min(known(from, to), known(from, via) + known(via, to)));
            }
          }
        }
        const routeBetween = routesThrough(chases, permitted);
        for (const from of points) {
          for (const to of points) {
            const route = routeBetween(from, to);
            expect(route?.lengthM ?? Number.POSITIVE_INFINITY).toBeCloseTo(known(from, to), 9);
            let at = from;
            for (const chase of route?.chases ?? []) {
              expect(permitted(chase)).toBe(true);
              expect([chase.from, chase.to]).toContain(at);
              at = at === chase.from ? chase.to : chase.from;
            }
            if (route !== undefined) expect(at).toBe(to);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
