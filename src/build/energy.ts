import type { EnergyLoad, EnergyYear, EnergyYearInput } from '../calc/energy/year.ts';
import type { ClimatePlace } from '../catalogue/electrical/climate.ts';
import type { Assumption, PlanPath } from '../engine/finding.ts';
import type { PartOfDay } from '../plan/times-of-day.ts';
import type { Bank } from './electrical.ts';

/*
 * The electrical year of a van: what its loads take on a day, what its sources give, and what twelve design months make
 * of them. Energies in Wh, as batteries and bills have them.
 */

/** What one thing takes on a day, at the battery. */
export interface DailyLoad {
  readonly name: string;
  readonly path: PlanPath;
  readonly summerWh: number;
  readonly winterWh: number;
  readonly when: PartOfDay;
  readonly loads: readonly EnergyLoad[];
}

/** The place whose tables stand in for that of the plan. */
export interface ClimateUsed {
  readonly place: ClimatePlace;
  readonly distanceM: number;
  /** The plan's own sun is used; the place gives the air alone. */
  readonly sunTyped: boolean;
}

export interface EnergyMonth {
  /** 0 to 11. */
  readonly month: number;
  readonly name: string;
  /** Of the days with the month's mean, and of the dull days at its end. */
  readonly typicalUnmetWh: number;
  readonly dullUnmetWh: number;
  /** What the battery loses from day to day on typical days, since the sources bring too little; 0 if it recovers. */
  readonly runsDownWhADay: number;
  /** What is stored in the fullest hours of the first and of the second half of the typical days, and how far they are apart. */
  readonly fullest: { readonly earlyWh: number; readonly lateWh: number; readonly apartDays: number };
  readonly wantedWhADay: number;
}

export interface WorkedYear {
  readonly input: EnergyYearInput;
  readonly year: EnergyYear;
  readonly months: readonly EnergyMonth[];
  readonly loads: readonly DailyLoad[];
  readonly climate: ClimateUsed;
  readonly bank: Bank;
  /** The same with another input: what a change would do. */
  readonly rerun: (input: EnergyYearInput) => Pick<WorkedYear, 'year' | 'months'>;
  readonly assumptions: readonly Assumption[];
}

export interface Energy {
  /** Keys without which the year cannot be worked out. */
  readonly missing: readonly string[];
  readonly worked?: WorkedYear;
  readonly nightsOffGrid?: number;
  /** The plan says how long is driven on a day. */
  readonly drivingGiven: boolean;
}

export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export const monthName = (month: number): string => monthNames[month] ?? '';
