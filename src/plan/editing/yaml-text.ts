import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  visit,
  type YAMLMap,
} from 'yaml';

/** A piece of a text that is to be replaced. */
export interface Replacement {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with all replacements made; none may reach into another. */
export function replaced(text: string, replacements: readonly Replacement[]): string {
  return [...replacements]
    .sort((a, b) => b.start - a.start)
    .reduce((so, { start, end, text: by }) => so.slice(0, start) + by + so.slice(end), text);
}

/** A plan's text as nodes with their places. It must be YAML without mistakes: who calls has read it as a plan. */
export const nodesOf = (text: string): Document.Parsed =>
  parseDocument(text, { prettyErrors: false, stringKeys: true, uniqueKeys: false });

export const lineBreakOf = (text: string): string => (/\r?\n/.exec(text)?.[0] === '\r\n' ? '\r\n' : '\n');

export const keyOf = (pair: Pair): string => (isScalar(pair.key) ? String(pair.key.value) : '');

/** The entry of a key; of a key that is written twice, the last, as in the data. */
export const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
  map.items.findLast((pair) => keyOf(pair) === key);

export const startOf = (node: unknown): number => (isNode(node) ? (node.range?.[0] ?? 0) : 0);
const endOf = (node: unknown): number => (isNode(node) ? (node.range?.[1] ?? 0) : 0);

/** Nothing stands after the colon. */
export const isNothing = (node: unknown): boolean =>
  !isNode(node) || (isScalar(node) && node.value === null && node.source === '');

/** Where what was written of an entry ends: a section in block style itself reaches to the next key. */
export function contentEnd(pair: Pair): number {
  const { key, value } = pair;
  return isNode(value) ? nodeEnd(value) : endOf(key);
}

function nodeEnd(node: unknown): number {
  if (!isCollection(node) || node.flow === true) return endOf(node);
  const last: unknown = node.items.at(-1);
  if (isMap(node)) {
    const pair = node.items.at(-1);
    return pair ? contentEnd(pair) : endOf(node);
  }
  return isSeq(node) && isNode(last) ? nodeEnd(last) : endOf(node);
}

/** The column that a node begins at, from 0 on. */
export const columnOf = (text: string, offset: number): number =>
  offset - (text.lastIndexOf('\n', offset - 1) + 1);

/** The names of marks that an alias repeats, with where it does. */
export function repeatsOf(document: Document.Parsed): ReadonlyMap<string, number> {
  const repeats = new Map<string, number>();
  visit(document, {
    Alias: (_, alias) => {
      if (!repeats.has(alias.source)) repeats.set(alias.source, startOf(alias));
    },
  });
  return repeats;
}

export const anchorOf = (node: unknown): string | undefined =>
  isNode(node) && !isAlias(node) && 'anchor' in node ? node.anchor : undefined;
