// Random nets of chases, through the text of a plan, against Floyd and Warshall's algorithm.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bodiesOf, buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const kinds = ['cable', 'water', 'gas', 'duct'] as const;
const millimetres = fc.integer({ min: 0, max: 1800 });
const place: fc.Arbitrary<Place> = fc.record({ x: millimetres, y: millimetres, z: millimetres });
const kind = fc.constantFrom(...kinds);
const index = fc.nat();

const net = fc.record({
  points: fc.array(place, { minLength: 2, maxLength: 9 }),
  things: fc.array(place, { minLength: 2, maxLength: 5 }),
  chases: fc.array(
    fc.record({
      from: index,
      step: index,
      carries: fc.uniqueArray(kind, { minLength: 1 }),
      typedMm: fc.option(fc.integer({ min: 1, max: 4000 }), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 14 },
  ),
  runs: fc.array(
    fc.record({
      carries: kind,
      from: index,
      step: index,
      count: fc.integer({ min: 1, max: 4 }),
      gramsPerM: fc.integer({ min: 1, max: 500 }),
      join: fc.option(index, { nil: undefined }),
      toPoint: fc.boolean(),
    }),
    { minLength: 1, maxLength: 8 },
  ),
  slackPercent: fc.option(fc.integer({ min: 0, max: 40 }), { nil: undefined }),
});
type Net = typeof net extends fc.Arbitrary<infer T> ? T : never;

const apart = (a: Place, b: Place): number =>
  (Math.abs(a.x - b.x) + Math.abs(a.y - b.y) + Math.abs(a.z - b.z)) / 1000;

/** One of a list and another one, never the same. */
const two = (from: number, step: number, length: number): readonly [number, number] => [
  from % length,
  (from + 1 + (step % (length - 1))) % length,
];

function textOf({ points, things, chases, runs, slackPercent }: Net): string {
  const at = ({ x, y, z }: Place) => `{from_front: ${x} mm, from_left: ${y} mm, above_floor: ${z} mm}`;
  const endsOf = (run: Net['runs'][number]) => {
    const [from, to] = two(run.from, run.step, things.length);
    const join = run.join === undefined ? '' : `, from_point: p${run.join % points.length}`;
    return `from: t${from}, to: ${run.toPoint ? `p${to % points.length}` : `t${to}`}${join}`;
  };
  const size = 'size: {length: 100 mm, width: 100 mm, height: 100 mm}';
  return plan(
    [
      'fixtures:',
      ...things.map((each, at_) => `  t${at_}: {mass: 1 kg, ${size}, at: ${at(each)}}`),
      'routes:',
      ...(slackPercent === undefined ? [] : [`  slack: ${slackPercent} %`]),
      '  points:',
      ...points.map((each, at_) => `    p${at_}: {at: ${at(each)}}`),
      '  chases:',
      ...chases.map(({ from, step, carries, typedMm }, at_) => {
        const [a, b] = two(from, step, points.length);
        const typed = typedMm === undefined ? '' : `, length: ${typedMm} mm`;
        return `    c${at_}: {between: [p${a}, p${b}], carries: [${carries.join(', ')}]${typed}}`;
      }),
      '  runs:',
      ...runs.map(
        (run, at_) =>
          `    r${at_}: {carries: ${run.carries}, ${endsOf(run)}, count: ${run.count}, linear_mass: ${run.gramsPerM} g/m}`,
      ),
    ].join('\n'),
  );
}

/** The least lengths between all points through what may carry a kind: Floyd and Warshall. */
function allDistances({ points, chases }: Net, carries: (typeof kinds)[number]): number[][] {
  const distances = points.map((_, a) => points.map((__, b) => (a === b ? 0 : Number.POSITIVE_INFINITY)));
  const get = (a: number, b: number) => distances[a]?.[b] ?? Number.POSITIVE_INFINITY;
  const set = (a: number, b: number, value: number) => {
    const row = distances[a];
    if (row) row[b] = value;
  };
  for (const chase of chases) {
    if (!chase.carries.includes(carries)) continue;
    const [a, b] = two(chase.from, chase.step, points.length);
    const [pa, pb] = [points[a], points[b]];
    if (!pa || !pb) continue;
    const lengthM = chase.typedMm === undefined ? apart(pa, pb) : chase.typedMm / 1000;
    set(a, b, Math.min(get(a, b), lengthM));
    set(b, a, Math.min(get(b, a), lengthM));
  }
  for (const [k] of points.entries())
    for (const [a] of points.entries())
      for (const [b] of points.entries()) set(a, b, Math.min(get(a, b), get(a, k) + get(k, b)));
  return distances;
}

/** The length of a run, or undefined where there is no way. */
function lengthOf(given: Net, run: Net['runs'][number]): number | undefined {
  const { points, things, chases } = given;
  const permitted = chases.filter(({ carries }) => carries.includes(run.carries));
  if (permitted.length === 0) return undefined;
  const ends = new Set(permitted.flatMap(({ from, step }) => [...two(from, step, points.length)]));
  const [from, to] = two(run.from, run.step, things.length);
  const middle = (at: number): Place => {
    const { x = 0, y = 0, z = 0 } = things[at] ?? {};
    return { x: x + 50, y: y + 50, z: z + 50 };
  };
  const point = (at: number): Place => points[at] ?? { x: 0, y: 0, z: 0 };
  const nearest = (spot: Place): number =>
    [...points.keys()]
      .filter((at) => ends.has(at))
      .reduce(
        (best, at) => (apart(spot, point(at)) < apart(spot, point(best)) - 1e-12 ? at : best),
        Math.min(...ends),
      );
  const start = run.join === undefined ? nearest(middle(from)) : run.join % points.length;
  const end = run.toPoint ? to % points.length : nearest(middle(to));
  const wayM = allDistances(given, run.carries)[start]?.[end] ?? Number.POSITIVE_INFINITY;
  if (wayM === Number.POSITIVE_INFINITY) return undefined;
  const spursM = apart(middle(from), point(start)) + (run.toPoint ? 0 : apart(middle(to), point(end)));
  return (wayM + spursM) * (1 + (given.slackPercent ?? 10) / 100);
}

test('every way is as short as can be, and weighs what it is long', async () => {
  await fc.assert(
    fc.asyncProperty(net, async (given) => {
      const build = await buildOf(textOf(given));
      const routed = build.routes?.runs ?? [];
      expect(routed).toHaveLength(given.runs.length);
      let totalKg = 0;
      for (const [at, run] of given.runs.entries()) {
        const expectedM = lengthOf(given, run);
        const found = routed[at];
        expect(found?.way).toBe(expectedM === undefined ? 'none' : 'chases');
        if (expectedM === undefined) {
          expect(found?.lengthM).toBeUndefined();
          expect(found?.noWay).toBeDefined();
          continue;
        }
        expect(found?.lengthM).toBeCloseTo(expectedM, 9);
        const legsM = found?.legs.reduce((sum, { lengthM }) => sum + lengthM, 0) ?? 0;
        expect(legsM * (1 + (found?.slackShare ?? 0))).toBeCloseTo(expectedM, 9);
        for (const id of found?.chases ?? []) {
          const chase = build.routes?.chases.find((each) => each.id === id);
          expect(chase?.carries).toContain(run.carries);
        }
        const kg = (run.count * run.gramsPerM * expectedM) / 1000;
        expect(bodiesOf(build, `r${at}`)[0]?.massKg).toBeCloseTo(kg, 9);
        totalKg += kg;
      }
      const bodies = build.bodies.filter(({ sort }) => sort === 'run');
      expect(bodies.reduce((sum, { massKg }) => sum + massKg, 0)).toBeCloseTo(totalKg, 8);
    }),
    { numRuns: 60 },
  );
});

test('where there is no way, opening what is named makes one', async () => {
  await fc.assert(
    fc.asyncProperty(net, async (given) => {
      const build = await buildOf(textOf(given));
      const at = build.routes?.runs.findIndex(({ noWay }) => (noWay?.blockers.length ?? 0) > 0) ?? -1;
      const run = given.runs[at];
      const noWay = build.routes?.runs[at]?.noWay;
      if (!run || !noWay) return;
      const opened = given.chases.map((chase, index_) =>
        noWay.blockers.includes(`c${index_}`)
          ? { ...chase, carries: [...chase.carries, run.carries] }
          : chase,
      );
      // What is opened may be a nearer place to join: the ends stay as they are only where they are points.
      if (run.join === undefined || !run.toPoint) return;
      expect(lengthOf({ ...given, chases: opened }, run)).toBeDefined();
      for (const left of noWay.blockers)
        expect(
          lengthOf(
            {
              ...given,
              chases: opened.map((chase, index_) =>
                left === `c${index_}` ? (given.chases[index_] ?? chase) : chase,
              ),
            },
            run,
          ),
        ).toBeUndefined();
    }),
    { numRuns: 60 },
  );
});

test('the parts that each end reaches share no point, and no two of their points are nearer than the gap', async () => {
  await fc.assert(
    fc.asyncProperty(net, async (given) => {
      const build = await buildOf(textOf(given));
      for (const { noWay } of build.routes?.runs ?? []) {
        if (!noWay?.gap) continue;
        const { fromReach, toReach, gap } = noWay;
        expect(fromReach.filter((point) => toReach.includes(point))).toEqual([]);
        expect(fromReach).toContain(gap.from);
        expect(toReach).toContain(gap.to);
        const placeOf = (name: string) => given.points[Number(name.slice(1))] ?? { x: 0, y: 0, z: 0 };
        const least = Math.min(
          ...fromReach.flatMap((a) => toReach.map((b) => apart(placeOf(a), placeOf(b)))),
        );
        expect(gap.distanceM).toBeCloseTo(least, 9);
      }
    }),
    { numRuns: 60 },
  );
});
