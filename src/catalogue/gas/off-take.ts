import { listedAtMost } from '../../calc/electrical/listed.ts';
import { coldShare, fromBtuPerHour, lyingTankW } from '../../calc/gas/off-take.ts';
import { atmospherePa, boilingPointC, type PureGas } from '../../calc/gas/saturation.ts';
import type { Citation } from '../citation.ts';
import {
  butaneState,
  germanOffTake,
  hundredPoundTable,
  lyingTankGuide,
  offTakePolicy,
  propaneState,
  regulatorInlet,
  southAfricanContainers,
} from './sources.ts';

/*
 * How much vapour a cylinder or a tank can give. Large cylinders are never scaled to small ones.
 */

/** How long the draw lasts: room heating runs on, a water heater or refrigerator pauses, a hob is lit for minutes. */
export const offTakeDuties = ['uninterrupted', 'half of the time', 'bursts of 20 minutes'] as const;
export type OffTakeDuty = (typeof offTakeDuties)[number];

export interface CylinderRow {
  readonly holdsKg: number;
  readonly kgPerHour: Readonly<Record<OffTakeDuty, number>>;
}

const rowOf = (holdsKg: number, on: number, half: number, bursts: number): CylinderRow => ({
  holdsKg,
  kgPerHour: { uninterrupted: on, 'half of the time': half, 'bursts of 20 minutes': bursts },
});

const smallestCylinder = rowOf(5, 0.2, 0.5, 1);

export const germanCylinders: readonly CylinderRow[] = [
  smallestCylinder,
  rowOf(11, 0.3, 0.8, 1.5),
  rowOf(33, 0.6, 1.8, 3),
];
/** Printed beside them; it never serves a cylinder. */
export const germanDrum: CylinderRow = rowOf(300, 3, 8, 15);

/** The ambient that the German table, which names none, is held to be true at, °C (own choice). */
export const offTakeTableAmbientC = 15;

/** What a low-pressure regulator needs before it, Pa above the atmosphere (from memory). */
export const leastRegulatorInletPa = 30_000;

export interface OffTake {
  /** One cylinder or tank. */
  readonly kgPerS: number;
  /** Size of the row that it was read from, kg. Undefined for a tank. */
  readonly rowKg?: number;
  /** As printed for that row, kg/s. Undefined for a tank. */
  readonly rowKgPerS?: number;
  /** Before the cold takes its part, kg/s. */
  readonly printedKgPerS: number;
  /** Of a tank: the heat that the guide prints, W gross, and the factor of its filling. */
  readonly tank?: { readonly printedW: number; readonly factor: number };
  /** What is left of the printed value in the cold, 0 to 1. */
  readonly coldShare: number;
  /** Below this ambient the regulator gets less pressure than it needs, °C. */
  readonly starvesBelowC: number;
  /** At and below this ambient the liquid gives nothing whatever the regulator, °C: boiling point at one atmosphere. */
  readonly boilsC: number;
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
}

const notPrinted =
  'The table names neither temperature nor filling. A nearly empty cylinder gives less: one of 45 kg, a tenth full, gives a quarter of what it gives when full.';
const mixed =
  'Reckoned for the pure gas. Propane leaves a mixture first, so that what is left behaves like butane.';

/**
 * What one cylinder can give at an ambient temperature: the next smaller size that is printed, by duty; below the smallest
 * (5 kg) its value in proportion to the contents (own choice: the wetted wall shrinks less). Held to be true at 15 °C and
 * above; colder, less in proportion, down to nothing where the liquid no longer reaches the pressure that the regulator
 * needs. At and below the boiling point under the atmosphere (butane −0.5 °C) there is nothing in any case.
 *
 * holdsKg: full contents, kg (> 0); ambientC: °C. Several cylinders in use: multiply.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function cylinderOffTake(input: {
  readonly gas: PureGas;
  readonly holdsKg: number;
  readonly duty: OffTakeDuty;
  readonly ambientC: number;
}): OffTake {
  const { gas, holdsKg, duty, ambientC } = input;
  if (!(holdsKg > 0) || !Number.isFinite(holdsKg))
    throw new RangeError(`The contents of a cylinder must be greater than 0, not ${holdsKg}.`);
  const printed = listedAtMost(germanCylinders, (each) => each.holdsKg, holdsKg);
  const row = printed ?? smallestCylinder;
  const rowKgPerS = row.kgPerHour[duty] / 3600;
  const printedKgPerS = printed ? rowKgPerS : (rowKgPerS * holdsKg) / row.holdsKg;
  const share = coldShare({
    gas,
    ambientC,
    tableAmbientC: offTakeTableAmbientC,
    leastInletPa: leastRegulatorInletPa,
  });
  return {
    kgPerS: printedKgPerS * share,
    rowKg: row.holdsKg,
    rowKgPerS,
    printedKgPerS,
    coldShare: share,
    starvesBelowC: boilingPointC(gas, atmospherePa + leastRegulatorInletPa),
    boilsC: boilingPointC(gas, atmospherePa),
    citations: [germanOffTake, offTakePolicy, regulatorInlet, gas === 'propane' ? propaneState : butaneState],
    cautions: [notPrinted, mixed],
  };
}

/** By the share of the inside that is liquid. */
export const lyingTankFactors: readonly { readonly fullShare: number; readonly factor: number }[] = [
  { fullShare: 0.1, factor: 45 },
  { fullShare: 0.2, factor: 60 },
  { fullShare: 0.3, factor: 70 },
  { fullShare: 0.4, factor: 80 },
  { fullShare: 0.5, factor: 90 },
  { fullShare: 0.6, factor: 100 },
];

