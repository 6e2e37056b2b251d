import { finite, positive } from './argument.ts';

export interface WheelLoads {
  readonly leftKg: number;
  readonly rightKg: number;
}

/**
 * The part of an axle's load that the right wheel carries, for a mass at one place across the vehicle.
 *
 *     s = 1/2 + y / T
 *
 * y: distance right of the vehicle's centre plane, m (negative to the left); T: track, m (> 0). Outside the wheels
 * s is above 1 or below 0. Twin wheels count as one, at the middle of the pair.
 *
 * Throws RangeError if a value is not finite or the track is not greater than 0.
 *
 * Source: moments about the other wheel (computed). The body is taken as stiff: both axles see the same place.
 */
export function rightShare(rightOfCentreM: number, trackM: number): number {
  return 0.5 + finite(rightOfCentreM, 'The distance right of the centre') / positive(trackM, 'The track');
}

/**
 * What the left and the right wheel of one axle carry.
 *
 *     R_right = R · (1/2 + y / T)        R_left = R − R_right
 *
 * R: axle load, kg (any finite value); y: its centre of gravity right of the centre plane, m; T: track, m (> 0).
 *
 * Throws RangeError if a value is not finite or the track is not greater than 0.
 *
 * Source: moments about one wheel (computed).
 */
export function wheelLoads(axleKg: number, centreRightOfCentreM: number, trackM: number): WheelLoads {
  const rightKg = finite(axleKg, 'The axle load') * rightShare(centreRightOfCentreM, trackM);
  return { leftKg: axleKg - rightKg, rightKg };
}

/**
 * The part of an axle's load that its heavier wheel carries: max(left, right) / (left + right), 0.5 when level.
 *
 * Limits are published against *half* the axle: "4 % over the wheel load" is a heavier wheel with at most
 * 1.04 / 2 = 0.52 of the axle.
 *
 * left, right: wheel loads, kg (their sum > 0). Above 1 the lighter wheel would lift.
 *
 * Throws RangeError if a value is not finite or the wheels together carry nothing.
 *
 * Source: body and equipment mounting directives for a light truck, issue 20.10.2020, clause 4.2.1 (read).
 */
export function heavierWheelShare(leftKg: number, rightKg: number): number {
  const axleKg = finite(leftKg, 'The left wheel load') + finite(rightKg, 'The right wheel load');
  return Math.max(leftKg, rightKg) / positive(axleKg, 'The sum of the wheel loads');
}

/**
 * The difference between the sides as a part of the whole: |left − right| / (left + right), 0 when level. It is
 * 2 · heavierWheelShare − 1, so a heavier wheel with 0.52 of the axle is a side difference of 0.04.
 *
 * left, right: loads, kg (their sum > 0).
 *
 * Throws RangeError if a value is not finite or the sides together carry nothing.
 *
 * Source: body and equipment mounting directives for a light truck, issue 20.10.2020, clause 4.2.1 (read): 2600 kg
 * and 2400 kg on a 5000 kg axle.
 */
export function sideDifference(leftKg: number, rightKg: number): number {
  const totalKg = finite(leftKg, 'The left load') + finite(rightKg, 'The right load');
  return Math.abs(leftKg - rightKg) / positive(totalKg, 'The sum of the two sides');
}
