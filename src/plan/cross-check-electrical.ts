import type { Complain, Path } from './cross-check.ts';
import { nearestOf } from './nearest.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';

type Electrical = NonNullable<Plan['electrical']>;

const systemVoltages = [12, 24, 48];
const theBattery = 'battery';

/** Names, circles and numbers of the electrical part. `things` are the names of all placed things. */
export function checkElectrical(
  { electrical, routes }: Plan,
  things: ReadonlySet<string>,
  complain: Complain,
): void {
  if (!electrical) return;
  const at = ['electrical'];
  if (!systemVoltages.includes(electrical.voltage.value))
    complain([...at, 'voltage'], 'no system has this nominal voltage', {
      expected: '`12 V`, `24 V` or `48 V`, whatever the battery has now',
    });
  if (electrical.coldest && electrical.warmest && electrical.coldest.value > electrical.warmest.value)
    complain([...at, 'coldest'], 'the coldest temperature is above the warmest', {
      expected: 'the lower one as `coldest`',
    });
  checkNumbers(electrical, complain);
  checkDistribution(electrical, things, complain);
  checkCircuits(electrical, things, complain);
  checkRuns(electrical, Object.keys(routes?.runs ?? {}), complain);
  checkSupplies(electrical, complain);
}

function checkNumbers(electrical: Electrical, complain: Complain): void {
  const { battery, solar, circuits, distribution, inverter, charging_while_driving: driving } = electrical;
  const whole = (quantity: { readonly value: number } | undefined, path: Path) => {
    if (quantity && !Number.isInteger(quantity.value))
      complain(path, 'a count is a whole number', { expected: 'such as `2`' });
  };
  const part = (quantity: { readonly value: number } | undefined, path: Path) => {
    if (quantity && (quantity.value > 1 || quantity.value === 0))
      complain(path, 'this share is not a part of the whole', {
        expected: 'more than `0 %` and at most `100 %`',
      });
  };
  const at = ['electrical'];
  for (const key of ['in_series', 'in_parallel'] as const) whole(battery?.[key], [...at, 'battery', key]);
  part(battery?.usable, [...at, 'battery', 'usable']);
  part(inverter?.efficiency, [...at, 'inverter', 'efficiency']);
  part(driving?.efficiency, [...at, 'charging_while_driving', 'efficiency']);
  for (const [name, { modules, in_series: inSeries }] of Object.entries(solar ?? {})) {
    const path = [...at, 'solar', name];
    whole(modules, [...path, 'modules']);
    whole(inSeries, [...path, 'in_series']);
    if (inSeries && modules.value % inSeries.value !== 0)
      complain([...path, 'in_series'], `the modules of ${quote(name)} do not make whole strings`, {
        expected: 'a number that `modules` can be divided by',
      });
  }
  for (const [name, { bundled, at_once: atOnce }] of Object.entries(circuits ?? {})) {
    whole(bundled, [...at, 'circuits', name, 'bundled']);
    part(atOnce, [...at, 'circuits', name, 'at_once']);
  }
  for (const [name, { at_once: atOnce }] of Object.entries(distribution ?? {}))
    part(atOnce, [...at, 'distribution', name, 'at_once']);
}

function checkDistribution(
  { distribution, battery }: Electrical,
  things: ReadonlySet<string>,
  complain: Complain,
): void {
  const nearestThing = nearestOf(things);
  const known = (thing: string | undefined, path: Path) => {
    if (thing === undefined || things.has(thing)) return;
    complain(path, `${quote(thing)} is not in the plan`, {
      expected: 'the name of a fixture, a store or a tank',
      meant: nearestThing(thing),
      about: thing,
    });
  };
  known(battery?.thing, ['electrical', 'battery', 'thing']);
  for (const [name, { thing }] of Object.entries(distribution ?? {})) {
    const path = ['electrical', 'distribution', name];
    known(thing, [...path, 'thing']);
    if (name === theBattery)
      complain(path, `${quote(name)} is the battery itself, and no other point`, {
        expected: 'a name of its own',
        onKey: true,
      });
    else if (things.has(name))
      complain(path, `${quote(name)} is the name of a thing already`, {
        expected: 'a name of its own: circuits say where they come from and go to by name',
        onKey: true,
      });
  }
}

