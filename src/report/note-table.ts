import type { Note } from '../engine/finding.ts';
import type { Phrase } from '../engine/phrase.ts';
import type { Report } from '../engine/report.ts';
import { renderPhrase } from './format-measure.ts';
import type { Pen } from './pen.ts';
import { sourceText } from './source-text.ts';
import { type Column, columnWidths, fitted, naturalWidth, renderTable } from './table.ts';
import { visible } from './visible.ts';
import { fieldList, hanging, indented, wrapped } from './wrap.ts';

/** Where a table does not fit, its columns may shrink to this on average before it becomes a list. */
const narrowestColumn = 14;

const isNumber = (cell: Phrase | undefined): boolean =>
  cell === undefined || cell.length === 0 || (cell.length === 1 && typeof cell[0] !== 'string');

/** A table of information: its title, its rows, and what there is to say about it. */
export function noteLines(
  note: Note,
  { units }: Pick<Report, 'units'>,
  pen: Pen,
  { width, detail }: { readonly width: number; readonly detail: boolean },
): string[] {
  const text = note.text ? visible(renderPhrase(note.text, units)) : '';
  return [
    ...wrapped(visible(note.title), width).map(pen.strong),
    ...(text === '' ? [] : wrapped(text, width)),
    ...rowLines(note, units, pen, width),
    ...(detail ? note.sources : []).flatMap((source) =>
      hanging(`source: ${visible(sourceText(source))}`, 'source: '.length, width).map(pen.faint),
    ),
  ];
}

function rowLines(note: Note, units: Report['units'], pen: Pen, width: number): string[] {
  if (note.rows.length === 0) return [];
  const columns = note.columns.map(
    (heading, at): Column => ({
      heading: visible(heading),
      align: note.rows.every((row) => isNumber(row[at])) ? 'right' : 'left',
    }),
  );
  const rows = note.rows.map((row) =>
    columns.map((_, at) => ({ text: visible(renderPhrase(row[at] ?? [], units)) })),
  );
  const widths = columnWidths(columns, rows);
  if (naturalWidth(widths) <= width || width / columns.length >= narrowestColumn) {
    return renderTable(columns, rows, fitted(widths, width), pen.faint);
  }
  return rows.flatMap(([first, ...others]) => [
    ...wrapped(first?.text ?? '', width),
    ...indented(fieldList(others.map(({ text }, at) => [columns[at + 1]?.heading ?? '', text])), 2, width),
  ]);
}
