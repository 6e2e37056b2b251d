import type { Citation } from '../citation.ts';
import {
  cordTable,
  drumReduction,
  leisureGuideUk,
  leisureHandbookCzech,
  leisureMotorMagazine,
  leisureSizesRemembered,
  leisureTradeJournal,
  leisureVoltage,
  residualTripTime,
  supplyCablesAustralia,
} from './supply-sources.ts';

/*
 * Mains in caravans and motor caravans after IEC 60364-7-721. Work on it is for a licensed person; which edition holds is
 * a matter of the country.
 */

export const residualCurrentDevice = {
  tripA: 0.03,
  /** At five times the residual current. */
  tripS: 0.04,
  breaksAllLiveConductors: true,
  citations: [leisureGuideUk, residualTripTime],
} as const;

/** A main switch and the breaker of each circuit open all live conductors. */
export const doublePoleBreakers = { citations: [leisureTradeJournal, leisureGuideUk] } as const;

/** Nominal cross-sections, mm². */
export const leastMainsConductor = { areaMm2: 1.5, citations: [leisureHandbookCzech] } as const;
export const leastBondingConductor = {
  areaMm2: 4,
  citations: [leisureSizesRemembered, leisureTradeJournal],
  caution: 'That the metal frame is bonded was read, the 4 mm² are remembered.',
} as const;

export const mostInletHeight = { valueM: 1.8, citations: [leisureGuideUk] } as const;
export const mostSinglePhase = { voltageV: 230, citations: [leisureVoltage] } as const;
export const inspectionInterval = { years: 3, citations: [leisureGuideUk] } as const;

export const hookUpLength = {
  lengthM: 25,
  toleranceM: 2,
  types: ['H07RN-F', 'H05RN-F'],
  connector: 'EN 60309-2',
  onePiece: true,
  citations: [leisureTradeJournal, leisureMotorMagazine],
  caution: 'H05RN-F by the German edition of 2019 only.',
} as const;

export interface HookUpSize {
  readonly ratingA: number;
  readonly areaMm2: number;
  readonly citations: readonly Citation[];
}

/** Least conductor of a lead of 25 m by the rating of its plug. Above 16 A from memory. */
export const hookUpSizes: readonly HookUpSize[] = [
  { ratingA: 16, areaMm2: 2.5, citations: [leisureMotorMagazine, leisureHandbookCzech] },
  { ratingA: 25, areaMm2: 4, citations: [leisureSizesRemembered] },
  { ratingA: 32, areaMm2: 6, citations: [leisureSizesRemembered] },
  { ratingA: 63, areaMm2: 16, citations: [leisureSizesRemembered] },
  { ratingA: 100, areaMm2: 35, citations: [leisureSizesRemembered] },
];

/** The row for a plug: the next rating upwards. Undefined above the table. */
export function hookUpSizeFor(ratingA: number): HookUpSize | undefined {
  if (!(ratingA > 0)) throw new RangeError(`The rating of a plug must be greater than 0, not ${ratingA}.`);
  return hookUpSizes.find((row) => row.ratingA >= ratingA);
}

export interface SupplyCableRow {
  readonly ratingA: number;
  readonly areaMm2: number;
  readonly mostM: number;
}

/** Longest supply cable of a caravan in Australia and New Zealand. */
export const supplyCableRows: readonly SupplyCableRow[] = [
  { ratingA: 10, areaMm2: 1, mostM: 25 },
  { ratingA: 10, areaMm2: 2.5, mostM: 60 },
  { ratingA: 15, areaMm2: 1.5, mostM: 25 },
  { ratingA: 15, areaMm2: 4, mostM: 65 },
];
export const supplyCableCitations: readonly Citation[] = [supplyCablesAustralia];

export interface CordRow {
  readonly areaMm2: number;
  readonly currentA: number;
  /** Of both conductors, for the length one way, at 60 °C. */
  readonly dropVPerAM: number;
}

/** Flexible cords of two conductors, insulation of 60 °C. */
export const cordRows: readonly CordRow[] = [
  { areaMm2: 0.5, currentA: 3, dropVPerAM: 0.093 },
  { areaMm2: 0.75, currentA: 6, dropVPerAM: 0.062 },
  { areaMm2: 1, currentA: 10, dropVPerAM: 0.046 },
  { areaMm2: 1.25, currentA: 13, dropVPerAM: 0.037 },
  { areaMm2: 1.5, currentA: 16, dropVPerAM: 0.032 },
  { areaMm2: 2.5, currentA: 25, dropVPerAM: 0.019 },
  { areaMm2: 4, currentA: 32, dropVPerAM: 0.012 },
];
export const cordCitations: readonly Citation[] = [cordTable];

/** The share of its current that a lead carries wound on a drum, by layers of cable. */
export const drumShares: readonly { readonly layers: number; readonly share: number }[] = [
  { layers: 1, share: 0.85 },
  { layers: 2, share: 0.65 },
  { layers: 3, share: 0.45 },
  { layers: 4, share: 0.35 },
];
export const drumCitations: readonly Citation[] = [drumReduction];
