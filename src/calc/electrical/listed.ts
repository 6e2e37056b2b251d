import { finite } from '../argument.ts';

/*
 * Tables are read, never interpolated: a condition between two rows takes the row on the safe side.
 */

/** Twenty times 1.05 is 21.000000000000004 and must still find 21. */
const rounding = 1e-9;

/**
 * The row with the least value that is still at least as great as wanted; undefined beyond the table. For conditions
 * that get worse as they grow (ambient, number of cables) and for standard sizes that must suffice.
 *
 * The rows may stand in any order. A difference of 1e-9 of the wanted value counts as none.
 *
 * Throws RangeError if the wanted value is not finite.
 */
export function listedAtLeast<Row>(
  rows: readonly Row[],
  measure: (row: Row) => number,
  wanted: number,
): Row | undefined {
  const least = finite(wanted, 'The value to look up') - rounding * Math.abs(wanted);
  let best: Row | undefined;
  for (const row of rows)
    if (measure(row) >= least && (best === undefined || measure(row) < measure(best))) best = row;
  return best;
}

/**
 * The row with the greatest value that is not above what there is; undefined below the table. For what helps as it
 * grows (area of copper, temperature that the insulation bears).
 *
 * Order, rounding and RangeError as for {@link listedAtLeast}.
 */
export function listedAtMost<Row>(
  rows: readonly Row[],
  measure: (row: Row) => number,
  there: number,
): Row | undefined {
  return listedAtLeast(rows, (row) => -measure(row), -finite(there, 'The value to look up'));
}
