import { notNegative } from '../argument.ts';
import { share, within } from './angle.ts';
import { batteryHour, type Peukert } from './battery-hour.ts';
import {
  type ArrayPlane,
  arrayDay,
  dullDiffuseShare,
  lightDay,
  type Site,
  sunDay,
  typicalDiffuseShare,
} from './design-day.ts';
import { type DaySpan, spanCover, spreadDays } from './hours.ts';
import { autonomyDays, batteryOfMonth, loadOfMonth } from './month-of-year.ts';
import { daysOfMonths, type Months, ofMonth, twelve } from './months.ts';
import { combinedLoss } from './panel.ts';

export { chargeShare } from './month-of-year.ts';

/*
 * Twelve design months, hour by hour. Each month stands for itself: it begins with the stated state, runs typical days with
 * the month's mean radiation and ends with a run of dull days. Within an hour powers are even. Everything is seen from the
 * busbar; energies are Wh, positive in the direction of their name.
 */

export interface MonthlyClimate {
  /** Mean daily radiation on a horizontal surface, Wh/m². */
  readonly globalWhM2: Months;
  /** Its diffuse part; estimated from the clearness index if not given. */
  readonly diffuseWhM2?: Months;
  readonly airC: Months;
}

export interface SolarSource extends ArrayPlane {
  /** Share of the array's power that the controller passes on. */
  readonly controllerEfficiency: number;
  /** The most that it gives, W: its rated current times the battery's voltage. */
  readonly controllerMostW?: number;
}

/** A charger that runs while the engine does. */
export interface DrivingSource {
  /** At the busbar. */
  readonly powerW: number;
  readonly startHour: number;
  /** Hours of a driving day, by month. */
  readonly hours: Months;
  /** 0 to 7, spread over the week. */
  readonly daysPerWeek: number;
}

/** A charger at a hook-up. */
export interface ShoreSource {
  /** At the busbar. */
  readonly powerW: number;
  /** Nights of each month, spread over it. */
  readonly nights: Months;
  /** When it is plugged in, and for how long. */
  readonly span: DaySpan;
}

export interface EnergyLoad {
  /** Mean power in each hour of the day, W at the busbar (inverter losses included). */
  readonly hourlyW: readonly number[];
  /** Factor of each month; 1 if not given. */
  readonly monthFactors?: Months;
}

/** Charging allowed from a cell temperature on: share of the greatest charging power. */
export interface ChargeStep {
  readonly fromC: number;
  readonly share: number;
}

export interface YearBattery {
  readonly windowWh: number;
  readonly mostChargeW: number;
  readonly mostDischargeW: number;
  /** Energy out over energy in; half of the loss falls in charging (by the square root), half in discharging. */
  readonly roundTripEfficiency: number;
  /** Share lost in 30 days. */
  readonly selfDischargeAMonth: number;
  /** Monitor, idle inverter: drawn in every hour, before the loads, W. */
  readonly standingW: number;
  readonly peukert?: Peukert;
  /** Temperature of its cells, °C. */
  readonly cellC: Months;
  /** Below the first step there is no charging; from each step on the share of it. None: no limit. */
  readonly chargeSteps: readonly ChargeStep[];
  /** Share of the usable energy that the cold leaves; 1 if not given. */
  readonly capacityShares?: Months;
}

export interface EnergyYearInput {
  readonly site: Site;
  readonly climate: MonthlyClimate;
  readonly arrays: readonly SolarSource[];
  readonly driving?: DrivingSource;
  readonly shore?: ShoreSource;
  readonly loads: readonly EnergyLoad[];
  readonly battery: YearBattery;
  /** Days at the end of each month that are dull: 0 to 28. */
  readonly dullDays: number;
  /** What a dull day has of the month's mean radiation: 0 to 1. */
  readonly dullShare: number;
  /** State at the beginning of each month, share of the usable energy; 1 (full) if not given. */
  readonly startShare?: number;
  /** Hour of the day from which autonomy counts; 18 if not given. */
  readonly autonomyFromHour?: number;
}

