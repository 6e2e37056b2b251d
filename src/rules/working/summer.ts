import type { Build } from '../../build/build.ts';
import type { Heat } from '../../build/heat.ts';
import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { type SummerAir, summerAirOf } from '../../build/summer-air.ts';
import { type SummerHeat, summerHeatOf, type UnfannedAir, unfannedAirOf } from '../../build/summer-heat.ts';
import { airHeatJPerM3K } from '../../calc/heat/heat-loss.ts';
import { coolingAirM3PerS } from '../../calc/heat/summer.ts';
import {
  absorptances,
  roofSkyLossK,
  summerRiseK,
  summerSunWM2,
  usualColour,
} from '../../catalogue/heat/sun.ts';
import { outsideFilmM2KPerW } from '../../catalogue/heat/surface-films.ts';
import type { Part, Step } from '../../engine/finding.ts';
import {
  airFlow,
  airVolume,
  area,
  conductance,
  factor,
  kelvins,
  power,
  share,
  transmittance,
} from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { fansStep, openingsFlowStep } from './fans.ts';
import { awakeTransmissionStep, drawnStep } from './loss.ts';
import { ventsStep } from './vents.ts';

/*
 * How much air a hot afternoon takes, and how much comes: heat of the sun and of people, what leaves by itself at the allowed
 * rise, and the fans.
 */

export function summerSteps(
  build: Build,
  heat: Heat,
  demand: WorkedHeatDemand,
  outsideC: number,
): readonly Step[] {
  const hot = summerHeatOf(build, heat, demand, outsideC);
  const { sunW, people, peopleW } = hot;
  const { transmissionWPerK } = demand.awake;
  const unfanned = unfannedAirOf(build, heat, demand.volumeM3, outsideC);
  const air = summerAirOf(build);
  const fannedM3PerS = air?.freshM3S ?? 0;
  const needed = { gainsW: sunW + peopleW, transmissionWPerK, riseK: summerRiseK };
  return [
    paintStep('roof', summerSunWM2.roof, roofSkyLossK),
    paintStep(hot.side.surface, summerSunWM2.wall, 0),
    sunStep(hot, outsideC),
    ...(people > 0
      ? [
          {
            what: 'What people add',
            sum: say`${String(people)} · ${power(peopleW / people)}, of one who sits`,
            result: power(peopleW),
            paths: [['people', 'sleepers']],
          },
        ]
      : []),
    awakeTransmissionStep(demand),
    ...fanSteps(air),
    unfannedStep(build, unfanned, demand.volumeM3, outsideC),
    {
      what: 'The air that it takes to stay within the allowed rise: V = (G / ΔT − H) / 1200 J/(m³·K)',
      sum: say`((${power(sunW)} + ${power(peopleW)}) / ${kelvins(summerRiseK)} − ${conductance(transmissionWPerK)}) / ${String(airHeatJPerM3K)}, then times 3600 for an hour${sunW + peopleW < transmissionWPerK * summerRiseK ? '; none, where that is below 0' : ''}`,
      result: airFlow(coolingAirM3PerS(needed)),
    },
    {
      what: 'The air that comes: the larger of both, since fans draw in what would come by itself',
      sum: say`${airFlow(fannedM3PerS)} by the fans, ${airFlow(unfanned.airM3PerS)} without them`,
      result: airFlow(Math.max(unfanned.airM3PerS, fannedM3PerS)),
    },
  ];
}

const paintStep = (of: string, sunWM2: number, skyLossK: number): Step => ({
  what: `How much warmer than the air the sun makes ${usualColour} paint on the ${of}: α·I·R_se${skyLossK > 0 ? ' − ΔT_sky' : ''}`,
  sum: say`${share(absorptances[usualColour])} · ${power(sunWM2)} on each m² · ${String(outsideFilmM2KPerW)} m²K/W${skyLossK > 0 ? say` − ${kelvins(skyLossK)} to the clear sky` : ''}`,
  result: kelvins(absorptances[usualColour] * sunWM2 * outsideFilmM2KPerW - skyLossK),
});

/** Paint by what gets through the wall, panes by what they let through. */
function sunStep({ roof, side, sunW }: SummerHeat, outsideC: number): Step {
  const rows = [roof, side].flatMap(({ skins, panes }): readonly Part[] => [
    ...skins.map(({ name, path, areaM2, uValue, solAirC }) => ({
      name,
      path,
      origin: 'computed',
      values: [area(areaM2), transmittance(uValue), kelvins(solAirC - outsideC)],
      adds: power(areaM2 * uValue * (solAirC - outsideC)),
    })),
    ...panes.map(({ name, path, areaM2, solarShare, sunWM2 }) => ({
      name,
      path,
      origin: 'computed',
      values: [area(areaM2), share(solarShare), power(sunWM2)],
      adds: power(areaM2 * solarShare * sunWM2),
    })),
  ]);
  const what = `What the sun brings in through the roof and the ${side.surface}, which of all sides lets the most in: skins U·A·ΔT, panes g·A·I`;
  const sum = rows.reduce((total, { adds }) => total + adds.value, 0);
  if (sum < 0) return { what, sum: say`nothing: the sky takes more`, result: power(sunW) };
  return {
    what,
    result: power(sunW),
    parts: { columns: ['A', 'U or g', 'ΔT or I', 'adds'], rows },
  };
}

/** All that can be opened, and the fans against it. */
function fanSteps(air: SummerAir | undefined): readonly Step[] {
  if (!air || air.fans.length === 0) return [];
  return [
    ventsStep(
      'Open beside the fans: vents, and windows and hatches to get out through, wide open: A',
      air.openings,
    ),
    fansStep(air.fans, air),
    openingsFlowStep(air),
  ];
}

/** Leaks, or warmth through the fixed vents where that is more. */
function unfannedStep(
  build: Build,
  { leaksPerHour, leaksM3PerS, stackM3PerS }: UnfannedAir,
  volumeM3: number,
  outsideC: number,
): Step {
  if (stackM3PerS > leaksM3PerS)
    return drawnStep(
      build,
      outsideC + summerRiseK,
      outsideC,
      `without a fan, at a rise of ${summerRiseK} K`,
      [['living', 'summer_high']],
    ).step;
  return {
    what: 'What comes in without a fan, through leaks: n·V',
    sum: say`${factor(leaksPerHour)} times an hour · ${airVolume(volumeM3)}`,
    result: airFlow(leaksM3PerS),
    paths: [['heat', 'air_changes_per_hour']],
  };
}
