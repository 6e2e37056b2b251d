import { describe, expect, test } from 'vitest';
import {
  type BodyMeasure,
  bodyCorrections,
  bodyMeasures,
  type MeasureName,
  measureFor,
  measureNames,
  type Population,
  scaledToStature,
  scalingCitations,
} from '../../src/catalogue/body-measures.ts';
import { exactly, expectPublished } from './agreement.ts';

const described = bodyMeasures.map((row) => [`${row.measure}, ${row.population}`, row] as const);

const firstCitation = (row: BodyMeasure) => {
  const [citation] = row.citations;
  if (citation === undefined) throw new Error(`${row.measure} of ${row.population} has no source.`);
  return citation;
};

/**
 * Every figure of the body tables, in mm as printed: [measure, population, 5th, 50th, 95th percentile, standard
 * deviation or undefined, how it is known]. Source: Chan, Online Anthropometry, chapter 2 (data after Pheasant), and
 * for the rows marked memory the table of British adults in Pheasant, Bodyspace.
 */
const printed: readonly (readonly [
  MeasureName,
  Population,
  number,
  number,
  number,
  number | undefined,
  'read' | 'in part' | 'memory',
])[] = [
  ['stature', 'British men', 1625, 1740, 1855, 70, 'read'],
  ['stature', 'British women', 1505, 1610, 1710, 62, 'read'],
  ['stature', 'US men', 1640, 1755, 1870, 71, 'read'],
  ['stature', 'US women', 1520, 1625, 1730, 64, 'read'],
  ['stature', 'Hong Kong men', 1585, 1680, 1775, 58, 'read'],
  ['stature', 'Hong Kong women', 1455, 1555, 1655, 60, 'read'],
  ['stature', 'Japanese men', 1560, 1655, 1750, 58, 'read'],
  ['stature', 'Japanese women', 1450, 1530, 1610, 48, 'read'],
  ['eye height standing', 'British men', 1515, 1630, 1745, 69, 'read'],
  ['eye height standing', 'British women', 1405, 1505, 1610, 61, 'read'],
  ['eye height standing', 'US women', 1420, 1525, 1630, 63, 'read'],
  ['eye height standing', 'Hong Kong men', 1470, 1555, 1640, 52, 'read'],
  ['eye height standing', 'Hong Kong women', 1330, 1425, 1520, 57, 'read'],
  ['eye height standing', 'Japanese men', 1445, 1540, 1635, 57, 'read'],
  ['eye height standing', 'Japanese women', 1350, 1425, 1500, 47, 'read'],
  ['elbow height standing', 'British men', 1005, 1090, 1180, 52, 'memory'],
  ['elbow height standing', 'British women', 930, 1005, 1085, 46, 'memory'],
  ['elbow height standing', 'Hong Kong men', 950, 1015, 1080, 39, 'read'],
  ['sitting height', 'British men', 850, 910, 965, 36, 'read'],
  ['sitting height', 'British women', 795, 850, 910, 35, 'in part'],
  ['sitting height', 'Hong Kong men', 845, 900, 955, 34, 'read'],
  ['sitting height', 'Hong Kong women', 780, 840, 900, 37, 'read'],
  ['popliteal height', 'British men', 395, 440, 490, 29, 'read'],
  ['popliteal height', 'British women', 355, 400, 445, undefined, 'read'],
  ['popliteal height', 'Hong Kong men', 365, 405, 445, 25, 'read'],
  ['popliteal height', 'Hong Kong women', 325, 375, 425, 29, 'read'],
  ['shoulder breadth', 'British men', 420, 465, 510, 28, 'read'],
  ['shoulder breadth', 'British women', 355, 395, 435, 24, 'read'],
  ['shoulder breadth', 'Hong Kong men', 380, 425, 470, 26, 'read'],
  ['shoulder breadth', 'Hong Kong women', 335, 385, 435, 29, 'read'],
  ['hip breadth', 'British men', 310, 360, 405, 29, 'read'],
  ['hip breadth', 'British women', 310, 370, 435, 38, 'read'],
  ['hip breadth', 'US men', 310, 360, 410, 30, 'read'],
  ['hip breadth', 'US women', 310, 375, 440, 39, 'read'],
  ['hip breadth', 'Hong Kong men', 300, 335, 370, 22, 'read'],
  ['hip breadth', 'Hong Kong women', 295, 330, 365, 21, 'read'],
  ['hip breadth', 'Japanese men', 280, 305, 330, 14, 'read'],
  ['hip breadth', 'Japanese women', 270, 305, 340, 20, 'read'],
  ['functional reach', 'British men', 720, 780, 835, 34, 'memory'],
  ['functional reach', 'British women', 650, 705, 755, 31, 'memory'],
  ['shoulder-grip length', 'British men', 610, 665, 715, 32, 'read'],
  ['shoulder-grip length', 'British women', 555, 600, 650, 29, 'in part'],
  ['shoulder-grip length', 'Hong Kong men', 580, 620, 660, 25, 'read'],
  ['shoulder-grip length', 'Hong Kong women', 525, 560, 595, 22, 'read'],
  ['elbow-fingertip length', 'British men', 440, 475, 510, 21, 'read'],
  ['elbow-fingertip length', 'British women', 400, 430, 460, 19, 'in part'],
  ['elbow-fingertip length', 'Hong Kong men', 410, 445, 480, 22, 'read'],
  ['elbow-fingertip length', 'Hong Kong women', 360, 400, 440, 24, 'read'],
  ['buttock-popliteal length', 'British men', 440, 495, 550, 32, 'memory'],
  ['buttock-popliteal length', 'British women', 435, 480, 530, 30, 'memory'],
];

