import { finite, notNegative, positive } from '../argument.ts';

/** Of a sharp-edged opening; two openings with the room between them have about 0.65 (memory). */
export const sharpEdgeDischarge = 0.61;

/** Of air at 20 °C and 50 % humidity, kg/m³. */
export const roomAirKgM3 = 1.1989;

/** What an opening lets through. */
export interface Opening {
  /** Free area, not the hole behind the grille. */
  readonly areaM2: number;
  /** {@link sharpEdgeDischarge} where left out. */
  readonly discharge?: number;
  /** {@link roomAirKgM3} where left out. */
  readonly airKgM3?: number;
}

/**
 * Flow at 1 Pa, m³/s: C_d · A · √(2/ρ).
 *
 * Throws RangeError if a value is not finite, the area is negative, or another value is not above 0.
 */
export function flowAtOnePascal({
  areaM2,
  discharge = sharpEdgeDischarge,
  airKgM3 = roomAirKgM3,
}: Opening): number {
  return (
    positive(discharge, 'The discharge coefficient') *
    notNegative(areaM2, 'The free area') *
    Math.sqrt(2 / positive(airKgM3, 'The density of the air'))
  );
}

/**
 * Flow through an opening, in the direction of the pressure.
 *
 *     Q = C_d · A · √(2 · Δp / ρ)
 *
 * Q: m³/s, of the sign of Δp; A: m² (≥ 0); Δp: Pa; ρ: kg/m³ of the air that flows; C_d: without unit. For openings that
 * are small beside the room and Reynolds numbers above a few thousand; insect mesh and louvres take more.
 *
 * Throws RangeError as {@link flowAtOnePascal} does.
 *
 * Source: Klote et al., Handbook of Smoke Control Engineering, equation 3.4a, as coded in an open repository (read);
 * BS 5925, equation 2, has the same form, with a square printed for the square root in a scan.
 */
export function orificeFlowM3S(opening: Opening, pressurePa: number): number {
  const flow = flowAtOnePascal(opening) * Math.sqrt(Math.abs(finite(pressurePa, 'The pressure')));
  return pressurePa < 0 ? -flow : flow;
}

/**
 * The pressure that drives a flow through an opening, Pa, of the sign of the flow. Infinite for a closed opening, 0 for
 * no flow.
 *
 *     Δp = ρ / 2 · (Q / (C_d · A))²
 *
 * Throws RangeError as {@link flowAtOnePascal} does, and if the flow is not finite.
 */
export function orificePressurePa(opening: Opening, flowM3S: number): number {
  const unit = flowAtOnePascal(opening);
  if (finite(flowM3S, 'The flow') === 0) return 0;
  return Math.sign(flowM3S) * (flowM3S / unit) ** 2;
}

/**
 * The free area that lets a flow through at a pressure, m².
 *
 *     A = Q / (C_d · √(2 · Δp / ρ))
 *
 * Q ≥ 0, Δp > 0.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function orificeAreaM2(
  flowM3S: number,
  pressurePa: number,
  air: Omit<Opening, 'areaM2'> = {},
): number {
  return (
    notNegative(flowM3S, 'The flow') /
    (flowAtOnePascal({ ...air, areaM2: 1 }) * Math.sqrt(positive(pressurePa, 'The pressure')))
  );
}
