import { finite, notNegative, positive } from '../argument.ts';
import { kelvin } from './kelvin.ts';
import { vapourDensityKgM3, vapourGasConstant } from './moist-air.ts';
import { contentAfter } from './room-balance.ts';
import { saturationPressurePa } from './saturation.ts';

/** Air of the room and of the outside, and what wets the room. */
export interface DampRoom {
  readonly insideC: number;
  readonly outsideC: number;
  /** Relative humidity outside, a share from 0 to 1. */
  readonly outsideHumidity: number;
  /** Water set free, kg/s. */
  readonly releaseKgS: number;
  /** Of air that leaves the room, as warm as it. */
  readonly flowM3S: number;
}

export interface Damp {
  readonly vapourPressurePa: number;
  /** A share; above 1 the water settles somewhere. */
  readonly relativeHumidity: number;
}

/**
 * Vapour pressure of air by its relative humidity, Pa: φ · p_s(t). φ: a share from 0 to 1.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function vapourPressurePa(temperatureC: number, relativeHumidity: number): number {
  if (notNegative(relativeHumidity, 'The relative humidity') > 1)
    throw new RangeError(`The relative humidity must be a share of at most 1, not ${relativeHumidity}.`);
  return relativeHumidity * saturationPressurePa(temperatureC);
}

const toInside = (insideC: number) =>
  vapourGasConstant * positive(kelvin(finite(insideC, 'The inside temperature')), 'The absolute temperature');

/**
 * How damp a ventilated room gets in the end.
 *
 *     p_i = p_e + M · R_v · T_i / Q,  φ_i = p_i / p_s(t_i)
 *
 * p_e = φ_e · p_s(t_e), Pa; M: kg/s of water (≥ 0); R_v: 461.5 J/(kg·K); T_i: K; Q: m³/s (≥ 0). Air keeps its vapour
 * *pressure* when it is warmed, not its g/m³, so pressures are balanced. Walls, bedding and wood that take up water are
 * not counted. Infinite where water is set free and no air leaves.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: mass balance with the gas law, as ISO 13788 has it (memory); for removal by ventilation a text on solar
 * housing, equation 10.2 (read).
 */
export function steadyDamp(room: DampRoom): Damp {
  const outsidePa = vapourPressurePa(room.outsideC, room.outsideHumidity);
  const released = notNegative(room.releaseKgS, 'The water set free') * toInside(room.insideC);
  notNegative(room.flowM3S, 'The flow of fresh air');
  return damp(released === 0 ? outsidePa : outsidePa + released / room.flowM3S, room.insideC);
}

const damp = (pressurePa: number, insideC: number): Damp => ({
  vapourPressurePa: pressurePa,
  relativeHumidity: pressurePa / saturationPressurePa(insideC),
});

/**
 * How damp a room is after a time, from a start that is stated as relative humidity at the inside temperature: the transient
 * of {@link contentAfter} for vapour pressure.
 *
 * V: m³ (> 0); s ≥ 0. Throws RangeError if a value is not finite or out of its range.
 *
 * Source: as {@link steadyDamp}.
 */
export function dampAfter(
  room: DampRoom & { readonly volumeM3: number; readonly startHumidity: number },
  seconds: number,
): Damp {
  const { insideC } = room;
  const pressurePa = contentAfter(
    {
      outside: vapourPressurePa(room.outsideC, room.outsideHumidity),
      releasePerS: notNegative(room.releaseKgS, 'The water set free') * toInside(insideC),
      flowM3S: room.flowM3S,
      volumeM3: room.volumeM3,
      start: vapourPressurePa(insideC, room.startHumidity),
    },
    seconds,
  );
  return damp(pressurePa, insideC);
}

/**
 * Fresh air that holds a relative humidity, m³/s, measured as warm as the room.
 *
 *     Q = M · R_v · T_i / (φ · p_s(t_i) − p_e)
 *
 * φ: wanted share from 0 to 1. 0 where nothing is set free and the outside is drier; infinite where the outside air
 * holds too much water for it: then only warming or drying the air helps.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: as {@link steadyDamp}.
 */
export function flowForHumidityM3S(room: Omit<DampRoom, 'flowM3S'>, wantedHumidity: number): number {
  const headPa =
    vapourPressurePa(room.insideC, wantedHumidity) - vapourPressurePa(room.outsideC, room.outsideHumidity);
  const released = notNegative(room.releaseKgS, 'The water set free') * toInside(room.insideC);
  if (released === 0 && headPa >= 0) return 0;
  return headPa > 0 ? released / headPa : Number.POSITIVE_INFINITY;
}

/**
 * Water that a flow of air carries out, kg/s; negative where it brings water in.
 *
 *     M = Q · (p_i − p_e) / (R_v · T_i)
 *
 * Q: m³/s as warm as the room (≥ 0); pressures of vapour in Pa (≥ 0). The balance of {@link steadyDamp}, the other way round.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function waterRemovedKgS(
  flowM3S: number,
  insideVapourPa: number,
  outsideVapourPa: number,
  insideC: number,
): number {
  return (
    notNegative(flowM3S, 'The flow of fresh air') *
    (vapourDensityKgM3(insideVapourPa, insideC) - vapourDensityKgM3(outsideVapourPa, insideC))
  );
}

/**
 * How much higher the vapour pressure is inside than outside, by the class of the building, Pa.
 *
 *     Δp = Δp_class · (1 − t_e / 20), within 0 to 20 °C; Δp_class below; 0 above
 *
 * Δp_class: Pa (≥ 0), at or below 0 °C; t_e: °C.
 *
 * Throws RangeError if a value is not finite or the class negative.
 *
 * Source: ISO 13788; its class values agree with the rows of an open program (read), the line between 0 and 20 °C is
 * memory. That program multiplies by t_e / 20 there, which runs the wrong way.
 */
export function vapourExcessPa(classPa: number, outsideC: number): number {
  const share = 1 - Math.min(20, Math.max(0, finite(outsideC, 'The outside temperature'))) / 20;
  return notNegative(classPa, 'The vapour excess of the class') * share;
}

/**
 * Relative humidity inside by the class of the building, a share (above 1 where water settles): (p_e + Δp) / p_s(t_i).
 *
 * Throws RangeError as {@link vapourExcessPa} and {@link vapourPressurePa} do.
 */
export function humidityOfClass(classPa: number, air: Omit<DampRoom, 'flowM3S' | 'releaseKgS'>): Damp {
  const pressurePa =
    vapourPressurePa(air.outsideC, air.outsideHumidity) + vapourExcessPa(classPa, air.outsideC);
  return damp(pressurePa, air.insideC);
}
