import { notNegative, positive } from '../argument.ts';
import { share } from './angle.ts';
import { batteryHour, type HourBattery, soundBattery } from './battery-hour.ts';
import { ofMonth, twelve } from './months.ts';
import type { ChargeStep, EnergyLoad, YearBattery } from './year.ts';

/*
 * What one month makes of the loads and of the battery, and how long the battery alone carries them. Apart from the year,
 * so that a working can be shown without the sun.
 */

/** Autonomy beyond this is as good as endless. */
const longestHours = 24_000;
const at = (column: Float64Array, index: number): number => column[index] ?? 0;

/**
 * Share of the greatest charging power that the cells take at a temperature: that of the last step reached, 0 below the
 * first, 1 without steps. Throws RangeError unless the steps rise and their shares are from 0 to 1.
 */
export function chargeShare(cellC: number, chargeSteps: readonly ChargeStep[]): number {
  let allowed = chargeSteps.length === 0 ? 1 : 0;
  let before = Number.NEGATIVE_INFINITY;
  for (const step of chargeSteps) {
    if (step.fromC <= before) throw new RangeError('The charging temperatures must rise from step to step.');
    before = step.fromC;
    share(step.share, 'The charging share of a step');
    if (cellC >= step.fromC) allowed = step.share;
  }
  return allowed;
}

/** The power in each hour of a day of the month, W. */
export function loadOfMonth(loads: readonly EnergyLoad[], month: number): Float64Array {
  const hourlyW = new Float64Array(24);
  for (const load of loads) {
    if (load.hourlyW.length !== 24) {
      throw new RangeError(`A load must have 24 hourly values, not ${load.hourlyW.length}.`);
    }
    const factor = load.monthFactors ? ofMonth(twelve(load.monthFactors, 'The factors of a load'), month) : 1;
    notNegative(factor, 'The factor of a load');
    for (const [hour, powerW] of load.hourlyW.entries()) {
      hourlyW[hour] = at(hourlyW, hour) + factor * notNegative(powerW, 'The power of a load');
    }
  }
  return hourlyW;
}

/** The battery as warm as it is in a month. */
export function batteryOfMonth(battery: YearBattery, month: number): HourBattery {
  const oneWay = Math.sqrt(positive(share(battery.roundTripEfficiency, 'The efficiency'), 'The efficiency'));
  const cold = battery.capacityShares
    ? ofMonth(twelve(battery.capacityShares, 'The capacity shares'), month)
    : 1;
  const cellC = ofMonth(twelve(battery.cellC, 'The cell temperatures'), month);
  return soundBattery({
    windowWh: battery.windowWh * share(cold, 'A capacity share'),
    mostChargeW: battery.mostChargeW * chargeShare(cellC, battery.chargeSteps),
    mostDischargeW: battery.mostDischargeW,
    chargeEfficiency: oneWay,
    dischargeEfficiency: oneWay,
    selfDischargeAnHour: 1 - (1 - share(battery.selfDischargeAMonth, 'The self-discharge')) ** (1 / 720),
    ...(battery.peukert && { peukert: battery.peukert }),
  });
}

/**
 * Days from full, without any source, until a load is first not met: the battery is empty or too weak for it.
 *
 * Begins at an hour of the day; within the last hour it counts the part that was met. Infinity without a load, or if it would be
 * more than 1000 days.
 */
export function autonomyDays(
  hourlyW: Float64Array,
  battery: HourBattery,
  standingW: number,
  fromHour: number,
  /** Told of every hour that is met whole: what was stored at its beginning, and what was given. */
  onHour?: (beforeWh: number, givenWh: number, afterWh: number) => void,
): number {
  if (!hourlyW.some((powerW) => powerW > 0)) return Number.POSITIVE_INFINITY;
  let stateWh = battery.windowWh;
  for (let hour = 0; hour < longestHours; hour += 1) {
    const wantedWh = at(hourlyW, (fromHour + hour) % 24);
    const needWh = wantedWh + standingW;
    const after = batteryHour(stateWh, -needWh, battery);
    const missingWh = needWh - after.dischargedWh;
    if (wantedWh > 0 && missingWh > 1e-9 * needWh) return (hour + after.dischargedWh / needWh) / 24;
    onHour?.(stateWh, after.dischargedWh, after.stateWh);
    stateWh = after.stateWh;
  }
  return Number.POSITIVE_INFINITY;
}
