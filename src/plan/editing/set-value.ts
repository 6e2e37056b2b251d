import { isAlias, isCollection, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml';
import { type PlanDocument, parseDocument } from '../document.ts';
import { nearest } from '../nearest.ts';
import type { Problem } from '../problem.ts';
import { quote } from '../quote.ts';
import { spanOfNode } from '../tree.ts';
import { type Step, writtenPath } from './plan-path.ts';
import { inQuotesOf, keyText, quoted, type TypedValue } from './scalar-text.ts';
import {
  anchorOf,
  columnOf,
  contentEnd,
  isNothing,
  keyOf,
  lineBreakOf,
  nodesOf,
  pairOf,
  type Replacement,
  repeatsOf,
  replaced,
  startOf,
} from './yaml-text.ts';

export type Path = readonly (string | number)[];

export type Edit =
  | {
      readonly text: string;
      readonly path: Path;
      readonly before: string | undefined;
      readonly after: string;
    }
  | { readonly problem: Problem };

export interface SetOptions {
  /** Make a new thing though there is one with almost the same name. */
  readonly asNew: boolean;
}

/**
 * The plan's text with another value at a path. Nothing else is touched: not a space, not a comment. A key that is not
 * there is added at the end of its section, as its neighbours are written.
 */
export function setValue(
  text: string,
  steps: readonly Step[],
  value: TypedValue,
  { asNew }: SetOptions = { asNew: false },
): Edit {
  const document = nodesOf(text);
  const found = walk(document.contents, steps);
  if ('problem' in found) return found;
  const { map, node, pair, rest, path } = found;
  const all = [...path, ...rest];
  if (rest.length === 0) {
    const refused = refusalToReplace(node, value, all);
    if (refused) return { problem: refused };
    const quotes = isScalar(node) ? node : undefined;
    const ways = [inQuotesOf(quotes, value), quoted(value)].map((as) => replacing(text, node, pair, as));
    return firstThatIs(text, ways, all, value, isNothing(node) ? undefined : writtenOf(text, node));
  }
  const [missing = ''] = rest;
  if (!map && pair && isNothing(node)) {
    const ways = [value.text, quoted(value)].map((as) => replacing(text, node, pair, inFlow(rest, as)));
    return firstThatIs(text, ways, all, value, undefined);
  }
  if (!map) return { problem: noSection(node, path, missing) };
  const meant = rest.length > 1 ? nearest(missing, map.items.map(keyOf)) : undefined;
  if (meant !== undefined && !asNew) {
    return {
      problem: {
        message: `${quote(writtenPath([...path, missing]))} is not in the plan`,
        span: spanOfNode(map.items.find((each) => keyOf(each) === meant)?.key),
        meant: writtenPath([...path, meant]),
        expected: 'the name of something that is there, or `--new` to add something by this name',
      },
    };
  }
  const ways = [value.text, quoted(value)].map((as) => adding(text, map, path.length, rest, as));
  return firstThatIs(text, ways, all, value, undefined);
}

interface Found {
  /** The deepest section on the way, if it is one. */
  readonly map: YAMLMap | undefined;
  readonly node: Node | null | undefined;
  /** The entry that holds the node. */
  readonly pair: Pair | undefined;
  /** What is there, and what is not. */
  readonly path: Path;
  readonly rest: readonly string[];
}

/** Goes down as far as the plan does. */
function walk(root: Node | null, steps: readonly Step[]): Found | { readonly problem: Problem } {
  let node: Node | null | undefined = root;
  let pair: Pair | undefined;
  const path: (string | number)[] = [];
  for (let at = 0; at < steps.length; ) {
    if (isAlias(node)) return { problem: underAlias(node, path, node.source) };
    const { key, quoted: whole } = steps[at] ?? { key: '', quoted: true };
    if (typeof key === 'number') {
      const items: readonly unknown[] = isSeq(node) ? node.items : [];
      const entry = items[key];
      if (entry === undefined) return { problem: noEntry(node, path, key, items.length) };
      node = nodeOrNull(entry);
      pair = undefined;
      path.push(key);
      at += 1;
      continue;
    }
    const match: { readonly pair: Pair; readonly name: string; readonly taken: number } | undefined = isMap(
      node,
    )
      ? longestKey(node, steps.slice(at), whole)
      : undefined;
    if (!match) {
      const rest = steps.slice(at);
      const number = rest.find((each) => typeof each.key === 'number');
      if (number) return { problem: notThere([...path, String(rest[0]?.key)]) };
      return {
        map: isMap(node) ? node : undefined,
        node,
        pair,
        path,
        rest: rest.map((each) => String(each.key)),
      };
    }
    pair = match.pair;
    node = nodeOrNull(match.pair.value);
    path.push(match.name);
    at += match.taken;
  }
  return { map: undefined, node, pair, path, rest: [] };
}

const nodeOrNull = (value: unknown): Node | null =>
  isScalar(value) || isMap(value) || isSeq(value) || isAlias(value) ? value : null;

/** `balance.sides` is one name where the section has it: rules are called so. */
function longestKey(map: YAMLMap, steps: readonly Step[], whole: boolean) {
  const plain = whole ? 1 : steps.findIndex((each) => each.quoted || typeof each.key === 'number');
  const most = plain === -1 ? steps.length : Math.max(1, plain);
  for (let taken = 1; taken <= most; taken += 1) {
    const name = steps
      .slice(0, taken)
      .map(({ key }) => String(key))
      .join('.');
    const pair = pairOf(map, name);
    if (pair) return { pair, name, taken };
  }
  return undefined;
}

const underAlias = (node: Node, path: Path, mark: string): Problem => ({
  message: `${quote(writtenPath(path))} is \`*${mark}\`: it repeats what stands at \`&${mark}\`, and has no keys of its own to change`,
  span: spanOfNode(node),
  expected: `the change at \`&${mark}\`, for all that repeat it; or the value written out here first`,
});

const noEntry = (node: unknown, path: Path, index: number, length: number): Problem => ({
  message: `${quote(writtenPath(path))} ${isSeq(node) ? `has ${length} ${length === 1 ? 'entry' : 'entries'}` : 'is no list'}`,
  ...(node !== undefined && node !== null && { span: spanOfNode(node) }),
  expected:
    length > 1
      ? `an entry from \`[1]\` to \`[${length}]\``
      : length === 1
        ? '`[1]`, the only one'
        : `a key by its name, not entry [${index + 1}]`,
});

const notThere = (path: Path): Problem => ({
  message: `${quote(writtenPath(path))} is not in the plan`,
  expected: `a list that is there; or all of a new one at once, \`${writtenPath(path)}\` set to \`[…]\``,
});

const noSection = (node: unknown, path: Path, key: string): Problem => ({
  message: `${quote(writtenPath(path))} is ${isSeq(node) ? 'a list' : 'one value'}, and has no key ${quote(key)}`,
  span: spanOfNode(node),
  expected: isSeq(node)
    ? `one of its entries by number, such as \`${writtenPath(path)}[1]\``
    : 'a shorter path',
});

function refusalToReplace(node: unknown, value: TypedValue, path: Path): Problem | undefined {
  if (!isCollection(node) || (node.flow === true && value.isCollection)) return undefined;
  const what = isMap(node) ? 'a section' : 'a list';
  const inner = isMap(node) ? node.items.slice(0, 1).map(keyOf) : [0];
  return {
    message: `${quote(writtenPath(path))} is ${what}, not one value`,
    span: spanOfNode(isMap(node) ? node.items[0]?.key : node),
    expected: `a path into it, such as \`${writtenPath([...path, ...inner])}\``,
  };
}

const writtenOf = (text: string, node: unknown): string => {
  const { start, end } = spanOfNode(node);
  return text.slice(start, end).trim();
};

/** The value's own text exchanged; a mark or a comment beside it stays. */
function replacing(text: string, node: unknown, pair: Pair | undefined, by: string): Replacement[] {
  if (node === null || node === undefined || isNothing(node)) {
    const { start } = node ? spanOfNode(node) : { start: spanOfNode(pair?.key).end };
    const colon = text[start - 1] === ':';
    return [{ start, end: start, text: `${node ? (colon ? ' ' : '') : ': '}${by}` }];
  }
  const { start, end } = spanOfNode(node);
  const old = text.slice(start, end);
  // A text over several lines owns the line break after it.
  const [lineBreak = ''] = /\r?\n[\s]*$/.exec(old) ?? [];
  return [{ start, end, text: by + lineBreak }];
}

/** One more entry at the end of a section. */
function adding(
  text: string,
  map: YAMLMap,
  depth: number,
  [key = '', ...inner]: readonly string[],
  value: string,
): Replacement[] {
  const last = map.items.at(-1);
  const name = keyText(key, last?.key);
  const lineBreak = lineBreakOf(text);
  if (!last) {
    // `{}`: an empty section is always in braces.
    const { start, end } = spanOfNode(map);
    return [{ start, end, text: `{${name}: ${inFlow(inner, value)}}` }];
  }
  const end = contentEnd(last);
  if (map.flow === true)
    return addingInBraces(text, map, last, end, `${name}: ${inFlow(inner, value)}`, lineBreak);
  const indent = ' '.repeat(columnOf(text, startOf(map.items[0]?.key)));
  const [first, ...deeper] = inner;
  const entry =
    first !== undefined && asNeighbours(map, depth)
      ? `${indent}${name}:${lineBreak}${indent}  ${keyText(first, undefined)}: ${inFlow(deeper, value)}`
      : `${indent}${name}: ${inFlow(inner, value)}`;
  return [newLine(text, end, entry, lineBreak, indent.length)];
}

/** Whether sections stand over several lines here: as the last one does; without any, those of the plan itself do. */
function asNeighbours(map: YAMLMap, depth: number): boolean {
  const section = map.items.findLast(({ value }) => isMap(value))?.value;
  return isMap(section) ? section.flow !== true : depth === 0;
}

const inFlow = (keys: readonly string[], value: string): string =>
  keys.reduceRight((inner, key) => `{${keyText(key, undefined)}: ${inner}}`, value);

/**
 * Behind the line that an offset is in, whatever comment ends that line, and behind comments that are indented deeper:
 * they belong to the entry before.
 */
function newLine(text: string, end: number, entry: string, lineBreak: string, indent: number): Replacement {
  const next = text.indexOf('\n', end);
  const below = end > 0 && text[end - 1] === '\n' ? end : next === -1 ? text.length : next + 1;
  const comments = new RegExp(`(?: {${indent + 1},}#[^\\n]*(?:\\n|$))*`, 'y');
  comments.lastIndex = below;
  const at = below + (comments.exec(text)?.[0].length ?? 0);
  const open = at === text.length && !text.endsWith('\n');
  return { start: at, end: at, text: open ? lineBreak + entry : entry + lineBreak };
}

function addingInBraces(
  text: string,
  map: YAMLMap,
  last: Pair,
  end: number,
  entry: string,
  lineBreak: string,
): Replacement[] {
  const closing = spanOfNode(map).end - 1;
  const comma = /^\s*,/.exec(text.slice(end, closing));
  const keyStart = startOf(last.key);
  const indent = text.slice(keyStart - columnOf(text, keyStart), keyStart);
  const ownLine = /^\s+$/.test(indent) && text.slice(spanOfNode(map).start, closing).includes('\n');
  const after = comma ? end + comma[0].length : end;
  if (!ownLine) return [{ start: after, end: after, text: `${comma ? '' : ','} ${entry}` }];
  // Each entry has a line of its own, and perhaps a comment: the new one comes below, before the closing brace.
  const next = text.indexOf('\n', after);
  const below = next === -1 || next > closing ? after : next + 1;
  const added =
    below === after ? `${lineBreak}${indent}${entry}` : `${indent}${entry}${comma ? ',' : ''}${lineBreak}`;
  return comma
    ? [{ start: below, end: below, text: added }]
    : [
        { start: end, end, text: ',' },
        { start: below, end: below, text: added },
      ];
}

/** The first of these ways to write it that is read back as what was meant, and changes nothing else. */
function firstThatIs(
  text: string,
  ways: readonly (readonly Replacement[])[],
  path: Path,
  value: TypedValue,
  before: string | undefined,
): Edit {
  const { document } = parseDocument(text);
  const wanted = withValue(document.data, path, value.data);
  const edited = readingAs(text, ways, wanted);
  return edited === undefined
    ? { problem: whyNot(text, path, document) }
    : { text: edited, path, before, after: value.text };
}

const readingAs = (
  text: string,
  ways: readonly (readonly Replacement[])[],
  wanted: unknown,
): string | undefined =>
  ways
    .map((way) => replaced(text, way))
    .find((edited) => JSON.stringify(parseDocument(edited).document.data) === JSON.stringify(wanted));

/** The plan's text with another key and value in the place of an entry that is there. */
export function replaceEntry(text: string, path: Path, key: string, value: TypedValue): Edit {
  const steps = path.map((each) => ({ key: each, quoted: true }));
  const found = walk(nodesOf(text).contents, steps);
  const { document } = parseDocument(text);
  if ('problem' in found) return found;
  const { pair, node } = found;
  const above = path.slice(0, -1);
  const section = valueAt(document.data, above);
  const entries = typeof section === 'object' && section !== null ? Object.entries(section) : [];
  const wanted = withValue(
    document.data,
    above,
    Object.fromEntries(
      entries.map(([name, inner]) => (name === path.at(-1) ? [key, value.data] : [name, inner])),
    ),
  );
  const ways = pair
    ? [
        [
          { ...spanOfNode(pair.key), text: keyText(key, pair.key) },
          ...replacing(text, node, pair, value.text),
        ],
      ]
    : [];
  const edited = readingAs(text, ways, wanted);
  return edited === undefined
    ? { problem: whyNot(text, path, document) }
    : { text: edited, path: [...above, key], before: undefined, after: value.text };
}

const valueAt = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null && Object.hasOwn(inner, key)
        ? Object.entries(inner).find(([name]) => name === String(key))?.[1]
        : undefined,
    data,
  );

