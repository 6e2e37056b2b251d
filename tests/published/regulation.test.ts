import { describe, expect, test } from 'vitest';
import { type Codes, codes, codesNames, personMass } from '../../src/catalogue/codes.ts';
import { type LimitId, limitFor } from '../../src/catalogue/limits.ts';
import { overloadBandFor, overloadBands } from '../../src/catalogue/penalties.ts';

describe('mass of a person', () => {
  test.each([
    ['uk', 75, 'Regulation (EU) 1230/2012, annex I, part A, 2.6.2.1'],
    ['eu', 75, 'Regulation (EU) 1230/2012, annex I, part A, 2.6.2.1'],
    ['us', 68, '72 FR 68442: 68 kg (150 lb)'],
    ['au', 75, 'no published value; as in Europe'],
  ] as const)('%s: %d kg', (region, massKg, _source) => {
    expect(personMass[region].massKg).toBe(massKg);
  });

  // 150 lb is 68.04 kg; the rule prints 68.
  test('the US figure is 150 lb to the kilogram', () => {
    expect(Math.round(150 * 0.45359237)).toBe(personMass.us.massKg);
  });

  test('the Australian figure does not pretend to be read', () => {
    expect(personMass.au.citation.provenance).toBe('common practice');
  });

  test('every region has a name', () => {
    expect(codes.map((region) => codesNames[region])).toEqual([
      'United Kingdom',
      'European Union',
      'United States',
      'Australia',
    ]);
  });
});

/** Published shares, copied; exact. */
describe('limits', () => {
  test.each([
    ['steered-axle-share', 0.3, 'at least', 'Regulation (EU) 1230/2012, annex I, part A, 2.3'],
    ['steered-axle-share-towing', 0.2, 'at least', 'Regulation (EU) 1230/2012, annex I, part A, 2.4'],
    ['axle-limits-sum', 1, 'at least', 'Regulation (EU) 1230/2012, annex I, part A, 2.1'],
    ['heavier-wheel-share', 0.52, 'at most', 'truck mounting directives, 4.2.1'],
    ['side-difference', 0.04, 'at most', 'van converter guide, page 14'],
    ['equipment-centre-foremost', 0, 'at least', 'van converter guide, page 14'],
    ['equipment-centre-rearmost', 1, 'at most', 'van converter guide, page 14'],
    ['static-stability-factor', 1.04, 'at least', 'NHTSA star bands, memory'],
    ['minimum-pay-mass', 10, 'at least', 'manual of a motor caravan: 10 N + 10 L'],
    ['base-mass-tolerance', 0.05, 'at most', 'Regulation (EU) 1230/2012, annex I, appendix 2, 2.2'],
    ['reweigh-change', 0.005, 'at most', 'AMC1 CAT.POL.MAB.100(b)'],
  ] as const)('%s: %d, %s', (id, value, sense, _source) => {
    for (const region of codes) expect(limitFor(id, region)).toMatchObject({ id, value, sense });
  });

  // 4 % over half the axle load on one wheel: 1.04 / 2.
  test('the wheel share is 4 % over half', () => {
    expect(limitFor('heavier-wheel-share', 'uk').value).toBeCloseTo(1.04 / 2, 12);
  });

  const europeanLaw: readonly LimitId[] = [
    'steered-axle-share',
    'steered-axle-share-towing',
    'axle-limits-sum',
    'minimum-pay-mass',
    'base-mass-tolerance',
  ];
  test.each(europeanLaw)('%s is law in Europe and only a guide elsewhere, with a caution', (id) => {
    for (const region of ['uk', 'eu'] as const) expect(limitFor(id, region).force).toBe('law');
    for (const region of ['us', 'au'] as const) {
      expect(limitFor(id, region).force).toBe('published guide');
      expect(limitFor(id, region).caution).toContain('can only warn');
    }
  });

  // Front at least 30 % of 3500 kg: 1050 kg. From the definition.
  test('the steered axle of a 3500 kg van', () => {
    expect(limitFor('steered-axle-share', 'uk').value * 3500).toBeCloseTo(1050, 9);
  });

  // Minimum pay-mass of four people and 6.0 m: 10 (4 + 6) = 100 kg, computed from the formula.
  test.each(['uk', 'eu'] as const)(
    'pay-mass of four people in a 6 m van under %s codes: 100 kg',
    (region: Codes) => {
      expect(limitFor('minimum-pay-mass', region).value * (4 + 6.0)).toBe(100);
    },
  );

  // Van converter guide 2020-05-12, page 14: two axles of 1500 kg, gross 2900 kg; 3000 is not below 2900.
  test('the axle limits of the guide sum to at least the gross mass', () => {
    const share = (1500 + 1500) / 2900;
    expect(share).toBeGreaterThanOrEqual(limitFor('axle-limits-sum', 'uk').value);
    expect((1400 + 1499) / 2900).toBeLessThan(limitFor('axle-limits-sum', 'uk').value);
  });

  // 0.5 % of 3500 kg is 17.5 kg; the US duty to declare starts at the lesser of 1.5 % and 45 kg, which is later.
  test('re-weighing is asked for before the US duty to declare', () => {
    const changeKg = limitFor('reweigh-change', 'us').value * 3500;
    expect(changeKg).toBeCloseTo(17.5, 9);
    expect(changeKg).toBeLessThan(Math.min(0.015 * 3500, 45));
  });

  /**
   * NHTSA, from memory: in 2001 the risk of rollover in a single-vehicle crash was fitted as 13.212 exp(-3.3760 SSF),
   * and one star is a risk above 40 % (read). The threshold must be the first hundredth below that risk.
   */
  test('the stability threshold is where the risk falls below 40 %', () => {
    const risk = (ssf: number): number => 13.212 * Math.exp(-3.376 * ssf);
    const threshold = limitFor('static-stability-factor', 'us').value;
    expect(risk(threshold)).toBeLessThan(0.4);
    expect(risk(threshold - 0.01)).toBeGreaterThan(0.4);
  });
});

