import { notNegative, positive } from '../argument.ts';
import { kelvin } from './kelvin.ts';
import { seaLevelPa } from './moist-air.ts';

/** g/mol. */
const carbon = 12.011;
const hydrogen = 1.008;
const oxygen = 15.999;

/** J/(mol·K), exact by definition to the digits given. */
const molarGasConstant = 8.31446261815324;

/** Of dry air by volume. */
const oxygenShare = 0.2095;

/** A hydrocarbon by the atoms of its molecule. */
export interface Hydrocarbon {
  readonly carbonAtoms: number;
  readonly hydrogenAtoms: number;
}

export const propaneMolecule = { carbonAtoms: 3, hydrogenAtoms: 8 } as const;
export const butaneMolecule = { carbonAtoms: 4, hydrogenAtoms: 10 } as const;

export interface Burnt {
  readonly waterPerFuel: number;
  readonly carbonDioxidePerFuel: number;
  /** Volumes of air for one volume of gaseous fuel, none to spare. */
  readonly airVolumes: number;
  readonly fuelKgPerMol: number;
}

/**
 * What burning a hydrocarbon completely takes and gives: kg of water and of carbon dioxide for a kg of fuel, volumes of air
 * for a volume of its gas.
 *
 *     CₙHₘ + (n + m/4) O₂ → n CO₂ + m/2 H₂O;  air = oxygen / 0.2095
 *
 * n, m > 0. A flame that lacks air gives carbon monoxide instead.
 *
 * Throws RangeError if a number of atoms is not finite or not above 0.
 *
 * Source: chemical equation and molar masses (computed).
 */
export function burnt({ carbonAtoms, hydrogenAtoms }: Hydrocarbon): Burnt {
  positive(carbonAtoms, 'The number of carbon atoms');
  positive(hydrogenAtoms, 'The number of hydrogen atoms');
  const fuel = carbonAtoms * carbon + hydrogenAtoms * hydrogen;
  return {
    waterPerFuel: ((hydrogenAtoms / 2) * (2 * hydrogen + oxygen)) / fuel,
    carbonDioxidePerFuel: (carbonAtoms * (carbon + 2 * oxygen)) / fuel,
    airVolumes: (carbonAtoms + hydrogenAtoms / 4) / oxygenShare,
    fuelKgPerMol: fuel / 1000,
  };
}

/** What a flame takes from the room and, without a flue, leaves in it. */
export interface FlameFlows {
  readonly airM3S: number;
  readonly carbonDioxideM3S: number;
  readonly waterKgS: number;
}

/**
 * Flows of a flame at the temperature of the room and sea level.
 *
 * fuelKgS: kg/s of fuel (≥ 0); excess: how many times the least air it draws (≥ 1): open flues draw about twice as much in
 * with the draught (memory). Volumes by the gas law.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: as {@link burnt}.
 */
export function flameFlows(fuel: Hydrocarbon, fuelKgS: number, roomC: number, excess = 1): FlameFlows {
  if (positive(excess, 'The share of air') < 1)
    throw new RangeError(`A flame needs at least its own air, not ${excess} of it.`);
  const { waterPerFuel, airVolumes, fuelKgPerMol } = burnt(fuel);
  const molarM3 =
    (molarGasConstant * positive(kelvin(roomC), 'The absolute temperature of the room')) / seaLevelPa;
  const fuelM3S = (notNegative(fuelKgS, 'The fuel') / fuelKgPerMol) * molarM3;
  return {
    airM3S: fuelM3S * airVolumes * excess,
    carbonDioxideM3S: fuelM3S * fuel.carbonAtoms,
    waterKgS: fuelKgS * waterPerFuel,
  };
}
