import type { Build } from '../../build/build.ts';
import type { LosingPart, PartOfDay, WorkedHeatDemand } from '../../build/heat-demand.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { closeC, conductance, duration, type Measure, power } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { bracketedC } from '../bracketed.ts';
import { insideAndOutside, lossPerKelvinSteps } from './loss.ts';

/*
 * What a day of heating takes: the loss while people are awake and asleep, less their own warmth, and the mean of the day.
 */

export function meanDaySteps(build: Build, demand: WorkedHeatDemand, outsideC: number): readonly Step[] {
  const { habits } = build;
  const parts = demand.partsOfDay(outsideC);
  const [awake, asleep] = parts;
  const dayS = awake.durationS + asleep.durationS;
  const coversWPerK = demand.awake.totalWPerK - demand.asleep.totalWPerK;
  const gains = (each: number, words: string) =>
    (habits.people ?? 0) > 0 ? say`, less ${String(habits.people)} ${words} · ${power(each)}` : say``;
  const people = Math.max(1, habits.people ?? 0);
  const part = (
    what: string,
    { insideC, lossWPerK, gainW, netW }: PartOfDay,
    which: 'inside' | 'asleep',
  ): Step => ({
    what,
    sum: say`${conductance(lossWPerK)} · (${closeC(insideC)} − ${bracketedC(outsideC)})${gains(gainW / people, which === 'inside' ? 'sitting' : 'asleep')}${netW === 0 ? '; that is warm enough' : ''}`,
    result: power(netW),
    paths: [...insideAndOutside(which), ['people', 'sleepers']],
  });
  return [
    ...lossPerKelvinSteps(demand, build),
    part('What the heater gives while people are awake: H·(T_i − T_e), less their warmth', awake, 'inside'),
    ...(coversWPerK > 0 ? [coveredStep(demand)] : []),
    part('What it gives while they sleep', asleep, 'asleep'),
    {
      what: 'On the mean of the day: Q',
      sum: say`(${power(awake.netW)} · ${duration(awake.durationS)} + ${power(asleep.netW)} · ${duration(asleep.durationS)}) / ${duration(dayS)}`,
      result: power(demand.meanDayW(outsideC)),
      paths: [['living', 'asleep']],
    },
  ];
}

/** Covers over panes, on at night. */
function coveredStep({ parts, awake, asleep }: WorkedHeatDemand): Step {
  const covered = parts.filter(({ uValue, asleepUValue }) => asleepUValue < uValue);
  const saved = ({ uValue, asleepUValue, areaM2 }: LosingPart): Measure =>
    conductance((uValue - asleepUValue) * areaM2);
  return {
    what: 'What is lost for each kelvin while they sleep, with the covers over the panes',
    sum: say`${conductance(awake.totalWPerK)}${covered.flatMap((part) => say` − ${saved(part)} at the ${part.name}`)}`,
    result: conductance(asleep.totalWPerK),
    paths: covered.map(({ path }): PlanPath => path),
  };
}
