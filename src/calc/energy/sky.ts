import { notNegative, positive } from '../argument.ts';
import { asRadians, cosDeg, sinDeg, within } from './angle.ts';

/** Sunset hour angle that parts winter from the rest in the correlations of Erbs, Klein and Duffie, degrees. */
const winterSunsetDeg = 81.4;

const sunset = (degrees: number): number => within(degrees, 0, 180, 'The sunset hour angle');
const limited = (value: number): number => Math.min(1, Math.max(0, value));

/**
 * Clearness index: K_T = H / H_0.
 *
 * H: radiation on a horizontal surface, H_0: the same outside the atmosphere, in one unit. Monthly means lie at 0.2 to
 * 0.75; more than 0.8 hints at a mistake of units. 0 where H_0 is 0 (polar night).
 *
 * Throws RangeError if a value is negative or not finite.
 */
export function clearnessIndex(global: number, extraterrestrial: number): number {
  notNegative(global, 'The global radiation');
  return notNegative(extraterrestrial, 'The extraterrestrial radiation') === 0
    ? 0
    : global / extraterrestrial;
}

/**
 * Diffuse share of a month's mean daily radiation.
 *
 *     ω_s ≤ 81.4°:  1.391 − 3.560 K + 4.189 K² − 2.137 K³
 *     ω_s > 81.4°:  1.311 − 3.022 K + 3.427 K² − 1.821 K³
 *
 * K: clearness index of the month (≥ 0); ω_s: sunset hour angle, degrees (0 to 180). The correlation was made for K from
 * 0.3 to 0.8. Above 0.8 the value at 0.8 is held; below 0.3 the polynomial runs on, held at 1, which gives more diffuse
 * light and so less gain from tilting: dark winter months of the climate tables lie there and follow it. Against the tables that
 * state a diffuse part it is low by 0.07 on average, by 0.08 in dull European winters: prefer a stated one.
 *
 * Throws RangeError for a negative K or an angle out of range.
 *
 * Source: Erbs, Klein and Duffie 1982 (memory; the coefficients were seen in two public programs).
 */
export function monthlyDiffuseShare(clearness: number, sunsetDeg: number): number {
  const k = Math.min(0.8, notNegative(clearness, 'The clearness index'));
  return limited(
    sunset(sunsetDeg) <= winterSunsetDeg
      ? 1.391 - 3.56 * k + 4.189 * k ** 2 - 2.137 * k ** 3
      : 1.311 - 3.022 * k + 3.427 * k ** 2 - 1.821 * k ** 3,
  );
}

/**
 * Diffuse share of a single day's radiation.
 *
 *     ω_s ≤ 81.4°:  1 − 0.2727 K + 2.4495 K² − 11.9514 K³ + 9.3879 K⁴ for K < 0.715, else 0.143
 *     ω_s > 81.4°:  1 + 0.2832 K − 2.5557 K² + 0.8448 K³ for K < 0.722, else 0.175
 *
 * K: clearness index of the day (≥ 0); ω_s: sunset hour angle, degrees (0 to 180). A dull day is nearly all diffuse.
 *
 * Throws RangeError for a negative K or an angle out of range.
 *
 * Source: Erbs, Klein and Duffie 1982, as in Duffie and Beckman, equation 2.11.1 (read in a public program).
 */
export function dailyDiffuseShare(clearness: number, sunsetDeg: number): number {
  const k = notNegative(clearness, 'The clearness index');
  if (sunset(sunsetDeg) <= winterSunsetDeg) {
    if (k >= 0.715) return 0.143;
    return limited(1 - 0.2727 * k + 2.4495 * k ** 2 - 11.9514 * k ** 3 + 9.3879 * k ** 4);
  }
  return k >= 0.722 ? 0.175 : limited(1 + 0.2832 * k - 2.5557 * k ** 2 + 0.8448 * k ** 3);
}

/**
 * Diffuse share of an hour's radiation.
 *
 *     k ≤ 0.22: 1 − 0.09 k;   k ≤ 0.80: 0.9511 − 0.1604 k + 4.388 k² − 16.638 k³ + 12.336 k⁴;   else 0.165
 *
 * k: clearness index of the hour (≥ 0). Throws RangeError for a negative k.
 *
 * Source: Erbs, Klein and Duffie 1982 (the first branch read in a program's source, the rest from memory; it gives the
 * published values of that program's tests).
 */
