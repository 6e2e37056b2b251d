import type { Citation } from './citation.ts';

/** What an overload costs in the United Kingdom. Percentages are over the plated gross or axle mass. */
export interface OverloadBand {
  readonly fromPercent: number;
  /** Absent in the last band. */
  readonly belowPercent?: number;
  /** Fixed penalty in pounds; absent where the case goes to court. */
  readonly penaltyGbp?: number;
  readonly sanction: 'fixed penalty' | 'court summons';
}

export const overloadCitations: readonly Citation[] = [
  {
    title: 'Trade press table of the DVSA penalty bands for overloading',
    readAt: 'commercialfleet.org, news page on van overloading',
    provenance: 'read',
    caution: 'A secondary page.',
  },
  {
    title: 'DVSA enforcement sanctions policy (notice of February 2021)',
    readAt:
      'https://vdocuments.site/dvsa-enforcement-sanctions-policy-gov-uk-2020-12-29-helping-you-stay-safe.html',
    provenance: 'read',
    caution: 'The notice replaced prosecution by a fixed penalty for a time.',
  },
];

export const overloadCaution =
  'Any overload is an offence, below 5 % too; the bands only grade it. A dangerous vehicle can be stopped where it stands.';

/** Lightest first; a band begins at its lower figure and ends just below its upper one. */
export const overloadBands: readonly OverloadBand[] = [
  { fromPercent: 5, belowPercent: 10, penaltyGbp: 100, sanction: 'fixed penalty' },
  { fromPercent: 10, belowPercent: 15, penaltyGbp: 200, sanction: 'fixed penalty' },
  { fromPercent: 15, belowPercent: 30, penaltyGbp: 300, sanction: 'fixed penalty' },
  { fromPercent: 30, sanction: 'court summons' },
];

/**
 * The band that a mass over its limit falls into; undefined below the first band (see `overloadCaution`).
 *
 * Overload in per cent = 100 (mass - limit) / limit, both in kg.
 *
 * @throws RangeError when the limit is not a positive number or the mass is not a number.
 */
export function overloadBandFor(massKg: number, limitKg: number): OverloadBand | undefined {
  if (!(limitKg > 0)) throw new RangeError(`A mass limit must be above 0 kg, not ${limitKg}.`);
  if (Number.isNaN(massKg)) throw new RangeError('A mass must be a number.');
  // A mass exactly on an edge belongs to the band; the last binary digits must not take it out.
  const roundingSlack = 1 - 1e-12;
  return overloadBands.findLast(
    ({ fromPercent }) => massKg * 100 >= limitKg * (100 + fromPercent) * roundingSlack,
  );
}
