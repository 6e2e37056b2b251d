import type { Citation } from '../citation.ts';
import { ownChoice, remembered } from './heat-sources.ts';

/** Upper over lower bound beyond which the plain mean of the combined method is not to be used. */
export const greatestBoundRatio = 1.5;
export const boundRatioCitations: readonly Citation[] = [
  remembered('ISO 6946: the combined method is not for walls whose upper bound exceeds 1.5 times the lower'),
];

/** Why ribs are reported as a range. */
export const metalBridgeCitations: readonly Citation[] = [
  {
    title:
      'Steel Construction Institute AD 258: ISO 6946 excludes insulation bridged by metal; BRE Digest 465 instead',
    readAt: 'https://www.newsteelconstruction.com/wp/ad-258-u-values-for-light-steel-frame-construction/',
    provenance: 'read',
  },
  {
    ...remembered('BRE Digest 465: weight of the upper bound by flange, spacing and depth of steel studs'),
    caution:
      'Not looked up: formula from memory, confirmed by one printed calculation sheet of a light steel frame. Fitted to studs in houses, not to the ribs of vans.',
  },
];

/** How much the source says metal studs can raise the loss of an insulated wall: a check of the order. */
export const studIncreaseExample = 0.75;
export const studIncreaseCitation: Citation = {
  title: 'Page of an energy handbook on metal studs: 75 % more loss in its example',
  readAt: 'https://www.civilengineeringhandbook.tk/energy-management/731.html',
  provenance: 'read',
};

/** Share of the resistance of filling that steel studs leave (US correction factors), for studs 406 mm apart. */
export const usStudFactors = [
  { fillM2KPerW: 1.937, depthM: 0.089, share: 0.5 },
  { fillM2KPerW: 3.346, depthM: 0.14, share: 0.37 },
] as const;
export const usStudCitation: Citation = remembered(
  'ASHRAE 90.1, appendix A: 0.50 for R-11 and 0.37 for R-19 in steel studs',
);

/** Where a plan does not say how its ribs are made. */
export const usualRib = { metalM: 0.0024, flangeM: 0.04, spacingM: 0.5, depthM: 0.045 } as const;
export const usualRibCitation: Citation = ownChoice(
  'A hat section of two webs of 1.2 mm, 40 mm wide and 45 mm deep, every 500 mm',
  'Measure the van: ribs differ by model and along the side.',
);
