import { finite, notNegative } from '../argument.ts';
import { latitude, longitude, share, sinDeg, tilt, within } from './angle.ts';
import { midMonthDays, ofMonth } from './months.ts';
import { cellTemperatureC, enteringShare, panelPowerW } from './panel.ts';
import { brighterAroundSun, fromGround } from './plane.ts';
import { clearnessIndex, dailyDiffuseShare, globalToDiffuseRatio, monthlyDiffuseShare } from './sky.ts';
import {
  cosIncidence,
  declinationDeg,
  extraterrestrialDayWhM2,
  extraterrestrialNormalWM2,
  type SunPosition,
  solarTimeHours,
  sunPosition,
  sunsetHourAngleDeg,
} from './sun.ts';

/*
 * A month's design day: the sun of the 15th, hour by hour of the clock, and how the day's radiation falls into it.
 */

/** Steps of an hour. Ten minutes keep sunrise and low sun honest. */
export const stepsPerHour = 6;
const steps = 24 * stepsPerHour;

/** The year whose 15ths stand for all years; none of the four after it moves the sun by more than 0.4°. Own choice. */
const year = 2025;

export interface Site {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** How far the clock of the loads is ahead of UTC, hours. */
  readonly clockAheadOfUtcHours: number;
}

/** The sun through the day of a month, in steps, and what is outside the atmosphere. */
export interface SunDay {
  readonly positions: readonly SunPosition[];
  /** Sines of the altitude, 0 with the sun down. */
  readonly sines: Float64Array;
  /** Ratio of the shapes of global and diffuse radiation, see `globalToDiffuseRatio`. */
  readonly ratios: Float64Array;
  readonly sunsetDeg: number;
  readonly extraterrestrialWhM2: number;
  readonly extraterrestrialNormalWM2: number;
}

/** A clock that shows about solar time: whole hours nearest to the longitude. */
export function clockOfLongitude(longitudeDeg: number): number {
  return Math.round(longitude(longitudeDeg) / 15);
}

/**
 * The sun through the 15th of a month (0 to 11) at a site, in the middle of each step of the clock's day.
 *
 * Throws RangeError if a value is out of range (clock: −14 to 14 hours).
 */
export function sunDay(site: Site, month: number): SunDay {
  const { latitudeDeg, longitudeDeg, clockAheadOfUtcHours: ahead } = site;
  latitude(latitudeDeg);
  within(ahead, -14, 14, 'The lead of the clock on UTC');
  const day = ofMonth(midMonthDays, month);
  const sunsetDeg = sunsetHourAngleDeg(latitudeDeg, declinationDeg(day));
  const midnightMs = Date.UTC(year, month, 15);
  const positions: SunPosition[] = [];
  const sines = new Float64Array(steps);
  const ratios = new Float64Array(steps);
  for (let step = 0; step < steps; step += 1) {
    const clock = (step + 0.5) / stepsPerHour;
    const position = sunPosition(midnightMs + (clock - ahead) * 3_600_000, latitudeDeg, longitudeDeg);
    positions.push(position);
    sines[step] = Math.max(0, sinDeg(position.altitudeDeg));
    const hourAngleDeg = 15 * (solarTimeHours(clock, ahead, longitudeDeg, day) - 12);
    ratios[step] = Math.max(0, globalToDiffuseRatio(hourAngleDeg, sunsetDeg));
  }
  return {
    positions,
    sines,
    ratios,
    sunsetDeg,
    extraterrestrialWhM2: extraterrestrialDayWhM2(latitudeDeg, day),
    extraterrestrialNormalWM2: extraterrestrialNormalWM2(day),
  };
}

/** Irradiance in the steps of a day, W/m². Direct and diffuse are per sine of the altitude: no division by a low sun. */
export interface LightDay {
  readonly sun: SunDay;
  readonly directNormal: Float64Array;
  /** Diffuse horizontal irradiance. */
  readonly diffuse: Float64Array;
  /** Of the day, Wh/m²: what falls on the ground; 0 where the sun does not rise, whatever was stated. */
  readonly globalWhM2: number;
  readonly diffuseShare: number;
}

/**
 * A day's radiation, spread over the day.
 *
 * `globalWhM2`: the day's total on a horizontal surface, Wh/m² (≥ 0); `diffuseShare`: 0 to 1. Diffuse light follows the
 * sine of the altitude, global light that times a + b·cos ω (Collares-Pereira and Rabl), both scaled so that the steps sum
 * to the day. Where that would leave less than nothing for direct light (early and late) all of it is diffuse.
 *
 * Throws RangeError if a value is out of range.
 */
export function lightDay(sun: SunDay, globalWhM2: number, diffuseShare: number): LightDay {
  notNegative(globalWhM2, 'The radiation of the day');
  share(diffuseShare, 'The diffuse share');
  let globalSum = 0;
  let diffuseSum = 0;
  for (let step = 0; step < steps; step += 1) {
    const sine = sun.sines[step] ?? 0;
    globalSum += sine * (sun.ratios[step] ?? 0);
    diffuseSum += sine;
  }
  const directNormal = new Float64Array(steps);
  const diffuse = new Float64Array(steps);
  if (globalSum > 0) {
    const globalScale = (globalWhM2 * stepsPerHour) / globalSum;
    const diffuseScale = (globalWhM2 * diffuseShare * stepsPerHour) / diffuseSum;
    for (let step = 0; step < steps; step += 1) {
      const sine = sun.sines[step] ?? 0;
      if (sine === 0) continue;
      const global = globalScale * (sun.ratios[step] ?? 0);
      const even = Math.min(global, diffuseScale);
      directNormal[step] = global - even;
      diffuse[step] = even * sine;
    }
  }
  return { sun, directNormal, diffuse, globalWhM2: globalSum > 0 ? globalWhM2 : 0, diffuseShare };
}

