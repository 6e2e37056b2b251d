import type { Citation } from '../citation.ts';
import {
  americanGauge,
  conductorStandard,
  conductorStandardSmall,
  saeAreas,
  saeResistance,
  soldByOutsideSize,
  strandedAutomotive,
  ulFlexibleResistance,
  usCodeResistance,
} from './conductor-sources.ts';

/*
 * Sizes of copper conductors and their resistance. Look resistance up here; never divide a resistivity by a nominal
 * area. Outside diameters and masses of cables are not listed: no source for them was read.
 */

/** A gauge without its system means nothing: AWG, SAE and the metric label of one number are three sizes. */
export const conductorSystems = ['mm²', 'AWG', 'SAE'] as const;
export type ConductorSystem = (typeof conductorSystems)[number];

/** `stranded`: class 1 or 2 of IEC 60228, AWG and SAE of few strands; `flexible`: class 5 or 6. */
export const conductorBuilds = ['stranded', 'flexible'] as const;
export type ConductorBuild = (typeof conductorBuilds)[number];

export const conductorFinishes = ['plain', 'tinned'] as const;
export type ConductorFinish = (typeof conductorFinishes)[number];

export interface Conductor {
  readonly system: ConductorSystem;
  /** As it is written: `2.5`, `10`, `1/0`. */
  readonly size: string;
  readonly build: ConductorBuild;
  readonly finish: ConductorFinish;
  /** Nominal where the system is mm², of copper otherwise. */
  readonly areaMm2: number;
  /** Of one conductor, at `resistanceAtC`. The greatest allowed, where the table has it. */
  readonly resistanceOhmPerM: number;
  readonly resistanceAtC: number;
  readonly citations: readonly Citation[];
}

/** [nominal mm², stranded plain, flexible plain, stranded tinned, flexible tinned], Ω/km at 20 °C. */
const metricRows: readonly (readonly [number, number, number, number, number])[] = [
  [0.5, 36.0, 39.0, 36.7, 40.1],
  [0.75, 24.5, 26.0, 24.8, 26.7],
  [1, 18.1, 19.5, 18.2, 20.0],
  [1.5, 12.1, 13.3, 12.2, 13.7],
  [2.5, 7.41, 7.98, 7.56, 8.21],
  [4, 4.61, 4.95, 4.7, 5.09],
  [6, 3.08, 3.3, 3.11, 3.39],
  [10, 1.83, 1.91, 1.84, 1.95],
  [16, 1.15, 1.21, 1.16, 1.24],
  [25, 0.727, 0.78, 0.734, 0.795],
  [35, 0.524, 0.554, 0.529, 0.565],
  [50, 0.387, 0.386, 0.391, 0.393],
  [70, 0.268, 0.272, 0.27, 0.277],
  [95, 0.193, 0.206, 0.195, 0.21],
  [120, 0.153, 0.161, 0.154, 0.164],
  [150, 0.124, 0.129, 0.126, 0.132],
];

/** [nominal mm², plain, tinned], flexible only, Ω/km at 20 °C. */
const smallMetricRows: readonly (readonly [number, number, number])[] = [
  [0.14, 134, 138],
  [0.22, 96, 99],
  [0.25, 76, 79],
  [0.34, 53, 56],
];

const metric = (
  build: ConductorBuild,
  finish: ConductorFinish,
  areaMm2: number,
  ohmPerKm: number,
  source: Citation = conductorStandard,
): Conductor => ({
  system: 'mm²',
  size: `${areaMm2}`,
  build,
  finish,
  areaMm2,
  resistanceOhmPerM: ohmPerKm / 1000,
  resistanceAtC: 20,
  citations: [source],
});

/**
 * [gauge, copper area mm² by the definition, plain, tinned]: plain in Ω/km at 20 °C from 18 to 8 (the greatest allowed
 * for flexible wire, stranded where flexible is not listed), otherwise in Ω per 1000 ft at 75 °C; tinned always the
 * latter.
 */
const gaugeRows: readonly (readonly [
  string,
  number,
  { ohmPerKmAt20: number } | { ohmPerKftAt75: number },
  number,
])[] = [
  ['18', 0.823047, { ohmPerKmAt20: 21.8 }, 8.45],
  ['16', 1.3087, { ohmPerKmAt20: 13.7 }, 5.29],
  ['14', 2.08091, { ohmPerKmAt20: 8.7 }, 3.26],
  ['12', 3.30877, { ohmPerKmAt20: 5.48 }, 2.05],
  ['10', 5.26115, { ohmPerKmAt20: 3.45 }, 1.29],
  ['8', 8.36556, { ohmPerKmAt20: 2.18 }, 0.809],
  ['6', 13.3018, { ohmPerKftAt75: 0.491 }, 0.51],
  ['4', 21.1506, { ohmPerKftAt75: 0.308 }, 0.321],
  ['3', 26.6705, { ohmPerKftAt75: 0.245 }, 0.254],
  ['2', 33.6308, { ohmPerKftAt75: 0.194 }, 0.201],
  ['1', 42.4077, { ohmPerKftAt75: 0.154 }, 0.16],
  ['1/0', 53.4751, { ohmPerKftAt75: 0.122 }, 0.127],
  ['2/0', 67.4309, { ohmPerKftAt75: 0.0967 }, 0.101],
  ['3/0', 85.0288, { ohmPerKftAt75: 0.0766 }, 0.0797],
  ['4/0', 107.219, { ohmPerKftAt75: 0.0608 }, 0.0626],
];

