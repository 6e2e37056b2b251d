import { finite, notNegative } from './argument.ts';

/**
 * Mass of a layer per area, kg/m².
 *
 *     m_A = t · ρ
 *
 * t: thickness, m (≥ 0); ρ: density, kg/m³ (≥ 0).
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: definition (computed).
 */
export function arealMassOf(thicknessM: number, densityKgM3: number): number {
  return notNegative(thicknessM, 'The thickness') * notNegative(densityKgM3, 'The density');
}

/**
 * Mass of a layer, kg.
 *
 *     m = A · t · ρ · s
 *
 * A: area, m² (≥ 0); t: thickness, m (≥ 0); ρ: density, kg/m³ (≥ 0); s: the part of the area that the layer fills,
 * 0 to 1, e.g. 0.15 for battens.
 *
 * Throws RangeError if a value is not finite, negative, or s is above 1.
 *
 * Source: definition (computed). A birch plywood datasheet lists sheet masses that follow it with the *nominal*
 * thickness (read).
 */
export function layerMass(areaM2: number, thicknessM: number, densityKgM3: number, share = 1): number {
  if (finite(share, 'The share of the area') < 0 || share > 1) {
    throw new RangeError(`The share of the area must lie between 0 and 1, not ${share}.`);
  }
  return notNegative(areaM2, 'The area') * arealMassOf(thicknessM, densityKgM3) * share;
}
