// Restraint forces against the published coefficients.
import { describe, expect, test } from 'vitest';
import {
  type RestraintCoefficients,
  ROAD_RESTRAINT,
  restraintForces,
  STANDARD_GRAVITY_M_PER_S2,
  vanRestraint,
} from '../../src/calc/space/restraint.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished } from './agreement.ts';

type Way = keyof RestraintCoefficients;

describe('general coefficients for road vehicles', () => {
  const ctu: Citation = {
    title: 'training page on the CTU Code, transport loads for road transport (EN 12195-1)',
    readAt: 'https://demo.arcademy.ch/CTU-Code/data/html/en/4/p_4_6.html',
    provenance: 'read',
  };
  const quebec: Citation = {
    title: 'Cargo Securement Standards Regulation, C-24.2, r. 30, section 3',
    readAt:
      'http://legisquebec.gouv.qc.ca/en/showversion/cr/C-24.2,%20r.%2030?code=se:3&pointInTime=20190521',
    provenance: 'read',
  };
  const australia: Citation = {
    title: 'training page on the Australian load restraint performance standards, 1.4',
    readAt: 'https://www.hviatraining.com.au/topic/lesson-1-2-1-overview-performance-standards-2/',
    provenance: 'read',
  };
  const published: readonly { way: Way; value: number; source: Citation }[] = [
    { way: 'forward', value: 0.8, source: ctu },
    { way: 'rearward', value: 0.5, source: ctu },
    { way: 'sideways', value: 0.5, source: ctu },
    { way: 'forward', value: 0.8, source: quebec },
    { way: 'rearward', value: 0.5, source: quebec },
    { way: 'sideways', value: 0.5, source: quebec },
    { way: 'forward', value: 0.8, source: australia },
    { way: 'rearward', value: 0.5, source: australia },
    { way: 'sideways', value: 0.5, source: australia },
    { way: 'upward', value: 0.2, source: australia },
  ];
  test.each(published)('$way $value: $source.title', ({ way, value, source }) => {
    expectPublished(ROAD_RESTRAINT[way], exactly(value), source);
  });
  test('toppling: the strictest of 0.7 (2003) and 0.6 (2009 draft and the CTU Code page)', () => {
    expect(ROAD_RESTRAINT.topplingSideways).toBe(Math.max(0.7, 0.6));
  });
});

describe('coefficients by the mass of the van', () => {
  const source: Citation = {
    title: 'A. Berg, W. Sicks, J.-P. Cheynet, paper 09-0008, figure 1 (VDI 2700 part 16)',
    provenance: 'read',
    caution: 'the text beside the figure assigns 0.9 and 0.7 to 2.0 to 3.5 t',
  };
  test.each([
    { maximumMassKg: 1800, forward: 0.9, rearward: 0.5, sideways: 0.7 },
    { maximumMassKg: 2000, forward: 0.9, rearward: 0.5, sideways: 0.7 },
    { maximumMassKg: 2001, forward: 0.8, rearward: 0.5, sideways: 0.6 },
    { maximumMassKg: 3500, forward: 0.8, rearward: 0.5, sideways: 0.6 },
    { maximumMassKg: 3501, forward: 0.8, rearward: 0.5, sideways: 0.5 },
    { maximumMassKg: 4250, forward: 0.8, rearward: 0.5, sideways: 0.5 },
  ])('$maximumMassKg kg', ({ maximumMassKg, forward, rearward, sideways }) => {
    const coefficients = vanRestraint(maximumMassKg);
    expectPublished(coefficients.forward, exactly(forward), source);
    expectPublished(coefficients.rearward, exactly(rearward), source);
    expectPublished(coefficients.sideways, exactly(sideways), source);
  });
});

describe('forces', () => {
  test('standard gravity', () => {
    expect(STANDARD_GRAVITY_M_PER_S2).toBe(9.80665);
  });
  test('a fridge of 31 kg, by hand: 31 · 9.80665 = 304.00615 N', () => {
    const forces = restraintForces(31);
    expect(forces.forwardN).toBeCloseTo(243.20492, 5);
    expect(forces.rearwardN).toBeCloseTo(152.003075, 5);
    expect(forces.sidewaysN).toBeCloseTo(152.003075, 5);
    expect(forces.upwardN).toBeCloseTo(60.80123, 5);
    expect(forces.topplingSidewaysN).toBeCloseTo(212.804305, 5);
  });
  test('the same fridge in a van of 3500 kg is held harder sideways', () => {
    const forces = restraintForces(31, vanRestraint(3500));
    expect(forces.sidewaysN).toBeCloseTo(182.40369, 5);
    expect(forces.forwardN).toBeCloseTo(243.20492, 5);
  });
  test('a lashing for 70 L of water forward: 70 · 0.8 · 9.80665 N', () => {
    expect(restraintForces(70).forwardN).toBeCloseTo(549.1724, 6);
  });
});