function checkCircuits(
  { circuits = {}, distribution = {} }: Electrical,
  things: ReadonlySet<string>,
  complain: Complain,
): void {
  const sources = [theBattery, ...Object.keys(distribution)];
  const ends = [...Object.keys(distribution), ...things];
  const [nearestSource, nearestEnd] = [nearestOf(sources), nearestOf(ends)];
  const feeders = new Map<string, string>();
  for (const [name, circuit] of Object.entries(circuits)) {
    const path = ['electrical', 'circuits', name];
    if (!sources.includes(circuit.from))
      complain([...path, 'from'], `${quote(circuit.from)} is no point of the distribution`, {
        expected: `one of ${sources.join(', ')}`,
        meant: nearestSource(circuit.from),
        about: circuit.from,
      });
    if (circuit.to === theBattery)
      complain([...path, 'to'], 'a circuit does not end at the battery', {
        expected:
          'it written from `battery` on, also where a charger feeds it: `{from: battery, to: charger}`',
      });
    else if (!ends.includes(circuit.to))
      complain(
        [...path, 'to'],
        `${quote(circuit.to)} is neither a thing of the plan nor a point of the distribution`,
        {
          expected: 'the name of a fixture, a store, a tank or a point of `distribution`',
          meant: nearestEnd(circuit.to),
          about: circuit.to,
        },
      );
    if (!Object.hasOwn(distribution, circuit.to)) continue;
    const other = feeders.get(circuit.to);
    if (other !== undefined)
      complain([...path, 'to'], `${quote(circuit.to)} is fed by ${quote(other)} already`, {
        expected: 'one circuit that feeds it',
      });
    else feeders.set(circuit.to, name);
  }
  checkCircles(circuits, feeders, complain);
}

type Circuits = NonNullable<Electrical['circuits']>;

function checkCircles(circuits: Circuits, feeders: ReadonlyMap<string, string>, complain: Complain): void {
  for (const [point, feeder] of feeders) {
    const passed = new Set<string>();
    let at: string | undefined = point;
    while (at !== undefined && !passed.has(at)) {
      passed.add(at);
      const from: string | undefined = feeders.get(at);
      at = from === undefined ? undefined : circuits[from]?.from;
    }
    if (at === point)
      complain(['electrical', 'circuits', feeder, 'from'], `${quote(point)} is fed by itself`, {
        expected: 'a chain that begins at `battery`',
      });
  }
}

function checkRuns(
  { circuits, mains_circuits: mains }: Electrical,
  runs: readonly string[],
  complain: Complain,
): void {
  const nearestRun = nearestOf(runs);
  for (const [section, named] of [
    ['circuits', circuits],
    ['mains_circuits', mains],
  ] as const) {
    for (const [name, { run }] of Object.entries(named ?? {})) {
      if (run === undefined || runs.includes(run)) continue;
      complain(['electrical', section, name, 'run'], `${quote(run)} is not one of the runs of the routes`, {
        expected:
          runs.length > 0 ? `one of ${runs.join(', ')}` : 'a `length` of its own, or the run under `routes`',
        meant: nearestRun(run),
        about: run,
      });
    }
  }
}

/** Chargers and the inverter each have a circuit that joins them to the battery. */
function checkSupplies(electrical: Electrical, complain: Complain): void {
  const { circuits = {}, solar = {}, inverter, shore, charging_while_driving: driving } = electrical;
  const names = Object.keys(circuits);
  const nearestCircuit = nearestOf(names);
  const known = (circuit: string | undefined, path: Path) => {
    if (circuit === undefined || names.includes(circuit)) return;
    complain(path, `${quote(circuit)} is not one of the circuits`, {
      expected: names.length > 0 ? `one of ${names.join(', ')}` : 'its entry under `circuits`',
      meant: nearestCircuit(circuit),
      about: circuit,
    });
  };
  known(inverter?.circuit, ['electrical', 'inverter', 'circuit']);
  known(driving?.circuit, ['electrical', 'charging_while_driving', 'circuit']);
  known(shore?.charger?.circuit, ['electrical', 'shore', 'charger', 'circuit']);
  for (const [name, { circuit }] of Object.entries(solar))
    known(circuit, ['electrical', 'solar', name, 'circuit']);
}
