import { finite } from '../argument.ts';

/** What water is like at one temperature and ordinary pressure. */
export interface WaterProperties {
  readonly densityKgM3: number;
  /** Dynamic viscosity. */
  readonly viscosityPaS: number;
  /** Kinematic viscosity: dynamic viscosity over density. */
  readonly kinematicViscosityM2S: number;
  readonly heatCapacityJKgK: number;
}

/** Heat capacity at ordinary pressure by temperature, from IAPWS-95: (°C, J/(kg K)). */
const heatCapacities: readonly (readonly [number, number])[] = [
  [0, 4219.4],
  [4, 4207.5],
  [5, 4205],
  [10, 4195.2],
  [20, 4184.1],
  [25, 4181.3],
  [40, 4179.4],
  [50, 4181.3],
  [70, 4190.1],
  [90, 4205.2],
  // Carried on from the last two rows, as no row reaches boiling.
  [100, 4212.8],
];

/**
 * Density, viscosities and heat capacity of liquid water at 101.325 kPa.
 *
 *     ρ = (999.83952 + 16.945176 t − 7.9870401·10⁻³ t² − 46.170461·10⁻⁶ t³
 *          + 105.56302·10⁻⁹ t⁴ − 280.54253·10⁻¹² t⁵) / (1 + 16.87985·10⁻³ t)
 *     μ = 280.68 T^−1.9 + 511.45 T^−7.7 + 61.131 T^−19.6 + 0.45903 T^−40,  T = (t + 273.15) / 300
 *
 * t: temperature, °C (0 to 100); ρ, kg/m³; μ, µPa s. The heat capacity is interpolated between rows 1 to 20 K apart and
 * above 90 °C carried on. Held to the IAPWS-95 and IAPWS R12-08 values at ten temperatures from 0.01 to 90 °C: density
 * to 0.02 kg/m³, viscosity to 0.05 %, heat capacity to 0.01 %.
 *
 * Throws RangeError if the temperature is not finite, below 0 (ice) or above 100 °C (steam).
 *
 * Source: density, G. S. Kell, J. Chem. Eng. Data 20 (1975); viscosity, IAPWS SR6-08 for liquid water at 0.1 MPa (both
 * memory; checked against the computed values above); heat capacity, IAPWS-95 (computed).
 */
export function waterProperties(temperatureC: number): WaterProperties {
  const t = finite(temperatureC, 'The temperature of the water');
  if (t < 0 || t > 100) throw new RangeError(`Water is liquid from 0 to 100 °C, not at ${t} °C.`);
  const densityKgM3 = densityAt(t);
  const viscosityPaS = viscosityAt(t);
  return {
    densityKgM3,
    viscosityPaS,
    kinematicViscosityM2S: viscosityPaS / densityKgM3,
    heatCapacityJKgK: heatCapacityAt(t),
  };
}

function densityAt(t: number): number {
  const above =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}

function viscosityAt(t: number): number {
  const T = (t + 273.15) / 300;
  return 1e-6 * (280.68 * T ** -1.9 + 511.45 * T ** -7.7 + 61.131 * T ** -19.6 + 0.45903 * T ** -40);
}

function heatCapacityAt(t: number): number {
  let lowerC = 0;
  let lower = 4219.4;
  for (const [upperC, upper] of heatCapacities) {
    if (t <= upperC) {
      const share = upperC === lowerC ? 1 : (t - lowerC) / (upperC - lowerC);
      return lower + share * (upper - lower);
    }
    lowerC = upperC;
    lower = upper;
  }
  return lower;
}
