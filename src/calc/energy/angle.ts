import { finite } from '../argument.ts';

const radiansPerDegree = Math.PI / 180;

export const sinDeg = (degrees: number): number => Math.sin(degrees * radiansPerDegree);
export const cosDeg = (degrees: number): number => Math.cos(degrees * radiansPerDegree);
export const tanDeg = (degrees: number): number => Math.tan(degrees * radiansPerDegree);
export const asDegrees = (radians: number): number => radians / radiansPerDegree;
export const asRadians = (degrees: number): number => degrees * radiansPerDegree;

/** `value`, if it lies in a closed range. Throws RangeError otherwise; `what` begins the sentence. */
export function within(value: number, least: number, most: number, what: string): number {
  if (finite(value, what) < least || value > most) {
    throw new RangeError(`${what} must be from ${least} to ${most}, not ${value}.`);
  }
  return value;
}

export const latitude = (degrees: number): number => within(degrees, -90, 90, 'The latitude');
export const longitude = (degrees: number): number => within(degrees, -180, 180, 'The longitude');
export const tilt = (degrees: number): number => within(degrees, 0, 90, 'The tilt');
/** A share, 0 to 1. */
export const share = (value: number, what: string): number => within(value, 0, 1, what);
