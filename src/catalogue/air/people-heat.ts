import { finite } from '../../calc/argument.ts';
import type { Citation } from '../citation.ts';
import { metabolicTable, peopleHeatTable } from './sources.ts';

/** Heat of people for each m² of skin. */
export const metabolicRows = [
  { id: 'sleeping', wPerM2: 40, met: 0.7 },
  { id: 'reclining', wPerM2: 45, met: 0.8 },
  { id: 'seated quiet', wPerM2: 60, met: 1 },
  { id: 'standing relaxed', wPerM2: 70, met: 1.2 },
] as const;

/** W/m² of one met, and the skin of adults, m². */
export const metabolicUnits = {
  metWPerM2: 58.2,
  skinLowM2: 1.5,
  skinM2: 1.8,
  skinHighM2: 2,
  citations: [metabolicTable],
  caution: 'The table has 1.5 to 2.0 m² of skin; 1.8 is the usual figure (memory).',
} as const;

/** What a sleeper warms the room with, W: 40 W/m² of 1.8 m². */
export const sleeperW = 40 * metabolicUnits.skinM2;

export const peopleActivities = ['seated at rest', 'office work', 'standing'] as const;
export type PeopleActivity = (typeof peopleActivities)[number];

/** The room temperatures of the columns, °C. */
export const peopleHeatC = [20, 22, 24, 26] as const;

export interface PeopleHeatRow {
  readonly id: PeopleActivity;
  readonly totalW: number;
  /** Warms the air, in the order of {@link peopleHeatC}. */
  readonly sensibleW: readonly number[];
  /** Leaves as vapour, in the same order. */
  readonly latentW: readonly number[];
}

export const peopleHeatRows: readonly PeopleHeatRow[] = [
  { id: 'seated at rest', totalW: 115, sensibleW: [90, 80, 75, 65], latentW: [25, 35, 40, 50] },
  { id: 'office work', totalW: 140, sensibleW: [100, 90, 80, 70], latentW: [40, 50, 60, 70] },
  { id: 'standing', totalW: 150, sensibleW: [105, 95, 82, 72], latentW: [45, 55, 68, 78] },
];

export const peopleHeatCitations: readonly Citation[] = [peopleHeatTable];

/** J/kg to evaporate water from skin and lungs: 0.69 Wh/g. */
const evaporationJPerKg = 0.69 * 3600 * 1000;

export interface PeopleHeat {
  readonly sensibleW: number;
  readonly latentW: number;
  readonly waterKgS: number;
}

/**
 * Heat and water of one person by the temperature of the room: on a straight line between columns, the outermost column
 * beyond them.
 *
 * Throws RangeError if the temperature is not finite.
 */
export function heatOfPerson(activity: PeopleActivity, roomC: number): PeopleHeat {
  const row = peopleHeatRows.find(({ id }) => id === activity);
  const at = (column: readonly number[]) => between(column, finite(roomC, 'The temperature of the room'));
  const latentW = at(row?.latentW ?? []);
  return { sensibleW: at(row?.sensibleW ?? []), latentW, waterKgS: latentW / evaporationJPerKg };
}

function between(values: readonly number[], roomC: number): number {
  const above = peopleHeatC.findIndex((column) => roomC <= column);
  const high = values[above];
  const low = values[above - 1];
  if (high === undefined) return values.at(-1) ?? Number.NaN;
  if (low === undefined) return high;
  const lowC = peopleHeatC[above - 1] ?? Number.NaN;
  return low + ((roomC - lowC) / ((peopleHeatC[above] ?? Number.NaN) - lowC)) * (high - low);
}