describe('body measures of the sources', () => {
  test.each(printed)('%s, %s: %d, %d, %d mm', (measure, population, p5, p50, p95, sd, known) => {
    const row = measureFor(measure, population);
    expectPublished(row.p5M * 1000, exactly(p5), firstCitation(row));
    expectPublished(row.p50M * 1000, exactly(p50), firstCitation(row));
    expectPublished(row.p95M * 1000, exactly(p95), firstCitation(row));
    if (sd === undefined) expect(row.sdM).toBeUndefined();
    else expectPublished((row.sdM ?? Number.NaN) * 1000, exactly(sd), firstCitation(row));
    expect(row.citations.map((citation) => citation.provenance)).toEqual(
      known === 'in part' ? ['read', 'memory'] : [known],
    );
  });

  test('no row is left out of the comparison, and none is there twice', () => {
    const named = printed.map(([measure, population]) => `${measure}, ${population}`);
    expect(described.map(([name]) => name).sort()).toEqual([...named].sort());
    expect(new Set(named).size).toBe(named.length);
  });

  test('what was read has an address, what is remembered has none', () => {
    for (const citation of bodyMeasures.flatMap((row) => row.citations))
      expect(citation.readAt !== undefined, citation.title).toBe(citation.provenance === 'read');
  });
});

describe('the percentiles make sense', () => {
  test.each(described)('%s rises', (_name, { p5M, p50M, p95M }) => {
    expect(p5M).toBeLessThan(p50M);
    expect(p50M).toBeLessThan(p95M);
  });

  /**
   * A normal distribution has its 5th and 95th percentile 1.645 standard deviations from its mean. Each printed
   * percentile is rounded to 5 mm (off by at most 2.5 mm, twice in the difference) and the deviation to 1 mm (off by
   * at most 0.5 mm, times 1.645): 5.8 mm in all. A slip between two rows, or between mm and cm, is far larger.
   */
  const roundingM = 0.0025 + 0.0025 + 1.645 * 0.0005;
  test.each(described.filter(([, row]) => row.sdM !== undefined))(
    '%s: mean ± 1.645 standard deviations',
    (_name, { p5M, p50M, p95M, sdM = Number.NaN }) => {
      expect(Math.abs(p50M - 1.645 * sdM - p5M)).toBeLessThanOrEqual(roundingM);
      expect(Math.abs(p50M + 1.645 * sdM - p95M)).toBeLessThanOrEqual(roundingM);
    },
  );

  // Without a printed deviation the two halves must still be equal within four roundings of 2.5 mm.
  test('British women, popliteal height, is symmetrical', () => {
    const { p5M, p50M, p95M } = measureFor('popliteal height', 'British women');
    expect(Math.abs(p50M - p5M - (p95M - p50M))).toBeLessThanOrEqual(0.01);
  });

  // Eyes lie 100 to 130 mm below the crown in every row kept. The page's row of US men has them at 45 mm.
  test.each(bodyMeasures.filter((row) => row.measure === 'eye height standing').map((row) => row.population))(
    'the eyes of %s are as far below the crown as eyes are',
    (population) => {
      const belowM =
        measureFor('stature', population).p50M - measureFor('eye height standing', population).p50M;
      expect(belowM).toBeGreaterThanOrEqual(0.1);
      expect(belowM).toBeLessThanOrEqual(0.13);
    },
  );

  test('the printed eye height of US men is not used', () => {
    expect(() => measureFor('eye height standing', 'US men')).toThrow(/no eye height standing of US men/);
  });

  // Men of a population exceed its women in every measure but the hips.
  test.each(measureNames.filter((measure) => measure !== 'hip breadth'))('%s: men above women', (measure) => {
    expect(measureFor(measure, 'British men').p50M).toBeGreaterThan(
      measureFor(measure, 'British women').p50M,
    );
  });
});

