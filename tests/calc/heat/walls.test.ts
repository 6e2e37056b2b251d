import { describe, expect, test } from 'vitest';
import { bridgedResistance, even } from '../../../src/calc/heat/bridged.ts';
import {
  layerResistance,
  temperaturesThrough,
  uValueOf,
  wallResistance,
} from '../../../src/calc/heat/layers.ts';
import { type RibbedWall, ribbedResistance, ribLineUValue } from '../../../src/calc/heat/metal-ribs.ts';
import { airGapResistance, airGaps } from '../../../src/catalogue/heat/surface-films.ts';

describe('even walls', () => {
  test('a layer of no thickness holds nothing back', () => expect(layerResistance(0, 0.04)).toBe(0));
  test.each([
    [() => layerResistance(-0.01, 0.04)],
    [() => layerResistance(0.01, 0)],
    [() => layerResistance(Number.NaN, 1)],
    [() => wallResistance({ insideM2KPerW: 0, outsideM2KPerW: 0, layersM2KPerW: [] })],
    [() => wallResistance({ insideM2KPerW: 0.13, outsideM2KPerW: 0.04, layersM2KPerW: [-1] })],
    [() => uValueOf(0)],
    [() => temperaturesThrough([0, 0], 0, 20)],
    [() => temperaturesThrough([0.1, -0.1], 0, 20)],
  ])('impossible input %#', (act) => {
    expect(act).toThrow(RangeError);
  });
  test('temperatures begin and end with the airs', () => {
    expect(temperaturesThrough([0.04, 1, 0.13], -10, 20)).toHaveLength(4);
    expect(temperaturesThrough([1, 1], 0, 20)).toEqual([0, 10, 20]);
  });
});

describe('bridged walls', () => {
  const films = { insideM2KPerW: 0.13, outsideM2KPerW: 0.04 };
  test('without a bridge both bounds are the sum', () => {
    const wall = bridgedResistance({ ...films, bands: [even(1), even(0.5)] });
    expect(wall.upperM2KPerW).toBeCloseTo(1.67, 12);
    expect(wall.lowerM2KPerW).toBeCloseTo(1.67, 12);
    expect(wall.greatestError).toBeCloseTo(0, 12);
  });
  test('no bands: the films', () => {
    expect(bridgedResistance({ ...films, bands: [] }).resistanceM2KPerW).toBeCloseTo(0.17, 12);
  });
  test.each([
    [[{ share: 0.5, layersM2KPerW: [1] }]],
    [
      [
        { share: 0.5, layersM2KPerW: [1] },
        { share: 0.5, layersM2KPerW: [1, 1] },
      ],
    ],
    [[{ share: 1, layersM2KPerW: [0] }]],
    [
      [
        { share: 0, layersM2KPerW: [1] },
        { share: 1, layersM2KPerW: [1] },
      ],
    ],
  ])('impossible band %#', (band) => {
    expect(() => bridgedResistance({ ...films, bands: [band] })).toThrow(RangeError);
  });
});

describe('ribs', () => {
  const wall: RibbedWall = {
    insideM2KPerW: 0.13,
    outsideM2KPerW: 0.04,
    outerLayersM2KPerW: [0.001 / 50],
    fillM2KPerW: 0.045 / 0.036,
    innerLayersM2KPerW: [0.01 / 0.05, 0.006 / 0.15],
    ribs: { depthM: 0.045, metalM: 0.0024, spacingM: 0.5, metalWPerMK: 50, flangeM: 0.04 },
  };
  test('a van wall: a wide range, a chosen value inside it, far from the clear wall', () => {
    const ribbed = ribbedResistance(wall);
    expect(ribbed.withinSimpleMethod).toBe(false);
    expect(ribbed.leastUValue).toBeLessThan(ribbed.uValue);
    expect(ribbed.greatestUValue).toBeGreaterThan(ribbed.uValue);
    expect(ribbed.clearUValue).toBeLessThanOrEqual(ribbed.leastUValue);
    expect(ribbed.bounds.ratio).toBeGreaterThan(1.5);
    expect(ribbed.increase).toBeGreaterThan(0.2);
    expect(ribbed.weight).toBeGreaterThanOrEqual(0);
    expect(ribbed.weight).toBeLessThanOrEqual(0.5);
  });
  test('far apart and thin: the weight is held at the plain mean', () => {
    const thin = { ...wall.ribs, metalM: 0.0001, spacingM: 3, flangeM: 0 };
    expect(ribbedResistance({ ...wall, ribs: thin }).weight).toBe(0.5);
  });
  test('close together: the weight is held at the lower bound', () => {
    const close = { ...wall.ribs, spacingM: 0.08 };
    expect(ribbedResistance({ ...wall, ribs: close }).weight).toBe(0);
  });
  test('over a bare rib the wall is nearly bare steel', () => {
    expect(ribLineUValue({ ...wall, innerLayersM2KPerW: [] })).toBeGreaterThan(5.8);
    expect(ribLineUValue(wall)).toBeCloseTo(1 / (0.17 + 0.00002 + 0.0009 + 0.24), 9);
  });
  test.each([
    [{ metalM: 0 }],
    [{ spacingM: 0.002 }],
    [{ depthM: 0 }],
    [{ metalWPerMK: 0 }],
    [{ flangeM: -0.01 }],
  ])('impossible ribs %o', (change) => {
    expect(() => ribbedResistance({ ...wall, ribs: { ...wall.ribs, ...change } })).toThrow(RangeError);
  });
});

describe('gaps of air', () => {
  test('rows, between rows, beyond', () => {
    for (const row of airGaps)
      expect(airGapResistance(row.thicknessM, 'horizontal')).toBe(row.resistanceM2KPerW.horizontal);
    expect(airGapResistance(0.0025, 'upward')).toBeCloseTo(0.055, 12);
    expect(airGapResistance(1, 'downward')).toBe(0.18);
    expect(airGapResistance(-1, 'upward')).toBe(0);
  });
});
