import { type Document, isCollection, isScalar, type Node, visit, type YAMLError } from 'yaml';
import { mergeProblems } from './merge-marks.ts';
import type { Problem, Span } from './problem.ts';
import { quote } from './quote.ts';
import { spanOfNode } from './tree.ts';

/** What is wrong with the YAML of a plan, in everyday words. */
export function syntaxProblems(
  text: string,
  document: Document.Parsed,
  lineOf: (offset: number) => number,
): Problem[] {
  // What else the parser takes offence at may be the two versions standing next to each other.
  const merging = document.errors.length > 0 ? mergeProblems(text, lineOf) : [];
  if (merging.length > 0) return merging;
  const startsOf = (sought: YAMLError['code']) =>
    new Set(document.errors.flatMap(({ code, pos }) => (code === sought ? [pos[0]] : [])));
  const setting: Setting = {
    text,
    overLines: startsOf('MULTILINE_IMPLICIT_KEY'),
    inBrackets: startsOf('BLOCK_IN_FLOW'),
    lineOf,
    endingAt: endingsOf(document),
  };
  const tags = document.warnings.filter(({ code }) => code === 'TAG_RESOLVE_FAILED');
  const problems = new Map<number, Problem>();
  const seen = new Set<number>();
  let lost = false;
  for (const error of [...document.errors, ...tags]) {
    // Once the parser has lost its thread it takes offence at everything that follows.
    const alsoLost = error.message.includes('in YAML stream');
    const line = lineOf(error.pos[0]);
    // What else is wrong in the same line is mostly the same trouble again.
    if ((alsoLost && lost) || seen.has(line)) continue;
    lost ||= alsoLost;
    seen.add(line);
    const problem = problemOf(error, setting);
    const shownIn = lineOf(problem.span.start);
    if (!problems.has(shownIn)) problems.set(shownIn, problem);
    // After a quote without its other half, what is text and what is not is anybody's guess.
    if (/^["']$/.test(text.slice(problem.span.start, problem.span.end))) break;
  }
  return [...problems.values()];
}

interface Setting {
  readonly text: string;
  /** Where keys begin that run over several lines. */
  readonly overLines: ReadonlySet<number>;
  /** Where keys begin that stand in the value of another one, within brackets. */
  readonly inBrackets: ReadonlySet<number>;
  readonly lineOf: (offset: number) => number;
  /** The innermost value that fits and ends at that offset. */
  readonly endingAt: (offset: number, fits: (node: Node) => boolean) => Span | undefined;
}

type Located = Problem & { readonly span: Span };
type Words = Omit<Problem, 'span'> & { readonly span?: Span };

function problemOf(error: YAMLError, setting: Setting): Located {
  const [from, to] = error.pos;
  const words = neverClosed(error, setting) ??
    closedLate(error, setting) ??
    everyday[error.code]?.(error, setting) ?? { message: 'this is not valid YAML' };
  // The parser may point past the end of the text.
  const { start, end } = words.span ?? { start: from, end: to };
  const last = setting.text.length;
  return { ...words, span: { start: Math.min(start, last), end: Math.min(end, last) } };
}

const isQuoted = (node: Node): boolean =>
  isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE');

function endingsOf(document: Document.Parsed): Setting['endingAt'] {
  let endings: Map<number, Node[]> | undefined;
  const gather = () => {
    const found = new Map<number, Node[]>();
    visit(document, {
      Node: (_key, node) => {
        const { end } = spanOfNode(node);
        const others = found.get(end);
        if (others) others.push(node);
        else found.set(end, [node]);
      },
    });
    return found;
  };
  return (offset, fits) => {
    endings ??= gather();
    const node = endings.get(offset)?.findLast(fits);
    return node && spanOfNode(node);
  };
}

/** A quote or a bracket without its other half is shown where it opens, not where the parser gave up. */
function neverClosed(error: YAMLError, { endingAt, text, lineOf }: Setting): Words | undefined {
  const sort = /^Missing closing .quote$/.test(error.message)
    ? 'quote'
    : /^Flow (?:map|sequence) .*end with a .$/.test(error.message)
      ? 'bracket'
      : undefined;
  if (sort === undefined) return undefined;
  const isBracketed = (node: Node) => isCollection(node) && node.flow === true;
  const [at] = error.pos;
  const start = endingAt(at, sort === 'quote' ? isQuoted : isBracketed)?.start ?? at;
  const opening = text[start] ?? '';
  const closing = opening === '{' ? '}' : ']';
  const instead = text[at] ?? '';
  if (sort === 'bracket' && (instead === '}' || instead === ']')) {
    return {
      message: `this bracket does not fit the \`${opening}\` that is open, in line ${lineOf(start)}`,
      span: { start: at, end: at + 1 },
      expected: `\`${closing}\` before it, or no \`${instead}\``,
    };
  }
  return {
    message: `this ${sort} is never closed`,
    span: { start, end: start + 1 },
    expected:
      sort === 'quote' ? 'the same sort of quote at the end of the text' : `a \`${closing}\` at the end`,
  };
}

/** The offset after the last character before this one that is no white space. */
function endOfText(text: string, offset: number): number {
  let end = offset;
  while (end > 0 && /\s/.test(text[end - 1] ?? '')) end -= 1;
  return end;
}

/** A quote that is closed only by the opening one of a later text. */
function closedLate(error: YAMLError, { endingAt, text, lineOf }: Setting): Words | undefined {
  if (error.code !== 'UNEXPECTED_TOKEN') return undefined;
  const quoted = endingAt(endOfText(text, error.pos[0]), isQuoted);
  if (!quoted || lineOf(quoted.start) === lineOf(quoted.end)) return undefined;
  return {
    message: `this quote is closed only in line ${lineOf(quoted.end)}`,
    span: { start: quoted.start, end: quoted.start + 1 },
    expected: 'a closing quote in the same line',
  };
}

const restOfLine = (text: string, start: number): string =>
  text.slice(start, endOfLine(text, start)).replace(/\r$/, '');

function endOfLine(text: string, offset: number): number {
  const end = text.indexOf('\n', offset);
  return end === -1 ? text.length : end;
}

const startOfLine = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;

/** A line that is no `key: value`, though its neighbours are. */
function noKey({ pos: [start] }: YAMLError, { text, inBrackets }: Setting): Words {
  const line = restOfLine(text, start).trimEnd();
  const span = { start, end: start + line.length };
  if (inBrackets.has(start)) {
    return {
      message: 'there is no comma at the end of this line',
      span,
      expected: 'a comma between the entries within brackets',
    };
  }
  if (line.startsWith('- ')) {
    return {
      message: 'an entry of a list stands among keys',
      span,
      expected: '`key: value`, or the list under a key of its own',
    };
  }
  const colon = /^([\p{L}\d_ -]+):(?=\S)(.*)$/u.exec(line);
  if (colon) {
    return {
      message: 'there is no space after the colon',
      span,
      expected: quote(`${colon[1] ?? ''}: ${colon[2] ?? ''}`),
    };
  }
  return {
    message: `there is no colon after ${quote(line)}`,
    span,
    expected: '`key: value`, or `key:` above the lines of its section',
  };
}

/** A key within the value of another one. */
function keyInValue({ pos }: YAMLError, { text, overLines }: Setting): Words {
  if (!overLines.has(pos[0])) {
    return {
      message: 'there are two colons in this line',
      expected:
        'quotes around text with a colon in it, such as `name: "Curlew: revision 4"`; the keys of a section on lines of their own',
    };
  }
  const next = pos[0] + restOfLine(text, pos[0]).length;
  const start = next + (/\S/.exec(text.slice(next, next + 2000))?.index ?? 0);
  return {
    message: 'this line is indented under one that has a value already',
    span: { start, end: start + restOfLine(text, start).length },
    expected: 'the indentation of the line above; or nothing after the colon there, if this belongs inside',
  };
}

type Explain = (error: YAMLError, setting: Setting) => Words;

const missingThings: readonly (readonly [about: RegExp, words: Words])[] = [
  [
    /^Missing ,/,
    { message: 'a comma is missing before this', expected: 'a comma between the entries within brackets' },
  ],
  [
    /^Comments must/,
    { message: 'there is no space before this `#`', expected: 'a space in front of a comment' },
  ],
  [
    /^Block collection/,
    { message: 'a section begins in the line of the `---`', expected: 'its first key in the next line' },
  ],
];

const bracketsAndSigns: Readonly<Record<string, Words>> = {
  '}': { message: 'this bracket closes nothing', expected: 'a `{` before it, or no `}`' },
  ']': { message: 'this bracket closes nothing', expected: 'a `[` before it, or no `]`' },
  ',': { message: 'there is nothing before this comma', expected: 'one comma between two entries' },
  '-': {
    message: 'a list begins in the line of its key',
    expected: 'each entry on a line of its own, indented; or all in brackets, such as `[fridge, bed]`',
  },
};

const afterValue: Words = {
  message: 'this comes after the end of the value',
  expected:
    'a comma if it is the next entry, or quotes around the whole text: double ones if it has an apostrophe',
};

const reserved: Explain = ({ pos: [start] }, { text }) => ({
  message: `a value cannot begin with ${text[start] === '`' ? 'a back quote' : `\`${text[start] ?? ''}\``}`,
  expected: 'quotes around the text; a share has its sign at the end, such as `50 %`',
});

const tagged: Explain = () => ({
  message: 'a word with `!` in front has a meaning of its own in YAML',
  expected: 'quotes around the text, or the value without that word',
});

const markedTwice: Words = { message: 'this value has two marks', expected: 'one `&` mark at most' };

const everyday: Readonly<Partial<Record<YAMLError['code'], Explain>>> = {
  TAB_AS_INDENT: () => ({
    message: 'a tab is used for indentation',
    expected: 'spaces; YAML does not allow tabs there',
  }),
  BAD_INDENT: ({ pos: [offset] }, { text }) => {
    const line = startOfLine(text, offset);
    const start = line + (/\S/.exec(text.slice(line, endOfLine(text, line)))?.index ?? 0);
    return {
      message: 'the indentation does not line up',
      span: { start, end: start + Math.max(1, restOfLine(text, start).length) },
      expected: 'the same indentation for all lines of a section',
    };
  },
  MISSING_CHAR: (error, setting) =>
    missingThings.find(([about]) => about.test(error.message))?.[1] ?? noKey(error, setting),
  MULTILINE_IMPLICIT_KEY: noKey,
  BLOCK_AS_IMPLICIT_KEY: keyInValue,
  BLOCK_IN_FLOW: () => ({
    message: 'a comma is missing here, or there is a colon too many',
    expected: 'a comma between the entries within brackets',
  }),
  UNEXPECTED_TOKEN: ({ pos: [start] }, { text }) => bracketsAndSigns[text[start] ?? ''] ?? afterValue,
  BAD_SCALAR_START: reserved,
  BAD_ALIAS: reserved,
  ALIAS_PROPS: () => markedTwice,
  MULTIPLE_ANCHORS: () => markedTwice,
  MULTIPLE_TAGS: tagged,
  TAG_RESOLVE_FAILED: tagged,
  BAD_COLLECTION_TYPE: tagged,
  BAD_DQ_ESCAPE: () => ({
    message: 'a backslash in double quotes has a meaning of its own',
    expected: 'single quotes around the text, or two backslashes for one',
  }),
  KEY_OVER_1024_CHARS: () => ({
    message: 'this key is longer than 1024 characters',
    expected: 'a short name; a colon or a line break may be missing',
  }),
  NON_STRING_KEY: () => ({ message: 'this key is no plain name', expected: 'a name, such as `bed:`' }),
  RESOURCE_EXHAUSTION: () => ({
    message: 'sections and lists are nested too deeply here',
    expected: 'a plan as in the examples: no section is more than five deep',
  }),
};
