import { expect, test } from 'vitest';
import type { Water } from '../../src/build/water.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** The load bay is 4 m long, 2 m wide and 2 m high. */
const things = `fixtures:
  sink: {mass: 4 kg, size: {length: 400 mm, width: 400 mm, height: 200 mm}, at: {from_front: 1 m, from_right: 0 mm, above_floor: 700 mm}}
  pump: {mass: 2 kg, size: {length: 200 mm, width: 200 mm, height: 100 mm}, at: {from_front: 3 m, from_right: 0 mm, above_floor: 0 mm}}
tanks:
  fresh tank: {contents: fresh, holds: 70 L, usable: 90 %, size: {length: 500 mm, width: 500 mm, height: 300 mm}, at: {from_front: 3.4 m, from_right: 0 mm, above_floor: 0 mm}}
  waste tank: {contents: waste, holds: 50 kg, size: {length: 500 mm, width: 500 mm, height: 200 mm}, at: {from_front: 1 m, centred: true, above_floor: -300 mm}}`;

const waterOf = async (rest: string): Promise<Water> => {
  const { water } = await buildOf(plan(`${things}\n${rest}`));
  if (!water) throw new Error('there is no water');
  return water;
};

test('pipes carry what comes to where they begin, through tees too, in whatever order they are written', async () => {
  const { pipes } = await waterOf(`water:
  pump: {thing: pump}
  heater: {kind: instant}
  outlets: {sink: {thing: sink}}
  tees: [cold tee, hot tee, drain tee]
  pipes:
    warm branch: {from: hot tee, to: sink}
    warm: {from: heater, to: hot tee}
    cold branch: {from: cold tee, to: sink}
    to heater: {from: cold tee, to: heater}
    cold: {from: pump, to: cold tee}
    draw: {from: fresh tank, to: pump}
    down: {from: drain tee, to: waste tank}
    waste: {from: sink, to: drain tee}
    filler: {from: outside, to: fresh tank}
    breather: {from: fresh tank, to: outside}
    dump: {from: waste tank, to: outside}
    nowhere: {from: waste tank, to: sink}`);
  expect(Object.fromEntries(pipes.map(({ name, role }) => [name, role]))).toEqual({
    'warm branch': 'hot',
    warm: 'hot',
    'cold branch': 'cold',
    'to heater': 'cold',
    cold: 'cold',
    draw: 'suction',
    down: 'drain',
    waste: 'drain',
    filler: 'fill',
    breather: 'vent',
    dump: 'drain',
    nowhere: 'apart',
  });
});

test('a pipe that begins at a tee which nothing leads to belongs to nothing', async () => {
  const { pipes } = await waterOf(
    'water: {tees: [tee], outlets: {sink: {thing: sink}}, pipes: {stray: {from: tee, to: sink}}}',
  );
  expect(pipes[0]?.role).toBe('apart');
});

test('water is drawn from the bottom of its tank, comes out at the top of a sink and leaves at its bottom', async () => {
  const { pipes } = await waterOf(`water:
  pump: {thing: pump}
  outlets: {sink: {thing: sink}, high tap: {thing: sink, above_floor: 1.1 m, waste_above_floor: 600 mm}}
  pipes:
    draw: {from: fresh tank, to: pump}
    cold: {from: pump, to: sink}
    waste: {from: sink, to: waste tank}
    to tap: {from: pump, to: high tap}
    from tap: {from: high tap, to: waste tank}`);
  const heights = Object.fromEntries(
    pipes.map(({ name, fromPlace, toPlace }) => [name, [fromPlace?.zM, toPlace?.zM]]),
  );
  expect(heights.draw?.[0]).toBeCloseTo(0, 9);
  expect(heights.draw?.[1]).toBeCloseTo(0.05, 9);
  expect(heights.cold?.[1]).toBeCloseTo(0.9, 9);
  expect(heights.waste?.[0]).toBeCloseTo(0.7, 9);
  // The waste tank is filled at its top, 100 mm below the floor.
  expect(heights.waste?.[1]).toBeCloseTo(-0.1, 9);
  expect(heights['to tap']?.[1]).toBeCloseTo(1.1, 9);
  expect(heights['from tap']?.[0]).toBeCloseTo(0.6, 9);
});

