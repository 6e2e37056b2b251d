import { describe, expect, test } from 'vitest';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../src/calc/space/restraint.ts';
import { bodyCorrections, measureFor } from '../../src/catalogue/body-measures.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  bandLimit,
  bandLimitIds,
  bandLimits,
  chaseFillFor,
  escapeOpening,
  escapeOpeningLeast,
  escapeWays,
  lengthLimit,
  lengthLimitIds,
  lengthLimits,
  opensAsWideAs,
} from '../../src/catalogue/fit-limits.ts';
import * as fitSources from '../../src/catalogue/fit-sources.ts';
import type { Force } from '../../src/catalogue/limits.ts';
import {
  motorCaravanFeatures,
  restraintCaution,
  restraintCoefficients,
  restraintDirections,
  restraintFor,
  restraintOwnLawCaution,
} from '../../src/catalogue/restraint.ts';
import { exceeds } from '../../src/engine/judge.ts';
import { exactly, expectPublished } from './agreement.ts';

const fills = [1, 2, 3].map(chaseFillFor);
const everyLimit = [...lengthLimits, ...bandLimits, escapeOpening, escapeOpeningLeast, escapeWays, ...fills];

const firstOf = (citations: readonly Citation[]): Citation => {
  const [citation] = citations;
  if (citation === undefined) throw new Error('A row has no source.');
  return citation;
};

/** [id, mm, sense, force, provenance of the source that gives the value, where the value is from] */
const lengths: readonly (readonly [
  (typeof lengthLimitIds)[number],
  number,
  'at most' | 'at least',
  Force,
  Citation['provenance'],
  string,
])[] = [
  ['bed-clearance', 50, 'at least', 'published guide', 'read', 'course on furniture: 3 to 5 cm'],
  ['bed-clearance-comfortable', 228.6, 'at least', 'published guide', 'read', 'article on beds: 9 in'],
  ['bed-width-single', 609.6, 'at least', 'published guide', 'read', '49 CFR 393.76: 24 in; memory 600'],
  ['sitting-headroom', 972, 'at least', 'published guide', 'read', 'NUREG-0700; British 965; memory 900'],
  ['lying-headroom', 609.6, 'at least', 'published guide', 'read', '49 CFR 393.76: 24 in'],
  ['standing-headroom', 50, 'at least', 'published guide', 'read', 'shoes 25 + hat 25'],
  ['passage-width', 500, 'at least', 'common practice', 'memory', 'design handbooks'],
  ['passage-width-comfortable', 600, 'at least', 'common practice', 'memory', 'design handbooks'],
  ['escape-path-width', 450, 'at least', 'published guide', 'read', 'DIN EN 1645-1; NFPA 1192: 330'],
  ['seat-height', 355, 'at most', 'published guide', 'read', 'popliteal, 5th percentile woman'],
  ['seat-width', 465, 'at least', 'published guide', 'read', 'hips, 95th percentile woman 440 + 25'],
  ['seat-depth', 435, 'at most', 'published guide', 'memory', 'buttock-popliteal; soldiers 463'],
  ['knee-space-height', 685.8, 'at least', 'published guide', 'read', 'ADAAG 4.32.3: 27 in'],
  ['knee-space-depth', 482.6, 'at least', 'published guide', 'read', 'ADAAG 4.32.3: 19 in; OSHA 440'],
  ['reach', 555, 'at most', 'published guide', 'read', 'shoulder-grip, 5th percentile woman; practice 600'],
  ['service-reach', 400, 'at most', 'published guide', 'read', 'elbow-fingertip, 5th percentile woman'],
  ['cable-gas-separation', 30, 'at least', 'published guide', 'read', 'Boat Safety Scheme; BS 6891: 25'],
  ['overlap-tolerance', 0.5, 'at most', 'own choice', 'own choice', 'half a millimetre'],
];

