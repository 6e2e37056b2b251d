import { finite, notNegative, positive } from '../argument.ts';
import { atmospherePa, boilingPointC, type PureGas } from './saturation.ts';

/**
 * How much of the flow that a table prints for a cylinder is left in a colder place.
 *
 *     k = (T_a − T_b) / (T_r − T_b),        0 where T_a ≤ T_b, 1 where T_a ≥ T_r
 *
 * T_a: ambient, °C (−60 to 60); T_b: temperature at which the liquid just boils at the pressure that the regulator needs;
 * T_r: ambient that the table is taken to hold for, °C (> T_b). The heat that boils the liquid comes through the wall, in
 * proportion to the difference of temperatures, and the liquid can cool no further than T_b.
 *
 * leastInletPa: gauge pressure that the regulator needs, Pa (≥ 0). With 0 it is the plain boiling point: −42 °C for
 * propane, −0.5 °C for butane.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: rate = heat transfer · wetted area · (air − liquid) / latent heat, as a glossary of the trade gives it (read);
 * the cooling down to T_b and no credit above T_r: own choice.
 */
export function coldShare(input: {
  readonly gas: PureGas;
  readonly ambientC: number;
  readonly tableAmbientC: number;
  readonly leastInletPa: number;
}): number {
  const { gas, ambientC, tableAmbientC, leastInletPa } = input;
  const boilsC = boilingPointC(
    gas,
    atmospherePa + notNegative(leastInletPa, 'The pressure at the regulator'),
  );
  const span = positive(
    finite(tableAmbientC, "The table's ambient") - boilsC,
    "The table's ambient above the boiling point",
  );
  return Math.min(1, Math.max(0, (finite(ambientC, 'The ambient temperature') - boilsC) / span));
}

/** Btu/h in W. */
const britishThermalUnitW = 0.293071;
const inchM = 0.0254;

/**
 * Heat that the vapour of a lying propane tank can bring in air of −18 °C (0 °F), W gross, the liquid cooling to −29 °C.
 *
 *     P = D · L · K
 *
 * P: Btu/h; D: outside diameter, L: length over all, in inches; K: 45 to 100 by how full it is; converted here from m.
 *
 * Throws RangeError if a value is not finite or not above 0.
 *
 * Source: guide for ASME LP gas containers, reprinted in an installation manual of a generator, appendix D (read).
 * Empirical; no factor for warmer air was read.
 */
export const lyingTankW = (diameterM: number, lengthM: number, factor: number): number =>
  britishThermalUnitW *
  (positive(diameterM, 'The diameter') / inchM) *
  (positive(lengthM, 'The length') / inchM) *
  positive(factor, 'The factor of the filling');

/** Btu/h to W, for tables printed so. W for each Btu/h: 0.293071. */
export const fromBtuPerHour = (btuPerHour: number): number =>
  britishThermalUnitW * finite(btuPerHour, 'The heat');
