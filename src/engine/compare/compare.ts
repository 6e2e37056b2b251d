import { type Finding, saysTooLittle, topics, verdicts } from '../finding.ts';
import type { Measure } from '../measure.ts';
import type { Report } from '../report.ts';
import { type Comparison, type MarginTurn, type Moved, turns, type VerdictChange } from './comparison.ts';
import { type Edited, editsBetween } from './edits.ts';
import { type PairOfFindings, pairFindings } from './pair-findings.ts';
import { sideOf } from './side.ts';
import { compareStandings } from './standing.ts';
import { isSameNumber } from './values.ts';

/** One of the two plans to compare: what its check found, and what is written in it. */
export interface Compared extends Edited {
  readonly label: string;
  readonly report: Report;
}

export function compare(before: Compared, after: Compared): Comparison {
  const { edits, renames } = editsBetween(before, after);
  const pairs = pairFindings(before.report.findings, after.report.findings, renames);
  return {
    before: sideOf(before),
    after: sideOf(after),
    verdicts: pairs.flatMap(verdictChange).sort(byWeight),
    moved: pairs.flatMap(moved).sort((a, b) => topics.indexOf(a.topic) - topics.indexOf(b.topic)),
    edits,
  };
}

function verdictChange({ identity, before, after }: PairOfFindings): VerdictChange[] {
  if (!before) return after ? [{ identity, turn: 'new', shown: after, after }] : [];
  if (!after) return [{ identity, turn: 'gone', shown: before, before }];
  const worse = compareStandings(after, before);
  if (worse === 0) return [];
  const shown = after.reason === saysTooLittle ? { ...after, subject: before.subject } : after;
  return [{ identity, turn: worse > 0 ? 'worse' : 'better', shown, before, after }];
}

const rank = ({ turn, shown }: VerdictChange): readonly number[] => [
  turns.indexOf(turn),
  verdicts.indexOf(shown.verdict),
  topics.indexOf(shown.topic),
];

function byWeight(one: VerdictChange, other: VerdictChange): number {
  const [a, b] = [rank(one), rank(other)];
  const at = a.findIndex((value, index) => value !== b[index]);
  return at === -1 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

function moved({ identity, before, after }: PairOfFindings): Moved[] {
  if (!before?.measured || !after?.measured || before.measured.kind !== after.measured.kind) return [];
  const [from, to] = [before.measured, after.measured];
  const margin = marginOf(before, after);
  if (isSame(from, to) && (!margin || margin.turn === 'the same')) return [];
  return [
    {
      identity,
      topic: after.topic,
      before,
      after,
      from,
      to,
      change: isSame(from, to) ? { kind: to.kind, value: 0 } : difference(from, to),
      ...(margin && { margin }),
    },
  ];
}

function marginOf({ margin: from }: Finding, { margin: to }: Finding): Moved['margin'] {
  if (!from || !to || from.kind !== to.kind) return undefined;
  const change = difference(from, to);
  const turn: MarginTurn = isSame(from, to) ? 'the same' : change.value < 0 ? 'less' : 'more';
  return { from, to, change: turn === 'the same' ? { ...change, value: 0 } : change, turn };
}

const difference = (from: Measure, to: Measure): Measure => ({ kind: to.kind, value: to.value - from.value });

/** Sums differ in their last digits where their parts are added in another order. */
const isSame = (one: Measure, other: Measure): boolean =>
  one.value === other.value ||
  isSameNumber(one.value, other.value) ||
  Math.abs(one.value - other.value) < 1e-9;
