import type { Citation } from '../citation.ts';
import {
  buildingServicesTable,
  butaneValueAustria,
  butaneViscosity,
  flammableLimitsStandard,
  gasPerKilowatt,
  grossValueAustralia,
  idealVapour,
  netValueEstonia,
  netValueItaly,
  propaneTableUs,
  propaneTableUsOther,
  pureHeatingValues,
} from './sources.ts';

export interface GasProperties {
  /** Heat that a burner can use as power is mostly counted in Europe, J/kg. */
  readonly netJPerKg: number;
  /** With the heat of the water vapour, J/kg. */
  readonly grossJPerKg: number;
  readonly vapourM3PerKg: number;
  /** Against air. */
  readonly gravity: number;
  readonly viscosityPaS: number;
  readonly lowerFlammable: number;
  readonly upperFlammable: number;
  readonly ignitionC: number;
  readonly citations: readonly Citation[];
}

/**
 * Properties of the two gases for use and for pipes. Of differing sources the one that needs more gas, or more pipe, or is
 * sooner flammable. Pressures and densities of the liquid are computed, see src/calc/gas/saturation.ts.
 */
export const gasProperties: Readonly<Record<'propane' | 'butane', GasProperties>> = {
  propane: {
    netJPerKg: 46.1e6,
    grossJPerKg: 50e6,
    vapourM3PerKg: 0.5406,
    gravity: 1.5,
    viscosityPaS: 8e-6,
    lowerFlammable: 0.017,
    upperFlammable: 0.109,
    ignitionC: 450,
    citations: [
      netValueItaly,
      gasPerKilowatt,
      netValueEstonia,
      buildingServicesTable,
      propaneTableUs,
      propaneTableUsOther,
      grossValueAustralia,
      pureHeatingValues,
      flammableLimitsStandard,
    ],
  },
  butane: {
    netJPerKg: 45.75e6,
    grossJPerKg: 49.5e6,
    vapourM3PerKg: 0.4068,
    gravity: 2.01,
    viscosityPaS: 7.4e-6,
    lowerFlammable: 0.014,
    upperFlammable: 0.093,
    ignitionC: 372,
    citations: [pureHeatingValues, butaneValueAustria, idealVapour, butaneViscosity, flammableLimitsStandard],
  },
};

/** The heating value that an input counts with; net where it is not said, which needs more gas. */
export const heatingValueOf = (gas: 'propane' | 'butane', kind: 'net' | 'gross' = 'net'): number =>
  kind === 'net' ? gasProperties[gas].netJPerKg : gasProperties[gas].grossJPerKg;
