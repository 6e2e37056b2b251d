import type { Build } from '../../build/build.ts';
import type { NightAir, StillAir } from '../../build/night-air.ts';
import { kelvin } from '../../calc/air/kelvin.ts';
import { stackDischarge } from '../../calc/air/stack.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { airFlow, airVolume, closeC, factor, freeArea, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { ventsStep } from './vents.ts';

/*
 * How air comes through a room while nothing but warmth moves it: by the fixed vents, by leaks, and which of them counts.
 */

const secondsAnHour = 3600;

/** In kelvins for every reader, as the formulas have it. */
const inKelvins = (value: number): Phrase => say`${factor(value)} K`;

/** Above absolute zero, so that the ratio of two of them is that of the formulas. */
export const absolute = (celsius: number): Phrase => inKelvins(kelvin(celsius));

export interface Moment {
  readonly air: Pick<StillAir, 'insideC' | 'outsideC'>;
  /** What warmth alone draws through the vents. */
  readonly stackM3PerS: number;
  /** When that is, and why it is looked at: "the mild night". */
  readonly when: string;
  /** Where the two temperatures come from. */
  readonly paths: readonly PlanPath[];
}

/** Vents, height, flow through them, leaks where the plan has some, and the fresh air that counts. */
export function freshAirSteps(night: NightAir, moment: Moment): readonly Step[] {
  const { vents, leaksM3PerS } = night;
  return [
    ventsStep('Free area of the fixed vents low down: A_low', vents.low),
    ventsStep('Free area of the fixed vents high up: A_high', vents.high),
    ...stackSteps(night, moment),
    ...(leaksM3PerS === undefined ? [] : [leaksStep(night, leaksM3PerS, moment.stackM3PerS)]),
  ];
}

function stackSteps({ vents }: NightAir, { air, stackM3PerS, when, paths }: Moment): readonly Step[] {
  const { lowM2, highM2, heightM } = vents;
  const { insideC, outsideC } = air;
  const what = 'What warmth draws through them: Q = C_d·A_in·√(2·g·h·ΔT/T)';
  const result = airFlow(stackM3PerS);
  if (lowM2 === 0 || highM2 === 0)
    return [{ what, sum: say`nothing, without fixed vents both high and low`, result }];
  const temperatures = say`T in kelvins, °C + 273.15, of ${closeC(insideC)} inside and ${closeC(outsideC)} outside, ${when}`;
  // In a room that is colder than outside air comes in above.
  const isWarm = insideC >= outsideC;
  const [inM2, outM2] = isWarm ? [lowM2, highM2] : [highM2, lowM2];
  const drivingM = heightM / (1 + ((inM2 / outM2) ** 2 * kelvin(insideC)) / kelvin(outsideC));
  return [
    {
      what: 'The height that drives: h = H / (1 + (A_in/A_out)²·T_i/T_e), of H between low and high vents',
      sum: say`${length(heightM)} / (1 + (${freeArea(inM2)} / ${freeArea(outM2)})² · ${absolute(insideC)} / ${absolute(outsideC)}); ${temperatures}; air comes in ${isWarm ? 'low down' : 'high up'}`,
      result: length(drivingM),
      paths: [...vents.low, ...vents.high].map(({ path }) => path),
    },
    {
      what,
      sum: say`${String(stackDischarge)} · ${freeArea(inM2)} · √(2 · 9.81 m/s² · ${length(drivingM)} · ${inKelvins(Math.abs(insideC - outsideC))} / ${absolute(Math.max(insideC, outsideC))}), in m and m², then times 3600 for an hour`,
      result,
      paths,
    },
  ];
}

function leaksStep({ airM3 }: NightAir, leaksM3PerS: number, stackM3PerS: number): Step {
  const counted: Phrase =
    leaksM3PerS > stackM3PerS
      ? say`more than the vents give, so it counts alone`
      : say`the vents give more, so they count alone`;
  return {
    what: 'What comes through leaks: n·V',
    sum: say`${factor((leaksM3PerS / airM3) * secondsAnHour)} times an hour · ${airVolume(airM3)}; ${counted}`,
    result: airFlow(leaksM3PerS),
    paths: [['heat', 'air_changes_per_hour']],
  };
}

/** The air in the room: the load bay less what stands in it. */
export function roomStep({ livingSpace, vehicle }: Build): readonly Step[] {
  const { bay } = vehicle;
  if (!livingSpace || !bay) return [];
  const { grossM3, airM3 } = livingSpace;
  return [
    {
      what: 'Air in the room: V, the load bay less the furniture in it',
      sum: say`${length(bay.lengthM)} · ${length(bay.widthM)} · ${length(bay.heightM)} = ${airVolume(grossM3)}, less ${airVolume(grossM3 - airM3)} of furniture by its sizes`,
      result: airVolume(airM3),
      paths: [
        ['van', 'load_bay', 'length'],
        ['van', 'load_bay', 'width'],
        ['van', 'load_bay', 'height'],
      ],
    },
  ];
}

/** Where the temperature of the room and the coldest weather are written. */
export const temperaturePaths = (part: 'day' | 'night', when: StillAir['when']): readonly PlanPath[] => [
  ['heat', part === 'day' ? 'inside' : 'asleep'],
  ...(when === 'winter' ? [['living', 'winter_low']] : []),
];
