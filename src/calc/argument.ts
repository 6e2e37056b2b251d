/** `value`, if it is a finite number. Throws RangeError otherwise; `what` begins the sentence: "The wheelbase". */
export function finite(value: number, what: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a finite number, not ${value}.`);
  return value;
}

/** `value`, if it is finite and greater than 0. Throws RangeError otherwise. */
export function positive(value: number, what: string): number {
  if (finite(value, what) <= 0) throw new RangeError(`${what} must be greater than 0, not ${value}.`);
  return value;
}

/** `value`, if it is finite and at least 0. Throws RangeError otherwise. */
export function notNegative(value: number, what: string): number {
  if (finite(value, what) < 0) throw new RangeError(`${what} must not be less than 0, not ${value}.`);
  return value;
}
