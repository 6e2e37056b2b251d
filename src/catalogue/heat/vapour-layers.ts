import type { Citation } from '../citation.ts';
import {
  elementCatalogue,
  moistureStandard,
  ownChoice,
  remembered,
  timberComponents,
  vapourStandard,
} from './heat-sources.ts';

/** A thin layer that holds vapour back and no heat. */
export interface VapourFoil {
  readonly id: string;
  /** The stricter (lower) where sources differ, m of still air. */
  readonly equivalentAirM: number;
  readonly massKgPerM2: number;
  readonly citations: readonly Citation[];
}

const foil = (
  id: string,
  equivalentAirM: number,
  massKgPerM2: number,
  ...citations: readonly [Citation, ...Citation[]]
): VapourFoil => ({ id, equivalentAirM, massKgPerM2, citations });

/** The mass of a film, from its thickness and 920 kg/m³. */
const byDensity: Citation = {
  title: 'Mass from thickness and density of polyethylene, 920 kg/m³',
  provenance: 'computed',
};

export const vapourFoils: readonly VapourFoil[] = [
  foil(
    'humidity-variable vapour check',
    2.5,
    0.08,
    {
      title:
        'Forum quotation of a data sheet: for the Glaser method a fixed 2.5 m of air for a humidity-variable check',
      readAt:
        'https://www.hausbau-forum.de/hi/threads/counter-battens-in-the-interior-area-for-roof-insulation.2082/page-2',
      provenance: 'read',
      caution: 'A quotation; one product.',
    },
    remembered('Mass of such a foil, 0.08 kg/m²'),
  ),
  foil(
    'vapour brake',
    6,
    0.1,
    timberComponents,
    remembered('Mass of a vapour brake of paper and film, 0.1 kg/m²'),
  ),
  // The standard's table gives 50 m (memory), its μ of 100 000 gives 15 m.
  foil('polyethylene 0.15 mm', 15, 0.138, elementCatalogue, vapourStandard, byDensity),
  foil('polyethylene 0.2 mm', 20, 0.184, elementCatalogue, byDensity),
  foil('vapour barrier', 50, 0.2, timberComponents, remembered('Mass of a vapour barrier, 0.2 kg/m²')),
  foil(
    'aluminium foil',
    800,
    0.1,
    {
      ...elementCatalogue,
      caution: 'Of 0.008 mm. Tables have 1500 m for 0.05 mm (memory). Only with every joint taped.',
    },
    remembered('Mass of aluminium foil on a carrier, 0.1 kg/m²'),
  ),
];

export const foilNamed = (id: string): VapourFoil | undefined => vapourFoils.find((row) => row.id === id);

export const paints: readonly VapourFoil[] = [
  foil('emulsion paint', 0.1, 0.15, vapourStandard, remembered('Mass of two coats, 0.15 kg/m²')),
  foil('gloss paint', 3, 0.2, vapourStandard, remembered('Mass of two coats, 0.2 kg/m²')),
];

/** A foil as laid in a van: through joints, staples and cable holes far more gets by than through the foil. */
export const laidFoilCaution = 'A foil is worth its figure only where every joint, edge and hole is taped.';

export interface CondensateLimit {
  readonly id: string;
  readonly limitKgPerM2: number;
  readonly citations: readonly Citation[];
}

export const condensateLimits: readonly CondensateLimit[] = [
  {
    id: 'runs off',
    limitKgPerM2: 0.2,
    citations: [
      {
        ...moistureStandard,
        title: 'ISO 13788: above 0.2 kg/m² water may run off a face that takes none up',
      },
    ],
  },
  {
    id: 'on what takes none up',
    limitKgPerM2: 0.5,
    citations: [remembered('DIN 4108-3: 0.5 kg/m² on planes that take up no water')],
  },
  {
    id: 'of a wall',
    limitKgPerM2: 1,
    citations: [
      {
        title:
          'DIN 4108-3: at most 1 kg/m² in a wall, as named in a paper of the Hessian energy saving campaign',
        readAt: 'https://de.scribd.com/document/256220388/Diffusionsbetrachtung',
        provenance: 'read',
        caution: 'For masonry and the like; metal takes up none.',
      },
    ],
  },
];

/**
 * What may be left in a wall after a year, kg/m². Nothing by the letter; but behind a metal skin even the best foil lets a
 * few grams through that never dry on paper, so that no build-up would pass. Ten years of this stay below what runs off.
 */
export const toleratedLeftKgPerM2 = 0.02;
export const toleratedLeftCitation: Citation = ownChoice(
  'Up to 20 g/m² left after a year count as dry behind a metal skin',
  'ISO 13788 wants all of it gone. The figure is a tenth of what may run off.',
);

/** Relative humidity outside where a plan does not say, 0 to 1. */
export const outsideHumidity = { january: 0.9, july: 0.75 } as const;
export const outsideHumidityCitation: Citation = ownChoice(
  'Relative humidity outside: 90 % in January, 75 % in July',
  'Central Europe is 85 to 90 % in winter and 70 to 75 % in summer (memory).',
);

/** How far a month's mean stays from the extreme that a plan names, K. */
export const meanFromExtremeK = 10;
export const meanFromExtremeCitation: Citation = ownChoice(
  'The mean of January 10 K above the winter low, that of July 10 K below the summer high',
  'Where a place of the climate table is near, its monthly means are better.',
);
