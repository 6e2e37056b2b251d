import { describe, expect, test } from 'vitest';
import { materialNamed } from '../../src/catalogue/materials.ts';
import { bodiesOf, bodyOf, buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const fixture = async (text: string) => bodyOf(await buildOf(plan(`fixtures: {box: {${text}}}`)), 'box');

describe('a fixture', () => {
  test('with its mass', async () => {
    expect(await fixture('mass: 24 kg ± 2 kg')).toMatchObject({
      massKg: 24,
      origin: 'typed',
      sort: 'fixture',
      massErrors: [{ source: 'fixtures.box.mass', standard: 2 / Math.sqrt(3) }],
    });
  });

  // 16 slats of 0.55 kg ± 0.05 kg off one shelf: 8.8 kg, and all sixteen are out the same way: ± 0.8 kg.
  test('as so many of one kind', async () => {
    const slats = await fixture('count: 16, each: 0.55 kg ± 0.05 kg');
    expect(slats.massKg).toBeCloseTo(8.8, 12);
    expect(slats.massErrors).toHaveLength(1);
    expect(slats.massErrors[0]?.standard).toBeCloseTo(0.8 / Math.sqrt(3), 12);
    expect(slats.origin).toBe('computed');
  });

  // 1.25 · 0.5 · 0.027 m³ of ash at 670 kg/m³ = 11.306 kg.
  test('solid, of a material', async () => {
    const worktop = await fixture('material: ash, size: {length: 1250 mm, width: 500 mm, height: 27 mm}');
    expect(worktop.massKg).toBeCloseTo(1.25 * 0.5 * 0.027 * 670, 9);
    const ash = materialNamed('ash');
    const halfBand = ((ash?.highKgM3 ?? 0) - (ash?.lowKgM3 ?? 0)) / 2;
    expect(worktop.massErrors).toEqual([
      { source: 'material ash', standard: expect.closeTo((halfBand * 1.25 * 0.5 * 0.027) / Math.sqrt(3), 9) },
    ]);
  });

  // 1 m ± 0.1 m of 10 kg: a tenth, and at the same time the centre is out by 0.05 m: one source, both effects.
  test('a solid of uncertain length is uncertain in mass and place from one source', async () => {
    const { massErrors, position, massKg } = await fixture(
      'material: ash, size: {length: 1 m ± 0.1 m, width: 0.1 m, height: 0.1 m}, at: {from_front: 0 m, centred: true}',
    );
    const source = 'fixtures.box.at.lengthways.size';
    expect(massErrors.find((term) => term.source === source)?.standard).toBeCloseTo(
      (0.1 * massKg) / Math.sqrt(3),
      9,
    );
    expect(position.x.errors).toEqual([{ source, standard: 0.05 / Math.sqrt(3) }]);
  });

  test('may be computed from parameters, and shares their tolerance', async () => {
    const build = await buildOf(
      plan('params: {shelf: 2.4 kg ± 0.3 kg}\nfixtures: {a: {mass: 2 * shelf}, b: {mass: 4 * shelf + 1 kg}}'),
    );
    expect(bodyOf(build, 'a').massKg).toBeCloseTo(4.8, 12);
    expect(bodyOf(build, 'b').massKg).toBeCloseTo(10.6, 12);
    expect(bodyOf(build, 'a').massErrors).toEqual([
      { source: 'params.shelf', standard: expect.closeTo(0.6 / Math.sqrt(3), 9) },
    ]);
    expect(bodyOf(build, 'b').massErrors).toEqual([
      { source: 'params.shelf', standard: expect.closeTo(1.2 / Math.sqrt(3), 9) },
    ]);
  });
});

describe('a tank', () => {
  const tank = async (text: string) => bodiesOf(await buildOf(plan(`tanks: {tank: {${text}}}`)), 'tank');

  // 70 L of fresh water at 1000 kg/m³ are 70 kg; the band from 997 to 1000 kg/m³ is ± 0.105 kg for 70 L.
  test('in litres: a shell, and what it holds', async () => {
    const [shell, contents, ...more] = await tank('contents: fresh, holds: 70 L, mass: 5.5 kg ± 0.5 kg');
    expect(more).toEqual([]);
    expect(shell).toMatchObject({ sort: 'tank', massKg: 5.5, origin: 'typed' });
    expect(shell?.variable).toBeUndefined();
    expect(contents).toMatchObject({
      sort: 'contents',
      origin: 'catalogue',
      path: ['tanks', 'tank', 'holds'],
      variable: { group: 'fresh', leastKg: 0, countedIn: 'volume', densityKgM3: 1000 },
    });
    expect(contents?.massKg).toBeCloseTo(70, 12);
    expect(contents?.massErrors).toEqual([
      { source: 'fluid fresh', standard: expect.closeTo(0.105 / Math.sqrt(3), 12) },
    ]);
  });

  test('in kilograms: no density comes into it', async () => {
    const [contents] = await tank('contents: propane, holds: 11 kg');
    expect(contents).toMatchObject({
      massKg: 11,
      origin: 'typed',
      massErrors: [],
      variable: { group: 'gas', mostKg: 11, countedIn: 'mass' },
    });
    expect(contents?.variable).not.toHaveProperty('densityKgM3');
  });

  test.each([
    { contents: 'fresh', group: 'fresh', kg: 100 },
    { contents: 'waste', group: 'waste', kg: 100 },
    { contents: 'diesel', group: 'fuel', kg: 84.5 },
    { contents: 'petrol', group: 'fuel', kg: 75 },
    { contents: 'propane', group: 'gas', kg: 51.2 },
    { contents: 'butane', group: 'gas', kg: 57.9 },
  ])('100 L of $contents are $kg kg', async ({ contents, group, kg }) => {
    const [found] = await tank(`contents: ${contents}, holds: 100 L`);
    expect(found?.massKg).toBeCloseTo(kg, 9);
    expect(found?.variable?.group).toBe(group);
  });
});

test('a store runs from empty to full', async () => {
  const build = await buildOf(
    plan('stores: {clothes: {full: 42 kg ± 6 kg, empty: 12 kg}, food: {full: 20 kg}}'),
  );
  expect(bodyOf(build, 'clothes')).toMatchObject({
    massKg: 42,
    variable: { group: 'stores', leastKg: 12, mostKg: 42, countedIn: 'mass' },
    massErrors: [{ source: 'stores.clothes.full', standard: 6 / Math.sqrt(3) }],
  });
  expect(bodyOf(build, 'food').variable?.leastKg).toBe(0);
});

/** What the supply of water is: what the fresh tanks hold together, or the waste tanks where there are no others. */
test.each([
  { tanks: 'a: {contents: fresh, holds: 70 L}, b: {contents: fresh, holds: 20 kg}', supplyKg: 90 },
  { tanks: 'a: {contents: fresh, holds: 70 L}, b: {contents: waste, holds: 100 L}', supplyKg: 70 },
  { tanks: 'b: {contents: waste, holds: 100 L}, c: {contents: waste, holds: 17 L}', supplyKg: 117 },
  { tanks: 'g: {contents: propane, holds: 11 kg}', supplyKg: 0 },
])('supply of {$tanks}: $supplyKg kg', async ({ tanks, supplyKg }) => {
  expect((await buildOf(plan(`tanks: {${tanks}}`))).supplyKg).toBeCloseTo(supplyKg, 12);
});
