import { notNegative, positive } from '../argument.ts';
import { count } from './storage-argument.ts';

/** Brighter than the test lamp: sun beside a white cloud, snow, water (NEC 690.8(A)). */
const brightness = 1.25;
/** For a current that flows over hours (NEC 690.8(B)). */
const continuous = 1.25;

export interface ArrayCurrents {
  /** As rated: short-circuit current × strings. */
  readonly ratedA: number;
  /** What can flow: compare with the controller's input. */
  readonly mostA: number;
  /** What cables and fuses must carry, before derating. */
  readonly conductorA: number;
}

/**
 * Currents of an array of equal strings side by side.
 *
 *     I = p · I_sc        I_max = 1.25 · I        I_conductor = 1.25 · I_max = 1.5625 · I   (printed as 1.56)
 *
 * I_sc: rated short-circuit current of a module, A (> 0); p: strings in parallel (whole, ≥ 1). The second 1.25 is for
 * conductors and fuses, not for the controller's rating.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: electrician's course on NEC 690.8 (read).
 */
export function arrayCurrents(shortCircuitA: number, inParallel: number): ArrayCurrents {
  const ratedA =
    positive(shortCircuitA, 'The short-circuit current') *
    count(inParallel, 'The number of strings in parallel');
  return { ratedA, mostA: brightness * ratedA, conductorA: continuous * brightness * ratedA };
}

export interface ControllerVoltages {
  readonly nominalV: number;
  readonly lowestV: number;
  /** While it charges in earnest, e.g. 14.4 V for 12 V. */
  readonly chargeV: number;
}

export interface ControllerOutputs {
  readonly byNominalA: number;
  readonly byLowestA: number;
  readonly byChargeA: number;
}

/**
 * The output current of a controller that tracks the maximum power, by each of three practices.
 *
 *     by nominal voltage:         I = m · P / U_n    (m: margin, 1.25 in the source)
 *     by lowest battery voltage:  I = P / U_min      (no margin)
 *     by charge voltage:          I = P / U_ch       (no margin; the least of the three)
 *
 * P: rated power of the array, W (≥ 0); voltages in V, 0 < U_min ≤ U_n ≤ U_ch, unless the chemistry's nominal voltage
 * says otherwise: only > 0 is asked. A controller that limits its own output may have a larger array than this.
 *
 * Throws RangeError if a value is outside of these ranges or the margin is less than 1.
 *
 * Source: solar shop's article and sizing page; charge-controller guide of an off-grid magazine; another shop's page
 * (all read).
 */
export function controllerOutputs(
  arrayW: number,
  { nominalV, lowestV, chargeV }: ControllerVoltages,
  margin: number,
): ControllerOutputs {
  notNegative(arrayW, 'The power of the array');
  if (positive(margin, 'The margin') < 1)
    throw new RangeError(`The margin must be at least 1, not ${margin}.`);
  return {
    byNominalA: (margin * arrayW) / positive(nominalV, 'The nominal voltage'),
    byLowestA: arrayW / positive(lowestV, 'The lowest battery voltage'),
    byChargeA: arrayW / positive(chargeV, 'The charge voltage'),
  };
}

/**
 * How many equal controllers carry a current.
 *
 *     n = ⌈I / I1⌉
 *
 * I: current, A (≥ 0); I1: rating of one, A (> 0). A current that meets a rating within rounding of decimals needs no
 * further one.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: charge-controller guide of an off-grid magazine (read).
 */
export function controllersFor(currentA: number, ratingA: number): number {
  const ratio = notNegative(currentA, 'The current') / positive(ratingA, 'The rating of a controller');
  return Math.ceil(ratio * (1 - 1e-9));
}

/**
 * The power of an array against what its controller can deliver.
 *
 *     q = P / (I_r · U_ch)
 *
 * P: rated power of the array, W (≥ 0); I_r: rated output of the controller, A; U_ch: charge voltage, V (both > 0). Above
 * 1 the controller holds back on bright days.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: a controller's manual, rated charge power (read).
 */
export function arrayOverControllerShare(arrayW: number, ratingA: number, chargeV: number): number {
  return (
    notNegative(arrayW, 'The power of the array') /
    (positive(ratingA, 'The rating of the controller') * positive(chargeV, 'The charge voltage'))
  );
}
