import { describe, expect, test } from 'vitest';
import { assemble } from '../../src/build/assemble.ts';
import type { Build } from '../../src/build/build.ts';
import type { RoutedRun } from '../../src/build/routes.ts';
import { loadPlan } from '../../src/plan/load.ts';
import { assumptionsOf, bodiesOf, bodyOf, buildOf, placeOf, reportOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** Two boxes of 0.2 m whose middles are 0.1 m above the floor, on the centre line, 1 m and 3 m behind the front. */
const fixtures = `fixtures:
  battery: {mass: 20 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 90 cm, centred: true}}
  fridge: {mass: 20 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 290 cm, centred: true}}`;

const point = (fromFront: string, fromLeft: string, aboveFloor: string): string =>
  `{at: {from_front: ${fromFront}, from_left: ${fromLeft}, above_floor: ${aboveFloor}}}`;

/** Along the left wall: 1 m, 2 m and 3 m behind the front. */
const points = `
  points:
    first: ${point('1 m', '0 m', '0.1 m')}
    middle: ${point('2 m', '0 m', '0.1 m')}
    last: ${point('3 m', '0 m', '0.1 m')}`;

const routed = (routes: string, things = fixtures): Promise<Build> =>
  buildOf(plan(`${things}\nroutes:${routes}`));

function runOf({ routes }: Build, name = 'supply'): RoutedRun {
  const run = routes?.runs.find((each) => each.name === name);
  if (!run) throw new Error(`no run is called ${name}`);
  return run;
}

const supply = '\n  runs: {supply: {carries: cable, from: battery, to: fridge}}';
const both = `
  chases:
    front: {between: [first, middle], carries: [cable]}
    rear: {between: [middle, last], carries: [cable]}`;

describe('the way', () => {
  // Spurs of 1 m from the centre line to the wall, chases of 1 m: 4 m, and 10 % slack.
  test('goes by spurs and chases, with slack', async () => {
    const build = await routed(`${points}${both}${supply}`);
    const run = runOf(build);
    expect(run).toMatchObject({ way: 'chases', chases: ['front', 'rear'], slackShare: 0.1, missing: [] });
    expect(run.lengthM).toBeCloseTo(4.4, 12);
    expect(run.legs.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'spur battery',
      'chase front',
      'chase rear',
      'spur fridge',
    ]);
    for (const { lengthM } of run.legs) expect(lengthM).toBeCloseTo(1, 12);
    expect(assumptionsOf(build)).toEqual(
      expect.arrayContaining([
        '10 % slack on every way through the chases',
        "a run begins and ends at the middle of a thing's box",
      ]),
    );
  });

  test('has the slack that the plan gives, and none where it says so', async () => {
    const build = await routed(`\n  slack: 25 %${points}${both}${supply}`);
    expect(runOf(build).lengthM).toBeCloseTo(5, 12);
    expect(assumptionsOf(build).join()).not.toContain('slack');
    expect(runOf(await routed(`\n  slack: 0 %${points}${both}${supply}`)).lengthM).toBeCloseTo(4, 12);
  });

  // A spur up to a point 0.6 m above the floor: 1 m across and 0.5 m up.
  test('has drops in its spurs', async () => {
    const high = `
  points:
    first: ${point('1 m', '0 m', '0.6 m')}
    last: ${point('3 m', '0 m', '0.1 m')}
  chases: {only: {between: [first, last], carries: [cable]}}`;
    const [spur, chase] = runOf(await routed(`${high}${supply}`)).legs;
    expect(spur?.lengthM).toBeCloseTo(1.5, 12);
    expect(spur?.dropM).toBeCloseTo(0.5, 12);
    expect(chase?.lengthM).toBeCloseTo(2.5, 12);
  });

  test('takes the length that is typed for a chase', async () => {
    const typed = both.replace('carries: [cable]}', 'carries: [cable], length: 1.7 m}');
    expect(runOf(await routed(`\n  slack: 0 %${points}${typed}${supply}`)).lengthM).toBeCloseTo(4.7, 12);
  });

  test('is the shortest, and through what may carry it only', async () => {
    const more = `${both}
    detour: {between: [first, last], carries: [cable], length: 2.5 m}
    pipe: {between: [first, last], carries: [water], length: 0.5 m}`;
    expect(runOf(await routed(`${points}${more}${supply}`)).chases).toEqual(['front', 'rear']);
    const shorter = more.replace('2.5 m', '1.5 m');
    expect(runOf(await routed(`${points}${shorter}${supply}`)).chases).toEqual(['detour']);
  });

  // Nearer to the battery is a point that only water reaches.
  test('joins the nearest point that is permitted, of two as near the first of the plan', async () => {
    const near = `
  points:
    wet: ${point('1 m', '0.9 m', '0.1 m')}
    right: ${point('1 m', '2 m', '0.1 m')}
    first: ${point('1 m', '0 m', '0.1 m')}
    last: ${point('3 m', '0 m', '0.1 m')}
  chases:
    pipe: {between: [wet, last], carries: [water]}
    left: {between: [first, last], carries: [cable]}
    right: {between: [right, last], carries: [cable]}`;
    expect(runOf(await routed(`${near}${supply}`)).chases).toEqual(['right']);
    const water = supply.replace('cable', 'water');
    expect(runOf(await routed(`${near}${water}`)).chases).toEqual(['pipe']);
  });

  test('joins the points that the plan names', async () => {
    const named =
      '\n  runs: {supply: {carries: cable, from: battery, to: fridge, from_point: middle, to_point: middle}}';
    const run = runOf(await routed(`\n  slack: 0 %${points}${both}${named}`));
    expect(run).toMatchObject({ way: 'chases', chases: [] });
    // 1 m across and 1 m along, twice.
    expect(run.lengthM).toBeCloseTo(4, 12);
  });

  test('between points has no spurs', async () => {
    const run = runOf(
      await routed(`${points}${both}\n  runs: {supply: {carries: cable, from: last, to: first}}`),
    );
    expect(run.chases).toEqual(['rear', 'front']);
    expect(run.lengthM).toBeCloseTo(2.2, 12);
    expect(run.legs.map(({ kind }) => kind)).toEqual(['chase', 'chase']);
  });

  test('begins at the middle of the box, also where a corner is cut out or the thing stands on another', async () => {
    const things = `fixtures:
  bench: {mass: 20 kg, size: {length: 1 m, width: 1 m, height: 0.4 m}, at: {from_front: 1 m, from_left: 0 m}, cut_out: {corner: rear left, length: 0.5 m, width: 0.5 m}}
  lamp: {mass: 1 kg, size: {length: 0.1 m, width: 0.1 m, height: 0.2 m}, on: bench, at: {from_front: 0 m, from_left: 0 m}}`;
    const run = runOf(await routed('\n  runs: {supply: {carries: cable, from: bench, to: lamp}}', things));
    const [from, to] = run.legs[0]?.ends ?? [];
    expect([from?.xM, from?.yM, from?.zM]).toEqual([
      expect.closeTo(1.5, 12),
      expect.closeTo(-0.5, 12),
      expect.closeTo(0.2, 12),
    ]);
    expect([to?.xM, to?.yM, to?.zM]).toEqual([
      expect.closeTo(1.05, 12),
      expect.closeTo(-0.95, 12),
      expect.closeTo(0.5, 12),
    ]);
  });
});

