import stringWidth from 'fast-string-width';
import type { Problem } from '../plan/problem.ts';
import { visible } from './visible.ts';

type Position = (offset: number) => { readonly line: number; readonly column: number };

const longestExcerpt = 100;
/** How much of a long line is shown in front of the spot. */
const lead = 20;

/**
 * Writes what cannot be understood in a plan: file:line:column and what is wrong, the line with the spot marked, what
 * was expected, and what was perhaps meant. One block each, in the order given.
 */
export function renderProblems(
  file: string,
  text: string,
  problems: readonly Problem[],
  positionOf: Position,
  wanted: 'checked' | 'drawn' | 'listed' | 'worked out' | 'changed' | 'compared' = 'checked',
): string {
  const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`;
  const end = `${count}: nothing was ${wanted}, because the plan could not be understood.`;
  return `${renderPlaces(file, text, problems, positionOf)}\n\n${end}\n`;
}

/** The same blocks by themselves, without a line break at their end. */
export function renderPlaces(
  file: string,
  text: string,
  problems: readonly Problem[],
  positionOf: Position,
): string {
  const lines = text.split(/\r?\n/);
  const blocks = problems.map((problem) => block(file, lines, problem, positionOf));
  return blocks.map((each) => each.join('\n')).join('\n\n');
}

function block(file: string, lines: readonly string[], problem: Problem, positionOf: Position): string[] {
  const { message, span, expected, meant } = problem;
  const hints = [
    ...(meant === undefined ? [] : [`  did you mean: ${visible(meant)}`]),
    ...(expected === undefined ? [] : [`  expected: ${visible(expected)}`]),
  ];
  const name = visible(file) || '(no name)';
  if (!span) return [`${name}: ${visible(message)}`, ...hints];
  const { line, column } = positionOf(span.start);
  const head = `${name}:${line}:${column}: ${visible(message)}`;
  return [head, ...excerpt(lines[line - 1] ?? '', line, column, span.end - span.start), ...hints];
}

/** The line with the spot underlined; of a very long line, only the part around the spot. */
function excerpt(line: string, number: number, column: number, length: number): string[] {
  const spot = { start: column - 1, end: Math.min(line.length, column - 1 + Math.max(1, length)) };
  const start = line.length > longestExcerpt && spot.start > longestExcerpt - lead ? spot.start - lead : 0;
  const from = wholeCharacter(line, start);
  const to = wholeCharacter(line, Math.min(line.length, from + longestExcerpt));
  // Written piece by piece: what becomes visible may be longer or shorter than what stands in the file.
  const before = (from > 0 ? '…' : '') + visible(line.slice(from, spot.start));
  const marked = visible(line.slice(spot.start, Math.min(spot.end, to)));
  const after = visible(line.slice(Math.min(spot.end, to), to)) + (to < line.length ? '…' : '');
  const gutter = String(number).padStart(5);
  return [
    `${gutter} | ${before}${marked}${after}`.trimEnd(),
    `${' '.repeat(gutter.length)} | ${' '.repeat(stringWidth(before))}${'^'.repeat(Math.max(1, stringWidth(marked.trimEnd())))}`,
  ];
}

/** The offset, or the one after it where it would cut a character in two. */
const wholeCharacter = (line: string, offset: number): number =>
  /[\uDC00-\uDFFF]/.test(line[offset] ?? '') && offset > 0 ? offset + 1 : offset;