/**
 * The remembered rows against a second source that was read: an open program's table after Pheasant and Haslegrave,
 * Bodyspace, 3rd edition (2006), British adults, 50th percentiles, men and women averaged, printed to 1 mm.
 */
describe('remembered rows against the averages that were read', () => {
  test.each([
    ['elbow height standing', 1048],
    ['functional reach', 743],
    ['buttock-popliteal length', 488],
    // Rows that were read, for the method's sake.
    ['stature', 1675],
    ['eye height standing', 1568],
    ['popliteal height', 420],
    ['shoulder breadth', 430],
    ['hip breadth', 365],
  ] as const)('%s: %d mm', (measure, averageMm) => {
    const men = measureFor(measure, 'British men');
    const averageM = (men.p50M + measureFor(measure, 'British women').p50M) / 2;
    expectPublished(
      averageM * 1000,
      { value: averageMm, within: 0.5, because: 'the average is printed to 1 mm' },
      firstCitation(men),
    );
  });

  // NUREG-0700 table 11.4, US soldiers: 5th percentile woman 975, 677 and 463 mm, 95th percentile man 1160, 886, 547.
  test.each([
    ['elbow height standing', 975, 1160],
    ['functional reach', 677, 886],
    ['buttock-popliteal length', 463, 547],
  ] as const)('%s lies within 60 mm of soldiers at both ends', (measure, womanMm, manMm) => {
    expect(Math.abs(measureFor(measure, 'British women').p5M * 1000 - womanMm)).toBeLessThanOrEqual(60);
    expect(Math.abs(measureFor(measure, 'British men').p95M * 1000 - manMm)).toBeLessThanOrEqual(60);
  });
});

describe('corrections', () => {
  test.each([
    ['supine', 15],
    ['shoes', 25],
    ['hat', 25],
    ['mediumClothingOnHips', 25],
    ['indoorClothingOnShoulders', 10],
    ['selfReportedStature', 25],
  ] as const)('%s: %d mm', (name, mm) => {
    const { valueM, citation } = bodyCorrections[name];
    expectPublished(valueM * 1000, exactly(mm), citation);
    expect(citation.provenance).toBe('read');
  });

  // Chapter 1, section 9: 20 to 30 mm for men.
  test('shoes lie in the middle of what the source gives for men', () => {
    expect(bodyCorrections.shoes.valueM).toBeCloseTo((0.02 + 0.03) / 2, 12);
  });
});

describe('a measure scaled with stature', () => {
  test('the reference person has the reference measure', () => {
    expect(scaledToStature('sitting height', 1.74)).toBeCloseTo(0.91, 12);
    expect(scaledToStature('sitting height', 1.61, 'British women')).toBeCloseTo(0.85, 12);
  });

  // By hand: 0.910 · 1.90 / 1.740 = 0.99368; 0.400 · 1.55 / 1.610 = 0.38509.
  test('two worked people', () => {
    expect(scaledToStature('sitting height', 1.9)).toBeCloseTo(0.99368, 5);
    expect(scaledToStature('popliteal height', 1.55, 'British women')).toBeCloseTo(0.38509, 5);
  });

  /**
   * Scaling the 50th percentile to the 95th of stature should land near the 95th of a height. It overshoots or falls
   * short by what stature does not explain; 25 mm holds for every height of the British table.
   */
  test.each(['popliteal height', 'sitting height', 'elbow height standing', 'eye height standing'] as const)(
    '%s of a tall man comes near the table',
    (measure) => {
      const scaledM = scaledToStature(measure, measureFor('stature').p95M);
      expect(Math.abs(scaledM - measureFor(measure).p95M)).toBeLessThanOrEqual(0.025);
    },
  );

  test.each([0, -1.7, Number.NaN, Number.POSITIVE_INFINITY])('a stature of %d m is refused', (statureM) => {
    expect(() => scaledToStature('sitting height', statureM)).toThrow(RangeError);
  });

  test('does not pretend to be exact', () => {
    expect(scalingCitations.map((citation) => citation.provenance)).toContain('common practice');
  });

  test('without a population the measure is that of British men', () => {
    expect(measureFor('stature')).toBe(measureFor('stature', 'British men'));
  });
});
