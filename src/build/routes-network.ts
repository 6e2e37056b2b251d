import type { PlaceInVan } from '../calc/space/route.ts';
import type { Carried } from './layout.ts';
import type { RoutedChase } from './routes.ts';
import type { Routing } from './routing.ts';

/** Why the chases do not lead from one end of a run to the other. */
export interface NoWay {
  /** Points that it reaches from where it begins, in the order of the plan. */
  readonly fromReach: readonly string[];
  readonly toReach: readonly string[];
  /** The fewest chases that would join the two, if they might carry it, by their ids; none if no chase carries it. */
  readonly blockers: readonly string[];
  /** Where one reach comes nearest to the other: a chase there would join them. */
  readonly gap?: { readonly from: string; readonly to: string; readonly distanceM: number };
}

export interface Network {
  /** The nearest point at which a chase that may carry this ends; without such a chase, the nearest of any. */
  readonly nearest: (carries: Carried, place: PlaceInVan) => string | undefined;
  /** The ids of the chases on the shortest permitted way, or undefined if there is none. */
  readonly way: (carries: Carried, from: string, to: string) => readonly string[] | undefined;
  readonly noWay: (carries: Carried, from: string, to: string) => NoWay;
}

interface Usable {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly lengthM: number;
  readonly carries: readonly Carried[];
}

/** Gas and cables share no chase: where one runs the other cannot simply be let in. */
export const opposed: Partial<Record<Carried, Carried>> = { gas: 'cable', cable: 'gas' };

/** Longer than any way in a van: a chase that may not be used counts for more than any detour, m. */
const forbiddenM = 1e6;
/** One that holds what must be kept apart, for more than any number of those, m. */
const opposedM = 1e9;

/** What leads where for each kind; undefined where the plan has no points or no chases between them. */
export function networkOf(
  points: ReadonlyMap<string, PlaceInVan>,
  chases: readonly RoutedChase[],
  routing: Routing,
): Network | undefined {
  const usable = chases.flatMap(({ id, from, to, lengthM, carries }): Usable[] =>
    points.has(from) && points.has(to) && lengthM !== undefined ? [{ id, from, to, lengthM, carries }] : [],
  );
  if (usable.length === 0) return undefined;
  const kinds = new Map<Carried, OneKind>();
  const kindOf = (carries: Carried): OneKind => {
    const kind = kinds.get(carries) ?? oneKind(points, usable, carries, routing);
    kinds.set(carries, kind);
    return kind;
  };
  const placeOf = (point: string): PlaceInVan => points.get(point) ?? { xM: 0, yM: 0, zM: 0 };
  const { rectilinearDistance } = routing;
  const gaps = new Map<readonly string[], Map<readonly string[], NoWay['gap']>>();
  const gapBetween = (some: readonly string[], others: readonly string[]): NoWay['gap'] => {
    const known = gaps.get(some) ?? new Map<readonly string[], NoWay['gap']>();
    gaps.set(some, known);
    if (!known.has(others)) known.set(others, nearestPair(some, others));
    return known.get(others);
  };
  const nearestPair = (some: readonly string[], others: readonly string[]): NoWay['gap'] => {
    let best: NoWay['gap'];
    for (const from of some) {
      const nearest = least(others, (to) => rectilinearDistance(placeOf(from), placeOf(to)));
      if (nearest && (best === undefined || nearest.value < best.distanceM))
        best = { from, to: nearest.item, distanceM: nearest.value };
    }
    return best;
  };
  return {
    nearest: (carries, place) => {
      const { joins, nearest } = kindOf(carries);
      const known =
        nearest.get(place) ?? least(joins, (point) => rectilinearDistance(place, placeOf(point)))?.item;
      if (known !== undefined) nearest.set(place, known);
      return known;
    },
    way: (carries, from, to) => kindOf(carries).way(from, to),
    noWay: (carries, from, to) => {
      const { reach, blockers } = kindOf(carries);
      const [fromReach, toReach] = [reach(from), reach(to)];
      const gap = from === to ? undefined : gapBetween(fromReach, toReach);
      return {
        fromReach,
        toReach,
        blockers: blockers(from, to),
        ...(gap && { gap }),
      };
    },
  };
}

/** The first of those with the least value. */
function least<T>(
  items: readonly T[],
  costOf: (item: T) => number,
): { readonly item: T; readonly value: number } | undefined {
  let best: { readonly item: T; readonly value: number } | undefined;
  for (const item of items) {
    const value = costOf(item);
    if (best === undefined || value < best.value) best = { item, value };
  }
  return best;
}

interface OneKind {
  /** Where it may join, in the order of the plan. */
  readonly joins: readonly string[];
  /** The nearest of them to places that were asked for. */
  readonly nearest: Map<PlaceInVan, string>;
  readonly way: (from: string, to: string) => readonly string[] | undefined;
  readonly reach: (from: string) => readonly string[];
  readonly blockers: (from: string, to: string) => readonly string[];
}

function oneKind(
  points: ReadonlyMap<string, PlaceInVan>,
  chases: readonly Usable[],
  carries: Carried,
  routing: Routing,
): OneKind {
  const may = (chase: Usable): boolean => chase.carries.includes(carries);
  const permitted = chases.filter(may);
  const ends = new Set((permitted.length > 0 ? permitted : chases).flatMap(({ from, to }) => [from, to]));
  const routeBetween = routing.routesThrough(permitted, () => true);
  const ways = new Map<string, Map<string, readonly string[] | undefined>>();
  const opposite = opposed[carries];
  const counted = once(() => {
    const weighed = chases.map((chase) => {
      const holdsOpposite = opposite !== undefined && chase.carries.includes(opposite);
      const penaltyM = may(chase) ? 0 : holdsOpposite ? opposedM : forbiddenM;
      return { ...chase, lengthM: chase.lengthM + penaltyM };
    });
    return routing.routesThrough(weighed, () => true);
  });
  /** Points that come to each other share one list. */
  const reaches = new Map<string, readonly string[]>();
  const neighbours = once(() => neighboursThrough(permitted));
  return {
    joins: [...points.keys()].filter((point) => ends.has(point)),
    nearest: new Map(),
    way: (from, to) => {
      const known = ways.get(from) ?? new Map<string, readonly string[] | undefined>();
      ways.set(from, known);
      if (!known.has(to)) {
        // Of a kind that no chase carries, both ends may come nearest to one point, and still there is no way.
        const route = permitted.length > 0 ? routeBetween(from, to) : undefined;
        known.set(
          to,
          route?.chases.map(({ id }) => id),
        );
      }
      return known.get(to);
    },
    reach: (from) => {
      const known = reaches.get(from);
      if (known) return known;
      const reached = new Set([from]);
      for (const point of reached) for (const next of neighbours().get(point) ?? []) reached.add(next);
      const inOrder = [...points.keys()].filter((point) => reached.has(point));
      for (const point of reached) reaches.set(point, inOrder);
      return inOrder;
    },
    blockers: (from, to) => {
      const route = permitted.length > 0 ? counted()(from, to) : undefined;
      return route?.chases.flatMap((chase) => (may(chase) ? [] : [chase.id])) ?? [];
    },
  };
}

function neighboursThrough(chases: readonly Usable[]): ReadonlyMap<string, readonly string[]> {
  const neighbours = new Map<string, string[]>();
  for (const { from, to } of chases) {
    for (const [a, b] of [
      [from, to],
      [to, from],
    ] as const) {
      const known = neighbours.get(a);
      if (known) known.push(b);
      else neighbours.set(a, [b]);
    }
  }
  return neighbours;
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
