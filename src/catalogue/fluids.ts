import type { Citation } from './citation.ts';
import { designValues } from './sources.ts';

export const fluidNames = ['fresh', 'waste', 'diesel', 'petrol', 'propane', 'butane'] as const;
export type FluidName = (typeof fluidNames)[number];

/**
 * A fluid that a van carries. Densities in kg/m³ (a litre weighs a thousandth of that), liquid, between 0 and 30 °C.
 *
 * Where sources differ the heavier is the value, because for a mass it is the stricter; where a standard or a
 * temperature gives a range, that range is the band. A gas cylinder's contents are stated in kilograms, so the
 * liquid densities of the gases are only for tanks stated in litres, which are filled to 80 % at most.
 */
export interface Fluid {
  readonly name: FluidName;
  readonly densityKgM3: number;
  readonly lowKgM3: number;
  readonly highKgM3: number;
  readonly citations: readonly Citation[];
}

const fuelForum: Citation = {
  title: 'Answer in an engineering forum: diesel 845, liquid propane 505 kg/m³ at 15 to 20 °C',
  readAt: 'https://www.eng-tips.com/threads/i-was-trying-to-determine-density-o.85676/latest',
  provenance: 'read',
};

const saturatedLiquid = (gas: string, file: string): Citation => ({
  title: `Density of saturated liquid ${gas}, equation of an open fluid-property library, evaluated at 0, 20 and 30 °C`,
  readAt: `https://github.com/CoolProp/CoolProp (dev/fluids/${file})`,
  provenance: 'read',
  caution: 'The coefficients were read, the values computed from them. Pure gas; what is sold is a mixture.',
});

export const fluids: Readonly<Record<FluidName, Fluid>> = {
  fresh: {
    name: 'fresh',
    densityKgM3: 1000,
    lowKgM3: 997,
    highKgM3: 1000,
    citations: [
      { ...designValues, caution: 'Water at 10 °C.' },
      {
        title: 'IAPWS-95 formulation of water: 999.7 kg/m³ at 10 °C, 997.0 kg/m³ at 25 °C',
        provenance: 'computed',
      },
    ],
  },
  waste: {
    name: 'waste',
    densityKgM3: 1000,
    lowKgM3: 1000,
    highKgM3: 1000,
    citations: [
      {
        title: 'Waste water taken as water: a litre weighs a kilogram',
        provenance: 'common practice',
        caution: 'No source. It is water with soap and what was washed off.',
      },
    ],
  },
  diesel: {
    name: 'diesel',
    densityKgM3: 845,
    lowKgM3: 820,
    highKgM3: 845,
    citations: [
      fuelForum,
      {
        title:
          'EN 590 automotive diesel: 820 to 845 kg/m³ at 15 °C, as restated on a page on the requirements',
        readAt: 'https://www.ncheurope.com/en/diesel-requirements-eu',
        provenance: 'read',
        caution: 'Winter grades may be as light as 800.',
      },
      {
        title: 'UK government greenhouse gas conversion factors 2025, as restated: average blend 832.4 kg/m³',
        readAt: 'https://universal-converter.org/fuels/diesel',
        provenance: 'read',
        caution: 'Lighter than the value used.',
      },
    ],
  },
  petrol: {
    name: 'petrol',
    densityKgM3: 750,
    lowKgM3: 720,
    highKgM3: 775,
    citations: [
      {
        title: 'Flight manual of a light helicopter, section 6, note 2: automotive petrol 0.75 kg/L',
        readAt: 'manualshive.com, page 102 of the manual',
        provenance: 'read',
      },
      {
        title: 'BS EN 228:2012 unleaded petrol: 720 to 775 kg/m³ at 15 °C, in a copied table',
        readAt: 'scribd.com, document 442769984',
        provenance: 'read',
        caution: 'The heavy end is the stricter for a mass and is the upper end of the band.',
      },
    ],
  },
  propane: {
    name: 'propane',
    densityKgM3: 512,
    lowKgM3: 485,
    highKgM3: 528,
    citations: [
      {
        title: 'Teaching sheet on gas pipe sizing, properties of LPG (propane): 0.512 kg/L',
        readAt: 'https://www.scribd.com/document/201643355/Gas-Pipe-Sizing',
        provenance: 'read',
      },
      { ...fuelForum, caution: 'Its propane (505) is lighter than the value used.' },
      saturatedLiquid('propane', 'n-Propane.json'),
    ],
  },
  butane: {
    name: 'butane',
    densityKgM3: 579,
    lowKgM3: 567,
    highKgM3: 601,
    citations: [saturatedLiquid('n-butane', 'n-Butane.json')],
  },
};
