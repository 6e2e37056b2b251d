import type { Build } from '../build/build.ts';
import type { Carried } from '../build/layout.ts';
import type { RoutedChase, RoutedRun, Routes } from '../build/routes.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { given, missing, type Need } from '../engine/rule.ts';

/** Runs, and chases in a load bay that they may take. */
export const plannedRoutes: Need<Routes> = (build) => {
  const all = build.routes;
  if (!all) return missing('routes');
  const keys = lackingOf(all, build);
  return keys.length > 0 ? missing(...keys) : given(all);
};

const lackingOf = ({ points, chases, runs }: Routes, { vehicle }: Build): string[] => [
  ...(vehicle.bay ? [] : ['van.load_bay']),
  ...(points.length > 0 ? [] : ['routes.points']),
  ...(chases.length > 0 ? [] : ['routes.chases']),
  ...(runs.length > 0 ? [] : ['routes.runs']),
];

/** A chase with what passes through it. */
export interface UsedChase {
  readonly chase: RoutedChase;
  readonly runs: readonly RoutedRun[];
}

/** Every chase in the order of the plan, also one that nothing takes. */
export function chasesInUse({ chases, runs }: Routes): readonly UsedChase[] {
  const passing = new Map<string, RoutedRun[]>(chases.map(({ id }) => [id, []]));
  for (const run of runs) for (const id of new Set(run.chases)) passing.get(id)?.push(run);
  return chases.map((chase) => ({ chase, runs: passing.get(chase.id) ?? [] }));
}

export const whatRuns: Record<Carried, string> = {
  cable: 'cables',
  water: 'water',
  gas: 'gas',
  duct: 'ducts',
};

/** "a, b and c"; of many names the first few, and how many more there are. */
export function namesOf(names: readonly string[], most = 4): string {
  const shown = names.length > most + 1 ? names.slice(0, most) : names;
  const rest = names.length - shown.length;
  const parts = rest > 0 ? [...shown, `${rest} more`] : shown;
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`;
}

/** "1 run", "12 runs". */
export const counted = (howMany: number, one: string, many = `${one}s`): string =>
  `${howMany} ${howMany === 1 ? one : many}`;

/** One after the other, with a comma and a space between. */
export const joined = (parts: readonly Phrase[], between = ', '): Phrase =>
  parts.reduce<Phrase>((all, part, at) => (at === 0 ? part : say`${all}${between}${part}`), []);
