import { finite, notNegative, positive } from '../argument.ts';
import { rootBetween } from '../root.ts';
import { kelvin } from './kelvin.ts';

/** Where the formulas over ice and over water take over from each other, °C. */
export const triplePointC = 0.01;

const coldestC = -100;
const warmestC = 200;

/**
 * Pressure of water vapour over a plane of ice or water at the same temperature: what air holds at most.
 *
 *     ln p = C₁/T + C₂ + C₃·T + C₄·T² + C₅·T³ + C₆·T⁴ + C₇·ln T      up to 0.01 °C, over ice
 *     ln p = C₈/T + C₉ + C₁₀·T + C₁₁·T² + C₁₂·T³ + C₁₃·ln T          above, over water
 *
 * T: K; p: Pa. From −100 to 200 °C.
 *
 * Throws RangeError if the temperature is not finite or outside that.
 *
 * Source: Hyland and Wexler, as in the ASHRAE Handbook of Fundamentals 2017, chapter 1, equations 5 and 6; read as an
 * open library of psychrometrics codes them, and checked against its tables.
 */
export function saturationPressurePa(temperatureC: number): number {
  within(temperatureC);
  const t = kelvin(temperatureC);
  return temperatureC <= triplePointC
    ? Math.exp(
        -5.6745359e3 / t +
          6.3925247 -
          9.677843e-3 * t +
          6.2215701e-7 * t ** 2 +
          2.0747825e-9 * t ** 3 -
          9.484024e-13 * t ** 4 +
          4.1635019 * Math.log(t),
      )
    : Math.exp(
        -5.8002206e3 / t +
          1.3914993 -
          4.8640239e-2 * t +
          4.1764768e-5 * t ** 2 -
          1.4452093e-8 * t ** 3 +
          6.5459673 * Math.log(t),
      );
}

function within(temperatureC: number): void {
  if (finite(temperatureC, 'The temperature') < coldestC || temperatureC > warmestC)
    throw new RangeError(`The temperature must be from −100 to 200 °C, not ${temperatureC}.`);
}

/**
 * The temperature to which air must cool for its vapour to settle as dew or, below 0.01 °C, as frost: where
 * {@link saturationPressurePa} is the vapour pressure, °C, to 1e-9 K.
 *
 * Throws RangeError if the vapour pressure is not finite or not between those of −100 and 200 °C.
 *
 * Source: follows from the definition (computed).
 */
export function dewPointC(vapourPressurePa: number): number {
  positive(vapourPressurePa, 'The vapour pressure');
  const least = saturationPressurePa(coldestC);
  const most = saturationPressurePa(warmestC);
  if (vapourPressurePa < least || vapourPressurePa > most)
    throw new RangeError(
      `The vapour pressure must be from ${least} Pa (−100 °C) to ${most} Pa (200 °C), not ${vapourPressurePa}.`,
    );
  const target = Math.log(vapourPressurePa);
  return rootBetween((t) => Math.log(saturationPressurePa(t)) - target, coldestC, warmestC, 1e-9);
}

/** Constants of a formula of the form p = p₀ · exp(a · t / (b + t)), t in °C. */
export interface MagnusConstants {
  readonly atZeroPa: number;
  readonly a: number;
  readonly bC: number;
}

/**
 * The short formulas in use. They part by 0.3 % at 20 °C, which moves a dew point by less than 0.05 K. `ice` and
 * `iso13788Ice` are for below 0 °C; the constants of `ice` and the 265.5 of `iso13788Ice` are from memory, one open
 * program has 267.5.
 */
export const magnusConstants = {
  water: { atZeroPa: 611.2, a: 17.62, bC: 243.12 },
  ice: { atZeroPa: 611.2, a: 22.46, bC: 272.62 },
  augustRoche: { atZeroPa: 610.94, a: 17.625, bC: 243.04 },
  iso13788Water: { atZeroPa: 610.5, a: 17.269, bC: 237.3 },
  iso13788Ice: { atZeroPa: 610.5, a: 21.875, bC: 265.5 },
} as const;

/**
 * The short formula for saturation, for comparison with pages that use it; {@link saturationPressurePa} is the one that
 * the checks use.
 *
 *     p = p₀ · exp(a · t / (b + t))
 *
 * p: Pa; t: °C, above −b. Good from about −40 to 50 °C.
 *
 * Throws RangeError if the temperature is not finite or not above −b.
 *
 * Source: Magnus, as on several pages (read).
 */
export function magnusPressurePa(
  temperatureC: number,
  { atZeroPa, a, bC }: MagnusConstants = magnusConstants.water,
): number {
  positive(bC + finite(temperatureC, 'The temperature'), 'The temperature above the pole of the formula');
  return atZeroPa * Math.exp((a * temperatureC) / (bC + temperatureC));
}

/**
 * Dew point by the short formula.
 *
 *     t_d = b · g / (a − g),  g = ln φ + a · t / (b + t)
 *
 * φ: relative humidity as a share (> 0, at most 1); t: °C.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: Magnus, as on several pages (read).
 */
export function magnusDewPointC(
  temperatureC: number,
  relativeHumidity: number,
  { a, bC }: MagnusConstants = magnusConstants.water,
): number {
  positive(bC + finite(temperatureC, 'The temperature'), 'The temperature above the pole of the formula');
  if (positive(relativeHumidity, 'The relative humidity') > 1)
    throw new RangeError(`The relative humidity must be a share of at most 1, not ${relativeHumidity}.`);
  const g = Math.log(relativeHumidity) + (a * temperatureC) / (bC + temperatureC);
  return (bC * g) / (a - g);
}

/**
 * How full of vapour air is.
 *
 *     φ = p_v / p_s(t)
 *
 * p_v: vapour pressure, Pa (≥ 0); φ: a share, above 1 where vapour must settle.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function relativeHumidityOf(vapourPressurePa: number, temperatureC: number): number {
  return notNegative(vapourPressurePa, 'The vapour pressure') / saturationPressurePa(temperatureC);
}
