import type { Citation } from '../citation.ts';
import { deadLegLengthsUk, deadLegLengthsUs, drawsPerDay, hotWaterDelivery } from './sources.ts';

/** What the walls of hot pipes take on top of the water they hold, as a share of it: 0.6 against 0.5 gallons. */
export const pipeWallShare = { value: 0.2, citations: [hotWaterDelivery] } as const;

/** How often a day hot water is drawn from a tap whose pipe has cooled. */
export const coldDraws = { perDay: 3, citations: [drawsPerDay] } as const;

export interface DeadLegLength {
  /** Up to and with this outside diameter, m; infinite in the last row. */
  readonly outerUpToM: number;
  readonly longestM: number;
  readonly citations: readonly Citation[];
}

const uk = (outerUpToM: number, longestM: number): DeadLegLength => ({
  outerUpToM,
  longestM,
  citations: [deadLegLengthsUk],
});

/** Longest uninsulated hot pipe without circulation, UK guidance. */
export const deadLegLengths: readonly DeadLegLength[] = [
  uk(0.012, 20),
  uk(0.022, 12),
  uk(0.028, 8),
  uk(Number.POSITIVE_INFINITY, 3),
];

/** The row for an outside diameter, m (> 0). */
export const deadLegLengthFor = (outerDiameterM: number): DeadLegLength | undefined =>
  // A hair of a micrometre, so that 22 mm written in binary is still 22 mm.
  deadLegLengths.find(({ outerUpToM }) => outerDiameterM <= outerUpToM + 1e-6);

/** A row of the US energy code: volume in fluid ounces per foot and longest pipe in feet. */
export interface UsDeadLegRow {
  readonly nominalIn: string;
  readonly ozPerFt: number;
  readonly publicLavatoryFt: number;
  readonly otherFt: number;
}

const us = (nominalIn: string, ozPerFt: number, publicLavatoryFt: number, otherFt: number): UsDeadLegRow => ({
  nominalIn,
  ozPerFt,
  publicLavatoryFt,
  otherFt,
});

/** `otherFt` is 64 oz over the volume of a foot, 50 ft at most. */
export const usDeadLegTable = {
  rows: [
    us('1/4', 0.33, 6, 50),
    us('5/16', 0.5, 4, 50),
    us('3/8', 0.75, 3, 50),
    us('1/2', 1.5, 2, 43),
    us('5/8', 2, 1, 32),
    us('3/4', 3, 0.5, 21),
    us('7/8', 4, 0.5, 16),
    us('1', 5, 0.5, 13),
    us('1 1/4', 8, 0.5, 8),
    us('1 1/2', 11, 0.5, 6),
    us('2 or larger', 18, 0.5, 4),
  ],
  citations: [deadLegLengthsUs],
} as const;
