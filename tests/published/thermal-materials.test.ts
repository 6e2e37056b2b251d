// Conductivity and vapour resistance of every material that a plan may name.
import { describe, expect, test } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';
import { designHeat, elementCatalogue, handbookHeat } from '../../src/catalogue/heat/heat-sources.ts';
import { thermalMaterialNamed, thermalMaterials } from '../../src/catalogue/heat/thermal-materials.ts';
import { foilNamed, vapourFoils } from '../../src/catalogue/heat/vapour-layers.ts';
import { materials } from '../../src/catalogue/materials.ts';
import { exactly, expectPublished } from './agreement.ts';

test('every material of a plan has a row, and no row is of something else', () => {
  expect(thermalMaterials.map(({ name }) => name)).toEqual(materials.map(({ name }) => name));
});

test('values lie in their band and are of the right order', () => {
  for (const row of thermalMaterials) {
    expect(row.lowWPerMK, row.name).toBeLessThanOrEqual(row.conductivityWPerMK);
    expect(row.highWPerMK, row.name).toBeGreaterThanOrEqual(row.conductivityWPerMK);
    expect(row.vapourResistanceFactor, row.name).toBeGreaterThanOrEqual(1);
    expect(row.highVapourResistanceFactor, row.name).toBeGreaterThanOrEqual(row.vapourResistanceFactor);
    expect(row.heatCapacityJPerKgK, row.name).toBeGreaterThan(300);
    expect(row.heatCapacityJPerKgK, row.name).toBeLessThan(2500);
    expect(row.citations.length, row.name).toBeGreaterThan(0);
  }
});

test('by purpose: insulation insulates, metal does not', () => {
  for (const { name, purposes } of materials) {
    const row = thermalMaterialNamed(name);
    if (purposes.includes('insulation')) expect(row?.conductivityWPerMK, name).toBeLessThanOrEqual(0.05);
    if (purposes.includes('metal')) expect(row?.conductivityWPerMK, name).toBeGreaterThan(10);
    // A slipped decimal point: cork tiles of 65 W/(m·K), particleboard of 1.18, both printed in copies of tables.
    if (!purposes.includes('metal') && name !== 'glass')
      expect(row?.conductivityWPerMK, name).toBeLessThanOrEqual(0.5);
  }
});

