import { finite, notNegative, positive } from '../argument.ts';
import { share } from './storage-argument.ts';

const hoursPerDay = 24;
/** 365.2425 days of the calendar's mean year in twelve months. */
const daysPerMonth = 365.2425 / 12;

/**
 * What devices that are never off draw over days.
 *
 *     Q = I · 24 h · d
 *
 * I: standing current, A (≥ 0); d: days (≥ 0). Result in Ah.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: definition (computed).
 */
export function standingLossAh(currentA: number, days: number): number {
  return (
    notNegative(currentA, 'The standing current') * hoursPerDay * notNegative(days, 'The number of days')
  );
}

/**
 * Self-discharge of a lead battery at another temperature.
 *
 *     s(T) = s_20 · 2^((T − 20 °C) / 10 K)
 *
 * s_20: share of the capacity lost in a month at 20 °C (0 to 1); T: mean temperature, −20 to 50 °C. Result: share a
 * month, may exceed 1. Read for 10 and 20 °C; the rest extends the law.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: a power electronics maker's book, 2.5.9, where every type loses half as much at 10 °C as at 20 °C (read). A
 * battery maker's note says only half as much again for 10 K more; the book is the stricter above 20 °C.
 */
export function selfDischargePerMonth(perMonthAt20C: number, temperatureC: number): number {
  if (finite(temperatureC, 'The temperature') < -20 || temperatureC > 50)
    throw new RangeError(`The temperature must be from −20 to 50 °C, not ${temperatureC} °C.`);
  return share(perMonthAt20C, 'The self-discharge of a month') * 2 ** ((temperatureC - 20) / 10);
}

/**
 * What a battery that stands loses by itself, at most all it has.
 *
 *     Q = min(C, C · s · d / 30.44)
 *
 * C: capacity, Ah (> 0); s: share a month (≥ 0); d: days (≥ 0). Counted in proportion to time, which loses more than a
 * share of what is left each month and so lies on the safe side. Result in Ah.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed).
 */
export function selfDischargeAh(capacityAh: number, sharePerMonth: number, days: number): number {
  const lostShare =
    (notNegative(sharePerMonth, 'The self-discharge of a month') * notNegative(days, 'The number of days')) /
    daysPerMonth;
  return positive(capacityAh, 'The capacity') * Math.min(1, lostShare);
}

export interface LayUp {
  /** What may be lost before the battery is too low, Ah. */
  readonly spareAh: number;
  readonly capacityAh: number;
  readonly standingA: number;
  readonly selfDischargePerMonth: number;
}

/**
 * How many days a battery may stand until what it can spare is gone.
 *
 *     d = Q_s / (24 h · I + C · s / 30.44)
 *
 * Q_s: charge to spare, Ah (0 to C); C: capacity, Ah (> 0); I: standing current, A (≥ 0); s: self-discharge, share a month
 * (≥ 0). Result in days; Infinity if nothing drains.
 *
 * Throws RangeError if a value is outside of these ranges.
 *
 * Source: definition (computed).
 */
export function layUpDays({ spareAh, capacityAh, standingA, selfDischargePerMonth }: LayUp): number {
  if (notNegative(spareAh, 'The charge to spare') > positive(capacityAh, 'The capacity'))
    throw new RangeError(`The charge to spare (${spareAh} Ah) is more than the capacity (${capacityAh} Ah).`);
  const perDayAh =
    standingLossAh(standingA, 1) +
    (capacityAh * notNegative(selfDischargePerMonth, 'The self-discharge of a month')) / daysPerMonth;
  return perDayAh === 0 ? Number.POSITIVE_INFINITY : spareAh / perDayAh;
}
