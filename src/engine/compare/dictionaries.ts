import type { PlanPath } from '../finding.ts';

/** The sections whose keys are names that the user gave; * stands for any key. */
const dictionaries: readonly PlanPath[] = [
  ['params'],
  ['van', 'openings'],
  ['van', 'obstructions'],
  ['people', 'seats'],
  ['fixtures'],
  ['fixtures', '*', 'opens'],
  ['fixtures', '*', 'stows'],
  ['build_ups'],
  ['stores'],
  ['tanks'],
  ['routes', 'points'],
  ['routes', 'chases'],
  ['routes', 'runs'],
  ['water', 'pipes'],
  ['water', 'outlets'],
  ['water', 'valves'],
  ['gas', 'hoses'],
  ['gas', 'pipes'],
  ['gas', 'appliances'],
  ['gas', 'drop_outs'],
  ['air', 'vents'],
  ['air', 'fans'],
  ['heat', 'ducts'],
  ['protection', 'alarms'],
  ['electrical', 'distribution'],
  ['electrical', 'circuits'],
  ['electrical', 'solar'],
  ['electrical', 'mains_circuits'],
  ['load_states'],
  ['weighed'],
];

const leadsTo = (path: PlanPath, pattern: PlanPath): boolean =>
  path.length === pattern.length && pattern.every((key, at) => key === '*' || key === path[at]);

/** Whether the keys below a path are names that the user gave. */
export const isDictionary = (path: PlanPath): boolean =>
  dictionaries.some((pattern) => leadsTo(path, pattern));

/** A path divided into the entry that it leads into (or the section, where there are no names) and the keys below that. */
export function entryAndKey(path: PlanPath): { readonly entry: PlanPath; readonly key: PlanPath } {
  const depth = path.findIndex((_, at) => isDictionary(path.slice(0, at + 1)));
  const length = depth === -1 ? 1 : depth + 2;
  return { entry: path.slice(0, length), key: path.slice(length) };
}
