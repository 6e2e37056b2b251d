import {
  type Alias,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  type ParsedNode,
  type YAMLMap,
} from 'yaml';
import { nearest } from './nearest.ts';
import type { Problem, Span } from './problem.ts';
import { quote } from './quote.ts';

/** A YAML tree as plain data, with what is needed to find the way back. */
export interface Tree {
  readonly data: unknown;
  /** The entry of a key; of a key that is written twice, the last, as in the data. */
  readonly pairOf: (map: YAMLMap, key: string) => Pair | undefined;
  /** What `*name` stands for. */
  readonly targetOf: (alias: Alias) => Node | undefined;
  readonly problems: readonly Problem[];
  /** The data are not complete: nothing can be said of them. */
  readonly broken: boolean;
}

/** How many values aliases may add to what is written: far more than any plan needs, and few enough to check. */
const mostRepeated = 100_000;

interface Anchor {
  readonly node: Node;
  /** Missing while the walk is still inside the anchored value. */
  value?: { readonly data: unknown; readonly count: number };
}

/** Turns YAML nodes into plain data in one walk, and notes what cannot be meant. */
export function readTree(root: ParsedNode | null, lineOf: (offset: number) => number): Tree {
  const problems: Problem[] = [];
  const anchors = new Map<string, Anchor>();
  const targets = new Map<Alias, Node>();
  const indexes = new Map<YAMLMap, Map<string, Pair>>();
  let repeated = 0;
  let broken = false;

  // Each returns the data and the number of values in it, with those that aliases repeat.
  type Read = { readonly data: unknown; readonly count: number };
  const nothing: Read = { data: null, count: 1 };

  const readAlias = (alias: Alias): Read => {
    const anchor = anchors.get(alias.source);
    const span = spanOfNode(alias);
    if (!anchor) {
      broken = true;
      const meant = nearest(alias.source, anchors.keys());
      problems.push({
        message: `${quote(`*${alias.source}`)} repeats a value, but no value before it has that mark`,
        span,
        expected: `the mark ${quote(`&${alias.source}`)} in front of the value to repeat, further up`,
        ...(meant === undefined ? {} : { meant: `*${meant}` }),
      });
      return nothing;
    }
    targets.set(alias, anchor.node);
    if (!anchor.value) {
      broken = true;
      problems.push({
        message: `${quote(`*${alias.source}`)} repeats the section that it stands in`,
        span,
        expected: 'the values written out',
      });
      return nothing;
    }
    repeated += anchor.value.count;
    if (repeated > mostRepeated && !broken) {
      broken = true;
      problems.push({
        message: `the plan repeats more than 100,000 values by \`*\` marks`,
        span,
        expected: 'the values written out, or `params`',
      });
    }
    return anchor.value;
  };

  const readMap = (map: YAMLMap): Read => {
    const index = new Map<string, Pair>();
    indexes.set(map, index);
    const entries = new Map<string, unknown>();
    let count = 1;
    for (const pair of map.items) {
      const key = isScalar(pair.key) ? String(pair.key.value) : '';
      const value = read(pair.value);
      count += value.count;
      const first = index.get(key);
      if (first) {
        problems.push({
          message: `${quote(key)} is written twice in the same section`,
          span: spanOfNode(pair.key),
          expected: `each name once; the first is in line ${lineOf(spanOfNode(first.key).start)}`,
        });
      }
      if (key === '__proto__') {
        problems.push({
          message: '`__proto__` cannot be used as a name',
          span: spanOfNode(pair.key),
          expected: 'another name',
        });
        continue;
      }
      index.set(key, pair);
      entries.set(key, value.data);
    }
    return { data: Object.fromEntries(entries), count };
  };

  const readContent = (node: Node): Read => {
    if (isMap(node)) return readMap(node);
    if (isSeq(node)) {
      const entries = node.items.map(read);
      return {
        data: entries.map(({ data }) => data),
        count: entries.reduce((sum, { count }) => sum + count, 1),
      };
    }
    return { data: isScalar(node) ? node.value : null, count: 1 };
  };

  const read = (node: unknown): Read => {
    if (!isNode(node) || broken) return nothing;
    if (isAlias(node)) return readAlias(node);
    const name = 'anchor' in node ? node.anchor : undefined;
    if (name === undefined) return readContent(node);
    const anchor: Anchor = { node };
    anchors.set(name, anchor);
    anchor.value = readContent(node);
    return anchor.value;
  };

  const { data } = root ? read(root) : { data: undefined };
  return {
    data,
    pairOf: (map, key) => indexes.get(map)?.get(key),
    targetOf: (alias) => targets.get(alias),
    problems,
    broken,
  };
}

/** Where a node stands; the start of the text for what has no place. */
export function spanOfNode(node: unknown): Span {
  const range = isNode(node) ? node.range : undefined;
  return range ? { start: range[0], end: range[1] } : { start: 0, end: 0 };
}