describe('no way', () => {
  test('names the fewest chases that would do, and how far each end comes', async () => {
    const broken = `
  chases:
    front: {between: [first, middle], carries: [water]}
    door sill: {between: [middle, last], carries: [cable]}`;
    const water = supply.replace('cable', 'water').replace(', from:', ', to_point: last, from:');
    const run = runOf(await routed(`${points}${broken}${water}`));
    expect(run).toMatchObject({ way: 'none', chases: [], noWay: { blockers: ['door sill'] } });
    expect(run.noWay).toMatchObject({ fromReach: ['first', 'middle'], toReach: ['last'] });
    expect(run.lengthM).toBeUndefined();
    expect(run.massKg).toBeUndefined();
  });

  test('without such chases names where the two parts come nearest', async () => {
    const apart = `
  points:
    first: ${point('1 m', '0 m', '0.1 m')}
    second: ${point('1.5 m', '0 m', '0.1 m')}
    third: ${point('2.5 m', '0 m', '0.3 m')}
    last: ${point('3 m', '0 m', '0.1 m')}
  chases:
    front: {between: [first, second], carries: [cable]}
    rear: {between: [third, last], carries: [cable]}`;
    const { noWay } = runOf(await routed(`${apart}${supply}`));
    expect(noWay).toMatchObject({ blockers: [], gap: { from: 'second', to: 'third' } });
    expect(noWay?.gap?.distanceM).toBeCloseTo(1.2, 12);
  });

  test('would rather open one chase for it than one that holds what must be apart, and the one than two', async () => {
    const ways = `
  points:
    first: ${point('1 m', '0 m', '0.1 m')}
    middle: ${point('2 m', '0 m', '0.1 m')}
    last: ${point('3 m', '0 m', '0.1 m')}
    far: ${point('3 m', '0 m', '1.9 m')}
    bottle: ${point('0 m', '0 m', '0.1 m')}
  chases:
    gas: {between: [bottle, first], carries: [gas]}
    wires: {between: [first, last], carries: [cable]}
    wet: {between: [first, middle], carries: [water]}
    wetter: {between: [middle, last], carries: [water]}
    up: {between: [first, far], carries: [duct]}
    down: {between: [far, last], carries: [gas]}`;
    const gas =
      '\n  runs: {supply: {carries: gas, from: battery, to: fridge, from_point: bottle, to_point: last}}';
    expect(runOf(await routed(`${ways}${gas}`)).noWay?.blockers).toEqual(['up']);
    const without = ways.replace(/\n {4}(up|down).*/g, '');
    expect(runOf(await routed(`${without}${gas}`)).noWay?.blockers).toEqual(['wet', 'wetter']);
  });

  test('of a kind that no chase carries', async () => {
    const gas = supply.replace('cable', 'gas');
    expect(runOf(await routed(`${points}${both}${gas}`))).toMatchObject({
      way: 'none',
      noWay: { blockers: [] },
    });
    // Both ends are nearest to one point, and still nothing leads there.
    const one = '\n  runs: {supply: {carries: gas, from: first, to: first}}'.replace(
      'to: first',
      'to: battery',
    );
    expect(runOf(await routed(`${points}${both}${one}`)).way).toBe('none');
  });
});

