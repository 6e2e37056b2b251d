import { generationAtRoomM3S, ppmAfter, secondsUntilPpm, steadyPpm } from '../calc/air/carbon-dioxide.ts';
import { type Damp, steadyDamp } from '../calc/air/moisture.ts';
import { parallelAreaM2, seriesAreaM2 } from '../calc/air/openings.ts';
import { flowOfAirChangesM3S } from '../calc/air/rates.ts';
import { dewPointC, saturationPressurePa } from '../calc/air/saturation.ts';
import { stackFlow } from '../calc/air/stack.ts';
import { activities, breathedOutAtZeroM3S } from '../catalogue/air/carbon-dioxide.ts';
import { airLimits } from '../catalogue/air/limits.ts';
import { moistureRows } from '../catalogue/air/moisture.ts';
import { stillNight } from '../catalogue/air/still-night.ts';
import type { Vent } from './air.ts';
import type { Build } from './build.ts';
import { flamesOf } from './flames.ts';

/*
 * The air of the living space while nothing but warmth moves it: what comes through the fixed vents on a still night, and
 * what carbon dioxide and humidity make of it. No wind, no fan. SI; temperatures in °C.
 */

/** Fixed vents of the living space: those that say `closes: false` and ventilate no thing of their own. */
export interface FixedOpenings {
  readonly low: readonly Vent[];
  readonly high: readonly Vent[];
  /** Fixed, but nobody can tell whether high or low. */
  readonly withoutLevel: readonly Vent[];
  /** Vents of the living space of which the plan does not say whether they can be shut: taken as shut. */
  readonly unsaid: readonly Vent[];
  /** They can be shut. */
  readonly closable: readonly Vent[];
  readonly lowM2: number;
  readonly highM2: number;
  /** What the low and the high ones, one behind the other, are worth. */
  readonly seriesM2: number;
  /** From the middle of the low to the middle of the high ones; 0 where one sort lacks. */
  readonly heightM: number;
  /** Keys without which neither the flow nor the heights are known. */
  readonly missing: readonly string[];
}

/** The room at one pair of temperatures. */
export interface StillAir {
  readonly when: 'winter' | 'mild';
  readonly insideC: number;
  readonly outsideC: number;
  /** Through the fixed vents. */
  readonly stackM3PerS: number;
  /** The larger of that and the leaks. */
  readonly flowM3PerS: number;
}

/** What the room's air holds of water, by people and by what they do. */
export interface Humid {
  readonly when: 'winter' | 'mild';
  readonly part: 'day' | 'night';
  readonly insideC: number;
  readonly outsideC: number;
  readonly flowM3PerS: number;
  readonly releaseKgPerS: number;
  /** Above 1: more than the air can hold; the rest settles. Infinite without any fresh air. */
  readonly unboundedHumidity: number;
  /** At most 1. */
  readonly relativeHumidity: number;
  /** At most the temperature inside. */
  readonly dewPointC: number;
}

export interface NightAir {
  readonly people: number;
  /** Of the room less its furniture, m³. */
  readonly airM3: number;
  readonly vents: FixedOpenings;
  /** By the changes of air that the plan gives under `heat`. */
  readonly leaksM3PerS?: number;
  /** Mild, and winter where the plan has a lowest temperature. */
  readonly nights: readonly StillAir[];
  /** The night that changes the least air. */
  readonly worst: StillAir;
  readonly flowM3PerS: number;
  readonly carbonDioxide: NightBreath;
  /** In the order of the day: of winter where the plan has its lowest temperature, else of a mild day. */
  readonly humid: readonly Humid[];
  /** What a day sets free, kg. */
  readonly waterKgPerDay: WaterOfDay;
  /** Of the part of the winter's day whose dew point is higher, for what gets wet. */
  readonly insideC: number;
  readonly insideRelativeHumidity: number;
  readonly dewPointC: number;
}

export interface NightBreath {
  readonly outsidePpm: number;
  readonly startPpm: number;
  /** Of all sleepers at the temperature of the room. */
  readonly generationM3PerS: number;
  readonly asleepS: number;
  readonly endPpm: number;
  readonly greatestPpm: number;
  readonly steadyPpm: number;
  /** From lying down; infinite where it never gets there. */
  readonly secondsUntil: (limitPpm: number) => number;
}

export interface WaterOfDay {
  readonly peopleKg: number;
  readonly cookingKg: number;
  /** From flames without a flue while they cook. */
  readonly flamesKg: number;
  readonly showersKg: number;
  readonly clothesKg: number;
  readonly totalKg: number;
  /** Cooking as a day's usual of people, since the plan gives no time for it. */
  readonly cookingAssumed: boolean;
}

export type NightAirOf =
  | ({ readonly missing: readonly [] } & NightAir)
  | { readonly missing: readonly [string, ...string[]] };

const known = new WeakMap<Build, NightAirOf>();

