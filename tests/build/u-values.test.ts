import { describe, expect, test } from 'vitest';
import type { EnvelopePart, EnvelopeSurface } from '../../src/build/heat.ts';
import { ribsOn, type SurfaceU, surfaceU } from '../../src/build/u-values.ts';
import { planesOf } from '../../src/build/wall-planes.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const ribsAlong =
  '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ribs: [{in: left wall, from_front: 1 m, width: 50 mm}, {in: left wall, from_front: 3 m, width: 50 mm}]}';

async function partOf(layers: string, surface: EnvelopeSurface = 'left wall', heat = '', ribs = false) {
  const build = await buildOf(
    plan(
      `build_ups: {lining: {of: ${surface}, layers: [${layers}]}}\nheat: {${heat}}`,
      ribs ? { load_bay: ribsAlong } : {},
    ),
  );
  const part = build.heat?.envelope.find((each) => each.surface === surface);
  if (!part || !build.heat) throw new Error('there is no such surface');
  return { build, heat: build.heat, part };
}

async function uOf(...given: Parameters<typeof partOf>): Promise<SurfaceU> {
  const { build, heat, part } = await partOf(...given);
  const found = surfaceU(part, heat, ribsOn(part.surface, build));
  if (!found) throw new Error('a layer is not known');
  return found;
}

const planes = (part: EnvelopePart) => planesOf(part.layers, 'horizontal');

describe('planes', () => {
  test('layers side by side are one plane as thick as the thickest, the rest of it still air', async () => {
    const { part } = await partOf(
      '{material: sheep wool, thickness: 50 mm, share: 85 %}, {material: spruce, thickness: 20 mm, share: 8 %}, {material: poplar plywood, thickness: 6 mm}',
    );
    const [insulation, lining, ...more] = planes(part).planes;
    expect(more).toEqual([]);
    expect(insulation?.thicknessM).toBe(0.05);
    expect(insulation?.paths.map(({ share }) => share)).toEqual([0.85, 0.08, expect.closeTo(0.07, 12)]);
    // 50 mm / 0.045; 20 mm / 0.15 and a gap of 30 mm (0.18 upright at 50 mm, 0.17 at 25 mm: 0.172); a gap of 50 mm.
    expect(insulation?.paths.map(({ resistanceM2KPerW }) => resistanceM2KPerW)).toEqual([
      expect.closeTo(0.05 / 0.045, 9),
      expect.closeTo(0.02 / 0.15 + 0.172, 9),
      expect.closeTo(0.18, 9),
    ]);
    expect(lining?.paths).toHaveLength(1);
  });

  test.each([
    { shares: [60, 40, 30], planes: 2 },
    { shares: [60, 50], planes: 2 },
    { shares: [100, 50], planes: 2 },
    { shares: [50, 30, 20], planes: 1 },
  ])('shares of $shares %: $planes', async ({ shares, planes: expected }) => {
    const layers = shares.map((share) => `{material: XPS, thickness: 10 mm, share: ${share} %}`).join(', ');
    expect(planes((await partOf(layers)).part).planes).toHaveLength(expected);
  });

  test('a foil between two layers parts them', async () => {
    const { part } = await partOf(
      '{material: sheep wool, thickness: 50 mm, share: 85 %}, {name: foil, areal_mass: 0.1 kg/m2, vapour_air_layer: 50 m}, {material: spruce, thickness: 20 mm, share: 8 %}',
    );
    expect(planes(part).planes).toHaveLength(2);
    expect(planes(part).missing).toEqual([]);
  });

  test('a layer without a material has no resistance until the plan gives one', async () => {
    const { part } = await partOf('{material: XPS, thickness: 20 mm}, {name: mat, areal_mass: 1 kg/m2}');
    expect(planes(part).missing).toEqual([
      'build_ups.lining.layers[1].thickness',
      'build_ups.lining.layers[1].conductivity',
    ]);
    const given = await partOf(
      '{name: mat, areal_mass: 1 kg/m2, thickness: 20 mm, conductivity: 0.04 W/m/K}',
    );
    expect(planes(given.part).planes[0]?.paths[0]?.resistanceM2KPerW).toBeCloseTo(0.5, 12);
  });
});

