import { dewPointC, saturationPressurePa } from '../air/saturation.ts';
import { finite, notNegative, positive } from '../argument.ts';

/**
 * The temperature factor of an inner face: 0 as cold as outside, 1 as warm as inside.
 *
 *     f_Rsi = 1 − U · R_si
 *
 * U: W/(m²·K) (≥ 0); R_si: m²·K/W (≥ 0), U · R_si ≤ 1. For mould the inner film is taken as 0.25 (still air behind
 * furniture); for panes and ribs 0.13.
 *
 * Throws RangeError if a value is not finite, negative, or U · R_si exceeds 1.
 *
 * Source: ISO 13788 and the Spanish building code, which writes 1 − 0.25 · U (read in an open program).
 */
export function temperatureFactor(uValue: number, insideM2KPerW: number): number {
  const drop =
    notNegative(uValue, 'The U-value') * notNegative(insideM2KPerW, 'The inside surface resistance');
  if (drop > 1) throw new RangeError('The inside surface resistance must not exceed that of the whole wall.');
  return 1 - drop;
}

/** The temperature of an inner face, °C: T_e + f · (T_i − T_e). f: 0 to 1. */
export function surfaceTemperatureC(factor: number, insideC: number, outsideC: number): number {
  const outside = finite(outsideC, 'The outside temperature');
  return (
    outside +
    notNegative(factor, 'The temperature factor') * (finite(insideC, 'The inside temperature') - outside)
  );
}

/**
 * The temperature factor from a measured or calculated face: (T_s − T_e) / (T_i − T_e). °C, T_i > T_e.
 *
 * Throws RangeError if it is not warmer inside.
 */
export function factorOfSurface(surfaceC: number, insideC: number, outsideC: number): number {
  return (
    (finite(surfaceC, 'The surface temperature') - outsideC) /
    positive(
      finite(insideC, 'The inside temperature') - finite(outsideC, 'The outside temperature'),
      'The difference from inside to outside',
    )
  );
}

export interface RoomAir {
  readonly insideC: number;
  readonly vapourPressurePa: number;
}

/**
 * The coldest that a face may be before the air against it reaches a relative humidity.
 *
 *     p_sat(T_s) = p / φ
 *
 * p: vapour pressure of the room, Pa (> 0); φ: 1 for dew, 0.8 for mould (above 0, up to 1). °C.
 *
 * Throws RangeError if a value is out of its range.
 *
 * Source: ISO 13788, as in an open program of the Spanish code (read).
 */
export function coldestDryFaceC(vapourPressurePa: number, humidityAtFace: number): number {
  const humidity = positive(humidityAtFace, 'The relative humidity at the face');
  if (humidity > 1)
    throw new RangeError(`The relative humidity at the face must be at most 1, not ${humidity}.`);
  return dewPointC(positive(vapourPressurePa, 'The vapour pressure') / humidity);
}

export interface FaceRisk {
  readonly surfaceC: number;
  readonly dewPointC: number;
  /** Water gathers on the face. */
  readonly wet: boolean;
  /** Relative humidity of the air against it, 0 to 1; 1 where wet. */
  readonly humidityAtFace: number;
  /** How much warmer than dew it is, K; below 0 where wet. */
  readonly marginK: number;
  /** The temperature factor that would keep it dry; above 1 cannot be built, undefined where it is not colder outside. */
  readonly neededFactor: number | undefined;
}

/**
 * Whether water gathers on an inner face (a pane, a rib).
 *
 * factor: temperature factor of the face, 0 to 1; room: °C and Pa (> 0); outsideC: °C.
 *
 * Throws RangeError if a value is out of its range.
 *
 * Source: {@link coldestDryFaceC} at φ = 1.
 */
export function faceRisk(factor: number, room: RoomAir, outsideC: number): FaceRisk {
  const surfaceC = surfaceTemperatureC(factor, room.insideC, outsideC);
  const dewC = coldestDryFaceC(room.vapourPressurePa, 1);
  const humidity = room.vapourPressurePa / saturationPressurePa(surfaceC);
  return {
    surfaceC,
    dewPointC: dewC,
    wet: humidity >= 1,
    humidityAtFace: Math.min(1, humidity),
    marginK: surfaceC - dewC,
    neededFactor: room.insideC > outsideC ? factorOfSurface(dewC, room.insideC, outsideC) : undefined,
  };
}
