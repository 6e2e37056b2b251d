import { finite, positive } from '../argument.ts';

/** `value`, if it is a share above 0 and at most 1. Throws RangeError otherwise; `what` begins the sentence. */
export function shareAboveZero(value: number, what: string): number {
  if (positive(value, what) > 1) throw new RangeError(`${what} must not be more than 1, not ${value}.`);
  return value;
}

/** `value`, if it is a share from 0 to 1, both included. Throws RangeError otherwise. */
export function share(value: number, what: string): number {
  if (finite(value, what) < 0 || value > 1)
    throw new RangeError(`${what} must be a share from 0 to 1, not ${value}.`);
  return value;
}

/** `value`, if it is a whole number of at least 1. Throws RangeError otherwise. */
export function count(value: number, what: string): number {
  if (!Number.isInteger(value) || value < 1)
    throw new RangeError(`${what} must be a whole number of at least 1, not ${value}.`);
  return value;
}

/** `value`, if it is a temperature in °C that exists. Throws RangeError otherwise. */
export function celsius(value: number, what: string): number {
  if (finite(value, what) < -273.15)
    throw new RangeError(`${what} must not be below absolute zero (−273.15 °C), not ${value} °C.`);
  return value;
}