/** Name, conductivity, vapour resistance as the source prints them (0: not printed). */
const printedValues: readonly (readonly [string, number, number, Citation])[] = [
  ['steel', 50, 0, elementCatalogue],
  ['stainless steel', 17, 0, elementCatalogue],
  ['aluminium', 160, 0, elementCatalogue],
  ['aluminium', 230, 0, elementCatalogue],
  ['copper', 380, 0, designHeat],
  ['brass', 120, 0, designHeat],
  ['birch plywood', 0.21, 110, elementCatalogue],
  ['birch plywood', 0.17, 0, designHeat],
  ['poplar plywood', 0.15, 70, elementCatalogue],
  ['poplar plywood', 0.13, 70, elementCatalogue],
  ['plywood', 0.17, 90, elementCatalogue],
  ['plywood', 0.13, 0, designHeat],
  ['softwood plywood', 0.0127 / 0.14, 0, handbookHeat],
  ['MDF', 0.2, 20, elementCatalogue],
  ['MDF', 0.18, 0, designHeat],
  ['light MDF', 0.18, 20, elementCatalogue],
  ['light MDF', 0.14, 0, designHeat],
  ['hardboard', 0.105, 0, handbookHeat],
  ['OSB', 0.13, 30, elementCatalogue],
  ['OSB', 0.13, 200, elementCatalogue],
  ['OSB', 0.0127 / 0.12, 0, handbookHeat],
  ['particleboard', 0.18, 20, elementCatalogue],
  ['particleboard', 0.14, 0, designHeat],
  ['oak', 0.23, 50, elementCatalogue],
  ['hardwood', 0.18, 50, elementCatalogue],
  ['hardwood', 0.18, 200, elementCatalogue],
  ['softwood', 0.13, 20, elementCatalogue],
  ['softwood', 0.15, 20, elementCatalogue],
  ['spruce', 0.12, 50, elementCatalogue],
  ['larch', 0.155, 150, elementCatalogue],
  ['balsa', 0.057, 20, elementCatalogue],
  ['XPS', 0.034, 80, elementCatalogue],
  ['XPS', 0.036, 80, elementCatalogue],
  ['XPS', 0.042, 100, elementCatalogue],
  ['XPS', 0.026, 0, handbookHeat],
  ['EPS', 0.029, 20, elementCatalogue],
  ['EPS', 0.046, 20, elementCatalogue],
  ['EPS', 0.031, 50, elementCatalogue],
  ['PIR', 0.0235, 0, handbookHeat],
  ['faced PIR', 0.019, 0, handbookHeat],
  ['faced PIR', 0.025, 0, elementCatalogue],
  ['PUR', 0.027, 60, elementCatalogue],
  ['PUR', 0.028, 0, handbookHeat],
  ['spray foam', 0.026, 0, handbookHeat],
  ['spray foam', 0.035, 100, elementCatalogue],
  ['light spray foam', 0.042, 0, handbookHeat],
  ['light spray foam', 0.04, 20, elementCatalogue],
  ['glass wool', 0.043, 1, handbookHeat],
  ['glass wool', 0.0465, 1, handbookHeat],
  ['glass wool slab', 0.036, 1, handbookHeat],
  ['mineral wool', 0.04, 1, handbookHeat],
  ['mineral wool', 0.05, 1, elementCatalogue],
  ['rock wool', 0.035, 1, handbookHeat],
  ['cellulose', 0.042, 0, handbookHeat],
  ['expanded cork', 0.049, 5, elementCatalogue],
  ['elastomeric foam', 0.05, 10_000, elementCatalogue],
  ['elastomeric foam', 0.032, 7000, handbookHeat],
  ['vinyl', 0.25, 50_000, designHeat],
  ['vinyl', 0.19, 0, designHeat],
  ['linoleum', 0.17, 800, elementCatalogue],
  ['linoleum', 0.19, 0, elementCatalogue],
  ['rubber floor', 0.17, 10_000, designHeat],
  ['rubber floor', 0.4, 0, handbookHeat],
  ['cork tile', 0.065, 20, elementCatalogue],
  ['carpet', 0.06, 5, elementCatalogue],
  ['carpet on rubber underlay', 0.1, 0, handbookHeat],
  ['felt underlay', 0.05, 15, elementCatalogue],
  ['wool underlay', 0.06, 15, elementCatalogue],
  ['cork underlay', 0.05, 0, designHeat],
  ['foam underlay', 0.1, 0, designHeat],
  ['glass', 1, 0, designHeat],
  ['acrylic', 0.18, 50_000, elementCatalogue],
  ['acrylic', 0.2, 10_000, elementCatalogue],
  ['polycarbonate', 0.2, 5000, elementCatalogue],
  ['PVC', 0.17, 50_000, elementCatalogue],
  ['flexible PVC', 0.14, 100_000, elementCatalogue],
  ['HDPE', 0.5, 100_000, elementCatalogue],
  ['LDPE', 0.33, 100_000, elementCatalogue],
  ['polypropylene', 0.22, 10_000, elementCatalogue],
  ['epoxy resin', 0.2, 10_000, elementCatalogue],
  ['polyester resin', 0.19, 10_000, elementCatalogue],
  ['EPDM', 0.25, 6000, elementCatalogue],
  ['GRP', 0.4, 0, designHeat],
  ['foam rubber', 0.06, 7000, elementCatalogue],
];

describe('printed values lie in the band', () => {
  test.each(printedValues)('%s: %d W/(m·K), %d', (name, conductivity, vapour) => {
    const row = thermalMaterialNamed(name);
    expect(row).toBeDefined();
    if (row === undefined) return;
    // R-values printed to two places give a conductivity to 4 %.
    expect(conductivity).toBeGreaterThanOrEqual(row.lowWPerMK * 0.99);
    expect(conductivity).toBeLessThanOrEqual(row.highWPerMK);
    if (vapour === 0) return;
    expect(vapour).toBeGreaterThanOrEqual(row.vapourResistanceFactor);
    expect(vapour).toBeLessThanOrEqual(row.highVapourResistanceFactor);
  });
});

test('misprints of the copied tables are not copied', () => {
  expect(thermalMaterialNamed('cork tile')?.conductivityWPerMK).not.toBe(65);
  expect(thermalMaterialNamed('particleboard')?.highWPerMK).toBeLessThan(1.18);
});

test('foils: read values, and masses of foils', () => {
  const air = (id: string) => foilNamed(id)?.equivalentAirM ?? Number.NaN;
  expectPublished(air('vapour brake'), exactly(6), elementCatalogue);
  expectPublished(air('vapour barrier'), exactly(50), elementCatalogue);
  expectPublished(air('aluminium foil'), exactly(8e-6 * 1e8), elementCatalogue);
  expectPublished(air('humidity-variable vapour check'), exactly(2.5), elementCatalogue);
  // The stricter of μ · d and the printed 50 m of a table.
  expectPublished(air('polyethylene 0.15 mm'), exactly(0.00015 * 1e5), elementCatalogue);
  for (const { id, massKgPerM2 } of vapourFoils) {
    expect(massKgPerM2, id).toBeGreaterThan(0.02);
    expect(massKgPerM2, id).toBeLessThan(0.5);
  }
});
