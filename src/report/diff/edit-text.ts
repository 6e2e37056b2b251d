import { isDeepStrictEqual } from 'node:util';
import type { Comparison, Edit, Side } from '../../engine/compare/comparison.ts';
import type { PlanPath } from '../../engine/finding.ts';
import { formatMeasure, formatTypedStep, type Units } from '../format-measure.ts';
import { signedChange } from './change-text.ts';

/** What was edited in one entry of the plan. */
export interface EntryEdits {
  readonly entry: PlanPath;
  readonly edits: readonly Edit[];
}

/** Edits of one entry together; they follow one another already. What is edited in a section stands alone. */
export function byEntry(edits: readonly Edit[]): readonly EntryEdits[] {
  const groups: { readonly entry: PlanPath; readonly edits: Edit[] }[] = [];
  for (const edit of edits) {
    const last = groups.at(-1);
    if (last && edit.entry.length > 1 && isDeepStrictEqual(last.entry, edit.entry)) last.edits.push(edit);
    else groups.push({ entry: edit.entry, edits: [edit] });
  }
  return groups;
}

/** "fixtures.bed frame", "layers 3 thickness": entries of lists are counted from 1, as people do. */
export const keysText = (path: PlanPath): string =>
  path
    .map((key) => (typeof key === 'number' ? ` ${key + 1} ` : key))
    .join('.')
    .replace(/\. | \.| $/g, ' ')
    .trim();

const longestValue = 80;

/** A value as it was written; of a long one the beginning. */
const valueText = (text = ''): string =>
  text.length <= longestValue ? text : `${text.slice(0, longestValue - 1).trimEnd()}…`;

/** "mass 31 kg ± 3 kg → 58 kg ± 4 kg (+27 kg)" */
export function editText(edit: Edit, units: Units): string {
  const { kind, key, was, before, after, moves } = edit;
  const name = keysText(key);
  const of = name === '' ? '' : `${name} `;
  const by = editedBy(edit, units);
  switch (kind) {
    case 'added':
      return `${of}added${name === '' ? '' : ':'} ${valueText(after)}`;
    case 'removed':
      return `${of}removed${name === '' ? '' : ':'} ${valueText(before)}`;
    case 'renamed':
      return `${of}renamed, was ${was}`;
    case 'moved':
      return `moved ${(moves ?? []).map(({ direction, by }) => `${formatMeasure(by, units)} ${direction}`).join(' and ')} (${name === 'at' ? '' : of}${before || 'nothing'} → ${after || 'nothing'})`;
    case 'changed':
      return `${of}${valueText(before)} → ${valueText(after)}${by === '' ? '' : ` (${by})`}`;
  }
}

/** Where an entry stands: "line 108", or "line 299 before" where it is not there any more. */
export function entryLine({ before, after }: Comparison, { entry, edits }: EntryEdits): string {
  const [first] = edits;
  const isGone = edits.every(
    ({ kind, key }) => kind === 'removed' && (key.length === 0 || entry.length === 1),
  );
  const now = entry.length === 1 ? first?.pathAfter : entry;
  const old = first?.pathBefore && lineIn(before, first.pathBefore);
  if (isGone) return old === undefined ? '' : `line\u00a0${old} before`;
  const line = now && lineIn(after, now);
  return line === undefined ? '' : `line\u00a0${line}`;
}

const lineIn = ({ spot }: Side, path: PlanPath): number | undefined => spot(path)?.line;

/** "+27 kg"; empty where it is no quantity, or nobody can say. */
export const editedBy = ({ from, to, change }: Edit, units: Units): string =>
  from && to && change ? signedChange(change, formatTypedStep(from, to, change, units)) : '';
