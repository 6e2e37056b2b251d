import { notNegative, positive } from '../argument.ts';

/** A battery, bank or other source behind its internal resistance. */
export interface SourceBehindResistance {
  /** Its voltage with nothing drawn. */
  readonly emfV: number;
  /** Measured with direct current; an impedance measured with alternating current is another thing. */
  readonly internalOhm: number;
}

/**
 * A bank of equal units: `series` of them in each string, `parallel` strings.
 *
 *     E = E₁ · s        R = R₁ · s / p
 *
 * E₁: voltage of a unit, V (> 0); R₁: its internal resistance, Ω (> 0); s, p: whole numbers, at least 1. Strings add
 * their short-circuit currents; units in series do not.
 *
 * Throws RangeError if a value is out of its range.
 *
 * Source: telecom battery note, R = R_cell · series / parallel, and guidance for boats (three strings of 2400 A give
 * 7200 A) (read).
 */
export function bank(unit: SourceBehindResistance, series: number, parallel: number): SourceBehindResistance {
  return {
    emfV: positive(unit.emfV, 'The voltage of a unit') * whole(series, 'The units in series'),
    internalOhm:
      (positive(unit.internalOhm, 'The internal resistance of a unit') * series) /
      whole(parallel, 'The strings in parallel'),
  };
}

function whole(value: number, what: string): number {
  if (!Number.isInteger(value) || value < 1)
    throw new RangeError(`${what} must be a whole number, at least 1, not ${value}.`);
  return value;
}

/**
 * Several sources on the same two terminals, as one.
 *
 *     1/R = Σ 1/R_i        E = R · Σ E_i / R_i
 *
 * Throws RangeError if there is no source or one of them has a voltage or resistance not greater than 0.
 *
 * Source: Millman's theorem (computed).
 */
export function inParallel(sources: readonly SourceBehindResistance[]): SourceBehindResistance {
  if (sources.length === 0) throw new RangeError('There must be at least one source.');
  let conductance = 0;
  let shortCircuitA = 0;
  for (const { emfV, internalOhm } of sources) {
    conductance += 1 / positive(internalOhm, 'An internal resistance');
    shortCircuitA += positive(emfV, 'A voltage') / internalOhm;
  }
  return { emfV: shortCircuitA / conductance, internalOhm: 1 / conductance };
}

/**
 * The internal resistance from one test under load.
 *
 *     R = (E − U) / I
 *
 * E: voltage with nothing drawn, V; U: voltage under load, V (0 ≤ U < E); I: current of the test, A (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: electrical formula collection, R_B = (E_B − V_L) / I_L (read).
 */
export function internalResistanceFromLoad(emfV: number, loadedV: number, currentA: number): number {
  const lostV = positive(emfV, 'The open voltage') - notNegative(loadedV, 'The voltage under load');
  return (
    positive(lostV, 'What the voltage falls by under load') / positive(currentA, 'The current of the test')
  );
}

/**
 * The current that flows if the far end of a pair of conductors is shorted.
 *
 *     I = E / (R_i + R_c)
 *
 * E: voltage with nothing drawn, V (> 0); R_i: internal resistance, Ω (> 0); R_c: conductors out and back, *cold*
 * (20 °C or less), with their connections, Ω (≥ 0; 0 is a fault at the terminals and the most there can be). A
 * conductor standard prints greatest resistances, so real conductors let more through than they say: for the breaking
 * capacity of a fuse use the resistance of ideal copper or none at all; for whether the fuse opens, the hot maximum.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: conference paper on calculated and actual short-circuit currents of lead-acid batteries (read): the usual
 * estimate, which may be off either way. The figure of the battery's maker comes first.
 */
export function prospectiveShortCircuit(source: SourceBehindResistance, circuitOhm: number): number {
  return (
    positive(source.emfV, 'The open voltage') /
    (positive(source.internalOhm, 'The internal resistance') +
      notNegative(circuitOhm, 'The resistance of the circuit'))
  );
}
