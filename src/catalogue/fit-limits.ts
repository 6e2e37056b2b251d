import { bodyCorrections, type MeasureName, measureFor } from './body-measures.ts';
import type { Citation } from './citation.ts';
import {
  accessibleKneeSpace,
  accessibleSurfaces,
  aislePractice,
  bedComfortArticle,
  bedMovementCourse,
  britishTableRemembered,
  caravanEscapeWidth,
  computerWorkstation,
  conduitFillThreeUs,
  conduitFillUs,
  conduitSpaceFactorUk,
  crewHeadroom,
  elbowFingertipTable,
  escapeAdviceGerman,
  escapeInlandVessels,
  escapeWindowBuses,
  escapeWindowHouses,
  escapeWindowManufacturedHomes,
  escapeWindowMotorCaravan,
  escapeWindowUs,
  exitPathUs,
  gasPipesInHouses,
  gasPipesOnBoats,
  graspingSpace,
  hallwayRule,
  hipBreadthTable,
  lightWorkPractice,
  lyingAcross,
  polishBedStandard,
  poplitealTable,
  reachOverCounter,
  seatPractice,
  seatToTable,
  seatToTablePractice,
  servicePractice,
  shoesNote,
  shoulderBreadthTable,
  shoulderGripTable,
  singleBedPractice,
  sittingElbowTable,
  sittingHeightTable,
  sitUpPractice,
  sleeperBerthRule,
  soldierTable,
  spaceFactorUk,
  statureTable,
  twoWaysOutUs,
  twoWaysOutYachts,
  worktopBelowElbow,
  worktopFitter,
  worktopPractice,
} from './fit-sources.ts';
import type { Force } from './limits.ts';

/*
 * The limits of fit, movement, reach, escape and routes. No row is law for a conversion: the rules that were read are
 * for houses, boats, lorries or public buildings. Where sources differ about the same thing the stricter is the value
 * and the others stand beside it; where one asks for comfort and another for what just does, there are two rows.
 */

