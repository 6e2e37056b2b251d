import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { EnvelopePart, Heat, HeatLayer } from '../../../src/build/heat.ts';
import { type RibFigures, surfaceU } from '../../../src/build/u-values.ts';
import { materialNamed } from '../../../src/catalogue/materials.ts';

/*
 * Adding insulation never raises the loss of a surface. It holds for insulation that conducts at most 1 / 22 W/(m·K), the
 * best that a gap of still air does in the tables (5 mm with 0.11 m²·K/W), since where ribs set the depth it takes the place
 * of a gap. Stiff boards of 0.05 W/(m·K) really are worse than the thin gap that they fill, and so is a layer that covers
 * only a part of the area and pushes a whole gap away (the last two tests).
 */
const bestAirWPerMK = 1 / 22;

const steel = materialNamed('steel');
if (!steel) throw new Error('no steel');
const heat: Heat = {
  path: ['heat'],
  insideC: 20,
  asleepC: 16,
  skin: { material: steel, thicknessM: 0.001 },
  envelope: [],
  panes: [],
  ducts: [],
};

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const layerOf = (index: number, thicknessM: number, conductivity: number, share: number): HeatLayer => ({
  path: ['build_ups', 'wall', 'layers', index],
  name: `layer ${index}`,
  thicknessM,
  conductivity,
  share,
  arealMassKgM2: 1,
});
const partOf = (surface: EnvelopePart['surface'], layers: readonly HeatLayer[]): EnvelopePart => ({
  surface,
  path: ['build_ups', 'wall'],
  areaM2: 1,
  buildUps: ['wall'],
  layers,
  ribShare: 0,
});

const insulation = fc.record({ thicknessM: real(0.001, 0.1), conductivity: real(0.02, bestAirWPerMK) });
const ribs: fc.Arbitrary<RibFigures> = fc.record({
  depthM: real(0.01, 0.12),
  metalM: real(0.0005, 0.005),
  spacingM: real(0.2, 1.5),
  flangeM: real(0, 0.12),
  coverM2KPerW: fc.constantFrom(0, 0.3),
});
const surface = fc.constantFrom<EnvelopePart['surface']>('left wall', 'ceiling', 'floor');

/** Insulation of the whole area, then some beside battens or beside air, then a lining. */
const wall = fc.record({
  surface,
  ribs: fc.option(ribs, { nil: undefined }),
  outer: fc.option(insulation, { nil: undefined }),
  inner: insulation,
  innerShare: fc.constantFrom(1, 0.9, 0.85, 0.6),
  batten: fc.option(fc.record({ thicknessM: real(0.005, 0.06), share: fc.constantFrom(0.05, 0.1) }), {
    nil: undefined,
  }),
  lining: fc.constantFrom(0.003, 0.012),
});

type Wall = typeof wall extends fc.Arbitrary<infer T> ? T : never;

const uOf = (
  { surface: side, ribs: rib, outer, inner, innerShare, batten, lining }: Wall,
  more: { readonly outer: number; readonly inner: number },
): number => {
  const layers = [
    ...(outer ? [layerOf(0, outer.thicknessM + more.outer, outer.conductivity, 1)] : []),
    layerOf(1, inner.thicknessM + more.inner, inner.conductivity, innerShare),
    ...(batten && innerShare < 1 ? [layerOf(2, batten.thicknessM, 0.13, batten.share)] : []),
    layerOf(3, lining, 0.13, 1),
  ];
  return surfaceU(partOf(side, layers), heat, rib)?.uValue ?? Number.NaN;
};

const slack = 1 + 1e-9;

test.each(['inner', 'outer'] as const)('a thicker %s insulation never raises the U-value', (which) => {
  fc.assert(
    fc.property(wall, fc.oneof(real(0.0005, 0.006), real(0.006, 0.1)), (walls, addedM) => {
      const none = { outer: 0, inner: 0 };
      expect(uOf(walls, { ...none, [which]: addedM })).toBeLessThanOrEqual(uOf(walls, none) * slack);
    }),
    { numRuns: 3000 },
  );
});

const gappedRibs: RibFigures = {
  depthM: 0.05,
  metalM: 0.0024,
  spacingM: 0.5,
  flangeM: 0.04,
  coverM2KPerW: 0,
};
const gapped = (layers: readonly HeatLayer[]): number =>
  surfaceU(partOf('left wall', layers), heat, gappedRibs)?.uValue ?? Number.NaN;

test('a board worse than the gap of air that it fills does raise it', () => {
  const board = (thicknessM: number) => gapped([layerOf(0, thicknessM, 0.05, 1)]);
  expect(board(0.05)).toBeGreaterThan(board(0.045));
  expect(board(0.06)).toBeLessThan(board(0.045));
});

test('so does one of a part of the area that pushes a whole gap away', () => {
  const behind = (thicknessM: number) =>
    gapped([layerOf(0, thicknessM, 0.038, 0.6), layerOf(1, 0.02, 0.038, 1)]);
  expect(behind(0.03)).toBeGreaterThan(behind(0.026));
});