test('tanks know how much they hold, where they are, and whether a toilet fills them', async () => {
  const { water } = await buildOf(
    plan(`fixtures: {toilet: {is: toilet, mass: 5 kg, size: {length: 400 mm, width: 400 mm, height: 400 mm}, at: {from_front: 0 mm, from_left: 0 mm, above_floor: 0 mm}}}
tanks:
  cassette: {contents: waste, holds: 17 L, in: toilet}
  under: {contents: fresh, holds: 50 kg, heated: true, insulation: {material: elastomeric foam, thickness: 20 mm}, size: {length: 500 mm, width: 500 mm, height: 200 mm}, at: {from_front: 1 m, centred: true, above_floor: -300 mm}}
  gas: {contents: propane, holds: 6 kg}
water: {}`),
  );
  expect(water?.tanks.map(({ name }) => name)).toEqual(['cassette', 'under']);
  expect(water?.tanks[0]).toMatchObject({
    inToilet: true,
    usableShare: 1,
    usableGiven: false,
    heated: false,
  });
  expect(water?.tanks[1]).toMatchObject({ whereabouts: 'under the floor', heated: true, inToilet: false });
  // A litre weighs a kilogram.
  expect(water?.tanks[1]?.holdsM3).toBeCloseTo(0.05, 9);
  expect(water?.tanks[1]?.insulation).toMatchObject({
    thicknessM: 0.02,
    material: { name: 'elastomeric foam' },
  });
});

const routes = (runs: string, under = 'under floor') => `routes:
  slack: 10 %
  points:
    a: {at: {from_front: 3.1 m, from_right: 100 mm, above_floor: 50 mm}}
    b: {at: {from_front: 1.2 m, from_right: 100 mm, above_floor: 50 mm}}
    c: {at: {from_front: 1.2 m, from_right: 1 m, above_floor: -150 mm}}
  chases:
    along: {between: [a, b], carries: [water], runs: heated}
    down: {between: [b, c], carries: [water], runs: ${under}}
  runs: {${runs}}
`;

test('of a run, what lies in chases under the floor is in the frost, slack included', async () => {
  const { pipes } = await waterOf(`${routes('cold: {carries: water, from: a, to: c}')}
water: {pump: {}, outlets: {sink: {thing: sink}}, pipes: {cold: {from: pump, to: sink, run: cold}}}`);
  // The chase down is 900 mm across and 200 mm down, and a tenth more.
  expect(pipes[0]?.exposedM).toBeCloseTo(1.1 * 1.1, 9);
  expect(pipes[0]?.exposedIn).toEqual(['down']);
  // All of it: 1.9 m along and 1.1 m.
  expect(pipes[0]).toMatchObject({ lengthFrom: 'route' });
  expect(pipes[0]?.lengthM).toBeCloseTo(3 * 1.1, 9);
});

test('a run in heated chases is not in the frost', async () => {
  const { pipes } = await waterOf(`${routes('cold: {carries: water, from: a, to: c}', 'heated')}
water: {pump: {}, outlets: {sink: {thing: sink}}, pipes: {cold: {from: pump, to: sink, run: cold, length: 5 m}}}`);
  expect(pipes[0]).toMatchObject({ exposedM: 0, lengthM: 5, lengthFrom: 'typed' });
});

test('of a way without chases, what is below the floor is in the frost', async () => {
  const { pipes } = await waterOf(`routes: {runs: {waste: {carries: water, from: sink, to: waste tank}}}
water: {outlets: {sink: {thing: sink}}, pipes: {waste: {from: sink, to: waste tank, run: waste}}}`);
  // From the middle of the sink, 800 mm up, to the middle of the tank, 200 mm below the floor: a fifth of the way.
  const lengthM = pipes[0]?.lengthM ?? 0;
  expect(lengthM).toBeGreaterThan(1);
  expect(pipes[0]?.exposedM).toBeCloseTo(lengthM / 5, 9);
});

test('without a run, a pipe between two things inside is not in the frost, and of another nobody can tell', async () => {
  const { pipes } = await waterOf(
    'water: {pump: {thing: pump}, outlets: {sink: {thing: sink}}, pipes: {cold: {from: pump, to: sink}, waste: {from: sink, to: waste tank}}}',
  );
  expect(pipes.map(({ exposedM }) => exposedM)).toEqual([0, undefined]);
});

test('an outlet is used as its fixture says, and water goes down from taps and showers only', async () => {
  const { outlets } = (
    await buildOf(
      plan(`fixtures: {loo: {is: toilet, mass: 5 kg}, tray: {is: shower, mass: 5 kg}}
water: {outlets: {flush: {thing: loo}, wash: {thing: tray}, tap: {}, hose: {use: outside}}}`),
    )
  ).water ?? { outlets: [] };
  expect(outlets.map(({ use, drains }) => [use, drains])).toEqual([
    ['toilet', false],
    ['shower', true],
    ['tap', true],
    ['outside', false],
  ]);
});

test("a pump's curve is in order of its flow", async () => {
  const { pump } = await waterOf(
    'water: {pump: {curve: [{flow: 10 L/min, pressure: 0 bar}, {flow: 0 L/min, pressure: 2 bar}]}}',
  );
  expect(pump?.curve).toEqual([
    { flowM3PerS: 0, pressurePa: 200_000 },
    { flowM3PerS: expect.closeTo(0.01 / 60, 12), pressurePa: 0 },
  ]);
});
