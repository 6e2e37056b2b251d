import { finite, positive } from '../argument.ts';

/** Square millimetres in a circular mil: the area of a circle 0.001 in across. */
export const circularMilMm2 = (Math.PI / 4) * 0.0254 ** 2;

/**
 * The diameter of a solid wire of an American gauge.
 *
 *     d = 0.127 mm · 92^((36 − n) / 39)
 *
 * n: gauge number, a whole number from −3 to 36; 1/0 is 0, 2/0 is −1, 3/0 is −2, 4/0 is −3. Result: mm.
 *
 * Throws RangeError if the number is not whole or outside that range.
 *
 * Source: ASTM B258, the gauge's definition (memory; a public table agrees to four digits, read).
 */
export function awgDiameterMm(gauge: number): number {
  finite(gauge, 'The gauge number');
  if (!Number.isInteger(gauge) || gauge < -3 || gauge > 36)
    throw new RangeError(`The gauge number must be whole, from −3 (4/0) to 36, not ${gauge}.`);
  return 0.127 * 92 ** ((36 - gauge) / 39);
}

/**
 * The area of copper of an American gauge: π/4 · d² of {@link awgDiameterMm}, in mm². It holds for stranded wire too,
 * whose strands add up to it. It is *not* the area of SAE automotive wire of the same number, which is 3 to 12 % less.
 *
 * Throws RangeError as `awgDiameterMm` does.
 */
export function awgAreaMm2(gauge: number): number {
  return (Math.PI / 4) * awgDiameterMm(gauge) ** 2;
}

/**
 * The gauge number of a name as it is written.
 *
 * `10` is 10, `1/0` is 0, `4/0` is −3. Undefined for anything else, as for the odd spelling `0000`.
 *
 * Source: the gauge's definition (memory).
 */
export function awgNumber(name: string): number | undefined {
  const zeros = /^([1-4])\/0$/.exec(name)?.[1];
  if (zeros !== undefined) return 1 - Number(zeros);
  if (!/^[1-9]\d?$/.test(name)) return undefined;
  const gauge = Number(name);
  return gauge <= 36 ? gauge : undefined;
}

/**
 * The area for a permitted drop, as the US boat formula has it.
 *
 *     CM = K · I · l / E
 *
 * K: Ω·cmil/ft; I: current, A (> 0); l: length of conductor out *and* back, ft (> 0); E: permitted drop, V (> 0).
 * Result: circular mils. K = 10.75 means copper at 29 °C, without any warming by the current: a comparison with
 * printed charts, not the basis of a check.
 *
 * Throws RangeError if a value is not finite and greater than 0.
 *
 * Source: ABYC E-11 formula as quoted by boat builders and owners (read).
 */
export function circularMilsForDrop(currentA: number, loopFeet: number, dropV: number, k = 10.75): number {
  return (
    (positive(k, 'The constant K') *
      positive(currentA, 'The current') *
      positive(loopFeet, 'The length out and back')) /
    positive(dropV, 'The permitted drop')
  );
}
