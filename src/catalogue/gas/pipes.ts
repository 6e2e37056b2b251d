import type { Citation } from '../citation.ts';
import {
  copperTubeTable,
  corrugatedTable,
  elbowPractice,
  inspectorChecklist,
  lowPressureEquation,
  poleFormula,
  steelPipeTable,
  swissPipeTable,
} from './sources.ts';

/** The constant of undiluted propane in the low-pressure equation, from memory, confirmed by the tables below. */
export const propaneDropConstant = 1.2462;
export const pipeFlowCitations: readonly Citation[] = [
  lowPressureEquation,
  copperTubeTable,
  steelPipeTable,
  poleFormula,
];

// --- Tables of capacity ---

/** Heat of a cubic foot that the code's tables are printed with, Btu, and their drop, in of water. */
export const codeTableBasis = { btuPerCubicFoot: 2516, dropInchesOfWater: 0.5 } as const;

export interface CodeTable {
  readonly boresM: readonly number[];
  /** Thousands of Btu/h by length in ft, one for each bore. */
  readonly rows: readonly (readonly [number, readonly number[]])[];
  readonly citations: readonly Citation[];
}

const inches = (values: readonly number[]): number[] => values.map((value) => value * 0.0254);

export const steelCapacity: CodeTable = {
  boresM: inches([0.622, 0.824, 1.049, 1.38, 1.61, 2.067]),
  rows: [
    [10, [291, 608, 1150, 2350, 3520, 6790]],
    [20, [200, 418, 787, 1620, 2420, 4660]],
    [30, [160, 336, 632, 1300, 1940, 3750]],
    [40, [137, 287, 541, 1110, 1660, 3210]],
  ],
  citations: [steelPipeTable],
};
export const copperCapacity: CodeTable = {
  boresM: inches([0.305, 0.402, 0.527, 0.652, 0.745, 0.995, 1.245, 1.481, 1.959]),
  rows: [
    [10, [45, 93, 188, 329, 467, 997, 1800, 2830, 5890]],
    [30, [25, 51, 104, 182, 258, 550, 991, 1560, 3250]],
  ],
  citations: [copperTubeTable],
};

export interface SwissRow {
  readonly outsideM: number;
  readonly wallM: number;
  /** g/h by length in m; lengths without a value are left out. */
  readonly gramsPerHour: readonly (readonly [number, number])[];
}
const swiss = (outsideMm: number, gramsPerHour: SwissRow['gramsPerHour']): SwissRow => ({
  outsideM: outsideMm / 1000,
  wallM: 0.001,
  gramsPerHour,
});
/** Copper at 50 mbar. Not for 30 mbar: the drop behind it is up to 3 mbar. */
export const swissCopper: readonly SwissRow[] = [
  swiss(8, [
    [5, 600],
    [10, 400],
    [15, 300],
    [20, 200],
  ]),
  swiss(10, [
    [5, 1000],
    [10, 800],
    [15, 600],
    [20, 500],
    [30, 300],
    [40, 200],
  ]),
  swiss(15, [
    [5, 4000],
    [10, 2500],
    [15, 2000],
    [20, 1700],
    [30, 1500],
    [40, 1000],
  ]),
  swiss(18, [
    [5, 6000],
    [10, 4000],
    [15, 3500],
    [20, 3000],
    [30, 2500],
    [40, 2000],
  ]),
];
export const swissCitations: readonly Citation[] = [swissPipeTable];

/** Corrugated stainless tube, propane, drop 2.5 mbar: m³/h by length in m. */
export const corrugatedCapacity: readonly {
  readonly nominal: 'DN12' | 'DN15';
  readonly rows: readonly (readonly [number, number])[];
}[] = [
  {
    nominal: 'DN12',
    rows: [
      [3, 1.5],
      [6, 1],
      [9, 0.85],
      [12, 0.82],
      [15, 0.69],
      [20, 0.52],
      [25, 0.41],
      [30, 0.34],
    ],
  },
  {
    nominal: 'DN15',
    rows: [
      [3, 2.9],
      [6, 1.9],
      [9, 1.5],
      [12, 1.3],
      [15, 1.1],
      [20, 0.95],
      [25, 0.92],
      [30, 0.88],
    ],
  },
];
export const corrugatedDropPa = 250;
export const corrugatedCitations: readonly Citation[] = [corrugatedTable];

