import type { Citation } from '../citation.ts';
import {
  acceptanceArticle,
  batteryFaq,
  chargerMinimumBattery,
  chemistryComparison,
  leadCellDefinition,
  leadChargerNotes,
  lfpNoPeukert,
  lfpRateTables,
  lfpVoltageCharts,
  lifeByChemistryPaper,
  lowestVoltagePractice,
  monitorManual,
  offGridBankGuide,
  offGridSeller,
  rememberedExponents,
  rememberedResistance,
  rememberedSelfDischarge,
  selfDischargeAgmNote,
  selfDischargeBook,
  vrlaDataSheet,
} from './storage-sources.ts';

export const chemistryNames = ['lithium iron phosphate', 'flooded lead', 'AGM', 'gel'] as const;
export type ChemistryName = (typeof chemistryNames)[number];

/** A figure of guidance with what the sources span. The value is the stricter where sources differ. */
export interface Guidance {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

/** How many times a battery can be drawn to a depth before it keeps too little. */
export interface CycleLife {
  /** Share of the capacity drawn each time. */
  readonly depth: number;
  readonly fewest: number;
  readonly most: number;
  readonly citations: readonly Citation[];
}

/**
 * What to assume of a kind of battery as long as its own data sheet is not known. Never law: nothing here can fail a
 * check alone.
 */
export interface BatteryChemistry {
  readonly name: ChemistryName;
  readonly lead: boolean;
  readonly nominalCellV: number;
  /** Cells in what is sold as a 12 V battery. */
  readonly cellsPerBlock: 4 | 6;
  readonly nominalBlockV: number;
  readonly nominalCitations: readonly Citation[];
  /** Of such a block, at the end of what is used: for loads of constant power. */
  readonly lowestBlockV: Guidance;
  /** Share of the rated capacity that is used. */
  readonly usableShare: Guidance;
  /** Charge current as a share of the capacity per hour. Lithium has a table by temperature besides. */
  readonly chargeRatePerHour: Guidance;
  /** Undefined: no published figure was found. */
  readonly dischargeRatePerHour: Guidance | undefined;
  /** Ah kept of Ah given. */
  readonly coulombicEfficiency: Guidance;
  /** Wh back of Wh given. */
  readonly energyEfficiency: Guidance;
  /** Share lost in a month at 20 °C. */
  readonly selfDischargePerMonth: Guidance;
  /** Ω of a 12 V block of 100 Ah. The lower end is strict for fault currents, the higher for drop. */
  readonly resistanceOhmAt100Ah: Guidance | undefined;
  readonly peukertExponent: Guidance;
  readonly cycleLives: readonly CycleLife[];
}

const around = (
  value: number,
  low: number,
  high: number,
  citations: readonly Citation[],
  caution?: string,
): Guidance => ({ value, low, high, citations, ...(caution !== undefined && { caution }) });

const lowestRemembered = 'The lowest voltage of a battery is from memory; its data sheet decides.';

const leadVoltages = {
  lead: true,
  nominalCellV: 2,
  cellsPerBlock: 6,
  nominalBlockV: 12,
  nominalCitations: [leadCellDefinition],
  lowestBlockV: around(10.5, 10.5, 11, [lowestVoltagePractice], lowestRemembered),
} as const;

const leadEfficiencies = {
  coulombicEfficiency: around(0.85, 0.85, 0.85, [chemistryComparison]),
  energyEfficiency: around(0.7, 0.7, 0.85, [chemistryComparison]),
} as const;

const halfUsed = around(0.5, 0.5, 0.5, [offGridBankGuide, chemistryComparison]);

const lithiumIronPhosphate: BatteryChemistry = {
  name: 'lithium iron phosphate',
  lead: false,
  nominalCellV: 3.2,
  cellsPerBlock: 4,
  nominalBlockV: 12.8,
  nominalCitations: [lfpVoltageCharts],
  lowestBlockV: around(12, 12, 12, [lowestVoltagePractice, lfpVoltageCharts], lowestRemembered),
  usableShare: around(0.8, 0.8, 1, [chemistryComparison, offGridBankGuide]),
  chargeRatePerHour: around(
    0.5,
    0.2,
    0.5,
    [leadChargerNotes, chemistryComparison, chargerMinimumBattery],
    'The highest of the usual range, for warm cells. The table by temperature decides below 25 and above 50 °C; 0.2 is kinder.',
  ),
  dischargeRatePerHour: around(
    1,
    0.2,
    1,
    [lfpRateTables],
    'Between 0 and 60 °C. Often the battery’s built-in switch sets less.',
  ),
  coulombicEfficiency: around(0.99, 0.99, 1, [chemistryComparison]),
  energyEfficiency: around(0.92, 0.92, 0.98, [chemistryComparison]),
  selfDischargePerMonth: around(
    0.03,
    0.01,
    0.03,
    [rememberedSelfDischarge],
    'What a battery loses by itself is from memory; its data sheet decides.',
  ),
  resistanceOhmAt100Ah: around(
    0.03,
    0.005,
    0.03,
    [rememberedResistance],
    'The internal resistance of a lithium battery, its switch included, is from memory; its data sheet decides.',
  ),
  peukertExponent: around(1, 1, 1.06, [lfpNoPeukert, rememberedExponents]),
  cycleLives: [{ depth: 0.8, fewest: 1900, most: 6000, citations: [lifeByChemistryPaper, offGridBankGuide] }],
};

const floodedLead: BatteryChemistry = {
  ...leadVoltages,
  ...leadEfficiencies,
  name: 'flooded lead',
  usableShare: halfUsed,
  chargeRatePerHour: around(0.25, 0.1, 0.3, [acceptanceArticle, leadChargerNotes, chemistryComparison]),
  dischargeRatePerHour: undefined,
  selfDischargePerMonth: around(
    0.12,
    0.06,
    0.12,
    [selfDischargeBook],
    'A tubular traction battery; starting and semi-traction batteries lose half of it.',
  ),
  resistanceOhmAt100Ah: around(
    0.01,
    0.004,
    0.01,
    [rememberedResistance],
    'The internal resistance of a battery is from memory; its data sheet decides.',
  ),
  peukertExponent: around(
    1.25,
    1.14,
    1.28,
    [monitorManual, rememberedExponents],
    'The default of the source; its table of batteries spans 1.14 to 1.28.',
  ),
  cycleLives: [
    { depth: 0.2, fewest: 3400, most: 3400, citations: [offGridSeller] },
    {
      depth: 0.5,
      fewest: 300,
      most: 1500,
      citations: [offGridBankGuide, batteryFaq, lifeByChemistryPaper, offGridSeller],
    },
    { depth: 0.8, fewest: 225, most: 225, citations: [batteryFaq] },
  ],
};

const absorbedGlassMat: BatteryChemistry = {
  ...leadVoltages,
  ...leadEfficiencies,
  name: 'AGM',
  usableShare: halfUsed,
  chargeRatePerHour: around(0.3, 0.1, 0.4, [
    leadChargerNotes,
    chemistryComparison,
    acceptanceArticle,
    vrlaDataSheet,
  ]),
  dischargeRatePerHour: around(
    4,
    4,
    4,
    [vrlaDataSheet],
    'The most that one data sheet of a sealed battery allows at all, 160 A from 40 Ah, not a current for hours.',
  ),
  selfDischargePerMonth: around(0.05, 0.02, 0.05, [vrlaDataSheet, selfDischargeBook, selfDischargeAgmNote]),
  resistanceOhmAt100Ah: around(
    0.006,
    0.003,
    0.006,
    [rememberedResistance, vrlaDataSheet],
    'From memory. A data sheet has at most 8 milliohms at 40 Ah, which is 3.2 at 100 Ah.',
  ),
  peukertExponent: around(1.11, 1.05, 1.15, [monitorManual, rememberedExponents]),
  cycleLives: [
    { depth: 0.3, fewest: 1500, most: 1500, citations: [vrlaDataSheet] },
    {
      depth: 0.5,
      fewest: 400,
      most: 1000,
      citations: [offGridBankGuide, vrlaDataSheet, lifeByChemistryPaper],
    },
    { depth: 1, fewest: 200, most: 200, citations: [vrlaDataSheet] },
  ],
};

const gel: BatteryChemistry = {
  ...leadVoltages,
  ...leadEfficiencies,
  name: 'gel',
  usableShare: halfUsed,
  chargeRatePerHour: around(0.25, 0.1, 0.3, [acceptanceArticle, chemistryComparison]),
  dischargeRatePerHour: undefined,
  selfDischargePerMonth: around(0.05, 0.02, 0.05, [vrlaDataSheet, selfDischargeBook]),
  resistanceOhmAt100Ah: undefined,
  peukertExponent: around(1.11, 1.1, 1.14, [monitorManual, rememberedExponents]),
  cycleLives: [{ depth: 0.5, fewest: 500, most: 1200, citations: [offGridBankGuide, lifeByChemistryPaper] }],
};

export const batteryChemistries: Readonly<Record<ChemistryName, BatteryChemistry>> = {
  'lithium iron phosphate': lithiumIronPhosphate,
  'flooded lead': floodedLead,
  AGM: absorbedGlassMat,
  gel,
};
