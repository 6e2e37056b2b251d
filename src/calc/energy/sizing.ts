import { notNegative, positive } from '../argument.ts';
import { share, within } from './angle.ts';

/*
 * Sizing by hand, as handbooks and sellers do it: one day's need, one number of sun hours. It knows no month and no hour;
 * the simulation does. Here to hold the simulation against and for a first guess. The bank:
 * src/calc/electrical/usable-energy.ts.
 */

/** A load of an energy budget. */
export interface BudgetLoad {
  readonly powerW: number;
  readonly hours: number;
  /** Share of these hours in which it really runs (a compressor); 1 if not given. */
  readonly duty?: number;
}

/**
 * A day's energy: Σ P · t · duty, Wh.
 *
 * P: W (≥ 0); t: hours a day (0 to 24); duty 0 to 1. Throws RangeError if a value is out of range.
 *
 * Source: US Department of Energy, Estimating Appliance and Home Electronic Energy Use (read).
 */
export function dailyEnergyWh(loads: readonly BudgetLoad[]): number {
  return loads.reduce(
    (sum, { powerW, hours, duty = 1 }) =>
      sum +
      notNegative(powerW, 'The power of a load') *
        within(hours, 0, 24, 'The hours of a load') *
        share(duty, 'The duty of a load'),
    0,
  );
}

/**
 * Rated power of an array: P = E / (h · K), W.
 *
 * E: energy a day, Wh (≥ 0); h: sun hours a day, that is kWh/m² on the plane of the array (> 0); K: share that reaches the
 * battery (> 0, at most 1; 0.65 to 0.75 off-grid with a tracking controller, memory).
 *
 * Throws RangeError if a value is out of range.
 *
 * Source: a public sizing guide for stand-alone systems (read).
 */
export function arrayPeakW(dailyWh: number, sunHours: number, systemShare: number): number {
  share(systemShare, 'The share that reaches the battery');
  return (
    notNegative(dailyWh, 'The energy a day') /
    (positive(sunHours, 'The sun hours') * positive(systemShare, 'The share that reaches the battery'))
  );
}

/** What an array yields a day, Wh: E = P · h · K, the reverse of `arrayPeakW`. Throws RangeError like it. */
export function dailyYieldWh(peakW: number, sunHours: number, systemShare: number): number {
  return (
    notNegative(peakW, 'The rated power') *
    notNegative(sunHours, 'The sun hours') *
    share(systemShare, 'The share that reaches the battery')
  );
}

/**
 * Charging current of an array: I = Q / (h · η), A.
 *
 * Q: charge a day, Ah (≥ 0); h: sun hours a day (> 0); η: what of it is stored, the product of the battery's efficiency
 * and the losses (> 0, at most 1). Throws RangeError if a value is out of range.
 *
 * Source: Sandia SAND87-7023, worksheets (method; read), and a one-page sheet for stand-alone systems (read).
 */
export function chargingCurrentA(dailyAh: number, sunHours: number, efficiency: number): number {
  share(efficiency, 'The efficiency');
  return (
    notNegative(dailyAh, 'The charge a day') /
    (positive(sunHours, 'The sun hours') * positive(efficiency, 'The efficiency'))
  );
}
