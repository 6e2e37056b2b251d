import { duration, temperatureC } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import { hoursOf } from '../plan/times-of-day.ts';
import type { Build } from './build.ts';
import { celsius } from './celsius.ts';
import { heatDemandOf } from './heat-demand.ts';
import { outsideYearOf } from './outside-year.ts';
import { waterUseOf } from './water-use.ts';

/** How long something runs on a day of each month, where the water or the warmth of the plan says it. */
export interface HoursFromUse {
  /** Twelve; undefined where the plan lacks `missing`. */
  readonly hours?: readonly number[];
  readonly missing: readonly string[];
  readonly text: Phrase;
}

const secondsAnHour = 3600;
const months = 12;

/** What a refrigerator keeps, °C: common practice, no source. */
const keptC = 5;
/** Of a living space that is heated, where the plan says nothing of its heat: common practice, no source. */
const usualInsideC = 20;

/**
 * By the name of the circuit: a pump runs for the litres that are drawn, a heater's fan for the heat that is
 * wanted, and what keeps things cold runs the longer the warmer it is inside.
 */
export function hoursFromUse(
  build: Build,
  electrical: Plan['electrical'],
): ReadonlyMap<string, HoursFromUse> {
  const found = new Map<string, HoursFromUse>();
  const pump = build.water?.pump?.circuit;
  if (pump !== undefined) {
    const { pumpSecondsPerDay, freshMissing } = waterUseOf(build);
    found.set(pump, {
      ...(pumpSecondsPerDay !== undefined && {
        hours: Array.from({ length: months }, () => pumpSecondsPerDay / secondsAnHour),
      }),
      missing: freshMissing,
      text: say`${pump}: runs ${duration(pumpSecondsPerDay ?? 0)} a day, for the water that is drawn`,
    });
  }
  const fan = build.heat?.heater?.circuit;
  if (fan !== undefined) {
    const { worked, missing } = heatDemandOf(build);
    const hours = worked?.months?.map(({ heaterHoursPerDay = 0 }) => heaterHoursPerDay);
    const outputKnown = build.heat?.heater?.outputW !== undefined;
    found.set(fan, {
      ...(hours && outputKnown && { hours }),
      missing: [...missing, ...(outputKnown ? [] : ['heat.heater.output'])],
      text: say`${fan}: runs ${duration(secondsAnHour * Math.min(...(hours ?? [0])))} to ${duration(secondsAnHour * Math.max(...(hours ?? [0])))} a day by month, for the heat that is wanted`,
    });
  }
  for (const [name, { hours, hours_at: hoursAt }] of Object.entries(electrical?.circuits ?? {}))
    if (hours && hoursAt) found.set(name, colder(build, name, hoursOf(hours).summer, celsius(hoursAt)));
  return found;
}

/** Heat comes in through its walls in proportion to how much warmer it is around it. */
function colder(build: Build, name: string, hours: number, atC: number): HoursFromUse {
  const year = outsideYearOf(build);
  if (!('airC' in year)) return { missing: year.missing, text: say`${name}` };
  const heatedC = build.heat?.insideC ?? usualInsideC;
  return {
    hours: year.airC.map((outsideC) =>
      Math.min(24, Math.max(0, (hours * (Math.max(heatedC, outsideC) - keptC)) / (atC - keptC))),
    ),
    missing: [],
    text: say`${name}: runs ${duration(hours * secondsAnHour)} a day at ${temperatureC(atC)}, and as much longer or shorter as it is warmer or colder inside (at least ${temperatureC(heatedC)})`,
  };
}
