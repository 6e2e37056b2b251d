import type { Complain } from './cross-check.ts';
import { isWhole, refersTo } from './cross-check-named.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';

/** Names and numbers of the gas. `things` are the names of all placed things. */
export function checkGas({ gas, routes }: Plan, things: ReadonlySet<string>, complain: Complain): void {
  if (!gas) return;
  const at = ['gas'];
  const thing = refersTo(things, 'is not in the plan', 'the name of a fixture, a store or a tank', complain);
  isWhole(complain)(gas.in_use, [...at, 'in_use']);
  thing(gas.locker?.thing, [...at, 'locker', 'thing']);
  thing(gas.manifold?.thing, [...at, 'manifold', 'thing']);
  for (const [name, appliance] of Object.entries(gas.appliances ?? {}))
    thing(appliance.thing, [...at, 'appliances', name, 'thing']);
  for (const [name, dropOut] of Object.entries(gas.drop_outs ?? {}))
    thing(dropOut.in, [...at, 'drop_outs', name, 'in']);
  const appliances = Object.keys(gas.appliances ?? {});
  const taken = new Set(['regulator', 'manifold', ...appliances]);
  for (const name of appliances)
    if (name === 'regulator' || name === 'manifold')
      complain([...at, 'appliances', name], `${quote(name)} means something else to a pipe already`, {
        expected: 'a name of its own',
        onKey: true,
      });
  for (const [index, tee] of (gas.tees ?? []).entries()) {
    if (taken.has(tee))
      complain([...at, 'tees', index], `${quote(tee)} means something else to a pipe already`, {
        expected: 'a name of its own',
      });
    taken.add(tee);
  }
  const begins = refersTo(
    ['regulator', ...(gas.manifold ? ['manifold'] : []), ...(gas.tees ?? [])],
    'is nothing that a gas pipe comes from',
    '',
    complain,
  );
  const ends = refersTo(
    [...(gas.manifold ? ['manifold'] : []), ...(gas.tees ?? []), ...appliances],
    'is nothing that a gas pipe leads to',
    'the appliance under `gas.appliances`',
    complain,
  );
  const run = refersTo(
    Object.entries(routes?.runs ?? {})
      .filter(([, { carries }]) => carries === 'gas')
      .map(([name]) => name),
    'is not one of the runs that carry gas',
    'a `length` of its own, or the run under `routes`',
    complain,
  );
  const feeders = new Map<string, string>();
  for (const [name, pipe] of Object.entries(gas.pipes ?? {})) {
    const path = [...at, 'pipes', name];
    begins(pipe.from, [...path, 'from']);
    ends(pipe.to, [...path, 'to']);
    run(pipe.run, [...path, 'run']);
    if (pipe.size && pipe.wall && 2 * pipe.wall.value >= pipe.size.value)
      complain([...path, 'wall'], 'a pipe with such a wall has no bore', {
        expected: 'less than half of `size`',
      });
    const other = feeders.get(pipe.to);
    if (pipe.from === pipe.to)
      complain([...path, 'to'], `${quote(name)} ends where it begins`, { expected: 'another end' });
    else if (other !== undefined)
      complain([...path, 'to'], `${quote(pipe.to)} is fed by ${quote(other)} already`, {
        expected: 'one pipe that feeds it',
      });
    else feeders.set(pipe.to, name);
  }
  checkPipeCircles(gas, feeders, complain);
}

function checkPipeCircles(
  { pipes }: NonNullable<Plan['gas']>,
  feeders: ReadonlyMap<string, string>,
  complain: Complain,
): void {
  for (const [point, feeder] of feeders) {
    const passed = new Set<string>();
    let at: string | undefined = point;
    while (at !== undefined && !passed.has(at)) {
      passed.add(at);
      const from: string | undefined = feeders.get(at);
      at = from === undefined ? undefined : pipes?.[from]?.from;
    }
    if (at === point)
      complain(['gas', 'pipes', feeder, 'from'], `${quote(point)} is fed by itself`, {
        expected: 'a chain that begins at `regulator`',
      });
  }
}
