import type { Layout } from '../build/layout.ts';
import type { PlanPath } from '../engine/finding.ts';

/** The keys that would say where a thing is and how large, as a plan writes them. */
export function keysOfRoom(name: string, path: PlanPath, { unplaced }: Layout): readonly string[] {
  const thing = path.slice(0, 2).join('.');
  const keys = unplaced.find((each) => each.name === name)?.missing ?? ['size', 'at'];
  // What is missing may be the place of what it stands in, which begins with that thing's own name.
  return keys.map((key) => (/^(?:size|at)(?:\.|$)/.test(key) ? `${thing}.${key}` : key));
}
