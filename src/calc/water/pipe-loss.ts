import { finite, notNegative, positive } from '../argument.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../space/restraint.ts';
import { frictionFactor } from './friction.ts';

/** A length of pipe of one bore with all that sits in it. */
export interface PipeSegment {
  readonly lengthM: number;
  readonly innerDiameterM: number;
  /** Absolute roughness of the wall. */
  readonly roughnessM: number;
  /** Sum of the loss coefficients K of elbows, tees and valves in it, on its own bore. */
  readonly minorK: number;
}

/** What flows. */
export interface Liquid {
  readonly densityKgM3: number;
  readonly kinematicViscosityM2S: number;
}

/** Inner cross-section of a round pipe, m². */
export const boreAreaM2 = (innerDiameterM: number): number =>
  (Math.PI * positive(innerDiameterM, 'The inner diameter') ** 2) / 4;

/** Mean speed in a full pipe, m/s: v = 4 Q / (π D²). */
export const velocityMS = (flowM3S: number, innerDiameterM: number): number =>
  notNegative(flowM3S, 'The flow') / boreAreaM2(innerDiameterM);

/** Re = v D / ν. */
export const reynoldsNumber = (
  flowM3S: number,
  innerDiameterM: number,
  kinematicViscosityM2S: number,
): number =>
  (velocityMS(flowM3S, innerDiameterM) * innerDiameterM) /
  positive(kinematicViscosityM2S, 'The kinematic viscosity');

/**
 * Pressure lost along a pipe and in its fittings, Pa.
 *
 *     Δp = (f L/D + ΣK) ρ v²/2
 *
 * f: Darcy friction factor by {@link frictionFactor}; L: length, m (≥ 0); D: inner diameter, m (> 0); ΣK: loss
 * coefficients (≥ 0); ρ: density, kg/m³ (> 0); v: mean speed, m/s, from the flow Q, m³/s (≥ 0). Rises with the flow
 * without a jump; 0 without flow. For full round pipes and steady flow.
 *
 * Throws RangeError if a value is not finite or out of its range, or the roughness is over a tenth of the bore.
 *
 * Source: Darcy–Weisbach in its textbook form (read).
 */
export function pipeLossPa(flowM3S: number, segment: PipeSegment, liquid: Liquid): number {
  const { innerDiameterM } = segment;
  const lengthM = notNegative(segment.lengthM, 'The length of the pipe');
  const minorK = notNegative(segment.minorK, 'The loss coefficient');
  const densityKgM3 = positive(liquid.densityKgM3, 'The density');
  const relative =
    notNegative(segment.roughnessM, 'The roughness') / positive(innerDiameterM, 'The inner diameter');
  const reynolds = reynoldsNumber(flowM3S, innerDiameterM, liquid.kinematicViscosityM2S);
  if (reynolds === 0) return 0;
  const along = (frictionFactor(reynolds, relative) * lengthM) / innerDiameterM;
  return ((along + minorK) * densityKgM3 * velocityMS(flowM3S, innerDiameterM) ** 2) / 2;
}

/** Pressure lost in pipes one after another, Pa: the sum of {@link pipeLossPa}. */
export const seriesLossPa = (flowM3S: number, segments: readonly PipeSegment[], liquid: Liquid): number =>
  segments.reduce((sum, segment) => sum + pipeLossPa(flowM3S, segment, liquid), 0);

/**
 * Pressure of a column of liquid, Pa: p = ρ g h. h: height, m; below 0 where the outlet lies under the water level, so
 * that the column helps. g: 9.80665 m/s².
 *
 * Throws RangeError if a value is not finite or the density is not greater than 0.
 */
export const columnPa = (heightM: number, densityKgM3: number): number =>
  positive(densityKgM3, 'The density') * STANDARD_GRAVITY_M_PER_S2 * finite(heightM, 'The height');
