import type { Comparison, Moved, VerdictChange } from '../engine/compare/comparison.ts';
import type { Report } from '../engine/report.ts';
import { penOf } from './pen.ts';
import { quietLines } from './quiet.ts';
import { cautionLines, doesNotHold } from './short.ts';
import { countsText } from './summary.ts';
import { visible } from './visible.ts';
import { movedLines, verdictLines } from './watched-changes.ts';
import { hanging, wrapped } from './wrap.ts';

export interface Looks {
  readonly width: number;
  readonly colour: boolean;
}

/** The time of day as the clock on the wall shows it: "18:04:59". */
const clock = (at: Date): string => at.toTimeString().slice(0, 8);

/** The line that every run of a watch begins with, so that the newest is found when one scrolls back. */
export const watchHeader = (file: string, at: Date, { width, colour }: Looks): string =>
  wrapped(visible(`== ${clock(at)}  ${file}`), width)
    .map(penOf(colour).strong)
    .join('\n')
    .concat('\n');

/** What to say of the last good result while the plan cannot be understood. */
export const lastGoodText = (report: Report, at: Date, { width }: Looks): string =>
  wrapped(`The last good result, of ${clock(at)}: ${countsText(report.findings)}`, width).join('\n');

/** A run and what it found to be other than in the last good one. */
export interface Since {
  readonly at: Date;
  readonly comparison: Comparison;
}

/** Of the values that moved, this many are shown: those closest to their limits. */
const mostMoved = 5;

/**
 * What changed since the last good run, what fails, waivers that do not hold, and the counts. The rest is left to `storystick check`: a screen
 * that is read after every save has to be short.
 */
export function renderWatched(report: Report, since: Since | undefined, looks: Looks): string {
  const { width, colour } = looks;
  const pen = penOf(colour);
  const changes = since?.comparison.verdicts ?? [];
  const moved = closestFirst(since?.comparison.moved ?? []).slice(0, mostMoved);
  const news = changes.flatMap(({ shown, turn }) => (turn === 'gone' ? [] : [shown]));
  const old = report.findings.filter((finding) => !news.includes(finding));
  const failing = old.filter(({ verdict }) => verdict === 'fail');
  const waivers = old.filter(doesNotHold);
  const paragraphs = [
    since ? verdictParagraph(report, changes, clock(since.at), looks) : [],
    since ? movedParagraph(report, moved, since.comparison.moved.length, looks) : [],
    [
      ...(news.length > 0 && failing.length > 0 ? [pen.strong('Failing as before')] : []),
      ...failing.flatMap((finding) => quietLines(report, finding, pen, width)),
    ],
    [
      ...(waivers.length > 0 ? [pen.strong('Waivers that do not hold')] : []),
      ...waivers.flatMap((finding) => quietLines(report, finding, pen, width)),
    ],
    cautionLines([...news, ...moved.map(({ after }) => after), ...failing, ...waivers], pen, width),
    [
      ...wrapped(countsText(report.findings), width).map(pen.strong),
      ...hanging(`all of it: \`storystick check ${visible(report.file)}\``, 2, width).map(pen.faint),
    ],
  ];
  return `${paragraphs
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

const closestFirst = (moved: readonly Moved[]): readonly Moved[] =>
  moved.toSorted((one, other) => (other.after.utilisation ?? 0) - (one.after.utilisation ?? 0));

function verdictParagraph(
  report: Report,
  changes: readonly VerdictChange[],
  since: string,
  { width, colour }: Looks,
): readonly string[] {
  const pen = penOf(colour);
  if (changes.length === 0) return [`No verdict changed since ${since}.`];
  return [
    pen.strong(`Changed since ${since}`),
    ...changes.flatMap((change) => verdictLines(report, change, pen, width)),
  ];
}

function movedParagraph(
  report: Report,
  shown: readonly Moved[],
  all: number,
  { width, colour }: Looks,
): readonly string[] {
  const pen = penOf(colour);
  if (shown.length === 0) return [];
  const which =
    all > shown.length ? `Moved: the ${shown.length} of ${all} values closest to their limits` : 'Moved';
  return [pen.strong(which), ...shown.flatMap((moved) => movedLines(report, moved, width))];
}
