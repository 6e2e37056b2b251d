import {
  type Document,
  isAlias,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseAllDocuments,
  type YAMLError,
} from 'yaml';
import type { Problem, Span } from './problem.ts';

/** A plan's text as YAML, in which every path can be found again. */
export interface PlanDocument {
  readonly text: string;
  readonly data: unknown;
  /** The span of the value at a path, or of the nearest thing above it that exists. */
  readonly spanOf: (path: readonly PropertyKey[]) => Span;
  /** The span of the key itself. */
  readonly keySpanOf: (path: readonly PropertyKey[]) => Span;
  readonly positionOf: (offset: number) => { readonly line: number; readonly column: number };
}

export type Parsed = { readonly document: PlanDocument; readonly problems: readonly Problem[] };

/** Parses YAML 1.2. Problems of the syntax are reported all together; then there is no data to go on with. */
export function parseDocument(text: string): Parsed {
  const lineCounter = new LineCounter();
  const documents = parseAllDocuments(text, { lineCounter, prettyErrors: false, stringKeys: true });
  const [first, second] = [...documents];
  const problems: Problem[] = [];
  for (const error of first?.errors ?? []) problems.push(syntaxProblem(error, text));
  if (second) {
    const start = second.range?.[0] ?? 0;
    problems.push({
      message: 'the file holds more than one YAML document',
      span: { start, end: start },
      expected: 'one plan in a file, without a `---` line between parts',
    });
  }
  let data: unknown;
  if (problems.length === 0 && first) {
    try {
      data = first.toJS({ maxAliasCount: 100 });
    } catch (error) {
      problems.push(aliasProblem(error, first));
    }
  }
  const document: PlanDocument = {
    text,
    data,
    spanOf: (path) => find(first, path).value,
    keySpanOf: (path) => find(first, path).key,
    positionOf: (offset) => {
      const { line, col } = lineCounter.linePos(offset);
      return { line, column: col };
    },
  };
  return { document, problems };
}

const everyday: Partial<
  Record<YAMLError['code'], (written: string) => { message: string; expected?: string }>
> = {
  DUPLICATE_KEY: (written) => ({
    message: `\`${written}\` is written twice in the same section`,
    expected: 'each name once; rename or delete one of them',
  }),
  TAB_AS_INDENT: () => ({
    message: 'a tab is used for indentation',
    expected: 'spaces; YAML does not allow tabs there',
  }),
  BAD_INDENT: () => ({
    message: 'the indentation does not line up',
    expected: 'the same indentation for all keys of a section',
  }),
  MISSING_CHAR: () => ({
    message: 'something is missing here',
    expected: 'a closing quote, bracket or comma',
  }),
  UNEXPECTED_TOKEN: () => ({
    message: 'this does not belong here',
    expected: '`key: value`, with a space after the colon',
  }),
  MULTILINE_IMPLICIT_KEY: () => ({
    message: 'a key runs over several lines',
    expected: '`key: value` on one line; a colon may be missing',
  }),
  BLOCK_AS_IMPLICIT_KEY: () => ({
    message: 'a section starts on the line of another value',
    expected: 'its keys on lines of their own, indented',
  }),
  NON_STRING_KEY: () => ({ message: 'this key is no plain name', expected: 'a name, such as `bed:`' }),
};

function syntaxProblem(error: YAMLError, text: string): Problem {
  const [start, end] = error.pos;
  const token = /^[^\s:#,}\]]*/.exec(text.slice(start))?.[0] ?? '';
  const words = everyday[error.code]?.(token) ?? {
    message: `this is not valid YAML: ${firstSentence(error.message)}`,
  };
  return {
    ...words,
    span: { start, end: Math.max(end, error.code === 'DUPLICATE_KEY' ? start + token.length : end) },
  };
}

function aliasProblem(error: unknown, document: Document.Parsed): Problem {
  const message = error instanceof Error ? error.message : '';
  const start = document.contents?.range?.[0] ?? 0;
  const unresolved = /Unresolved alias.*: (\S+)/.exec(message)?.[1];
  return unresolved === undefined
    ? {
        message: 'aliases (`*name`) expand to far more than is written',
        span: { start, end: start },
        expected: 'the values written out, or `params`',
      }
    : {
        message: `\`*${unresolved}\` repeats something that is not marked`,
        span: { start, end: start },
        expected: `\`&${unresolved}\` before it`,
      };
}

const firstSentence = (message: string): string => (message.split(/[.\n]/)[0] ?? '').trim().toLowerCase();

function find(
  document: Document.Parsed | undefined,
  path: readonly PropertyKey[],
): { value: Span; key: Span } {
  let node: unknown = document?.contents;
  let found = { value: spanOfNode(node), key: spanOfNode(node) };
  for (const part of path) {
    if (isAlias(node)) node = document && node.resolve(document);
    let key: unknown;
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(part));
      key = pair?.key;
      node = pair?.value ?? undefined;
      if (isPair(pair))
        found = { value: spanOfNode(isNode(node) && !isEmpty(node) ? node : key), key: spanOfNode(key) };
    } else if (isSeq(node) && typeof part === 'number') {
      node = node.items[part];
      if (isNode(node)) found = { value: spanOfNode(node), key: spanOfNode(node) };
    } else {
      node = undefined;
    }
    if (node === undefined) break;
    // A section is pointed at by its name; its body may be pages long.
    if (isMap(node) && !node.flow && isNode(key)) found = { value: spanOfNode(key), key: spanOfNode(key) };
  }
  return found;
}

const isEmpty = (node: Node): boolean => isScalar(node) && node.value === null && node.source === '';

const spanOfNode = (node: unknown): Span => {
  const range = isNode(node) ? node.range : undefined;
  return range ? { start: range[0], end: range[1] } : { start: 0, end: 0 };
};
