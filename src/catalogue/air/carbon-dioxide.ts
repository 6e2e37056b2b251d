import { notNegative, positive } from '../../calc/argument.ts';
import type { Citation } from '../citation.ts';
import { breathingActivities, breathingTable, metabolicTable } from './sources.ts';

/*
 * Carbon dioxide that people breathe out. The flows are printed in L/s at 0 °C and 101 kPa;
 * src/calc/air/carbon-dioxide.ts brings them to the temperature of the room.
 */

export const sexes = ['female', 'male'] as const;
export type Sex = (typeof sexes)[number];

/** The activities of the columns, met. */
export const breathingMets = [1, 1.2, 1.4, 1.6, 2, 3, 4] as const;

export interface BreathingRow {
  readonly sex: Sex;
  /** The row holds from this age to that of the next. */
  readonly fromYears: number;
  readonly basalMJPerDay: number;
  /** L/s at 0 °C, in the order of {@link breathingMets}. */
  readonly litresPerS: readonly number[];
}

const ages = (
  sex: Sex,
  rows: readonly (readonly [number, number, readonly number[]])[],
): readonly BreathingRow[] =>
  rows.map(([fromYears, basalMJPerDay, litresPerS]) => ({ sex, fromYears, basalMJPerDay, litresPerS }));

export const breathingRows: readonly BreathingRow[] = [
  ...ages('male', [
    [0, 1.86, [0.0009, 0.0011, 0.0013, 0.0014, 0.0018, 0.0027, 0.0036]],
    [1, 3.05, [0.0015, 0.0018, 0.0021, 0.0024, 0.003, 0.0044, 0.0059]],
    [3, 3.9, [0.0019, 0.0023, 0.0026, 0.003, 0.0038, 0.0057, 0.0075]],
    [6, 5.14, [0.0025, 0.003, 0.0035, 0.004, 0.005, 0.0075, 0.01]],
    [11, 7.02, [0.0034, 0.0041, 0.0048, 0.0054, 0.0068, 0.0102, 0.0136]],
    [16, 7.77, [0.0037, 0.0045, 0.0053, 0.006, 0.0075, 0.0113, 0.015]],
    [21, 8.24, [0.0039, 0.0048, 0.0056, 0.0064, 0.008, 0.012, 0.016]],
    [30, 7.83, [0.0037, 0.0046, 0.0053, 0.0061, 0.0076, 0.0114, 0.0152]],
    [40, 8, [0.0038, 0.0046, 0.0054, 0.0062, 0.0077, 0.0116, 0.0155]],
    [50, 7.95, [0.0038, 0.0046, 0.0054, 0.0062, 0.0077, 0.0116, 0.0154]],
    [60, 6.84, [0.0033, 0.004, 0.0046, 0.0053, 0.0066, 0.0099, 0.0133]],
    [70, 6.57, [0.0031, 0.0038, 0.0045, 0.0051, 0.0064, 0.0095, 0.0127]],
    [80, 6.19, [0.003, 0.0036, 0.0042, 0.0048, 0.006, 0.009, 0.012]],
  ]),
  ...ages('female', [
    [0, 1.75, [0.0008, 0.001, 0.0012, 0.0014, 0.0017, 0.0025, 0.0034]],
    [1, 2.88, [0.0014, 0.0017, 0.002, 0.0022, 0.0028, 0.0042, 0.0056]],
    [3, 3.59, [0.0017, 0.0021, 0.0024, 0.0028, 0.0035, 0.0052, 0.007]],
    [6, 4.73, [0.0023, 0.0027, 0.0032, 0.0037, 0.0046, 0.0069, 0.0092]],
    [11, 6.03, [0.0029, 0.0035, 0.0041, 0.0047, 0.0058, 0.0088, 0.0117]],
    [16, 6.12, [0.0029, 0.0036, 0.0042, 0.0047, 0.0059, 0.0089, 0.0119]],
    [21, 6.49, [0.0031, 0.0038, 0.0044, 0.005, 0.0063, 0.0094, 0.0126]],
    [30, 6.08, [0.0029, 0.0035, 0.0041, 0.0047, 0.0059, 0.0088, 0.0118]],
    [40, 6.16, [0.0029, 0.0036, 0.0042, 0.0048, 0.006, 0.009, 0.0119]],
    [50, 6.17, [0.003, 0.0036, 0.0042, 0.0048, 0.006, 0.009, 0.012]],
    [60, 5.67, [0.0027, 0.0033, 0.0038, 0.0044, 0.0055, 0.0082, 0.011]],
    [70, 5.45, [0.0026, 0.0032, 0.0037, 0.0042, 0.0053, 0.0079, 0.0106]],
    [80, 5.19, [0.0025, 0.003, 0.0035, 0.004, 0.005, 0.0075, 0.0101]],
  ]),
];

export const breathingCitations: readonly Citation[] = [breathingTable];

export const activityNames = ['asleep', 'sitting', 'light housework', 'cooking', 'cleaning'] as const;
export type ActivityName = (typeof activityNames)[number];

export interface ActivityRow {
  readonly met: number;
  readonly citations: readonly Citation[];
}

/** How hard people work, in multiples of sitting still. */
export const activities: Readonly<Record<ActivityName, ActivityRow>> = {
  // The table of metabolic heat has 0.7 for sleep, which would breathe out less.
  asleep: { met: 0.95, citations: [breathingActivities, metabolicTable] },
  sitting: { met: 1.3, citations: [breathingActivities] },
  'light housework': { met: 2.3, citations: [breathingActivities] },
  cooking: { met: 3.3, citations: [breathingActivities] },
  cleaning: { met: 3.8, citations: [breathingActivities] },
};

export interface Breather {
  /** Left out: whichever breathes out more. */
  readonly sex?: Sex;
  /** Left out: the age from 16 up that breathes out most. */
  readonly ageYears?: number;
  /** At most 4; below 1 in proportion. */
  readonly met: number;
}

/**
 * Carbon dioxide that one person breathes out, m³/s at 0 °C and 101 kPa. Between columns on a straight line. What is not
 * known about the person takes the row that breathes out most.
 *
 * Throws RangeError if the age is not finite or negative, or the activity not above 0 or above 4 met.
 */
export function breathedOutAtZeroM3S({ sex, ageYears, met }: Breather): number {
  if (positive(met, 'The activity') > 4)
    throw new RangeError(`The activity must be at most 4 met, not ${met}.`);
  const rows = (sex === undefined ? sexes : [sex]).flatMap((each) => rowsOf(each, ageYears));
  return Math.max(...rows.map(({ litresPerS }) => onColumns(litresPerS, met))) / 1000;
}

const grownYears = 16;

function rowsOf(sex: Sex, ageYears: number | undefined): readonly BreathingRow[] {
  const rows = breathingRows.filter((row) => row.sex === sex);
  if (ageYears === undefined) return rows.filter(({ fromYears }) => fromYears >= grownYears);
  notNegative(ageYears, 'The age');
  return rows.filter(({ fromYears }) => fromYears <= ageYears).slice(-1);
}

function onColumns(litresPerS: readonly number[], met: number): number {
  const at = (column: number) => litresPerS[column] ?? Number.NaN;
  const above = breathingMets.findIndex((column) => met <= column);
  const highMet = breathingMets[above] ?? Number.NaN;
  const lowMet = breathingMets[above - 1];
  if (lowMet === undefined) return at(0) * met;
  return at(above - 1) + ((met - lowMet) / (highMet - lowMet)) * (at(above) - at(above - 1));
}