/**
 * Diffuse share of a typical day of a month: the stated one, or that of Erbs, Klein and Duffie from the clearness index.
 *
 * `globalWhM2` and `statedDiffuseWhM2` (at most that), Wh/m² a day. Throws RangeError if a value is out of range.
 */
export function typicalDiffuseShare(sun: SunDay, globalWhM2: number, statedDiffuseWhM2?: number): number {
  if (statedDiffuseWhM2 !== undefined) {
    within(statedDiffuseWhM2, 0, globalWhM2, 'The diffuse radiation of a day');
    return globalWhM2 === 0 ? 1 : statedDiffuseWhM2 / globalWhM2;
  }
  return monthlyDiffuseShare(clearnessIndex(globalWhM2, sun.extraterrestrialWhM2), sun.sunsetDeg);
}

/**
 * Diffuse share of a dull day: that of a single day with its clearness index, and never less than a typical day's. A tilted
 * panel gains little on such a day.
 */
export function dullDiffuseShare(sun: SunDay, dullGlobalWhM2: number, typicalShare: number): number {
  const clearness = clearnessIndex(dullGlobalWhM2, sun.extraterrestrialWhM2);
  return Math.max(share(typicalShare, 'The diffuse share'), dailyDiffuseShare(clearness, sun.sunsetDeg));
}

/** A flat array: how it lies and what it loses. */
export interface ArrayPlane {
  readonly peakW: number;
  /** 0 flat to 90 upright. */
  readonly tiltDeg: number;
  /** Where it looks, degrees clockwise from north; 180: south. Of no effect when flat. */
  readonly azimuthDeg: number;
  /** Losses in series: soiling, mismatch, wiring; shares. */
  readonly losses: readonly number[];
  /** Share of the direct light that horizon, trees and roof furniture take. */
  readonly shadedShare: number;
  /** Share of the sky that they hide; 0 if not given. */
  readonly skyHiddenShare?: number;
  /** Power lost per kelvin, 1/K: −0.0047 to −0.0029. */
  readonly temperatureCoefficient: number;
  readonly noctC: number;
  /** What a panel without air behind it is hotter, K; 0 if not given. */
  readonly hotterK?: number;
  /** Coefficient of the glass, see `enteringShare`; 0.05 if not given. */
  readonly glass?: number;
  /** Albedo of the ground; 0.2 if not given. */
  readonly albedo?: number;
}

/** What an array makes of a day. */
export interface ArrayDay {
  /** Energy of the array before its losses in series, by hour of the clock, Wh. */
  readonly hourWh: Float64Array;
  /** What falls on its plane in the day, shading counted, Wh/m². */
  readonly planeWhM2: number;
}

/**
 * What an array makes of a day, hour by hour, before its losses in series.
 *
 * Direct light by the incidence, diffuse light by Hay and Davies (brighter around the sun), the ground's by its albedo; what
 * the glass turns away, cell temperature by NOCT. The air keeps the month's mean through the day (own choice; about 1 %).
 *
 * Throws RangeError if a value of the array is out of range.
 */
export function arrayDay(light: LightDay, array: ArrayPlane, airC: number): ArrayDay {
  const { peakW, tiltDeg, azimuthDeg, temperatureCoefficient, noctC } = array;
  const { shadedShare, skyHiddenShare = 0, hotterK = 0, glass = 0.05, albedo = 0.2 } = array;
  const hourWh = new Float64Array(24);
  const open = 1 - share(shadedShare, 'The shaded share');
  const sky = 1 - share(skyHiddenShare, 'The hidden share of the sky');
  tilt(tiltDeg);
  finite(azimuthDeg, 'The azimuth of the array');
  notNegative(hotterK, 'What the panel is hotter');
  // Once for the values, so that a wrong one is found at night too.
  enteringShare(1, glass);
  fromGround(0, albedo, tiltDeg);
  panelPowerW(peakW, 0, cellTemperatureC(airC, noctC, 0), temperatureCoefficient);
  let planeSum = 0;
  for (const [step, position] of light.sun.positions.entries()) {
    const sine = light.sun.sines[step] ?? 0;
    if (sine === 0) continue;
    const directNormal = light.directNormal[step] ?? 0;
    const diffuse = light.diffuse[step] ?? 0;
    const cosTheta = cosIncidence(position, tiltDeg, azimuthDeg);
    const { even, aroundSun } = brighterAroundSun(
      diffuse,
      directNormal,
      light.sun.extraterrestrialNormalWM2,
      sine,
      cosTheta,
      tiltDeg,
    );
    const fromSun = open * (directNormal * Math.max(0, cosTheta) + aroundSun);
    const fromElsewhere = sky * even + fromGround(directNormal * sine + diffuse, albedo, tiltDeg);
    const onPlane = fromSun + fromElsewhere;
    planeSum += onPlane;
    const cellC = cellTemperatureC(airC + hotterK * Math.min(1, onPlane / 1000), noctC, onPlane);
    const entering = fromSun * enteringShare(cosTheta, glass) + fromElsewhere;
    const hour = Math.floor(step / stepsPerHour);
    hourWh[hour] =
      (hourWh[hour] ?? 0) + panelPowerW(peakW, entering, cellC, temperatureCoefficient) / stepsPerHour;
  }
  return { hourWh, planeWhM2: planeSum / stepsPerHour };
}
