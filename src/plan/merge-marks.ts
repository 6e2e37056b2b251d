import type { Problem, Span } from './problem.ts';

type Located = Problem & { readonly span: Span };

interface Mark {
  readonly sign: string;
  /** Counted from 1. */
  readonly line: number;
  readonly span: Span;
}

/** Seven signs at the very beginning of a line, alone or before the name of a version, as git writes them. */
const markLine = /^(?:([<>|])\1{6}(?= |\t|\r?$)|={7}(?=\r?$)).*$/gm;

/**
 * What is left in a plan when a merge stopped because both versions changed the same lines: one problem for each such
 * spot. To a parser its three marks are three lines that make no sense.
 */
export function mergeProblems(text: string, lineOf: (offset: number) => number): Located[] {
  const marks = marksIn(text, lineOf);
  // Seven equals signs by themselves may be somebody's ruler.
  if (!marks.some(({ sign }) => sign === '<' || sign === '>')) return [];
  const problems: Located[] = [];
  for (let rest: readonly Mark[] = marks; rest.length > 0; ) {
    const [first] = rest;
    const spot = spotAt(rest);
    if (spot) problems.push(unfinished(spot));
    else if (first) problems.push(leftOver(first));
    rest = rest.slice(spot?.signs.length ?? 1);
  }
  return problems;
}

function marksIn(text: string, lineOf: (offset: number) => number): Mark[] {
  return [...text.matchAll(markLine)].map(({ 0: written, index }) => {
    const end = index + written.trimEnd().length;
    return { sign: written.slice(0, 1), line: lineOf(index), span: { start: index, end } };
  });
}

interface Spot {
  readonly open: Mark;
  /** What ends the first version: the middle, or what git puts above the version that both come from. */
  readonly firstEnd: Mark;
  readonly middle: Mark;
  readonly close: Mark;
  readonly signs: readonly string[];
}

/** The spot that begins with the first of these marks, if all of its marks follow. */
function spotAt([open, firstEnd, third, fourth]: readonly Mark[]): Spot | undefined {
  if (!open || !firstEnd || !third) return undefined;
  const spotOf = (middle: Mark, close: Mark, marks: readonly Mark[]): Spot => ({
    open,
    firstEnd,
    middle,
    close,
    signs: marks.map(({ sign }) => sign),
  });
  const three = [open, firstEnd, third];
  const signs = three.map(({ sign }) => sign).join('');
  if (signs === '<=>') return spotOf(firstEnd, third, three);
  return signs === '<|=' && fourth?.sign === '>' ? spotOf(third, fourth, [...three, fourth]) : undefined;
}

function unfinished({ open, firstEnd, middle, close, signs }: Spot): Located {
  const marks = signs.map((sign) => `\`${sign.repeat(7)}\``);
  return {
    message: `a merge is not finished: one version is ${between(open, firstEnd)}, the other ${between(middle, close)}`,
    span: open.span,
    expected: `one of the two, or what you make of both, without the lines ${marks.slice(0, -1).join(', ')} and ${marks.at(-1) ?? ''}`,
  };
}

function between({ line: before }: Mark, { line: after }: Mark): string {
  const [first, last] = [before + 1, after - 1];
  if (first > last) return 'empty';
  if (first === last) return `in line ${first}`;
  return `in lines ${first} ${first + 1 === last ? 'and' : 'to'} ${last}`;
}

const leftOver = ({ span }: Mark): Located => ({
  message: 'this line is left over from a merge',
  span,
  expected: 'the plan as you want it, without this line',
});
