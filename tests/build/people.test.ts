import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/build/build.ts';
import { assumptionsOf, bodyOf, buildOf, placeOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const weighedEmpty = { unladen: '{front: 1000 kg, rear: 1000 kg, includes: {driver: false}}' };
const people = ({ bodies }: Build) =>
  bodies.filter(({ sort }) => sort === 'person').map(({ label }) => label);

describe('who is aboard', () => {
  test.each([
    { text: '', names: ['driver'], persons: 1 },
    { text: 'people: {seats: {passenger: {}}}', names: ['driver', 'passenger'], persons: 2 },
    { text: 'people: {seats: {driver: {}, child: {mass: 20 kg}}}', names: ['driver', 'child'], persons: 2 },
    // Everyone who sleeps in the van rides in it, unless seats say otherwise.
    {
      text: 'people: {sleepers: [{}, {}, {}]}',
      names: ['driver', 'passenger', 'passenger 2'],
      persons: 3,
    },
    { text: 'people: {sleepers: [{}, {}], seats: {driver: {}}}', names: ['driver'], persons: 1 },
  ])('$text', async ({ text, names, persons }) => {
    const build = await buildOf(plan(text, weighedEmpty));
    expect(people(build)).toEqual(names);
    expect(build.persons).toBe(persons);
  });

  test('the driver is always there, anyone else may be', async () => {
    const build = await buildOf(plan('people: {seats: {passenger: {mass: 60 kg}}}', weighedEmpty));
    expect(bodyOf(build, 'driver').variable).toMatchObject({ leastKg: 75, mostKg: 75 });
    expect(bodyOf(build, 'passenger').variable).toMatchObject({ leastKg: 0, mostKg: 60 });
  });

  // States go by names: a store of that name is 20 kg, and the passenger 75 kg, whoever is full.
  test('someone without a name is not called after a thing of the plan', async () => {
    const build = await buildOf(
      plan('people: {sleepers: [{}, {}]}\nstores: {passenger: {full: 20 kg}}', weighedEmpty),
    );
    expect(people(build)).toEqual(['driver', 'unnamed passenger']);
    expect(build.bodies.flatMap(({ variable }) => (variable ? [variable.name] : []))).toEqual([
      'driver',
      'unnamed passenger',
      'passenger',
    ]);
  });

  test('a driver in the unladen mass has no mass of his own, and is aboard', async () => {
    const build = await buildOf(plan('people: {seats: {driver: {mass: 90 kg}}}'));
    expect(people(build)).toEqual([]);
    expect(build.persons).toBe(1);
  });

  test('but is taken off and put on again where a ticket or a state may leave him out', async () => {
    for (const rest of [
      'weighed: {spring: {date: 2026-03-14, total: 2000 kg}}',
      'load_states: {towed: {driver: absent}}',
    ]) {
      const build = await buildOf(plan(`people: {seats: {driver: {mass: 90 kg ± 5 kg}}}\n${rest}`));
      const driver = bodyOf(build, 'driver');
      const before = bodyOf(build, 'driver already in the unladen mass');
      expect(driver.massKg + before.massKg).toBe(0);
      expect(before.position).toEqual(driver.position);
      expect(before.massErrors).toEqual([{ source: 'people.seats.driver', standard: -5 / Math.sqrt(3) }]);
    }
  });
});

describe('how heavy', () => {
  test('their own mass, or the one for all, or the usual one of the region', async () => {
    const build = await buildOf(
      plan('people: {mass: 80 kg ± 5 kg, seats: {driver: {mass: 90 kg}, passenger: {}}}', weighedEmpty),
    );
    expect(bodyOf(build, 'driver')).toMatchObject({ massKg: 90, massErrors: [], origin: 'typed' });
    expect(bodyOf(build, 'passenger')).toMatchObject({
      massKg: 80,
      massErrors: [{ source: 'people.seats.passenger', standard: 5 / Math.sqrt(3) }],
    });
    const silent = await buildOf(plan('', weighedEmpty, 'us'));
    expect(bodyOf(silent, 'driver')).toMatchObject({ massKg: 68, origin: 'assumed' });
    expect(assumptionsOf(silent).join()).toContain('driver: 68 kg, since no mass is given');
  });
});

describe('where they sit', () => {
  test('in the cab, ahead of the load bay', async () => {
    const build = await buildOf(
      plan(
        'people: {seats: {driver: {at: {from_front: -0.7 m, from_left: 1.3 m, above_floor: 0.6 m}}}}',
        weighedEmpty,
      ),
    );
    const [x, y, z] = placeOf(build, 'driver');
    expect(x).toBeCloseTo(0.3, 12);
    expect(y).toBeCloseTo(0.3, 12);
    expect(z).toBe(0.6);
    expect(assumptionsOf(build).join()).not.toContain('sits');
  });

  // Half way from the front axle (0 m) to the bay (1 m), a quarter of the bay's width from the middle, 0.4 to 0.9 m up.
  test.each([
    { codes: 'uk', driverY: 0.5 },
    { codes: 'au', driverY: 0.5 },
    { codes: 'eu', driverY: -0.5 },
    { codes: 'us', driverY: -0.5 },
  ])('no place is given, $codes', async ({ codes, driverY }) => {
    const build = await buildOf(
      plan('people: {seats: {driver: {}, passenger: {}, third: {}}}', weighedEmpty, codes),
    );
    expect(placeOf(build, 'driver')).toEqual([0.5, driverY, 0.65]);
    expect(placeOf(build, 'passenger')[1]).toBe(-driverY);
    expect(placeOf(build, 'third')[1]).toBe(0);
    expect(bodyOf(build, 'driver').position.x.errors[0]?.standard).toBeCloseTo(0.5 / Math.sqrt(3), 12);
    expect(assumptionsOf(build).join()).toContain('driver: sits between the front axle and the load bay');
    expect(assumptionsOf(build).join()).toContain('driver: centre of mass 400 mm to 900 mm above the floor');
  });
});
