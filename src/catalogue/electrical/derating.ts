import type { Citation } from '../citation.ts';
import {
  boatLawEngineSpace,
  marineBundles,
  smallCraftAmpacity,
  ukAmbient,
  ukFlexibleCords,
  ukGrouping,
  ukInThermalInsulation,
  ukInThermalInsulationLater,
  ukReelingDrum,
  usCodeAmbient,
  usCodeCount,
} from './conductor-sources.ts';

/*
 * What reduces a tabulated current. Every list is read at the next condition on the safe side, never between two.
 */

export const ambientListIds = [
  'UK fixed wiring',
  'US code',
  'UK flexible cord',
  'boat engine space',
] as const;
export type AmbientListId = (typeof ambientListIds)[number];

export interface AmbientRow {
  readonly insulationC: number;
  /** [ambient °C at most, factor], rising; beyond the last nothing may flow. */
  readonly factors: readonly (readonly [number, number])[];
}

export interface AmbientList {
  readonly id: AmbientListId;
  /** The ambient at which the factor is 1. */
  readonly baseC: number;
  readonly rows: readonly AmbientRow[];
  readonly citations: readonly Citation[];
}

export const ambientLists: readonly AmbientList[] = [
  {
    id: 'UK fixed wiring',
    baseC: 30,
    rows: [
      {
        insulationC: 60,
        factors: [
          [25, 1.04],
          [30, 1],
          [35, 0.91],
          [40, 0.82],
          [45, 0.71],
          [50, 0.58],
          [55, 0.41],
        ],
      },
      {
        insulationC: 70,
        factors: [
          [25, 1.03],
          [30, 1],
          [35, 0.94],
          [40, 0.87],
          [45, 0.79],
          [50, 0.71],
          [55, 0.61],
          [60, 0.5],
          [65, 0.35],
        ],
      },
      {
        insulationC: 85,
        factors: [
          [25, 1.02],
          [30, 1],
          [35, 0.95],
          [40, 0.9],
          [45, 0.85],
          [50, 0.8],
          [55, 0.74],
          [60, 0.67],
          [65, 0.6],
          [70, 0.52],
          [75, 0.43],
          [80, 0.3],
        ],
      },
      {
        insulationC: 90,
        factors: [
          [25, 1.02],
          [30, 1],
          [35, 0.96],
          [40, 0.91],
          [45, 0.87],
          [50, 0.82],
          [55, 0.76],
          [60, 0.71],
          [65, 0.65],
          [70, 0.58],
          [75, 0.5],
          [80, 0.41],
          [85, 0.29],
        ],
      },
    ],
    citations: [ukAmbient],
  },
  {
    id: 'US code',
    baseC: 30,
    rows: [
      {
        insulationC: 60,
        factors: [
          [25, 1.08],
          [30, 1],
          [35, 0.91],
          [40, 0.82],
          [45, 0.71],
          [50, 0.58],
          [55, 0.41],
        ],
      },
      {
        insulationC: 75,
        factors: [
          [25, 1.05],
          [30, 1],
          [35, 0.94],
          [40, 0.88],
          [45, 0.82],
          [50, 0.75],
          [55, 0.67],
          [60, 0.58],
          [70, 0.33],
        ],
      },
      {
        insulationC: 90,
        factors: [
          [25, 1.04],
          [30, 1],
          [35, 0.96],
          [40, 0.91],
          [45, 0.87],
          [50, 0.82],
          [55, 0.76],
          [60, 0.71],
          [70, 0.58],
          [80, 0.41],
        ],
      },
    ],
    citations: [usCodeAmbient],
  },
  {
    id: 'UK flexible cord',
    baseC: 30,
    rows: [
      {
        insulationC: 60,
        factors: [
          [30, 1],
          [35, 0.91],
          [40, 0.82],
          [45, 0.71],
          [50, 0.58],
          [55, 0.41],
        ],
      },
      // Cords of 90 °C insulation are tabulated at less than they could carry, so that their factor falls later.
      {
        insulationC: 90,
        factors: [
          [50, 1],
          [55, 0.96],
          [60, 0.83],
          [65, 0.67],
          [70, 0.47],
        ],
      },
    ],
    citations: [ukFlexibleCords],
  },
  {
    id: 'boat engine space',
    baseC: 30,
    rows: [
      {
        insulationC: 60,
        factors: [
          [30, 1],
          [50, 0.58],
        ],
      },
      {
        insulationC: 75,
        factors: [
          [30, 1],
          [50, 0.75],
        ],
      },
      {
        insulationC: 80,
        factors: [
          [30, 1],
          [50, 0.78],
        ],
      },
      {
        insulationC: 90,
        factors: [
          [30, 1],
          [50, 0.82],
        ],
      },
      {
        insulationC: 105,
        factors: [
          [30, 1],
          [50, 0.85],
        ],
      },
      {
        insulationC: 125,
        factors: [
          [30, 1],
          [50, 0.89],
        ],
      },
      {
        insulationC: 200,
        factors: [
          [30, 1],
          [50, 1],
        ],
      },
    ],
    citations: [boatLawEngineSpace],
  },
];

