import { notNegative, positive } from '../argument.ts';
import { shareAboveZero } from './storage-argument.ts';

export interface InverterSupply {
  /** The lowest voltage at the inverter's terminals at which it is meant to deliver. */
  readonly lowestVoltageV: number;
  readonly efficiency: number;
}

/**
 * The direct current that an inverter takes.
 *
 *     I = P / (U · η)
 *
 * P: power delivered, W (≥ 0); U: lowest battery voltage, V (> 0); η: efficiency at this power (0 < η ≤ 1). Result in A.
 * The nominal voltage would give too little. Ripple at twice the mains frequency is not in it.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed); off-grid design article for the 90 % of a design (read).
 */
export function inverterInputA(outputW: number, { lowestVoltageV, efficiency }: InverterSupply): number {
  return (
    notNegative(outputW, 'The power delivered') /
    (positive(lowestVoltageV, 'The lowest battery voltage') * shareAboveZero(efficiency, 'The efficiency'))
  );
}

export interface InverterLoads {
  readonly continuousW: number;
  readonly surgeW: number;
  /** Taken from the battery with nothing plugged in. */
  readonly idleW: number;
}

export interface InverterCurrents {
  readonly continuousA: number;
  readonly surgeA: number;
  readonly idleA: number;
}

/**
 * The direct currents of an inverter at its continuous power, its surge and idle.
 *
 *     I = P / (U · η)        I_idle = P_idle / U
 *
 * Continuous and surge power, W (≥ 0), surge not below continuous; the idle power is taken at the battery already and is
 * not divided by η. The efficiency at a surge is worse than at the continuous power: give the worst that is known.
 *
 * Throws RangeError if a value is outside of these ranges or the surge is less than the continuous power.
 *
 * Source: as `inverterInputA`.
 */
export function inverterCurrents(loads: InverterLoads, supply: InverterSupply): InverterCurrents {
  const continuousA = inverterInputA(loads.continuousW, supply);
  if (notNegative(loads.surgeW, 'The surge power') < loads.continuousW)
    throw new RangeError(
      `The surge power (${loads.surgeW} W) must not be less than the continuous power (${loads.continuousW} W).`,
    );
  return {
    continuousA,
    surgeA: inverterInputA(loads.surgeW, supply),
    idleA: notNegative(loads.idleW, 'The idle power') / supply.lowestVoltageV,
  };
}

export interface AlternatingLoad {
  readonly runningW: number;
  /** How many times the running power the load takes while it starts: 1 if it only heats. */
  readonly startFactor: number;
}

/**
 * The highest power while all loads run and one of them starts: the one whose start adds most.
 *
 *     P = Σ P_i + max_i (P_i · (k_i − 1))
 *
 * P_i: running power, W (≥ 0); k_i: start factor (≥ 1). No loads: 0. Two that start at the same moment add up higher.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: inverter maker's questions and answers (read), which has the largest motor start; the load whose start adds
 * most is the same or stricter.
 */
export function startingPowerW(loads: readonly AlternatingLoad[]): number {
  let runningW = 0;
  let worstStartW = 0;
  for (const load of loads) {
    if (positive(load.startFactor, 'A start factor') < 1)
      throw new RangeError(`A start factor must be at least 1, not ${load.startFactor}.`);
    runningW += notNegative(load.runningW, 'A running power');
    worstStartW = Math.max(worstStartW, load.runningW * (load.startFactor - 1));
  }
  return runningW + worstStartW;
}
