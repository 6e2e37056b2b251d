import type { VariantRow, Variants } from '../../engine/compare/variants.ts';
import { topics, type Verdict, verdicts } from '../../engine/finding.ts';
import { whatText } from '../diff/moved-text.ts';
import { sideCounts } from '../diff/summary-text.ts';
import type { Units } from '../format-measure.ts';
import { type Pen, penOf } from '../pen.ts';
import { cautionLines } from '../short.ts';
import { type Cell, type Column, columnWidths, leastWidths, naturalWidth, renderTable } from '../table.ts';
import { visible } from '../visible.ts';
import { hanging, indented, outdented, wrapped } from '../wrap.ts';
import { cellsOf, looksTheSame } from './cells.ts';
import { shortNames } from './names.ts';

export interface VariantsOptions {
  /** The terminal's columns; no line is longer. */
  readonly width: number;
  readonly colour: boolean;
  /** Shows what is the same in all variants, too. */
  readonly all: boolean;
}

/** Writes variants side by side for a terminal. Ends with a line break. */
export function renderVariants({ sides, rows }: Variants, { width, colour, all }: VariantsOptions): string {
  const pen = penOf(colour);
  const names = shortNames(sides);
  const units = sides[0]?.units ?? 'metric';
  const shown = rows.filter((row) => all || (!row.isSame && !looksTheSame(row, units)));
  const hidden = rows.length - shown.length;
  const groups = topics.map((topic) => shown.filter((row) => row.topic === topic));
  const tables = variantTables(groups, names, units, pen, width);
  const indent = Math.max(...names.map((name) => name.length)) + 2;
  const paragraphs = [
    sides.flatMap((side, at) =>
      hanging(
        `${(names[at] ?? '').padEnd(indent)}${visible(`${side.label}  ${side.name}: ${sideCounts(side)}`)}`,
        indent,
        width,
      ).map((line, first) => (first === 0 ? pen.strong(line) : line)),
    ),
    ...topics.flatMap((topic, at) => {
      const lines = tables[at] ?? [];
      return lines.length > 0 ? [[pen.strong(topic), ...lines]] : [];
    }),
    [
      ...(shown.some(({ findings }) => findings.includes(undefined))
        ? wrapped('-: the check found nothing to say of this in the variant.', width)
        : []),
      ...(shown.length === 0 ? wrapped('No difference can be seen.', width) : []),
      ...(hidden > 0
        ? wrapped(
            `${hidden} ${hidden === 1 ? 'finding is' : 'findings are'} the same in all, or differ by less than the digits that are printed; \`--all\` shows ${hidden === 1 ? 'it' : 'them'}.`,
            width,
          )
        : []),
    ],
    cautionLines(
      shown.flatMap(({ findings }) => findings.flatMap((finding) => finding ?? [])),
      pen,
      width,
    ),
  ];
  return `${paragraphs
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

/** All tables share their columns' widths; where there are too many variants for a table, each row is a block. */
function variantTables(
  groups: readonly (readonly VariantRow[])[],
  names: readonly string[],
  units: Units,
  pen: Pen,
  width: number,
): readonly (readonly string[])[] {
  const columns: readonly Column[] = [
    { heading: 'check', align: 'left' },
    ...names.map((heading) => ({ heading, align: 'right' as const })),
  ];
  const rows = groups.map((group) =>
    group.map((row): readonly Cell[] => [
      { text: visible(whatText(row)) },
      ...cellsOf(row, units).map((text) => ({
        text: text.replace('not checked', 'not\u00a0checked'),
        paint: paintOf(text, pen),
      })),
    ]),
  );
  const widths = widthsOf(columns, rows.flat(), width);
  if (widths) {
    return rows.map((group) => (group.length === 0 ? [] : renderTable(columns, group, widths, pen.faint)));
  }
  return groups.map((group) =>
    group.flatMap((row) => [
      ...outdented(visible(whatText(row)), 2, width),
      ...indented(
        cellsOf(row, units)
          .map((text, at) => `${names[at]} ${text}`.replaceAll(' ', '\u00a0'))
          .join(', '),
        4,
        width,
      ),
    ]),
  );
}

/** With less than this, a check's name takes more lines than a value and its verdict would save. */
const leastOfCheck = 28;

/** No word is torn. The values stay in one line if the checks' names have room enough; else these come first. */
function widthsOf(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  width: number,
): readonly number[] | undefined {
  const [check = 0, ...natural] = columnWidths(columns, rows);
  const [leastCheck = 0, ...least] = leastWidths(columns, rows);
  const besideOf = (numbers: readonly number[]) => Math.min(check, width - naturalWidth([0, ...numbers]));
  if (besideOf(natural) >= Math.min(check, Math.max(leastOfCheck, leastCheck))) {
    return [besideOf(natural), ...natural];
  }
  return besideOf(least) >= leastCheck ? [besideOf(least), ...least] : undefined;
}

const paintOf = (text: string, pen: Pen): ((line: string) => string) => {
  const verdict: Verdict | undefined = verdicts.find((each) => each !== 'pass' && text.includes(each));
  return verdict ? pen.verdict[verdict] : text.endsWith('best') ? pen.strong : String;
};
