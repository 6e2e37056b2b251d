import type { WorkedYear } from '../build/energy.ts';
import { isClosed } from '../build/energy-months.ts';
import { plainArray } from '../build/energy-sources.ts';
import type { EnergyYearInput } from '../calc/energy/year.ts';

/*
 * What would close a month: the least of one kind of change that leaves nothing unmet in it and lets the battery recover,
 * found by working the year out again with it.
 */

/** The least of each change that closes a month; undefined where even the most that is tried does not. */
export interface ClosingChanges {
  /** Of all loads alike. */
  readonly lessLoad?: { readonly share: number; readonly wattHoursADay: number };
  readonly moreArrayW?: number;
  readonly moreBatteryAh?: number;
}

const loadStep = 0.01;
/** To use nothing at all is no way to close a month. */
const mostLoadSteps = 99;
const arrayStepW = 10;
const batteryStepAh = 10;
/** Beyond these no van goes: own choice. */
const mostArrayW = 3000;
const mostBatteryAh = 2000;

/** The year with all loads less by a part of them. */
export const withLessLoad = (input: EnergyYearInput, part: number): EnergyYearInput => ({
  ...input,
  loads: input.loads.map((load) => ({ ...load, hourlyW: load.hourlyW.map((each) => each * (1 - part)) })),
});

/** The year with more of the array that there is, under a controller that grows with it; without one, with a flat one. */
export function withMoreArray(input: EnergyYearInput, addedW: number): EnergyYearInput {
  const peakW = input.arrays.reduce((sum, array) => sum + array.peakW, 0);
  if (peakW === 0) return { ...input, arrays: [plainArray(addedW)] };
  const factor = (peakW + addedW) / peakW;
  return {
    ...input,
    arrays: input.arrays.map(({ controllerMostW, ...array }) => ({
      ...array,
      peakW: factor * array.peakW,
      ...(controllerMostW !== undefined && { controllerMostW: factor * controllerMostW }),
    })),
  };
}

/** The year with more batteries like those that there are. */
export function withBattery(input: EnergyYearInput, factor: number): EnergyYearInput {
  const { battery } = input;
  const { peukert } = battery;
  return {
    ...input,
    battery: {
      ...battery,
      windowWh: factor * battery.windowWh,
      mostChargeW: factor * battery.mostChargeW,
      mostDischargeW: Math.min(Number.MAX_VALUE, factor * battery.mostDischargeW),
      ...(peukert && { peukert: { ...peukert, ratedPowerW: factor * peukert.ratedPowerW } }),
    },
  };
}

const known = new WeakMap<WorkedYear, Map<number, ClosingChanges>>();

/** The changes that close a month; worked out once for a plan and a month, since each takes a dozen years. */
export function closingChanges(worked: WorkedYear, month: number): ClosingChanges {
  const ofPlan = known.get(worked) ?? new Map<number, ClosingChanges>();
  known.set(worked, ofPlan);
  const before = ofPlan.get(month);
  if (before) return before;
  const changes = findChanges(worked, month);
  ofPlan.set(month, changes);
  return changes;
}

function findChanges({ input, rerun, bank, year }: WorkedYear, month: number): ClosingChanges {
  const closes = (changed: EnergyYearInput): boolean => {
    const found = rerun(changed).months[month];
    return found !== undefined && isClosed(found);
  };
  const loadSteps = least(mostLoadSteps, (steps) => closes(withLessLoad(input, steps * loadStep)));
  const arraySteps = least(mostArrayW / arrayStepW, (steps) =>
    closes(withMoreArray(input, steps * arrayStepW)),
  );
  const batterySteps = least(mostBatteryAh / batteryStepAh, (steps) =>
    closes(withBattery(input, 1 + (steps * batteryStepAh) / bank.capacityAh)),
  );
  const { wantedWh = 0, days = 1 } = year.months[month] ?? {};
  return {
    ...(loadSteps !== undefined && {
      lessLoad: { share: loadSteps * loadStep, wattHoursADay: (loadSteps * loadStep * wantedWh) / days },
    }),
    ...(arraySteps !== undefined && { moreArrayW: arraySteps * arrayStepW }),
    ...(batterySteps !== undefined && { moreBatteryAh: batterySteps * batteryStepAh }),
  };
}

/** The least whole number from 1 to `most` that does; what more does must not undo it. */
export function least(most: number, does: (steps: number) => boolean): number | undefined {
  if (!does(most)) return undefined;
  let [tooLittle, enough] = [0, most];
  while (enough - tooLittle > 1) {
    const middle = Math.floor((tooLittle + enough) / 2);
    if (does(middle)) enough = middle;
    else tooLittle = middle;
  }
  return enough;
}
