import type { Part, Step } from '../../engine/finding.ts';
import { airFlow, airVolume, concentration, duration, factor, share, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';

/*
 * What carbon dioxide in a room comes to after a time: outside air, what is left of the beginning, and what was set free
 * since.
 */

interface Filling {
  readonly what: string;
  readonly outsidePpm: number;
  readonly startPpm: number;
  /** "as they lie down" */
  readonly startWords: string;
  /** "breathed out" */
  readonly freedWords: string;
  readonly generationM3PerS: number;
  readonly flowM3PerS: number;
  readonly airM3: number;
  readonly seconds: number;
  readonly paths: NonNullable<Step['paths']>;
}

const ppm = (value: number): number => value * 1e-6;

export function contentStep(filling: Filling): Step {
  const { outsidePpm, startPpm, generationM3PerS, flowM3PerS, airM3, seconds } = filling;
  const changes = (flowM3PerS * seconds) / airM3;
  const kept = Math.exp(-changes);
  const freed =
    changes === 0
      ? (generationM3PerS * seconds) / airM3
      : (generationM3PerS / flowM3PerS) * -Math.expm1(-changes);
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
    row(changes === 0 ? `${filling.freedWords}, G·t/V` : `${filling.freedWords}, G/Q·(1 − e^(−x))`, freed),
  ];
  return {
    what: filling.what,
    sum: say`x = Q·t/V = ${airFlow(flowM3PerS)} · ${duration(seconds)} / ${airVolume(airM3)} = ${factor(changes)}, e^(−x) = ${share(kept)}; G = ${volume(generationM3PerS * 3600)} of it an hour; C_0 = ${concentration(ppm(startPpm))} ${filling.startWords}`,
    result: concentration(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
    parts: { columns: ['adds'], rows },
    paths: filling.paths,
  };
}
