import { notNegative } from '../argument.ts';
import { within } from './angle.ts';

/** A span of the day: from an hour of the clock, for some hours, past midnight if need be. */
export interface DaySpan {
  /** 0 to 24. */
  readonly startHour: number;
  /** 0 to 24. */
  readonly hours: number;
}

/** Parts of each hour (0 to 1) that a span covers, on the day it begins and on the day after. */
export interface SpanCover {
  readonly today: Float64Array;
  readonly tomorrow: Float64Array;
}

/**
 * Which hours a span covers, and how much of each.
 *
 * Throws RangeError if start or length is not from 0 to 24.
 */
export function spanCover({ startHour, hours }: DaySpan): SpanCover {
  within(startHour, 0, 24, 'The hour of the beginning');
  within(hours, 0, 24, 'The hours of a span');
  const today = new Float64Array(24);
  const tomorrow = new Float64Array(24);
  const overlap = (from: number): number =>
    Math.max(0, Math.min(from + 1, startHour + hours) - Math.max(from, startHour));
  for (let hour = 0; hour < 24; hour += 1) {
    today[hour] = overlap(hour);
    tomorrow[hour] = overlap(hour + 24);
  }
  return { today, tomorrow };
}

/**
 * A day's energy spread evenly over a span of the day, past midnight back to its morning: power by hour, W.
 *
 * `dailyWh` ≥ 0. A span of no length for an energy above 0 is a RangeError, as is a value out of range.
 */
export function spreadOverSpan(dailyWh: number, span: DaySpan): number[] {
  notNegative(dailyWh, 'The energy of a day');
  if (dailyWh > 0 && span.hours === 0) throw new RangeError('An energy needs some hours to be used in.');
  const { today, tomorrow } = spanCover(span);
  const powerW = dailyWh === 0 ? 0 : dailyWh / span.hours;
  return Array.from(today, (cover, hour) => powerW * (cover + (tomorrow[hour] ?? 0)));
}

/**
 * Whether each of `days` is one of `count`, spread as evenly as whole days can be, first and last not favoured.
 *
 * `count` may be a fraction; as many days are chosen as its whole part allows, or one more. Throws RangeError unless
 * 0 ≤ count ≤ days.
 */
export function spreadDays(count: number, days: number): boolean[] {
  within(count, 0, days, 'The number of days');
  const upTo = (day: number): number => Math.floor((2 * day * count + days) / (2 * days));
  return Array.from({ length: days }, (_, day) => upTo(day + 1) > upTo(day));
}
