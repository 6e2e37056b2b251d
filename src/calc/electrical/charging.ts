import { finite, notNegative, positive } from '../argument.ts';
import { celsius, count, share, shareAboveZero } from './storage-argument.ts';

/** A span of cell temperatures and the current allowed in it, as a share of the capacity per hour ("C rate"). */
export interface TemperatureBand {
  /** −Infinity for no lower end. */
  readonly fromC: number;
  /** Infinity for no upper end. */
  readonly toC: number;
  readonly ratePerHour: number;
}

/**
 * The current that a table allows between two cell temperatures, as a share of the capacity per hour.
 *
 *     r = min { r_k : [from_k, to_k] and [coldest, warmest] touch }
 *
 * bands: temperatures in °C, rates in 1/h (≥ 0); coldest ≤ warmest, °C. Looked up on the safe side: a temperature on the
 * border of two bands takes the lower rate, a span takes the lowest rate within it, nothing is interpolated, and where
 * the table says nothing the rate is 0. The temperature is that of the cells, not of the air.
 *
 * Throws RangeError if a temperature does not exist, coldest > warmest, a rate is negative or a band is upside down.
 *
 * Source: the way of reading is the author's own; the tables are in the catalogue.
 */
export function allowedRatePerHour(
  bands: readonly TemperatureBand[],
  coldestC: number,
  warmestC: number = coldestC,
): number {
  celsius(coldestC, 'The coldest cell temperature');
  if (coldestC > celsius(warmestC, 'The warmest cell temperature'))
    throw new RangeError(
      `The coldest cell temperature (${coldestC} °C) is above the warmest (${warmestC} °C).`,
    );
  let rate = Number.POSITIVE_INFINITY;
  let coveredToC = coldestC;
  for (const { fromC, toC, ratePerHour } of [...bands].sort((a, b) => a.fromC - b.fromC)) {
    if (!(fromC < toC))
      throw new RangeError(`A band of temperature must go upwards, not from ${fromC} to ${toC} °C.`);
    notNegative(ratePerHour, 'The rate of a band');
    if (toC < coldestC || fromC > warmestC) continue;
    if (fromC > coveredToC) return 0;
    rate = Math.min(rate, ratePerHour);
    coveredToC = Math.max(coveredToC, toC);
  }
  return coveredToC >= warmestC && Number.isFinite(rate) ? rate : 0;
}

/**
 * A current as a share of a capacity per hour ("0.5 C").
 *
 *     r = I / C
 *
 * I: current, A (≥ 0); C: capacity, Ah (> 0). Result in 1/h.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed).
 */
export function ratePerHour(currentA: number, capacityAh: number): number {
  return notNegative(currentA, 'The current') / positive(capacityAh, 'The capacity');
}

/**
 * The current of a rate.
 *
 *     I = r · C + I_s
 *
 * r: rate, 1/h (≥ 0); C: capacity, Ah (> 0); I_s: current that loads take at the same time, A (≥ 0), for which a charger
 * must be larger and which a limit of the battery must leave out. Result in A.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: charger maker's questions and answers; cruising magazine, acceptance × capacity (both read).
 */
export function currentOfRateA(rate: number, capacityAh: number, standingLoadA = 0): number {
  return (
    notNegative(rate, 'The rate') * positive(capacityAh, 'The capacity') +
    notNegative(standingLoadA, 'The standing load')
  );
}

export interface Charge {
  readonly capacityAh: number;
  readonly fromShare: number;
  readonly toShare: number;
  /** What reaches the battery, loads taken off. */
  readonly currentA: number;
  /** Ah kept of Ah given (coulombic efficiency). */
  readonly efficiency: number;
}

/**
 * How long a charge takes at a constant current.
 *
 *     t = C · (b − a) / (I · η)
 *
 * C: capacity, Ah (> 0); a, b: state of charge before and after (0 ≤ a ≤ b ≤ 1); I: current, A (> 0); η: efficiency
 * (0 < η ≤ 1). Result in h. This is the least time: a lead battery takes less and less current over the last fifth,
 * which adds hours.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: battery seller's article (read).
 */
export function chargeHours({ capacityAh, fromShare, toShare, currentA, efficiency }: Charge): number {
  const from = share(fromShare, 'The state of charge before');
  const to = share(toShare, 'The state of charge after');
  if (to < from)
    throw new RangeError(`The state of charge after (${to}) must not be less than the one before (${from}).`);
  return (
    (positive(capacityAh, 'The capacity') * (to - from)) /
    (positive(currentA, 'The charge current') * shareAboveZero(efficiency, 'The efficiency'))
  );
}

/**
 * Charge voltage of a lead battery, corrected for its temperature.
 *
 *     U(T) = n · (u_25 + k · (T − 25 °C))
 *
 * n: cells in series; u_25: voltage of a cell at 25 °C, V (> 0); k: V/K for a cell (≤ 0; −0.003 in the source);
 * T: temperature, °C. Lead only: lithium iron phosphate needs none.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: battery knowledge article, 3 mV a cell and kelvin (read).
 */
export function compensatedVoltageV(
  cells: number,
  cellVoltageAt25V: number,
  voltsPerKelvin: number,
  temperatureC: number,
): number {
  if (finite(voltsPerKelvin, 'The compensation') > 0)
    throw new RangeError(
      `The compensation must not be positive (${voltsPerKelvin} V/K): a warm lead battery wants less.`,
    );
  return (
    count(cells, 'The number of cells') *
    (positive(cellVoltageAt25V, 'The voltage of a cell') +
      voltsPerKelvin * (celsius(temperatureC, 'The temperature') - 25))
  );
}
