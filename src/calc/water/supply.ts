import { notNegative, positive } from '../argument.ts';

/** Water used by one person a day for one purpose. */
export interface WaterUse {
  readonly m3PerPersonDay: number;
  /** Share of it that runs down a drain, 0 to 1: none of what is drunk or cooked in. */
  readonly drainedShare: number;
}

/** Sum of the uses of all, m³ a day, and what of it goes to the waste tank. */
export interface DailyWater {
  readonly freshM3: number;
  readonly wasteM3: number;
}

/**
 * Water used and drained by all a day.
 *
 *     V = n Σ v_i;  V_waste = n Σ s_i v_i
 *
 * n: persons (≥ 0); v: m³ a person and day (≥ 0); s: share drained (0 to 1).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function dailyWater(persons: number, uses: readonly WaterUse[]): DailyWater {
  const people = notNegative(persons, 'The number of persons');
  let freshM3 = 0;
  let wasteM3 = 0;
  for (const { m3PerPersonDay, drainedShare } of uses) {
    if (notNegative(drainedShare, 'The drained share') > 1) {
      throw new RangeError(`The drained share must not be more than 1, not ${drainedShare}.`);
    }
    const used = people * notNegative(m3PerPersonDay, 'The use of a person');
    freshM3 += used;
    wasteM3 += used * drainedShare;
  }
  return { freshM3, wasteM3 };
}

/**
 * How many days a tank lasts, or takes to fill: t = V u / V_day.
 *
 * V: whole volume, m³ (≥ 0); u: usable share (above 0, up to 1); V_day: m³ a day (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function tankDays(volumeM3: number, usableShare: number, m3PerDay: number): number {
  if (positive(usableShare, 'The usable share') > 1) {
    throw new RangeError(`The usable share must not be more than 1, not ${usableShare}.`);
  }
  return (
    (notNegative(volumeM3, 'The volume of the tank') * usableShare) / positive(m3PerDay, 'The daily use')
  );
}