const feetPerMetre = 1 / 0.3048;

const gauge = (
  [size, areaMm2, plain, tinnedOhmPerKft]: (typeof gaugeRows)[number],
  finish: ConductorFinish,
): Conductor => {
  const at20 = finish === 'plain' && 'ohmPerKmAt20' in plain ? plain.ohmPerKmAt20 : undefined;
  const at75 = finish === 'plain' && 'ohmPerKftAt75' in plain ? plain.ohmPerKftAt75 : tinnedOhmPerKft;
  return {
    system: 'AWG',
    size,
    build: 'stranded',
    finish,
    areaMm2,
    resistanceOhmPerM: at20 === undefined ? (at75 / 1000) * feetPerMetre : at20 / 1000,
    resistanceAtC: at20 === undefined ? 75 : 20,
    citations: [at20 === undefined ? usCodeResistance : ulFlexibleResistance, americanGauge],
  };
};

/** [gauge, least area in circular mils]; no row for 3 was read. */
const saeRows: readonly (readonly [string, number])[] = [
  ['18', 1537],
  ['16', 2336],
  ['14', 3702],
  ['12', 5833],
  ['10', 9343],
  ['8', 14810],
  ['6', 24538],
  ['4', 37360],
  ['2', 62450],
  ['1', 77790],
  ['1/0', 98980],
  ['2/0', 125100],
  ['3/0', 158600],
  ['4/0', 205500],
];

/** The area of a circle 0.001 in across. */
const circularMilMm2 = (Math.PI / 4) * 0.0254 ** 2;

const gauges: readonly Conductor[] = gaugeRows.flatMap((row) =>
  conductorFinishes.map((finish) => gauge(row, finish)),
);

const sae: readonly Conductor[] = saeRows.flatMap(([size, circularMils]) => {
  const same = gauges.find((row) => row.size === size && row.finish === 'plain');
  if (same === undefined) return [];
  const areaMm2 = circularMils * circularMilMm2;
  return [
    {
      ...same,
      system: 'SAE' as const,
      areaMm2,
      resistanceOhmPerM: (same.resistanceOhmPerM * same.areaMm2) / areaMm2,
      citations: [saeAreas, saeResistance, ...same.citations],
    },
  ];
});

/** Every size, in each system, build and finish by rising area. */
export const conductors: readonly Conductor[] = [
  ...smallMetricRows.flatMap(([areaMm2, plain, tinned]) => [
    metric('flexible', 'plain', areaMm2, plain, conductorStandardSmall),
    metric('flexible', 'tinned', areaMm2, tinned, conductorStandardSmall),
  ]),
  ...metricRows.flatMap(([areaMm2, strandedPlain, flexiblePlain, strandedTinned, flexibleTinned]) => [
    metric('stranded', 'plain', areaMm2, strandedPlain),
    metric('flexible', 'plain', areaMm2, flexiblePlain),
    metric('stranded', 'tinned', areaMm2, strandedTinned),
    metric('flexible', 'tinned', areaMm2, flexibleTinned),
  ]),
  ...gauges,
  ...sae,
];

/** The sizes of one system, build and finish, by rising area. Gauges are listed as stranded, SAE as plain only. */
export function conductorsOf(
  system: ConductorSystem,
  build: ConductorBuild,
  finish: ConductorFinish,
): readonly Conductor[] {
  return conductors.filter((row) => row.system === system && row.build === build && row.finish === finish);
}

/** One size; undefined if its system does not have it in this build and finish. */
export function conductorFor(
  system: ConductorSystem,
  size: string,
  build: ConductorBuild,
  finish: ConductorFinish,
): Conductor | undefined {
  return conductorsOf(system, build, finish).find((row) => row.size === size);
}

/** Automotive cable of strands 0.30 mm across: its own sizes, with the current its supplier gives. */
export interface StrandedAutomotive {
  readonly strands: number;
  readonly areaMm2: number;
  readonly resistanceOhmPerM: number;
  readonly continuousA: number;
}

export const automotiveStrandDiameterMm = 0.3;
export const automotiveCitation = strandedAutomotive;
export const automotiveCables: readonly StrandedAutomotive[] = [
  { strands: 9, areaMm2: 0.65, resistanceOhmPerM: 0.0294, continuousA: 5.75 },
  { strands: 14, areaMm2: 1, resistanceOhmPerM: 0.0189, continuousA: 8.75 },
  { strands: 28, areaMm2: 2, resistanceOhmPerM: 0.0094, continuousA: 17.5 },
  { strands: 44, areaMm2: 3, resistanceOhmPerM: 0.006, continuousA: 25.5 },
];

/** Cable sold by its outside diameter: a “6 mm” cable may have 4.6 mm² of copper. */
export const soldByOutsideDiameter = {
  citation: soldByOutsideSize,
  rows: [
    { soldAsMm: 2, copperMm2: 0.56 },
    { soldAsMm: 2.5, copperMm2: 0.64 },
    { soldAsMm: 3, copperMm2: 0.85 },
    { soldAsMm: 4, copperMm2: 1.85 },
    { soldAsMm: 5, copperMm2: 2.9 },
    { soldAsMm: 6, copperMm2: 4.6 },
  ],
} as const;