export function hourlyDiffuseShare(clearness: number): number {
  const k = notNegative(clearness, 'The clearness index');
  if (k <= 0.22) return 1 - 0.09 * k;
  return k > 0.8 ? 0.165 : 0.9511 - 0.1604 * k + 4.388 * k ** 2 - 16.638 * k ** 3 + 12.336 * k ** 4;
}

/**
 * Share of the day's diffuse radiation that falls in the hour around an hour angle.
 *
 *     r_d = (π/24) · (cos ω − cos ω_s) / (sin ω_s − ω_s · cos ω_s)
 *
 * ω: hour angle of the middle of the hour, ω_s: sunset hour angle, degrees. 0 outside of daylight.
 *
 * Throws RangeError for a sunset hour angle out of range.
 *
 * Source: Liu and Jordan 1960; the form read on a page that names Whillier 1956 and JIS C 8907.
 */
export function diffuseHourRatio(hourAngleDeg: number, sunsetDeg: number): number {
  if (Math.abs(hourAngleDeg) >= sunset(sunsetDeg)) return 0;
  const below = sinDeg(sunsetDeg) - asRadians(sunsetDeg) * cosDeg(sunsetDeg);
  return ((Math.PI / 24) * (cosDeg(hourAngleDeg) - cosDeg(sunsetDeg))) / below;
}

/**
 * How the day's global radiation differs in shape from the extraterrestrial one.
 *
 *     r_t / r_d = a + b · cos ω;  a = 0.409 + 0.5016 sin(ω_s − 60°);  b = 0.6609 − 0.4767 sin(ω_s − 60°)
 *
 * Throws RangeError for a sunset hour angle out of range.
 *
 * Source: Collares-Pereira and Rabl 1979 (read on a page that gives the ratio and in public programs).
 */
export function globalToDiffuseRatio(hourAngleDeg: number, sunsetDeg: number): number {
  const sine = sinDeg(sunset(sunsetDeg) - 60);
  return 0.409 + 0.5016 * sine + (0.6609 - 0.4767 * sine) * cosDeg(hourAngleDeg);
}

/** Share of the day's global radiation in the hour around an hour angle: r_t = r_d · (a + b cos ω), see both. */
export function globalHourRatio(hourAngleDeg: number, sunsetDeg: number): number {
  return diffuseHourRatio(hourAngleDeg, sunsetDeg) * globalToDiffuseRatio(hourAngleDeg, sunsetDeg);
}

/**
 * Global irradiance on a horizontal surface under a clear sky.
 *
 *     G = 1098 · sin α · exp(−0.059 / sin α)
 *
 * α: altitude of the sun, degrees (−90 to 90). Result in W/m²; 0 with the sun down.
 *
 * Throws RangeError for an altitude out of range.
 *
 * Source: Haurwitz 1945, values in the test suite of a public solar library (read).
 */
export function clearSkyWM2(altitudeDeg: number): number {
  const sine = sinDeg(within(altitudeDeg, -90, 90, 'The altitude of the sun'));
  return sine <= 0 ? 0 : 1098 * sine * Math.exp(-0.059 / sine);
}

/**
 * A clear day's radiation on a horizontal surface.
 *
 *     R_so = (0.75 + 2·10⁻⁵ · z) · R_a
 *
 * R_a: the same outside the atmosphere (≥ 0), any unit; z: height above the sea, m (−500 to 6000).
 *
 * Throws RangeError if a value is out of range.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 37 (read).
 */
export function clearDay(extraterrestrial: number, heightM: number): number {
  notNegative(extraterrestrial, 'The extraterrestrial radiation');
  return (0.75 + 2e-5 * within(heightM, -500, 6000, 'The height above the sea')) * extraterrestrial;
}

/**
 * A day's radiation from its hours of sunshine.
 *
 *     R_s = (0.25 + 0.50 · n/N) · R_a
 *
 * n: hours of sunshine (0 to N); N: hours of daylight (> 0); R_a: as in `clearDay`.
 *
 * Throws RangeError if a value is out of range.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 35 with the constants for places without a calibration (read).
 */
export function radiationFromSunshine(
  sunshineHours: number,
  possibleHours: number,
  extraterrestrial: number,
): number {
  positive(possibleHours, 'The hours of daylight');
  within(sunshineHours, 0, possibleHours, 'The hours of sunshine');
  return (
    (0.25 + (0.5 * sunshineHours) / possibleHours) *
    notNegative(extraterrestrial, 'The extraterrestrial radiation')
  );
}
