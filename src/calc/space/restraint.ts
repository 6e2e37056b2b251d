import { notNegative, positive } from '../argument.ts';

/** Standard gravity, m/s²: exact by definition (3rd General Conference on Weights and Measures, 1901; memory). */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

/**
 * What the fixings of a thing must hold in one direction, N.
 *
 *     F = c · m · g
 *
 * c: the acceleration to design for in that direction, as a multiple of standard gravity (≥ 0; the published ones are
 * rows of the catalogue); m: mass, kg (> 0), tanks as full as they get; g: 9.80665 m/s². Friction is not counted: a
 * thing that is screwed down may stand on a slippery floor and lift as the van rides over a bump. c · m alone, kg, is
 * the mass that would pull as hard if it hung on the fixings.
 *
 * Throws RangeError if the mass is not greater than 0 or the coefficient is less than 0.
 */
export const restraintForceN = (massKg: number, coefficient: number): number =>
  notNegative(coefficient, 'The coefficient') * positive(massKg, 'The mass') * STANDARD_GRAVITY_M_PER_S2;
