import { materialNamed } from '../catalogue/materials.ts';
import type { Complain } from './cross-check.ts';
import { isPart, isWhole, refersTo } from './cross-check-named.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';
import { fittingKinds } from './schema-water.ts';

/** Names that pipes use for what there is only one of. */
const ownNames = ['pump', 'heater', 'outside'] as const;

/** Names and numbers of the water. `things` are the names of all placed things. */
export function checkWater(plan: Plan, things: ReadonlySet<string>, complain: Complain): void {
  checkTanks(plan, complain);
  const { water } = plan;
  if (!water) return;
  const at = ['water'];
  const thing = refersTo(things, 'is not in the plan', 'the name of a fixture, a store or a tank', complain);
  const circuit = refersTo(
    Object.keys(plan.electrical?.circuits ?? {}),
    'is not one of the circuits',
    'its entry under `electrical.circuits`',
    complain,
  );
  thing(water.pump?.thing, [...at, 'pump', 'thing']);
  circuit(water.pump?.circuit, [...at, 'pump', 'circuit']);
  thing(water.heater?.thing, [...at, 'heater', 'thing']);
  circuit(water.heater?.circuit, [...at, 'heater', 'circuit']);
  isPart(complain)(water.heater?.efficiency, [...at, 'heater', 'efficiency']);
  for (const [name, outlet] of Object.entries(water.outlets ?? {}))
    thing(outlet.thing, [...at, 'outlets', name, 'thing']);
  checkPump(water, complain);
  checkEnds(plan, complain);
  const pipe = refersTo(
    Object.keys(water.pipes ?? {}),
    'is not one of the pipes',
    'its entry under `water.pipes`',
    complain,
  );
  for (const [name, valve] of Object.entries(water.valves ?? {})) {
    pipe(valve.pipe, [...at, 'valves', name, 'pipe']);
    thing(valve.thing, [...at, 'valves', name, 'thing']);
  }
}

function checkTanks({ tanks }: Plan, complain: Complain): void {
  const part = isPart(complain);
  const whole = isWhole(complain);
  for (const [name, tank] of Object.entries(tanks ?? {})) {
    part(tank.usable, ['tanks', name, 'usable']);
    whole(tank.baffles, ['tanks', name, 'baffles']);
    checkWrap(tank.insulation, ['tanks', name, 'insulation'], complain);
  }
}

export function checkWrap(
  wrap: { readonly material: string } | undefined,
  path: readonly string[],
  complain: Complain,
): void {
  if (wrap && !materialNamed(wrap.material))
    complain([...path, 'material'], `${quote(wrap.material)} is not a material of the catalogue`, {
      expected: 'an insulation of the catalogue, such as `elastomeric foam`',
    });
}

type Water = NonNullable<Plan['water']>;

function checkPump({ pump }: Water, complain: Complain): void {
  if (!pump) return;
  const at = ['water', 'pump'];
  if (pump.cut_in && pump.cut_out && pump.cut_in.value >= pump.cut_out.value)
    complain([...at, 'cut_in'], 'the pump starts again at a higher pressure than it stops at', {
      expected: 'the lower one of the two as `cut_in`',
    });
  if (!pump.curve) return;
  const points = [...pump.curve].sort((one, other) => one.flow.value - other.flow.value);
  const falls = points.every(
    ({ flow, pressure }, index) =>
      index === 0 ||
      (flow.value > (points[index - 1]?.flow.value ?? 0) &&
        pressure.value < (points[index - 1]?.pressure.value ?? 0)),
  );
  if (points.length < 2 || !falls)
    complain([...at, 'curve'], 'this is no curve of a pump', {
      expected: 'two points or more, each with more flow at less pressure than the one before',
    });
}

function checkEnds({ water, tanks, routes }: Plan, complain: Complain): void {
  if (!water) return;
  const watery = Object.entries(tanks ?? {})
    .filter(([, { contents }]) => contents === 'fresh' || contents === 'waste')
    .map(([name]) => name);
  const outlets = Object.keys(water.outlets ?? {});
  const tees = water.tees ?? [];
  const taken = new Set<string>([...ownNames, ...watery]);
  const unused = (name: string, path: readonly (string | number)[]) => {
    if (taken.has(name))
      complain(path, `${quote(name)} means something else to a pipe already`, {
        expected: 'a name of its own',
        onKey: typeof path.at(-1) === 'string',
      });
    taken.add(name);
  };
  for (const name of outlets) unused(name, ['water', 'outlets', name]);
  for (const [index, name] of tees.entries()) unused(name, ['water', 'tees', index]);
  const end = refersTo(
    [
      ...(water.pump ? ['pump'] : []),
      ...(water.heater ? ['heater'] : []),
      ...watery,
      ...outlets,
      ...tees,
      'outside',
    ],
    'is nothing that a pipe leads to',
    '',
    complain,
  );
  const runs = Object.entries(routes?.runs ?? {})
    .filter(([, { carries }]) => carries === 'water')
    .map(([name]) => name);
  const run = refersTo(
    runs,
    'is not one of the runs that carry water',
    'a `length` of its own, or the run under `routes`',
    complain,
  );
  for (const [name, pipe] of Object.entries(water.pipes ?? {})) {
    const path = ['water', 'pipes', name];
    end(pipe.from, [...path, 'from']);
    end(pipe.to, [...path, 'to']);
    if (pipe.from === pipe.to)
      complain([...path, 'to'], `${quote(name)} ends where it begins`, { expected: 'another end' });
    run(pipe.run, [...path, 'run']);
    checkWrap(pipe.insulation, [...path, 'insulation'], complain);
    const fitting = refersTo(fittingKinds, 'is not a fitting that is known here', '', complain);
    for (const kind of Object.keys(pipe.fittings ?? {})) fitting(kind, [...path, 'fittings', kind]);
  }
}
