import type { Complain, Standing } from './cross-check.ts';
import { nearestOf } from './nearest.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';

/** Points, the chases between them, and what runs from where to where. `things` are the names of all placed things. */
export function checkRoutes({ routes }: Plan, things: ReadonlySet<string>, complain: Complain): void {
  if (!routes) return;
  const points = Object.keys(routes.points ?? {});
  const nearestPoint = nearestOf(points);
  const unknownPoint = (point: string, path: readonly (string | number)[]) => {
    if (points.includes(point)) return;
    complain(path, `${quote(point)} is not a point of the routes`, {
      expected: points.length > 0 ? `one of ${points.join(', ')}` : 'its place under `points`',
      meant: nearestPoint(point),
      about: point,
    });
  };
  for (const [name, { at }] of Object.entries(routes.points ?? {})) {
    const path = ['routes', 'points', name];
    if (things.has(name))
      complain(path, `${quote(name)} is the name of a thing and of a point`, {
        expected: 'a name of its own, since things and points are referred to by name',
        onKey: true,
      });
    if (!isWhole(at))
      complain(path, `the place of the point ${quote(name)} is not complete`, {
        expected: '`from_front` or `from_rear`; `from_left`, `from_right` or `centred`; and `above_floor`',
      });
  }
  for (const [name, { between }] of Object.entries(routes.chases ?? {})) {
    const path = ['routes', 'chases', name, 'between'];
    for (const [index, point] of between.entries()) unknownPoint(point, [...path, index]);
    if (between[0] === between[1])
      complain(path, `the chase ${quote(name)} begins and ends at the same point`, {
        expected: 'the names of two points',
      });
  }
  const ends = [...things, ...points];
  const nearestEnd = nearestOf(ends);
  for (const [name, run] of Object.entries(routes.runs ?? {})) {
    const path = ['routes', 'runs', name];
    for (const key of ['from', 'to'] as const) {
      if (ends.includes(run[key])) continue;
      complain(
        [...path, key],
        `${quote(run[key])} is neither a thing of the plan nor a point of the routes`,
        {
          expected: 'the name of a fixture, a store, a tank or a point',
          meant: nearestEnd(run[key], name),
          about: run[key],
        },
      );
    }
    if (run.from === run.to)
      complain([...path, 'to'], `${quote(name)} begins and ends at the same thing`, {
        expected: 'two different ends',
      });
    if (run.from_point !== undefined) unknownPoint(run.from_point, [...path, 'from_point']);
    if (run.to_point !== undefined) unknownPoint(run.to_point, [...path, 'to_point']);
    if (run.count && !Number.isInteger(run.count.value))
      complain([...path, 'count'], 'a count is a whole number', { expected: 'such as `2`' });
  }
}

const isWhole = (at: Standing['at']): boolean =>
  (at?.from_front ?? at?.from_rear) !== undefined &&
  (at?.from_left ?? at?.from_right ?? (at?.centred || undefined)) !== undefined &&
  at?.above_floor !== undefined;
