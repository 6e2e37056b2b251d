import { distance } from 'fastest-levenshtein';

/** Plain data of a plan: sections, lists and texts. */
export type Section = Readonly<Record<string, unknown>>;

export const isSection = (data: unknown): data is Section =>
  typeof data === 'object' && data !== null && !Array.isArray(data);

/** The entries of a section that have names of the user's own, found again in the other plan. */
export interface Paired {
  /** Names in the second plan, by their names in the first. */
  readonly pairs: ReadonlyMap<string, string>;
  readonly removed: readonly string[];
  readonly added: readonly string[];
}

/** What two entries must have in common, of 1, to be taken for one that was renamed. */
const alikeEnough = 0.5;
const weightOfName = 0.4;
const likenessOfPart = 0.8;
/** With fewer values than this, that they are the same says little. */
const manyValues = 3;

/** Matches entries by name, and those that are left by likeness: the most alike first, each once. */
export function pairEntries(before: Section, after: Section): Paired {
  const pairs = new Map<string, string>();
  for (const name of Object.keys(before)) if (Object.hasOwn(after, name)) pairs.set(name, name);
  const old = Object.keys(before).filter((name) => !pairs.has(name));
  const fresh = Object.keys(after).filter((name) => !Object.hasOwn(before, name));
  const values = new Map([
    ...old.map((name) => [name, valuesOf(before[name])] as const),
    ...fresh.map((name) => [name, valuesOf(after[name])] as const),
  ]);
  const candidates = old
    .flatMap((from) =>
      fresh.map((to) => ({ from, to, likeness: likenessOf(from, to, values.get(from), values.get(to)) })),
    )
    .filter(({ likeness }) => likeness >= alikeEnough)
    // Where two are as much alike, the order is one that is the same seen from the other plan.
    .sort((a, b) => b.likeness - a.likeness || (orderOf(a) < orderOf(b) ? -1 : 1));
  const found = new Set<string>();
  for (const { from, to } of candidates) {
    if (pairs.has(from) || found.has(to)) continue;
    pairs.set(from, to);
    found.add(to);
  }
  return {
    pairs,
    removed: old.filter((name) => !pairs.has(name)),
    added: fresh.filter((name) => !found.has(name)),
  };
}

const orderOf = ({ from, to }: { readonly from: string; readonly to: string }): string =>
  [from, to].sort().join('\0');

type Values = ReadonlyMap<string, string>;

/** Every text of an entry, by the keys that lead to it. */
function valuesOf(entry: unknown): Values {
  const values = new Map<string, string>();
  const walk = (data: unknown, path: string): void => {
    if (Array.isArray(data)) for (const [at, each] of data.entries()) walk(each, `${path}\0${at}`);
    else if (isSection(data)) for (const key of Object.keys(data)) walk(data[key], `${path}\0${key}`);
    else values.set(path, String(data));
  };
  walk(entry, '');
  return values;
}

/** From 0 to 1; the same seen from either side. */
function likenessOf(from: string, to: string, one: Values = new Map(), other: Values = new Map()): number {
  const keys = new Set([...one.keys(), ...other.keys()]);
  let shared = 0;
  for (const key of keys) {
    const [a, b] = [one.get(key), other.get(key)];
    if (a !== undefined && a === b) shared += 1;
    // The same key with another value is a sign too, if a weaker one.
    else if (a !== undefined && b !== undefined) shared += 1 / 3;
  }
  const content = keys.size === 0 ? 0 : shared / Math.max(keys.size, manyValues);
  const [a, b] = [from.toLowerCase(), to.toLowerCase()];
  const slips = 1 - distance(a, b) / Math.max(a.length, b.length, 1);
  // "clothes" and "summer clothes": who puts a word to a name changes many letters, but means the same.
  const name = a.includes(b) || b.includes(a) ? Math.max(likenessOfPart, slips) : slips;
  return (1 - weightOfName) * content + weightOfName * name;
}
