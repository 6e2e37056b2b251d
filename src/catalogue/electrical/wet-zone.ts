import type { Citation } from '../citation.ts';

const bathroomZone: Citation = {
  title:
    'No switches, sockets or distribution within 0.6 m of a shower up to 2.25 m above the floor, as for bathrooms in houses',
  provenance: 'common practice',
  caution:
    'No source was looked up, and the zones are written for mains in houses. A watertight wall ends the zone.',
};

/** Where water splashes. */
export const wetZone = { aroundM: 0.6, upToM: 2.25, citations: [bathroomZone] } as const;