describe('lengths', () => {
  test.each(lengths)('%s: %d mm, %s', (id, mm, sense, force, provenance, _from) => {
    const limit = lengthLimit(id);
    expect(limit).toMatchObject({ id, sense, force });
    const source = firstOf(limit.citations);
    expectPublished(limit.valueM * 1000, exactly(mm), source);
    expect(source.provenance).toBe(provenance);
  });

  test('no row is left out of the comparison, and every id has its row', () => {
    expect(lengths.map(([id]) => id)).toEqual([...lengthLimitIds]);
    expect(lengthLimits.map((limit) => limit.id)).toEqual([...lengthLimitIds]);
    expect(bandLimits.map((limit) => limit.id)).toEqual([...bandLimitIds]);
  });

  /** A limit that is just met is kept, a millimetre beyond it is not: the sense of each row, by the common judge. */
  test.each(lengths.filter(([id]) => id !== 'overlap-tolerance'))('%s of %d mm is kept at the edge', (id) => {
    const { valueM, sense } = lengthLimit(id);
    const breaks = (lengthM: number): boolean =>
      sense === 'at most' ? exceeds(lengthM, valueM) : exceeds(valueM, lengthM);
    // Written in metres and added up from millimetres, as a plan would give it.
    expect(breaks(Math.round(valueM * 10_000) / 10_000)).toBe(false);
    expect(breaks(valueM + (sense === 'at most' ? 0.001 : -0.001))).toBe(true);
    expect(breaks(valueM + (sense === 'at most' ? -0.001 : 0.001))).toBe(false);
  });
});

describe('bands', () => {
  test.each([
    ['work-surface-height', 711.2, 900, 'published guide', 'ADA 902.3: 28 in; worktop 900'],
    ['worktop-below-elbow', 100, 150, 'common practice', 'fitter 150; advice 120; memory 100 to 150'],
    ['table-height', 711.2, 863.6, 'published guide', 'ADA 902.3: 28 to 34 in'],
    ['table-height-above-seat', 254, 304.8, 'common practice', '10 to 12 in; memory 280'],
  ] as const)('%s: %d to %d mm', (id, leastMm, mostMm, force, _from) => {
    const limit = bandLimit(id);
    expect(limit.force).toBe(force);
    expectPublished(limit.leastM * 1000, exactly(leastMm), firstOf(limit.citations));
    expectPublished(limit.mostM * 1000, exactly(mostMm), firstOf(limit.citations));
    expect(limit.leastM).toBeLessThan(limit.mostM);
  });

  test('the remembered figures lie inside the bands', () => {
    const inside = (id: (typeof bandLimitIds)[number], lengthM: number): boolean =>
      lengthM >= bandLimit(id).leastM && lengthM <= bandLimit(id).mostM;
    expect(inside('work-surface-height', 0.9)).toBe(true);
    expect(inside('table-height-above-seat', 0.28)).toBe(true);
    expect(inside('worktop-below-elbow', 0.12)).toBe(true);
    expect(inside('table-height', 0.9)).toBe(false);
  });

  // A dining seat of 450 mm and a table 280 mm above it: 730 mm, inside the accessible band.
  test('seat and table of the handbooks add up to a table of the guide', () => {
    const tableM = 0.45 + 0.28;
    expect(tableM).toBeGreaterThan(bandLimit('table-height').leastM);
    expect(tableM).toBeLessThan(bandLimit('table-height').mostM);
  });

  /**
   * Elbow of a British man and woman (remembered), shoes 25 mm, less 100 to 150 mm: the usual 900 mm worktop suits
   * her (880 to 930 mm) and is low for him (965 to 1015 mm). From the tables, by hand.
   */
  test('a worktop of 900 mm suits the average woman, not the average man', () => {
    const { leastM, mostM } = bandLimit('worktop-below-elbow');
    const worktop = (population: 'British men' | 'British women') => {
      const elbowM = measureFor('elbow height standing', population).p50M + bodyCorrections.shoes.valueM;
      return { lowM: elbowM - mostM, highM: elbowM - leastM };
    };
    const hers = worktop('British women');
    expect(hers.lowM).toBeCloseTo(0.88, 12);
    expect(hers.highM).toBeCloseTo(0.93, 12);
    expect(worktop('British men').lowM).toBeCloseTo(0.965, 12);
  });
});

/** What the sources print in both units: the inch figure, times 25.4 mm, must round to the millimetres beside it. */
describe('inches and millimetres', () => {
  test.each([
    ['ADA 902.3, lower end', 28, 711, bandLimit('table-height').leastM],
    ['ADA 902.3, upper end', 34, 864, bandLimit('table-height').mostM],
    ['ADAAG 4.32.3, knee space', 27, 686, lengthLimit('knee-space-height').valueM],
    ['49 CFR 393.76, width', 24, 610, lengthLimit('bed-width-single').valueM],
    ['49 CFR 393.76, height', 24, 610, lengthLimit('lying-headroom').valueM],
    ['seat to table, lower end', 10, 254, bandLimit('table-height-above-seat').leastM],
    ['escape window, longer side', 24, 610, escapeOpeningLeast.longerSideM],
  ] as const)('%s: %d in, %d mm', (_name, lengthIn, lengthMm, valueM) => {
    expect(valueM).toBeCloseTo(lengthIn * 0.0254, 12);
    expect(Math.round(valueM * 1000)).toBe(lengthMm);
  });
});