describe('without chases', () => {
  // Two metres along, and 30 % more.
  test('it is the way along edges and an allowance', async () => {
    const build = await routed(supply);
    expect(runOf(build)).toMatchObject({ way: 'straight', slackShare: 0.3, chases: [] });
    expect(runOf(build).lengthM).toBeCloseTo(2.6, 12);
    expect(assumptionsOf(build)).toContain(
      'without chases, supply: the way along the van, across it and up or down, and 30 % more',
    );
  });

  test('the slack of the plan counts where it is more', async () => {
    expect(runOf(await routed(`\n  slack: 50 %${supply}`)).lengthM).toBeCloseTo(3, 12);
    expect(runOf(await routed(`\n  slack: 5 %${supply}`)).lengthM).toBeCloseTo(2.6, 12);
  });
});

describe('a length of the plan', () => {
  const typed = supply.replace('to: fridge', 'to: fridge, length: 7 m');
  test('is taken as it is, and the way is found all the same', async () => {
    const build = await routed(`${points}${both}${typed}`);
    expect(runOf(build)).toMatchObject({
      way: 'chases',
      lengthM: 7,
      lengthIsTyped: true,
      chases: ['front', 'rear'],
    });
    expect(assumptionsOf(build)).toContain('supply: the length is taken as it is typed, without slack');
    expect(assumptionsOf(build).join()).not.toContain('10 %');
  });

  test('does for a thing without a place', async () => {
    const run = runOf(await routed(typed, 'fixtures: {battery: {mass: 1 kg}, fridge: {mass: 1 kg}}'));
    expect(run).toMatchObject({ way: 'typed', lengthM: 7 });
  });
});

