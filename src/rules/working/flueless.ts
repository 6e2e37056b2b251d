import type { Build } from '../../build/build.ts';
import type { Fanned, KnownFan } from '../../build/fanned.ts';
import type { Flame } from '../../build/flames.ts';
import type { NightAir } from '../../build/night-air.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { airFlow, closeC, concentration, massFlow, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { contentStep } from './content.ts';
import { balanceSteps } from './fans.ts';
import { freshAirSteps, roomStep } from './still-air.ts';

/*
 * What flames without a flue make of the air of a room: gas, the carbon dioxide of it, fresh air, and what gathers.
 */

export interface Fumes {
  readonly still: NightAir;
  readonly fans: readonly KnownFan[];
  readonly together: Fanned | undefined;
  readonly insideC: number;
  readonly outsideC: number;
  readonly seconds: number;
  /** By fans; by warmth; what counts. */
  readonly fanM3PerS: number;
  readonly calmM3PerS: number;
  readonly flowM3PerS: number;
  readonly burning: readonly {
    readonly flame: Flame;
    readonly gasKgPerS: number;
    readonly carbonDioxideM3S: number;
  }[];
  readonly generationM3PerS: number;
  readonly endPpm: number;
}

const secondsAnHour = 3600;

export function fumesSteps(fumes: Fumes, build: Build): readonly Step[] {
  const { still, burning, insideC, seconds, flowM3PerS, generationM3PerS, endPpm } = fumes;
  const { outsidePpm, startPpm } = still.carbonDioxide;
  const cookingPath = ['living', 'cooking'];
  return [
    {
      what: 'Carbon dioxide that the flames leave in an hour at full flame: G',
      sum: say`by the chemical equation: 1 kg of gas, burnt, makes so much of it at ${closeC(insideC)}`,
      result: volume(generationM3PerS * secondsAnHour),
      parts: {
        columns: ['gas', 'makes for 1 kg', 'adds'],
        rows: burning.map(
          ({ flame, gasKgPerS, carbonDioxideM3S }): Part => ({
            name: flame.name,
            path: flame.path,
            origin: 'computed',
            values: [massFlow(gasKgPerS), volume(carbonDioxideM3S / gasKgPerS)],
            adds: volume(carbonDioxideM3S * secondsAnHour),
          }),
        ),
      },
      paths: burning.map(({ flame }) => flame.path),
    },
    ...airSteps(fumes),
    ...roomStep(build),
    seconds > 0
      ? contentStep({
          what: 'Carbon dioxide when the cooking ends',
          outsidePpm,
          startPpm,
          startWords: 'as it begins',
          freedWords: 'by the flames',
          generationM3PerS,
          flowM3PerS,
          airM3: still.airM3,
          seconds,
          paths: [cookingPath],
        })
      : {
          what: 'No time of cooking: as it begins',
          result: concentration(endPpm * 1e-6),
          paths: [cookingPath],
        },
  ];
}

/** By fans where they move most, else by warmth or by leaks. */
function airSteps(fumes: Fumes): readonly Step[] {
  const { still, fans, together, insideC, outsideC, fanM3PerS, calmM3PerS, flowM3PerS } = fumes;
  const leaksM3PerS = still.leaksM3PerS ?? 0;
  const byFans = together !== undefined && fanM3PerS >= flowM3PerS && fanM3PerS > 0;
  return [
    ...(byFans
      ? balanceSteps(fans, together)
      : freshAirSteps(still, {
          air: { insideC, outsideC },
          stackM3PerS: calmM3PerS,
          when: 'on a mild still day',
          paths: [['heat', 'inside']],
        })),
    {
      what: 'Fresh air: Q',
      sum: say`the largest of ${airFlow(fanM3PerS)} by fans, ${airFlow(calmM3PerS)} by warmth on a mild still day and ${airFlow(leaksM3PerS)} through leaks`,
      result: airFlow(flowM3PerS),
    },
  ];
}
