import type { Citation } from '../citation.ts';
import {
  aircraftBundles,
  boatLawAmpacity,
  smallCraftAmpacity,
  ukFlexibleCords,
  ukHeavyFlexible60,
  ukHeavyFlexible90,
  ukSingleCores70,
  ukSingleCores70Remembered,
  ukSingleCores90,
  usCodeAmpacity,
  usCodeAmpacityRemembered,
} from './conductor-sources.ts';

/*
 * Currents that conductors carry for good, as tabulated. Nothing is interpolated: a size or an insulation between two
 * listed ones takes the lower. The base ambient of the table goes into the ambient factor.
 */

export const ampacityTableIds = [
  'boat law, single in free air',
  'small craft, single in free air',
  'in conduit in an insulated wall',
  'in conduit on a wall or in trunking',
  'clipped to a surface',
  'heavy flexible cable',
  'flexible cord',
  'US raceway or cable',
  'aircraft bundle',
] as const;
export type AmpacityTableId = (typeof ampacityTableIds)[number];

export interface AmpacityRow {
  /** As it is written: `2.5` mm², or a gauge. */
  readonly size: string;
  /** Nominal mm², or of copper for a gauge. */
  readonly areaMm2: number;
  /** In the order of the table's `insulationC`; undefined where the table has no value. */
  readonly currentsA: readonly (number | undefined)[];
  /** Other than those of the table. */
  readonly citations?: readonly Citation[];
}