describe('an end without a place', () => {
  const missingOf = async (things: string, routes = supply) => runOf(await routed(routes, things)).missing;
  const box = 'mass: 1 kg, size: {length: 10 cm, width: 10 cm, height: 10 cm}';
  const fridge = `fridge: {${box}, at: {from_front: 1 m, from_left: 0 m}}`;

  test.each([
    { battery: 'mass: 1 kg, at: {from_front: 1 m}', keys: ['from_left', 'above_floor'] },
    { battery: 'mass: 1 kg, at: {from_left: 1 m, above_floor: 0 m}', keys: ['from_front'] },
    { battery: `${box}, at: {from_front: 1 m}`, keys: ['from_left'] },
    { battery: 'mass: 1 kg, on: floor, at: {from_front: 1 m, centred: true}', keys: [] },
  ])('$battery lacks $keys', async ({ battery, keys }) => {
    const missing = await missingOf(`fixtures: {battery: {${battery}}, ${fridge}}`);
    expect(missing).toEqual(keys.map((key) => `fixtures.battery.at.${key}`));
  });

  test('is that of what it stands in or on', async () => {
    const inside = `fixtures: {cupboard: {mass: 5 kg}, battery: {${box}, in: cupboard, at: {from_rear: 0 m, from_right: 0 m}}, ${fridge}}`;
    expect(await missingOf(inside)).toEqual([
      'fixtures.cupboard.size.length',
      'fixtures.cupboard.size.width',
      'fixtures.cupboard.at.from_front',
      'fixtures.cupboard.at.from_left',
      'fixtures.cupboard.at.above_floor',
    ]);
    const on = `fixtures: {cupboard: {mass: 5 kg, at: {from_front: 1 m, from_left: 0 m, above_floor: 0 m}}, battery: {${box}, on: cupboard, at: {from_front: 0 m, from_left: 0 m}}, ${fridge}}`;
    expect(await missingOf(on)).toEqual(['fixtures.cupboard.size.height']);
  });

  test('leaves the run without a length, but a named point with a way', async () => {
    const things = `fixtures: {battery: {mass: 1 kg}, ${fridge}}`;
    const run = runOf(await routed(supply, things));
    expect(run).toMatchObject({ way: 'unplaced' });
    expect(run.lengthM).toBeUndefined();
    expect(runOf(await routed(`${points}${both}${supply}`, things)).way).toBe('unplaced');
    const named = supply.replace('to: fridge', 'to: last, from_point: first');
    const half = runOf(await routed(`${points}${both}${named}`, things));
    expect(half).toMatchObject({ way: 'chases', chases: ['front', 'rear'] });
    expect(half.lengthM).toBeUndefined();
    expect(half.missing).toHaveLength(3);
  });

  test('without a load bay nothing has a place, and nothing throws', async () => {
    const text = plan(
      `fixtures: {battery: {mass: 1 kg}}\nroutes:${points}${both}
  runs: {supply: {carries: cable, from: battery, to: first, linear_mass: 1 kg/m}, other: {carries: cable, from: battery, to: first, length: 2 m, linear_mass: 1 kg/m}}`,
      {
        load_bay: undefined,
      },
    );
    const build = await buildOf(text);
    expect(runOf(build)).toMatchObject({ way: 'unplaced', missing: ['van.load_bay'] });
    expect(bodiesOf(build, 'other')).toMatchObject([{ massKg: 2 }]);
    expect(bodiesOf(build, 'other')[0]?.position).toBeUndefined();
    await reportOf(text);
  });
});

