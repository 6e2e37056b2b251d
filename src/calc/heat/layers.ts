import { notNegative, positive } from '../argument.ts';

/**
 * How well one even layer holds heat back.
 *
 *     R = d / λ
 *
 * d: thickness, m (≥ 0); λ: conductivity, W/(m·K) (> 0). R in m²·K/W.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: ISO 6946, as restated on a page on U-values (read).
 */
export function layerResistance(thicknessM: number, conductivityWPerMK: number): number {
  return notNegative(thicknessM, 'The thickness') / positive(conductivityWPerMK, 'The conductivity');
}

/** What lies between two airs, with the films of air on both faces. All in m²·K/W. */
export interface PlainWall {
  readonly insideM2KPerW: number;
  readonly outsideM2KPerW: number;
  readonly layersM2KPerW: readonly number[];
}

/**
 * The resistance of a wall of even layers, air to air.
 *
 *     R_T = R_si + Σ R + R_se
 *
 * All in m²·K/W, the films > 0 together with the layers, each ≥ 0.
 *
 * Throws RangeError if a value is not finite or negative, or the sum is 0.
 *
 * Source: ISO 6946 (read as above).
 */
export function wallResistance({ insideM2KPerW, outsideM2KPerW, layersM2KPerW }: PlainWall): number {
  const films =
    notNegative(insideM2KPerW, 'The inside surface resistance') +
    notNegative(outsideM2KPerW, 'The outside surface resistance');
  return positive(
    layersM2KPerW.reduce((sum, layer) => sum + notNegative(layer, 'The resistance of a layer'), films),
    'The resistance of the wall',
  );
}

/**
 * Heat through a square metre by each kelvin between the airs: U = 1 / R_T, W/(m²·K).
 *
 * Throws RangeError if the resistance (m²·K/W) is not above 0.
 */
export const uValueOf = (resistanceM2KPerW: number): number =>
  1 / positive(resistanceM2KPerW, 'The resistance');

/**
 * Temperatures from the outside air to the inside air: the air, the outer face, each face between layers, the inner
 * face, the air. One more than the resistances, of which the first and last are the films.
 *
 *     T_k = T_e + (T_i − T_e) · Σ_{j ≤ k} R_j / Σ R
 *
 * Resistances in m²·K/W, from outside in, each ≥ 0 and their sum > 0; temperatures in °C.
 *
 * Throws RangeError if a resistance is negative or all are 0.
 *
 * Source: steady flow of heat, ISO 13788 (memory); agrees with the printed example of an open program (read).
 */
export function temperaturesThrough(
  resistancesM2KPerW: readonly number[],
  outsideC: number,
  insideC: number,
): number[] {
  const total = positive(
    resistancesM2KPerW.reduce((sum, one) => sum + notNegative(one, 'A resistance'), 0),
    'The resistance of the wall',
  );
  let passed = 0;
  return [
    outsideC,
    ...resistancesM2KPerW.map((one) => {
      passed += one;
      return outsideC + ((insideC - outsideC) * passed) / total;
    }),
  ];
}
