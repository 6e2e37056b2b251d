import { heatingEnergyJ, hotShare } from '../calc/water/heating.ts';
import { dailyWater } from '../calc/water/supply.ts';
import { emergencyNeeds, showerC } from '../catalogue/water/use.ts';
import { temperatureC, volume } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { Build } from './build.ts';
import { asLiquidC } from './liquid-water.ts';
import { wantedFlowOf } from './outlet-flow.ts';

/**
 * What all who sleep in the van use of water on a day, in SI. What the plan does not say enough for is undefined, and the
 * keys that would say it are among `missing`.
 */
export interface WaterUse {
  readonly missing: readonly string[];
  /** The part of `missing` that fresh and waste water lack. */
  readonly freshMissing: readonly string[];
  /** The part of `missing` that hot water lacks. */
  readonly hotMissing: readonly string[];
  readonly people?: number;
  /** Showers included. */
  readonly freshM3PerDay?: number;
  /** What of it runs down a drain into the waste tank. */
  readonly wasteM3PerDay?: number;
  /** All showers of a day, mixed. 0 where nobody showers. */
  readonly showersM3PerDay?: number;
  /** What leaves the heater, as hot as it stands in it; what is mixed with it is cold. 0 without a heater. */
  readonly hotM3PerDay?: number;
  /** Heat that goes into that water; what the heater, the store and the pipes lose comes on top. */
  readonly hotEnergyJPerDay?: number;
  /** At the most: as if all water were drawn at the slowest outlet. */
  readonly pumpSecondsPerDay?: number;
  /** What was taken though the plan does not say it. */
  readonly assumed: readonly Phrase[];
}

const litre = 1e-3;

/** What a person drinks and eats of the water and nothing drains, m³ a day: the least of the source, as the waste is a most. */
const eatenM3 = emergencyNeeds['drinking and food'].leastL * litre;

export function waterUseOf(build: Build): WaterUse {
  const { water, habits } = build;
  const { people } = habits;
  const showers = showersOf(build);
  const freshMissing = [
    ...(people === undefined ? ['people.sleepers'] : []),
    ...(habits.waterPerPersonDayM3 === undefined ? ['living.litres_per_person_day'] : []),
    ...showers.missing,
  ];
  const hot = hotOf(build, showers);
  const missing = [...new Set([...freshMissing, ...hot.missing])];
  const eaten = Math.min(eatenM3, habits.waterPerPersonDayM3 ?? 0);
  const used =
    people === undefined || habits.waterPerPersonDayM3 === undefined || showers.perPersonM3 === undefined
      ? undefined
      : dailyWater(people, [
          { m3PerPersonDay: eaten, drainedShare: 0 },
          { m3PerPersonDay: habits.waterPerPersonDayM3 - eaten, drainedShare: 1 },
          { m3PerPersonDay: showers.perPersonM3, drainedShare: 1 },
        ]);
  const outlets = water?.outlets ?? [];
  const nothingDrains = outlets.length > 0 && outlets.every(({ drains }) => !drains);
  const slowest = Math.min(
    ...outlets.map((outlet) => wantedFlowOf(outlet)?.flowM3PerS ?? Number.POSITIVE_INFINITY),
    water?.pump?.openFlowM3PerS ?? Number.POSITIVE_INFINITY,
  );
  return {
    missing,
    freshMissing,
    hotMissing: hot.missing,
    ...(people !== undefined && { people }),
    ...(used && {
      freshM3PerDay: used.freshM3,
      wasteM3PerDay: nothingDrains ? 0 : used.wasteM3,
      ...(water?.pump && Number.isFinite(slowest) && { pumpSecondsPerDay: used.freshM3 / slowest }),
    }),
    ...(people !== undefined &&
      showers.perPersonM3 !== undefined && { showersM3PerDay: people * showers.perPersonM3 }),
    ...(people !== undefined &&
      hot.perPerson && {
        hotM3PerDay: people * hot.perPerson.hotM3,
        hotEnergyJPerDay: people * hot.perPerson.energyJ,
      }),
    assumed: [
      ...(used && !nothingDrains
        ? [say`${volume(eatenM3)} a person and day are drunk or eaten and drain nowhere.`]
        : []),
      ...(hot.perPerson && (showers.perPersonM3 ?? 0) > 0
        ? [say`A shower is taken at ${temperatureC(showerC.value)}.`]
        : []),
    ],
  };
}

interface Showers {
  /** Mixed. */
  readonly perPersonM3?: number;
  readonly missing: readonly string[];
}

function showersOf({ water, habits: { showersPerPersonDay, showerM3 } }: Build): Showers {
  const hasShower = water?.outlets.some(({ use }) => use === 'shower') ?? false;
  if (showersPerPersonDay === 0 || (showersPerPersonDay === undefined && !hasShower))
    return { perPersonM3: 0, missing: [] };
  if (showersPerPersonDay !== undefined && showerM3 !== undefined)
    return { perPersonM3: showersPerPersonDay * showerM3, missing: [] };
  return {
    missing: [
      ...(showersPerPersonDay === undefined ? ['living.showers_per_person_day'] : []),
      ...(showerM3 === undefined ? ['living.litres_per_shower'] : []),
    ],
  };
}

/** How hot the water leaves its heater: an instant one that the plan says nothing of makes it as warm as a shower. */
export function hotWaterC({ water }: Build): number | undefined {
  const heater = water?.heater;
  const stated = heater?.temperatureC ?? (heater?.kind === 'instant' ? showerC.value : undefined);
  return stated === undefined ? undefined : asLiquidC(stated);
}

/** What a shower can be mixed to with such water, °C: no colder than the cold, no hotter than the hot. */
export const showerMixC = (hotC: number, coldC: number): number =>
  Math.min(Math.max(showerC.value, coldC), hotC);

interface HotUse {
  readonly perPerson?: { readonly hotM3: number; readonly energyJ: number };
  readonly missing: readonly string[];
}

function hotOf(build: Build, showers: Showers): HotUse {
  const { water, habits } = build;
  if (!water?.heater) return { perPerson: { hotM3: 0, energyJ: 0 }, missing: [] };
  const hotC = hotWaterC(build);
  const coldC = asLiquidC(water.coldC);
  const washM3 = habits.hotPerPersonDayM3;
  const missing = [
    ...(habits.people === undefined ? ['people.sleepers'] : []),
    ...(hotC === undefined ? ['water.heater.temperature'] : []),
    ...(washM3 === undefined ? ['living.hot_litres_per_person_day'] : []),
    ...showers.missing,
  ];
  if (hotC === undefined || washM3 === undefined || showers.perPersonM3 === undefined) return { missing };
  // Water that comes as warm as it is wanted is heated no more; a store too cool for a shower is drawn unmixed.
  if (hotC <= coldC) return { perPerson: { hotM3: washM3 + showers.perPersonM3, energyJ: 0 }, missing };
  const hotM3 = washM3 + showers.perPersonM3 * hotShare(hotC, coldC, showerMixC(hotC, coldC));
  return {
    perPerson: { hotM3, energyJ: heatingEnergyJ({ volumeM3: hotM3, fromC: coldC, toC: hotC }) },
    missing,
  };
}
