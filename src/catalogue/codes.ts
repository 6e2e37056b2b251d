import type { Citation } from './citation.ts';
import { occupantCapacityRule, passengerMassRule } from './sources.ts';

/** Whose rules a plan is checked against. */
export const codes = ['uk', 'eu', 'us', 'au'] as const;
export type Codes = (typeof codes)[number];

export const codesNames: Readonly<Record<Codes, string>> = {
  uk: 'United Kingdom',
  eu: 'European Union',
  us: 'United States',
  au: 'Australia',
};

export interface PersonMass {
  readonly massKg: number;
  readonly citation: Citation;
}

/** The mass to count for a person whose own mass the plan does not state, in kg. */
export const personMass: Readonly<Record<Codes, PersonMass>> = {
  uk: { massKg: 75, citation: passengerMassRule },
  eu: { massKg: 75, citation: passengerMassRule },
  us: { massKg: 68, citation: occupantCapacityRule },
  au: {
    massKg: 75,
    citation: {
      title: 'No Australian value for a motor caravan was found; 75 kg as in Europe',
      provenance: 'common practice',
      caution:
        'A press report of 2008 gives 65 kg for bus passengers under an Australian Design Rule; the heavier figure is kept.',
    },
  },
};
