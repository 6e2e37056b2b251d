import { notNegative, positive } from '../argument.ts';
import { share, within } from './angle.ts';

/** Peukert's law for a lead battery. */
export interface Peukert {
  /** 1 to 2. */
  readonly exponent: number;
  /** Power at which the battery gives its rated capacity: rated Wh over the hours of the rating (20 h unless known). */
  readonly ratedPowerW: number;
}

/** A battery in one hour, seen from the busbar. */
export interface HourBattery {
  /** Usable energy between full and the lowest allowed state, Wh. */
  readonly windowWh: number;
  readonly mostChargeW: number;
  readonly mostDischargeW: number;
  /** Share of the energy from the busbar that is stored. */
  readonly chargeEfficiency: number;
  /** Share of the energy drawn from the store that reaches the busbar. */
  readonly dischargeEfficiency: number;
  /** Share of what is stored that is gone after an hour. */
  readonly selfDischargeAnHour: number;
  readonly peukert?: Peukert;
}

/** What the battery did in an hour, Wh at the busbar except where said. */
export interface BatteryHour {
  readonly chargedWh: number;
  readonly dischargedWh: number;
  /** Lost within the battery: charging, discharging, by itself. */
  readonly lostWh: number;
  /** Usable energy stored at the end of the hour, Wh. */
  readonly stateWh: number;
}

/** `battery`, if its values make sense. Throws RangeError otherwise. */
export function soundBattery(battery: HourBattery): HourBattery {
  notNegative(battery.windowWh, 'The usable energy');
  notNegative(battery.mostChargeW, 'The greatest charging power');
  notNegative(battery.mostDischargeW, 'The greatest discharging power');
  positive(share(battery.chargeEfficiency, 'The charging efficiency'), 'The charging efficiency');
  positive(share(battery.dischargeEfficiency, 'The discharging efficiency'), 'The discharging efficiency');
  share(battery.selfDischargeAnHour, 'The self-discharge');
  if (battery.peukert) {
    within(battery.peukert.exponent, 1, 2, "Peukert's exponent");
    positive(battery.peukert.ratedPowerW, 'The power of the rating');
  }
  return battery;
}

/** What leaves the store for an energy at the busbar. Peukert: more above the rated power, never less below it. */
function drawnWh(atBusbarWh: number, { dischargeEfficiency, peukert }: HourBattery): number {
  const drawn = atBusbarWh / dischargeEfficiency;
  if (!peukert || atBusbarWh <= peukert.ratedPowerW) return drawn;
  return drawn * (atBusbarWh / peukert.ratedPowerW) ** (peukert.exponent - 1);
}

/** The most that a store can give in an hour: the inverse of `drawnWh`. */
function deliverableWh(stateWh: number, { dischargeEfficiency, peukert }: HourBattery): number {
  const plain = stateWh * dischargeEfficiency;
  if (!peukert || plain <= peukert.ratedPowerW) return plain;
  const { exponent, ratedPowerW } = peukert;
  return (plain * ratedPowerW ** (exponent - 1)) ** (1 / exponent);
}

/**
 * One hour of a battery.
 *
 * `stateWh`: usable energy stored at its beginning (0 to the window); `balanceWh`: what the sources have beyond the need of
 * the hour, or, below 0, what the need lacks. Self-discharge comes first. Charging stops at the limit of the charger and at
 * full; discharging at the limit and at the lowest state. With P the power at the busbar and P_r the rated one, the store
 * loses P/η · max(1, (P/P_r)^(n−1)) in the hour (Peukert in terms of energy; n: exponent).
 *
 * The values of `battery` must be sound (`soundBattery`). No range is checked here: it runs 8760 times a year.
 */
export function batteryHour(stateWh: number, balanceWh: number, battery: HourBattery): BatteryHour {
  const leakedWh = stateWh * battery.selfDischargeAnHour;
  const startWh = stateWh - leakedWh;
  if (balanceWh >= 0) {
    const roomWh = Math.max(0, battery.windowWh - startWh) / battery.chargeEfficiency;
    const chargedWh = Math.min(balanceWh, battery.mostChargeW, roomWh);
    const storedWh = chargedWh * battery.chargeEfficiency;
    return {
      chargedWh,
      dischargedWh: 0,
      lostWh: leakedWh + (chargedWh - storedWh),
      stateWh: startWh + storedWh,
    };
  }
  const dischargedWh = Math.min(-balanceWh, battery.mostDischargeW, deliverableWh(startWh, battery));
  const drawn = Math.min(startWh, drawnWh(dischargedWh, battery));
  return {
    chargedWh: 0,
    dischargedWh,
    lostWh: leakedWh + (drawn - dischargedWh),
    stateWh: startWh - drawn,
  };
}
