import type { EnvelopePart } from '../build/heat.ts';
import { keyOfLayer } from '../build/wall-planes.ts';

/** Surfaces with the same layers: what is wrong with one is wrong with all of them, and is said once. */
export interface AlikeSurfaces<T> {
  /** "walls", "floor", "bulkhead and rear doors". */
  readonly name: string;
  readonly members: readonly [T, ...T[]];
}

export function alikeSurfaces<T>(
  items: readonly T[],
  partOf: (item: T) => EnvelopePart,
  moreOf: (item: T) => string = () => '',
): AlikeSurfaces<T>[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const key = `${partOf(item).layers.map(keyOfLayer).join(' ')} ${moreOf(item)}`;
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()].map((members) => ({
    name: nameOf(members.map((member) => partOf(member).surface)),
    members,
  }));
}

function nameOf(surfaces: readonly string[]): string {
  const hasWalls = surfaces.includes('left wall') && surfaces.includes('right wall');
  const names = hasWalls
    ? ['walls', ...surfaces.filter((surface) => surface !== 'left wall' && surface !== 'right wall')]
    : surfaces;
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
