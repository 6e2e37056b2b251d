import Table from 'cli-table3';
import stringWidth from 'fast-string-width';
import { widestWord, wrapped } from './wrap.ts';

export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

export interface Cell {
  readonly text: string;
  readonly paint?: (line: string) => string;
}

const gap = 2;

// Most cells are short and of plain characters; they need not be measured character by character.
const plain = /^[!-~](?:[ -~]*[!-~])?$/;
const columnsOf = (text: string): number => (plain.test(text) ? text.length : stringWidth(text));
const linesOf = (text: string, width: number): string[] =>
  text.length <= width && plain.test(text) ? [text] : wrapped(text, width);

// No frame: a rule below the headings, and white space between the columns.
const chars = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  right: '',
  'right-mid': '',
  mid: '─',
  'mid-mid': '─'.repeat(gap),
  middle: ' '.repeat(gap),
};

/** The width that a table needs if no cell is wrapped. */
export const naturalWidth = (widths: readonly number[]): number =>
  widths.reduce((sum, width) => sum + width, gap * (widths.length - 1));

/** The width of the widest cell of each column, and one for a column with nothing in it. */
export const columnWidths = (columns: readonly Column[], rows: readonly (readonly Cell[])[]): number[] =>
  columns.map(({ heading }, at) =>
    Math.max(1, columnsOf(heading), ...rows.map((row) => columnsOf(row[at]?.text ?? ''))),
  );

/** Takes from the widest column until the table fits, so that the short columns of numbers stay whole. */
export function fitted(widths: readonly number[], width: number): number[] {
  const result = [...widths];
  for (let excess = naturalWidth(result) - width; excess > 0; excess -= 1) {
    const widest = Math.max(...result);
    result[result.indexOf(widest)] = widest - 1;
  }
  return result;
}

/** The width of the longest word of each column, which is left whole. */
export const leastWidths = (columns: readonly Column[], rows: readonly (readonly Cell[])[]): number[] =>
  columns.map(({ heading }, at) =>
    Math.max(widestWord(heading), ...rows.map((row) => widestWord(row[at]?.text ?? ''))),
  );

/**
 * As `fitted`, but takes only from columns that are wider than their longest word; undefined where a word would have to
 * be torn.
 */
export function fittedToWords(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  width: number,
): number[] | undefined {
  const result = columnWidths(columns, rows);
  const least = leastWidths(columns, rows);
  for (let excess = naturalWidth(result) - width; excess > 0; excess -= 1) {
    const spare = result.map((each, at) => (each > (least[at] ?? each) ? each : 0));
    const widest = Math.max(...spare);
    if (widest === 0) return undefined;
    result[spare.indexOf(widest)] = widest - 1;
  }
  return result;
}

/**
 * Lays out a table with columns of the given widths; text that is wider is wrapped, never cut.
 *
 * The table library measures characters by an older table than the one we wrap with (it takes newer emoji for one
 * column), and would misplace what follows them. So it lays out stand-ins of the right width, and the real lines
 * take their places afterwards, in reading order.
 */
export function renderTable(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  widths: readonly number[],
  faint: (line: string) => string,
): string[] {
  const lines: string[] = [];
  const standIns = (cells: readonly Cell[]): string[] => {
    const wrappedCells = cells.map((cell, at) => linesOf(cell.text, widths[at] ?? 1));
    const height = Math.max(...wrappedCells.map((cell) => cell.length));
    for (let line = 0; line < height; line += 1) {
      wrappedCells.forEach((cell, at) => {
        const text = cell[line] ?? '';
        if (columnsOf(text) > 0) lines.push((cells[at]?.paint ?? String)(text));
      });
    }
    return wrappedCells.map((cell) => cell.map((text) => 'x'.repeat(columnsOf(text))).join('\n'));
  };
  const table = new Table({
    head: standIns(columns.map(({ heading }) => ({ text: heading, paint: faint }))),
    colWidths: [...widths],
    colAligns: columns.map(({ align }) => align),
    chars,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0, compact: true },
  });
  for (const row of rows) table.push(standIns(row));
  const real = lines.values();
  return table
    .toString()
    .split('\n')
    .map((line) =>
      /^─+$/.test(line) ? faint(line) : line.trimEnd().replace(/x+/g, () => real.next().value ?? ''),
    );
}
