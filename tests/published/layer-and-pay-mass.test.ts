// Mass of layers, and the minimum pay-mass: values computed from the definitions.
import { describe, expect, test } from 'vitest';
import { minimumPayMass } from '../../src/calc/pay-mass.ts';
import { arealMassOf, layerMass } from '../../src/calc/sheet-mass.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished } from './agreement.ts';

describe('areal mass of common finishes (computed from the definition)', () => {
  // A slip of mm for m would show as a factor of 1000.
  const source: Citation = {
    title:
      'areal masses computed from tabulated densities; poplar plywood, GRP and mattress densities are assumed',
    provenance: 'computed',
  };
  test.each([
    { item: 'vinyl floor covering 2 mm', thicknessM: 0.002, density: 1700, kgPerM2: 3.4 },
    { item: 'linoleum 2.5 mm', thicknessM: 0.0025, density: 1200, kgPerM2: 3 },
    { item: 'PVC board 5 mm', thicknessM: 0.005, density: 1390, kgPerM2: 6.95 },
    { item: 'birch plywood 12 mm', thicknessM: 0.012, density: 695, kgPerM2: 8.34 },
    { item: 'poplar plywood 12 mm', thicknessM: 0.012, density: 450, kgPerM2: 5.4 },
    { item: 'extruded polystyrene 30 mm', thicknessM: 0.03, density: 32.5, kgPerM2: 0.975 },
    { item: 'GRP skin 1.5 mm', thicknessM: 0.0015, density: 1700, kgPerM2: 2.55 },
    { item: 'float glass 4 mm', thicknessM: 0.004, density: 2500, kgPerM2: 10 },
    { item: 'acrylic glazing 4 mm', thicknessM: 0.004, density: 1180, kgPerM2: 4.72 },
    { item: 'foam mattress 120 mm', thicknessM: 0.12, density: 35, kgPerM2: 4.2 },
    { item: 'water 300 mm deep', thicknessM: 0.3, density: 1000, kgPerM2: 300 },
  ])('$item', ({ thicknessM, density, kgPerM2 }) => {
    expectPublished(arealMassOf(thicknessM, density), exactly(kgPerM2), source);
  });
  test('a layer that fills a part of the area weighs that part', () => {
    expect(layerMass(14.2, 0.012, 695)).toBeCloseTo(14.2 * 8.34, 9);
    expect(layerMass(14.2, 0.012, 695, 0.15)).toBeCloseTo(0.15 * 14.2 * 8.34, 9);
  });
});

describe('minimum pay-mass of a motor caravan', () => {
  const source: Citation = {
    title: '(EU) No 1230/2012 Annex I Part A 2.6.4.1.2, formula as read in a motor caravan handbook',
    provenance: 'computed',
  };
  test('four people and 6.0 m (inputs ours, answer computed)', () => {
    expectPublished(minimumPayMass(4, 6), exactly(100), source);
  });
});
