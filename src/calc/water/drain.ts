import { finite, notNegative, positive } from '../argument.ts';

/** From the upper to the lower end of a straight piece of drain, in the axes of the vehicle on level ground. */
export interface DrainRun {
  /** Towards the rear. */
  readonly rearwardM: number;
  /** Towards the right. */
  readonly rightwardM: number;
  /** How much lower it ends than it begins; below 0 where it climbs. */
  readonly fallM: number;
}

/** How a vehicle stands: which end and which side is higher, in degrees. */
export interface Parking {
  /** Above 0: nose higher than tail. */
  readonly noseUpDeg: number;
  /** Above 0: left side higher than right. */
  readonly leftUpDeg: number;
}

export const levelGround: Parking = { noseUpDeg: 0, leftUpDeg: 0 };

/**
 * Fall of a drain over its length in plan, as the vehicle stands.
 *
 *     u = (−tan α, −tan β, 1) / √(tan² α + tan² β + 1);  s = drop / √(L² − drop²),  drop = −d·u
 *
 * d: the run as a vector (rearward, rightward, up), L its length, m; α: nose up; β: left side up, each less than 45
 * degrees either way. s: a plain ratio, 0.02 for 2 %; below 0 where water would have to run uphill; +∞ or −∞ upright.
 *
 * Throws RangeError if a value is not finite or out of its range, or the run has no length.
 *
 * Source: geometry.
 */
export function drainSlope(run: DrainRun, parking: Parking = levelGround): number {
  const rearward = finite(run.rearwardM, 'The run rearward');
  const rightward = finite(run.rightwardM, 'The run to the right');
  const fall = finite(run.fallM, 'The fall');
  const lengthM = positive(Math.hypot(rearward, rightward, fall), 'The length of the drain');
  const noseUp = Math.tan(radians(parking.noseUpDeg));
  const leftUp = Math.tan(radians(parking.leftUpDeg));
  const drop = (fall + rearward * noseUp + rightward * leftUp) / Math.hypot(noseUp, leftUp, 1);
  return drop / Math.sqrt(Math.max(0, lengthM ** 2 - drop ** 2));
}

/**
 * Fall of a drain over its length in plan if the vehicle leans by so much the wrong way, whichever way that is.
 *
 *     s = tan(arctan(fall/run) − θ)
 *
 * fall: m; run: length in plan, m (≥ 0); θ: lean, degrees (0 to 45). For pipes that are not straight in plan this is
 * stricter than the vehicle can be, as no lean is wrong for all pieces.
 *
 * Throws RangeError if a value is not finite or out of its range, or the drain has no length.
 */
export function drainSlopeLeaning(fallM: number, runM: number, leanDeg: number): number {
  const lean = radians(notNegative(leanDeg, 'The lean'));
  const run = notNegative(runM, 'The run');
  positive(Math.hypot(finite(fallM, 'The fall'), run), 'The length of the drain');
  return Math.tan(Math.atan2(fallM, run) - lean);
}

/**
 * Fall that a drain needs so that a least slope is left when the vehicle leans by so much the wrong way, m.
 *
 *     fall = run · tan(arctan(s) + θ)
 *
 * run: length in plan, m (≥ 0); s: least slope (0 to 1); θ: lean, degrees (0 to below 45).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function fallNeededM(runM: number, leastSlope: number, leanDeg = 0): number {
  if (notNegative(leastSlope, 'The least slope') > 1) {
    throw new RangeError(`The least slope must not be more than 1, not ${leastSlope}.`);
  }
  return (
    notNegative(runM, 'The run') * Math.tan(Math.atan(leastSlope) + radians(notNegative(leanDeg, 'The lean')))
  );
}

function radians(degrees: number): number {
  if (Math.abs(finite(degrees, 'The lean')) >= 45) {
    throw new RangeError(`A parked vehicle leans less than 45 degrees, not ${degrees}.`);
  }
  return (degrees * Math.PI) / 180;
}
