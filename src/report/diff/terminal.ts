import {
  type Comparison,
  isSame,
  type Moved,
  turns,
  type VerdictChange,
} from '../../engine/compare/comparison.ts';
import { topics } from '../../engine/finding.ts';
import { type Pen, penOf } from '../pen.ts';
import { quietLines } from '../quiet.ts';
import { cautionLines } from '../short.ts';
import { type Column, fittedToWords, renderTable } from '../table.ts';
import { visible } from '../visible.ts';
import { fieldList, hanging, indented, outdented, underlined, wrapped } from '../wrap.ts';
import { byEntry, editText, entryLine, keysText } from './edit-text.ts';
import { isTooSmallToSee, type MovedText, movedText } from './moved-text.ts';
import { historyText, resultText, sideCounts, turnHeadings } from './summary-text.ts';

export interface DiffOptions {
  /** The terminal's columns; no line is longer. */
  readonly width: number;
  readonly colour: boolean;
  /** Shows what moved by less than the last digit that is usually printed, too. */
  readonly detail: boolean;
}

type Paragraph = readonly string[];

/** Writes a comparison for a terminal. Ends with a line break. */
export function renderDiff(comparison: Comparison, options: DiffOptions): string {
  const pen = penOf(options.colour);
  const paragraphs = [
    headLines(comparison, pen, options),
    ...(isSame(comparison)
      ? [['There is no difference: both read the same.']]
      : [
          ...verdictParagraphs(comparison, pen, options),
          ...movedParagraphs(comparison, pen, options),
          editLines(comparison, pen, options),
          cautionLines(toldOf(comparison, options), pen, options.width),
          wrapped(resultText(comparison), options.width).map(pen.strong),
        ]),
  ];
  return `${paragraphs
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function headLines({ before, after }: Comparison, pen: Pen, { width }: DiffOptions): Paragraph {
  const line = (when: string, side: Comparison['before']) =>
    hanging(visible(`${when}  ${side.label}  ${side.name}: ${sideCounts(side)}`), 8, width);
  const [first, second] = [line('before', before), line('after ', after)];
  return [...first, ...second].map((text) => (text.startsWith(' ') ? text : pen.strong(text)));
}

function heading(text: string, pen: Pen, width: number): string[] {
  const { title, rule } = underlined(text, '═', width);
  return [...title.map(pen.strong), pen.faint(rule)];
}

function verdictParagraphs(
  { before, after, verdicts }: Comparison,
  pen: Pen,
  { width }: DiffOptions,
): Paragraph[] {
  return turns.flatMap((turn) => {
    const changes = verdicts.filter((change) => change.turn === turn);
    if (changes.length === 0) return [];
    const side = turn === 'gone' ? before : after;
    const lines = changes.flatMap((change) => verdictLines(change, side, pen, width));
    return [[...heading(`${turnHeadings[turn]} (${changes.length})`, pen, width), ...lines]];
  });
}

/** A pass that came or went needs no reason. */
function verdictLines(change: VerdictChange, side: Comparison['after'], pen: Pen, width: number): string[] {
  const { shown } = change;
  const history = historyText(change);
  if (shown.verdict !== 'pass' || change.turn === 'better')
    return quietLines(side, shown, pen, width, history);
  const text = visible(`${shown.rule}  ${shown.subject}`);
  const [first = '', ...rest] = hanging(`pass${history}  ${text}`, 6, width);
  return [pen.verdict.pass('pass') + first.slice(4), ...rest];
}

const columns: readonly Column[] = [
  { heading: 'value', align: 'left' },
  { heading: 'before', align: 'right' },
  { heading: 'after', align: 'right' },
  { heading: 'change', align: 'right' },
  { heading: 'margin', align: 'right' },
];

/** The values that are shown: all, or those whose change can be seen in the digits that are usually printed. */
const shownMoves = ({ moved, after }: Comparison, { detail }: DiffOptions): readonly Moved[] =>
  moved.filter((each) => detail || !isTooSmallToSee(each, after.units));

function movedParagraphs(comparison: Comparison, pen: Pen, options: DiffOptions): Paragraph[] {
  const { moved, after } = comparison;
  if (moved.length === 0) return [];
  const shown = shownMoves(comparison, options);
  const hidden = moved.length - shown.length;
  const byTopic = topics.map((topic) => shown.filter((each) => each.topic === topic));
  const texts = byTopic.map((group) => group.map((each) => movedText(each, after.units)));
  const tables = movedTables(texts, pen, options.width);
  return [
    heading(`Values that moved (${moved.length})`, pen, options.width),
    ...topics.flatMap((topic, at) => {
      const lines = tables[at] ?? [];
      return lines.length > 0 ? [[pen.strong(topic), ...lines]] : [];
    }),
    hidden === 0
      ? []
      : wrapped(
          `${hidden} ${shown.length === 0 ? '' : 'more '}moved by less than the digits that are printed; \`--detail\` shows ${hidden === 1 ? 'it' : 'them'}.`,
          options.width,
        ),
  ];
}

/** All tables share their columns' widths; where a word would have to be torn, each value is a block of its own. */
function movedTables(
  groups: readonly (readonly MovedText[])[],
  pen: Pen,
  width: number,
): readonly (readonly string[])[] {
  const rows = groups.map((group) =>
    group.map(({ what, before, after, change, margin }) =>
      [what, before, after, change, margin].map((text) => ({
        text: visible(text).replaceAll(' → ', ' →\u00a0'),
      })),
    ),
  );
  const widths = width < narrowestTable ? undefined : fittedToWords(columns, rows.flat(), width);
  if (widths)
    return rows.map((group) => (group.length === 0 ? [] : renderTable(columns, group, widths, pen.faint)));
  return groups.map((group) => group.flatMap((text) => stacked(text, width)));
}

const narrowestTable = 72;

function stacked({ what, before, after, change, margin }: MovedText, width: number): string[] {
  const fields = fieldList([
    ['', `${before} → ${after}`],
    [change.startsWith('limit') ? '' : 'change', change],
    ['margin', margin],
  ]);
  return [...outdented(visible(what), 2, width), ...indented(fields.trim(), 2, width)];
}

function editLines(comparison: Comparison, pen: Pen, { width }: DiffOptions): Paragraph {
  const groups = byEntry(comparison.edits);
  if (groups.length === 0) return [];
  const { units } = comparison.after;
  return [
    ...heading(`Edited in the plan (${comparison.edits.length})`, pen, width),
    ...groups.flatMap((group) => {
      const line = entryLine(comparison, group);
      const said = group.edits.map((edit) => editText(edit, units)).join('; ');
      return outdented(
        visible(`${keysText(group.entry)}: ${said}${line === '' ? '' : `  (${line})`}`),
        2,
        width,
      );
    }),
  ];
}

/** The findings that something is said of. */
const toldOf = (comparison: Comparison, options: DiffOptions) => [
  ...comparison.verdicts.map(({ shown }) => shown),
  ...shownMoves(comparison, options).map(({ after }) => after),
];
