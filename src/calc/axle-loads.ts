import { finite, notNegative, positive } from './argument.ts';

/** A mass and where it stands along the vehicle. A negative mass is something taken out of the vehicle. */
export interface PlacedMass {
  readonly massKg: number;
  /** Behind the centre of the front axle; negative ahead of it. */
  readonly behindFrontAxleM: number;
}

export interface AxleLoads {
  readonly frontKg: number;
  readonly rearKg: number;
}

/**
 * The part of a mass that the rear axle carries.
 *
 *     s = x / L
 *
 * x: distance of the mass behind the front axle, m (any finite value); L: wheelbase, m (> 0). Between the axles s
 * is 0 to 1. Behind the rear axle s > 1: the rear axle takes more than the mass and the front axle is relieved.
 * Ahead of the front axle s < 0. The front axle carries 1 − s.
 *
 * Throws RangeError if a value is not finite or the wheelbase is not greater than 0.
 *
 * Source: body and equipment mounting directives for a light truck, issue 20.10.2020, clause 9.1 (read).
 */
export function rearShare(behindFrontAxleM: number, wheelbaseM: number): number {
  return (
    finite(behindFrontAxleM, 'The distance behind the front axle') / positive(wheelbaseM, 'The wheelbase')
  );
}

/**
 * What the axles of a two-axle vehicle carry, from moments about the front axle.
 *
 *     R_r = Σ (m_i · x_i) / L        R_f = Σ m_i − R_r
 *
 * m_i: masses, kg (any finite value; negative for something removed); x_i: distances behind the front axle, m;
 * L: wheelbase, m (> 0). The vehicle stands level and its springs do not move anything along. No items: 0 and 0.
 * A negative result means that this axle would lift.
 *
 * Throws RangeError if a value is not finite or the wheelbase is not greater than 0.
 *
 * Source: body and equipment mounting directives for a light truck, issue 20.10.2020, clause 9.1 (read), which adds
 * that the vehicle must be weighed before the work and that this weighing is the basis.
 */
export function axleLoads(items: readonly PlacedMass[], wheelbaseM: number): AxleLoads {
  positive(wheelbaseM, 'The wheelbase');
  let totalKg = 0;
  let momentKgM = 0;
  for (const { massKg, behindFrontAxleM } of items) {
    totalKg += finite(massKg, 'A mass');
    momentKgM += massKg * finite(behindFrontAxleM, 'The distance behind the front axle');
  }
  const rearKg = momentKgM / wheelbaseM;
  return { frontKg: totalKg - rearKg, rearKg };
}

/**
 * Where the centre of gravity lies, from two axle loads.
 *
 *     a = R_r · L / (R_f + R_r)
 *
 * R_f, R_r: front and rear axle load, kg (their sum > 0); L: wheelbase, m (> 0). Result: m behind the front axle.
 *
 * Throws RangeError if a value is not finite, the wheelbase is not greater than 0 or the axles carry nothing.
 *
 * Source: body builder manual for a light commercial vehicle, part II, V1.0 February 2015, A.2.3, page 268 (read);
 * it requires that the centre lies within the wheelbase at all times.
 */
export function centreBehindFrontAxle(frontKg: number, rearKg: number, wheelbaseM: number): number {
  const totalKg = finite(frontKg, 'The front axle load') + finite(rearKg, 'The rear axle load');
  return (rearKg * positive(wheelbaseM, 'The wheelbase')) / positive(totalKg, 'The sum of the axle loads');
}

/**
 * What the front axle gains, and the rear axle loses, when a mass moves forward.
 *
 *     ΔR_f = m · d / L
 *
 * m: mass, kg (≥ 0); d: distance moved, m, forward positive; L: wheelbase, m (> 0). Result in kg.
 *
 * Throws RangeError if a value is not finite, the mass is negative or the wheelbase is not greater than 0.
 *
 * Source: follows from the moments (computed).
 */
export function axleChangeOfShift(massKg: number, shiftForwardM: number, wheelbaseM: number): number {
  return (
    (notNegative(massKg, 'The mass') * finite(shiftForwardM, 'The distance moved')) /
    positive(wheelbaseM, 'The wheelbase')
  );
}

/**
 * The mass that must be moved a given distance to bring the centre of gravity a wanted distance along.
 *
 *     m / M = Δx / d
 *
 * M: mass of the whole, kg (> 0); Δx: wanted movement of the centre, m; d: distance the mass is moved, m (not 0),
 * both counted the same way. A result above M cannot be done over this distance.
 *
 * Throws RangeError if a value is not finite, M is not greater than 0, d is 0, or the mass would move one way and
 * the centre the other.
 *
 * Source: Pilot's Handbook of Aeronautical Knowledge (FAA-H-8083-25), weight and balance, weight shifting (read).
 */
export function massToShift(totalKg: number, centreShiftM: number, distanceM: number): number {
  positive(totalKg, 'The mass of the whole');
  finite(centreShiftM, 'The movement of the centre of gravity');
  if (finite(distanceM, 'The distance moved') === 0) {
    throw new RangeError('The distance moved must not be 0: a mass that stays where it is moves no centre.');
  }
  if (centreShiftM * distanceM < 0) {
    throw new RangeError(
      'The centre of gravity moves the same way as the mass: give both distances the same sign.',
    );
  }
  return (totalKg * centreShiftM) / distanceM;
}

/**
 * How far forward a mass must move for the front axle to gain a given load.
 *
 *     d = ΔR_f · L / m
 *
 * ΔR_f: wanted change of the front axle load, kg (negative to relieve it; the rear axle changes by the opposite);
 * m: the mass to move, kg (> 0); L: wheelbase, m (> 0). Result: m, forward positive.
 *
 * Throws RangeError if a value is not finite or the mass or the wheelbase is not greater than 0.
 *
 * Source: follows from the moments (computed).
 */
export function shiftForAxleChange(changeKg: number, massKg: number, wheelbaseM: number): number {
  return (
    (finite(changeKg, 'The change of the axle load') * positive(wheelbaseM, 'The wheelbase')) /
    positive(massKg, 'The mass to move')
  );
}