describe('the stricter is kept, and the others stand beside it', () => {
  // Sitting height: NUREG-0700 972, British men 965, handbooks 900 mm.
  test('sitting headroom', () => {
    const { valueM, citations } = lengthLimit('sitting-headroom');
    expect(valueM).toBeGreaterThanOrEqual(Math.max(measureFor('sitting height').p95M, 0.9));
    expect(citations).toHaveLength(3);
  });

  // The seat: no source has a lower one than the 5th percentile woman but the women of Hong Kong (325 mm).
  test('seat height', () => {
    const { valueM } = lengthLimit('seat-height');
    for (const otherM of [0.376, 0.45, measureFor('popliteal height', 'British men').p5M])
      expect(valueM).toBeLessThanOrEqual(otherM);
  });

  test('seat width is the widest of the tables, clothed', () => {
    const widestM = Math.max(
      ...(['British men', 'British women', 'US men', 'US women'] as const).map(
        (population) => measureFor('hip breadth', population).p95M,
      ),
    );
    expect(lengthLimit('seat-width').valueM).toBeCloseTo(widestM + 0.025, 12);
  });

  // 440 mm + 25 mm of clothing = 465 mm; 450 mm of the caravan standard.
  test('a passage is wider than clothed hips and the escape route of a caravan', () => {
    const { valueM } = lengthLimit('passage-width');
    expect(valueM).toBeGreaterThan(lengthLimit('seat-width').valueM);
    expect(valueM).toBeGreaterThan(lengthLimit('escape-path-width').valueM);
    expect(lengthLimit('passage-width-comfortable').valueM).toBeGreaterThan(valueM);
    // The caution's shoulders: 510 + 10 mm.
    const shouldersM = measureFor('shoulder breadth').p95M + bodyCorrections.indoorClothingOnShoulders.valueM;
    expect(shouldersM).toBeCloseTo(0.52, 12);
    expect(lengthLimit('passage-width').caution).toContain('520 mm');
  });

  // Reach: Austrian insurers 550 to 650 mm from the shoulder, 350 to 450 mm near; practice 600, over a counter 635 mm.
  test('reach', () => {
    const reachM = lengthLimit('reach').valueM;
    expect(reachM).toBeGreaterThanOrEqual(0.55);
    expect(reachM).toBeLessThan(0.6);
    const serviceM = lengthLimit('service-reach').valueM;
    expect(serviceM).toBeGreaterThanOrEqual(0.35);
    expect(serviceM).toBeLessThanOrEqual(0.45);
  });

  // Of the 25 mm of BS 6891 and the 30 mm of the boats.
  test('gas and cables', () => {
    const { valueM, caution } = lengthLimit('cable-gas-separation');
    expect(valueM).toBe(Math.max(0.025, 0.03));
    expect(caution).toContain('share no chase');
    expect(caution).toContain('qualified gas fitter');
  });
});

describe('beds against sleepers', () => {
  const bedFor = (statureM: number): number =>
    statureM + bodyCorrections.supine.valueM + lengthLimit('bed-clearance').valueM;

  // By hand: 1.78 + 0.015 + 0.05 = 1.845 m.
  test('a sleeper of 1.78 m', () => {
    expect(bedFor(1.78)).toBeCloseTo(1.845, 12);
  });

  // 49 CFR 393.76: 75 in (1905 mm) holds all but the tallest of US men: the 95th percentile needs 1935 mm.
  test('the berth of a lorry fits the average man and not the tall one', () => {
    expect(bedFor(measureFor('stature', 'US men').p50M)).toBeLessThan(75 * 0.0254);
    expect(bedFor(measureFor('stature', 'US men').p95M)).toBeCloseTo(1.935, 12);
  });

  // PN-89/F-06027.04: 1900 mm for one.
  test('the shortest bed of a house fits the average of every population', () => {
    for (const population of ['British men', 'US men', 'Hong Kong men', 'Japanese men'] as const)
      expect(bedFor(measureFor('stature', population).p50M)).toBeLessThan(1.9);
  });

  // Common practice: 73 in of sleeper in 72 in of width does not lie straight.
  test('lying across', () => {
    expect(bedFor(73 * 0.0254)).toBeGreaterThan(72 * 0.0254);
  });
});

