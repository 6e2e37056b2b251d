import { describe, expect, test } from 'vitest';
import { materialNamed } from '../../src/catalogue/materials.ts';
import { findingOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** Half of the catalogue's band of a density, kg/m³. */
function halfBand(name: string): number {
  const material = materialNamed(name);
  if (!material) throw new Error(`no material ${name}`);
  return (material.highKgM3 - material.lowKgM3) / 2;
}

const tolerance = async (rest: string, rule = 'mass.total') =>
  (await findingOf(plan(rest), rule)).tolerance?.value ?? 0;

/** U = 2 u; a stated ± a has u = a / √3. */
const expanded = (...halfWidths: readonly number[]) => (2 * Math.hypot(...halfWidths)) / Math.sqrt(3);

describe('errors of one density are the same error', () => {
  const board = (name: string, material: string, area: string) =>
    `${name}: {area: ${area}, layers: [{material: ${material}, thickness: 10 mm}]}`;

  // 10 m² and 5 m² of 10 mm: 0.1 and 0.05 m³ of the same material are out together: (0.1 + 0.05) · band.
  test('two layers of one material add up', async () => {
    const found = await tolerance(
      `build_ups: {${board('a', 'birch plywood', '10 m2')}, ${board('b', 'birch plywood', '5 m2')}}`,
    );
    expect(found).toBeCloseTo(expanded(0.15 * halfBand('birch plywood')), 9);
  });

  test('two materials are independent: root of the sum of squares', async () => {
    const found = await tolerance(
      `build_ups: {${board('a', 'birch plywood', '10 m2')}, ${board('b', 'spruce', '5 m2')}}`,
    );
    expect(found).toBeCloseTo(expanded(0.1 * halfBand('birch plywood'), 0.05 * halfBand('spruce')), 9);
    expect(found).toBeLessThan(expanded(0.1 * halfBand('birch plywood') + 0.05 * halfBand('spruce')) - 0.1);
  });

  // A worktop of 0.02 m³ is made of the same stuff as 0.1 m³ of lining.
  test('a layer and a solid of one material add up too', async () => {
    const found = await tolerance(
      `build_ups: {${board('a', 'birch plywood', '10 m2')}}
fixtures: {top: {material: birch ply, size: {length: 1 m, width: 1 m, height: 20 mm}}}`,
    );
    expect(found).toBeCloseTo(expanded(0.12 * halfBand('birch plywood')), 9);
  });

  // On the rear axle a floor in the middle of the bay (x = 3 m) counts 3/4 and a lining of the doors (x = 5 m) 5/4; on
  // the front axle 1/4 and −1/4: there the one error loads and relieves it, and 0.1 − 0.05 m³ remain of it.
  test('and work against each other where one loads and one relieves an axle', async () => {
    const both = `build_ups:
  floor: {area: 10 m2, of: floor, layers: [{material: birch plywood, thickness: 10 mm}]}
  doors: {area: 5 m2, of: rear doors, layers: [{material: birch plywood, thickness: 10 mm}]}`;
    const band = halfBand('birch plywood');
    expect(await tolerance(both, 'balance.rear-axle')).toBeCloseTo(
      expanded((0.75 * 0.1 + 1.25 * 0.05) * band),
      9,
    );
    expect(await tolerance(both, 'balance.front-axle')).toBeCloseTo(
      expanded((0.25 * 0.1 - 0.25 * 0.05) * band),
      9,
    );
  });
});

describe('typed tolerances', () => {
  test('of different things are independent', async () => {
    expect(await tolerance('fixtures: {a: {mass: 30 kg ± 3 kg}, b: {mass: 40 kg ± 4 kg}}')).toBeCloseTo(
      expanded(3, 4),
      9,
    );
  });

  // Two and four shelves of ± 0.3 kg: ± 1.8 kg.
  test('of one parameter add up', async () => {
    const found = await tolerance(
      'params: {shelf: 2.4 kg ± 0.3 kg}\nfixtures: {a: {mass: 2 * shelf}, b: {mass: 4 * shelf}}',
    );
    expect(found).toBeCloseTo(expanded(1.8), 6);
  });

  // A tank in its middle at x = 3 m, half full: half of the ± 4 L.
  test('of a tank count with how full it is', async () => {
    const tank = 'tanks: {diesel tank: {contents: propane, holds: 40 kg ± 4 kg}}';
    expect(await tolerance(tank)).toBeCloseTo(expanded(4), 9);
    const state = await findingOf(
      plan(`${tank}\nload_states: {half: {diesel tank: 50 %}}`),
      'balance.load-states',
    );
    expect(state.tolerance?.value).toBeCloseTo(expanded(2), 9);
  });
});

// 100 kg ± 10 kg at x = 3 m ± 0.4 m, wheelbase 4 m: u(R_r)² = (3/4 · 10)² + (100 · 0.4 / 4)², over √3.
test('a mass and its place are independent of each other', async () => {
  const box =
    'fixtures: {box: {mass: 100 kg ± 10 kg, at: {from_front: 2 m ± 0.4 m, centred: true, above_floor: 0 m}}}';
  expect(await tolerance(box, 'balance.rear-axle')).toBeCloseTo(expanded(7.5, 10), 9);
});

// Wherever the bay begins, all in it is out by the same ± 0.02 m: 300 kg · 0.02 / 4, not the root of two parts.
test('the place of the load bay moves everything in it', async () => {
  const text = plan(
    `fixtures: {a: {mass: 100 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}, b: {mass: 200 kg, at: {from_front: 2 m, centred: true, above_floor: 0 m}}}`,
    { load_bay: '{behind_front_axle: 1 m ± 0.02 m, length: 4 m, width: 2 m, height: 2 m}' },
  );
  expect((await findingOf(text, 'balance.rear-axle')).tolerance?.value).toBeCloseTo(expanded(1.5), 9);
});

// A beam of PIR (65 kg/m³, a density without a band) of 0.1 × 0.1 × (1 ± 0.1) m from x = 1 m on: 0.65 kg at x = 1.5 m.
// Longer by 0.1 m it weighs 0.065 kg more and its centre is 0.05 m further back, both at once:
// rear 0.065 · 1.5 / 4 + 0.65 · 0.05 / 4, front 0.065 · 2.5 / 4 − 0.65 · 0.05 / 4.
test('an uncertain length moves the mass and the place of a solid together', async () => {
  const beam =
    'fixtures: {beam: {material: faced PIR, size: {length: 1 m ± 0.1 m, width: 0.1 m, height: 0.1 m}, at: {from_front: 0 m, centred: true}, on: floor}}';
  const shift = (0.65 * 0.05) / 4;
  expect(await tolerance(beam, 'balance.rear-axle')).toBeCloseTo(expanded((0.065 * 1.5) / 4 + shift), 12);
  expect(await tolerance(beam, 'balance.front-axle')).toBeCloseTo(expanded((0.065 * 2.5) / 4 - shift), 12);
});
