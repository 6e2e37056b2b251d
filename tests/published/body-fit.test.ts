import { describe, expect, test } from 'vitest';
import { diagonal, longestLying } from '../../src/calc/space/fit-in.ts';
import { bodyCorrections, measureFor, scaledToStature } from '../../src/catalogue/body-measures.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { bandLimit, lengthLimit } from '../../src/catalogue/fit-limits.ts';
import {
  bedMovementCourse,
  sleeperBerthRule,
  soldierTable,
  statureTable,
  worktopBelowElbow,
  worktopFitter,
} from '../../src/catalogue/fit-sources.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

/*
 * The body measures that seats, beds, worktops and headroom rest on, scaled to people, against the sources that the
 * catalogue cites; and the sources against each other where two speak of one thing.
 */

const handCalculated = (mm: number): Published => ({
  value: mm,
  within: 0.05,
  because: 'worked out by hand to a tenth of a millimetre',
});

const firstOf = ({ citations }: { readonly citations: readonly Citation[] }): Citation => {
  const [citation] = citations;
  if (citation === undefined) throw new Error('A row has no source.');
  return citation;
};

describe('measures of people of other statures', () => {
  // By hand, from the 50th percentiles as printed: measure · stature / stature of the table.
  test.each([
    // 910 · 1860 / 1740
    ['sitting height', 'British men', 1.86, 972.76],
    // 1090 · 1780 / 1740
    ['elbow height standing', 'British men', 1.78, 1115.06],
    // 1090 · 1650 / 1740
    ['elbow height standing', 'British men', 1.65, 1033.62],
    // 400 · 1650 / 1610
    ['popliteal height', 'British women', 1.65, 409.94],
    // 480 · 1650 / 1610
    ['buttock-popliteal length', 'British women', 1.65, 491.93],
  ] as const)('%s, %s of %d m: %d mm', (measure, population, statureM, mm) => {
    expectPublished(
      scaledToStature(measure, statureM, population) * 1000,
      handCalculated(mm),
      firstOf(measureFor(measure, population)),
    );
  });

  /**
   * A woman as short as the 5th percentile of the table should come near its 5th percentile of the legs: the ratio
   * leaves out what stature does not explain, so that it lies above, by 21 mm and 14 mm. Short legs on a person of
   * that stature are what the row without statures is for.
   */
  test.each([
    ['popliteal height', 400, 355],
    ['buttock-popliteal length', 480, 435],
  ] as const)('%s of a short woman lies above the row, by less than 25 mm', (measure, p50, p5) => {
    const short = measureFor('stature', 'British women').p5M;
    const scaledMm = scaledToStature(measure, short, 'British women') * 1000;
    expectPublished(scaledMm, handCalculated((p50 * 1505) / 1610), firstOf(measureFor(measure)));
    expect(scaledMm - p5).toBeGreaterThan(0);
    expect(scaledMm - p5).toBeLessThan(25);
  });
});

describe('worktops', () => {
  const { leastM, mostM } = bandLimit('worktop-below-elbow');

  test('the kitchen fitter keeps 15 cm and the page of advice 12 cm below the elbow: both within the band', () => {
    expectPublished(mostM * 1000, exactly(150), worktopFitter);
    expect(0.12, worktopBelowElbow.title).toBeGreaterThan(leastM);
    expect(0.12, worktopBelowElbow.title).toBeLessThan(mostM);
  });

  /**
   * The fitter's page gives 850 to 950 mm by stature, and 15 cm below the elbow. By the table's elbows with shoes,
   * 1090 + 25 − 150 = 965 mm for the middle man and 1005 + 25 − 150 = 880 mm for the middle woman: one within the
   * page's range, one 15 mm above it. The page rounds its heights to 50 mm, so that 25 mm is agreement.
   */
  test('15 cm below the elbows of the table comes near 850 to 950 mm', () => {
    const below = (population: 'British men' | 'British women') =>
      measureFor('elbow height standing', population).p50M + bodyCorrections.shoes.valueM - mostM;
    expect(below('British men')).toBeCloseTo(0.965, 12);
    expect(below('British women')).toBeCloseTo(0.88, 12);
    expect(below('British men'), worktopFitter.title).toBeLessThanOrEqual(0.95 + 0.025);
    expect(below('British women'), worktopFitter.title).toBeGreaterThanOrEqual(0.85 - 0.025);
  });
});

describe('beds', () => {
  // 75 in: 1905 mm. A lying length of 1855 + 15 mm and 3 to 5 cm of room is 1900 to 1920 mm.
  test("the lorry's berth is as long as the course asks for the tall man of the table", () => {
    const lyingM = measureFor('stature').p95M + bodyCorrections.supine.valueM;
    expectPublished(lyingM * 1000, exactly(1870), statureTable);
    const berthM = 75 * 0.0254;
    expect(berthM, sleeperBerthRule.title).toBeGreaterThanOrEqual(lyingM + 0.03);
    expect(berthM, bedMovementCourse.title).toBeLessThanOrEqual(lyingM + lengthLimit('bed-clearance').valueM);
  });

  // 24 in: 609.6 mm, against 510 mm of shoulders and 10 mm of clothing.
  test('a berth is wider than the broad shoulders that lie on its diagonal', () => {
    const shouldersM = measureFor('shoulder breadth').p95M + bodyCorrections.indoorClothingOnShoulders.valueM;
    expectPublished(shouldersM * 1000, exactly(520), firstOf(measureFor('shoulder breadth')));
    expect(lengthLimit('bed-width-single').valueM).toBeGreaterThan(shouldersM);
  });

  // Across the corners of a square a strip of width q is a·√2 − q long: 1800 · 1.414214 − 520 = 2025.58 mm.
  test('on the diagonal of a square', () => {
    const square = { lengthM: 1.8, widthM: 1.8 };
    expect(longestLying(0.52, square)).toBeCloseTo(2.02558, 5);
    expect(diagonal(square)).toBeCloseTo(2.54558, 5);
  });
});

describe('sitting up', () => {
  // NUREG-0700 table 11.4 has 972 mm for the 95th percentile soldier, the table 965 mm for the British man.
  test('the row is the taller of the two sources', () => {
    expectPublished(lengthLimit('sitting-headroom').valueM * 1000, exactly(972), soldierTable);
    expect(measureFor('sitting height').p95M).toBeCloseTo(0.965, 12);
  });

  // 910 · 1855 / 1740 = 970.1 mm, and 25 mm clear: 995.1 mm, stricter than the row for whoever is that tall.
  test('a tall man, known by his stature, is given more than the row', () => {
    const tallM = scaledToStature('sitting height', measureFor('stature').p95M);
    expectPublished(tallM * 1000, handCalculated(970.14), firstOf(measureFor('sitting height')));
    expect(tallM + bodyCorrections.hat.valueM).toBeGreaterThan(lengthLimit('sitting-headroom').valueM);
  });
});