/** The air and the coldest liquid that the guide reckons with, °C (0 and −20 °F). */
export const lyingTankAir = { ambientC: -160 / 9, liquidC: -260 / 9 } as const;

/**
 * What a lying propane tank can give, from its size and filling: the next lower filling that is printed (nothing below a
 * tenth). The guide is for air of −18 °C: warmer gets no more (own choice), colder less in proportion to what is left above
 * −29 °C. Undefined for butane, for which no table was read.
 *
 * diameterM, lengthM: outside, m (> 0); fullShare: 0 to 1; grossJPerKg: gross heating value of propane, J/kg.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function lyingTankOffTake(input: {
  readonly gas: PureGas;
  readonly diameterM: number;
  readonly lengthM: number;
  readonly fullShare: number;
  readonly ambientC: number;
  readonly grossJPerKg: number;
}): OffTake | undefined {
  const { gas, diameterM, lengthM, fullShare, ambientC, grossJPerKg } = input;
  if (gas !== 'propane') return undefined;
  if (!(grossJPerKg > 0) || !(fullShare >= 0 && fullShare <= 1) || !Number.isFinite(ambientC))
    throw new RangeError(
      'A tank needs a heating value above 0, a filling from 0 to 1 and an ambient temperature.',
    );
  const filling = listedAtMost(lyingTankFactors, (each) => each.fullShare, fullShare);
  const printedW = filling ? lyingTankW(diameterM, lengthM, filling.factor) : 0;
  const span = lyingTankAir.ambientC - lyingTankAir.liquidC;
  const share = Math.min(1, Math.max(0, (ambientC - lyingTankAir.liquidC) / span));
  return {
    kgPerS: (printedW * share) / grossJPerKg,
    printedKgPerS: printedW / grossJPerKg,
    tank: { printedW, factor: filling?.factor ?? 0 },
    coldShare: share,
    starvesBelowC: lyingTankAir.liquidC,
    boilsC: boilingPointC(gas, atmospherePa),
    citations: [lyingTankGuide],
    cautions: ['Empirical, for lying tanks in free air; a tank close under a floor gets less air.', mixed],
  };
}

// --- Printed for other sizes: for second opinions and tests, never scaled ---

/** °C of the columns of {@link hundredPoundRows}: 0, 20, 40, 60 and 70 °F. */
export const hundredPoundAmbientsC: readonly number[] = [0, 20, 40, 60, 70].map((f) => ((f - 32) * 5) / 9);

/** A 100 lb cylinder (45 kg): contents, lb, and Btu/h in each column. */
export const hundredPoundRows: readonly (readonly [number, readonly number[]])[] = [
  [100, [113_000, 167_000, 214_000, 277_000, 300_000]],
  [90, [104_000, 152_000, 200_000, 247_000, 277_000]],
  [80, [94_000, 137_000, 180_000, 214_000, 236_000]],
  [70, [83_000, 122_000, 160_000, 199_000, 214_000]],
  [60, [75_000, 109_000, 140_000, 176_000, 192_000]],
  [50, [64_000, 94_000, 125_000, 154_000, 167_000]],
  [40, [55_000, 79_000, 105_000, 131_000, 141_000]],
  [30, [45_000, 66_000, 85_000, 107_000, 118_000]],
  [20, [36_000, 51_000, 68_000, 83_000, 92_000]],
  [10, [28_000, 38_000, 49_000, 60_000, 66_000]],
];
export const hundredPoundCitations: readonly Citation[] = [hundredPoundTable];

/**
 * Heat of the vapour of one propane cylinder of 45 kg, W gross: the next colder column and the next emptier row that are
 * printed. Undefined below −18 °C or a tenth of the contents: nothing is printed there. For that size alone.
 */
export function hundredPoundW(fullShare: number, ambientC: number): number | undefined {
  const column = listedAtMost(
    hundredPoundAmbientsC.map((temperatureC, index) => ({ temperatureC, index })),
    (each) => each.temperatureC,
    ambientC,
  );
  const found = listedAtMost(hundredPoundRows, ([pounds]) => pounds / 100, fullShare);
  const btuPerHour = column && found?.[1][column.index];
  return btuPerHour === undefined ? undefined : fromBtuPerHour(btuPerHour);
}

export interface ContainerNeed {
  readonly appliance: string;
  readonly inputW: number;
  /** Cylinders needed, of 9, 19 and 48 kg, in cold winter conditions; fractions of several appliances add up. */
  readonly of9Kg: number;
  readonly of19Kg: number;
  readonly of48Kg: number;
}

const need = (
  appliance: string,
  kilojoulesPerHour: number,
  of9Kg: number,
  of19Kg: number,
  of48Kg: number,
): ContainerNeed => ({ appliance, inputW: kilojoulesPerHour / 3.6, of9Kg, of19Kg, of48Kg });

export const southAfricanNeeds: readonly ContainerNeed[] = [
  need('stove of ordinary size', 42_000, 1.5, 0.65, 0.32),
  need('large stove', 63_000, 2.25, 1, 0.5),
  need('hotplate with 2 burners', 16_000, 1, 0.25, 0.12),
  need('instant water heater for several taps', 74_000, 4.6, 2, 1),
  need('instant water heater for one tap', 37_000, 2, 0.84, 0.42),
  need('refrigerator', 2_000, 0.1, 0.04, 0.02),
  need('large flued room heater', 37_000, 2, 0.84, 0.42),
  need('small portable room heater', 5_000, 0.4, 0.16, 0.08),
];
export const southAfricanCitations: readonly Citation[] = [southAfricanContainers];
