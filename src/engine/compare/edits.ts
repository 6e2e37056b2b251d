import type { PlanPath } from '../finding.ts';
import type { Edit } from './comparison.ts';
import { entryAndKey, isDictionary } from './dictionaries.ts';
import { isSection, pairEntries, type Section } from './entries.ts';
import { movesBetween, type Rooms } from './moves.ts';
import { isSameQuantity, quantityAt, stepBetween } from './values.ts';
import { written } from './written.ts';

/** What is known of a plan beside its findings. */
export interface Edited {
  /** As written: sections, lists and texts. */
  readonly data: unknown;
  /** As read, with quantities in SI under the same keys. */
  readonly plan: unknown;
  readonly rooms: Rooms;
}

export interface Rename {
  readonly from: string;
  readonly to: string;
}

export interface Edits {
  readonly edits: readonly Edit[];
  /** Entries that were found again under other names. */
  readonly renames: readonly Rename[];
}

/** A place in both plans. */
interface Spot {
  readonly before: PlanPath;
  readonly after: PlanPath;
}

/** What was edited from one plan to the other. What is written in other words but reads the same is none. */
export function editsBetween(before: Edited, after: Edited): Edits {
  const renames: Rename[] = [];
  collectRenames(before.data, after.data, [], renames);
  const nowCalled = new Map(renames.map(({ from, to }) => [from, to]));
  // A text that names something, as it would read if the thing had had its new name all along.
  const renewed = (data: unknown): unknown =>
    typeof data === 'string' ? (nowCalled.get(data) ?? data) : data;

  const isSameText = (one: unknown, other: unknown): boolean => {
    if (Array.isArray(one) && Array.isArray(other))
      return one.length === other.length && one.every((each, at) => isSameText(each, other[at]));
    if (isSection(one) && isSection(other)) {
      const [keys, others] = [Object.keys(one), Object.keys(other)];
      return (
        keys.length === others.length &&
        keys.every((key) => Object.hasOwn(other, key) && isSameText(one[key], other[key]))
      );
    }
    return one === other || renewed(one) === other;
  };

  const whole = (kind: 'added' | 'removed', path: PlanPath, data: unknown): Edit => ({
    kind,
    ...entryAndKey(path),
    ...(kind === 'added'
      ? { after: written(data), pathAfter: path }
      : { before: written(data), pathBefore: path }),
  });

  const changed = (spot: Spot, one: unknown, other: unknown): Edit => {
    const [from, to] = [quantityAt(before.plan, spot.before), quantityAt(after.plan, spot.after)];
    const step = from && to && stepBetween(from, to, spot.after);
    return {
      kind: 'changed',
      ...entryAndKey(spot.after),
      before: written(one),
      after: written(other),
      ...step,
      pathBefore: spot.before,
      pathAfter: spot.after,
    };
  };

  const readsTheSame = ({ before: old, after: now }: Spot): boolean => {
    const [from, to] = [quantityAt(before.plan, old), quantityAt(after.plan, now)];
    return from !== undefined && to !== undefined && isSameQuantity(from, to);
  };

  const compare = (spot: Spot, one: unknown, other: unknown): readonly Edit[] => {
    if (isSameText(one, other)) return [];
    if (isSection(one) && isSection(other)) {
      if (isDictionary(spot.after)) return compareEntries(spot, one, other);
      return spot.after.at(-1) === 'at' ? comparePlaces(spot, one, other) : compareKeys(spot, one, other);
    }
    if (Array.isArray(one) && Array.isArray(other)) {
      return [...one, ...other].some(isSection)
        ? compareLists(spot, one, other)
        : [changed(spot, one, other)];
    }
    return readsTheSame(spot) ? [] : [changed(spot, one, other)];
  };

  const compareKeys = (spot: Spot, one: Section, other: Section): readonly Edit[] => {
    const oldKeys = new Map(
      Object.keys(one).map((key) => [namesThings(spot.after) ? (nowCalled.get(key) ?? key) : key, key]),
    );
    const kept = Object.keys(other).flatMap((key) => {
      const old = oldKeys.get(key);
      oldKeys.delete(key);
      return old === undefined
        ? [whole('added', [...spot.after, key], other[key])]
        : compare(below(spot, old, key), one[old], other[key]);
    });
    return [
      ...kept,
      ...[...oldKeys.values()].map((key) => whole('removed', [...spot.before, key], one[key])),
    ];
  };

  const compareEntries = (spot: Spot, one: Section, other: Section): readonly Edit[] => {
    const { pairs, removed } = pairEntries(one, other);
    const oldNames = new Map([...pairs].map(([from, to]) => [to, from]));
    const kept = Object.keys(other).flatMap((name) => {
      const old = oldNames.get(name);
      if (old === undefined) return [whole('added', [...spot.after, name], other[name])];
      const there = below(spot, old, name);
      return [...(old === name ? [] : [renamed(there, old)]), ...compare(there, one[old], other[name])];
    });
    return [...kept, ...removed.map((name) => whole('removed', [...spot.before, name], one[name]))];
  };

  const comparePlaces = (spot: Spot, one: Section, other: Section): readonly Edit[] => {
    const edits = compareKeys(spot, one, other);
    if (edits.length === 0) return [];
    const [old, now] = [nameAbove(spot.before), nameAbove(spot.after)];
    const moves = movesBetween(
      { at: one, path: spot.before, plan: before.plan, rooms: before.rooms, name: old },
      { at: other, path: spot.after, plan: after.plan, rooms: after.rooms, name: now },
    );
    if (moves.length === 0) return edits;
    const keys = edits.map(({ key }) => String(key.at(-1)));
    const texts = (at: Section) =>
      keys.flatMap((key) => (Object.hasOwn(at, key) ? [`${key}: ${written(at[key])}`] : [])).join(', ');
    return [
      {
        kind: 'moved',
        ...entryAndKey(spot.after),
        before: texts(one),
        after: texts(other),
        moves,
        pathBefore: spot.before,
        pathAfter: spot.after,
      },
    ];
  };

  /** What is alike at the beginning and at the end of both lists stays; between, one takes the place of the other. */
  const compareLists = (spot: Spot, one: readonly unknown[], other: readonly unknown[]): readonly Edit[] => {
    const most = Math.min(one.length, other.length);
    let start = 0;
    while (start < most && isSameText(one[start], other[start])) start += 1;
    let end = 0;
    while (end < most - start && isSameText(one.at(-1 - end), other.at(-1 - end))) end += 1;
    const [olds, news] = [one.length - end, other.length - end];
    return Array.from({ length: Math.max(olds, news) - start }, (_, index) => start + index).flatMap((at) => {
      if (at >= olds) return [whole('added', [...spot.after, at], other[at])];
      if (at >= news) return [whole('removed', [...spot.before, at], one[at])];
      return compare(below(spot, at, at), one[at], other[at]);
    });
  };

  return { edits: compare({ before: [], after: [] }, before.data, after.data), renames };
}

