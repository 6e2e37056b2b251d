import type { Citation } from './citation.ts';
import {
  britishTableRemembered,
  elbowFingertipTable,
  elbowHeightTable,
  eyeHeightTable,
  hipBreadthTable,
  poplitealTable,
  ratioScaling,
  scalingPractice,
  shoesNote,
  shoulderBreadthTable,
  shoulderGripTable,
  sittingHeightTable,
  statureTable,
} from './fit-sources.ts';

/** Adults; the British and US ones aged 19 to 65. */
export const populations = [
  'British men',
  'British women',
  'US men',
  'US women',
  'Hong Kong men',
  'Hong Kong women',
  'Japanese men',
  'Japanese women',
] as const;
export type Population = (typeof populations)[number];

export const measureNames = [
  'stature',
  /** Floor to the crease under the knee, sitting. */
  'popliteal height',
  /** Across the hips, sitting. */
  'hip breadth',
  /** Seat to the crown of the head, sitting straight. */
  'sitting height',
  /** Across the shoulders at their widest. */
  'shoulder breadth',
  'elbow height standing',
  'eye height standing',
  /** Back of the shoulder blades to a gripped rod, arm stretched forward. */
  'functional reach',
  /** Tip of the shoulder to something gripped, arm stretched: how far an arm goes into a hole. */
  'shoulder-grip length',
  /** Back of the elbow to the fingertips: the forearm's reach. */
  'elbow-fingertip length',
  /** Back of the buttocks to the crease behind the knee: how deep a seat may be. */
  'buttock-popliteal length',
] as const;
export type MeasureName = (typeof measureNames)[number];

/**
 * One body measure of one population, in metres, of people with few clothes and no shoes. Five of 100 people are
 * smaller than `p5M`, 50 than `p50M`, 95 than `p95M`; the sources round these to 5 mm.
 */
export interface BodyMeasure {
  readonly measure: MeasureName;
  readonly population: Population;
  readonly p5M: number;
  readonly p50M: number;
  readonly p95M: number;
  /** Standard deviation; absent where no source gives it. */
  readonly sdM?: number;
  readonly citations: readonly Citation[];
}

/** Shown with everything that rests on these tables. */
export const bodyMeasuresCaution =
  'Made from surveys of the last century. People have grown since, and no table knows who lives in this van: where it is close, measure the person.';

/** Rows as printed: population, 5th, 50th and 95th percentile and standard deviation, all in mm. */
type Printed = readonly [Population, number, number, number, number?];

const rowsOf = (
  measure: MeasureName,
  citations: readonly [Citation, ...Citation[]],
  printed: readonly Printed[],
): readonly BodyMeasure[] =>
  printed.map(([population, p5, p50, p95, sd]) => ({
    measure,
    population,
    p5M: p5 / 1000,
    p50M: p50 / 1000,
    p95M: p95 / 1000,
    ...(sd !== undefined && { sdM: sd / 1000 }),
    citations,
  }));

/** A row of which the source was read only as far as `read` says; the rest is remembered. */
const readOnly = (table: Citation, read: string): readonly [Citation, Citation] => [
  { ...table, title: `${table.title}: ${read}` },
  britishTableRemembered,
];

