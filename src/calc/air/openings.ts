import { notNegative, positive } from '../argument.ts';

/**
 * Free area of openings side by side: air takes all of them at once.
 *
 *     A = Σ A_i
 *
 * A_i: m² (≥ 0). 0 of none.
 *
 * Throws RangeError if an area is not finite or negative.
 *
 * Source: follows from the flow through an orifice, for like discharge coefficients (computed; BS 5925 and CIBSE AM10
 * have it).
 */
export function parallelAreaM2(areasM2: readonly number[]): number {
  return areasM2.reduce((sum, areaM2) => sum + notNegative(areaM2, 'The free area'), 0);
}

/**
 * What openings one behind the other are worth together: the smallest of them decides.
 *
 *     1/A² = Σ 1/A_i²
 *
 * A_i: m² (≥ 0). One closed opening closes the row. 10 000 mm² behind 5 000 mm² are worth 4 472 mm².
 *
 * Throws RangeError if an area is not finite or negative, or there is no opening at all.
 *
 * Source: as {@link parallelAreaM2}.
 */
export function seriesAreaM2(areasM2: readonly number[]): number {
  positive(areasM2.length, 'The number of openings in a row');
  const smallest = Math.min(...areasM2.map((areaM2) => notNegative(areaM2, 'The free area')));
  if (smallest === 0) return 0;
  // Scaled by the smallest, so that tiny areas do not overflow when squared and turned over.
  return smallest / Math.sqrt(areasM2.reduce((sum, areaM2) => sum + (smallest / areaM2) ** 2, 0));
}

/**
 * How large an opening must be for it and those before it to be worth a wanted area.
 *
 *     1/A² = 1/A_wanted² − 1/A_others²
 *
 * m². Infinite where the others alone are worth no more than is wanted: then they must grow first.
 *
 * Throws RangeError if an area is not finite or the wanted area is not above 0.
 *
 * Source: as {@link parallelAreaM2}.
 */
export function furtherAreaM2(wantedM2: number, othersM2: number): number {
  positive(wantedM2, 'The wanted free area');
  const ratio = wantedM2 / notNegative(othersM2, 'The free area of the others');
  return ratio < 1 ? wantedM2 / Math.sqrt(1 - ratio ** 2) : Number.POSITIVE_INFINITY;
}
