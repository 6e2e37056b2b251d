import type { Citation } from '../catalogue/citation.ts';
import type { BandLimit } from '../catalogue/fit-limits.ts';
import type { Step } from '../engine/finding.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { EffectiveLimit } from '../engine/rule.ts';
import { downToMillimetre, upToMillimetre } from './whole-millimetres.ts';

/** One measure of a thing against one end of what suits people. */
export interface Measured {
  /** "height", to tell the findings of one thing apart. */
  readonly of: string;
  readonly valueM: number;
  readonly limitM: number;
  readonly sense: 'at most' | 'at least';
  readonly failing: boolean;
  readonly kept: Phrase;
  readonly broken: Phrase;
  readonly remedy: Phrase;
  /** How the limit, where it is worked out, and the value come about. */
  readonly steps: () => readonly Step[];
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
}

export const cited = ({ citations, cautions }: EffectiveLimit) => ({ citations, cautions });

/** A band in whole millimetres that lie within it, above something. */
export const suiting = ({ leastM, mostM }: Pick<BandLimit, 'leastM' | 'mostM'>, aboveM = 0): Phrase =>
  say`${length(upToMillimetre(aboveM + leastM))} to ${length(downToMillimetre(aboveM + mostM))}`;

/** A band as the one end that is broken, or else the nearer one. */
export function banded(
  of: string,
  valueM: number,
  { leastM, mostM, force, citations, caution }: BandLimit,
  words: (end: 'low' | 'high') => Pick<Measured, 'kept' | 'broken' | 'remedy' | 'steps'>,
): Measured {
  const isNearerMost = mostM - valueM < valueM - leastM;
  return {
    of,
    valueM,
    limitM: isNearerMost ? mostM : leastM,
    sense: isNearerMost ? 'at most' : 'at least',
    failing: force === 'law',
    ...words(isNearerMost ? 'high' : 'low'),
    citations,
    cautions: caution === undefined ? [] : [caution],
  };
}
