import { getPosition } from 'suncalc';
import { finite } from '../argument.ts';
import { asDegrees, asRadians, cosDeg, latitude, longitude, sinDeg, tanDeg, within } from './angle.ts';

/*
 * Where the sun stands. Days are counted from 1 January = 1. Azimuths are degrees clockwise from north (180: south),
 * hour angles degrees from solar noon, afternoon positive, 15 an hour.
 *
 * The position at an instant is a library's (suncalc, pinned, since its versions before 2 gave radians and counted
 * azimuths from south): it agrees with the published test point of the solar position algorithm to 0.005°. Handbook
 * declinations are up to 1° off in autumn; they serve here only for the day's radiation outside the atmosphere, because the
 * published tables and the correlations of the clearness index were made with them.
 */

/** Solar constant, W/m²: 0.0820 MJ/m² a minute (FAO 56); handbooks of solar engineering print 1367. */
export const solarConstantWM2 = 0.082e6 / 60;

export interface SunPosition {
  /** Above the horizon, degrees; negative below it. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

const dayOfYear = (day: number): number => within(day, 1, 366, 'The day of the year');

/**
 * Declination of the sun.
 *
 *     δ = 0.409 · sin(2π·J/365 − 1.39)  [rad]
 *
 * J: day of the year (1 to 366). Result in degrees. Up to 1° from the true one (October).
 *
 * Throws RangeError for a day out of the year.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 24 (read).
 */
export function declinationDeg(day: number): number {
  return asDegrees(0.409 * Math.sin((2 * Math.PI * dayOfYear(day)) / 365 - 1.39));
}

/**
 * How much stronger the sun shines than at its mean distance.
 *
 *     d_r = 1 + 0.033 · cos(2π·J/365)
 *
 * J: day of the year (1 to 366). Throws RangeError for a day out of the year.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 23 (read).
 */
export function distanceFactor(day: number): number {
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear(day)) / 365);
}

/**
 * Hour angle of sunset.
 *
 *     ω_s = arccos(−tan φ · tan δ), the argument held within −1 and 1
 *
 * φ: latitude, degrees (−90 to 90); δ: declination, degrees. Result in degrees: 180 in the polar day, 0 in the polar
 * night. Neither refraction nor the sun's size is counted.
 *
 * Throws RangeError for a latitude beyond the poles or a declination beyond 24°.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 25 (read).
 */
export function sunsetHourAngleDeg(latitudeDeg: number, declination: number): number {
  within(declination, -24, 24, 'The declination');
  const cosine = -tanDeg(latitude(latitudeDeg)) * tanDeg(declination);
  return asDegrees(Math.acos(Math.min(1, Math.max(-1, cosine))));
}

/**
 * Hours of daylight, N = 2·ω_s/15, ω_s from `sunsetHourAngleDeg`. 0 in the polar night, 24 in the polar day.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 34 (read).
 */
export function daylightHours(latitudeDeg: number, day: number): number {
  return (2 * sunsetHourAngleDeg(latitudeDeg, declinationDeg(day))) / 15;
}

/**
 * A day's radiation on a horizontal surface outside the atmosphere.
 *
 *     R_a = (24/π) · G_sc · d_r · [ω_s · sin φ · sin δ + cos φ · cos δ · sin ω_s]
 *
 * G_sc: solar constant, W/m²; φ: latitude, degrees (−90 to 90); δ: declination, degrees, of the day unless given; ω_s in
 * radians. Result in Wh/m² (1 MJ = 277.8 Wh); 0 in the polar night. The source calls it an approximation beyond 55°.
 *
 * Throws RangeError for a latitude beyond the poles, a day out of the year or a declination beyond 24°.
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), equation 21 (read).
 */
export function extraterrestrialDayWhM2(
  latitudeDeg: number,
  day: number,
  declination: number = declinationDeg(day),
): number {
  const sunsetDeg = sunsetHourAngleDeg(latitudeDeg, declination);
  const sum =
    asRadians(sunsetDeg) * sinDeg(latitudeDeg) * sinDeg(declination) +
    cosDeg(latitudeDeg) * cosDeg(declination) * sinDeg(sunsetDeg);
  return Math.max(0, (24 / Math.PI) * solarConstantWM2 * distanceFactor(day) * sum);
}

/** What the sun sends through a plane square to its rays outside the atmosphere, W/m²: G_sc · d_r. */
export function extraterrestrialNormalWM2(day: number): number {
  return solarConstantWM2 * distanceFactor(day);
}

/**
 * Equation of time: how far a sundial is ahead of a clock that runs evenly.
 *
 *     E = 229.2 · (0.000075 + 0.001868 cos B − 0.032077 sin B − 0.014615 cos 2B − 0.04089 sin 2B)
 *     B = (n − 1) · 360/365
 *
 * n: day of the year (1 to 366). Result in minutes, −14.3 to 16.4. Throws RangeError for a day out of the year.
 *
 * Source: Duffie and Beckman, Solar Engineering of Thermal Processes, equation 1.5.3, after Spencer 1971 (memory).
 */
