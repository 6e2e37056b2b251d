import { finite } from '../argument.ts';

/** Days of the months of a year that is no leap year. */
export const daysOfMonths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/**
 * The day of the year on which each month has its 15th. Counted in the calendar: the shortcut 30.4·M − 15 puts March
 * two days early and its radiation off by up to 2 %.
 */
export const midMonthDays = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349] as const;

/** Twelve numbers, January first. */
export type Months = readonly number[];

/** The number of a month, 0 (January) to 11. Throws RangeError for anything else. */
export function monthNumber(month: number): number {
  if (!Number.isInteger(month) || month < 0 || month > 11) {
    throw new RangeError(`A month must be a whole number from 0 (January) to 11, not ${month}.`);
  }
  return month;
}

/** `values`, if there are twelve finite ones. Throws RangeError otherwise; `what` begins the sentence. */
export function twelve(values: Months, what: string): Months {
  if (values.length !== 12) throw new RangeError(`${what} must have 12 values, not ${values.length}.`);
  for (const value of values) finite(value, `${what}, each month,`);
  return values;
}

/** A value of a month of twelve. */
export function ofMonth(values: Months, month: number): number {
  const value = values[monthNumber(month)];
  if (value === undefined) throw new RangeError('There must be 12 values, one a month.');
  return value;
}
