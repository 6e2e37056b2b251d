import { length, type Measure } from '../engine/measure.ts';
import { nearestMicrometre } from './whole-millimetres.ts';

/** A length in the sum of a step: two that differ by rounding only would be told apart by their sixth decimal. */
export const told = (lengthM: number): Measure => length(nearestMicrometre(lengthM));
