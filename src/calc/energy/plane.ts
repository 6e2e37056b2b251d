import { notNegative, positive } from '../argument.ts';
import { cosDeg, share, tilt } from './angle.ts';

/**
 * Diffuse irradiance from an evenly bright sky on a tilted plane: D · (1 + cos β)/2.
 *
 * D: diffuse horizontal irradiance, W/m² (≥ 0); β: tilt, degrees (0 to 90). Throws RangeError if a value is out of range.
 *
 * Source: Liu and Jordan, isotropic sky, as in the test suite of a public solar library (read).
 */
export function isotropicSky(diffuse: number, tiltDeg: number): number {
  return (notNegative(diffuse, 'The diffuse irradiance') * (1 + cosDeg(tilt(tiltDeg)))) / 2;
}

/** Diffuse irradiance on a plane: from the whole sky evenly, and from around the sun. */
export interface SkyOnPlane {
  readonly even: number;
  readonly aroundSun: number;
}

/**
 * Diffuse irradiance from a sky that is brighter around the sun.
 *
 *     D_T = D · [(1 − A) · (1 + cos β)/2 + A · max(cos θ, 0)/sin α],  A = B_n / G_n, at most 1
 *
 * D: diffuse horizontal irradiance (≥ 0); B_n: direct irradiance square to the rays (≥ 0); G_n: the same outside the
 * atmosphere (> 0), all in W/m²; sin α: sine of the sun's altitude; cos θ: of the incidence; β: tilt, degrees (0 to 90).
 * With the sun down, 0. No floor under sin α: D falls with it in every use here.
 *
 * Throws RangeError if a value is out of range.
 *
 * Source: Hay and Davies 1980, as in the test suite of a public solar library (read).
 */
export function brighterAroundSun(
  diffuse: number,
  directNormal: number,
  extraterrestrialNormal: number,
  sinAltitude: number,
  cosTheta: number,
  tiltDeg: number,
): SkyOnPlane {
  if (sinAltitude <= 0) return { even: 0, aroundSun: 0 };
  notNegative(directNormal, 'The direct irradiance');
  const clear = Math.min(
    1,
    directNormal / positive(extraterrestrialNormal, 'The extraterrestrial irradiance'),
  );
  return {
    even: (1 - clear) * isotropicSky(diffuse, tiltDeg),
    aroundSun: (clear * diffuse * Math.max(0, cosTheta)) / sinAltitude,
  };
}

/**
 * Irradiance that the ground throws back on a tilted plane: G · ρ · (1 − cos β)/2.
 *
 * G: global horizontal irradiance, W/m² (≥ 0); ρ: albedo of the ground (0 to 1; 0.2 grass, 0.6 or more fresh snow); β: tilt,
 * degrees (0 to 90). Throws RangeError if a value is out of range.
 *
 * Source: Liu and Jordan, as in the test suite of a public solar library (read).
 */
export function fromGround(global: number, albedo: number, tiltDeg: number): number {
  notNegative(global, 'The global irradiance');
  return (global * share(albedo, 'The albedo') * (1 - cosDeg(tilt(tiltDeg)))) / 2;
}
