import { humidityOfClass, steadyDamp, vapourPressurePa } from '../calc/air/moisture.ts';
import { dewPointC, saturationPressurePa } from '../calc/air/saturation.ts';
import { humidityClassRows, vanHumidityClass } from '../catalogue/air/moisture.ts';
import { stillNight } from '../catalogue/air/still-night.ts';
import type { Citation } from '../catalogue/citation.ts';
import { outsideHumidity } from '../catalogue/heat/vapour-layers.ts';
import type { Build } from './build.ts';
import type { Heat } from './heat.ts';
import { nightAirOf, stackM3S } from './night-air.ts';

/*
 * How damp the air inside is taken to be where walls, ribs and panes are checked: by how much its vapour pressure exceeds
 * that outside.
 *
 * Where the plan says how the air is changed and who lives in it, the excess is that of its own water (people, pots, wet
 * clothes; all day, in their mean) and its own fixed vents at 0 °C outside. Otherwise it is the class of humidity of
 * ISO 13788 for homes with many people. Either falls with warmer air outside as that standard has it, since people then
 * open what can be opened.
 */

export interface DesignHumidity {
  /** Vapour pressure inside above that outside, at or below 0 °C outside. */
  readonly excessPa: number;
  /** Where it comes from, in words. */
  readonly words: string;
  readonly citations: readonly Citation[];
}

export interface DesignAir {
  readonly insideC: number;
  readonly outsideC: number;
  readonly outsidePa: number;
  readonly vapourPressurePa: number;
  /** 0 to 1. */
  readonly relativeHumidity: number;
  readonly dewPointC: number;
}

const classPa = humidityClassRows.find(({ id }) => id === vanHumidityClass.id)?.excessPa ?? 1080;

const ofClass: DesignHumidity = {
  excessPa: classPa,
  words: `humidity class ${vanHumidityClass.id}, that of homes with many people`,
  citations: vanHumidityClass.citations,
};

const ofOwnAir: Omit<DesignHumidity, 'excessPa'> = {
  words: 'the water and the fixed vents of the plan, no wind',
  citations: [
    {
      title: 'Water set free in the living space against air through its fixed vents',
      provenance: 'computed',
    },
  ],
};

const secondsADay = 86_400;
/** Where no air comes in at all, the air is full of water whatever the temperature; any larger number does. */
const mostExcessPa = 5000;

export function designHumidityOf(build: Build): DesignHumidity {
  const { heat } = build;
  const night = nightAirOf(build);
  if (!heat || !('humid' in night)) return ofClass;
  const insideC = meanInsideC(heat, build.habits);
  const air = { insideC, outsideC: 0, outsideHumidity: stillNight.outsideHumidity };
  const flowM3S = Math.max(stackM3S(night.vents, insideC, 0), night.leaksM3PerS ?? 0);
  const releaseKgS = night.waterKgPerDay.totalKg / secondsADay;
  const excessPa =
    flowM3S > 0
      ? steadyDamp({ ...air, releaseKgS, flowM3S }).vapourPressurePa -
        vapourPressurePa(0, stillNight.outsideHumidity)
      : mostExcessPa;
  return { ...ofOwnAir, excessPa: Math.min(mostExcessPa, Math.max(0, excessPa)) };
}

/** The mean inside, by the hours awake and asleep. */
export const meanInsideC = ({ insideC, asleepC }: Heat, { asleepS }: Build['habits']): number =>
  insideC + ((asleepC - insideC) * asleepS) / secondsADay;

/** The air inside; never beyond saturation, where the water would settle first. */
export function designAir(
  { excessPa }: DesignHumidity,
  insideC: number,
  outsideC: number,
  humidityOutside: number = outsideHumidity.january,
): DesignAir {
  const damp = humidityOfClass(excessPa, { insideC, outsideC, outsideHumidity: humidityOutside });
  return airOf(insideC, outsideC, humidityOutside, damp.vapourPressurePa);
}

function airOf(insideC: number, outsideC: number, humidityOutside: number, pressurePa: number): DesignAir {
  const saturatedPa = saturationPressurePa(insideC);
  const heldPa = Math.min(pressurePa, saturatedPa);
  return {
    insideC,
    outsideC,
    outsidePa: vapourPressurePa(outsideC, humidityOutside),
    vapourPressurePa: heldPa,
    relativeHumidity: heldPa / saturatedPa,
    dewPointC: dewPointC(heldPa),
  };
}

export interface ColdAirs {
  /** One for the day and one for the night where the plan's own air is known; else the night alone. */
  readonly airs: readonly [DesignAir, ...DesignAir[]];
  readonly words: string;
  readonly citations: readonly Citation[];
}

/**
 * The air inside in the coldest weather that the plan names. Mild nights, on which the air itself may be full of water, are
 * for the check of the air (`mild-nights.ts`): no insulation keeps a face dry in air that can hold no more.
 */
export function coldAirs(build: Build, heat: Heat, outsideC: number): ColdAirs {
  const night = nightAirOf(build);
  const [first, ...more] = ('humid' in night ? night.humid : [])
    .filter(({ when }) => when === 'winter')
    .map(({ insideC, relativeHumidity }) =>
      airOf(insideC, outsideC, stillNight.outsideHumidity, relativeHumidity * saturationPressurePa(insideC)),
    );
  return first
    ? { ...ofOwnAir, airs: [first, ...more] }
    : { ...ofClass, airs: [designAir(ofClass, heat.asleepC, outsideC)] };
}
