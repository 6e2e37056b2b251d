import { expect, test } from 'vitest';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const locker = `fixtures:
  cupboard: {mass: 20 kg, size: {length: 1 m, width: 500 mm, height: 900 mm}, at: {from_front: 0 mm, from_right: 0 mm, above_floor: 0 mm}}
  locker: {mass: 5 kg, in: cupboard, size: {length: 400 mm, width: 300 mm, height: 500 mm}, at: {from_front: 0 mm, from_left: 0 mm, above_floor: 0 mm}}
  hob: {mass: 3 kg, in: cupboard, size: {length: 400 mm, width: 300 mm, height: 100 mm}, at: {from_front: 500 mm, from_left: 0 mm, above_floor: 700 mm}}`;

test('the gas in cylinders is a mass, and a tank in litres is filled to four fifths', async () => {
  const { gas } = await buildOf(
    plan(`${locker}
tanks:
  cylinder: {contents: propane, holds: 6 kg, mass: 7 kg, in: locker, fixings: {count: 2, each: 100 kg}}
  tank: {contents: butane, holds: 20 L}
  water: {contents: fresh, holds: 20 L}
gas: {locker: {thing: locker, vent: {from_front: 100 mm, from_right: 0 mm, above_floor: 0 mm}}}`),
  );
  expect(gas?.stores).toMatchObject([
    {
      name: 'cylinder',
      gas: 'propane',
      holdsKg: 6,
      heldAs: 'mass',
      emptyKg: 7,
      fixed: true,
      hosts: ['locker', 'cupboard'],
    },
    { name: 'tank', gas: 'butane', heldAs: 'volume', fixed: false, hosts: [] },
  ]);
  // 20 L × 80 % × 0.579 kg/L.
  expect(gas?.stores[1]?.holdsKg).toBeCloseTo(0.02 * 0.8 * 579, 9);
  expect(gas?.locker?.floorM2).toBeCloseTo(0.12, 9);
  expect(gas?.locker?.hosts).toEqual(['cupboard']);
  expect(gas?.locker?.ventPlace?.yM).toBeCloseTo(1, 9);
});

test('an appliance knows what it takes and in what it stands', async () => {
  const { gas } = await buildOf(
    plan(`${locker}
gas:
  appliances:
    hob: {thing: hob, use: cooking, input: 3.2 kW, heating_value: net, flue: flueless}
    fire: {input: 160 g/h}
  manifold: {}
  pipes: {to hob: {from: manifold, to: hob, size: 8 mm, wall: 1 mm, length: 2 m, bends: 3}}`),
  );
  expect(gas?.appliances).toMatchObject([
    { name: 'hob', hosts: ['cupboard'], input: { powerW: 3200, heatingValue: 'net' }, flue: 'flueless' },
    { name: 'fire', hosts: [] },
  ]);
  expect(gas?.appliances[1]?.input).toMatchObject({ gasKgPerS: expect.closeTo(0.16 / 3600, 12) });
  expect(gas?.pipes).toMatchObject([
    { from: 'manifold', to: 'hob', sizeM: 0.008, wallM: 0.001, bends: 3, tees: 0 },
  ]);
});

test('a vent in the ceiling is high and one in the floor low; of one in a wall the plan says it', async () => {
  const { air } = await buildOf(
    plan(
      `air:
  vents:
    roof: {opening: hatch, free_area: 100 cm2}
    floor: {in: floor, free_area: 20 cm2}
    wall: {in: left wall, free_area: 30 cm2}
    high wall: {in: left wall, level: high, free_area: 30 cm2, serves: sink}
  fans: {fan: {vent: high wall, blows: exhaust, flow: 90 m3/h, pressure: 40 Pa}, other: {}}
fixtures: {sink: {mass: 1 kg}}`,
      {
        openings:
          '{hatch: {kind: vent, in: ceiling, length: 400 mm, width: 400 mm, at: {from_front: 1 m, centred: true}}}',
      },
    ),
  );
  expect(air?.vents.map(({ surface, level }) => [surface, level])).toEqual([
    ['ceiling', 'high'],
    ['floor', 'low'],
    ['left wall', undefined],
    ['left wall', 'high'],
  ]);
  expect(air?.vents[0]?.place?.xM).toBeCloseTo(1, 9);
  expect(air?.fans).toMatchObject([
    { name: 'fan', openFlowM3PerS: 0.025, stallPa: 40, serves: 'sink', vent: { name: 'high wall' } },
    { name: 'other' },
  ]);
});

test('furniture takes its room from the air, but never more than seven tenths of it', async () => {
  const { livingSpace } = await buildOf(plan(locker, { overall_width: '2.1 m' }));
  expect(livingSpace?.floorM2).toBeCloseTo(8, 9);
  expect(livingSpace?.grossM3).toBeCloseTo(16, 9);
  // What stands in the cupboard takes nothing more.
  expect(livingSpace?.airM3).toBeCloseTo(16 - 0.45, 9);
  expect(livingSpace?.outsidePlanM2).toBeCloseTo(12.6, 9);
  const crammed = await buildOf(
    plan(
      'fixtures: {block: {mass: 1 kg, size: {length: 4 m, width: 2 m, height: 2 m}, at: {from_front: 0 m, from_left: 0 m, above_floor: 0 m}}}',
    ),
  );
  expect(crammed.livingSpace?.airM3).toBeCloseTo(0.3 * 16, 9);
});

test('alarms are where the plan puts them, or where their fixture is', async () => {
  const { protection } = await buildOf(
    plan(`${locker}
protection:
  alarms: {gas: {kind: gas alarm, thing: locker}, smoke: {kind: smoke alarm, at: {from_front: 2 m, centred: true, above_floor: 1.9 m}}, carbon monoxide: {kind: carbon monoxide alarm, replace_by: 2031-05-01}}
  extinguisher: {kind: dry powder, holds: 2 kg, thing: hob}
  fire_blanket: {}`),
  );
  expect(protection?.alarms.map(({ place }) => place?.zM)).toEqual([
    expect.closeTo(0.25, 9),
    expect.closeTo(1.9, 9),
    undefined,
  ]);
  expect(protection?.alarms[2]?.replaceBy).toBe('2031-05-01');
  expect(protection?.extinguisher).toMatchObject({ holdsKg: 2, place: { zM: expect.closeTo(0.75, 9) } });
});

test('days and habits are as the plan has them; a long night is assumed for the cold', async () => {
  const { habits, assumptions } = await buildOf(
    plan(`water: {}
living: {nights_off_grid: 3, winter_low: -8 degC, parking_slope: 2 %, litres_per_person_day: 9 L, wet_clothes: 1 L}
people: {sleepers: [{stature: 1.7 m}, {stature: 1.8 m}]}`),
  );
  expect(habits).toEqual({
    people: 2,
    nightsOffGrid: 3,
    daysBetweenFills: 3,
    winterLowC: -8,
    coldSpellS: 57_600,
    asleepS: 28_800,
    parkingSlope: 0.02,
    waterPerPersonDayM3: expect.closeTo(0.009, 12),
    wetClothesKg: expect.closeTo(1, 12),
  });
  expect(assumptions.filter(({ path }) => path[0] === 'living')).toHaveLength(1);
});