export const bodyMeasures: readonly BodyMeasure[] = [
  ...rowsOf(
    'stature',
    [statureTable],
    [
      ['British men', 1625, 1740, 1855, 70],
      ['British women', 1505, 1610, 1710, 62],
      ['US men', 1640, 1755, 1870, 71],
      ['US women', 1520, 1625, 1730, 64],
      ['Hong Kong men', 1585, 1680, 1775, 58],
      ['Hong Kong women', 1455, 1555, 1655, 60],
      ['Japanese men', 1560, 1655, 1750, 58],
      ['Japanese women', 1450, 1530, 1610, 48],
    ],
  ),
  // US men are left out: the page prints 1595, 1710, 1825 mm, eyes 45 mm below the crown, which must be a misprint.
  ...rowsOf(
    'eye height standing',
    [eyeHeightTable],
    [
      ['British men', 1515, 1630, 1745, 69],
      ['British women', 1405, 1505, 1610, 61],
      ['US women', 1420, 1525, 1630, 63],
      ['Hong Kong men', 1470, 1555, 1640, 52],
      ['Hong Kong women', 1330, 1425, 1520, 57],
      ['Japanese men', 1445, 1540, 1635, 57],
      ['Japanese women', 1350, 1425, 1500, 47],
    ],
  ),
  ...rowsOf(
    'elbow height standing',
    [britishTableRemembered],
    [
      ['British men', 1005, 1090, 1180, 52],
      ['British women', 930, 1005, 1085, 46],
    ],
  ),
  ...rowsOf('elbow height standing', [elbowHeightTable], [['Hong Kong men', 950, 1015, 1080, 39]]),
  ...rowsOf(
    'sitting height',
    [sittingHeightTable],
    [
      ['British men', 850, 910, 965, 36],
      ['Hong Kong men', 845, 900, 955, 34],
      ['Hong Kong women', 780, 840, 900, 37],
    ],
  ),
  ...rowsOf('sitting height', readOnly(sittingHeightTable, 'British women, 5th percentile'), [
    ['British women', 795, 850, 910, 35],
  ]),
  ...rowsOf(
    'popliteal height',
    [poplitealTable],
    [
      ['British men', 395, 440, 490, 29],
      // The page breaks off before the standard deviation.
      ['British women', 355, 400, 445],
      ['Hong Kong men', 365, 405, 445, 25],
      ['Hong Kong women', 325, 375, 425, 29],
    ],
  ),
  ...rowsOf(
    'shoulder breadth',
    [shoulderBreadthTable],
    [
      ['British men', 420, 465, 510, 28],
      ['British women', 355, 395, 435, 24],
      ['Hong Kong men', 380, 425, 470, 26],
      ['Hong Kong women', 335, 385, 435, 29],
    ],
  ),
  ...rowsOf(
    'hip breadth',
    [hipBreadthTable],
    [
      ['British men', 310, 360, 405, 29],
      ['British women', 310, 370, 435, 38],
      ['US men', 310, 360, 410, 30],
      ['US women', 310, 375, 440, 39],
      ['Hong Kong men', 300, 335, 370, 22],
      ['Hong Kong women', 295, 330, 365, 21],
      ['Japanese men', 280, 305, 330, 14],
      ['Japanese women', 270, 305, 340, 20],
    ],
  ),
  ...rowsOf(
    'functional reach',
    [britishTableRemembered],
    [
      ['British men', 720, 780, 835, 34],
      ['British women', 650, 705, 755, 31],
    ],
  ),
  ...rowsOf(
    'shoulder-grip length',
    [shoulderGripTable],
    [
      ['British men', 610, 665, 715, 32],
      ['Hong Kong men', 580, 620, 660, 25],
      ['Hong Kong women', 525, 560, 595, 22],
    ],
  ),
  ...rowsOf('shoulder-grip length', readOnly(shoulderGripTable, 'British women, 5th and 50th percentile'), [
    ['British women', 555, 600, 650, 29],
  ]),
  ...rowsOf(
    'elbow-fingertip length',
    [elbowFingertipTable],
    [
      ['British men', 440, 475, 510, 21],
      ['Hong Kong men', 410, 445, 480, 22],
      ['Hong Kong women', 360, 400, 440, 24],
    ],
  ),
  ...rowsOf(
    'elbow-fingertip length',
    readOnly(elbowFingertipTable, 'British women, 5th and 50th percentile'),
    [['British women', 400, 430, 460, 19]],
  ),
  ...rowsOf(
    'buttock-popliteal length',
    [britishTableRemembered],
    [
      ['British men', 440, 495, 550, 32],
      ['British women', 435, 480, 530, 30],
    ],
  ),
];

/** Something to add to a body measure, in metres. */
export interface Correction {
  readonly valueM: number;
  readonly of: string;
  readonly citation: Citation;
}

export const bodyCorrections = {
  supine: { valueM: 0.015, of: 'added to stature for a person lying on their back', citation: statureTable },
  shoes: { valueM: 0.025, of: 'added to every height above the floor for flat shoes', citation: shoesNote },
  hat: { valueM: 0.025, of: 'added to stature and to sitting height for a hat', citation: statureTable },
  mediumClothingOnHips: {
    valueM: 0.025,
    of: 'added to hip breadth for medium clothing',
    citation: hipBreadthTable,
  },
  indoorClothingOnShoulders: {
    valueM: 0.01,
    of: 'added to shoulder breadth for indoor clothing',
    citation: shoulderBreadthTable,
  },
  selfReportedStature: {
    valueM: 0.025,
    of: 'what people overstate their stature by, on average, when asked for it',
    citation: statureTable,
  },
} as const satisfies Readonly<Record<string, Correction>>;

/**
 * The measure of a population. Without a population, that of British men: the tables are fullest for the British, and
 * the larger body is the stricter wherever something must be high, long or wide enough. Ask for British women where
 * the smaller body is (seats, reach).
 *
 * @throws Error when the tables have no row for the pair.
 */
export function measureFor(measure: MeasureName, population: Population = 'British men'): BodyMeasure {
  const row = bodyMeasures.find((entry) => entry.measure === measure && entry.population === population);
  if (row === undefined) throw new Error(`The body tables have no ${measure} of ${population}.`);
  return row;
}

/** Where the scaling comes from. */
export const scalingCitations: readonly Citation[] = [scalingPractice, ratioScaling];

/**
 * An estimate of a person's measure, m, from their stature, m: the population's 50th percentile of the measure times
 * the person's stature over the population's 50th percentile of stature.
 *
 *     m = m50 · S / S50
 *
 * Meant for adults of 1.4 to 2.1 m. Common practice (see `scalingCitations`): people of one stature still differ by
 * several centimetres. Poor for breadths, which follow body mass more than stature.
 *
 * @throws RangeError when the stature is not a number above 0.
 * @throws Error when the tables have no row for the pair.
 */
export function scaledToStature(
  measure: MeasureName,
  statureM: number,
  population: Population = 'British men',
): number {
  if (!(statureM > 0 && Number.isFinite(statureM)))
    throw new RangeError(`A stature must be a number above 0 m, not ${statureM}.`);
  return (measureFor(measure, population).p50M * statureM) / measureFor('stature', population).p50M;
}