/**
 * Works the still night out. It needs the load bay, people who sleep and vents, each with a height; a vent that does not say
 * `closes: false` is taken as shut beside fixed ones, high and low. Where high or low fixed ones lack, it is asked for.
 */
export function nightAirOf(build: Build): NightAirOf {
  const before = known.get(build);
  if (before) return before;
  const found = workedOut(build);
  known.set(build, found);
  return found;
}

function workedOut(build: Build): NightAirOf {
  const { livingSpace, air, habits, heat } = build;
  const vents = fixedOpeningsOf(build);
  const [first, ...more] = [
    ...(livingSpace ? [] : ['van.load_bay']),
    ...((habits.people ?? 0) > 0 ? [] : ['people.sleepers']),
    ...(air && air.vents.length > 0 ? [] : ['air.vents']),
    ...vents.missing,
  ];
  const { people = 0 } = habits;
  if (first !== undefined || !livingSpace) return { missing: [first ?? 'van.load_bay', ...more] };
  const { airM3 } = livingSpace;
  const insideC = heat?.insideC ?? stillNight.usualInsideC;
  const asleepC = heat?.asleepC ?? Math.min(stillNight.usualAsleepC, insideC);
  const leaksM3PerS =
    heat?.airChangesPerHour === undefined ? undefined : flowOfAirChangesM3S(heat.airChangesPerHour, airM3);
  const still = (when: StillAir['when'], warmC: number, outsideC: number): StillAir =>
    stillAirOf({ vents, leaksM3PerS }, when, warmC, outsideC);
  const mildC = asleepC - stillNight.mildRiseK;
  const mild = still('mild', asleepC, mildC);
  const { winterLowC } = habits;
  const nights = winterLowC === undefined ? [mild] : [mild, still('winter', asleepC, winterLowC)];
  const worst = nights.reduce((least, night) => (night.flowM3PerS < least.flowM3PerS ? night : least));
  const day = winterLowC === undefined ? still('mild', insideC, mildC) : still('winter', insideC, winterLowC);
  const waterKgPerDay = waterOfDay(build, people);
  const asleepKgPerS = people * moistureRows['person-asleep'].value;
  const humid = [
    humidOf('day', day, waterKgPerDay.totalKg / secondsADay),
    humidOf('night', nights.at(-1) ?? mild, asleepKgPerS),
  ];
  const wettest = humid.reduce((most, each) => (each.dewPointC > most.dewPointC ? each : most));
  return {
    missing: [],
    people,
    airM3,
    vents,
    ...(leaksM3PerS !== undefined && { leaksM3PerS }),
    nights,
    worst,
    flowM3PerS: worst.flowM3PerS,
    carbonDioxide: breathOf(worst, people, airM3, habits.asleepS),
    humid,
    waterKgPerDay,
    insideC: wettest.insideC,
    insideRelativeHumidity: wettest.relativeHumidity,
    dewPointC: wettest.dewPointC,
  };
}

const secondsADay = 86_400;

/** Vents and leaks are partly the same openings, and leaks are guesses: the larger, not the sum. */
export function stillAirOf(
  { vents, leaksM3PerS }: { readonly vents: FixedOpenings; readonly leaksM3PerS?: number | undefined },
  when: StillAir['when'],
  insideC: number,
  outsideC: number,
): StillAir {
  const stackM3PerS = stackM3S(vents, insideC, outsideC);
  return { when, insideC, outsideC, stackM3PerS, flowM3PerS: Math.max(stackM3PerS, leaksM3PerS ?? 0) };
}

// --- Openings ---

/** The fixed vents of the living space, in the order of the plan. */
export function fixedOpeningsOf({ air, vehicle }: Build): FixedOpenings {
  const room = (air?.vents ?? []).filter(({ serves }) => serves === undefined);
  const fixed = room.filter(({ closes }) => closes === false);
  const of = (level: Vent['level']) => fixed.filter((vent) => vent.level === level);
  const [low, high] = [of('low'), of('high')];
  const areaM2 = (vents: readonly Vent[]) => parallelAreaM2(vents.map(({ freeAreaM2 }) => freeAreaM2));
  const heightOf = ventHeightM(vehicle.bay?.heightM);
  const both = low.length > 0 && high.length > 0;
  const nowhere = both ? [...low, ...high].filter((vent) => heightOf(vent) === undefined) : [];
  return {
    low,
    high,
    withoutLevel: fixed.filter(({ level }) => level === undefined),
    unsaid: room.filter(({ closes }) => closes === undefined),
    closable: room.filter(({ closes }) => closes === true),
    lowM2: areaM2(low),
    highM2: areaM2(high),
    seriesM2: seriesAreaM2([areaM2(low), areaM2(high)]),
    heightM: both ? Math.max(0, middleM(high, heightOf) - middleM(low, heightOf)) : 0,
    missing: [
      ...nowhere.map(({ name }) => `air.vents.${name}.at.above_floor`),
      // Where one sort lacks, what is not said decides.
      ...(both
        ? []
        : room.flatMap(({ name, closes, level }) => [
            ...(closes === undefined ? [`air.vents.${name}.closes`] : []),
            ...(closes !== true && level === undefined ? [`air.vents.${name}.level`] : []),
          ])),
    ],
  };
}