/** A value that is repeated elsewhere would change there too; else it is a way of writing YAML that we do not know. */
function whyNot(text: string, path: Path, document: PlanDocument): Problem {
  const span = document.spanOf(path);
  const repeated = repeatedAbove(text, path);
  if (repeated) {
    return {
      message: `${quote(writtenPath(path))} is repeated by \`*${repeated.mark}\` in line ${document.positionOf(repeated.at).line}, and would change there too`,
      span,
      expected: `the value written out there first, in the place of \`*${repeated.mark}\``,
    };
  }
  return {
    message: `${quote(writtenPath(path))} is written in a way that cannot be changed here without changing more`,
    span,
    expected: 'the change made in an editor',
  };
}

function repeatedAbove(text: string, path: Path): { readonly mark: string; readonly at: number } | undefined {
  const document = nodesOf(text);
  const repeats = repeatsOf(document);
  let node: unknown = document.contents;
  for (const key of [...path, undefined]) {
    const mark = anchorOf(node);
    const at = mark === undefined ? undefined : repeats.get(mark);
    if (mark !== undefined && at !== undefined) return { mark, at };
    node =
      isMap(node) && key !== undefined
        ? pairOf(node, String(key))?.value
        : isSeq(node) && typeof key === 'number'
          ? node.items[key]
          : undefined;
  }
  return undefined;
}

/** The data as they are to be. */
function withValue(data: unknown, [key, ...rest]: Path, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(data)) return data.map((each, at) => (at === key ? withValue(each, rest, value) : each));
  const entries = typeof data === 'object' && data !== null ? Object.entries(data) : [];
  const name = String(key);
  const there = entries.some(([each]) => each === name);
  return Object.fromEntries(
    there
      ? entries.map(([each, inner]) => [each, each === name ? withValue(inner, rest, value) : inner])
      : [...entries, [name, withValue(undefined, rest, value)]],
  );
}
