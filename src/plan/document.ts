import { type Document, isAlias, isMap, isNode, isScalar, isSeq, parseAllDocuments } from 'yaml';
import type { Problem, Span } from './problem.ts';
import { readTree, spanOfNode, type Tree } from './tree.ts';
import { syntaxProblems } from './yaml-problems.ts';

/** A plan's text as YAML, in which every path can be found again. */
export interface PlanDocument {
  readonly text: string;
  /** Plain data; numbers are left as text, since a quantity is read as it was written. */
  readonly data: unknown;
  /** The span of the value at a path, or of the nearest thing above it that exists. */
  readonly spanOf: (path: readonly PropertyKey[]) => Span;
  /** The span of the key itself. */
  readonly keySpanOf: (path: readonly PropertyKey[]) => Span;
  readonly positionOf: (offset: number) => { readonly line: number; readonly column: number };
}

export interface Parsed {
  readonly document: PlanDocument;
  readonly problems: readonly Problem[];
  /** There is no data to go on with. */
  readonly broken: boolean;
}

/** Parses YAML 1.2. Problems of the syntax are reported all together; then there is no data to go on with. */
export function parseDocument(text: string): Parsed {
  const positionOf = positionsIn(text);
  const lineOf = (offset: number) => positionOf(offset).line;
  const unreadable = noText(text);
  const { first, problems } = unreadable ? { first: undefined, problems: [unreadable] } : parse(text, lineOf);
  const usable = problems.length === 0;
  const tree = readTree(usable ? (first?.contents ?? null) : null, lineOf);
  const document: PlanDocument = {
    text,
    data: usable && !tree.broken ? tree.data : undefined,
    spanOf: (path) => find(first, tree, path).value,
    keySpanOf: (path) => find(first, tree, path).key,
    positionOf,
  };
  return { document, problems: [...problems, ...tree.problems], broken: !usable || tree.broken };
}

/** A control character means that this is no text file at all, or was damaged. */
function noText(text: string): Problem | undefined {
  const found = /[^\P{Cc}\t\n\r\u0080-\u009F]|\r(?!\n)/u.exec(text);
  if (!found) return undefined;
  const span = { start: found.index, end: found.index + 1 };
  if (found[0] === '\r') {
    return {
      message: 'a line ends here with a lone carriage return',
      span,
      expected: 'line ends saved as LF or CRLF; most editors have it under "Line endings"',
    };
  }
  const code = found[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
  return {
    message: `there is a character here that is no text (U+${code})`,
    span,
    expected: 'a plan written with a text editor and saved as plain text',
  };
}

function parse(
  text: string,
  lineOf: (offset: number) => number,
): { readonly first: Document.Parsed | undefined; readonly problems: readonly Problem[] } {
  const documents = parseAllDocuments(text, {
    prettyErrors: false,
    stringKeys: true,
    // Looked for in the walk over the tree: here it would take time with the square of a section's length.
    uniqueKeys: false,
    customTags: (tags) => tags.filter((tag) => typeof tag === 'string' || !isNumberTag(tag.tag)),
  });
  const [first, second] = [...documents];
  if (!first) return { first, problems: [] };
  const problems = syntaxProblems(text, first, lineOf);
  const start = second?.range?.[0] ?? 0;
  if (second && problems.length === 0) {
    problems.push({
      message: 'the file holds more than one YAML document',
      span: { start, end: start },
      expected: 'one plan in a file, without a `---` line between parts',
    });
  }
  return { first, problems };
}

const isNumberTag = (tag: string): boolean => tag.endsWith(':int') || tag.endsWith(':float');

function find(
  document: Document.Parsed | undefined,
  tree: Tree,
  path: readonly PropertyKey[],
): { readonly value: Span; readonly key: Span } {
  let node: unknown = document?.contents;
  // The whole plan is pointed at by its first character.
  const { start } = spanOfNode(node);
  let found = {
    value: { start, end: isMap(node) || isSeq(node) ? start : spanOfNode(node).end },
    key: { start, end: start },
  };
  for (const part of path) {
    if (isAlias(node)) node = tree.targetOf(node);
    if (isMap(node)) {
      const pair = tree.pairOf(node, String(part));
      if (!pair) break;
      node = pair.value;
      const key = spanOfNode(pair.key);
      // A section is pointed at by its name; its body may be pages long. So is a value that is not there.
      found = { key, value: isMap(node) || isEmpty(node) ? key : spanOfNode(node) };
    } else if (isSeq(node) && typeof part === 'number') {
      node = node.items[part];
      if (!isNode(node)) break;
      found = { value: spanOfNode(node), key: spanOfNode(node) };
    } else break;
  }
  return found;
}

const isEmpty = (node: unknown): boolean =>
  !isNode(node) || (isScalar(node) && node.value === null && node.source === '');

/** Lines and columns, both counted from 1; a column is a UTF-16 unit, as in most editors. */
function positionsIn(text: string): PlanDocument['positionOf'] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
  };
}
