import { notNegative, positive } from '../argument.ts';
import { shareAboveZero } from './storage-argument.ts';

export interface Converter {
  readonly outputA: number;
  /** Highest voltage at the battery that is charged. */
  readonly outputV: number;
  /** Lowest voltage at the converter's input. */
  readonly inputV: number;
  readonly efficiency: number;
}

/**
 * The current that a charger from direct current to direct current takes from the starter side.
 *
 *     I_in = I_out · U_out / (U_in · η)
 *
 * I_out: rated output, A (≥ 0); U_out, U_in: V (> 0); η: efficiency (0 < η ≤ 1). Result in A, more than the output when
 * the input is low: size the input cable and its fuse by this, or by the maker's peak if that is more.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: amateur radio page on charging lithium from an alternator: output power over input voltage and efficiency
 * (read).
 */
export function converterInputA({ outputA, outputV, inputV, efficiency }: Converter): number {
  return (
    (notNegative(outputA, 'The output current') * positive(outputV, 'The output voltage')) /
    (positive(inputV, 'The input voltage') * shareAboveZero(efficiency, 'The efficiency'))
  );
}

/**
 * What a hot alternator gives.
 *
 *     I_h = I_r · (1 − d)
 *
 * I_r: rated current, A (> 0); d: share lost hot (0 ≤ d < 1; 0.25 in the source). At idle it gives less than this.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: cruising magazine (read).
 */
export function hotAlternatorA(ratedA: number, lostShare: number): number {
  if (notNegative(lostShare, 'The share lost when hot') >= 1)
    throw new RangeError(`The share lost when hot must be less than 1, not ${lostShare}.`);
  return positive(ratedA, 'The rated current of the alternator') * (1 - lostShare);
}

/**
 * The share of an alternator's current that charging takes.
 *
 *     s = I / I_a
 *
 * I: current taken at the alternator's voltage, A (≥ 0); I_a: its current, A (> 0), rated or hot as the limit asks. Above
 * 1 it cannot be.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed).
 */
export function alternatorShare(takenA: number, alternatorA: number): number {
  return notNegative(takenA, 'The current taken') / positive(alternatorA, 'The current of the alternator');
}
