import { notNegative, positive } from '../argument.ts';
import { count } from './storage-argument.ts';

const secondsPerHour = 3600;
/** m³/h for each cell and ampere of gassing current: dilution 24 × 0.42 L hydrogen per Ah × safety 5, rounded as printed. */
const airPerCellAmpereM3PerH = 0.05;
/** cm² for each m³/h: air at 0.1 m/s, rounded as printed. */
const openingPerFlowCm2 = 28;

export interface GassingBattery {
  /** Cells in series; strings in parallel are in the capacity. */
  readonly cells: number;
  /** Of the whole bank, at the 10 h rate. */
  readonly capacityAh: number;
  /** Amperes of gassing current for each Ah: the standard's mA/Ah ÷ 1000, or its A/100 Ah ÷ 100. */
  readonly gassingPerHour: number;
}

/**
 * The flow of air that keeps the hydrogen of a charging lead battery thin.
 *
 *     Q = 0.05 m³/h · n · i · C
 *
 * n: cells in series (whole, ≥ 1); C: capacity, Ah (> 0); i: current that makes gas for each Ah, A/Ah (≥ 0), with its
 * factors for emission and safety in it; it depends on float or boost charge. Result in m³/s. Up to about 40 °C. For lead
 * batteries only: lithium iron phosphate makes no gas in normal use, and what it makes in a fire no opening of this size
 * carries off. The standard is for stationary batteries and serves as a guide.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: EN 50272-2:2001 clause 8 (EN 62485-2 has the same form), read in reproductions.
 */
export function ventilationFlowM3PerS({ cells, capacityAh, gassingPerHour }: GassingBattery): number {
  return (
    (airPerCellAmpereM3PerH *
      count(cells, 'The number of cells') *
      notNegative(gassingPerHour, 'The gassing current of each Ah') *
      positive(capacityAh, 'The capacity')) /
    secondsPerHour
  );
}

/**
 * The free area of the inlet, and again of the outlet, that lets this flow pass by itself.
 *
 *     A = 28 cm² · Q / (m³/h)
 *
 * Q: flow, m³/s (≥ 0). Result in m². Inlet low, outlet high, on opposite walls or 2 m apart.
 *
 * Throws RangeError if Q is not finite or negative.
 *
 * Source: EN 50272-2:2001 clause 8, read in reproductions.
 */
export function openingM2(flowM3PerS: number): number {
  return notNegative(flowM3PerS, 'The flow') * secondsPerHour * openingPerFlowCm2 * 1e-4;
}

/**
 * The bore of a round opening of this area.
 *
 *     d = √(4 · A / π)
 *
 * A: m² (≥ 0). Result in m.
 *
 * Throws RangeError if A is not finite or negative.
 *
 * Source: geometry (computed).
 */
export function boreM(areaM2: number): number {
  return Math.sqrt((4 * notNegative(areaM2, 'The area')) / Math.PI);
}

/**
 * Hydrogen that overcharge sets free.
 *
 *     V̇ = n · I · q
 *
 * n: cells in series; I: current that only makes gas, A (≥ 0); q: m³ for each Ah (> 0; 0.42 L at 0 °C by Faraday's law).
 * Result in m³/h.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: Faraday's law (computed); battery-room summary (read).
 */
export function hydrogenM3PerH(cells: number, currentA: number, hydrogenM3PerAh: number): number {
  return (
    count(cells, 'The number of cells') *
    notNegative(currentA, 'The current') *
    positive(hydrogenM3PerAh, 'The hydrogen for each Ah')
  );
}
