import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { finite, notNegative } from './argument.ts';

/** The coverage factor k of the expanded uncertainty: about 95 % of a normal distribution lies within ± 2 u. */
export const coverageFactor = 2;

/**
 * Standard uncertainty of a value that is only known to lie within ± a, every place in between as likely (rectangular
 * distribution).
 *
 *     u = a / √3
 *
 * a: half-width, any unit (≥ 0). Result in the same unit.
 *
 * Throws RangeError if the half-width is not finite or negative.
 *
 * Source: JCGM 100:2008, clause 4.3.7 (memory).
 */
export function standardUncertainty(halfWidth: number): number {
  return notNegative(halfWidth, 'The half-width of a tolerance') / Math.sqrt(3);
}

/**
 * Combined standard uncertainty of a sum whose terms are independent.
 *
 *     u_c = √ Σ u_i²
 *
 * u_i: contributions, each a standard uncertainty times how strongly the result depends on it; signs do not matter.
 * Nothing to combine: 0.
 *
 * Throws RangeError if a value is not finite.
 *
 * Source: JCGM 100:2008, clause 5.1.2, equation (10), and 5.1.3 (read).
 */
export function rootSumSquare(values: Iterable<number>): number {
  let sum = 0;
  for (const value of values) sum += finite(value, 'A contribution to the uncertainty') ** 2;
  return Math.sqrt(sum);
}

/**
 * Combined standard uncertainty when some errors share a source, such as one density used for every panel. Within a
 * group they add up as they are, because one error makes all of them wrong together; the groups are independent of
 * each other and add by root of the sum of squares.
 *
 *     u_c = √ Σ_g (Σ_{i in g} u_i)²
 *
 * u_i: *signed* contributions (standard uncertainty times how strongly the result depends on it): in one group a mass
 * that loads the axle and one that relieves it work against each other. A group of one is an independent term.
 *
 * Throws RangeError if a value is not finite.
 *
 * Source: JCGM 100:2008, clause 5.2.2, note 1, for correlation +1 within a group (memory).
 */
export function combineCorrelated(groups: readonly (readonly number[])[]): number {
  return rootSumSquare(groups.map((group) => group.reduce((sum, value) => sum + value, 0)));
}

/**
 * Expanded uncertainty U = k · u with k = 2: the half-width that holds the value with about 95 %.
 *
 * u: standard uncertainty, any unit (≥ 0). Result in the same unit.
 *
 * Throws RangeError if u is not finite or negative.
 *
 * Source: JCGM 100:2008, clause 6 (memory).
 */
export function expandedUncertainty(u: number): number {
  return coverageFactor * notNegative(u, 'The standard uncertainty');
}

/**
 * Probability that a value lies above a limit, if it is normally distributed.
 *
 *     P = Φ((mean − limit) / u)
 *
 * limit, mean: the same unit; u: standard uncertainty, the same unit (≥ 0). With u = 0 it is a step: 1 above the
 * limit, 0 at it and below.
 *
 * Throws RangeError if a value is not finite or u is negative.
 *
 * Source: definition of the normal distribution (computed).
 */
export function probabilityAbove(limit: number, mean: number, u: number): number {
  finite(limit, 'The limit');
  finite(mean, 'The value');
  if (notNegative(u, 'The standard uncertainty') === 0) return mean > limit ? 1 : 0;
  // Φ at the mirrored place instead of 1 − Φ: no digits are lost when the probability is small.
  return normalCdf(mean, limit, u);
}