/**
 * The printed factor of the next ambient that is listed, for the next lower insulation that is. Undefined where neither
 * is listed: too hot, or an insulation below all of them.
 */
export function listedAmbientFactor(
  id: AmbientListId,
  insulationC: number,
  ambientC: number,
): number | undefined {
  const list = ambientLists.find((each) => each.id === id);
  const row = list?.rows.findLast((each) => each.insulationC <= insulationC);
  return row?.factors.find(([upToC]) => ambientC <= upToC)?.[1];
}

export const groupingListIds = [
  'boats',
  'small craft',
  'US code',
  'bunched',
  'single layer on a surface',
  'perforated tray',
  'ladder',
] as const;
export type GroupingListId = (typeof groupingListIds)[number];

export interface GroupingList {
  readonly id: GroupingListId;
  /** What is counted: a direct-current pair is two loaded conductors, but one circuit. */
  readonly counts: 'loaded conductors' | 'circuits';
  /** [so many at most, factor], rising; the last may be without end. */
  readonly factors: readonly (readonly [number, number])[];
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

const without = Number.POSITIVE_INFINITY;

export const groupingLists: readonly GroupingList[] = [
  {
    id: 'boats',
    counts: 'loaded conductors',
    factors: [
      [2, 1],
      [3, 0.7],
      [6, 0.6],
      [24, 0.5],
      [without, 0.4],
    ],
    citations: [marineBundles],
    caution: 'The source binds it from 50 V; below, it is on the safe side.',
  },
  {
    id: 'small craft',
    counts: 'loaded conductors',
    factors: [
      [3, 1],
      [6, 0.7],
      [24, 0.6],
      [without, 0.5],
    ],
    citations: [smallCraftAmpacity],
    caution: 'From memory, and milder than the list for boats.',
  },
  {
    id: 'US code',
    counts: 'loaded conductors',
    factors: [
      [3, 1],
      [6, 0.8],
      [9, 0.7],
      [20, 0.5],
      [30, 0.45],
      [40, 0.4],
      [without, 0.35],
    ],
    citations: [usCodeCount],
    caution: 'On top of a table that already holds three conductors.',
  },
  {
    id: 'bunched',
    counts: 'circuits',
    factors: [
      [1, 1],
      [2, 0.8],
      [3, 0.7],
      [4, 0.65],
      [5, 0.6],
      [6, 0.57],
      [7, 0.54],
      [8, 0.52],
      [9, 0.5],
      [12, 0.45],
      [16, 0.41],
      [20, 0.38],
    ],
    citations: [ukGrouping],
  },
  {
    id: 'single layer on a surface',
    counts: 'circuits',
    factors: [
      [1, 1],
      [2, 0.85],
      [3, 0.79],
      [4, 0.75],
      [5, 0.73],
      [6, 0.72],
      [7, 0.72],
      [8, 0.71],
      [20, 0.7],
    ],
    citations: [ukGrouping],
  },
  {
    id: 'perforated tray',
    counts: 'circuits',
    factors: [
      [1, 1],
      [2, 0.88],
      [3, 0.82],
      [4, 0.77],
      [5, 0.75],
      [6, 0.73],
      [7, 0.73],
      [8, 0.72],
      [9, 0.72],
    ],
    citations: [ukGrouping],
  },
  {
    id: 'ladder',
    counts: 'circuits',
    factors: [
      [1, 1],
      [2, 0.87],
      [3, 0.82],
      [4, 0.8],
      [5, 0.8],
      [6, 0.79],
      [7, 0.79],
      [8, 0.78],
      [9, 0.78],
    ],
    citations: [ukGrouping],
  },
];

/**
 * The factor of the next listed number, which is of circuits or of loaded conductors as the list says. Undefined beyond
 * a list that ends.
 */
export function groupingFactor(id: GroupingListId, count: number): number | undefined {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError(`A group has a whole number of members, at least 1, not ${count}.`);
  return groupingLists.find((each) => each.id === id)?.factors.find(([upTo]) => count <= upTo)?.[1];
}

/** Cables further apart than this many of their diameters need no grouping factor. */
export const apartInDiameters = { value: 2, citations: [ukGrouping] } as const;

/** A cable totally surrounded by thermal insulation: [length at most, m, factor]; longer takes the last. */
export const thermalInsulation = {
  factors: [
    [0, 1],
    [0.05, 0.88],
    [0.1, 0.78],
    [0.2, 0.63],
    [0.4, 0.51],
    [Number.POSITIVE_INFINITY, 0.5],
  ],
  citations: [ukInThermalInsulationLater, ukInThermalInsulation],
  caution: 'For cables up to 10 mm², on the current of a cable clipped to a surface.',
} as const;

export function thermalInsulationFactor(lengthM: number): number {
  if (!(lengthM >= 0))
    throw new RangeError(`A length within insulation must not be less than 0, not ${lengthM}.`);
  return thermalInsulation.factors.find(([upToM]) => lengthM <= upToM)?.[1] ?? 0.5;
}

/** A lead left on its drum, by how it lies. */
export const reelingDrum = {
  radialVentilated: 0.85,
  radialUnventilated: 0.75,
  cylinderByLayers: [0.85, 0.65, 0.45, 0.35],
  citations: [ukReelingDrum],
} as const;
