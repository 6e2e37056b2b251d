import { notNegative, positive } from '../argument.ts';

/** A load that gets its supply. */
export interface Delivered {
  readonly delivers: true;
  readonly currentA: number;
  /** What the conductors lose, out and back. */
  readonly dropV: number;
  /** What is left at the load. */
  readonly loadV: number;
}

/** A load that asks for more than the conductors can bring, at any current. */
export interface NotDelivered {
  readonly delivers: false;
  /** The most that these conductors can bring to a load from this voltage. */
  readonly mostPowerW: number;
}

/**
 * The drop that a steady current makes.
 *
 *     ΔU = I · R
 *
 * I: current, A (≥ 0); R: resistance out and back, Ω (≥ 0). Result: V.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: Ohm's law (computed).
 */
export function dropOfCurrent(currentA: number, loopOhm: number): number {
  return notNegative(currentA, 'The current') * notNegative(loopOhm, 'The resistance of the loop');
}

/**
 * The drop of a load that draws the same power at any voltage (an inverter, a converter, most electronics), exactly.
 *
 *     U = (E + √(E² − 4·P·R)) / 2        I = P / U        ΔU = I · R
 *
 * E: voltage at the source, V (> 0); take the lowest sensible one, since the current rises as it falls; P: power at
 * the load, W (≥ 0); R: resistance out and back, Ω (≥ 0). Of the two solutions this is the one with the higher voltage,
 * where such a load settles. If P > E² / (4·R) there is none: the load pulls its own supply down.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: solution of P = (E − I·R) · I (computed).
 */
export function dropOfPower(sourceV: number, powerW: number, loopOhm: number): Delivered | NotDelivered {
  positive(sourceV, 'The voltage at the source');
  notNegative(powerW, 'The power');
  notNegative(loopOhm, 'The resistance of the loop');
  const underRoot = sourceV * sourceV - 4 * powerW * loopOhm;
  if (underRoot < 0) return { delivers: false, mostPowerW: (sourceV * sourceV) / (4 * loopOhm) };
  const loadV = (sourceV + Math.sqrt(underRoot)) / 2;
  const currentA = powerW / loadV;
  return { delivers: true, currentA, dropV: currentA * loopOhm, loadV };
}

/**
 * The greatest length, one way, over which two equal conductors keep within a drop.
 *
 *     L = ΔU / (2 · r · I)
 *
 * ΔU: permitted drop, V (≥ 0); r: resistance of one conductor, Ω/m (> 0); I: current, A (> 0). Result: m.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: follows from Ohm's law (computed).
 */
export function greatestOneWayM(permittedV: number, ohmPerM: number, currentA: number): number {
  return (
    notNegative(permittedV, 'The permitted drop') /
    (2 * positive(ohmPerM, 'The resistance per metre') * positive(currentA, 'The current'))
  );
}
