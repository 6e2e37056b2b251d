import type { NightAir } from '../build/night-air.ts';
import { stackDischarge } from '../calc/air/stack.ts';
import type { Part, Step } from '../engine/finding.ts';
import {
  airFlow,
  concentration,
  count,
  duration,
  factor,
  freeArea,
  kelvins,
  length,
  share,
  temperatureC,
  volume,
} from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { ventsStep } from './vents-working.ts';

/*
 * How the air of a still night comes about: through the vents, by breath, and what carbon dioxide makes of both.
 */

const secondsAnHour = 3600;

export function nightSteps(night: NightAir): readonly Step[] {
  const { vents, people, worst, carbonDioxide: breath } = night;
  const perHourM3 = breath.generationM3PerS * secondsAnHour;
  const endsLower = breath.endPpm < breath.startPpm;
  return [
    ventsStep('Free area of the fixed vents low down', vents.low),
    ventsStep('Free area of the fixed vents high up', vents.high),
    stackStep(night),
    ...leaksSteps(night),
    {
      what: `What those asleep breathe out in an hour, as carbon dioxide at ${Math.round(worst.insideC)} °C`,
      sum: say`${count(people)} · ${volume(perHourM3 / people)}`,
      result: volume(perHourM3),
      paths: [['people', 'sleepers']],
    },
    contentStep(night),
    ...(endsLower
      ? [
          {
            what: 'The greatest of the night: as they lie down, since it falls from there',
            result: concentration(ppm(breath.startPpm)),
          },
        ]
      : []),
  ];
}

const ppm = (value: number): number => value * 1e-6;

function stackStep({ vents, worst }: NightAir): Step {
  const { lowM2, highM2, heightM } = vents;
  const { when, insideC, outsideC, stackM3PerS } = worst;
  const what = 'What warmth draws through them: Q = C_d·A_in·√(2·g·h·ΔT/T)';
  const result = airFlow(stackM3PerS);
  if (lowM2 === 0 || highM2 === 0)
    return { what, sum: say`nothing, without fixed vents both high and low`, result };
  // In a room that is colder than outside air comes in above.
  const isWarm = insideC >= outsideC;
  const [inM2, outM2] = isWarm ? [lowM2, highM2] : [highM2, lowM2];
  const neutralM = heightM / (1 + ((inM2 / outM2) ** 2 * (insideC + 273.15)) / (outsideC + 273.15));
  return {
    what,
    sum: say`${String(stackDischarge)} · ${freeArea(inM2)} · √(2 · 9.81 m/s² · ${length(neutralM)} · ${kelvins(Math.abs(insideC - outsideC))} / T), T of the warmer side in kelvins, ${temperatureC(insideC)} inside and ${temperatureC(outsideC)} outside in the ${when} night, which changes least air; h = H / (1 + (A_in/A_out)²·T_i/T_e), H = ${length(heightM)} between them`,
    result,
    paths: [['heat', 'asleep'], ...(when === 'winter' ? [['living', 'winter_low']] : [])],
  };
}

function leaksSteps({ leaksM3PerS, airM3, worst }: NightAir): readonly Step[] {
  if (leaksM3PerS === undefined) return [];
  const counted =
    leaksM3PerS > worst.stackM3PerS ? 'more than the vents give, so it counts' : 'the vents give more';
  return [
    {
      what: 'What comes through leaks: n·V',
      sum: say`${factor((leaksM3PerS / airM3) * secondsAnHour)} times an hour · ${volume(airM3)}; ${counted}`,
      result: airFlow(leaksM3PerS),
      paths: [['heat', 'air_changes_per_hour']],
    },
  ];
}

/** Outside air, what is left of the beginning, and what was breathed out since: three parts of one sum. */
function contentStep({ carbonDioxide: breath, airM3, worst }: NightAir): Step {
  const { outsidePpm, startPpm, generationM3PerS, asleepS } = breath;
  const changes = (worst.flowM3PerS * asleepS) / airM3;
  const kept = Math.exp(-changes);
  const breathed =
    changes === 0
      ? (generationM3PerS * asleepS) / airM3
      : (generationM3PerS / worst.flowM3PerS) * -Math.expm1(-changes);
  const row = (name: string, content: number): Part => ({
    name,
    path: [],
    origin: 'computed',
    values: [],
    adds: concentration(content),
  });
  const rows = [
    row('outside air, C_e', ppm(outsidePpm)),
    row('left of the start, (C_0 − C_e)·e^(−x)', ppm(startPpm - outsidePpm) * kept),
    row('breathed out, G/Q·(1 − e^(−x))', breathed),
  ];
  const start: Phrase = say`C_0 = ${concentration(ppm(startPpm))} as they lie down`;
  return {
    what: `Carbon dioxide at the end of the night`,
    sum: say`x = Q·t/V = ${airFlow(worst.flowM3PerS)} · ${duration(asleepS)} / ${volume(airM3)} = ${factor(changes)}, e^(−x) = ${share(kept)}; ${start}`,
    result: concentration(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
    parts: { columns: ['adds'], rows },
    paths: [['living', 'asleep']],
  };
}