/** Every hour of the year; all columns have one entry an hour. */
export interface EnergyLedger {
  /** 0 to 11. */
  readonly month: Uint8Array;
  /** What the solar controllers could give. */
  readonly producedWh: Float64Array;
  /** Of that, not taken: no need for it and no room. */
  readonly curtailedWh: Float64Array;
  readonly drivingWh: Float64Array;
  readonly shoreWh: Float64Array;
  readonly chargedWh: Float64Array;
  readonly dischargedWh: Float64Array;
  /** In the battery, by self-discharge, and the standing draw. */
  readonly lostWh: Float64Array;
  /** What the loads asked for. */
  readonly wantedWh: Float64Array;
  readonly usedWh: Float64Array;
  readonly unmetWh: Float64Array;
  /** Usable energy stored at the beginning and at the end of the hour. */
  readonly beforeWh: Float64Array;
  readonly stateWh: Float64Array;
}

export interface MonthSummary {
  readonly month: number;
  readonly days: number;
  /** A typical day's radiation on the ground, and on each array's plane, Wh/m². */
  readonly globalWhM2: number;
  readonly planeWhM2: readonly number[];
  /** What the controllers could give on a typical day and on a dull one. */
  readonly typicalDayWh: number;
  readonly dullDayWh: number;
  /** Sums over the month. */
  readonly producedWh: number;
  readonly curtailedWh: number;
  readonly drivingWh: number;
  readonly shoreWh: number;
  readonly dischargedWh: number;
  readonly lostWh: number;
  readonly wantedWh: number;
  readonly usedWh: number;
  readonly unmetWh: number;
  readonly unmetHours: number;
  /** The month's usable energy, cold counted, and the lowest state. */
  readonly windowWh: number;
  readonly lowestWh: number;
  /** Lowest state over the usable energy; 0 without a battery. */
  readonly lowestShare: number;
  /** Shares of what the sources really gave; all 0 if they gave nothing. */
  readonly shares: { readonly solar: number; readonly driving: number; readonly shore: number };
  /** Days from full without any source until a load is first not met; Infinity without a load or beyond 1000. */
  readonly autonomyDays: number;
}

export interface EnergyYear {
  readonly ledger: EnergyLedger;
  readonly months: readonly MonthSummary[];
}

const hoursOfYear = 8760;
const at = (column: Float64Array, index: number): number => column[index] ?? 0;

const column = (): Float64Array => new Float64Array(hoursOfYear);

function emptyLedger(): EnergyLedger {
  return {
    month: new Uint8Array(hoursOfYear),
    producedWh: column(),
    curtailedWh: column(),
    drivingWh: column(),
    shoreWh: column(),
    chargedWh: column(),
    dischargedWh: column(),
    lostWh: column(),
    wantedWh: column(),
    usedWh: column(),
    unmetWh: column(),
    beforeWh: column(),
    stateWh: column(),
  };
}

/** What is off in an hour of the ledger: sources + drop of the state − used − lost, Wh. 0 but for rounding. */
export function imbalanceWh(ledger: EnergyLedger, hour: number): number {
  const gained =
    at(ledger.producedWh, hour) -
    at(ledger.curtailedWh, hour) +
    at(ledger.drivingWh, hour) +
    at(ledger.shoreWh, hour);
  const fromStore = at(ledger.beforeWh, hour) - at(ledger.stateWh, hour);
  return gained + fromStore - at(ledger.usedWh, hour) - at(ledger.lostWh, hour);
}

interface SolarDays {
  readonly typicalWh: Float64Array;
  readonly dullWh: Float64Array;
  readonly globalWhM2: number;
  readonly planeWhM2: readonly number[];
}

/** What the controllers can give in the hours of a typical day and of a dull one. */
function solarOfMonth(input: EnergyYearInput, month: number): SolarDays {
  const { climate, dullShare } = input;
  const sun = sunDay(input.site, month);
  const globalWhM2 = ofMonth(climate.globalWhM2, month);
  const diffuseWhM2 = climate.diffuseWhM2 && ofMonth(climate.diffuseWhM2, month);
  const typicalShare = typicalDiffuseShare(sun, globalWhM2, diffuseWhM2);
  const typical = lightDay(sun, globalWhM2, typicalShare);
  const dullGlobal = globalWhM2 * dullShare;
  const dull = lightDay(sun, dullGlobal, dullDiffuseShare(sun, dullGlobal, typicalShare));
  const airC = ofMonth(climate.airC, month);
  const typicalWh = new Float64Array(24);
  const dullWh = new Float64Array(24);
  const planeWhM2: number[] = [];
  for (const array of input.arrays) {
    const kept =
      (1 - combinedLoss(array.losses)) * share(array.controllerEfficiency, 'The efficiency of a controller');
    const most = array.controllerMostW ?? Number.MAX_VALUE;
    notNegative(most, 'The most that a controller gives');
    const typicalDay = arrayDay(typical, array, airC);
    const dullDay = arrayDay(dull, array, airC);
    planeWhM2.push(typicalDay.planeWhM2);
    for (let hour = 0; hour < 24; hour += 1) {
      typicalWh[hour] = at(typicalWh, hour) + Math.min(most, kept * at(typicalDay.hourWh, hour));
      dullWh[hour] = at(dullWh, hour) + Math.min(most, kept * at(dullDay.hourWh, hour));
    }
  }
  return { typicalWh, dullWh, globalWhM2: typical.globalWhM2, planeWhM2 };
}