/**
 * What corrugated tube carries at its length, m³/s: the next longer row that is printed; undefined beyond 30 m. Its waves
 * make it carry less than smooth tube of the same bore, so that the equations for smooth tube do not hold for it.
 */
export function corrugatedCapacityM3S(nominal: 'DN12' | 'DN15', lengthM: number): number | undefined {
  if (!(lengthM > 0)) throw new RangeError(`The length of a tube must be greater than 0, not ${lengthM}.`);
  const rows = corrugatedCapacity.find((each) => each.nominal === nominal)?.rows ?? [];
  const found = rows.find(([length]) => length >= lengthM - 1e-9);
  return found && found[1] / 3600;
}

// --- Fittings, walls, clips ---

/** What a fitting adds to the length, m. */
export const fittingLength = {
  bendM: 0.3,
  teeM: 0.5,
  citations: [corrugatedTable, elbowPractice],
  caution: 'Printed for corrugated tube DN12; for smooth tube of 8 and 10 mm it is on the high side.',
} as const;

/** What a bend and a tee of a tube of this bore add to its length, m. */
export const fittingLengthsM = (boreM: number): { readonly bendM: number; readonly teeM: number } => ({
  bendM: Math.max(fittingLength.bendM, 30 * boreM),
  teeM: Math.max(fittingLength.teeM, 60 * boreM),
});

/** Length of tube with what its fittings add, m: the greater of the printed lengths and 30 or 60 bores. */
export function equivalentLengthM(input: {
  readonly lengthM: number;
  readonly boreM: number;
  readonly bends: number;
  readonly tees: number;
}): number {
  const { lengthM, boreM, bends, tees } = input;
  for (const value of [lengthM, boreM, bends, tees])
    if (!(value >= 0) || !Number.isFinite(value))
      throw new RangeError(`Lengths, bores and counts must be finite and at least 0, not ${value}.`);
  const { bendM, teeM } = fittingLengthsM(boreM);
  return lengthM + bends * bendM + tees * teeM;
}

export const gasPipeKinds = ['copper', 'steel', 'stainless steel'] as const;
export interface GasPipeKind {
  readonly standard: string;
  readonly clipsM: number;
  readonly citations: readonly Citation[];
}
/** Pipes that a vehicle's gas may run in, and how far apart their clips may be. Plastic is not among them. */
export const gasPipeStandards: Readonly<Record<(typeof gasPipeKinds)[number], GasPipeKind>> = {
  copper: { standard: 'EN 1057', clipsM: 0.5, citations: [inspectorChecklist] },
  steel: { standard: 'EN 10305-1 and -2', clipsM: 1, citations: [inspectorChecklist] },
  'stainless steel': { standard: 'EN ISO 1127', clipsM: 1, citations: [inspectorChecklist] },
};

/** Metric tubes that keep the least wall of a tenth, by rising bore, m (8 × 0.8 and 10 × 1 are named by the checklist). */
export const metricTubes: readonly { readonly outsideM: number; readonly wallM: number }[] = [
  { outsideM: 0.008, wallM: 0.001 },
  { outsideM: 0.008, wallM: 0.0008 },
  { outsideM: 0.01, wallM: 0.001 },
  { outsideM: 0.012, wallM: 0.0015 },
  { outsideM: 0.015, wallM: 0.0015 },
  { outsideM: 0.018, wallM: 0.002 },
  { outsideM: 0.022, wallM: 0.0025 },
];
export const metricTubeCitations: readonly Citation[] = [
  inspectorChecklist,
  { title: 'Sizes of metric tube above 10 mm as they are sold', provenance: 'common practice' },
];
