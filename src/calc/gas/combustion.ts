import { finite, notNegative, positive } from '../argument.ts';
import { atmospherePa, type PureGas } from './saturation.ts';

/** kg/mol. */
const molarMass = { water: 0.018015, carbonDioxide: 0.04401, air: 0.028965 } as const;
const gasMolarMass: Readonly<Record<PureGas, number>> = { propane: 0.044096, butane: 0.058122 };
const carbons: Readonly<Record<PureGas, number>> = { propane: 3, butane: 4 };

/** Of the volume of dry air. */
const oxygenShare = 0.2095;

/** J/(mol·K). */
const gasConstant = 8.314462618;

export interface Burning {
  readonly waterKgPerKg: number;
  readonly carbonDioxideKgPerKg: number;
  readonly oxygenM3PerM3: number;
  /** Without any excess; a flame needs more. */
  readonly airM3PerM3: number;
}

/**
 * What burns with, and what comes of, a gas burnt completely.
 *
 *     C_n H_(2n+2) + (3n + 1) / 2 · O₂ → n · CO₂ + (n + 1) · H₂O        air = O₂ / 0.2095
 *
 * Volumes at the same temperature and pressure. Incomplete burning makes carbon monoxide instead.
 *
 * Source: the chemical equation with molar masses 44.096, 58.122, 18.015 and 44.010 g/mol (computed).
 */
export function burningOf(gas: PureGas): Burning {
  const n = carbons[gas];
  const mass = gasMolarMass[gas];
  const oxygen = (3 * n + 1) / 2;
  return {
    waterKgPerKg: ((n + 1) * molarMass.water) / mass,
    carbonDioxideKgPerKg: (n * molarMass.carbonDioxide) / mass,
    oxygenM3PerM3: oxygen,
    airM3PerM3: oxygen / oxygenShare,
  };
}

/**
 * Density of the vapour as an ideal gas, kg/m³.
 *
 *     ρ = p · M / (R · T)
 *
 * temperatureC: °C (above −273.15); absolutePa: Pa (> 0), by default one atmosphere. Real vapour at one atmosphere is 1
 * to 3 % denser.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function vapourKgM3(gas: PureGas, temperatureC: number, absolutePa: number = atmospherePa): number {
  const kelvin = positive(finite(temperatureC, 'The temperature') + 273.15, 'The absolute temperature');
  return (positive(absolutePa, 'The pressure') * gasMolarMass[gas]) / (gasConstant * kelvin);
}

/** How many times as heavy as air; above 1, so that the gas sinks and gathers low. */
export const gravityAgainstAir = (gas: PureGas): number => gasMolarMass[gas] / molarMass.air;

/**
 * The gas whose escape makes all the air of a space just flammable if it mixes evenly, kg. Unmixed it lies on the floor
 * and burns far sooner, so that nothing is harmless below this.
 *
 *     m = L · V · ρ
 *
 * lowerLimit: lower flammable limit, share of the volume (0 to 1); V: m³ (≥ 0); ρ: density of the vapour, kg/m³ (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function escapeToFlammableKg(input: {
  readonly lowerLimit: number;
  readonly spaceM3: number;
  readonly vapourKgM3: number;
}): number {
  if (notNegative(input.lowerLimit, 'The flammable limit') > 1)
    throw new RangeError(`The flammable limit must not be above 1, not ${input.lowerLimit}.`);
  return (
    input.lowerLimit * notNegative(input.spaceM3, 'The space') * positive(input.vapourKgM3, 'The density')
  );
}
