import { notNegative, positive } from '../../calc/argument.ts';
import type { Citation } from '../citation.ts';
import {
  boatVentilation,
  caravanVentilationAuNz,
  dwellingCooker,
  dwellingOpenFlue,
  leisureTableFrench,
  leisureTableGerman,
} from './sources.ts';

/*
 * Openings that can never be closed, m² of free area. All are guides that were read at second hand. Free area is what
 * air gets through: a grille or an insect screen has less than the hole behind it.
 */

const squareMillimetres = (area: number): number => area * 1e-6;
const squareCentimetres = (area: number): number => area * 1e-4;

/** A row of the table for leisure vehicles. */
export interface LeisureVentilationRow {
  readonly id:
    | 'open-under-5'
    | 'open-5-to-10'
    | 'open-10-to-15'
    | 'open-15-to-20'
    | 'open-over-20'
    | 'room-sealed-to-10';
  /** Up to which area it holds; whether that area itself belongs to it. */
  readonly upToM2: number;
  readonly upToBelongs: boolean;
  /** High vents in the roof; in a wall they need twice as much. Either, or a mixture in proportion. */
  readonly roofHighM2: number;
  readonly wallHighM2: number;
  readonly lowM2: number;
  readonly citations: readonly Citation[];
}

const row = (
  id: LeisureVentilationRow['id'],
  [upToM2, upToBelongs]: readonly [number, boolean],
  [roofMm2, wallMm2, lowMm2]: readonly [number, number, number],
  citations: readonly Citation[],
): LeisureVentilationRow => ({
  id,
  upToM2,
  upToBelongs,
  roofHighM2: squareMillimetres(roofMm2),
  wallHighM2: squareMillimetres(wallMm2),
  lowM2: squareMillimetres(lowMm2),
  citations,
});

const both = [leisureTableFrench, leisureTableGerman];

/**
 * With any appliance that burns and is not room-sealed. Exactly 10 and 15 m² stand in two rows of the print; they take
 * the larger.
 */
export const leisureOpenRows: readonly LeisureVentilationRow[] = [
  row('open-under-5', [5, false], [7500, 15_000, 1000], both),
  row('open-5-to-10', [10, false], [10_000, 20_000, 1500], both),
  row('open-10-to-15', [15, false], [12_500, 25_000, 2000], [leisureTableFrench]),
  row('open-15-to-20', [20, true], [15_000, 30_000, 3000], [leisureTableFrench]),
  row('open-over-20', [Number.POSITIVE_INFINITY, true], [20_000, 40_000, 5000], [leisureTableFrench]),
];

/** With room-sealed appliances only, or none that burns. Above 10 m² no row was read. */
export const leisureSealedRow: LeisureVentilationRow = row(
  'room-sealed-to-10',
  [10, true],
  [1500, 3000, 500],
  both,
);

export interface LeisureQuestion {
  /** Overall length by overall width without mirrors. */
  readonly outsidePlanM2: number;
  /** Of the living space, where it is known. */
  readonly floorM2?: number;
  /** Anything that burns and takes its air from the room: hob, oven, open-flued or flueless heater. */
  readonly burnsRoomAir: boolean;
}

export interface LeisureVentilation {
  readonly row: LeisureVentilationRow;
  /** The larger of the two areas, and which it is. */
  readonly areaM2: number;
  readonly basis: 'outside plan' | 'floor';
  /** What the floor alone would ask for, where it is another row: the reading of the German leaflet. */
  readonly byFloor?: LeisureVentilationRow;
  /** No row was read for so large a room-sealed vehicle: the row for open appliances stands in, which asks for more. */
  readonly rowNotRead: boolean;
}

/**
 * The row of the table for a vehicle, by the larger of outside plan and floor: two sources read the table on the outside
 * plan, one on the living space. Rises with the area.
 *
 * Throws RangeError if an area is not finite or not above 0.
 */
export function leisureVentilation(question: LeisureQuestion): LeisureVentilation {
  const plan = positive(question.outsidePlanM2, 'The plan area of the vehicle');
  const floor = question.floorM2 === undefined ? 0 : positive(question.floorM2, 'The floor area');
  const areaM2 = Math.max(plan, floor);
  const found = leisureRowFor(areaM2, question.burnsRoomAir);
  const byFloor = question.floorM2 === undefined ? found : leisureRowFor(floor, question.burnsRoomAir);
  return {
    row: found,
    areaM2,
    basis: floor > plan ? 'floor' : 'outside plan',
    ...(byFloor !== found && { byFloor }),
    rowNotRead: !question.burnsRoomAir && found !== leisureSealedRow,
  };
}

/** The row by one area, whatever it is the area of. Throws RangeError if it is not finite or not above 0. */
export function leisureRowFor(areaM2: number, burnsRoomAir: boolean): LeisureVentilationRow {
  positive(areaM2, 'The area');
  const holds = ({ upToM2, upToBelongs }: LeisureVentilationRow) =>
    upToBelongs ? areaM2 <= upToM2 : areaM2 < upToM2;
  if (!burnsRoomAir && holds(leisureSealedRow)) return leisureSealedRow;
  const found = leisureOpenRows.find(holds);
  if (found === undefined) throw new RangeError(`No row for an area of ${areaM2} m².`);
  return found;
}

/**
 * How much of the high opening that a row asks for is there, as a share: roof and wall vents in proportion. 1 is just
 * enough.
 *
 * Throws RangeError if an area is not finite or negative.
 */