describe('the mass', () => {
  const heavy = supply.replace('to: fridge', 'to: fridge, count: 3, linear_mass: 0.5 kg/m ± 0.05 kg/m');
  // 4.4 m of three at half a kilogram: 6.6 kg. Spurs at x = 1 and 3 m with their middles at y = −0.5 m, chases at 1.5 and 2.5 m at the wall.
  test('acts at the middles of its legs, weighted by their lengths', async () => {
    const build = await routed(`${points}${both}${heavy}`);
    const body = bodyOf(build, 'supply');
    expect(body).toMatchObject({ sort: 'run', origin: 'computed', path: ['routes', 'runs', 'supply'] });
    expect(body.massKg).toBeCloseTo(6.6, 12);
    expect(runOf(build).massKg).toBe(body.massKg);
    const [x, y, z] = placeOf(build, 'supply');
    expect(x).toBeCloseTo(1 + 2, 12);
    expect(y).toBeCloseTo((-0.5 - 0.5 - 1 - 1) / 4, 12);
    expect(z).toBeCloseTo(0.1, 12);
    expect(body.massErrors).toEqual([
      {
        source: 'routes.runs.supply.linear_mass',
        standard: expect.closeTo((3 * 4.4 * 0.05) / Math.sqrt(3), 12),
      },
    ]);
  });

  test('is weighted: a long typed chase draws it', async () => {
    const long = both.replace('carries: [cable]}', 'carries: [cable], length: 7 m}');
    const [x, y] = placeOf(await routed(`${points}${long}${heavy}`), 'supply');
    expect(x).toBeCloseTo(1 + (1 + 7 * 1.5 + 2.5 + 3) / 10, 12);
    expect(y).toBeCloseTo((-0.5 - 7 - 1 - 0.5) / 10, 12);
  });

  // A metre of the ten ends at the battery; half of that leg moves with it.
  test('is out by what its ends are out by, in part', async () => {
    const vague = fixtures.replace('from_front: 90 cm', 'from_front: 90 cm ± 10 cm');
    const { position } = bodyOf(await routed(`${points}${both}${heavy}`, vague), 'supply');
    expect(position.x.errors).toEqual([
      { source: 'fixtures.battery.at.lengthways', standard: expect.closeTo(0.1 / Math.sqrt(3) / 8, 12) },
    ]);
    const bay =
      '{behind_front_axle: 1 m ± 0.1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m}';
    const build = await buildOf(plan(`${fixtures}\nroutes:${points}${both}${heavy}`, { load_bay: bay }));
    const total = bodyOf(build, 'supply').position.x.errors.reduce((sum, { standard }) => sum + standard, 0);
    expect(total).toBeCloseTo(0.1 / Math.sqrt(3), 12);
  });

  test('of a typed length without a way is half-way between the ends, or somewhere', async () => {
    const typed = heavy.replace('count: 3', 'count: 3, length: 2 m ± 0.2 m');
    const apart = both.replace(/\n {4}rear.*/, '').replaceAll('cable', 'water');
    const build = await routed(`${points}${apart}${typed}`);
    expect(runOf(build).way).toBe('none');
    expect(bodyOf(build, 'supply').massKg).toBeCloseTo(3, 12);
    expect(placeOf(build, 'supply')[0]).toBeCloseTo(1 + 2, 12);
    expect(bodyOf(build, 'supply').massErrors[1]?.standard).toBeCloseTo((3 * 0.5 * 0.2) / Math.sqrt(3), 12);
    const vague = await routed(typed, 'fixtures: {battery: {mass: 1 kg}, fridge: {mass: 1 kg}}');
    expect(placeOf(vague, 'supply')).toEqual([3, 0, 1]);
    expect(bodyOf(vague, 'supply').position.x.errors[0]?.standard).toBeCloseTo(2 / Math.sqrt(3), 12);
  });

  test('is not there without what a metre weighs, or without a length', async () => {
    expect(bodiesOf(await routed(`${points}${both}${supply}`), 'supply')).toEqual([]);
    expect(bodiesOf(await routed(`${points}${both}${heavy.replace('cable', 'gas')}`), 'supply')).toEqual([]);
  });

  test('is part of what the van weighs', async () => {
    const sum = ({ bodies }: Build) => bodies.reduce((all, { massKg }) => all + massKg, 0);
    const without = sum(await routed(`${points}${both}${supply}`));
    expect(sum(await routed(`${points}${both}${heavy}`))).toBeCloseTo(without + 6.6, 9);
  });
});

test('a plan without routes has none, and one with them asks for the routing', async () => {
  expect((await buildOf(plan(fixtures))).routes).toBeUndefined();
  const { plan: loaded } = await loadPlan(
    plan(`${fixtures}\nroutes:${supply}`),
    () => import('../../src/plan/calculator.ts'),
  );
  if (!loaded) throw new Error('the plan has problems');
  expect(() => assemble(loaded)).toThrow('routing');
});
