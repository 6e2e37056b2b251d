import type { Build } from '../../build/build.ts';
import { type Humid, type NightAir, stackM3S, type WaterOfDay } from '../../build/night-air.ts';
import { vapourGasConstant } from '../../calc/air/moist-air.ts';
import { vapourPressurePa } from '../../calc/air/moisture.ts';
import { saturationPressurePa } from '../../calc/air/saturation.ts';
import { moistureRows } from '../../catalogue/air/moisture.ts';
import { stillNight } from '../../catalogue/air/still-night.ts';
import type { Part, PlanPath, Step } from '../../engine/finding.ts';
import {
  airFlow,
  closeC,
  count,
  duration,
  type Measure,
  mass,
  massFlow,
  pressure,
  share,
} from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { absolute, freshAirSteps, temperaturePaths } from './still-air.ts';

/*
 * How the relative humidity of the room comes about: water set free, fresh air that carries it out, and what air as warm as
 * the room can hold.
 */

const secondsADay = 86_400;

/** One part of a day: water, fresh air, vapour outside, what the water adds, and all of it over what the air can hold. */
export function humiditySteps(still: NightAir, humid: Humid, build: Build): readonly Step[] {
  const { part, when, insideC, outsideC, flowM3PerS, releaseKgPerS } = humid;
  const outsidePa = vapourPressurePa(outsideC, stillNight.outsideHumidity);
  const addedPa =
    releaseKgPerS === 0 ? 0 : (releaseKgPerS * vapourGasConstant * (insideC + 273.15)) / flowM3PerS;
  const heldPa = saturationPressurePa(insideC);
  const night = when === 'mild' ? 'on the mildest still night with the heating on' : 'in the coldest weather';
  return [
    ...(part === 'day' ? dayWaterSteps(still, build) : [nightWaterStep(still, releaseKgPerS)]),
    ...freshAirSteps(still, {
      air: humid,
      stackM3PerS: stackM3S(still.vents, insideC, outsideC),
      when: part === 'day' ? 'over the day in the coldest weather' : night,
      paths: temperaturePaths(part, when),
    }),
    {
      what: 'Water vapour in the air outside, as a pressure: p_e = φ_e·p_s(T_e)',
      sum: say`${share(stillNight.outsideHumidity)} of ${pressure(saturationPressurePa(outsideC))}, which air at ${closeC(outsideC)} can hold`,
      result: pressure(outsidePa),
    },
    ...addedSteps(addedPa, humid),
    {
      what: 'Relative humidity inside: φ = (p_e + Δp) / p_s(T_i)',
      sum: lastSum(humid, outsidePa, addedPa, heldPa),
      result: share(humid.relativeHumidity),
    },
  ];
}

function addedSteps(addedPa: number, { insideC, flowM3PerS, releaseKgPerS }: Humid): readonly Step[] {
  const what = 'What the water adds to it: Δp = M·R_v·T_i/Q';
  if (!Number.isFinite(addedPa)) return [{ what, sum: say`without end, since no fresh air comes in` }];
  return [
    {
      what,
      sum: say`${massFlow(releaseKgPerS)} · ${vapourGasConstant.toFixed(1)} J/(kg·K) · ${absolute(insideC)} / ${airFlow(flowM3PerS)}, with kg for g the hours cancel and pascals come out, of which 100 are 1 mbar`,
      result: pressure(addedPa),
    },
  ];
}

function lastSum({ insideC, unboundedHumidity }: Humid, outsidePa: number, addedPa: number, heldPa: number) {
  if (!Number.isFinite(addedPa)) return say`full, and the rest settles as water`;
  const settles = unboundedHumidity > 1 ? say`; the rest settles as water` : say``;
  return say`(${pressure(outsidePa)} + ${pressure(addedPa)}) / ${pressure(heldPa)}, which air at ${closeC(insideC)} can hold${settles}`;
}

const nightWaterStep = ({ people }: NightAir, releaseKgPerS: number): Step => ({
  what: 'Water that those asleep breathe out: M',
  sum: say`${count(people)} · ${massFlow(moistureRows['person-asleep'].value)}`,
  result: massFlow(releaseKgPerS),
  paths: [['people', 'sleepers']],
});

function dayWaterSteps({ waterKgPerDay, people }: NightAir, build: Build): readonly Step[] {
  const { totalKg } = waterKgPerDay;
  return [
    {
      what: 'Water that a day sets free',
      result: mass(totalKg),
      parts: {
        columns: ['for', 'each', 'adds'],
        rows: waterRows(waterKgPerDay, people, build),
      },
    },
    {
      what: 'The same spread over the day: M',
      sum: say`${mass(totalKg)} / ${duration(secondsADay)}`,
      result: massFlow(totalKg / secondsADay),
    },
  ];
}

/** Each with how long, how often or how much, the row of the table for one of that, and what it comes to. */
function waterRows(water: WaterOfDay, people: number, { habits }: Build): readonly Part[] {
  const { asleepS, cookingS, showersPerPersonDay = 0 } = habits;
  const asleepKg = people * moistureRows['person-asleep'].value * asleepS;
  const row = (
    name: string,
    path: PlanPath,
    [amount, each]: readonly [Measure, Measure],
    kg: number,
  ): readonly Part[] =>
    kg === 0 ? [] : [{ name, path, origin: 'computed', values: [amount, each], adds: mass(kg) }];
  return [
    ...row(
      `${people} asleep`,
      ['living', 'asleep'],
      [duration(asleepS), massFlow(moistureRows['person-asleep'].value)],
      asleepKg,
    ),
    ...row(
      `${people} awake`,
      ['people', 'sleepers'],
      [duration(secondsADay - asleepS), massFlow(moistureRows['person-sitting'].value)],
      water.peopleKg - asleepKg,
    ),
    ...row(
      cookingS === undefined ? 'cooking, usual for each person' : 'cooking',
      ['living', 'cooking'],
      cookingS === undefined
        ? [count(people), mass(moistureRows['cooking-day'].value)]
        : [duration(cookingS), massFlow(moistureRows.cooking.value)],
      water.cookingKg,
    ),
    ...row(
      'the flame under it',
      ['gas', 'appliances'],
      [duration(cookingS ?? 0), massFlow(cookingS ? water.flamesKg / cookingS : 0)],
      water.flamesKg,
    ),
    ...row(
      'showers',
      ['living', 'showers_per_person_day'],
      [count(people * showersPerPersonDay), mass(moistureRows.shower.value)],
      water.showersKg,
    ),
    ...row('wet clothes', ['living', 'wet_clothes'], [count(1), mass(water.clothesKg)], water.clothesKg),
  ];
}
