import { notNegative, positive } from '../argument.ts';
import { dropOfCurrent, dropOfPower } from './voltage-drop.ts';

/** A size on offer, with what it does where it would lie. */
export interface ConductorChoice {
  /** Of copper; only orders the sizes and meets the least area. */
  readonly areaMm2: number;
  /** Of one conductor at working temperature. */
  readonly ohmPerM: number;
  /** Derated. Undefined where no table has it: then it never passes. */
  readonly ampacityA: number | undefined;
}

export interface ConductorDemand {
  /** What flows, or what a load that holds its power takes. */
  readonly load: { readonly currentA: number } | { readonly powerW: number };
  /** At the point that feeds these conductors. */
  readonly sourceV: number;
  readonly outM: number;
  readonly backM: number;
  readonly connectionsOhm: number;
  readonly permittedDropV: number;
  /** What the conductor must at least carry: the rating of its fuse, or of its load. */
  readonly neededAmpacityA: number;
  readonly leastAreaMm2: number;
}

export type Shortfall = 'drop' | 'ampacity' | 'least area';

export interface ConductorJudgement<Choice> {
  readonly choice: Choice;
  /** Undefined if the load cannot be supplied over it at all. */
  readonly dropV: number | undefined;
  /** Empty if it passes. */
  readonly shortfalls: readonly Shortfall[];
}

/**
 * What one size of conductor, the same out and back, falls short of.
 *
 * drop: I · (r · (l_out + l_back) + R_c) above what is permitted, or a power that cannot be brought; ampacity: below
 * what is needed, or not listed; least area: below it. Just met is met (to 1e-9 of the value).
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: as for the drops and ampacities it is made of. Both must be looked at: published cases exist where each of
 * them alone gives a size that is too small.
 */
export function judgeConductor<Choice extends ConductorChoice>(
  choice: Choice,
  demand: ConductorDemand,
): ConductorJudgement<Choice> {
  const lengthM = notNegative(demand.outM, 'The length out') + notNegative(demand.backM, 'The length back');
  const loopOhm =
    lengthM * positive(choice.ohmPerM, 'The resistance per metre') +
    notNegative(demand.connectionsOhm, 'The resistance of the connections');
  const dropV = dropOver(loopOhm, demand);
  const shortfalls: Shortfall[] = [];
  if (dropV === undefined || above(dropV, notNegative(demand.permittedDropV, 'The permitted drop')))
    shortfalls.push('drop');
  if (
    above(
      notNegative(demand.neededAmpacityA, 'The ampacity needed'),
      choice.ampacityA ?? Number.NEGATIVE_INFINITY,
    )
  )
    shortfalls.push('ampacity');
  if (
    above(notNegative(demand.leastAreaMm2, 'The least area'), positive(choice.areaMm2, 'The area of copper'))
  )
    shortfalls.push('least area');
  return { choice, dropV, shortfalls };
}

function dropOver(loopOhm: number, { load, sourceV }: ConductorDemand): number | undefined {
  positive(sourceV, 'The voltage at the source');
  if ('currentA' in load) return dropOfCurrent(load.currentA, loopOhm);
  const result = dropOfPower(sourceV, load.powerW, loopOhm);
  return result.delivers ? result.dropV : undefined;
}

const above = (value: number, limit: number): boolean => value > limit * (1 + 1e-9);

/**
 * The smallest conductor on offer that falls short of nothing, and what the next smaller one falls short of.
 *
 * Every size is judged ({@link judgeConductor}), by rising area; none is skipped because a bigger one failed. Undefined
 * if none passes.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: search through the table (computed).
 */
export function smallestConductor<Choice extends ConductorChoice>(
  choices: readonly Choice[],
  demand: ConductorDemand,
):
  | { readonly fits: ConductorJudgement<Choice>; readonly nextDown: ConductorJudgement<Choice> | undefined }
  | undefined {
  let nextDown: ConductorJudgement<Choice> | undefined;
  for (const choice of choices.toSorted((one, other) => one.areaMm2 - other.areaMm2)) {
    const judged = judgeConductor(choice, demand);
    if (judged.shortfalls.length === 0) return { fits: judged, nextDown };
    nextDown = judged;
  }
  return undefined;
}
