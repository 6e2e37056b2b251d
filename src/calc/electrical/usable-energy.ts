import { notNegative, positive } from '../argument.ts';
import { share, shareAboveZero } from './storage-argument.ts';

/** Between which states of charge a battery is worked, as shares of its capacity. */
export interface ChargeWindow {
  readonly lowest: number;
  readonly highest: number;
}

/**
 * The share of a capacity that lies in a window.
 *
 *     u = h − l
 *
 * l, h: lowest and highest state of charge, 0 ≤ l < h ≤ 1.
 *
 * Throws RangeError if a value is not a share or the window is empty.
 *
 * Source: definition (computed).
 */
export function usableShare({ lowest, highest }: ChargeWindow): number {
  const low = share(lowest, 'The lowest state of charge');
  const high = share(highest, 'The highest state of charge');
  if (low >= high) {
    throw new RangeError(
      `The lowest state of charge (${lowest}) must be less than the highest (${highest}).`,
    );
  }
  return high - low;
}

/**
 * What of an energy, or of a capacity, can be used.
 *
 *     E_u = u · E
 *
 * E: energy, Wh, or capacity, Ah (≥ 0); u: usable share, 0 < u ≤ 1. Result in the unit of E.
 *
 * Throws RangeError if E is not finite or negative, or u is not a share above 0.
 *
 * Source: definition (computed).
 */
export function usablePart(whole: number, share: number): number {
  return notNegative(whole, 'The whole') * shareAboveZero(share, 'The usable share');
}

/**
 * What must be there for a wanted part to be usable: a division.
 *
 *     E = E_u / u
 *
 * E_u: wanted energy, Wh, or capacity, Ah (≥ 0); u: usable share, 0 < u ≤ 1. Multiplying by 1 + (1 − u) instead, as in
 * "× 1.2 for 80 % depth", gives too little: 0.8 · 1.2 = 0.96.
 *
 * Throws RangeError if E_u is not finite or negative, or u is not a share above 0.
 *
 * Source: definition (computed); battery bank page of an open off-grid guide (read).
 */
export function wholeForUsable(wanted: number, share: number): number {
  return notNegative(wanted, 'The wanted part') / shareAboveZero(share, 'The usable share');
}

export interface BankNeed {
  readonly dailyEnergyWh: number;
  readonly days: number;
  readonly voltageV: number;
  readonly usableShare: number;
  /** From the battery to the load: inverter, cables. 1 if nothing is lost or the losses are in the energy. */
  readonly efficiency?: number;
  /** At least 1. What a cold lead battery must be larger by; 1 if it is as warm as its rating. */
  readonly coldMultiplier?: number;
}

/**
 * The rated capacity of a bank that carries loads over days without charge.
 *
 *     C = E_d · d · m / (U · u · η)
 *
 * E_d: energy a day, Wh (≥ 0); d: days (> 0); U: nominal voltage, V (> 0); u: usable share (0 < u ≤ 1); η: efficiency
 * from battery to load (0 < η ≤ 1); m: multiplier for cold (≥ 1). Result in Ah.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: off-grid battery worksheet (m); public formula page; sizing guide E·A/(V·T·K) (all read).
 */
export function bankCapacityAh(need: BankNeed): number {
  const { efficiency = 1, coldMultiplier = 1 } = need;
  if (positive(coldMultiplier, 'The multiplier for cold') < 1)
    throw new RangeError(`The multiplier for cold must be at least 1, not ${coldMultiplier}.`);
  const drawnWh =
    (notNegative(need.dailyEnergyWh, 'The energy a day') *
      positive(need.days, 'The number of days') *
      coldMultiplier) /
    shareAboveZero(efficiency, 'The efficiency');
  return wholeForUsable(drawnWh, need.usableShare) / positive(need.voltageV, 'The voltage');
}

/**
 * How long an energy lasts at a constant power.
 *
 *     t = E · η / P
 *
 * E: usable energy, Wh (≥ 0); P: power at the load, W (> 0); η: efficiency from battery to load (0 < η ≤ 1). Result in
 * h. What a high current takes from a lead battery is in `dischargeHours`.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed).
 */
export function runtimeHours(usableWh: number, powerW: number, efficiency = 1): number {
  return (
    (notNegative(usableWh, 'The usable energy') * shareAboveZero(efficiency, 'The efficiency')) /
    positive(powerW, 'The power')
  );
}

/**
 * The current that a load of constant power draws from a battery while it is being emptied.
 *
 *     I = P / (f · U)
 *
 * P: power, W (≥ 0); U: nominal voltage of the system, V (> 0); f: share of U at which the load is served (0 < f ≤ 1;
 * 0.95 in the source). Result in A. Dividing by the nominal voltage gives too little.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: IEEE 1013-2007, clause 5.2 (read in an excerpt).
 */
export function runningCurrentA(powerW: number, systemVoltageV: number, voltageShare: number): number {
  return (
    notNegative(powerW, 'The power') /
    (positive(systemVoltageV, 'The voltage of the system') *
      shareAboveZero(voltageShare, 'The share of the voltage'))
  );
}