function renamed({ before, after }: Spot, was: string): Edit {
  return { kind: 'renamed', ...entryAndKey(after), was, pathBefore: before, pathAfter: after };
}

const below = ({ before, after }: Spot, old: string | number, now: string | number): Spot => ({
  before: [...before, old],
  after: [...after, now],
});

/** The name of what a place belongs to: ['fixtures', 'bed', 'at'] is that of the bed. */
const nameAbove = (path: PlanPath): string => String(path.at(-2) ?? '');

/** Whether the keys of a section are names of things that the plan has elsewhere. */
const namesThings = (path: PlanPath): boolean =>
  (path[0] === 'load_states' && path.length === 2) ||
  (path[0] === 'weighed' && path.length === 3 && path[2] === 'state');

/** All renamed entries of both plans, however deep. */
function collectRenames(before: unknown, after: unknown, path: PlanPath, into: Rename[]): void {
  if (!isSection(before) || !isSection(after)) return;
  const pairs = isDictionary(path)
    ? pairEntries(before, after).pairs
    : new Map(
        Object.keys(before)
          .filter((key) => Object.hasOwn(after, key))
          .map((key) => [key, key]),
      );
  for (const [from, to] of pairs) {
    if (from !== to) into.push({ from, to });
    collectRenames(before[from], after[to], [...path, to], into);
  }
}
