import type { Citation } from './citation.ts';
import {
  cargoInsurers,
  cargoInsurersSummary,
  cargoRuleQuebec,
  cargoRuleUs,
  lashingComparison,
  lashingTrainingPage,
  lightVanPaper,
  loadRestraintGuide,
  motorCaravanGuidance,
} from './fit-sources.ts';
import type { Force } from './limits.ts';

export const restraintDirections = [
  'forward',
  'rearward',
  'sideways',
  /** Sideways, for what would tip over rather than slide. */
  'sideways tipping',
  /** Up, beyond the thing's own weight, where its hold rests on that weight. */
  'upward',
] as const;
export type RestraintDirection = (typeof restraintDirections)[number];

/**
 * What a rule asks a fastening to hold in one direction, as a multiple of the thing's weight: F = coefficient · m · g.
 * What friction holds is not taken off: on a road that jolts the van there is none to rely on.
 */
export interface RestraintCoefficient {
  readonly direction: RestraintDirection;
  /** A bare number: the acceleration in g. */
  readonly coefficient: number;
  /** The rule and its edition; coefficients differ between editions. */
  readonly edition: string;
  /** The permissible maximum mass of the vehicles it is for, kg: more than the first, up to the second. */
  readonly forVansOf?: readonly [number, number];
  readonly force: Force;
  readonly citations: readonly Citation[];
}

/** Shown with everything that rests on these coefficients. */
export const restraintCaution =
  'For normal driving, bumps and emergency braking, with a minor collision at most. Not for a crash or a rollover, where the forces are many times these.';

/** Shown where the thing held is a seat, a belt or a tank. */
export const restraintOwnLawCaution =
  'Seats, their belts and gas or fuel tanks have laws and tests of their own, far stricter than these figures.';

const guide = (
  direction: RestraintDirection,
  coefficient: number,
  edition: string,
  ...citations: readonly [Citation, ...Citation[]]
): RestraintCoefficient => ({ direction, coefficient, edition, force: 'published guide', citations });

/** Light vans corner and brake harder than lorries do. */
const lightVans = (
  [aboveKg, upToKg]: readonly [number, number],
  forward: number,
  sideways: number,
): readonly RestraintCoefficient[] =>
  (
    [
      ['forward', forward],
      ['rearward', 0.5],
      ['sideways', sideways],
    ] as const
  ).map(([direction, coefficient]) => ({
    ...guide(direction, coefficient, 'VDI 2700 part 16', lightVanPaper),
    forVansOf: [aboveKg, upToKg],
  }));

const lashing2003 = 'EN 12195-1:2003';
const lashing2009 = 'prEN 12195-1:2009';
const lashingAny = 'EN 12195-1';
const cargoUnits2001 = 'IMO/ILO/UN ECE 2001';
const usCargo = '49 CFR 393.102';
const quebecCargo = 'Québec C-24.2, r. 30, s. 3';
const australian = 'Australian Load Restraint Guide 2018';

export const restraintCoefficients: readonly RestraintCoefficient[] = [
  guide('forward', 1, 'practice of several European countries', cargoInsurers, cargoInsurersSummary),
  guide('forward', 0.8, usCargo, cargoRuleUs),
  guide('forward', 0.8, quebecCargo, cargoRuleQuebec),
  guide('forward', 0.8, australian, loadRestraintGuide),
  guide('forward', 0.8, lashingAny, lashingTrainingPage, cargoInsurers),
  guide('rearward', 0.5, usCargo, cargoRuleUs),
  guide('rearward', 0.5, quebecCargo, cargoRuleQuebec),
  guide('rearward', 0.5, australian, loadRestraintGuide),
  guide('rearward', 0.5, lashingAny, lashingTrainingPage, cargoInsurers),
  guide('sideways', 0.5, lashing2003, lashingComparison),
  guide('sideways', 0.5, lashing2009, lashingComparison),
  guide('sideways', 0.5, cargoUnits2001, lashingComparison),
  guide('sideways', 0.5, usCargo, cargoRuleUs),
  guide('sideways', 0.5, quebecCargo, cargoRuleQuebec),
  guide('sideways', 0.5, australian, loadRestraintGuide),
  guide('sideways', 0.5, lashingAny, lashingTrainingPage),
  guide('sideways tipping', 0.7, lashing2003, lashingComparison),
  // With 0.5, in the other of its two ways of taking the force in the lashing.
  guide('sideways tipping', 0.6, lashing2009, lashingComparison),
  guide('sideways tipping', 0.6, lashingAny, lashingTrainingPage),
  guide('upward', 0.2, australian, loadRestraintGuide),
  guide('upward', 0.2, usCargo, cargoRuleUs),
  ...lightVans([0, 2000], 0.9, 0.7),
  ...lightVans([2000, 3500], 0.8, 0.6),
  ...lightVans([3500, Number.POSITIVE_INFINITY], 0.8, 0.5),
];

/** The strictest figure in a direction, and the ones beside it. */
export interface Restraint {
  readonly strictest: RestraintCoefficient;
  readonly others: readonly RestraintCoefficient[];
}

/**
 * The strictest figure for a van of a permissible maximum mass, kg; of all vans where it is not known.
 *
 * @throws Error when the table has no row for the direction, which would be a defect of the table.
 */
export function restraintFor(direction: RestraintDirection, maximumMassKg?: number): Restraint {
  const isFor = ({ forVansOf: range }: RestraintCoefficient): boolean =>
    range === undefined ||
    maximumMassKg === undefined ||
    (maximumMassKg > range[0] && maximumMassKg <= range[1]);
  const [strictest, ...others] = restraintCoefficients
    .filter((row) => row.direction === direction && isFor(row))
    .sort((left, right) => right.coefficient - left.coefficient);
  if (strictest === undefined) throw new Error(`The table of restraint has no row for "${direction}".`);
  return { strictest, others };
}

/** What a motor caravan has inside, and how it must be held, for the UK registration document. */
export interface MotorCaravanFeature {
  readonly feature: 'seats and table' | 'sleeping place' | 'cooking place' | 'storage';
  readonly heldBy: string;
  readonly exception?: string;
  readonly citation: Citation;
}

export const motorCaravanFeatures: readonly MotorCaravanFeature[] = [
  {
    feature: 'seats and table',
    heldBy: 'bolts, rivets, screws or welds to the floor or a side wall',
    exception: 'the table may come off',
    citation: motorCaravanGuidance,
  },
  {
    feature: 'sleeping place',
    heldBy: 'its base fixed to the floor or a side wall',
    exception: 'seats may turn into it; a bed over the cab need not be fixed to the floor or a wall',
    citation: motorCaravanGuidance,
  },
  {
    feature: 'cooking place',
    heldBy: 'rigid fixings to the living space',
    citation: motorCaravanGuidance,
  },
  { feature: 'storage', heldBy: 'rigid fixings to the living space', citation: motorCaravanGuidance },
];