describe('U-values', () => {
  // 36 mm / 0.036 = 1; skin 1 mm / 50 = 0.00002.
  test.each([
    { surface: 'left wall' as const, inside: 0.13 },
    { surface: 'ceiling' as const, inside: 0.1 },
    { surface: 'floor' as const, inside: 0.17 },
  ])('of even layers, with the films of the $surface', async ({ surface, inside }) => {
    const { uValue, leastUValue, greatestUValue } = await uOf('{material: XPS, thickness: 36 mm}', surface);
    expect(uValue).toBeCloseTo(1 / (inside + 0.04 + 1 + 0.00002), 9);
    expect(leastUValue).toBeCloseTo(uValue, 9);
    expect(greatestUValue).toBeCloseTo(uValue, 9);
  });

  // Half XPS (1), half a gap of 36 mm (0.1744): paths 1.17002 and 0.34442; upper 2 / (1/1.17002 + 1/0.34442) = 0.53219;
  // lower 0.17002 + 2 / (1 + 1/0.1744) = 0.46701; mean 0.49960.
  test('of layers side by side by the combined method', async () => {
    const { uValue, leastUValue, greatestUValue } = await uOf(
      '{material: XPS, thickness: 36 mm, share: 50 %}',
    );
    expect(uValue).toBeCloseTo(1 / 0.4996, 3);
    expect(leastUValue).toBeCloseTo(1 / 0.53219, 3);
    expect(greatestUValue).toBeCloseTo(1 / 0.46701, 3);
  });

  test('bare skin has its films alone', async () => {
    const { heat, part } = await partOf('{material: XPS, thickness: 36 mm}', 'ceiling');
    expect(surfaceU({ ...part, layers: [] }, heat, undefined)?.uValue).toBeCloseTo(1 / 0.14002, 9);
  });

  // Two ribs of two webs of 1 mm in 4 m: 2 mm of metal every 2 m. Straight through one: 0.17 + 0.00002 + 36 mm / 50.
  test('ribs make a range, and a cold line', async () => {
    const { uValue, leastUValue, greatestUValue, clearUValue, ribLineUValue, ribs } = await uOf(
      '{material: XPS, thickness: 36 mm}',
      'left wall',
      'ribs: {depth: 36 mm, metal: 1 mm}',
      true,
    );
    expect(ribs).toMatchObject({ depthM: expect.closeTo(0.036, 12), metalM: 0.002, spacingM: 2 });
    expect(ribs?.flangeM).toBeCloseTo(0.05, 12);
    expect(clearUValue).toBeCloseTo(1 / 1.17002, 9);
    expect(ribLineUValue).toBeCloseTo(1 / (0.17002 + 0.00072), 6);
    // Lower bound: 0.17002 + 1 / (0.001 / 0.00072 + 0.999 / 1) = 0.17002 + 0.41878.
    expect(greatestUValue).toBeCloseTo(1 / 0.5888, 3);
    expect(leastUValue).toBeLessThan(uValue);
    expect(uValue).toBeLessThan(greatestUValue);
    expect(uValue).toBeGreaterThan(clearUValue);
  });

  test('what covers a rib warms its line; insulation over its head does too', async () => {
    const bare = await uOf('{material: XPS, thickness: 36 mm}', 'left wall', 'ribs: {depth: 36 mm}', true);
    const covered = await uOf(
      '{material: XPS, thickness: 36 mm}',
      'left wall',
      'ribs: {depth: 36 mm, covered_by: {material: elastomeric foam, thickness: 10 mm}}',
      true,
    );
    const deeper = await uOf('{material: XPS, thickness: 72 mm}', 'left wall', 'ribs: {depth: 36 mm}', true);
    // 10 mm / 0.05 = 0.2; 36 mm of XPS are 1.
    expect(covered.ribLineUValue).toBeCloseTo(1 / (0.17002 + 0.00072 + 0.2), 4);
    expect(deeper.ribLineUValue).toBeCloseTo(1 / (0.17002 + 0.00072 + 1), 4);
    expect(covered.uValue).toBeLessThan(bare.uValue);
  });

  test('ribs that are described and not placed are usual ones on walls and ceiling', async () => {
    const { build } = await partOf('{material: XPS, thickness: 36 mm}', 'floor', 'ribs: {metal: 1.2 mm}');
    expect(ribsOn('ceiling', build)).toMatchObject({ spacingM: 0.5, metalM: 0.0024, depthM: 0.045 });
    expect(ribsOn('floor', build)).toBeUndefined();
  });

  test('ribs behind a lining without insulation change nothing', async () => {
    const { ribLineUValue } = await uOf('{material: birch plywood, thickness: 6 mm}', 'left wall', '', true);
    expect(ribLineUValue).toBeUndefined();
  });
});