/** UK bands quoted from DVSA: 5 to 9.99 %, 10 to 14.99 %, 15 to 29.99 %, 30 % and over. */
describe('overload penalties', () => {
  const limitKg = 3500;
  test.each([
    [3500, undefined, 'at the limit'],
    [3674, undefined, 'below 5 %, an offence without a band'],
    [3675, 100, '5 %'],
    [3849, 100, 'just below 10 %'],
    [3850, 200, '10 %'],
    [4024, 200, 'just below 15 %'],
    [4025, 300, '15 %'],
    [4549, 300, 'just below 30 %'],
  ])('%d kg on 3500 kg: %s', (massKg, penaltyGbp, _edge) => {
    expect(overloadBandFor(massKg, limitKg)?.penaltyGbp).toBe(penaltyGbp);
  });

  test.each([4550, 5425])('%d kg on 3500 kg goes to court', (massKg) => {
    expect(overloadBandFor(massKg, limitKg)).toEqual({ fromPercent: 30, sanction: 'court summons' });
  });

  // Whole percentages on limits where the quotient is not a round binary number.
  test.each([1850, 2240, 3100, 2900, 1999])('edges on a limit of %d kg', (kg) => {
    for (const band of overloadBands) {
      expect(overloadBandFor((kg * (100 + band.fromPercent)) / 100, kg)).toBe(band);
    }
  });

  test('the bands join without a gap', () => {
    overloadBands.forEach((band, index) => {
      expect(band.belowPercent).toBe(overloadBands[index + 1]?.fromPercent);
    });
  });

  test.each([
    [3500, 0],
    [3500, -1],
    [3500, Number.NaN],
    [Number.NaN, 3500],
  ])('%d kg on %d kg is refused', (massKg, kg) => {
    expect(() => overloadBandFor(massKg, kg)).toThrow(RangeError);
  });
});
