import { finite, positive } from '../argument.ts';

/** What a unit area of copper takes up while it warms, A·√s/mm². */
const copperConstant = 226;

/**
 * How much current for how long a square millimetre of copper bears between two temperatures, if no heat leaves it.
 *
 *     k = 226 · √(ln((234.5 + T_f) / (234.5 + T_i)))
 *
 * T_i, T_f: temperature before and after, °C (−234.5 < T_i < T_f); the final one is what the insulation bears for some
 * seconds. Result: A·√s/mm². 115 for PVC from 70 to 160 °C, 143 for cross-linked insulation from 90 to 250 °C.
 *
 * Throws RangeError if a temperature is not finite or they are out of order.
 *
 * Source: IEC 60949 (constants from memory); it reproduces the k of BS 7671 tables 54.2 to 54.4 (115, 143 and 176 read).
 */
export function copperK(initialC: number, finalC: number): number {
  const before = positive(
    finite(initialC, 'The first temperature') + 234.5,
    'The first temperature above −234.5 °C',
  );
  positive(finite(finalC, 'The final temperature') - initialC, 'The rise of temperature');
  return copperConstant * Math.sqrt(Math.log((finalC + 234.5) / before));
}

/**
 * The least area of copper that survives a fault until its fuse has opened.
 *
 *     S = I · √t / k
 *
 * I: fault current, A (> 0); t: time, s (0.1 to 5; below 0.1 s what a fuse lets through, its I²t, decides, and above
 * 5 s heat leaves the wire); k: see {@link copperK}. Result: mm².
 *
 * Throws RangeError if a value is not finite and greater than 0, or the time is out of that range.
 *
 * Source: BS 7671, 543.1.3 as given in a pocket guide (read).
 */
export function leastAreaForFault(currentA: number, timeS: number, k: number): number {
  if (positive(timeS, 'The time') < 0.1 || timeS > 5)
    throw new RangeError(`The time must be from 0.1 s to 5 s, not ${timeS} s.`);
  return (positive(currentA, 'The fault current') * Math.sqrt(timeS)) / positive(k, 'The factor k');
}
