import {
  type Comparison,
  type Edit,
  isSame,
  type Moved,
  type Side,
  type VerdictChange,
} from '../../engine/compare/comparison.ts';
import { isStepBack } from '../../engine/compare/standing.ts';
import type { Measure } from '../../engine/measure.ts';
import { formatMeasure, type Units } from '../format-measure.ts';
import { escaped, jsonFinding, jsonMeasure } from '../json.ts';
import { jsonTally } from '../json-tally.ts';
import { signedChange } from './change-text.ts';
import { editedBy } from './edit-text.ts';
// The type only: the schema's library takes longer to load than a plan to check.
import type { JsonDiff } from './json-schema.ts';
import { stepText } from './step-text.ts';

export interface JsonDiffOptions {
  /** The tool's version. */
  readonly version: string;
  readonly failOn: JsonDiff['summary']['failOn'];
  readonly exitCode: number;
}

/** Writes a comparison as JSON, as `json-schema.ts` describes it. Ends with a line break. */
export function renderJsonDiff(comparison: Comparison, options: JsonDiffOptions): string {
  return `${escaped(JSON.stringify(jsonDiff(comparison, options), undefined, 2))}\n`;
}

function jsonDiff(comparison: Comparison, { version, failOn, exitCode }: JsonDiffOptions): JsonDiff {
  const { before, after, verdicts, moved, edits } = comparison;
  const stepsBack = verdicts.filter(isStepBack).length;
  return {
    schemaVersion: 1,
    kind: 'diff',
    tool: { name: 'storystick', version },
    before: jsonSide(before),
    after: jsonSide(after),
    summary: { same: isSame(comparison), worse: stepsBack > 0, stepsBack, failOn, exitCode },
    verdicts: verdicts.map((change) => jsonVerdict(comparison, change)),
    moved: moved.map((each) => jsonMoved(each, after.units)),
    edits: edits.map((edit) => jsonEdit(comparison, edit)),
  };
}

const jsonSide = (side: Side): JsonDiff['before'] => {
  const { label, file, name, codes, units } = side;
  return { label, file, name, codes, units, summary: jsonTally(side) };
};

function jsonVerdict(sides: Comparison, change: VerdictChange): JsonDiff['verdicts'][number] {
  const { identity, turn, shown } = change;
  const before = 'before' in change ? change.before : undefined;
  const after = 'after' in change ? change.after : undefined;
  const { units } = sides.after;
  return {
    identity,
    turn,
    stepBack: isStepBack(change),
    rule: shown.rule,
    topic: shown.topic,
    subject: shown.subject,
    from: before?.verdict ?? null,
    to: after?.verdict ?? null,
    before: before ? jsonFinding({ units, spot: sides.before.spot }, before) : null,
    after: after ? jsonFinding({ units, spot: sides.after.spot }, after) : null,
  };
}

function jsonMoved(
  { identity, topic, after, from, to, change, margin }: Moved,
  units: Units,
): JsonDiff['moved'][number] {
  return {
    identity,
    rule: after.rule,
    topic,
    title: after.title,
    subject: after.subject,
    verdict: after.verdict,
    ...stepOf(from, to, change, units),
    margin: margin ? { ...stepOf(margin.from, margin.to, margin.change, units), turn: margin.turn } : null,
    cautions: [...after.cautions],
  };
}

function stepOf(from: Measure, to: Measure, change: Measure, units: Units) {
  const texts = stepText(from, to, change, units);
  return {
    from: jsonMeasure(from, texts.from),
    to: jsonMeasure(to, texts.to),
    change: jsonMeasure(change, signedChange(change, texts.change)),
  };
}

function jsonEdit({ before, after }: Comparison, edit: Edit): JsonDiff['edits'][number] {
  const { kind, entry, key, was, change, moves, pathBefore, pathAfter } = edit;
  const { units } = after;
  return {
    kind,
    entry: [...entry],
    key: [...key],
    was: was ?? null,
    before: edit.before ?? null,
    after: edit.after ?? null,
    change: change ? jsonMeasure(change, editedBy(edit, units)) : null,
    moves: (moves ?? []).map(({ direction, by }) => ({
      direction,
      by: jsonMeasure(by, formatMeasure(by, units)),
    })),
    lineBefore: (pathBefore && before.spot(pathBefore)?.line) ?? null,
    lineAfter: (pathAfter && after.spot(pathAfter)?.line) ?? null,
  };
}
