import type { Finding } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { figuresOf } from './figures.ts';
import type { Pen } from './pen.ts';
import { type Cell, type Column, columnWidths, fitted, renderTable } from './table.ts';
import { visible } from './visible.ts';
import { verdictText } from './waiver-text.ts';
import { fieldList, hanging, indented, outdented } from './wrap.ts';

/** The narrowest terminal that gets a table; below it each finding is a block of its own. */
export const narrowestTable = 90;

/** The width of the widest verdict and the gap after it, so that all that follows stands in one line. */
export const verdictColumn = 'not checked'.length + 2;

const columns: readonly Column[] = [
  { heading: 'verdict', align: 'left' },
  { heading: 'check', align: 'left' },
  { heading: 'measured', align: 'right' },
  { heading: 'limit', align: 'right' },
  { heading: 'margin', align: 'right' },
  { heading: 'line', align: 'right' },
];

/** "Axle load: rear axle", or the title alone where it names the subject already. */
function checkText({ title, subject }: Finding): string {
  const known = title.toLowerCase().includes(subject.toLowerCase());
  return visible(known ? title : `${title}: ${subject}`);
}

const lineText = (report: Report, finding: Finding): string => `${report.spot(finding.path)?.line ?? ''}`;

function rowOf(report: Report, finding: Finding, pen: Pen): Cell[] {
  const { measured, limit, margin } = figuresOf(finding, report.units);
  const verdict = { text: verdictText(finding), paint: pen.verdict[finding.verdict] };
  const line = { text: lineText(report, finding), paint: pen.faint };
  return [verdict, { text: checkText(finding) }, { text: measured }, { text: limit }, { text: margin }, line];
}

/** Verdict and check on the first line, the numbers below. */
function stacked(report: Report, finding: Finding, pen: Pen, width: number): string[] {
  const { measured, limit, margin } = figuresOf(finding, report.units);
  const numbers = fieldList([
    ['measured', measured],
    ['limit', limit],
    ['margin', margin],
    ['line', lineText(report, finding)],
  ]);
  const opening = `${verdictText(finding)}  `.padEnd(verdictColumn);
  const lay = opening.length > verdictColumn ? outdented : hanging;
  const [first = '', ...rest] = lay(opening + checkText(finding), verdictColumn, width);
  const painted = pen.verdict[finding.verdict](finding.verdict) + first.slice(finding.verdict.length);
  return [painted, ...rest, ...indented(numbers, verdictColumn, width)];
}

/** Lays out each group of findings as a table; all the tables share their columns' widths, so that they line up. */
export function findingTables(
  report: Report,
  groups: readonly (readonly Finding[])[],
  pen: Pen,
  width: number,
): string[][] {
  if (width < narrowestTable) {
    return groups.map((group) => group.flatMap((finding) => stacked(report, finding, pen, width)));
  }
  const tables = groups.map((group) => group.map((finding) => rowOf(report, finding, pen)));
  const widths = fitted(columnWidths(columns, tables.flat()), width);
  return tables.map((rows) => (rows.length === 0 ? [] : renderTable(columns, rows, widths, pen.faint)));
}
