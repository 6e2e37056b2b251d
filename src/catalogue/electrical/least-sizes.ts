import type { Citation } from '../citation.ts';
import {
  boatLawLeastSize,
  caravanLeastSize,
  hookUpLeadSize,
  hookUpLeadSizesRemembered,
  parkTrailerBonding,
  plugFuseFlex,
  smallCraftLeastSize,
} from './conductor-sources.ts';

/** The smallest conductors that rules allow, whatever current they carry. */
export interface LeastSize {
  readonly id: LeastSizeId;
  readonly areaMm2: number;
  readonly of: string;
  readonly citations: readonly Citation[];
}

export const leastSizeIds = [
  'extra-low voltage, single',
  'extra-low voltage, single, US boats',
  'extra-low voltage, in a sheath',
  'extra-low voltage, in a sheath, US boats',
  'mains wiring',
  'mains bonding',
  'chassis bonding, US',
  'flex behind a 3 A plug fuse',
  'flex behind a 13 A plug fuse',
] as const;
export type LeastSizeId = (typeof leastSizeIds)[number];

export const leastSizes: readonly LeastSize[] = [
  {
    id: 'extra-low voltage, single',
    areaMm2: 1,
    of: 'a conductor of its own, longer than 200 mm, 12 to 50 V',
    citations: [smallCraftLeastSize],
  },
  {
    id: 'extra-low voltage, single, US boats',
    areaMm2: 1.3087,
    of: 'a conductor of its own (16 AWG)',
    citations: [boatLawLeastSize],
  },
  {
    id: 'extra-low voltage, in a sheath',
    areaMm2: 0.75,
    of: 'a core of a sheathed cable, or within a panel, 12 to 50 V',
    citations: [smallCraftLeastSize],
  },
  {
    id: 'extra-low voltage, in a sheath, US boats',
    areaMm2: 0.823047,
    of: 'a core of a sheathed cable (18 AWG)',
    citations: [boatLawLeastSize],
  },
  { id: 'mains wiring', areaMm2: 1.5, of: 'a mains conductor in the vehicle', citations: [caravanLeastSize] },
  {
    id: 'mains bonding',
    areaMm2: 4,
    of: 'a bonding conductor to metal parts of the vehicle',
    citations: [caravanLeastSize],
  },
  {
    id: 'chassis bonding, US',
    areaMm2: 8.36556,
    of: 'a bonding conductor to the chassis or metal parts (8 AWG)',
    citations: [parkTrailerBonding],
  },
  {
    id: 'flex behind a 3 A plug fuse',
    areaMm2: 0.5,
    of: 'a flex behind a plug fuse of 3 A',
    citations: [plugFuseFlex],
  },
  {
    id: 'flex behind a 13 A plug fuse',
    areaMm2: 1.25,
    of: 'a flex behind a plug fuse of 13 A',
    citations: [plugFuseFlex],
  },
];

export function leastSize(id: LeastSizeId): LeastSize {
  const found = leastSizes.find((row) => row.id === id);
  if (found === undefined) throw new RangeError(`There is no least size “${id}”.`);
  return found;
}

/** The lead between the post on the pitch and the inlet of the vehicle. */
export const hookUpLead = {
  lengthM: 25,
  toleranceM: 2,
  /** [rating at most, A, least mm²] */
  leastMm2: [
    { upToA: 16, areaMm2: 2.5, citations: [hookUpLeadSize] },
    { upToA: 25, areaMm2: 4, citations: [hookUpLeadSizesRemembered] },
    { upToA: 32, areaMm2: 6, citations: [hookUpLeadSizesRemembered] },
    { upToA: 63, areaMm2: 16, citations: [hookUpLeadSizesRemembered] },
    { upToA: 100, areaMm2: 35, citations: [hookUpLeadSizesRemembered] },
  ],
} as const;
