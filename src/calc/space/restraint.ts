import { positive } from '../argument.ts';

/** Standard gravity, m/s²: exact by definition (3rd General Conference on Weights and Measures, 1901; memory). */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

/** Accelerations to design fixings for, as multiples of standard gravity, by the way the thing wants to move. */
export interface RestraintCoefficients {
  readonly forward: number;
  readonly rearward: number;
  readonly sideways: number;
  readonly upward: number;
  /** Sideways, on a thing that would rather topple than slide; acts at its centre of mass. */
  readonly topplingSideways: number;
}

/**
 * Coefficients of the general rule for road vehicles.
 *
 * Forward 0.8, rearward 0.5, sideways 0.5: EN 12195-1 as a training page on the CTU Code tabulates it, and the cargo
 * securement regulation of Quebec, C-24.2 r. 30, s. 3 (read). Sideways 0.5 for sliding also in the 2003 edition and
 * the 2009 draft (read, IRU Academy comparison, November 2010, pages 15, 23, 27). Toppling sideways: 0.7 in the 2003
 * edition, 0.6 (or 0.5) in the 2009 draft and 0.6 on the training page (read); the strictest is kept. Upward 0.2:
 * Australian load restraint performance standards, relative to the load (read on a training page; the regulator's
 * questions and answers say it is needed only where friction or weight is relied on; a fixing that does not hold a
 * thing down relies on its weight).
 *
 * Several European countries take 1.0 forward (cargo insurers' handbook, read); it is not kept here, where one rule's
 * figures stand together.
 *
 * Normal driving, emergency braking and minor collisions, not a crash or a rollover (regulator's page, read).
 * EN 12195-1:2010 itself says that it does not apply to vehicles of up to 3500 kg, which can be driven harder (scope,
 * read): see `vanRestraint`.
 */
export const ROAD_RESTRAINT: RestraintCoefficients = {
  forward: 0.8,
  rearward: 0.5,
  sideways: 0.5,
  upward: 0.2,
  topplingSideways: 0.7,
};

/**
 * Coefficients for a vehicle of a given permissible maximum mass, kg (> 0): light vans corner and brake harder.
 *
 *     up to 2000 kg: forward 0.9, sideways 0.7    above 2000 to 3500 kg: forward 0.8, sideways 0.6
 *     above 3500 kg: forward 0.8, sideways 0.5    rearward 0.5 in all
 *
 * Upward and toppling are those of `ROAD_RESTRAINT`, for want of others.
 *
 * Throws RangeError if the mass is not greater than 0.
 *
 * Source: VDI 2700 part 16, in figure 1 of A. Berg, W. Sicks and J.-P. Cheynet, "ISO 27956 - a new standard describing
 * requirements and test methods for lashing points and partitioning systems for cargo securing in delivery vans", paper
 * 09-0008, 2009 (read). The text beside that figure names 0.9 and 0.7 for 2000 to 3500 kg, the figure for up to 2000 kg;
 * a manual for van racking has 0.6 sideways up to 3500 kg (read), so the figure is followed.
 */
export function vanRestraint(maximumMassKg: number): RestraintCoefficients {
  positive(maximumMassKg, 'The maximum mass of the van');
  if (maximumMassKg <= 2000) return { ...ROAD_RESTRAINT, forward: 0.9, sideways: 0.7 };
  if (maximumMassKg <= 3500) return { ...ROAD_RESTRAINT, sideways: 0.6 };
  return ROAD_RESTRAINT;
}

/** Forces that the fixings of a thing must hold, N, one way at a time. */
export interface RestraintForces {
  readonly forwardN: number;
  readonly rearwardN: number;
  readonly sidewaysN: number;
  readonly upwardN: number;
  readonly topplingSidewaysN: number;
}

/**
 * What the fixings of a thing must hold, N, in each direction.
 *
 *     F = c · m · g
 *
 * c: coefficient of the direction; m: mass, kg (> 0), tanks as full as they get; g: 9.80665 m/s². Friction is not
 * counted: a thing that is screwed down may stand on a slippery floor and lift as the van rides over a bump.
 *
 * `coefficients`: `vanRestraint` of the van where its maximum mass is known, else `ROAD_RESTRAINT`.
 *
 * Throws RangeError if the mass is not greater than 0.
 */
export function restraintForces(
  massKg: number,
  coefficients: RestraintCoefficients = ROAD_RESTRAINT,
): RestraintForces {
  const weightN = positive(massKg, 'The mass') * STANDARD_GRAVITY_M_PER_S2;
  return {
    forwardN: coefficients.forward * weightN,
    rearwardN: coefficients.rearward * weightN,
    sidewaysN: coefficients.sideways * weightN,
    upwardN: coefficients.upward * weightN,
    topplingSidewaysN: coefficients.topplingSideways * weightN,
  };
}