export function highShare(
  { roofHighM2, wallHighM2 }: LeisureVentilationRow,
  roofM2: number,
  wallM2: number,
): number {
  return (
    notNegative(roofM2, 'The free area in the roof') / roofHighM2 +
    notNegative(wallM2, 'The free area in the walls') / wallHighM2
  );
}

/** m² for each W of input without flue, for each person, for each W with flue; half of the sum high, half low. */
export const boatVentilationRow = {
  id: 'boats',
  fluelessM2PerW: squareMillimetres(2200) / 1000,
  personM2: squareMillimetres(650),
  fluedM2PerW: squareMillimetres(440) / 1000,
  citations: [boatVentilation],
} as const;

export interface Occupied {
  /** Input of cookers and everything else without flue. */
  readonly fluelessW: number;
  /** Input of what has an open or closed flue. */
  readonly fluedW: number;
  readonly people: number;
}

export interface HighAndLow {
  readonly totalM2: number;
  readonly highM2: number;
  readonly lowM2: number;
}

/**
 * What the boat scheme asks for. Rises with each of the three.
 *
 * Throws RangeError if a value is not finite or negative.
 */
export function boatVentilationM2({ fluelessW, fluedW, people }: Occupied): HighAndLow {
  const totalM2 =
    boatVentilationRow.fluelessM2PerW * notNegative(fluelessW, 'The input without flue') +
    boatVentilationRow.personM2 * notNegative(people, 'The number of people') +
    boatVentilationRow.fluedM2PerW * notNegative(fluedW, 'The input with flue');
  return { totalM2, highM2: totalM2 / 2, lowM2: totalM2 / 2 };
}

/** 1 MJ/h, exact. */
const megajouleAnHourW = 1e6 / 3600;

/** m² for each W of input that is not room-sealed and for each sleeping place, and the least of it. */
export const caravanAuNzRow = {
  id: 'caravans-au-nz',
  inputM2PerW: squareMillimetres(610) / megajouleAnHourW,
  sleeperM2: squareMillimetres(650),
  leastM2: squareMillimetres(4000),
  citations: [caravanVentilationAuNz],
  caution: 'How much of it lies high and how much low was not read.',
} as const;

/**
 * What caravans with gas need in Australia and New Zealand, m². Rises with both.
 *
 * inputW: everything that is not room-sealed, cookers included. Throws RangeError if a value is not finite or negative.
 */
export function caravanAuNzM2(inputW: number, sleepingPlaces: number): number {
  const asked =
    caravanAuNzRow.inputM2PerW * notNegative(inputW, 'The input that is not room-sealed') +
    caravanAuNzRow.sleeperM2 * notNegative(sleepingPlaces, 'The number of sleeping places');
  return Math.max(caravanAuNzRow.leastM2, asked);
}

export interface DwellingCookerRow {
  readonly id: 'cooker-under-5' | 'cooker-5-to-10' | 'cooker-over-10';
  /** Of the room, this volume included where `upToBelongs`. */
  readonly upToM3: number;
  readonly upToBelongs: boolean;
  readonly areaM2: number;
  /** Where a door of the room opens straight to the outside. */
  readonly withOutsideDoorM2: number;
  readonly citations: readonly Citation[];
}

export const dwellingCookerRows: readonly DwellingCookerRow[] = [
  {
    id: 'cooker-under-5',
    upToM3: 5,
    upToBelongs: false,
    areaM2: squareCentimetres(100),
    withOutsideDoorM2: squareCentimetres(100),
    citations: [dwellingCooker],
  },
  {
    id: 'cooker-5-to-10',
    upToM3: 10,
    upToBelongs: true,
    areaM2: squareCentimetres(50),
    withOutsideDoorM2: 0,
    citations: [dwellingCooker],
  },
  {
    id: 'cooker-over-10',
    upToM3: Number.POSITIVE_INFINITY,
    upToBelongs: true,
    areaM2: 0,
    withOutsideDoorM2: 0,
    citations: [dwellingCooker],
  },
];

/**
 * What a dwelling's kitchen with a flueless gas cooker would need: a second opinion, never what lets a van pass. The
 * smaller the room, the more.
 *
 * Throws RangeError if the volume is not finite or not above 0.
 */
export function dwellingCookerRowFor(roomM3: number): DwellingCookerRow {
  positive(roomM3, 'The volume of the room');
  const found = dwellingCookerRows.find(({ upToM3, upToBelongs }) =>
    upToBelongs ? roomM3 <= upToM3 : roomM3 < upToM3,
  );
  if (found === undefined) throw new RangeError(`No row for a room of ${roomM3} m³.`);
  return found;
}

export const dwellingOpenFlueRow = {
  id: 'dwelling-open-flue',
  m2PerW: squareCentimetres(5) / 1000,
  /** Net input that leaks of a house are trusted with. */
  creditedW: 7000,
  citations: [dwellingOpenFlue],
  caution: 'A van has no leaks to credit: count the area without the credit.',
} as const;

export interface OpenFlueArea {
  /** As printed, with the leaks of a house. */
  readonly asPrintedM2: number;
  /** For a room without leaks. */
  readonly withoutLeaksM2: number;
}

/** By net input, W (≥ 0). Throws RangeError if it is not finite or negative. */
export function dwellingOpenFlueM2(netInputW: number): OpenFlueArea {
  const { m2PerW, creditedW } = dwellingOpenFlueRow;
  const input = notNegative(netInputW, 'The net input');
  return { asPrintedM2: m2PerW * Math.max(0, input - creditedW), withoutLeaksM2: m2PerW * input };
}
