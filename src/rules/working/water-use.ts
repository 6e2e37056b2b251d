import type { Habits } from '../../build/habits.ts';
import { asLiquidC } from '../../build/liquid-water.ts';
import type { Water, WaterTank } from '../../build/water.ts';
import { showerMixC, type WaterUse } from '../../build/water-use.ts';
import { hotShare } from '../../calc/water/heating.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { closeC, count, factor, share, volume } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { usableOf } from '../watered.ts';

/*
 * What all use of water on a day, and what tanks hold for it or take of it.
 */

const living = (key: string): PlanPath => ['living', key];
const sleepers: PlanPath = ['people', 'sleepers'];
const showerPaths = [living('showers_per_person_day'), living('litres_per_shower')];

export const hasShowers = ({ showersPerPersonDay }: Habits): boolean => (showersPerPersonDay ?? 0) > 0;

/** " + 0.50 showers · 8.0 L"; nothing where nobody showers. */
const showersText = (habits: Habits): Phrase =>
  hasShowers(habits)
    ? say` + ${factor(habits.showersPerPersonDay ?? 0)} showers · ${volume(habits.showerM3 ?? 0)}`
    : [];

/** One number needs no brackets. */
const inBrackets = (sum: Phrase): Phrase => (sum.length > 1 ? say`(${sum})` : sum);

/** What all use on a day. */
export function freshUseStep({ people = 0, freshM3PerDay = 0 }: WaterUse, habits: Habits): Step {
  return {
    what: 'What all use on a day: V_day',
    sum: say`${count(people)} · ${inBrackets(say`${volume(habits.waterPerPersonDayM3 ?? 0)}${showersText(habits)}`)}`,
    result: volume(freshM3PerDay),
    paths: [sleepers, living('litres_per_person_day'), ...(hasShowers(habits) ? showerPaths : [])],
  };
}

/** What of it runs down the drains: not what is drunk and eaten. */
export function wasteUseStep(use: WaterUse, habits: Habits, drains: boolean): Step {
  const { people = 0, freshM3PerDay = 0, wasteM3PerDay = 0 } = use;
  const what = 'What runs down the drains on a day: V_waste';
  if (!drains)
    return { what, sum: say`nothing: no outlet lets its water down a drain`, result: volume(wasteM3PerDay) };
  const eatenM3 = people > 0 ? (freshM3PerDay - wasteM3PerDay) / people : 0;
  return {
    what,
    sum: say`${count(people)} · (${volume(habits.waterPerPersonDayM3 ?? 0)} − ${volume(eatenM3)} drunk and eaten${showersText(habits)})`,
    result: volume(wasteM3PerDay),
    paths: [sleepers, living('litres_per_person_day'), ...(hasShowers(habits) ? showerPaths : [])],
  };
}

/** What tanks hold of which something can be had, each with its usable part. */
export function tanksStep(what: string, tanks: readonly WaterTank[]): Step {
  return {
    what,
    result: volume(usableOf(tanks)),
    parts: {
      columns: ['holds', 'usable', 'makes'],
      rows: tanks.map(({ name, path, holdsM3, usableShare, usableGiven }) => ({
        name,
        path,
        origin: usableGiven ? 'typed' : 'assumed',
        values: [volume(holdsM3), share(usableShare)],
        adds: volume(holdsM3 * usableShare),
      })),
    },
    paths: tanks.map(({ path }) => path),
  };
}

/** What leaves the heater on a day, as hot as it stands in it; before it, how much of a shower comes from there. */
export function hotUseSteps(use: WaterUse, habits: Habits, water: Water, hotC: number): readonly Step[] {
  const { people = 0, hotM3PerDay = 0 } = use;
  const coldC = asLiquidC(water.coldC);
  const isMixed = hasShowers(habits) && hotC > coldC;
  const mixedC = showerMixC(hotC, coldC);
  const part = isMixed ? hotShare(hotC, coldC, mixedC) : 1;
  const mix = hotPartStep({ hotC, coldC, mixedC }, water);
  return [
    ...(isMixed ? [mix] : []),
    {
      what: 'Hot water of all on a day, as hot as it leaves the heater',
      sum: say`${count(people)} · ${inBrackets(say`${volume(habits.hotPerPersonDayM3 ?? 0)}${showersText(habits)}${isMixed ? say` · ${share(part)}` : []}`)}`,
      result: volume(hotM3PerDay),
      paths: [sleepers, living('hot_litres_per_person_day'), ...(hasShowers(habits) ? showerPaths : [])],
    },
  ];
}

/** How much of mixed water is hot. */
export function hotPartStep(
  { hotC, coldC, mixedC }: { readonly hotC: number; readonly coldC: number; readonly mixedC: number },
  water: Water,
): Step {
  return {
    what: 'How much of mixed water is hot: (T_m − T_c) / (T_h − T_c)',
    sum: say`(${closeC(mixedC)} − ${closeC(coldC)}) / (${closeC(hotC)} − ${closeC(coldC)})`,
    result: share(hotShare(hotC, coldC, mixedC)),
    paths: temperaturePaths(water),
  };
}

/** The keys that say how cold and how hot the water is. */
export const temperaturePaths = ({ path, heater }: Water): readonly PlanPath[] => [
  [...path, 'cold'],
  ...(heater ? [[...heater.path, 'temperature']] : []),
];
