import { expect, test } from 'vitest';
import { describe as inWords } from '../../src/build/worst-state.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const weighedEmpty = {
  unladen: '{front: 1000 kg, rear: 1000 kg, includes: {driver: false, fuel: 0 %}}',
  fuel_tank: '{holds: 100 L, fuel: diesel}',
};

const things = `people: {seats: {driver: {mass: 80 kg}, passenger: {mass: 60 kg}}}
tanks:
  fresh tank: {contents: fresh, holds: 100 L}
  waste tank: {contents: waste, holds: 80 L}
  toilet: {contents: waste, holds: 20 L}
  gas cylinder: {contents: propane, holds: 11 kg}
stores:
  clothes: {full: 40 kg, empty: 12 kg}
  food: {full: 20 kg}
  books: {full: 10 kg}
  bicycles: {full: 30 kg}
  tools: {full: 24 kg, empty: 24 kg}`;

/** Everything at its least, but for what is given. */
async function said(fills: Readonly<Record<string, number>>): Promise<string> {
  const build = await buildOf(plan(things, weighedEmpty));
  return inWords(build, new Map(Object.entries(fills))).text;
}

const full = {
  'fresh tank': 100,
  'gas cylinder': 11,
  clothes: 40,
  food: 20,
  books: 10,
  bicycles: 30,
  fuel: 84.5,
  passenger: 60,
};

test.each([
  { fills: {}, text: 'fresh empty, waste empty, 1 aboard, stores empty, fuel empty, gas empty' },
  { fills: full, text: 'fresh full, waste empty, 2 aboard, stores full, fuel full, gas full' },
  // Where all but one do the same, that one is named.
  {
    fills: { ...full, bicycles: 0 },
    text: 'fresh full, waste empty, 2 aboard, stores full but bicycles empty, fuel full, gas full',
  },
  {
    fills: { ...full, bicycles: 0, food: 10 },
    text: 'fresh full, waste empty, 2 aboard, stores full but food 50 % full and bicycles empty, fuel full, gas full',
  },
  // Of two tanks that differ neither is the rule: both are named.
  {
    fills: { 'waste tank': 80 },
    text: 'fresh empty, waste tank full, toilet empty, 1 aboard, stores empty, fuel empty, gas empty',
  },
  {
    fills: { 'fresh tank': 33.3 },
    text: 'fresh 33 % full, waste empty, 1 aboard, stores empty, fuel empty, gas empty',
  },
  // A store's gauge begins at its empty mass: 26 kg of 12 to 40 kg are half.
  {
    fills: { clothes: 26 },
    text: 'fresh empty, waste empty, 1 aboard, stores empty but clothes 50 % full, fuel empty, gas empty',
  },
  // A few grams more or less do not make a tank anything but full or empty.
  {
    fills: { 'fresh tank': 99.8, fuel: 0.3 },
    text: 'fresh full, waste empty, 1 aboard, stores empty, fuel empty, gas empty',
  },
])('$text', async ({ fills, text }) => {
  expect(await said(fills)).toBe(text);
});

// Two of two differ from each other; with fewer than four members each is named.
test('two stores that differ are both named', async () => {
  const build = await buildOf(plan('stores: {a: {full: 10 kg}, b: {full: 10 kg}}', weighedEmpty));
  expect(inWords(build, new Map([['a', 10]])).text).toContain('a full, b empty');
});

test('stores that never change say nothing but that they are there', async () => {
  const build = await buildOf(plan('stores: {tools: {full: 24 kg, empty: 24 kg}}'));
  expect(inWords(build, new Map()).text).toBe('1 aboard, stores full');
});

test('a driver in the unladen mass is aboard', async () => {
  const build = await buildOf(plan('people: {seats: {driver: {}, passenger: {mass: 60 kg}}}'));
  expect(inWords(build, new Map([['passenger', 60]])).text).toBe('2 aboard');
  expect(inWords(build, new Map()).text).toBe('1 aboard');
});

test('every variable mass is listed with what it weighs and how full it is', async () => {
  const build = await buildOf(plan('stores: {clothes: {full: 40 kg, empty: 12 kg}}'));
  expect(inWords(build, new Map([['clothes', 26]])).fills).toEqual([
    { name: 'clothes', massKg: 26, share: 0.5 },
  ]);
});
