import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/build/build.ts';
import { assumptionsOf, bodyOf, buildOf, placeOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** A layer of 1 kg/m², so that a mass is an area. */
const felt = 'layers: [{name: felt, areal_mass: 1 kg/m2}]';

const openings = `{sliding door: {in: left wall, length: 1 m, height: 1.5 m},
    window: {in: right wall, length: 0.5 m, height: 0.4 m}, hatch: {in: ceiling, length: 0.4 m, width: 0.4 m},
    drain: {in: floor, length: 0.2 m, width: 0.3 m}, rear window: {in: rear doors, width: 1 m, height: 0.5 m}}`;
const arches = '{from_front: 2 m, length: 0.8 m, width: 0.25 m, height: 0.3 m}';

/** The bay is 4 × 2 × 2 m. */
describe('the area of a surface', () => {
  test.each([
    // 4 · 2
    { of: 'floor', van: {}, areaM2: 8 },
    // 8 − 2 arches of 0.8 · 0.25 − 0.06
    { of: 'floor', van: { openings, wheel_arches: arches }, areaM2: 8 - 0.4 - 0.06 },
    { of: 'ceiling', van: { openings, wheel_arches: arches }, areaM2: 8 - 0.16 },
    { of: 'left wall', van: { openings }, areaM2: 8 - 1.5 },
    { of: 'right wall', van: { openings }, areaM2: 8 - 0.2 },
    // Both walls: 16 − 1.5 − 0.2; what the arches cover is lined over.
    { of: 'walls', van: { openings, wheel_arches: arches }, areaM2: 14.3 },
    { of: 'bulkhead', van: { openings }, areaM2: 4 },
    { of: 'rear doors', van: { openings }, areaM2: 4 - 0.5 },
    // Their lining is on the doors themselves.
    {
      of: 'rear doors',
      van: { openings: '{rear doors: {kind: door, in: rear doors, width: 1.8 m, height: 1.9 m}}' },
      areaM2: 4,
    },
    // An opening larger than the wall leaves nothing, not less.
    {
      of: 'left wall',
      van: { openings: '{awning side: {in: left wall, length: 9 m, height: 2 m}}' },
      areaM2: 0,
    },
  ])('$of: $areaM2 m²', async ({ of, van, areaM2 }) => {
    const build = await buildOf(plan(`build_ups: {lining: {of: ${of}, ${felt}}}`, van));
    expect(bodyOf(build, 'lining').massKg).toBeCloseTo(areaM2, 12);
    expect(build.buildUps[0]?.areaM2).toBeCloseTo(areaM2, 12);
  });

  test('is listed as computed, unless it was typed', async () => {
    const computed = await buildOf(plan(`build_ups: {lining: {of: floor, ${felt}}}`));
    expect(assumptionsOf(computed).join()).toContain('lining: covers 8.00 m², the floor of the load bay');
    const typed = await buildOf(plan(`build_ups: {lining: {of: floor, area: 5 m2, ${felt}}}`));
    expect(bodyOf(typed, 'lining').massKg).toBe(5);
    expect(assumptionsOf(typed).join()).not.toContain('covers');
  });
});

describe('where a surface acts', () => {
  const where = async (buildUp: string, van = {}) =>
    placeOf(await buildOf(plan(`build_ups: {lining: {${buildUp}, ${felt}}}`, van)), 'lining');

  test.each([
    { buildUp: 'of: floor', expected: [3, 0, 0] },
    { buildUp: 'of: ceiling', expected: [3, 0, 2] },
    { buildUp: 'of: walls', expected: [3, 0, 1] },
    { buildUp: 'of: left wall', expected: [3, -1, 1] },
    { buildUp: 'of: right wall', expected: [3, 1, 1] },
    { buildUp: 'of: bulkhead', expected: [1, 0, 1] },
    { buildUp: 'of: rear doors', expected: [5, 0, 1] },
    { buildUp: 'area: 3 m2', expected: [3, 0, 1] },
    {
      buildUp: 'area: 3 m2, at: {from_front: 1 m, from_left: 0.2 m, above_floor: 0.5 m}',
      expected: [2, -0.8, 0.5],
    },
  ])('$buildUp', async ({ buildUp, expected }) => {
    const found = await where(buildUp);
    expected.forEach((value, axis) => {
      expect(found[axis]).toBeCloseTo(value, 12);
    });
  });

  // Left 8 − 1.5 = 6.5 m², right 8 − 0.2 = 7.8 m²: (7.8 − 6.5) / 14.3 · 1 m = 0.0909 m to the right.
  test('the wall with the door in it is the lighter one', async () => {
    const found = await where('of: walls', { openings });
    expect(found[1]).toBeCloseTo(1.3 / 14.3, 12);
  });

  // An area alone may be anywhere: half of 4 m, of 2 m and of 2 m either way.
  test('an area without a place is as uncertain as the bay is large', async () => {
    const build = await buildOf(plan(`build_ups: {lining: {area: 3 m2, ${felt}}}`));
    const { x, y, z } = bodyOf(build, 'lining').position;
    expect([x, y, z].map(({ errors }) => errors[0]?.standard)).toEqual(
      [2, 1, 1].map((half) => half / Math.sqrt(3)),
    );
    expect(assumptionsOf(build).join()).toContain('lining: somewhere in the load bay');
  });

  test('what a place leaves open is listed', async () => {
    const build = await buildOf(plan(`build_ups: {lining: {area: 3 m2, ${felt}, at: {from_front: 1 m}}}`));
    expect(assumptionsOf(build).join()).toContain(
      'lining: somewhere across the width, taken at the middle; at any height',
    );
  });
});

describe('layers', () => {
  const massOf = async (layers: string, area = '10 m2') =>
    bodyOf(await buildOf(plan(`build_ups: {lining: {area: ${area}, layers: [${layers}]}}`)), 'lining');

  // 10 m² · 12 mm · 695 kg/m³ = 83.4 kg.
  test('a material with a thickness', async () => {
    expect((await massOf('{material: birch plywood, thickness: 12 mm}')).massKg).toBeCloseTo(83.4, 9);
  });

  // 83.4 + 10 · 0.05 · 20 · 0.85 (wool) + 10 · 0.02 · 0.08 · ρ (battens) + 10 · 1.2 (carpet).
  test('each with its share of the area, added up', async () => {
    const spruce = await massOf('{material: spruce, thickness: 20 mm, share: 8 %}');
    const wool = await massOf('{material: sheep wool, thickness: 50 mm, share: 85 %}');
    const carpet = await massOf('{name: carpet, areal_mass: 1.2 kg/m2}');
    expect(wool.massKg).toBeCloseTo(8.5, 9);
    expect(carpet.massKg).toBeCloseTo(12, 9);
    const all = await massOf(
      '{material: birch plywood, thickness: 12 mm}, {material: sheep wool, thickness: 50 mm, share: 85 %}, {material: spruce, thickness: 20 mm, share: 8 %}, {name: carpet, areal_mass: 1.2 kg/m2}',
    );
    expect(all.massKg).toBeCloseTo(83.4 + 8.5 + spruce.massKg + 12, 9);
    expect(spruce.massKg).toBeGreaterThan(0);
  });

  // ± 1 m² of 10 m² is a tenth of the mass, of all layers at once.
  test('the area of all of them is out together', async () => {
    const { massErrors } = await massOf(
      '{name: carpet, areal_mass: 1.2 kg/m2}, {name: felt, areal_mass: 0.8 kg/m2}',
      '10 m2 ± 1 m2',
    );
    expect(massErrors).toEqual([{ source: 'build_ups.lining.area', standard: 2 / Math.sqrt(3) }]);
  });

  // 12 mm ± 1 mm: 6.95 kg for a millimetre over 10 m². 1.2 ± 0.3 kg/m²: 3 kg. 50 % ± 10 %: 1 kg of 10.
  test('thickness, mass per area and share have tolerances of their own', async () => {
    const board = await massOf('{material: birch plywood, thickness: 12 mm ± 1 mm}');
    expect(board.massErrors[0]?.source).toBe('build_ups.lining.layers.0.thickness');
    expect(board.massErrors[0]?.standard).toBeCloseTo(6.95 / Math.sqrt(3), 9);
    const carpet = await massOf('{name: carpet, areal_mass: 1.2 kg/m2 ± 0.3 kg/m2}');
    expect(carpet.massErrors[0]?.standard).toBeCloseTo(3 / Math.sqrt(3), 9);
    const battens = await massOf('{name: battens, areal_mass: 1 kg/m2, share: 50 % ± 10 %}');
    expect(battens.massKg).toBeCloseTo(5, 12);
    expect(battens.massErrors[0]?.standard).toBeCloseTo(1 / Math.sqrt(3), 9);
  });
});

test('a build-up keeps its layers apart for the swaps', async () => {
  const build: Build = await buildOf(
    plan(
      'build_ups: {floor: {area: 2 m2, layers: [{material: birch ply, thickness: 12 mm}, {name: felt, areal_mass: 1 kg/m2}]}}',
    ),
  );
  expect(build.buildUps[0]?.layers.map(({ name, thicknessM, share }) => [name, thicknessM, share])).toEqual([
    ['birch plywood', 0.012, 1],
    ['felt', undefined, 1],
  ]);
  expect(build.buildUps[0]?.layers[0]?.massKg).toBeCloseTo(2 * 0.012 * 695, 9);
});
