import { finite, notNegative, positive } from '../argument.ts';
import { kelvin, zeroCelsiusK } from './kelvin.ts';

/** J/(kg·K): the gas constant over the molar masses of dry air and of water (ASHRAE Fundamentals 2017, chapter 1). */
export const dryAirGasConstant = 287.042;
export const vapourGasConstant = 461.524;

/** Molar mass of water over that of dry air (ASHRAE Fundamentals 2017, chapter 1). */
const massRatio = 0.621945;

/** Standard atmosphere at sea level, Pa, by definition. */
export const seaLevelPa = 101325;

const lowestM = -5000;
const highestM = 11_000;

function withinAtmosphere(altitudeM: number): void {
  if (finite(altitudeM, 'The altitude') < lowestM || altitudeM > highestM)
    throw new RangeError(`The altitude must be from −5000 to 11000 m, not ${altitudeM}.`);
}

/**
 * Pressure of the standard atmosphere.
 *
 *     p = 101325 · (1 − 2.25577e-5 · Z)^5.2559
 *
 * Z: m above the sea, −5000 to 11000; p: Pa.
 *
 * Throws RangeError outside that range.
 *
 * Source: ASHRAE Fundamentals 2017, chapter 1, equation 3 (memory), checked against its table 1 as an open library's
 * tests quote it (read).
 */
export function pressureAtAltitudePa(altitudeM: number): number {
  withinAtmosphere(altitudeM);
  return seaLevelPa * (1 - 2.25577e-5 * altitudeM) ** 5.2559;
}

/** Temperature of the standard atmosphere, °C: 15 − 0.0065 · Z. Range and source as {@link pressureAtAltitudePa}. */
export function temperatureAtAltitudeC(altitudeM: number): number {
  withinAtmosphere(altitudeM);
  return 15 - 0.0065 * altitudeM;
}

/**
 * Water for each kilogram of dry air.
 *
 *     W = 0.621945 · p_v / (p − p_v)
 *
 * p_v: vapour pressure, Pa (≥ 0, < p); p: pressure of the air, Pa; W: kg/kg.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: ASHRAE Fundamentals 2017, chapter 1, equation 20 (memory), checked against an open library.
 */
export function humidityRatio(vapourPressurePa: number, pressurePa: number = seaLevelPa): number {
  const vapour = notNegative(vapourPressurePa, 'The vapour pressure');
  const dry = positive(finite(pressurePa, 'The pressure') - vapour, 'The pressure of the dry air');
  return (massRatio * vapour) / dry;
}

/** The way back from {@link humidityRatio}: vapour pressure, Pa, of air that holds W kg/kg (≥ 0). */
export function vapourPressureOfRatioPa(ratio: number, pressurePa: number = seaLevelPa): number {
  const water = notNegative(ratio, 'The humidity ratio');
  return (positive(pressurePa, 'The pressure') * water) / (massRatio + water);
}

/**
 * Water in a cubic metre of air.
 *
 *     c = p_v / (R_v · T)
 *
 * p_v: Pa (≥ 0); T: K; R_v: 461.5 J/(kg·K); c: kg/m³.
 *
 * Throws RangeError if a value is not finite, the pressure negative or the temperature not above absolute zero.
 *
 * Source: gas law; read as c = 2.1667 · p_v / T g/m³.
 */
export function vapourDensityKgM3(vapourPressurePa: number, temperatureC: number): number {
  return notNegative(vapourPressurePa, 'The vapour pressure') / (vapourGasConstant * absolute(temperatureC));
}

/**
 * Density of moist air.
 *
 *     ρ = (p − p_v) / (R_a · T) + p_v / (R_v · T)
 *
 * p: Pa; p_v: Pa (≥ 0, at most p); T: K; R_a: 287.0 J/(kg·K); ρ: kg/m³. Damp air is lighter than dry.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: gas law (computed).
 */
export function airDensityKgM3(
  temperatureC: number,
  vapourPressurePa = 0,
  pressurePa: number = seaLevelPa,
): number {
  const vapour = notNegative(vapourPressurePa, 'The vapour pressure');
  const dry = notNegative(finite(pressurePa, 'The pressure') - vapour, 'The pressure of the dry air');
  const t = absolute(temperatureC);
  return dry / (dryAirGasConstant * t) + vapour / (vapourGasConstant * t);
}

function absolute(temperatureC: number): number {
  return positive(kelvin(finite(temperatureC, 'The temperature')), 'The absolute temperature');
}

/**
 * A volume of gas that is stated at 0 °C (or the flow of it), at another temperature and the same pressure.
 *
 *     V = V₀ · T / 273.15
 *
 * Throws RangeError if a value is not finite, the volume negative or the temperature not above absolute zero.
 *
 * Source: gas law (computed).
 */
export function volumeFromZeroC(volume: number, temperatureC: number): number {
  return (notNegative(volume, 'The volume') * absolute(temperatureC)) / zeroCelsiusK;
}
