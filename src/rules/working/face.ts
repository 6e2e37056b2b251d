import type { Build } from '../../build/build.ts';
import type { DesignAir } from '../../build/design-humidity.ts';
import { nightAirOf } from '../../build/night-air.ts';
import { vapourGasConstant } from '../../calc/air/moist-air.ts';
import { vapourExcessPa } from '../../calc/air/moisture.ts';
import { saturationPressurePa } from '../../calc/air/saturation.ts';
import { humidityClassRows, vanHumidityClass } from '../../catalogue/air/moisture.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { airFlow, closeC, kelvins, massFlow, pressure, share, transmittance } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { bracketedC } from '../bracketed.ts';
import { absolute, temperaturePaths } from './still-air.ts';

/*
 * How cold an inner face is against the air before it: the vapour of that air, the temperature at which it settles, and how
 * much of the difference between inside and outside is left at the face.
 */

/** The vapour of the coldest weather, and how much warmer than outside a face must be for none of it to settle. */
export function dewSteps(build: Build, air: DesignAir): readonly Step[] {
  const { dewPointC, outsideC, vapourPressurePa } = air;
  return [
    ...vapourSteps(build, air),
    {
      what: 'Dew point: as cold as air can be and still hold that vapour, p_s(T_d) = p_i',
      sum: say`air at ${closeC(dewPointC)} is full with ${pressure(vapourPressurePa)}, by the table of saturated vapour`,
      result: closeC(dewPointC),
    },
    {
      what: 'So much warmer than outside the face must be: T_d − T_e',
      sum: say`${closeC(dewPointC)} − ${bracketedC(outsideC)}`,
      result: kelvins(dewPointC - outsideC),
      paths: [['living', 'winter_low']],
    },
  ];
}

/** By the plan's own water and vents, or by the class of homes with many people. */
function vapourSteps(build: Build, air: DesignAir): readonly Step[] {
  const { insideC, outsideC, outsidePa, vapourPressurePa, relativeHumidity } = air;
  const found = nightAirOf(build);
  const night = 'humid' in found ? found : undefined;
  const heldPa = saturationPressurePa(insideC);
  const humid = night
    ? night.humid.find((each) => each.when === 'winter' && Math.abs(each.dewPointC - air.dewPointC) < 1e-6)
    : undefined;
  const outside: Step = {
    what: 'Water vapour in the air outside, as a pressure: p_e = φ_e·p_s(T_e)',
    sum: say`${share(outsidePa / saturationPressurePa(outsideC))} of ${pressure(saturationPressurePa(outsideC))}, which air at ${closeC(outsideC)} can hold`,
    result: pressure(outsidePa),
    paths: [['living', 'winter_low']],
  };
  const settles =
    relativeHumidity >= 1 ? say`; it cannot hold more than ${pressure(heldPa)}, and the rest settles` : say``;
  if (!night || !humid)
    return [
      outside,
      {
        what: `The same inside, by humidity class ${vanHumidityClass.id}, that of homes with many people: p_i = p_e + Δp`,
        sum: say`${pressure(outsidePa)} + ${pressure(vapourExcessPa(classPa, outsideC))}, at ${closeC(insideC)}${settles}`,
        result: pressure(vapourPressurePa),
        paths: [['heat', 'asleep']],
      },
    ];
  const { part, flowM3PerS, releaseKgPerS } = humid;
  const when = part === 'day' ? 'over the day' : 'while people are asleep';
  return [
    outside,
    {
      what: `The same inside ${when}, with the water that they set free: p_i = p_e + M·R_v·T_i/Q`,
      sum:
        flowM3PerS > 0
          ? say`${pressure(outsidePa)} + ${massFlow(releaseKgPerS)} · ${vapourGasConstant.toFixed(1)} J/(kg·K) · ${absolute(insideC)} / ${airFlow(flowM3PerS)} of fresh air, in kg, which gives Pa${settles}; \`air.humidity\` explains M and Q`
          : say`without fresh air it is full: ${pressure(heldPa)}`,
      result: pressure(vapourPressurePa),
      paths: [
        ...[...night.vents.low, ...night.vents.high].map(({ path }): PlanPath => path),
        ['people', 'sleepers'],
        ...(part === 'day' ? dayPaths : []),
        ...temperaturePaths(part, 'winter'),
      ],
    },
  ];
}

/** What sets water free by day, beside people. */
const dayPaths: readonly PlanPath[] = ['cooking', 'showers_per_person_day', 'wet_clothes'].map((key) => [
  'living',
  key,
]);

const classPa = humidityClassRows.find(({ id }) => id === vanHumidityClass.id)?.excessPa ?? 1080;

interface Face {
  readonly of: string;
  readonly uValue: number;
  readonly filmM2KPerW: number;
  readonly insideC: number;
  readonly outsideC: number;
  readonly paths: readonly PlanPath[];
}

/** How much warmer than outside a face is: T_s − T_e. */
export function faceStep({ of, uValue, filmM2KPerW, insideC, outsideC, paths }: Face): Step {
  const difference: Phrase = say`(${closeC(insideC)} − ${bracketedC(outsideC)})`;
  // Nothing lets more through than the film of air on its face.
  const isAllFilm = uValue * filmM2KPerW > 1;
  return {
    what: `So much warmer than outside the face of ${of} is: T_s − T_e = (1 − U·R_si)·(T_i − T_e)`,
    sum: isAllFilm
      ? say`nothing: it lets through more than the film of air on its face, ${String(filmM2KPerW)} m²K/W`
      : say`(1 − ${transmittance(uValue)} · ${String(filmM2KPerW)} m²K/W) · ${difference}`,
    result: kelvins(isAllFilm ? 0 : (1 - uValue * filmM2KPerW) * (insideC - outsideC)),
    paths,
  };
}