interface FitLimit {
  readonly force: Force;
  /** What the value is a length, share or number of, in words. */
  readonly of: string;
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

export const lengthLimitIds = [
  'bed-clearance',
  'bed-clearance-comfortable',
  'bed-width-single',
  'sitting-headroom',
  'lying-headroom',
  'standing-headroom',
  'passage-width',
  'passage-width-comfortable',
  'escape-path-width',
  'seat-height',
  'seat-width',
  'seat-depth',
  'knee-space-height',
  'knee-space-depth',
  'reach',
  'service-reach',
  'cable-gas-separation',
  'overlap-tolerance',
] as const;
export type LengthLimitId = (typeof lengthLimitIds)[number];

/** A length that something must keep to; just met is kept. */
export interface LengthLimit extends FitLimit {
  readonly id: LengthLimitId;
  readonly valueM: number;
  readonly sense: 'at most' | 'at least';
}

export const bandLimitIds = [
  'work-surface-height',
  'worktop-below-elbow',
  'table-height',
  'table-height-above-seat',
] as const;
export type BandLimitId = (typeof bandLimitIds)[number];

/** Two lengths that something must lie between, the ends included. */
export interface BandLimit extends FitLimit {
  readonly id: BandLimitId;
  readonly leastM: number;
  readonly mostM: number;
}

/** A clear opening, whichever way up it is. */
export interface OpeningLimit extends FitLimit {
  readonly id: 'escape-opening' | 'escape-opening-least';
  readonly shorterSideM: number;
  readonly longerSideM: number;
  readonly areaM2: number;
}

export interface CountLimit extends FitLimit {
  readonly id: 'escape-ways';
  readonly count: number;
  readonly sense: 'at least';
}

export interface ShareLimit extends FitLimit {
  readonly id: 'chase-fill-one' | 'chase-fill-two' | 'chase-fill';
  readonly share: number;
  readonly sense: 'at most';
}

/** Exact by definition. */
const inches = (length: number): number => length * 0.0254;

const measured = (
  end: 'p5M' | 'p95M',
  measure: MeasureName,
  population: 'British women' | 'US women',
): number => measureFor(measure, population)[end];

const personFirst =
  'From a table of many people. Where the plan knows the person, their own measure comes first.';

const beds: readonly LengthLimit[] = [
  {
    id: 'bed-clearance',
    valueM: 0.05,
    of: "beyond the sleeper's lying length (stature + 15 mm), as the length of the bed",
    sense: 'at least',
    force: 'published guide',
    citations: [bedMovementCourse, statureTable, lyingAcross, sleeperBerthRule],
    caution:
      'Enough to lie straight, not to be comfortable. People overstate their own stature by 25 mm on average; measure the bed inside its frame.',
  },
  {
    id: 'bed-clearance-comfortable',
    valueM: inches(9),
    of: "beyond the sleeper's lying length (stature + 15 mm), as the length of the bed",
    sense: 'at least',
    force: 'published guide',
    citations: [bedComfortArticle, bedMovementCourse],
    caution: 'The measure of a bed in a house; few vans have it.',
  },
  {
    id: 'bed-width-single',
    valueM: inches(24),
    of: 'as the width of a bed for one',
    sense: 'at least',
    force: 'published guide',
    citations: [sleeperBerthRule, singleBedPractice, polishBedStandard, shoulderBreadthTable],
    caution: 'A berth to sleep in, narrower than any bed in a house (800 mm and more).',
  },
  {
    id: 'sitting-headroom',
    // The 95th percentile soldier; the British man of the body tables is 7 mm shorter.
    valueM: 0.972,
    of: 'clear above the seat or mattress, to sit up straight',
    sense: 'at least',
    force: 'published guide',
    citations: [soldierTable, sittingHeightTable, sitUpPractice],
    caution: `${personFirst} A soft mattress or cushion gives some back, a hat takes 25 mm.`,
  },
  {
    id: 'lying-headroom',
    valueM: inches(24),
    of: 'clear above the mattress, to lie under',
    sense: 'at least',
    force: 'published guide',
    citations: [sleeperBerthRule],
    caution: 'Nobody sits up under this.',
  },
];

const movement: readonly LengthLimit[] = [
  {
    id: 'standing-headroom',
    valueM: bodyCorrections.shoes.valueM + bodyCorrections.hat.valueM,
    of: 'beyond stature (25 mm of shoes and 25 mm clear, the allowance for a hat), as the standing height',
    sense: 'at least',
    force: 'published guide',
    citations: [statureTable, shoesNote, crewHeadroom],
    caution: 'For standing at a place. Heels take 40 to 50 mm, and a head bobs when it walks.',
  },
  {
    id: 'passage-width',
    valueM: 0.5,
    of: 'clear, as the narrowest spot on the way',
    sense: 'at least',
    force: 'common practice',
    citations: [aislePractice, hipBreadthTable, caravanEscapeWidth, shoulderBreadthTable, hallwayRule],
    caution:
      'The broadest hips but one in twenty, clothed, measure 465 mm and pass; the shoulders of a man as broad measure 520 mm and pass turned a little.',
  },
  {
    id: 'passage-width-comfortable',
    valueM: 0.6,
    of: 'clear, as the narrowest spot on the way',
    sense: 'at least',
    force: 'common practice',
    citations: [aislePractice, hallwayRule],
  },
  {
    id: 'escape-path-width',
    valueM: 0.45,
    of: 'clear, as the narrowest spot on the way from a bed to a way out',
    sense: 'at least',
    force: 'published guide',
    citations: [caravanEscapeWidth, exitPathUs],
    caution: 'It has to stay clear at night, with the bed made and the luggage aboard.',
  },
];

const seats: readonly LengthLimit[] = [
  {
    id: 'seat-height',
    valueM: measured('p5M', 'popliteal height', 'British women'),
    of: 'above the floor, as the front edge of the seat with its cushion pressed down',
    sense: 'at most',
    force: 'published guide',
    citations: [poplitealTable, soldierTable, seatPractice],
    caution: `${personFirst} Without shoes; 25 mm more with them. The seat of a usual dining chair (450 mm) is higher than this: short people's feet hang.`,
  },
  {
    id: 'seat-width',
    valueM: measured('p95M', 'hip breadth', 'US women') + bodyCorrections.mediumClothingOnHips.valueM,
    of: 'for each sitter',
    sense: 'at least',
    force: 'published guide',
    citations: [hipBreadthTable],
    caution: 'For the hips. Elbows and shoulders of two people side by side take more.',
  },
  {
    id: 'seat-depth',
    valueM: measured('p5M', 'buttock-popliteal length', 'British women'),
    of: 'from the backrest to the front edge',
    sense: 'at most',
    force: 'published guide',
    citations: [britishTableRemembered, soldierTable, seatPractice],
    caution: `${personFirst} On a deeper seat short people lose the backrest; a cushion behind the back mends it.`,
  },
  {
    id: 'knee-space-height',
    valueM: inches(27),
    of: 'clear under the table, above the floor',
    sense: 'at least',
    force: 'published guide',
    citations: [accessibleKneeSpace, computerWorkstation],
    caution: 'Made for wheelchairs; beside a low bench less does.',
  },
  {
    id: 'knee-space-depth',
    valueM: inches(19),
    of: 'clear under the table, in from its edge at knee height',
    sense: 'at least',
    force: 'published guide',
    citations: [accessibleKneeSpace, computerWorkstation],
    caution: 'Feet need more: 600 mm.',
  },
];

const reaches: readonly LengthLimit[] = [
  {
    id: 'reach',
    valueM: measured('p5M', 'shoulder-grip length', 'British women'),
    of: 'from the opening to what one hand must take hold of, with the arm in to the shoulder',
    sense: 'at most',
    force: 'published guide',
    citations: [shoulderGripTable, graspingSpace, soldierTable, reachOverCounter, servicePractice],
    caution: `${personFirst} The opening must let the whole arm through, and nobody sees what the hand does there.`,
  },
  {
    id: 'service-reach',
    valueM: measured('p5M', 'elbow-fingertip length', 'British women'),
    of: 'from the opening to what must be undone, emptied or joined with both hands',
    sense: 'at most',
    force: 'published guide',
    citations: [elbowFingertipTable, graspingSpace],
    caution: `${personFirst} What must come out needs room to be drawn out as well.`,
  },
];

const routes: readonly LengthLimit[] = [
  {
    id: 'cable-gas-separation',
    valueM: 0.03,
    of: 'clear between a gas pipe and an electrical cable',
    sense: 'at least',
    force: 'published guide',
    citations: [gasPipesOnBoats, gasPipesInHouses],
    caution:
      'They share no chase at any distance. Switches, sockets and distribution boards keep 150 mm. The gas standard for vehicles was not read: a qualified gas fitter decides.',
  },
  {
    id: 'overlap-tolerance',
    valueM: 0.0005,
    of: 'that two bodies may seem to share before they count as overlapping',
    sense: 'at most',
    force: 'own choice',
    citations: [
      {
        title: 'Half the last millimetre that a plan states: two things drawn to touch do touch',
        provenance: 'own choice',
        caution: 'No board is cut this exactly; leave a real gap.',
      },
    ],
  },
];

export const lengthLimits: readonly LengthLimit[] = [...beds, ...movement, ...seats, ...reaches, ...routes];

export const bandLimits: readonly BandLimit[] = [
  {
    id: 'work-surface-height',
    leastM: inches(28),
    mostM: 0.9,
    of: 'above the floor, as the top of a surface to work at',
    force: 'published guide',
    citations: [accessibleSurfaces, worktopPractice, worktopFitter],
    caution:
      'The upper end is the usual kitchen worktop, used standing; the accessible guide ends at 864 mm. Tall people want more: see what their elbow says.',
  },
  {
    id: 'worktop-below-elbow',
    leastM: 0.1,
    mostM: 0.15,
    of: 'below the elbow of the person who works there standing, shoes included',
    force: 'common practice',
    citations: [worktopFitter, worktopBelowElbow, lightWorkPractice],
    caution: 'A hob sits better lower, a sink higher.',
  },
  {
    id: 'table-height',
    leastM: inches(28),
    mostM: inches(34),
    of: 'above the floor, as the top of a table',
    force: 'published guide',
    citations: [accessibleSurfaces],
    caution: 'For the height above the floor alone; over a low bench the height above the seat comes first.',
  },
  {
    id: 'table-height-above-seat',
    leastM: inches(10),
    mostM: inches(12),
    of: 'above the seat, as the top of a table',
    force: 'common practice',
    citations: [seatToTable, seatToTablePractice, sittingElbowTable],
    caution: 'With the cushion pressed down. Elbows rest 245 mm above the seat on average.',
  },
];

const escapeCaution =
  'Measure the clear hole with the window or hatch open as far as it goes, stays and handles included. It must open from inside without tools or keys.';

/** The strictest that any source asks of an opening in a vehicle. */
export const escapeOpening: OpeningLimit = {
  id: 'escape-opening',
  shorterSideM: 0.5,
  longerSideM: 1.0,
  areaM2: 0.65,
  of: 'clear, as an opening to get out through',
  force: 'published guide',
  citations: [
    escapeAdviceGerman,
    escapeInlandVessels,
    escapeWindowManufacturedHomes,
    escapeWindowHouses,
    escapeWindowUs,
    escapeWindowMotorCaravan,
    caravanEscapeWidth,
    escapeWindowBuses,
  ],
  caution: `${escapeCaution} This is the size of a door or a large window; most sources let a smaller one do.`,
};

/** The least that the rules for leisure vehicles ask of an escape window: the stricter of them for each side. */
export const escapeOpeningLeast: OpeningLimit = {
  id: 'escape-opening-least',
  shorterSideM: 0.45,
  longerSideM: inches(24),
  areaM2: 0.45 * inches(24),
  of: 'clear, as an opening to get out through',
  force: 'published guide',
  citations: [caravanEscapeWidth, escapeWindowUs, escapeWindowMotorCaravan],
  caution: escapeCaution,
};

export const escapeWays: CountLimit = {
  id: 'escape-ways',
  count: 2,
  of: 'independent ways out of the space where people sleep',
  sense: 'at least',
  force: 'published guide',
  citations: [twoWaysOutUs, escapeAdviceGerman, twoWaysOutYachts],
  caution:
    'Independent means that one fire does not close both: not side by side, and not both past the cooker. A door that the luggage or a bike rack blocks is no way out.',
};

/** By the number of cables: the stricter of the US and the UK figure each time. */
const chaseFills = {
  one: {
    id: 'chase-fill-one',
    share: 0.45,
    of: 'the inside area of a chase, filled by one cable',
    sense: 'at most',
    force: 'published guide',
    citations: [spaceFactorUk, conduitFillUs],
  },
  two: {
    id: 'chase-fill-two',
    share: 0.31,
    of: 'the inside area of a chase, filled by two cables',
    sense: 'at most',
    force: 'published guide',
    citations: [conduitFillUs, spaceFactorUk],
    caution: 'Two round cables jam in a round pipe sooner than three.',
  },
  several: {
    id: 'chase-fill',
    share: 0.35,
    of: 'the inside area of a chase, filled by three cables or more',
    sense: 'at most',
    force: 'published guide',
    citations: [conduitSpaceFactorUk, conduitFillThreeUs, spaceFactorUk],
    caution:
      'Room to draw cables in. Cables that lie together also carry less current, which is another check.',
  },
} as const satisfies Readonly<Record<string, ShareLimit>>;

/**
 * How full a chase may be that holds this many cables, their own insulation and sheath included.
 *
 * @throws RangeError when the number is not a whole number of at least 1.
 */
export function chaseFillFor(cables: number): ShareLimit {
  if (!Number.isInteger(cables) || cables < 1)
    throw new RangeError(`A chase holds a whole number of cables, at least 1, not ${cables}.`);
  if (cables === 1) return chaseFills.one;
  return cables === 2 ? chaseFills.two : chaseFills.several;
}

/** @throws Error when the table has no such row, which would be a defect of the table. */
export function lengthLimit(id: LengthLimitId): LengthLimit {
  const row = lengthLimits.find((limit) => limit.id === id);
  if (row === undefined) throw new Error(`The table of fit has no length "${id}".`);
  return row;
}

/** @throws Error when the table has no such row, which would be a defect of the table. */
export function bandLimit(id: BandLimitId): BandLimit {
  const row = bandLimits.find((limit) => limit.id === id);
  if (row === undefined) throw new Error(`The table of fit has no band "${id}".`);
  return row;
}

/** Sums of millimetres written in metres miss by less than this. */
const sameWithinM = 1e-9;

/**
 * Whether a clear opening of two sides, m, is as large as a limit asks, whichever way up; exactly as large is enough.
 *
 * @throws RangeError when a side is not a number of at least 0.
 */
export function opensAsWideAs(limit: OpeningLimit, widthM: number, heightM: number): boolean {
  if (!(widthM >= 0 && heightM >= 0))
    throw new RangeError(
      `The sides of an opening are numbers of at least 0 m, not ${widthM} and ${heightM}.`,
    );
  return (
    Math.min(widthM, heightM) >= limit.shorterSideM - sameWithinM &&
    Math.max(widthM, heightM) >= limit.longerSideM - sameWithinM &&
    widthM * heightM >= limit.areaM2 - sameWithinM
  );
}
