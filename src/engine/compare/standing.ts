import type { Finding, Verdict } from '../finding.ts';
import { stands } from '../waive.ts';
import type { Comparison, VerdictChange } from './comparison.ts';

/**
 * How good a verdict is. What could not be checked is worse than a pass, since it may hide anything, and better than a
 * warning, since nothing is known to be wrong.
 */
const standing: Readonly<Record<Verdict, number>> = { pass: 0, 'not checked': 1, warn: 2, fail: 3 };

/** What a waiver of the plan makes stand aside is known to be wrong, and known to be meant. */
const standingAside = 1.5;

type Judged = Pick<Finding, 'verdict' | 'waived'>;

const standingOf = (finding: Judged): number =>
  stands(finding) ? standing[finding.verdict] : Math.min(standingAside, standing[finding.verdict]);

/** Positive where the first is worse than the second. */
export const compareStandings = (one: Judged, other: Judged): number => standingOf(one) - standingOf(other);

/**
 * Whether a change makes the plan worse: a verdict that got worse, or a failure or a warning that was not there before. A
 * new check that could not be made is no step back, nor is what the plan waives.
 */
export const isStepBack = (change: VerdictChange): boolean =>
  (change.turn === 'worse' && stands(change.after)) ||
  (change.turn === 'new' &&
    compareStandings(change.after, { verdict: 'not checked' }) > 0 &&
    stands(change.after));

export const isWorse = ({ verdicts }: Comparison): boolean => verdicts.some(isStepBack);
