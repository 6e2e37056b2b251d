import { describe, expect, test } from 'vitest';
import type { Filling } from '../../src/build/build.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const things = `people: {seats: {driver: {mass: 80 kg}, passenger: {mass: 60 kg}}}
tanks:
  fresh tank: {contents: fresh, holds: 100 L}
  heater tank: {contents: diesel, holds: 10 L}
  waste tank: {contents: waste, holds: 80 L}
  gas cylinder: {contents: propane, holds: 11 kg}
stores: {clothes: {full: 40 kg, empty: 12 kg}, tools: {full: 24 kg, empty: 24 kg}}`;
const van = {
  unladen: '{front: 1000 kg, rear: 1000 kg, includes: {driver: false, fuel: 0 %}}',
  fuel_tank: '{holds: 100 L, fuel: diesel}',
};

const build = (rest: string) => buildOf(plan(`${things}\n${rest}`, van));
const masses = (filling: Filling | undefined) => Object.fromEntries(filling ?? []);

/** Everything full and everyone aboard, waste tanks empty. */
const usual = {
  fuel: 84.5,
  driver: 80,
  passenger: 60,
  clothes: 40,
  tools: 24,
  'fresh tank': 100,
  'heater tank': expect.closeTo(8.45, 9),
  'waste tank': 0,
  'gas cylinder': 11,
};

describe('a load state', () => {
  const state = async (fills: string) =>
    masses((await build(`load_states: {trip: {${fills}}}`)).states[0]?.filling);

  test('has everything full that it does not name, and waste tanks empty', async () => {
    expect(await state('')).toEqual({ ...usual, fuel: expect.closeTo(84.5, 9) });
  });

  test.each([
    { fill: 'fresh tank: 25 %', name: 'fresh tank', kg: 25 },
    { fill: 'fresh tank: 40 L', name: 'fresh tank', kg: 40 },
    { fill: 'fresh tank: 40 kg', name: 'fresh tank', kg: 40 },
    // 5 L of diesel at 845 kg/m³.
    { fill: 'heater tank: 5 L', name: 'heater tank', kg: 4.225 },
    { fill: 'fuel: 50 %', name: 'fuel', kg: 42.25 },
    { fill: 'fuel: 20 L', name: 'fuel', kg: 16.9 },
    { fill: 'waste tank: 100 %', name: 'waste tank', kg: 80 },
    { fill: 'gas cylinder: 50 %', name: 'gas cylinder', kg: 5.5 },
    // A store's gauge runs from its empty mass to its full one.
    { fill: 'clothes: 0 %', name: 'clothes', kg: 12 },
    { fill: 'clothes: 50 %', name: 'clothes', kg: 26 },
    { fill: 'clothes: 30 kg', name: 'clothes', kg: 30 },
    { fill: 'tools: 0 %', name: 'tools', kg: 24 },
    // A seat is taken or not.
    { fill: 'passenger: absent', name: 'passenger', kg: 0 },
    { fill: 'passenger: aboard', name: 'passenger', kg: 60 },
    { fill: 'driver: absent', name: 'driver', kg: 0 },
  ])('$fill: $kg kg', async ({ fill, name, kg }) => {
    expect((await state(fill))[name]).toBeCloseTo(kg, 9);
  });
});

describe('a ticket', () => {
  const ticket = async (text: string, states = '') =>
    (await build(`${states}\nweighed: {spring: {date: 2026-03-14, ${text}}}`)).tickets[0];

  test('has nothing aboard that it does not name: no one, and stores at their least', async () => {
    expect(masses((await ticket('total: 2000 kg'))?.filling)).toEqual({
      fuel: 0,
      driver: 0,
      passenger: 0,
      clothes: 12,
      tools: 24,
      'fresh tank': 0,
      'heater tank': 0,
      'waste tank': 0,
      'gas cylinder': 0,
    });
  });

  test('has what it names', async () => {
    const found = await ticket('total: 2000 kg, state: {driver: aboard, fuel: 50 %, clothes: 100 %}');
    expect(masses(found?.filling)).toMatchObject({ driver: 80, clothes: 40, passenger: 0 });
    expect(found?.filling.get('fuel')).toBeCloseTo(42.25, 9);
    expect(found?.assumed.join()).toContain('passenger');
    expect(found?.assumed.join()).not.toContain('driver');
  });

  test('may refer to a load state, which says everything', async () => {
    const found = await ticket('total: 2000 kg, state: trip', 'load_states: {trip: {passenger: absent}}');
    expect(masses(found?.filling)).toMatchObject({ driver: 80, passenger: 0, 'fresh tank': 100 });
    expect(found?.assumed).toEqual([]);
  });

  // 1200 ± 10 and 1000 ± 10 kg: 2200 kg ± 14.1 kg, the axles being weighed one after the other.
  test('adds up its axles', async () => {
    const found = await ticket('front: 1200 kg ± 10 kg, rear: 1000 kg ± 10 kg');
    expect(found?.total.value).toBe(2200);
    expect(found?.total.halfWidth).toBeCloseTo(Math.hypot(10, 10), 12);
  });

  test('leaves out what was not there, with all that is in or on it', async () => {
    const text = plan(
      `fixtures:
  bed: {mass: 20 kg}
  drawer: {mass: 3 kg, in: bed}
  box: {mass: 2 kg, on: drawer}
  lamp: {mass: 1 kg}
stores: {bedding: {full: 9 kg, on: bed}, pens: {full: 1 kg, in: box}}
weighed: {spring: {date: 2026-03-14, total: 2000 kg, without: [bed]}}`,
      van,
    );
    const [found] = (await buildOf(text)).tickets;
    expect([...(found?.absent ?? [])].sort()).toEqual(['bed', 'bedding', 'box', 'drawer', 'pens']);
  });
});

test('a van that was weighed without its routes was weighed without any cable or pipe, but with the rest', async () => {
  const build = await buildOf(
    plan(`fixtures: {battery: {mass: 20 kg, at: {from_front: 0 m, centred: true, above_floor: 0 m}}, fridge: {mass: 30 kg, at: {from_front: 3 m, centred: true, above_floor: 0 m}}}
routes: {runs: {supply: {carries: cable, from: battery, to: fridge, linear_mass: 1 kg/m}, return: {carries: cable, from: battery, to: fridge, linear_mass: 1 kg/m}}}
weighed: {spring: {date: 2026-03-14, total: 2000 kg, without: [routes]}, summer: {date: 2026-06-14, total: 2000 kg, without: [supply]}}`),
  );
  const labels = build.bodies.filter(({ sort }) => sort === 'run').map(({ label }) => label);
  expect(labels).toEqual(['supply', 'return']);
  const [spring, summer] = build.tickets.map(({ absent }) => [...absent].sort());
  expect(spring).toEqual(['return', 'routes', 'supply']);
  expect(summer).toEqual(['supply']);
});
