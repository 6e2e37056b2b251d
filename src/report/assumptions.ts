import type { Assumption } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { renderPhrase } from './format-measure.ts';
import { type Pen, penOf } from './pen.ts';
import { sourceText } from './source-text.ts';
import { visible } from './visible.ts';
import { hanging, underlined } from './wrap.ts';

export interface AssumptionOptions {
  readonly width: number;
  readonly colour: boolean;
}

/** Lists every value that the plan does not say, with the key that would say it. Ends with a line break. */
export function renderAssumptions(report: Report, { width, colour }: AssumptionOptions): string {
  const pen = penOf(colour);
  if (report.assumptions.length === 0) return 'No value is assumed.\n';
  const marks = report.assumptions.map(({ path }) => lineMark(report.spot(path)?.line));
  const markWidth = Math.max(...marks.map((mark) => mark.length));
  const entries = report.assumptions.flatMap((assumption, at) =>
    entryLines(report, assumption, (marks[at] ?? '').padStart(markWidth), pen, width),
  );
  const { title, rule } = underlined('Assumed values', '═', width);
  return `${[...[...title, rule].map(pen.strong), ...entries].join('\n')}\n`;
}

const lineMark = (line: number | undefined): string => (line === undefined ? 'no line' : `line ${line}`);

function entryLines(
  report: Report,
  { path, text, source }: Assumption,
  mark: string,
  pen: Pen,
  width: number,
): string[] {
  const indent = mark.length + 2;
  const [first = '', ...rest] = hanging(
    `${mark}  ${visible(path.join('.'))}: ${visible(renderPhrase(text, report.units))}`,
    indent,
    width,
  );
  const from = source ? `${' '.repeat(indent)}source: ${visible(sourceText(source))}` : '';
  return [
    pen.faint(mark) + first.slice(mark.length),
    ...rest,
    ...(from === '' ? [] : hanging(from, indent + 'source: '.length, width).map(pen.faint)),
  ];
}
