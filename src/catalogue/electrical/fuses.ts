import type { Citation } from '../citation.ts';
import {
  bladeFuseStandard,
  boatLawFuse,
  boatStandardFuseDistance,
  breakerNeedByCranking,
  continuousMargin,
  discriminationPractice,
  fuseRatingsRemembered,
  industrialFuses,
  inverterManualBreaking,
  largeBankBreaking,
  smallCraftFuse,
  smallCraftFuseDistanceRemembered,
  smallGaugeCapsRead,
  smallGaugeCapsRemembered,
  smallPowerCraftFuse,
} from './conductor-sources.ts';

/*
 * Families of fuses by the names of the trade or of a standard. What a fuse breaks depends on the voltage it breaks it
 * at: the greatest voltage of the system while charging counts, not the nominal one.
 */

export const fuseFamilyIds = [
  'mini blade',
  'blade',
  'blade 58 V',
  'maxi blade',
  'small bolt-in',
  'large bolt-in',
  'ANL',
  'battery-post block',
  'class T',
  'industrial gG',
] as const;
export type FuseFamilyId = (typeof fuseFamilyIds)[number];

export interface FuseFamily {
  readonly id: FuseFamilyId;
  readonly of: string;
  /** Standard ratings, rising. */
  readonly ratingsA: readonly number[];
  /** [direct voltage at most, breaking capacity there, A], rising; above the last the fuse must not be used. */
  readonly breaking: readonly { readonly upToV: number; readonly breakingA: number }[];
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

const bladeRatings = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40] as const;

export const fuseFamilies: readonly FuseFamily[] = [
  {
    id: 'mini blade',
    of: 'small blade fuse (ISO 8820-3 type F)',
    ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
    breaking: [{ upToV: 32, breakingA: 1000 }],
    citations: [bladeFuseStandard, fuseRatingsRemembered],
  },
  {
    id: 'blade',
    of: 'blade fuse (ISO 8820-3 type C)',
    ratingsA: bladeRatings,
    breaking: [{ upToV: 32, breakingA: 1000 }],
    citations: [bladeFuseStandard, fuseRatingsRemembered],
  },
  {
    id: 'blade 58 V',
    of: 'blade fuse marked 58 V (ISO 8820-3 type C)',
    ratingsA: bladeRatings,
    breaking: [{ upToV: 58, breakingA: 1000 }],
    citations: [bladeFuseStandard, fuseRatingsRemembered],
    caution: 'A lithium bank of 48 V is charged at up to 58.4 V, which is above this rating.',
  },
  {
    id: 'maxi blade',
    of: 'large blade fuse (ISO 8820-3 type E)',
    ratingsA: [20, 30, 40, 50, 60, 70, 80, 100],
    breaking: [{ upToV: 32, breakingA: 1000 }],
    citations: [bladeFuseStandard, fuseRatingsRemembered],
  },
  {
    id: 'small bolt-in',
    of: 'bolt-in fuse with 30 mm between its bolts (ISO 8820-5 type SF30)',
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150, 200],
    breaking: [{ upToV: 32, breakingA: 2000 }],
    citations: [fuseRatingsRemembered],
    caution: 'Versions for 58 V and more exist; their data sheet decides.',
  },
  {
    id: 'large bolt-in',
    of: 'bolt-in fuse with 51 mm between its bolts (ISO 8820-5 type SF51)',
    ratingsA: [60, 80, 100, 125, 150, 175, 200, 225, 250, 300, 400, 500],
    breaking: [{ upToV: 32, breakingA: 2000 }],
    citations: [fuseRatingsRemembered],
    caution: 'Versions for 58 V and more exist; their data sheet decides.',
  },
  {
    id: 'ANL',
    of: 'ANL fuse',
    ratingsA: [35, 40, 50, 60, 80, 100, 130, 150, 175, 200, 225, 250, 275, 300, 325, 350, 400, 500],
    // 6000 A is often quoted (remembered); the read figure is the stricter.
    breaking: [{ upToV: 32, breakingA: 2700 }],
    citations: [inverterManualBreaking, fuseRatingsRemembered],
    caution: '2700 A by one maker, 6000 A by others: the data sheet of the fuse at hand decides.',
  },
  {
    id: 'battery-post block',
    of: 'block fuse that stands on the battery post',
    ratingsA: [30, 40, 50, 60, 75, 80, 100, 125, 150, 175, 200, 225, 250, 300],
    breaking: [
      { upToV: 14, breakingA: 10_000 },
      { upToV: 32, breakingA: 5000 },
      { upToV: 58, breakingA: 2000 },
    ],
    citations: [fuseRatingsRemembered],
    caution:
      'At 14.4 V, as lead and lithium batteries are charged with, it already breaks only what it does at 32 V.',
  },
  {
    id: 'class T',
    of: 'class T fuse',
    ratingsA: [110, 125, 150, 175, 200, 225, 250, 300, 350, 400],
    breaking: [{ upToV: 125, breakingA: 20_000 }],
    citations: [fuseRatingsRemembered, largeBankBreaking, inverterManualBreaking],
    caution:
      'Its 20 kA of direct current are remembered, and what boat practice asks of a large bank; 200 kA are for alternating current.',
  },
  {
    id: 'industrial gG',
    of: 'industrial fuse for general use (IEC 60269, gG, in blade-contact or cylindrical form)',
    ratingsA: [2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630],
    breaking: [{ upToV: 220, breakingA: 25_000 }],
    citations: [industrialFuses],
    caution: 'Only a fuse whose data sheet states a direct voltage.',
  },
];