export function equationOfTimeMin(day: number): number {
  const b = ((dayOfYear(day) - 1) * 360) / 365;
  return (
    229.2 *
    (0.000075 +
      0.001868 * cosDeg(b) -
      0.032077 * sinDeg(b) -
      0.014615 * cosDeg(2 * b) -
      0.04089 * sinDeg(2 * b))
  );
}

/**
 * Solar time of a clock time.
 *
 *     t_s = t − z + λ/15 + E/60
 *
 * t: clock time, hours; z: how far the clock is ahead of UTC, hours; λ: longitude, degrees east positive; E: equation of
 * time, minutes. Result in hours, possibly below 0 or above 24.
 *
 * Throws RangeError if a value is not finite or the longitude or the day is out of range.
 *
 * Source: Duffie and Beckman, Solar Engineering of Thermal Processes, equation 1.5.2 (read on a page that quotes it).
 */
export function solarTimeHours(
  clockHours: number,
  clockAheadOfUtcHours: number,
  longitudeDeg: number,
  day: number,
): number {
  return (
    finite(clockHours, 'The clock time') -
    finite(clockAheadOfUtcHours, 'The lead of the clock on UTC') +
    longitude(longitudeDeg) / 15 +
    equationOfTimeMin(day) / 60
  );
}

/**
 * Where the sun stands at an instant, as it appears (with refraction at sea level).
 *
 * `instantMs`: milliseconds since 1970-01-01T00:00Z; latitude −90 to 90, longitude −180 to 180, degrees, north and east
 * positive. Throws RangeError if a value is not finite or out of range.
 *
 * Source: suncalc 2.0.2 (its formulas: Meeus, Astronomical Algorithms); checked against Reda and Andreas, Solar Position
 * Algorithm, NREL/TP-560-34302, appendix A.5: 0.005° in altitude, 0.002° in azimuth.
 */
export function sunPosition(instantMs: number, latitudeDeg: number, longitudeDeg: number): SunPosition {
  finite(instantMs, 'The instant');
  const { altitude, azimuth } = getPosition(
    new Date(instantMs),
    latitude(latitudeDeg),
    longitude(longitudeDeg),
  );
  return { altitudeDeg: altitude, azimuthDeg: azimuth };
}

/**
 * Where the sun stands at an hour angle, without refraction.
 *
 *     sin α = sin φ sin δ + cos φ cos δ cos ω;   the azimuth from tan A = sin ω / (cos ω sin φ − tan δ cos φ), from south
 *
 * φ: latitude (−90 to 90), δ: declination (−24 to 24), ω: hour angle, all in degrees.
 * Throws RangeError if a value is out of range or not finite.
 *
 * Source: Duffie and Beckman, Solar Engineering of Thermal Processes, section 1.6 (spherical trigonometry).
 */
export function sunAtHourAngle(latitudeDeg: number, declination: number, hourAngleDeg: number): SunPosition {
  within(declination, -24, 24, 'The declination');
  finite(hourAngleDeg, 'The hour angle');
  const [sinLatitude, cosLatitude] = [sinDeg(latitude(latitudeDeg)), cosDeg(latitudeDeg)];
  const sine = sinLatitude * sinDeg(declination) + cosLatitude * cosDeg(declination) * cosDeg(hourAngleDeg);
  const fromSouth = Math.atan2(
    sinDeg(hourAngleDeg),
    cosDeg(hourAngleDeg) * sinLatitude - tanDeg(declination) * cosLatitude,
  );
  return {
    altitudeDeg: asDegrees(Math.asin(Math.min(1, Math.max(-1, sine)))),
    azimuthDeg: (asDegrees(fromSouth) + 540) % 360,
  };
}

/**
 * Cosine of the angle between the sun's rays and a plane's normal.
 *
 *     cos θ = sin α · cos β + cos α · sin β · cos(A − γ)
 *
 * α, A: altitude and azimuth of the sun, degrees; β: tilt, degrees (0 flat to 90 upright); γ: where the plane looks,
 * degrees clockwise from north. Negative: the sun is behind the plane. The same as the long form in latitude,
 * declination and hour angle (Duffie and Beckman, equation 1.6.2).
 *
 * Throws RangeError if a value is not finite or the tilt is out of range.
 */
export function cosIncidence(
  { altitudeDeg, azimuthDeg }: SunPosition,
  tiltDeg: number,
  planeAzimuthDeg: number,
): number {
  finite(planeAzimuthDeg, 'The azimuth of the plane');
  within(tiltDeg, 0, 90, 'The tilt');
  return (
    sinDeg(altitudeDeg) * cosDeg(tiltDeg) +
    cosDeg(altitudeDeg) * sinDeg(tiltDeg) * cosDeg(azimuthDeg - planeAzimuthDeg)
  );
}