/** Power that driving and shore offer in every hour of a month. */
function offered(input: EnergyYearInput, month: number, days: number): [Float64Array, Float64Array] {
  const drivingW = new Float64Array(days * 24);
  const shoreW = new Float64Array(days * 24);
  const offer = (offers: Float64Array, powerW: number, span: DaySpan, on: readonly boolean[]): void => {
    const { today, tomorrow } = spanCover(span);
    notNegative(powerW, 'The power of a charger');
    for (let hour = 0; hour < offers.length; hour += 1) {
      const day = Math.floor(hour / 24);
      const covered = (on[day] ? at(today, hour % 24) : 0) + (on[day - 1] ? at(tomorrow, hour % 24) : 0);
      offers[hour] = powerW * covered;
    }
  };
  const { driving, shore } = input;
  if (driving) {
    const week = spreadDays(driving.daysPerWeek, 7);
    const span = {
      startHour: driving.startHour,
      hours: ofMonth(twelve(driving.hours, 'The driving hours'), month),
    };
    const on = Array.from({ length: days }, (_, day) => week[day % 7] ?? false);
    offer(drivingW, driving.powerW, span, on);
  }
  if (shore) {
    const nights = within(
      ofMonth(twelve(shore.nights, 'The nights'), month),
      0,
      days,
      'The nights of a month',
    );
    offer(shoreW, shore.powerW, shore.span, spreadDays(nights, days));
  }
  return [drivingW, shoreW];
}

/** Sum of a column over a span of hours. */
function sum(values: Float64Array, from: number, to: number): number {
  let total = 0;
  for (let hour = from; hour < to; hour += 1) total += at(values, hour);
  return total;
}

function checked(input: EnergyYearInput): void {
  const { climate, battery } = input;
  for (const value of twelve(climate.globalWhM2, 'The radiation')) notNegative(value, 'The radiation');
  if (climate.diffuseWhM2) twelve(climate.diffuseWhM2, 'The diffuse radiation');
  twelve(climate.airC, 'The air temperatures');
  notNegative(battery.windowWh, 'The usable energy');
  notNegative(battery.mostChargeW, 'The greatest charging power');
  notNegative(battery.standingW, 'The standing draw');
  share(input.dullShare, 'The share of a dull day');
  if (!Number.isInteger(within(input.dullDays, 0, 28, 'The number of dull days'))) {
    throw new RangeError(`The number of dull days must be whole, not ${input.dullDays}.`);
  }
  if (!Number.isInteger(within(input.autonomyFromHour ?? 18, 0, 23, 'The hour from which autonomy counts'))) {
    throw new RangeError('The hour from which autonomy counts must be whole.');
  }
}

/**
 * A year of energy in twelve design months.
 *
 * In each hour the standing draw and the loads are met from the sun first, then from driving, then from shore, then from the
 * battery; what the sources have beyond that charges the battery in the same order. Sun that finds neither is curtailed;
 * driving and shore are simply not drawn. Of what cannot be met the loads go short, not the standing draw. Dull days have
 * `dullShare` of the month's mean while the others keep the mean, so the month gets less than its mean: on the safe side.
 * Driving and shore keep their days through the dull run. Every hour closes, see `imbalanceWh`.
 *
 * The monthly means are those of a typical year: single months differ from them by 10 to 20 %. Deterministic.
 *
 * Throws RangeError if a value is not finite or out of the range said at its name.
 */