export interface AmpacityTable {
  readonly id: AmpacityTableId;
  readonly system: 'mm²' | 'AWG';
  /** The ambient temperature the currents hold for. */
  readonly ambientC: number;
  readonly laying: 'free air' | 'enclosed' | 'bundled';
  /** So many loaded conductors lie together in the table already. */
  readonly loadedConductors: number;
  /** Temperature that the insulation bears, °C, rising. */
  readonly insulationC: readonly number[];
  /** By rising area. */
  readonly rows: readonly AmpacityRow[];
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

/** Areas of copper by the gauge's definition, mm². */
const gaugeAreas: Readonly<Record<string, number>> = {
  '24': 0.20473,
  '22': 0.325534,
  '20': 0.517619,
  '18': 0.823047,
  '16': 1.3087,
  '14': 2.08091,
  '12': 3.30877,
  '10': 5.26115,
  '8': 8.36556,
  '6': 13.3018,
  '4': 21.1506,
  '3': 26.6705,
  '2': 33.6308,
  '1': 42.4077,
  '1/0': 53.4751,
  '2/0': 67.4309,
  '3/0': 85.0288,
  '4/0': 107.219,
};

type Currents = readonly (number | undefined)[];

const byGauge = (size: string, currentsA: Currents, citations?: readonly Citation[]): AmpacityRow => ({
  size,
  areaMm2: gaugeAreas[size] ?? Number.NaN,
  currentsA,
  ...(citations !== undefined && { citations }),
});

const byArea = (areaMm2: number, currentsA: Currents, citations?: readonly Citation[]): AmpacityRow => ({
  size: `${areaMm2}`,
  areaMm2,
  currentsA,
  ...(citations !== undefined && { citations }),
});

const boatLaw: AmpacityTable = {
  id: 'boat law, single in free air',
  system: 'AWG',
  ambientC: 30,
  laying: 'free air',
  loadedConductors: 1,
  insulationC: [60, 75, 80, 90, 105, 125, 200],
  rows: [
    byGauge('18', [10, 10, 15, 20, 20, 25, 25]),
    byGauge('16', [15, 15, 20, 25, 25, 30, 35]),
    byGauge('14', [20, 20, 25, 30, 35, 40, 45]),
    byGauge('12', [25, 25, 35, 40, 45, 50, 55]),
    byGauge('10', [40, 40, 50, 55, 60, 70, 70]),
    byGauge('8', [55, 65, 70, 70, 80, 90, 100]),
    byGauge('6', [80, 95, 100, 100, 120, 125, 135]),
    byGauge('4', [105, 125, 130, 135, 160, 170, 180]),
    byGauge('3', [120, 145, 150, 155, 180, 195, 210]),
    byGauge('2', [140, 170, 175, 180, 210, 225, 240]),
    byGauge('1', [165, 195, 210, 210, 245, 265, 280]),
    byGauge('1/0', [195, 230, 245, 245, 285, 305, 325]),
    byGauge('2/0', [225, 265, 285, 285, 330, 355, 370]),
    byGauge('3/0', [260, 310, 330, 330, 385, 410, 430]),
    byGauge('4/0', [300, 360, 385, 385, 445, 475, 510]),
  ],
  citations: [boatLawAmpacity],
  caution:
    'About twice what the same wire may carry in a raceway. By gauge of the AWG; SAE wire of the same number carries about 7 % less.',
};

const smallCraft: AmpacityTable = {
  id: 'small craft, single in free air',
  system: 'mm²',
  ambientC: 30,
  laying: 'free air',
  loadedConductors: 1,
  insulationC: [70, 85, 105, 125, 200],
  rows: [
    byArea(0.75, [10, 12, 16, 20, 25]),
    byArea(1, [14, 18, 20, 25, 35]),
    byArea(1.5, [18, 21, 25, 30, 40]),
    byArea(2.5, [25, 30, 35, 40, 45]),
    byArea(4, [35, 40, 45, 50, 55]),
    byArea(6, [45, 50, 60, 70, 75]),
    byArea(10, [65, 70, 90, 100, 120]),
    byArea(16, [90, 100, 130, 150, 170]),
    byArea(25, [120, 140, 170, 185, 200]),
    byArea(35, [160, 185, 210, 225, 240]),
    byArea(50, [210, 230, 270, 300, 325]),
    byArea(70, [265, 285, 330, 360, 375]),
    byArea(95, [310, 330, 390, 410, 430]),
    byArea(120, [360, 400, 450, 480, 520]),
    // Only one of the two recollections has this row.
    byArea(150, [380, 430, 475, 520, 560]),
  ],
  citations: [smallCraftAmpacity],
  caution:
    'What cables bear by ISO 10133 and ISO 13297 is from memory, the standards were not read; its column for 85 °C stands for 85 to 90 °C.',
};

/** 70 and 90 °C, from two tables of one book. */
const fixedWiring = (
  id: AmpacityTableId,
  laying: AmpacityTable['laying'],
  rows: readonly (readonly [number, number, number])[],
): AmpacityTable => ({
  id,
  system: 'mm²',
  ambientC: 30,
  laying,
  loadedConductors: 2,
  insulationC: [70, 90],
  rows: rows.map(([areaMm2, at70, at90]) =>
    byArea(
      areaMm2,
      [at70, at90],
      areaMm2 === 4 || areaMm2 === 25 ? [ukSingleCores70Remembered, ukSingleCores90] : undefined,
    ),
  ),
  citations: [ukSingleCores70, ukSingleCores90],
});

const insulatedWall = fixedWiring('in conduit in an insulated wall', 'enclosed', [
  [1, 11, 14],
  [1.5, 14.5, 19],
  [2.5, 20, 26],
  [4, 26, 35],
  [6, 34, 45],
  [10, 46, 61],
  [16, 61, 81],
  [25, 80, 106],
  [35, 99, 131],
  [50, 119, 158],
  [70, 151, 200],
]);

const wallOrTrunking = fixedWiring('in conduit on a wall or in trunking', 'enclosed', [
  [1, 13.5, 17],
  [1.5, 17.5, 23],
  [2.5, 24, 31],
  [4, 32, 42],
  [6, 41, 54],
  [10, 57, 75],
  [16, 76, 100],
  [25, 101, 133],
  [35, 125, 164],
  [50, 151, 198],
  [70, 192, 253],
]);

const clipped = fixedWiring('clipped to a surface', 'free air', [
  [1, 15.5, 19],
  [1.5, 20, 25],
  [2.5, 27, 34],
  [4, 37, 46],
  [6, 47, 59],
  [10, 65, 81],
  [16, 87, 109],
  [25, 114, 143],
  [35, 141, 176],
  [50, 182, 228],
  [70, 234, 293],
]);

const heavyFlexible: AmpacityTable = {
  id: 'heavy flexible cable',
  system: 'mm²',
  ambientC: 30,
  laying: 'free air',
  loadedConductors: 2,
  insulationC: [60, 90],
  rows: [
    byArea(4, [30, 42]),
    byArea(6, [39, 55]),
    byArea(10, [51, 76]),
    byArea(16, [73, 103]),
    byArea(25, [97, 136]),
    byArea(35, [140, 200]),
    byArea(50, [175, 250]),
    byArea(70, [216, 310]),
    byArea(95, [258, 369]),
    byArea(120, [302, 432]),
  ],
  citations: [ukHeavyFlexible60, ukHeavyFlexible90],
};

const flexibleCord: AmpacityTable = {
  id: 'flexible cord',
  system: 'mm²',
  ambientC: 30,
  laying: 'free air',
  loadedConductors: 2,
  insulationC: [60],
  rows: [
    byArea(0.5, [3]),
    byArea(0.75, [6]),
    byArea(1, [10]),
    byArea(1.25, [13]),
    // The list for the flex of appliances has 15 and 20 A for these two; the stricter is taken.
    byArea(1.5, [15]),
    byArea(2.5, [20]),
    byArea(4, [32]),
  ],
  citations: [ukFlexibleCords],
  caution:
    'BS 7671 has 16 A for 1.5 mm² and 25 A for 2.5 mm²; the list for appliance flex is stricter and is used.',
};

const usRaceway: AmpacityTable = {
  id: 'US raceway or cable',
  system: 'AWG',
  ambientC: 30,
  laying: 'enclosed',
  loadedConductors: 3,
  insulationC: [60, 75, 90],
  rows: [
    byGauge('14', [15, 20, 25]),
    byGauge('12', [20, 25, 30]),
    byGauge('10', [30, 35, 40]),
    byGauge('8', [40, 50, 55]),
    byGauge('6', [55, 65, 75], [usCodeAmpacityRemembered]),
    byGauge('4', [70, 85, 95]),
    byGauge('3', [85, 100, 115]),
    byGauge('2', [95, 115, 130]),
    byGauge('1', [110, 130, 145]),
    byGauge('1/0', [125, 150, 170], [usCodeAmpacityRemembered]),
    byGauge('2/0', [145, 175, 195]),
    byGauge('3/0', [165, 200, 225]),
    byGauge('4/0', [195, 230, 260]),
  ],
  citations: [usCodeAmpacity],
  caution: 'Fuses behind 14, 12 and 10 AWG are limited to 15, 20 and 30 A whatever this table says.',
};

const aircraft: AmpacityTable = {
  id: 'aircraft bundle',
  system: 'AWG',
  ambientC: 70,
  laying: 'bundled',
  loadedConductors: 33,
  insulationC: [105, 150, 200],
  rows: [
    byGauge('24', [2.5, 4, 5]),
    byGauge('22', [3, 5, 6]),
    byGauge('20', [4, 7, 9]),
    byGauge('18', [6, 9, 12]),
    byGauge('16', [7, 11, 14]),
    byGauge('14', [10, 14, 18]),
    byGauge('12', [13, 19, 25]),
    byGauge('10', [17, 26, 32]),
    byGauge('8', [38, 57, 71]),
    byGauge('6', [50, 76, 97]),
    byGauge('4', [68, 103, 133]),
    byGauge('2', [95, 141, 179]),
    byGauge('1', [113, 166, 210]),
    byGauge('1/0', [128, 192, 243]),
    byGauge('2/0', [147, 222, 285]),
    byGauge('3/0', [172, 262, 335]),
    byGauge('4/0', [204, 310, 395]),
  ],
  citations: [aircraftBundles],
  caution: 'A lower bound: hot, high up and tightly bundled; from 8 AWG nine wires instead of 33.',
};

export const ampacityTables: readonly AmpacityTable[] = [
  boatLaw,
  smallCraft,
  insulatedWall,
  wallOrTrunking,
  clipped,
  heavyFlexible,
  flexibleCord,
  usRaceway,
  aircraft,
];

export function ampacityTable(id: AmpacityTableId): AmpacityTable {
  const found = ampacityTables.find((table) => table.id === id);
  if (found === undefined) throw new RangeError(`There is no ampacity table “${id}”.`);
  return found;
}

export interface ListedAmpacity {
  readonly currentA: number;
  /** The row it is from; a smaller size than asked for where that is not listed. */
  readonly row: AmpacityRow;
  /** The column it is from, °C; at most what was asked for. */
  readonly insulationC: number;
  /** The ambient it holds for, °C. */
  readonly ambientC: number;
  readonly citations: readonly Citation[];
}

/**
 * The current of the next size and the next insulation that are listed, both not above what there is: never
 * interpolated. Undefined below the table. A missing cell of a size passes to the next lower column. `areaMm2` is the
 * area of the conductor's own system; in a table of another system give the copper that its resistance stands for.
 */
export function ampacityOf(
  id: AmpacityTableId,
  areaMm2: number,
  insulationC: number,
): ListedAmpacity | undefined {
  const table = ampacityTable(id);
  // Areas of gauges are listed to six digits.
  const row = table.rows.findLast((each) => each.areaMm2 <= areaMm2 * (1 + 1e-5));
  if (row === undefined) return undefined;
  for (const [column, bearsC] of [...table.insulationC.entries()].reverse()) {
    const currentA = row.currentsA[column];
    if (bearsC > insulationC || currentA === undefined) continue;
    return {
      currentA,
      row,
      insulationC: bearsC,
      ambientC: table.ambientC,
      citations: row.citations ?? table.citations,
    };
  }
  return undefined;
}
