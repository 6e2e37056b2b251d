import { finite, notNegative, positive } from '../argument.ts';

/** The resistivity of standard annealed copper at 20 °C, Ω·mm²/m: 1/58 by definition (IACS). */
export const copperResistivity = 1 / 58;

/** Below this temperature, °C, the straight line of copper's resistance would reach zero: 1/0.00393 below 20 °C. */
export const copperZeroResistanceC = -234.5;

/**
 * How much more resistance copper has at one temperature than at another.
 *
 *     k = (234.5 + T) / (234.5 + T₀)
 *
 * T: temperature of the conductor, °C; T₀: temperature that the known resistance holds for, °C (20 in IEC 60228, 75 in
 * the US code). From 20 °C this is 1 + 0.00393 · (T − 20). Both above −234.5 °C; good within a few per mille from −50
 * to 200 °C. Hot copper decides a voltage drop, cold copper a short-circuit current.
 *
 * Throws RangeError if a temperature is not finite or not above −234.5 °C.
 *
 * Source: FAA AC 43.13-1B CHG 1, paragraph 11-66 (254.5 / (234.5 + T)) (read). The factors printed with IEC 60228 use
 * 0.004 per kelvin, which is 230 for 234.5, and differ by up to 0.45 % to 100 °C.
 */
export function copperTemperatureFactor(atC: number, knownAtC = 20): number {
  return above(atC, 'The temperature of the conductor') / above(knownAtC, 'The temperature of the table');
}

function above(temperatureC: number, what: string): number {
  const kelvinsAbove = finite(temperatureC, what) - copperZeroResistanceC;
  if (kelvinsAbove <= 0)
    throw new RangeError(`${what} must be above ${copperZeroResistanceC} °C, not ${temperatureC}.`);
  return kelvinsAbove;
}

/**
 * The resistance of a metre of ideal copper.
 *
 *     r = ρ₂₀ / A
 *
 * ρ₂₀ = 1/58 Ω·mm²/m; A: area of *copper*, mm² (> 0). Result: Ω/m at 20 °C. Do not give it the nominal area of a
 * metric cable to find a drop: that is a label, and a flexible conductor may have 10 to 16 % more resistance. It serves
 * gauges defined by their diameter, and the highest possible short-circuit current.
 *
 * Throws RangeError if the area is not finite and greater than 0.
 *
 * Source: definition of 100 % IACS (computed).
 */
export function idealResistancePerM(copperAreaMm2: number): number {
  return copperResistivity / positive(copperAreaMm2, 'The area of copper');
}

/**
 * The ideal copper that a resistance stands for.
 *
 *     A = ρ₂₀ / r₂₀
 *
 * ρ₂₀ = 1/58 Ω·mm²/m; r₂₀: resistance of one conductor at 20 °C, Ω/m (> 0). Result: mm². With it a size of one system
 * is looked up in a table of another: flexible 35 mm² may be no more than 31.1 mm² of copper, and is no 2 AWG (33.6 mm²).
 *
 * Throws RangeError if the resistance is not finite and greater than 0.
 *
 * Source: definition of 100 % IACS (computed).
 */
export function equivalentCopperMm2(ohmPerM20: number): number {
  return copperResistivity / positive(ohmPerM20, 'The resistance per metre');
}

/** One conductor from end to end. */
export interface Leg {
  readonly lengthM: number;
  /** Ω/m at the temperature it works at. */
  readonly ohmPerM: number;
}

/**
 * The resistance of conductors one behind the other, with what their connections add.
 *
 *     R = Σ (l_i · r_i) + R_c
 *
 * l_i: length of each leg, m (≥ 0); r_i: its resistance per metre, Ω/m (≥ 0); R_c: connections, Ω (≥ 0). Out and back
 * are two legs, which may differ in length and size. No legs: R_c.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: definition of resistances in series (computed).
 */
export function seriesResistance(legs: readonly Leg[], connectionsOhm = 0): number {
  let sum = notNegative(connectionsOhm, 'The resistance of the connections');
  for (const { lengthM, ohmPerM } of legs)
    sum += notNegative(lengthM, 'A length') * notNegative(ohmPerM, 'A resistance per metre');
  return sum;
}

/**
 * The resistance out and back over two equal conductors.
 *
 *     R = 2 · L · r
 *
 * L: length *one way*, m (≥ 0); r: resistance of one conductor, Ω/m (≥ 0). A printed table in mV per ampere and metre
 * already has the 2 in it: never double it again.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: definition (computed).
 */
export function loopResistance(oneWayM: number, ohmPerM: number): number {
  return seriesResistance([
    { lengthM: oneWayM, ohmPerM },
    { lengthM: oneWayM, ohmPerM },
  ]);
}
