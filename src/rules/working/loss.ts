import type { Build } from '../../build/build.ts';
import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { fixedOpeningsOf, stackM3S } from '../../build/night-air.ts';
import { stackDischarge } from '../../calc/air/stack.ts';
import { usualAirChangesPerHour } from '../../catalogue/heat/heating.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import {
  airFlow,
  airVolume,
  area,
  closeC,
  conductance,
  factor,
  freeArea,
  kelvins,
  length,
  type Measure,
  power,
  transmittance,
} from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { bracketedC } from '../bracketed.ts';
import { absolute } from './still-air.ts';

/*
 * What the living space loses: part by part, with the air, and over the difference between inside and outside.
 */

/** Every part that heat leaves through, while people are awake. */
export const awakeTransmissionStep = ({ parts, awake }: WorkedHeatDemand): Step => ({
  what: 'What leaves through walls, panes and the way to the cab for each kelvin: Σ U·A',
  result: conductance(awake.transmissionWPerK),
  parts: {
    columns: ['A', 'U', 'U·A'],
    rows: parts.map(({ name, path, areaM2, uValue }) => ({
      name,
      path,
      origin: 'computed',
      values: [area(areaM2), transmittance(uValue)],
      adds: conductance(uValue * areaM2),
    })),
  },
});

/** With the changes of air by the leaks, or by what warmth draws through the vents where that is more. */
function airLossSteps(
  { airChangesPerHour, volumeM3, awake }: WorkedHeatDemand,
  build: Build,
): readonly Step[] {
  const { heat, habits } = build;
  const leaksPerHour = heat?.airChangesPerHour ?? usualAirChangesPerHour;
  const byVents = airChangesPerHour > leaksPerHour && heat && habits.winterLowC !== undefined;
  const lost: Step = {
    what: 'What leaves with the air for each kelvin: n·V·1200 J/(m³·K) / 3600 s',
    sum: say`${factor(airChangesPerHour)} times an hour · ${airVolume(volumeM3)} · 1200 / 3600`,
    result: conductance(awake.ventilationWPerK),
    paths: [...(byVents ? [] : [['heat', 'air_changes_per_hour']]), ...roomPaths],
  };
  if (!byVents) return [lost];
  const drawn = drawnStep(build, heat.insideC, habits.winterLowC ?? 0);
  return [
    drawn.step,
    {
      what: 'Changes of air in an hour: n = Q / V',
      sum: say`${airFlow(drawn.flowM3PerS)} / ${airVolume(volumeM3)}; more than the ${factor(leaksPerHour)} of the leaks, so it counts alone`,
      result: factor(airChangesPerHour),
      paths: [['heat', 'air_changes_per_hour']],
    },
    lost,
  ];
}

const roomPaths: readonly PlanPath[] = ['length', 'width', 'height'].map((side) => ['van', 'load_bay', side]);

/** What warmth draws through the fixed vents, in one sum. */
export function drawnStep(
  build: Build,
  insideC: number,
  outsideC: number,
  when = 'at the winter low',
  paths = insideAndOutside('inside'),
): { readonly step: Step; readonly flowM3PerS: number } {
  const vents = fixedOpeningsOf(build);
  const { low, high, lowM2, highM2, heightM } = vents;
  const flowM3PerS = stackM3S(vents, insideC, outsideC);
  return {
    flowM3PerS,
    step: {
      what: `What warmth draws through the fixed vents ${when}: Q = ${stackDischarge}·A_low·√(2·g·h·ΔT/T_i), h = H / (1 + (A_low/A_high)²·T_i/T_e)`,
      sum: say`${String(stackDischarge)} · ${freeArea(lowM2)} · √(2 · 9.81 m/s² · ${length(heightM)} / (1 + (${freeArea(lowM2)} / ${freeArea(highM2)})² · ${absolute(insideC)} / ${absolute(outsideC)}) · ${kelvins(insideC - outsideC)} / ${absolute(insideC)}), in m and m², then times 3600 for an hour`,
      result: airFlow(flowM3PerS),
      paths: [...[...low, ...high].map(({ path }) => path), ...paths],
    },
  };
}

/** Parts, air, and both together. */
export const lossPerKelvinSteps = (demand: WorkedHeatDemand, build: Build): readonly Step[] => [
  awakeTransmissionStep(demand),
  ...airLossSteps(demand, build),
  {
    what: 'What is lost for each kelvin in all: H',
    sum: say`${conductance(demand.awake.transmissionWPerK)} + ${conductance(demand.awake.ventilationWPerK)}`,
    result: conductance(demand.awake.totalWPerK),
  },
];

interface Difference {
  readonly lossWPerK: Measure;
  readonly insideC: number;
  readonly outsideC: number;
}

export const lossAtStep = (what: string, { lossWPerK, insideC, outsideC }: Difference): Step => ({
  what,
  sum: say`${lossWPerK} · (${closeC(insideC)} − ${bracketedC(outsideC)})`,
  result: power(lossWPerK.value * (insideC - outsideC)),
  paths: insideAndOutside('inside'),
});

/** Where the temperature of the room and of the coldest weather are written. */
export const insideAndOutside = (which: 'inside' | 'asleep'): readonly PlanPath[] => [
  ['heat', which],
  ['living', 'winter_low'],
];