describe('ways out', () => {
  test('two of them', () => {
    expect(escapeWays).toMatchObject({ count: 2, sense: 'at least', force: 'published guide' });
    expect(firstOf(escapeWays.citations).provenance).toBe('read');
  });

  test('the strictest opening: 0.5 m x 1.0 m and 0.65 m²', () => {
    expect(escapeOpening).toMatchObject({ shorterSideM: 0.5, longerSideM: 1, areaM2: 0.65 });
  });

  // 450 mm of the caravan standard (read) against 17 in; 24 in against the remembered 600 mm; 0.27432 m² by hand.
  test('the least opening: 450 x 610 mm', () => {
    expect(escapeOpeningLeast.shorterSideM).toBe(Math.max(0.45, 17 * 0.0254));
    expect(escapeOpeningLeast.longerSideM).toBeCloseTo(Math.max(0.6, 24 * 0.0254), 12);
    expect(escapeOpeningLeast.areaM2).toBeCloseTo(0.27432, 12);
  });

  /** The sizes that the sources print, against both rows. */
  test.each([
    ['the German advice, 0.65 m wide and 1.0 m high', 0.65, 1.0, true, true],
    ['the same on its side', 1.0, 0.65, true, true],
    ['its sides without its area', 0.5, 1.0, false, true],
    ['EN 1646-1 as remembered', 0.45, 0.6, false, false],
    ['an inch figure taken for it', 0.45, 0.6096, false, true],
    ['a window of trailers, 17 x 24 in', 0.4318, 0.6096, false, false],
    ['a window of manufactured homes, 22 in and 5 ft²', 0.5588, 0.8313, false, true],
    ['a window of houses, 450 mm and 0.33 m²', 0.45, 0.7334, false, true],
    ['a window of old buses', 0.33, 0.45, false, false],
    ['a roof hatch of 400 x 400 mm', 0.4, 0.4, false, false],
  ] as const)('%s', (_name, widthM, heightM, strictest, least) => {
    expect(opensAsWideAs(escapeOpening, widthM, heightM)).toBe(strictest);
    expect(opensAsWideAs(escapeOpeningLeast, widthM, heightM)).toBe(least);
  });

  test('exactly as large is enough, a millimetre less is not', () => {
    const { shorterSideM, longerSideM } = escapeOpeningLeast;
    expect(opensAsWideAs(escapeOpeningLeast, longerSideM, shorterSideM)).toBe(true);
    expect(opensAsWideAs(escapeOpeningLeast, longerSideM, shorterSideM - 0.001)).toBe(false);
    expect(opensAsWideAs(escapeOpeningLeast, longerSideM - 0.001, shorterSideM)).toBe(false);
    // 0.1 + 0.35 and 0.7 - 0.25 are 0.45 m with an error in the last digit.
    expect(opensAsWideAs(escapeOpeningLeast, 0.7 - 0.25, longerSideM)).toBe(true);
  });

  test.each([
    [-0.1, 0.6],
    [Number.NaN, 0.6],
    [0.5, Number.NaN],
  ])('an opening of %d x %d m is refused', (widthM, heightM) => {
    expect(() => opensAsWideAs(escapeOpening, widthM, heightM)).toThrow(RangeError);
  });
});

describe('chases', () => {
  // NEC chapter 9, table 1: 53, 31, 40 %; UK practice: 45 %, and 35 % for several in conduit. The strictest of them.
  test.each([
    [1, 0.53, 0.45],
    [2, 0.31, 0.45],
    [3, 0.4, 0.35],
    [12, 0.4, 0.35],
  ])('%d cables', (cables, usShare, ukShare) => {
    expect(chaseFillFor(cables).share).toBe(Math.min(usShare, ukShare));
  });

  test.each([0, -1, 2.5, Number.NaN])('%d cables are refused', (cables) => {
    expect(() => chaseFillFor(cables)).toThrow(RangeError);
  });

  // Three round cables of 8 mm in a pipe of 20 mm bore: 3 · 8² / 20² = 48 %, too full; in 25 mm: 30.7 %.
  test('three cables of 8 mm', () => {
    expect((3 * 8 ** 2) / 20 ** 2).toBeGreaterThan(chaseFillFor(3).share);
    expect((3 * 8 ** 2) / 25 ** 2).toBeLessThan(chaseFillFor(3).share);
  });
});