/**
 * How high a vent is above the floor. In the ceiling and in the floor its surface says it. In a wall the plan does, also
 * where it does not say how far along; a low one that has a place without a height is at the floor.
 */
export const ventHeightM =
  (ceilingM: number | undefined) =>
  ({ surface, aboveFloorM, place, level }: Vent): number | undefined => {
    if (surface === 'floor') return 0;
    if (surface === 'ceiling') return ceilingM;
    return aboveFloorM ?? (level === 'high' ? undefined : place?.zM);
  };

const middleM = (vents: readonly Vent[], heightOf: (vent: Vent) => number | undefined): number => {
  const areaM2 = vents.reduce((sum, vent) => sum + vent.freeAreaM2, 0);
  return vents.reduce((sum, vent) => sum + vent.freeAreaM2 * (heightOf(vent) ?? 0), 0) / areaM2;
};

/** What warmth drives through the fixed vents, m³/s: nothing where high or low ones lack. */
export const stackM3S = (
  { lowM2, highM2, heightM }: Pick<FixedOpenings, 'lowM2' | 'highM2' | 'heightM'>,
  insideC: number,
  outsideC: number,
): number =>
  lowM2 === 0 || highM2 === 0
    ? 0
    : stackFlow({ lowAreaM2: lowM2, highAreaM2: highM2, heightM, insideC, outsideC }).flowM3S;

// --- Carbon dioxide ---

function breathOf(
  { insideC, flowM3PerS }: StillAir,
  people: number,
  airM3: number,
  asleepS: number,
): NightBreath {
  const generationM3PerS =
    people * generationAtRoomM3S(breathedOutAtZeroM3S({ met: activities.asleep.met }), insideC);
  const outsidePpm = airLimits['carbon-dioxide-outside'].value;
  const room = {
    outsidePpm,
    generationM3S: generationM3PerS,
    flowM3S: flowM3PerS,
    volumeM3: airM3,
    startPpm: stillNight.startPpm,
  };
  const endPpm = ppmAfter(room, asleepS);
  return {
    outsidePpm,
    startPpm: room.startPpm,
    generationM3PerS,
    asleepS,
    endPpm,
    greatestPpm: Math.max(room.startPpm, endPpm),
    steadyPpm: steadyPpm(room),
    secondsUntil: (limitPpm) => secondsUntilPpm(room, limitPpm),
  };
}

// --- Water ---

/** A van is reckoned as lived in all day: in the worst weather nobody goes out. */
function waterOfDay({ habits, gas, heat }: Build, people: number): WaterOfDay {
  const { cookingS, asleepS } = habits;
  const asleepKg = moistureRows['person-asleep'].value * asleepS;
  const awakeKg = moistureRows['person-sitting'].value * (secondsADay - asleepS);
  const peopleKg = people * (asleepKg + awakeKg);
  const cookingKg =
    cookingS === undefined
      ? people * moistureRows['cooking-day'].value
      : moistureRows.cooking.value * cookingS;
  const flamesKg = flamesOf(gas, heat)
    .filter(({ use, flue }) => use === 'cooking' && flue !== 'room-sealed' && flue !== 'open-flued')
    .reduce(
      (sum, { gasKgPerS = 0, burns }) =>
        sum + gasKgPerS * (cookingS ?? 0) * moistureRows[waterOf[burns]].value,
      0,
    );
  const showersKg = people * (habits.showersPerPersonDay ?? 0) * moistureRows.shower.value;
  const clothesKg = habits.wetClothesKg ?? 0;
  return {
    peopleKg,
    cookingKg,
    flamesKg,
    showersKg,
    clothesKg,
    totalKg: peopleKg + cookingKg + flamesKg + showersKg + clothesKg,
    cookingAssumed: cookingS === undefined,
  };
}

const waterOf = { propane: 'propane-burnt', butane: 'butane-burnt', diesel: 'propane-burnt' } as const;

/** The steady state of a part of the day: what is set free against what the air carries out. */
export function humidOf(part: Humid['part'], air: StillAir, releaseKgPerS: number): Humid {
  const { when, insideC, outsideC, flowM3PerS } = air;
  const damp: Damp = steadyDamp({
    insideC,
    outsideC,
    outsideHumidity: stillNight.outsideHumidity,
    releaseKgS: releaseKgPerS,
    flowM3S: flowM3PerS,
  });
  const heldPa = Math.min(damp.vapourPressurePa, saturationPressurePa(insideC));
  return {
    when,
    part,
    insideC,
    outsideC,
    flowM3PerS,
    releaseKgPerS,
    unboundedHumidity: damp.relativeHumidity,
    relativeHumidity: Math.min(1, damp.relativeHumidity),
    dewPointC: Math.min(insideC, dewPointC(heldPa)),
  };
}
