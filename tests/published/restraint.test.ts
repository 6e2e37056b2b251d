// Restraint forces, and the rows of the catalogue that each source gives.
import { describe, expect, test } from 'vitest';
import { restraintForceN, STANDARD_GRAVITY_M_PER_S2 } from '../../src/calc/space/restraint.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  cargoRuleQuebec,
  lashingTrainingPage,
  lightVanPaper,
  loadRestraintGuide,
} from '../../src/catalogue/fit-sources.ts';
import {
  type RestraintDirection,
  restraintCoefficients,
  restraintFor,
} from '../../src/catalogue/restraint.ts';
import { exactly, expectPublished } from './agreement.ts';

const rowsFrom = (source: Citation, direction: RestraintDirection) =>
  restraintCoefficients.filter((row) => row.direction === direction && row.citations.includes(source));

describe('general coefficients for road vehicles', () => {
  test.each([
    { direction: 'forward', value: 0.8, source: lashingTrainingPage },
    { direction: 'rearward', value: 0.5, source: lashingTrainingPage },
    { direction: 'sideways', value: 0.5, source: lashingTrainingPage },
    { direction: 'sideways tipping', value: 0.6, source: lashingTrainingPage },
    { direction: 'forward', value: 0.8, source: cargoRuleQuebec },
    { direction: 'rearward', value: 0.5, source: cargoRuleQuebec },
    { direction: 'sideways', value: 0.5, source: cargoRuleQuebec },
    { direction: 'forward', value: 0.8, source: loadRestraintGuide },
    { direction: 'rearward', value: 0.5, source: loadRestraintGuide },
    { direction: 'sideways', value: 0.5, source: loadRestraintGuide },
    { direction: 'upward', value: 0.2, source: loadRestraintGuide },
  ] as const)('$direction $value: $source.title', ({ direction, value, source }) => {
    const rows = rowsFrom(source, direction);
    expect(rows).toHaveLength(1);
    for (const { coefficient } of rows) expectPublished(coefficient, exactly(value), source);
  });
});

describe('coefficients by the mass of the van', () => {
  test.each([
    { maximumMassKg: 1800, forward: 0.9, rearward: 0.5, sideways: 0.7 },
    { maximumMassKg: 2000, forward: 0.9, rearward: 0.5, sideways: 0.7 },
    { maximumMassKg: 2001, forward: 0.8, rearward: 0.5, sideways: 0.6 },
    { maximumMassKg: 3500, forward: 0.8, rearward: 0.5, sideways: 0.6 },
    { maximumMassKg: 3501, forward: 0.8, rearward: 0.5, sideways: 0.5 },
    { maximumMassKg: 4250, forward: 0.8, rearward: 0.5, sideways: 0.5 },
  ])('$maximumMassKg kg', ({ maximumMassKg, ...expected }) => {
    const publishedFor = (direction: RestraintDirection): number[] => {
      const { strictest, others } = restraintFor(direction, maximumMassKg);
      return [strictest, ...others]
        .filter(({ citations }) => citations.includes(lightVanPaper))
        .map(({ coefficient }) => coefficient);
    };
    expect(publishedFor('forward')).toEqual([expected.forward]);
    expect(publishedFor('rearward')).toEqual([expected.rearward]);
    expect(publishedFor('sideways')).toEqual([expected.sideways]);
    // The stricter of both homes: the countries that ask for 1.0 forward, the light vans sideways.
    expect(restraintFor('forward', maximumMassKg).strictest.coefficient).toBe(1);
    expect(restraintFor('sideways', maximumMassKg).strictest.coefficient).toBe(expected.sideways);
  });

  test('of a van without a known mass the strictest of all', () => {
    expect(restraintFor('sideways').strictest).toMatchObject({ coefficient: 0.7, forVansOf: [0, 2000] });
  });
});

describe('forces', () => {
  test('standard gravity', () => {
    expect(STANDARD_GRAVITY_M_PER_S2).toBe(9.80665);
  });
  test.each([
    { massKg: 31, coefficient: 0.8, forceN: 243.20492 },
    { massKg: 31, coefficient: 0.5, forceN: 152.003075 },
    { massKg: 31, coefficient: 0.2, forceN: 60.80123 },
    { massKg: 31, coefficient: 0.7, forceN: 212.804305 },
    { massKg: 31, coefficient: 0.6, forceN: 182.40369 },
    { massKg: 70, coefficient: 0.8, forceN: 549.1724 },
    { massKg: 31, coefficient: 0, forceN: 0 },
  ])('$massKg kg at $coefficient g, by hand: $forceN N', ({ massKg, coefficient, forceN }) => {
    expect(restraintForceN(massKg, coefficient)).toBeCloseTo(forceN, 6);
  });
});
