// Falls of drains by the codes, and what parking does to them.
import { describe, expect, test } from 'vitest';
import { drainSlope, drainSlopeLeaning, fallNeededM } from '../../src/calc/water/drain.ts';
import { drainSlopeFor, strictestDrainSlope, wasteBranches } from '../../src/catalogue/water/drains.ts';
import { drainSlopeForum, drainSlopeUk, drainSlopeUs } from '../../src/catalogue/water/sources.ts';
import { exactly, expectPublished } from './agreement.ts';

describe('falls that are asked for', () => {
  test.each([
    [2, 0.25, 2.083],
    [2.5, 0.25, 2.083],
    [3, 0.125, 1.042],
    [6, 0.125, 1.042],
    [8, 0.0625, 0.521],
  ])('%f in: %f in a foot', (diameterIn, inPerFt, percent) => {
    const slope = drainSlopeFor('US plumbing code', diameterIn * 0.0254)?.leastSlope ?? Number.NaN;
    expectPublished(slope, exactly(inPerFt / 12), drainSlopeUs);
    expectPublished(
      slope * 100,
      { value: percent, within: 0.0005, because: 'half a unit in the last place' },
      drainSlopeUs,
    );
  });

  test('other codes', () => {
    expectPublished(drainSlopeFor('Ontario', 0.04)?.leastSlope ?? 0, exactly(1 / 50), drainSlopeForum);
    expectPublished(
      drainSlopeFor('US residential code', 0.04)?.leastSlope ?? 0,
      exactly(0.02),
      drainSlopeForum,
    );
    expectPublished(
      drainSlopeFor('US residential code', 0.08)?.leastSlope ?? 0,
      exactly(0.01),
      drainSlopeForum,
    );
    expectPublished(drainSlopeFor('UK', 0.032)?.leastSlope ?? 0, exactly(0.018), drainSlopeUk);
    expect(drainSlopeFor('UK', 0.1)).toBeUndefined();
    expect(wasteBranches.map(({ longestM }) => longestM)).toEqual([1.7, 3]);
  });

  test('the strictest comes first, with all the others beside it', () => {
    const { leastSlope, citations } = strictestDrainSlope(0.04);
    expect(leastSlope).toBeCloseTo(1 / 48, 12);
    expect(citations).toEqual([drainSlopeUs, drainSlopeForum, drainSlopeUk]);
  });
});

describe('parking', () => {
  test('a degree is 1.75 %, so 2 % shrinks to 0.25 %', () => {
    expectPublished(
      -drainSlopeLeaning(0, 1, 1) * 100,
      { value: 1.75, within: 0.005, because: 'half a unit in the last place' },
      drainSlopeUs,
    );
    expect(drainSlopeLeaning(0.02, 1, 1)).toBeCloseTo(0.00254, 5);
    const parked = drainSlope({ rearwardM: -1, rightwardM: 0, fallM: 0.02 }, { noseUpDeg: 1, leftUpDeg: 0 });
    expect(parked).toBeCloseTo(drainSlopeLeaning(0.02, 1, 1), 12);
  });

  test('a drain that bears the lean keeps its slope', () => {
    const fallM = fallNeededM(1.2, 0.02, 1);
    expect(drainSlopeLeaning(fallM, 1.2, 1)).toBeCloseTo(0.02, 12);
    expect(fallNeededM(1.2, 0.02)).toBeCloseTo(0.024, 12);
  });
});