describe('restraint', () => {
  test.each([
    ['forward', 1, 6, 'several European countries 1.0; VDI 0.8; US, Québec, Australia, EN 12195-1: 0.8'],
    ['rearward', 0.5, 5, '49 CFR 393.102, Québec, Australia, EN 12195-1, VDI 2700-16'],
    [
      'sideways',
      0.5,
      8,
      'EN 12195-1:2003, prEN 2009, any; IMO/ILO/UN ECE 2001, 49 CFR 393.102, Québec, Australia, VDI 2700-16',
    ],
    ['sideways tipping', 0.7, 3, 'EN 12195-1:2003 0.7, prEN 12195-1:2009 0.6, any 0.6'],
    ['upward', 0.2, 2, 'Australia, 49 CFR 393.102(b)'],
  ] as const)(
    '%s: %d g, strictest of %d editions, above 3500 kg',
    (direction, coefficient, editions, _from) => {
      const { strictest, others } = restraintFor(direction, 3501);
      expectPublished(strictest.coefficient, exactly(coefficient), firstOf(strictest.citations));
      expect(others).toHaveLength(editions - 1);
      for (const other of others) expect(other.coefficient).toBeLessThanOrEqual(strictest.coefficient);
    },
  );

  test('the looser editions of the two that differ are still there', () => {
    expect(restraintFor('forward', 3501).others.map((row) => row.coefficient)).toEqual([
      0.8, 0.8, 0.8, 0.8, 0.8,
    ]);
    expect(restraintFor('sideways tipping').others.map((row) => row.coefficient)).toEqual([0.6, 0.6]);
  });

  test('no direction is without a row, no row without an edition that was read', () => {
    expect(new Set(restraintCoefficients.map((row) => row.direction))).toEqual(new Set(restraintDirections));
    for (const direction of restraintDirections)
      expect(firstOf(restraintFor(direction).strictest.citations).provenance).toBe('read');
    for (const { edition, force } of restraintCoefficients) {
      expect(edition).not.toBe('');
      expect(force).toBe('published guide');
    }
  });

  test('no row is from memory', () => {
    for (const { citations } of restraintCoefficients) expect(firstOf(citations).provenance).toBe('read');
  });

  /** F = coefficient · m · g for a battery of 30 kg, by hand with g = 9.80665 m/s²; 30 kg weighs 294.1995 N. */
  test.each([
    ['forward', 294.1995],
    ['rearward', 147.09975],
    ['sideways', 147.09975],
    ['sideways tipping', 205.93965],
    ['upward', 58.8399],
  ] as const)('30 kg %s: %d N', (direction, forceN) => {
    const actualN = restraintFor(direction, 3501).strictest.coefficient * 30 * STANDARD_GRAVITY_M_PER_S2;
    expect(actualN).toBeCloseTo(forceN, 9);
  });

  // In old units: 0.8 g on 100 kg is 80 kgf, 176.37 lbf (1 lbf = 4.4482216 N). A slip of kg and N is a factor of 9.8.
  test('100 kg at 0.8 g in pounds', () => {
    expect((0.8 * 100 * STANDARD_GRAVITY_M_PER_S2) / 4.4482216152605).toBeCloseTo(0.8 * 220.46226, 4);
  });

  test('the cautions say what the figures are not for', () => {
    expect(restraintCaution).toMatch(/Not for a crash or a rollover/);
    expect(restraintOwnLawCaution).toMatch(/Seats, their belts and gas or fuel tanks/);
  });

  // DVLA guidance of 7 August 2020: four features, two with an exception.
  test('features of a motor caravan', () => {
    expect(motorCaravanFeatures.map(({ feature }) => feature)).toEqual([
      'seats and table',
      'sleeping place',
      'cooking place',
      'storage',
    ]);
    expect(motorCaravanFeatures.filter(({ exception }) => exception !== undefined)).toHaveLength(2);
  });
});

describe('provenance', () => {
  const addressLeftOut: readonly string[] = [
    fitSources.caravanEscapeWidth.title,
    fitSources.escapeAdviceGerman.title,
  ];

  const everyCitation: readonly Citation[] = Object.values(fitSources);

  test.each(everyCitation.map((citation) => [citation.title, citation] as const))('%s', (title, citation) => {
    // What was read says where, unless the address is a seller's; what was not read claims no address.
    const expected = citation.provenance === 'read' && !addressLeftOut.includes(title);
    expect(citation.readAt !== undefined).toBe(expected);
    if (citation.provenance !== 'read' || !expected) expect(citation.caution).toBeDefined();
  });

  test.each(everyLimit.map((limit) => [limit.id, limit] as const))('%s', (_id, { force, citations, of }) => {
    expect(of).not.toBe('');
    expect(citations.length).toBeGreaterThan(0);
    // No rule for houses, boats or lorries is passed off as law for a van.
    expect(force).not.toBe('law');
    // A guide needs a source that was published, whether read or remembered.
    if (force === 'published guide')
      expect(citations.some(({ provenance }) => provenance === 'read')).toBe(true);
    if (force === 'own choice') expect(firstOf(citations).provenance).toBe('own choice');
  });
});
