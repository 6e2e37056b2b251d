import type { Citation } from '../citation.ts';
import type { ChemistryName } from './batteries.ts';
import {
  hydrogenLimits,
  tractionStandard,
  usBatteryCompartment,
  ventilationStandard,
} from './storage-sources.ts';

export const chargeModes = ['float', 'boost'] as const;
export type ChargeMode = (typeof chargeModes)[number];

/** Whether the cells are open to the air or close themselves with a valve. */
export type LeadCell = 'vented' | 'valve-regulated';

/** A row of the standard: the current that makes gas is the charge current × emission factor × safety factor. */
export interface GassingRow {
  readonly cell: LeadCell;
  readonly mode: ChargeMode;
  readonly cellV: number;
  readonly chargeMaPerAh: number;
  readonly emissionFactor: number;
  readonly safetyFactor: number;
  readonly gassingMaPerAh: number;
}

const row = (
  cell: LeadCell,
  mode: ChargeMode,
  cellV: number,
  chargeMaPerAh: number,
  gassingMaPerAh: number,
): GassingRow => ({
  cell,
  mode,
  cellV,
  chargeMaPerAh,
  emissionFactor: cell === 'vented' ? 1 : 0.2,
  safetyFactor: 5,
  gassingMaPerAh,
});

export const stationaryGassing: readonly GassingRow[] = [
  row('vented', 'float', 2.23, 1, 5),
  row('vented', 'boost', 2.4, 4, 20),
  row('valve-regulated', 'float', 2.27, 1, 1),
  row('valve-regulated', 'boost', 2.4, 8, 8),
];

/** Traction part, voltage held at 2.4 V a cell: 2 and 1 A for each 100 Ah. */
export const tractionGassingMaPerAh: Readonly<Record<LeadCell, number>> = {
  vented: 20,
  'valve-regulated': 10,
};

export interface Gassing {
  readonly gassingPerHour: number;
  readonly citations: readonly Citation[];
}

const leadCells: Readonly<Record<ChemistryName, LeadCell | undefined>> = {
  'lithium iron phosphate': undefined,
  'flooded lead': 'vented',
  AGM: 'valve-regulated',
  gel: 'valve-regulated',
};

/**
 * The gassing current for each Ah, A/Ah: on boost the stricter of the stationary and the traction part. Undefined for
 * lithium iron phosphate, to which the standard does not apply.
 */
export function gassingFor(chemistry: ChemistryName, mode: ChargeMode): Gassing | undefined {
  const cell = leadCells[chemistry];
  if (cell === undefined) return undefined;
  const stationary = stationaryGassing
    .filter((each) => each.cell === cell && each.mode === mode)
    .map((each) => each.gassingMaPerAh);
  if (mode === 'float')
    return { gassingPerHour: Math.max(...stationary) / 1000, citations: [ventilationStandard] };
  return {
    gassingPerHour: Math.max(...stationary, tractionGassingMaPerAh[cell]) / 1000,
    citations: [ventilationStandard, tractionStandard],
  };
}

/** Least distance between inlet and outlet on one wall. */
export const ventSeparation = { valueM: 2, citations: [tractionStandard] } as const;

/** Free area at the top, and again at the bottom, of a lead battery's compartment in the US. */
export const usCompartmentVent = {
  areaM2: 1100e-6,
  withinM: 0.05,
  citations: [usBatteryCompartment],
} as const;

/** By volume of air. */
export const hydrogenShares = {
  lowerLimit: 0.04,
  upperLimit: 0.75,
  design: 0.01,
  citations: [hydrogenLimits],
} as const;
