import { notNegative, positive } from '../argument.ts';

export interface SupplyLead {
  readonly lengthM: number;
  /** Of one conductor, at the temperature it works at. */
  readonly conductorOhmPerM: number;
}

/**
 * What a single-phase lead drops, both conductors counted.
 *
 *     ΔU = 2 · L · r · I
 *
 * L: length of the lead, one way, m (≥ 0); r: resistance of one conductor, Ω/m (> 0), at working temperature; I: current,
 * A (≥ 0). Result in V. Reactance does not matter at these sizes, and the load is taken as resistive.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: follows from the circuit (computed).
 */
export function leadDropV(currentA: number, { lengthM, conductorOhmPerM }: SupplyLead): number {
  return (
    2 *
    notNegative(lengthM, 'The length of the lead') *
    positive(conductorOhmPerM, 'The resistance of a conductor') *
    notNegative(currentA, 'The current')
  );
}

/**
 * The same from a table in volts per ampere and metre, which has the return conductor in it already.
 *
 *     ΔU = v · I · L
 *
 * v: V/(A·m) (> 0; printed as mV/A/m); I: A (≥ 0); L: one way, m (≥ 0). Result in V.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: BS 7671, notes to the tables of voltage drop (read in reproductions).
 */
export function leadDropByTableV(currentA: number, lengthM: number, voltsPerAmpereMetre: number): number {
  return (
    positive(voltsPerAmpereMetre, 'The drop of the table') *
    notNegative(currentA, 'The current') *
    notNegative(lengthM, 'The length of the lead')
  );
}

/**
 * A drop as a share of the supply's nominal voltage.
 *
 *     s = ΔU / U
 *
 * ΔU: V (≥ 0); U: nominal voltage, V (> 0).
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed).
 */
export function dropShare(dropV: number, nominalV: number): number {
  return notNegative(dropV, 'The drop') / positive(nominalV, 'The nominal voltage');
}
