import { finite, notNegative, positive } from '../argument.ts';

/** A capacity as it is rated: so many Ah, drawn evenly over so many hours. */
export interface RatedCapacity {
  readonly capacityAh: number;
  /** The hours of the rating, usually 20. A capacity without them says nothing about other currents. */
  readonly ratingHours: number;
  /** Peukert exponent, at least 1. Lithium iron phosphate: 1. */
  readonly exponent: number;
}

/** One discharge to empty at a constant current. */
export interface DischargeTest {
  readonly currentA: number;
  readonly hours: number;
}

const checkedExponent = (exponent: number): number => {
  if (finite(exponent, 'The Peukert exponent') < 1) {
    throw new RangeError(
      `The Peukert exponent must be at least 1, not ${exponent}: no battery gives more the harder it is drawn.`,
    );
  }
  return exponent;
};

/**
 * The current at which a capacity is rated.
 *
 *     I_R = C / H
 *
 * C: rated capacity, Ah (> 0); H: hours of the rating (> 0). Result in A.
 *
 * Throws RangeError if a value is not finite or not greater than 0.
 *
 * Source: definition of a rated capacity (computed).
 */
export function ratedCurrentA({ capacityAh, ratingHours }: Omit<RatedCapacity, 'exponent'>): number {
  return (
    positive(capacityAh, 'The rated capacity') / positive(ratingHours, 'The number of hours of the rating')
  );
}

/**
 * The capacity that a battery gives at a constant current.
 *
 *     C(I) = C                          for I ≤ I_R
 *     C(I) = C · (I_R / I)^(n − 1)      for I > I_R,     I_R = C / H
 *
 * C: rated capacity, Ah (> 0); H: hours of the rating (> 0); n: Peukert exponent (≥ 1; 1 leaves C as it is);
 * I: current, A (≥ 0). Below the rated current nothing is gained. The law is an empirical fit near room temperature:
 * one exponent does not fit all currents of one battery, and a bank that rested gives some of the rest back.
 *
 * Throws RangeError if a value is not finite, C or H is not greater than 0, I is negative or n is less than 1.
 *
 * Source: battery monitor owner's manual, table of percentages by current and exponent, and the rule of no gain below
 * the 20 h rate; battery seller's page with the rated-hours form (both read). The form t = C / I^n, printed more often,
 * is right only if C was measured at 1 A.
 */
export function capacityAtCurrentAh(rated: RatedCapacity, currentA: number): number {
  const exponent = checkedExponent(rated.exponent);
  const atRatingA = ratedCurrentA(rated);
  if (notNegative(currentA, 'The current') <= atRatingA) return rated.capacityAh;
  return rated.capacityAh * (atRatingA / currentA) ** (exponent - 1);
}

/**
 * How long a full battery lasts to empty at a constant current.
 *
 *     t = C(I) / I,     above I_R the same as t = H · (C / (I · H))^n
 *
 * I: current, A (> 0); the rest as in `capacityAtCurrentAh`. Result in h. For a part of the capacity multiply by it.
 *
 * Throws RangeError as `capacityAtCurrentAh` does, and if the current is 0.
 *
 * Source: as `capacityAtCurrentAh` (read).
 */
export function dischargeHours(rated: RatedCapacity, currentA: number): number {
  return capacityAtCurrentAh(rated, currentA) / positive(currentA, 'The current');
}

/**
 * Peukert exponent from two discharges of one battery.
 *
 *     n = ln(t2 / t1) / ln(I1 / I2)
 *
 * I1, I2: currents, A; t1, t2: hours to empty (all > 0, I1 ≠ I2). A reserve capacity of M minutes at 25 A is the test
 * { 25 A, M / 60 h }; a capacity C rated at 20 h is { C / 20, 20 h }. An exponent under 1 means
 * that the tests contradict each other.
 *
 * Throws RangeError if a value is not finite or not greater than 0, the currents are equal, or n < 1.
 *
 * Source: battery monitor owner's manual, two-test exponent (read).
 */
export function exponentOfTests(first: DischargeTest, second: DischargeTest): number {
  const currents =
    positive(first.currentA, 'The first current') / positive(second.currentA, 'The second current');
  const times = positive(second.hours, 'The second time') / positive(first.hours, 'The first time');
  if (currents === 1) throw new RangeError('Two tests at one current give no exponent: they must differ.');
  return checkedExponent(Math.log(times) / Math.log(currents));
}