export function fuseFamily(id: FuseFamilyId): FuseFamily {
  const found = fuseFamilies.find((row) => row.id === id);
  if (found === undefined) throw new RangeError(`There is no family of fuses “${id}”.`);
  return found;
}

/** What a fuse of the family breaks at this voltage; undefined if the voltage is above what it is made for. */
export function breakingCapacityA(family: FuseFamily, greatestV: number): number | undefined {
  return family.breaking.find(({ upToV }) => greatestV <= upToV)?.breakingA;
}

/** How far a fuse may exceed the derated ampacity of the conductor behind it, as shares of that ampacity. */
export const fuseAgainstAmpacity = [
  {
    practice: 'strict',
    belowV: Number.POSITIVE_INFINITY,
    share: 1,
    citations: [smallCraftFuse, boatLawFuse],
  },
  { practice: 'boats below 50 V', belowV: 50, share: 1.5, citations: [boatLawFuse, smallPowerCraftFuse] },
  {
    // Only to reach the next standard rating above 100 %.
    practice: 'next standard rating',
    belowV: Number.POSITIVE_INFINITY,
    share: 1.5,
    citations: [boatLawFuse],
  },
] as const;

/** A fuse for a load that runs for hours: at least this many times its current. */
export const fuseMargin = { value: 1.25, citations: [continuousMargin] } as const;

/** Upstream over downstream rating from which two fuses are expected to discriminate. */
export const discrimination = {
  least: 1.6,
  comfortable: 2,
  citations: [discriminationPractice],
} as const;

export interface FuseDistance {
  readonly id:
    | 'US boats'
    | 'boats, standard'
    | 'small power craft'
    | 'small craft, chargers'
    | 'small craft, remembered';
  /** Along the conductor from the source, bare of any sheath. */
  readonly openM?: number;
  /** In a sheath, conduit or enclosure all the way. */
  readonly sheathedM: number;
  /** Sheathed, and on the battery's own supply conductor. */
  readonly batterySheathedM?: number;
  readonly citations: readonly Citation[];
}

/** Exact by definition. */
const inches = (length: number): number => length * 0.0254;

export const fuseDistances: readonly FuseDistance[] = [
  { id: 'US boats', openM: inches(7), sheathedM: inches(40), citations: [boatLawFuse] },
  {
    id: 'boats, standard',
    openM: inches(7),
    sheathedM: inches(40),
    batterySheathedM: inches(72),
    citations: [boatStandardFuseDistance],
  },
  {
    id: 'small power craft',
    openM: 0.18,
    sheathedM: 0.5,
    batterySheathedM: 0.9,
    citations: [smallPowerCraftFuse],
  },
  { id: 'small craft, chargers', sheathedM: 1.8, citations: [smallCraftFuse] },
  {
    id: 'small craft, remembered',
    openM: 0.2,
    sheathedM: 1.8,
    citations: [smallCraftFuseDistanceRemembered],
  },
];

/** What breakers must break by the cold-cranking amperes of a lead bank, 12 and 24 V. */
export const breakerNeed = {
  rows: [
    { upToCrankingA: 650, mainA: 1500, branchA: 750 },
    { upToCrankingA: 1100, mainA: 3000, branchA: 1500 },
    { upToCrankingA: Number.POSITIVE_INFINITY, mainA: 5000, branchA: 2500 },
  ],
  /** Above this the figure of the battery's maker counts. */
  makersFigureAbove: { crankingA: 2200, ampereHours: 500 },
  citations: [breakerNeedByCranking, largeBankBreaking],
} as const;

/** Small gauges have a greatest fuse whatever their ampacity, in US rules. */
export const smallGaugeCaps = [
  { gauge: '18', mostA: 6, citations: [smallGaugeCapsRemembered] },
  { gauge: '16', mostA: 8, citations: [smallGaugeCapsRemembered] },
  { gauge: '14', mostA: 15, citations: [smallGaugeCapsRead] },
  { gauge: '12', mostA: 20, citations: [smallGaugeCapsRead] },
  { gauge: '10', mostA: 30, citations: [smallGaugeCapsRead] },
] as const;
