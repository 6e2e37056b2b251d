import { positive } from './argument.ts';

/**
 * Smallest pay-mass (user payload), in kg, that a type-approved motor caravan must leave for belongings.
 *
 *     PM ≥ 10 · (n + L)
 *
 * n: seats for people *including* the driver (a whole number, ≥ 1); L: overall length, m (> 0). The numbers go in bare
 * and the result is kg. A legal floor, far below what people who live in a van carry.
 *
 * Throws RangeError if n is not a whole number of at least 1 or L is not greater than 0.
 *
 * Source: formula read in a motor caravan's handbook (German); the clause, (EU) No 1230/2012 Annex I Part A
 * 2.6.4.1.2, was read as a heading only and its wording is from memory.
 */
export function minimumPayMass(persons: number, overallLengthM: number): number {
  if (!Number.isInteger(persons) || persons < 1) {
    throw new RangeError(`The number of people must be a whole number of at least 1, not ${persons}.`);
  }
  return 10 * (persons + positive(overallLengthM, 'The overall length'));
}
