import type { Citation } from '../citation.ts';
import { lfpRateTables } from './storage-sources.ts';

/** A span of cell temperatures with the current allowed in it, as a share of the capacity per hour. */
export interface LithiumRateBand {
  readonly fromC: number;
  readonly toC: number;
  readonly ratePerHour: number;
}

export interface LithiumRates {
  readonly standardCharge: readonly LithiumRateBand[];
  readonly fastCharge: readonly LithiumRateBand[];
  readonly standardDischarge: readonly LithiumRateBand[];
  readonly mostDischarge: readonly LithiumRateBand[];
  readonly citations: readonly Citation[];
}

const band = (fromC: number, toC: number, ratePerHour: number): LithiumRateBand => ({
  fromC,
  toC,
  ratePerHour,
});

const cold = Number.NEGATIVE_INFINITY;
const hot = Number.POSITIVE_INFINITY;

/**
 * Currents of lithium iron phosphate by cell temperature: a table, not one threshold. `standard` is what to charge with,
 * `fast` only where the battery's own manual allows it. Where the source prints nothing (fast charge above 50 °C,
 * discharge above 60 °C) the rate is 0.
 */
export const lithiumRates: LithiumRates = {
  standardCharge: [
    band(cold, 0, 0),
    band(0, 5, 0.1),
    band(5, 10, 0.1),
    band(10, 25, 0.2),
    band(25, 50, 0.5),
    band(50, 60, 0.1),
    band(60, hot, 0),
  ],
  fastCharge: [
    band(cold, 0, 0),
    band(0, 5, 0),
    band(5, 10, 0.2),
    band(10, 25, 1),
    band(25, 50, 0.75),
    band(50, hot, 0),
  ],
  standardDischarge: [
    band(cold, -40, 0),
    band(-40, -20, 0.1),
    band(-20, 0, 0.1),
    band(0, 60, 0.2),
    band(60, hot, 0),
  ],
  mostDischarge: [band(cold, -20, 0), band(-20, 0, 0.5), band(0, 60, 1), band(60, hot, 0)],
  citations: [lfpRateTables],
};
