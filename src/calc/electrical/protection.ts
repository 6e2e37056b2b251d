import { positive } from '../argument.ts';
import { listedAtLeast, listedAtMost } from './listed.ts';

/**
 * The smallest standard rating that carries a current with its margin.
 *
 *     I_n ≥ m · I_b
 *
 * I_b: design current, A (> 0); m: margin (≥ 1; 1.25 for hours on end). Undefined if the greatest rating is too small.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: the order I_b ≤ I_n ≤ I_z (read); 1.25 is US practice (memory).
 */
export function smallestFuse(
  ratingsA: readonly number[],
  designA: number,
  margin = 1.25,
): number | undefined {
  return listedAtLeast(
    ratingsA,
    (ratingA) => ratingA,
    positive(designA, 'The design current') * atLeastOne(margin),
  );
}

function atLeastOne(margin: number): number {
  if (positive(margin, 'The margin') < 1)
    throw new RangeError(`The margin must be at least 1, not ${margin}.`);
  return margin;
}

/**
 * The greatest standard rating that still protects a conductor.
 *
 *     I_n ≤ q · I_z
 *
 * I_z: derated ampacity of the weakest conductor downstream, A (> 0); q: permitted share (> 0; 1 in most rules, 1.5 in
 * some for boats below 50 V). Undefined if even the smallest rating is too great.
 *
 * Throws RangeError if a value is not finite and greater than 0.
 *
 * Source: 33 CFR 183.455(c), BS EN ISO 13590 and 13297 (read).
 */
export function greatestFuse(ratingsA: readonly number[], ampacityA: number, share = 1): number | undefined {
  return listedAtMost(
    ratingsA,
    (ratingA) => ratingA,
    positive(ampacityA, 'The ampacity') * positive(share, 'The permitted share'),
  );
}

/**
 * The rating of a fuse over what the conductor behind it may carry: I_n / I_z. Above 1 the conductor may get too warm
 * before the fuse opens.
 *
 * Throws RangeError if a value is not finite and greater than 0.
 *
 * Source: as for {@link greatestFuse}.
 */
export function fuseShareOfAmpacity(fuseA: number, ampacityA: number): number {
  return positive(fuseA, 'The rating of the fuse') / positive(ampacityA, 'The ampacity');
}

/**
 * Upstream rating over downstream rating. The lower fuse opens alone only if this is well above 1, and for a short
 * circuit only if the makers' curves say so.
 *
 * Throws RangeError if a value is not finite and greater than 0.
 *
 * Source: definition (computed).
 */
export function discriminationRatio(upstreamA: number, downstreamA: number): number {
  return positive(upstreamA, 'The upstream rating') / positive(downstreamA, 'The downstream rating');
}
