import type { Box3 } from '../../build/layout.ts';
import type { PlanPath } from '../finding.ts';
import { length } from '../measure.ts';
import type { Direction, Move } from './comparison.ts';
import type { Section } from './entries.ts';
import { quantityAt } from './values.ts';

/** Where the things of a plan are, in the load bay's axes, and what each stands in or on. */
export type Rooms = ReadonlyMap<string, { readonly box: Box3; readonly host?: string }>;

interface Standing {
  readonly at: Section;
  readonly path: PlanPath;
  readonly plan: unknown;
  readonly rooms: Rooms;
  readonly name: string;
}

interface Axis {
  /** Keys that say where something is along the axis, and where it goes when the value grows. */
  readonly keys: Readonly<Record<string, readonly [grows: Direction, shrinks: Direction] | undefined>>;
  readonly along: readonly [Direction, Direction];
  readonly edges: (box: Box3) => readonly [number, number];
}

const axes: readonly Axis[] = [
  {
    keys: { from_front: ['rearward', 'forward'], from_rear: ['forward', 'rearward'] },
    along: ['rearward', 'forward'],
    edges: ({ leastXM, mostXM }) => [leastXM, mostXM],
  },
  {
    keys: {
      from_left: ['to the right', 'to the left'],
      from_right: ['to the left', 'to the right'],
      centred: undefined,
    },
    along: ['to the right', 'to the left'],
    edges: ({ leastYM, mostYM }) => [leastYM, mostYM],
  },
  {
    keys: { above_floor: ['up', 'down'] },
    along: ['up', 'down'],
    edges: ({ bottomM, topM }) => [bottomM, topM],
  },
];

/** Less than this nobody measures in a van, m. */
const leastM = 1e-6;

/** How far a thing was moved, as seen from what it stands in or on. */
export function movesBetween(before: Standing, after: Standing): readonly Move[] {
  return axes.flatMap((axis) => {
    const byM = byKey(axis, before, after) ?? byRoom(axis, before, after);
    if (byM === undefined || Math.abs(byM) < leastM) return [];
    const [grows, shrinks] = axis.along;
    return [{ direction: byM > 0 ? grows : shrinks, by: length(Math.abs(byM)) }];
  });
}

/** By the difference of the one key that both are measured by. */
function byKey({ keys, along }: Axis, before: Standing, after: Standing): number | undefined {
  const used = Object.keys(keys).filter((key) => key in before.at || key in after.at);
  const [key, ...more] = used;
  if (key === undefined) return 0;
  const grows = keys[key]?.[0];
  if (more.length > 0 || grows === undefined) return undefined;
  const from = quantityAt(before.plan, [...before.path, key]);
  const to = quantityAt(after.plan, [...after.path, key]);
  if (!from || !to) return undefined;
  return (to.value - from.value) * (grows === along[0] ? 1 : -1);
}

/** By where it is now, if it is as large as it was along the axis, less what its host was moved by. */
function byRoom({ edges }: Axis, before: Standing, after: Standing): number | undefined {
  const [old, now] = [before.rooms.get(before.name), after.rooms.get(after.name)];
  if (!old || !now) return undefined;
  const [from, to] = [edges(old.box), edges(now.box)];
  if (Math.abs(from[1] - from[0] - (to[1] - to[0])) >= leastM) return undefined;
  const [oldHost, host] = [before.rooms.get(old.host ?? ''), after.rooms.get(now.host ?? '')];
  const hostBy = oldHost && host ? edges(host.box)[0] - edges(oldHost.box)[0] : 0;
  return to[0] - from[0] - hostBy;
}
