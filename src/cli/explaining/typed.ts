import type { Finding, PlanPath, Topic } from '../../engine/finding.ts';
import type { Typed } from '../../report/explain/explained.ts';

/** More of one section than this says nothing any more. */
const mostOfOne = 20;

/** Where the things stand that the findings of a topic are about. */
const sectionsOf: Readonly<Record<Topic, readonly PlanPath[]>> = {
  mass: [],
  balance: [],
  fit: [['fixtures'], ['stores'], ['tanks'], ['van', 'openings'], ['van', 'obstructions']],
  movement: [['fixtures'], ['van', 'openings']],
  routes: [
    ['routes', 'runs'],
    ['routes', 'chases'],
  ],
  electrical: [
    ['electrical', 'circuits'],
    ['electrical', 'mains_circuits'],
    ['electrical', 'distribution'],
    ['electrical', 'solar'],
  ],
  water: [['tanks'], ['water', 'pipes'], ['water', 'outlets']],
  gas: [['tanks'], ['gas', 'appliances'], ['gas', 'pipes'], ['gas', 'drop_outs']],
  air: [
    ['air', 'vents'],
    ['air', 'fans'],
    ['protection', 'alarms'],
  ],
  heat: [['build_ups'], ['heat', 'panes'], ['heat', 'ducts']],
  plan: [],
};

/**
 * What a plan says that a finding rests on: at the key that decides and at the keys of its working; without a working,
 * of the things that its subject names.
 */
export function typedFor(data: unknown, { path, subject, topic, working }: Finding): readonly Typed[] {
  const paths = working ? working.flatMap((step) => step.paths ?? []) : namedIn(data, topic, subject);
  const seen = new Set<string>();
  return [path, ...paths].flatMap((of): Typed[] => {
    const values = leavesAt(data, of)
      .filter((leaf) => !seen.has(keyOf(leaf.path)))
      .slice(0, mostOfOne);
    for (const leaf of values) seen.add(keyOf(leaf.path));
    return values.length === 0 ? [] : [{ of, values }];
  });
}

const keyOf = (path: PlanPath): string => path.join('\u0000');

/** Of names that are part of one another, such as "roof" and "roof fan", the longer one is meant. */
function namedIn(data: unknown, topic: Topic, subject: string): readonly PlanPath[] {
  const found = sectionsOf[topic].flatMap((section) =>
    Object.keys(recordAt(data, section))
      .filter((name) => isNamed(name, subject))
      .map((name) => ({ name, path: [...section, name] })),
  );
  return found
    .filter(({ name }) => !found.some((other) => other.name !== name && isNamed(name, other.name)))
    .map(({ path }) => path);
}

/** Whether a plan has something under a path. */
export const isWrittenIn =
  (data: unknown) =>
  (path: PlanPath): boolean =>
    path.length > 0 && valueAt(data, path) !== undefined;

function isNamed(name: string, subject: string): boolean {
  const at = subject.toLowerCase().indexOf(name.toLowerCase());
  if (at < 0) return false;
  const around = `${subject.charAt(at - 1)}${subject.charAt(at + name.length)}`;
  return !/[\p{L}\p{N}]/u.test(around);
}

function leavesAt(data: unknown, path: PlanPath): Typed['values'] {
  const value = valueAt(data, path);
  if (value === undefined || value === null) return [];
  if (typeof value !== 'object') return [{ path, text: String(value) }];
  const keys: PlanPath = Array.isArray(value) ? value.map((_, index) => index) : Object.keys(value);
  return keys.flatMap((key) => leavesAt(data, [...path, key]));
}

function valueAt(data: unknown, path: PlanPath): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Array.isArray(value) ? value[Number(key)] : recordOf(value)[String(key)];
  }
  return value;
}

const recordAt = (data: unknown, path: PlanPath): Readonly<Record<string, unknown>> => {
  const value = valueAt(data, path);
  return typeof value === 'object' && value !== null ? recordOf(value) : {};
};

const recordOf = (value: object): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(value));
