import type { Picture } from '../../build/picture/model.ts';
import { renderPhrase } from '../format-measure.ts';
import type { Pen } from '../pen.ts';
import { visible } from '../visible.ts';
import { wrapped } from '../wrap.ts';
import type { Sheet } from './sheet.ts';

/** A view with its title, what lies on its sides, the names of its axle lines, and its remarks. */
export function viewLines(
  { view, canvas, guides }: Sheet,
  units: Picture['units'],
  pen: Pen,
  width: number,
): string[] {
  const { left, right, above, below } = view.edges;
  const span = Math.min(width, Math.max(canvas.columns, left.length + right.length + above.length + 4));
  const paints = { line: (text: string) => text, faint: pen.faint, sign: pen.strong };
  return [
    ...wrapped(visible(renderPhrase(view.title, units)), width).map(pen.strong),
    spread([
      { text: left, at: 0 },
      { text: above, at: (span - above.length) / 2 },
      { text: right, at: span - right.length },
    ]),
    ...canvas.lines((text, ink) => paints[ink](text)),
    ...labelLines([
      ...guides.map(({ column, label }) => ({
        text: label,
        at: Math.max(0, Math.min(column - label.length / 2, width - label.length)),
      })),
      { text: below, at: (span - below.length) / 2 },
    ]),
    ...view.remarks.flatMap((remark) => wrapped(visible(renderPhrase(remark, units)), width)),
  ];
}

interface Label {
  readonly text: string;
  readonly at: number;
}

/** Texts in one line, each where it belongs. */
const spread = (labels: readonly Label[]): string =>
  labels.reduce((line, { text, at }) => line.padEnd(Math.round(at)) + text, '');

/** The same, in as many lines as it takes for none to touch another. */
function labelLines(labels: readonly Label[]): string[] {
  const lines: Label[][] = [];
  for (const label of [...labels].sort((a, b) => a.at - b.at)) {
    const free = lines.find((line) => {
      const last = line.at(-1);
      return !last || Math.round(last.at) + last.text.length + 2 <= Math.round(label.at);
    });
    if (free) free.push(label);
    else lines.push([label]);
  }
  return lines.map(spread);
}
