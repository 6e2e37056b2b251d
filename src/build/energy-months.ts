import { daysOfMonths } from '../calc/energy/months.ts';
import type { EnergyYear } from '../calc/energy/year.ts';
import { type EnergyMonth, monthName } from './energy.ts';

/** Less than this part of a day's need is no trend of the battery: own choice. */
const noTrend = 0.01;
/** Sums of hours differ by no more for want of digits, Wh. */
export const roundingWh = 1e-6;

/** What the hours of a year say of each month: short on typical days, short on dull ones, or living on the battery. */
export function energyMonths({ ledger, months }: EnergyYear, dullDays: number): readonly EnergyMonth[] {
  let firstHour = 0;
  return daysOfMonths.map((days, month) => {
    const first = firstHour;
    firstHour += days * 24;
    const typicalDays = days - dullDays;
    const over = (fromDay: number, toDay: number, read: (hour: number) => number): number[] =>
      Array.from({ length: Math.max(0, toDay - fromDay) * 24 }, (_, hour) =>
        read(first + fromDay * 24 + hour),
      );
    const unmet = (hour: number): number => ledger.unmetWh[hour] ?? 0;
    const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
    const state = (hour: number): number => ledger.stateWh[hour] ?? 0;
    const wantedWhADay = (months[month]?.wantedWh ?? 0) / days;
    // The first day begins full by definition; the fullest hours of two halves of the rest show whether it gets full again.
    const half = Math.floor(typicalDays / 2);
    const earlyWh = Math.max(0, ...over(1, half, state));
    const lateWh = Math.max(0, ...over(half, typicalDays, state));
    // From the first hours of one to those of the other, where it only falls.
    const apartDays = Math.max(1, half - 1);
    const lostADay = (earlyWh - lateWh) / apartDays;
    return {
      month,
      name: monthName(month),
      typicalUnmetWh: sum(over(0, typicalDays, unmet)),
      dullUnmetWh: sum(over(typicalDays, days, unmet)),
      runsDownWhADay: lostADay > noTrend * wantedWhADay + roundingWh ? lostADay : 0,
      fullest: { earlyWh, lateWh, apartDays },
      wantedWhADay,
    };
  });
}

/** Nothing is short in it, and it leaves the battery as full as it found it. */
export const isClosed = ({ typicalUnmetWh, dullUnmetWh, runsDownWhADay }: EnergyMonth): boolean =>
  typicalUnmetWh + dullUnmetWh <= roundingWh && runsDownWhADay === 0;