export function energyYear(input: EnergyYearInput): EnergyYear {
  checked(input);
  const { battery: stated, dullDays, startShare = 1, autonomyFromHour = 18 } = input;
  const { standingW } = stated;
  const ledger = emptyLedger();
  const months: MonthSummary[] = [];
  let hour = 0;
  for (const [month, days] of daysOfMonths.entries()) {
    const battery = batteryOfMonth(stated, month);
    const solar = solarOfMonth(input, month);
    const hourlyW = loadOfMonth(input.loads, month);
    const [drivingW, shoreW] = offered(input, month, days);
    const first = hour;
    const dullFrom = (days - dullDays) * 24;
    let stateWh = battery.windowWh * share(startShare, 'The state at the beginning');
    let lowestWh = stateWh;
    let unmetHours = 0;
    for (; hour < first + days * 24; hour += 1) {
      const sinceFirst = hour - first;
      const clock = sinceFirst % 24;
      const sunWh = at(sinceFirst < dullFrom ? solar.typicalWh : solar.dullWh, clock);
      const driveWh = at(drivingW, sinceFirst);
      const plugWh = at(shoreW, sinceFirst);
      const wantedWh = at(hourlyW, clock);
      const needWh = wantedWh + standingW;
      const availableWh = sunWh + driveWh + plugWh;
      const after = batteryHour(stateWh, availableWh - needWh, battery);
      const takenWh = Math.min(availableWh, needWh) + after.chargedWh;
      const fromSun = Math.min(sunWh, takenWh);
      const fromDriving = Math.min(driveWh, takenWh - fromSun);
      const fromShore = Math.min(plugWh, Math.max(0, takenWh - fromSun - fromDriving));
      const supplyWh = Math.min(availableWh, needWh) + after.dischargedWh;
      const standingWh = Math.min(standingW, supplyWh);
      // Asked of the battery and got: whatever rounding does to the sum, it is no shortage.
      const met = after.dischargedWh >= needWh - availableWh;
      const usedWh = met ? wantedWh : supplyWh - standingWh;
      const unmetWh = wantedWh - usedWh;

      ledger.month[hour] = month;
      ledger.producedWh[hour] = sunWh;
      ledger.curtailedWh[hour] = sunWh - fromSun;
      ledger.drivingWh[hour] = fromDriving;
      ledger.shoreWh[hour] = fromShore;
      ledger.chargedWh[hour] = after.chargedWh;
      ledger.dischargedWh[hour] = after.dischargedWh;
      ledger.lostWh[hour] = after.lostWh + standingWh;
      ledger.wantedWh[hour] = wantedWh;
      ledger.usedWh[hour] = usedWh;
      ledger.unmetWh[hour] = unmetWh;
      ledger.beforeWh[hour] = stateWh;
      ledger.stateWh[hour] = after.stateWh;
      stateWh = after.stateWh;
      if (unmetWh > 1e-9) unmetHours += 1;
      lowestWh = Math.min(lowestWh, stateWh);
    }
    const total = (values: Float64Array): number => sum(values, first, hour);
    const solarWh = total(ledger.producedWh) - total(ledger.curtailedWh);
    const drivingWh = total(ledger.drivingWh);
    const shoreWh = total(ledger.shoreWh);
    const givenWh = solarWh + drivingWh + shoreWh;
    const ofGiven = (wh: number): number => (givenWh > 0 ? wh / givenWh : 0);
    months.push({
      month,
      days,
      globalWhM2: solar.globalWhM2,
      planeWhM2: solar.planeWhM2,
      typicalDayWh: sum(solar.typicalWh, 0, 24),
      dullDayWh: sum(solar.dullWh, 0, 24),
      producedWh: total(ledger.producedWh),
      curtailedWh: total(ledger.curtailedWh),
      drivingWh,
      shoreWh,
      dischargedWh: total(ledger.dischargedWh),
      lostWh: total(ledger.lostWh),
      wantedWh: total(ledger.wantedWh),
      usedWh: total(ledger.usedWh),
      unmetWh: total(ledger.unmetWh),
      unmetHours,
      windowWh: battery.windowWh,
      lowestWh,
      lowestShare: battery.windowWh > 0 ? lowestWh / battery.windowWh : 0,
      shares: { solar: ofGiven(solarWh), driving: ofGiven(drivingWh), shore: ofGiven(shoreWh) },
      autonomyDays: autonomyDays(hourlyW, battery, standingW, autonomyFromHour),
    });
  }
  return { ledger, months };
}
