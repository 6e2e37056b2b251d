import type { Problem } from '../plan/problem.ts';
import { visible } from './visible.ts';

type Position = (offset: number) => { readonly line: number; readonly column: number };

const longestExcerpt = 100;

/**
 * Writes what cannot be understood in a plan: file:line:column and what is wrong, the line with the spot marked, what
 * was expected, and what was perhaps meant. One block each, in the order given.
 */
export function renderProblems(
  file: string,
  text: string,
  problems: readonly Problem[],
  positionOf: Position,
): string {
  const lines = text.split(/\r?\n/);
  const blocks = problems.map((problem) => block(file, lines, problem, positionOf));
  const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`;
  const end = `${count}: nothing was checked, because the plan could not be understood.`;
  return `${blocks.map((each) => each.join('\n')).join('\n\n')}\n\n${end}\n`;
}

function block(file: string, lines: readonly string[], problem: Problem, positionOf: Position): string[] {
  const { message, span, expected, meant } = problem;
  const hints = [
    ...(meant === undefined ? [] : [`  did you mean: ${visible(meant)}`]),
    ...(expected === undefined ? [] : [`  expected: ${visible(expected)}`]),
  ];
  if (!span) return [`${visible(file)}: ${visible(message)}`, ...hints];
  const { line, column } = positionOf(span.start);
  const head = `${visible(file)}:${line}:${column}: ${visible(message)}`;
  return [head, ...excerpt(lines[line - 1] ?? '', line, column, span.end - span.start), ...hints];
}

/** The line with the spot underlined; of a very long line, only the part around the spot. */
function excerpt(line: string, number: number, column: number, length: number): string[] {
  const from = column - 1 > longestExcerpt - 20 ? column - 21 : 0;
  const shown = line.slice(from, from + longestExcerpt);
  const before = visible(shown.slice(0, column - 1 - from));
  const spot = visible(shown.slice(column - 1 - from, column - 1 - from + Math.max(1, length)));
  const gutter = String(number).padStart(5);
  return [
    `${gutter} | ${visible(shown)}`,
    `${' '.repeat(gutter.length)} | ${' '.repeat(before.length)}${'^'.repeat(Math.max(1, spot.trimEnd().length))}`,
  ];
}
