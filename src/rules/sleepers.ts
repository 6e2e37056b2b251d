import type { Build } from '../build/build.ts';
import type { Layout } from '../build/layout.ts';
import { bodyCorrections, bodyMeasuresCaution, scaledToStature } from '../catalogue/body-measures.ts';
import type { Citation } from '../catalogue/citation.ts';
import { count } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { EffectiveLimit, Need } from '../engine/rule.ts';
import { some } from './needs.ts';
import { nearestMillimetre } from './whole-millimetres.ts';

export const statures: Need<readonly number[]> = some('people.sleepers', ({ staturesM }) => staturesM);

/** What to say where the plan knows the stature of some sleepers only. */
export function unknownStatures({ sleepers, staturesM }: Layout): Phrase {
  const unknown = sleepers - staturesM.length;
  if (unknown === 0) return [];
  return say` How tall ${unknown === 1 ? 'one sleeper is' : say`${count(unknown)} sleepers are`} is not known.`;
}

/** How high the elbow of somebody of a stature is who stands in flat shoes. */
export const elbowHeightM = (statureM: number): number =>
  scaledToStature('elbow height standing', statureM) + bodyCorrections.shoes.valueM;

/** A person's own measure, estimated from the stature, and where the measure comes from. */
interface Own {
  readonly estimateM: number;
  readonly citations: readonly Citation[];
}

/** Whether the plan sets the limit of a rule. */
export const hasOwnLimit = ({ overrides }: Build, rule: string): boolean =>
  overrides.some((each) => each.rule === rule);

/**
 * The limit for these people. The plan's own limit comes first, then the people's own measure, then the table; while
 * some statures are missing, the stricter of the people and the table.
 */
export function limitForPeople(
  { sleepers, staturesM }: Layout,
  published: EffectiveLimit,
  isPlansOwn: boolean,
  sense: 'at most' | 'at least',
  own: (staturesM: readonly number[]) => Own,
): EffectiveLimit & { readonly isTheirs: boolean } {
  const fromTable = { ...published, isTheirs: false };
  if (staturesM.length === 0 || isPlansOwn) return fromTable;
  const { estimateM, citations } = own(staturesM);
  const valueM = nearestMillimetre(estimateM);
  const isStricter = sense === 'at most' ? valueM < published.value : valueM > published.value;
  if (staturesM.length < sleepers && !isStricter) return fromTable;
  return {
    ...published,
    value: valueM,
    citations: [...citations, ...published.citations],
    cautions: [...published.cautions, bodyMeasuresCaution],
    isTheirs: true,
  };
}
