/** The keys that lead to something that was taken out. */
export type Removed = readonly PropertyKey[];

/**
 * A copy of the data without what stands at these paths, or, where nothing stands there (a key is missing), without
 * the thing that lacks it. Returns undefined when nothing would be left.
 */
export function without(
  data: unknown,
  paths: readonly Removed[],
): { data: unknown; removed: Removed[] } | undefined {
  const copy = copyOf(data);
  const removed: Removed[] = [];
  for (const path of paths) {
    const place = lastExisting(copy, path);
    if (place.length === 0) return undefined;
    remove(copy, place);
    removed.push(place);
  }
  return { data: copy, removed };
}

/** What an alias repeats becomes a thing of its own: one of them may be taken out and the other stay. */
function copyOf(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(copyOf);
  if (!isRecord(data)) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, copyOf(value)]));
}

/** The longest part of a path that exists. Of lists, the whole list: its other entries would change their numbers. */
function lastExisting(data: unknown, path: Removed): Removed {
  let at = data;
  for (const [depth, key] of path.entries()) {
    if (Array.isArray(at)) return path.slice(0, depth);
    if (!isRecord(at) || !Object.hasOwn(at, String(key))) return path.slice(0, depth);
    at = at[String(key)];
  }
  return path;
}

function remove(data: unknown, path: Removed): void {
  let at = data;
  for (const key of path.slice(0, -1)) {
    if (!isRecord(at)) return;
    at = at[String(key)];
  }
  if (isRecord(at)) delete at[String(path.at(-1))];
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
