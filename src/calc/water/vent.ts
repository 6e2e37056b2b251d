import { notNegative, positive } from '../argument.ts';

/** Air at about 15 °C, kg/m³; colder air, up to 1.4, takes a little more pressure. */
export const ventAirKgM3 = 1.225;
/** Share of the bore that a sharp-edged opening uses (memory: 0.61). A longer vent hose is worse, a rounded end better. */
export const ventDischarge = 0.6;

/**
 * Pressure at which a vent lets out as much air as water comes in (or the other way round, when the pump draws), Pa.
 *
 *     Δp = ρ/2 · (Q / (C A))²
 *
 * Q: flow, m³/s (≥ 0); A: bore of the vent, from its inner diameter, m (> 0); C: 0.6; ρ: air, 1.225 kg/m³. For air
 * only: once water stands in the vent, the column in it counts. A long or narrow hose and an insect screen come on top.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: flow through an orifice, own choice of the coefficient. No published rule for small tanks was found.
 */
export const ventPressurePa = (flowM3S: number, innerDiameterM: number): number =>
  (ventAirKgM3 / 2) *
  ((4 * notNegative(flowM3S, 'The flow')) /
    (ventDischarge * Math.PI * positive(innerDiameterM, 'The inner diameter of the vent') ** 2)) **
    2;

/**
 * Inner diameter of a vent that keeps the pressure down to a limit, m: {@link ventPressurePa} solved for the bore.
 *
 * Q: flow, m³/s (≥ 0); Δp: limit, Pa (> 0). Throws RangeError if a value is not finite or out of its range.
 */
export const ventDiameterM = (flowM3S: number, limitPa: number): number =>
  Math.sqrt(
    ((4 * notNegative(flowM3S, 'The flow')) / (ventDischarge * Math.PI)) *
      Math.sqrt(ventAirKgM3 / (2 * positive(limitPa, 'The pressure'))),
  );
