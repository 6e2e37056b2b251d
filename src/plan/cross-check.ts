import { fluids } from '../catalogue/fluids.ts';
import { type Material, materialNamed, materials } from '../catalogue/materials.ts';
import { checkAir } from './cross-check-air.ts';
import { checkElectrical } from './cross-check-electrical.ts';
import { checkGas } from './cross-check-gas.ts';
import { checkHeat } from './cross-check-heat.ts';
import { checkLiving } from './cross-check-living.ts';
import { checkBay, checkOpens, checkRoom, checkService } from './cross-check-room.ts';
import { checkRoutes } from './cross-check-routes.ts';
import { checkWater } from './cross-check-water.ts';
import type { PlanDocument } from './document.ts';
import { nearestOf } from './nearest.ts';
import type { Problem } from './problem.ts';
import { quote } from './quote.ts';
import type { Removed } from './salvage.ts';
import type { Plan } from './schema.ts';

export type Path = readonly (string | number)[];

interface More {
  readonly expected?: string | undefined;
  readonly meant?: string | undefined;
  /** The name that refers to nothing, if that is the trouble. */
  readonly about?: string;
  /** Point at the key, not at its value. */
  readonly onKey?: boolean;
}

export type Complain = (path: Path, message: string, more?: More) => void;

/**
 * What no single key can show: names that refer to nothing, circles, and keys that exclude or need each other.
 * `removed` is what could not be read and was left out of the plan; nothing that hangs on it is complained about.
 */
export function crossCheck(plan: Plan, document: PlanDocument, removed: readonly Removed[]): Problem[] {
  const problems: Problem[] = [];
  const lost = namesLost(document.data, removed);
  const beginnings = new Set(
    removed.flatMap((path) => path.map((_, index) => keyOf(path.slice(0, index + 1)))),
  );
  const complain: Complain = (path, message, { expected, meant, about, onKey } = {}) => {
    if (beginnings.has(keyOf(path)) || (about !== undefined && lost.has(about))) return;
    problems.push({
      message,
      span: onKey ? document.keySpanOf(path) : document.spanOf(path),
      ...(expected !== undefined && { expected }),
      ...(meant !== undefined && { meant }),
    });
  };
  checkVan(plan, complain);
  checkNames(plan, complain);
  checkHosts(plan, complain);
  checkFixtures(plan, complain);
  checkBuildUps(plan, complain);
  checkStores(plan, complain);
  checkStates(plan, complain);
  checkSpace(plan, complain);
  return problems;
}

function checkSpace(plan: Plan, complain: Complain): void {
  const things = placedThings(plan);
  for (const { section, name, thing } of things) checkRoom(name, thing, [section, name], complain);
  for (const [name, fixture] of Object.entries(plan.fixtures ?? {}))
    checkOpens(name, fixture, ['fixtures', name], complain);
  checkBay(plan, complain);
  checkService(plan, things, complain);
  const names = new Set(things.map(({ name }) => name));
  checkRoutes(plan, names, complain);
  checkElectrical(plan, names, complain);
  checkWater(plan, names, complain);
  checkGas(plan, names, complain);
  checkAir(plan, names, complain);
  checkHeat(plan, names, complain);
  checkLiving(plan, complain);
  for (const [name, { at }] of Object.entries(plan.van.obstructions ?? {}))
    checkPlace(at, ['van', 'obstructions', name, 'at'], complain);
  for (const [name, { at }] of Object.entries(plan.routes?.points ?? {}))
    checkPlace(at, ['routes', 'points', name, 'at'], complain);
}

const keyOf = (path: readonly PropertyKey[]): string => path.map(String).join('\u0000');

/** The names of things that were left out, alone or with the section they stand in. */
function namesLost(data: unknown, removed: readonly Removed[]): ReadonlySet<string> {
  const names = new Set<string>();
  for (const path of removed) {
    if (path.length <= 3) names.add(String(path.at(-1)));
    let value = data;
    for (const key of path) value = isRecord(value) ? value[String(key)] : undefined;
    if (path.length === 1 && isRecord(value)) {
      for (const [name, inner] of Object.entries(value)) {
        names.add(name);
        if (isRecord(inner)) for (const innerName of Object.keys(inner)) names.add(innerName);
      }
    }
  }
  return names;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export type Standing = Omit<NonNullable<Plan['tanks']>[string], 'contents' | 'holds' | 'mass'>;

/** Everything that has a place of its own, with the section it stands in. */
export function placedThings(
  plan: Plan,
): { readonly section: 'fixtures' | 'stores' | 'tanks'; readonly name: string; readonly thing: Standing }[] {
  return (['fixtures', 'stores', 'tanks'] as const).flatMap((section) =>
    Object.entries(plan[section] ?? {}).map(([name, thing]) => ({ section, name, thing })),
  );
}

function checkVan({ van }: Plan, complain: Complain): void {
  if (van.unladen) checkUnladen(van.unladen, van, complain);
  for (const [name, opening] of Object.entries(van.openings ?? {})) {
    const sizes = [opening.length, opening.width, opening.height].filter((size) => size !== undefined).length;
    if (sizes !== 2)
      complain(['van', 'openings', name], `opening ${quote(name)} needs two sizes`, {
        expected: 'two of `length`, `width` and `height`',
      });
    checkPlace(opening.at, ['van', 'openings', name, 'at'], complain);
  }
  checkPlace(van.fuel_tank?.at, ['van', 'fuel_tank', 'at'], complain);
}

function checkUnladen(
  unladen: NonNullable<Plan['van']['unladen']>,
  van: Plan['van'],
  complain: Complain,
): void {
  const at = ['van', 'unladen'];
  const wheels = [unladen.front_left, unladen.front_right, unladen.rear_left, unladen.rear_right];
  const axles = [unladen.front, unladen.rear];
  const some = (group: readonly unknown[]) => group.some((value) => value !== undefined);
  const all = (group: readonly unknown[]) => group.every((value) => value !== undefined);
  const ways = [wheels, axles, [unladen.mass]].filter(some).length;
  const expected =
    'either `front` and `rear`, or the four wheels `front_left` … `rear_right`, or `mass` with `behind_front_axle`';
  if (ways === 0) complain(at, 'unladen says no mass', { expected });
  if (ways > 1) complain(at, 'unladen gives the mass in more than one way', { expected });
  if (some(axles) && !all(axles))
    complain(at, 'unladen has only one axle', { expected: 'both `front` and `rear`' });
  if (some(wheels) && !all(wheels))
    complain(at, 'unladen does not have all four wheels', {
      expected: '`front_left`, `front_right`, `rear_left` and `rear_right`',
    });
  if (unladen.behind_front_axle && !unladen.mass)
    complain(
      [...at, 'behind_front_axle'],
      'behind_front_axle belongs to `mass`; with axle loads it is worked out',
      { expected: 'no such key here', onKey: true },
    );
  const fuel = unladen.includes?.fuel;
  const atFuel = [...at, 'includes', 'fuel'];
  if (fuel && fuel.value > 1)
    complain(atFuel, 'the fuel tank cannot be more than full', { expected: 'at most `100 %`' });
  if (fuel && !van.fuel_tank)
    complain(atFuel, 'fuel is said to be in the weight, but the plan has no fuel tank', {
      expected: '`fuel_tank: {holds: 75 L, fuel: diesel}` under `van`',
    });
}

function checkPlace(place: Standing['at'], path: Path, complain: Complain): void {
  if (!place) return;
  const expected = 'one of them: the other follows from the sizes';
  if (place.from_front && place.from_rear)
    complain([...path, 'from_rear'], 'both from_front and from_rear are given', { expected, onKey: true });
  const sideways = (['from_left', 'from_right', 'centred'] as const).filter((key) => place[key]);
  if (sideways.length > 1)
    complain([...path, String(sideways[1])], `${inWords(sideways)} are given together`, {
      expected,
      onKey: true,
    });
}

const inWords = (names: readonly string[]): string =>
  `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;

/** In place of a name: everything under `routes`. */
export const allRuns = 'routes';

const reserved = new Set(['floor', 'ceiling', 'fuel', allRuns]);

function checkNames(plan: Plan, complain: Complain): void {
  const sections = new Map<string, string>();
  const check = (section: string, name: string) => {
    const path = [...section.split('.'), name];
    // A build-up is never referred to as a place, so it may be called after what it covers.
    if (
      (reserved.has(name) && section !== 'build_ups') ||
      (name === 'driver' && section !== 'people.seats') ||
      // Stands in for the stores of a plan that has none.
      (name === 'personal effects' && section !== 'stores' && section !== 'build_ups')
    ) {
      complain(path, `${quote(name)} is a word with a meaning here`, {
        expected: 'another name',
        onKey: true,
      });
      return;
    }
    const first = sections.get(name);
    if (first !== undefined)
      complain(path, `${quote(name)} is the name of something in ${first} and in ${section}`, {
        expected: 'a name of its own, since things are referred to by name',
        onKey: true,
      });
    sections.set(name, section);
  };
  for (const { section, name } of placedThings(plan)) check(section, name);
  for (const [name, seat] of Object.entries(plan.people?.seats ?? {})) {
    check('people.seats', name);
    checkPlace(seat.at, ['people', 'seats', name, 'at'], complain);
  }
  for (const name of Object.keys(plan.build_ups ?? {})) check('build_ups', name);
  for (const name of Object.keys(plan.routes?.runs ?? {})) check('routes.runs', name);
}

function checkHosts(plan: Plan, complain: Complain): void {
  const things = new Map(placedThings(plan).map((entry) => [entry.name, entry]));
  const nearestHost = { in: nearestOf(things.keys()), on: nearestOf(['floor', ...things.keys()]) };
  /** Things from which the chain of hosts is known to end, or to be complained about already. */
  const settled = new Set<string>();
  for (const { section, name, thing } of things.values()) {
    const path = [section, name];
    if (thing.in !== undefined && thing.on !== undefined)
      complain([...path, 'on'], `${quote(name)} is both in and on something`, {
        expected: 'one of them',
        onKey: true,
      });
    checkPlace(thing.at, [...path, 'at'], complain);
    const host = hostOf(thing);
    const key = thing.in === undefined ? 'on' : 'in';
    if (host !== undefined && !things.has(host)) {
      complain([...path, key], `${quote(name)} is ${key} ${quote(host)}, which is not in the plan`, {
        expected:
          host === 'floor'
            ? '`on: floor`'
            : `the name of a fixture, a store or a tank${key === 'on' ? ', or `floor`' : ''}`,
        meant: nearestHost[key](host, name),
        about: host,
      });
      continue;
    }
    const trail: string[] = [];
    const inTrail = new Set<string>();
    for (let at: string | undefined = name; at !== undefined && !settled.has(at); ) {
      if (inTrail.has(at)) {
        const circle = trail.slice(trail.indexOf(at));
        complain([...path, key], `${quote(at)} stands in or on itself: ${[...circle, at].join(' → ')}`, {
          expected: 'one of them on the floor',
        });
        break;
      }
      trail.push(at);
      inTrail.add(at);
      const above: Standing | undefined = things.get(at)?.thing;
      at = above && hostOf(above);
    }
    for (const each of trail) settled.add(each);
  }
}

const hostOf = (thing: Standing): string | undefined =>
  thing.in ?? (thing.on === 'floor' ? undefined : thing.on);

const nearestMaterial = nearestOf(materials.flatMap(({ name, otherNames }) => [name, ...otherNames]));

function checkMaterial(name: string, path: Path, complain: Complain): Material | undefined {
  const material = materialNamed(name);
  if (!material)
    complain(path, `${quote(name)} is not a material of the catalogue`, {
      expected: `one of its ${materials.length} materials, or the mass itself`,
      meant: nearestMaterial(name),
    });
  return material;
}

function checkFixtures(plan: Plan, complain: Complain): void {
  for (const [name, fixture] of Object.entries(plan.fixtures ?? {})) {
    const path = ['fixtures', name];
    const { mass, material, count, each, size } = fixture;
    const ways = [mass, material, each ?? count].filter((way) => way !== undefined).length;
    const expected = '`mass: 24 kg`, or `material` with a full `size`, or `count: 4` with `each: 2 kg`';
    if (ways === 0) complain(path, `${quote(name)} has no mass`, { expected });
    if (ways > 1) complain(path, `${quote(name)} gives its mass in more than one way`, { expected });
    if (material !== undefined) {
      checkMaterial(material, [...path, 'material'], complain);
      if (ways === 1 && (!size?.length || !size.width || !size.height))
        complain(
          [...path, 'size'],
          `${quote(name)} is computed from its material, but its size is not complete`,
          { expected: '`size: {length: 1200 mm, width: 450 mm, height: 27 mm}`' },
        );
    }
    if (ways === 1 && count && !each)
      complain([...path, 'count'], `${quote(name)} has a count but no mass for each`, {
        expected: '`each: 2 kg`',
      });
    if (ways === 1 && each && !count)
      complain([...path, 'each'], `${quote(name)} has a mass for each but no count`, {
        expected: '`count: 4`',
      });
    if (count && !Number.isInteger(count.value))
      complain([...path, 'count'], 'a count is a whole number', { expected: 'such as `4`' });
  }
}

function checkBuildUps(plan: Plan, complain: Complain): void {
  for (const [name, buildUp] of Object.entries(plan.build_ups ?? {})) {
    const path = ['build_ups', name];
    if (!buildUp.of && !buildUp.area)
      complain(path, `${quote(name)} has no area`, {
        expected: '`of: walls` (needs the load bay), or `area: 14.2 m2`',
      });
    if (buildUp.of && !buildUp.area && !plan.van.load_bay)
      complain(
        [...path, 'of'],
        `the area of ${quote(buildUp.of)} follows from the size of the load bay, which the plan does not give`,
        {
          expected:
            '`load_bay: {behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}` under `van`, or `area: 14.2 m2` here',
          about: 'load_bay',
        },
      );
    checkPlace(buildUp.at, [...path, 'at'], complain);
    for (const [index, layer] of buildUp.layers.entries())
      checkLayer(layer, [...path, 'layers', index], complain);
  }
}

type Layer = NonNullable<Plan['build_ups']>[string]['layers'][number];

function checkLayer({ material, thickness, areal_mass, share }: Layer, path: Path, complain: Complain): void {
  const expected = '`{material: birch plywood, thickness: 6 mm}` or `{name: carpet, areal_mass: 1.2 kg/m2}`';
  if (material !== undefined && areal_mass)
    complain(path, 'this layer gives its mass in two ways', { expected });
  else if (material === undefined && !areal_mass) complain(path, 'this layer has no mass', { expected });
  else if (material !== undefined && !thickness) complain(path, 'this layer has no thickness', { expected });
  if (material !== undefined) checkMaterial(material, [...path, 'material'], complain);
  if (share && share.value > 1)
    complain([...path, 'share'], 'a layer cannot cover more than the whole area', {
      expected: 'at most `100 %`',
    });
}

function checkStores(plan: Plan, complain: Complain): void {
  for (const [name, store] of Object.entries(plan.stores ?? {})) {
    if (store.empty && store.empty.value > store.full.value)
      complain(['stores', name, 'empty'], `${quote(name)} weighs more empty than full`, {
        expected: 'the smaller mass as `empty`',
      });
  }
}

type Fills = NonNullable<Plan['load_states']>[string];

function checkStates(plan: Plan, complain: Complain): void {
  const checkFills = fillsChecker(plan, complain);
  for (const [name, fills] of Object.entries(plan.load_states ?? {}))
    checkFills(fills, ['load_states', name]);
  const states = Object.keys(plan.load_states ?? {});
  const nearestState = nearestOf(states);
  const things = new Set([
    ...placedThings(plan).map(({ name }) => name),
    ...Object.keys(plan.build_ups ?? {}),
    ...Object.keys(plan.routes?.runs ?? {}),
    ...(plan.routes ? [allRuns] : []),
  ]);
  const nearestThing = nearestOf(things);
  for (const [name, ticket] of Object.entries(plan.weighed ?? {})) {
    const path = ['weighed', name];
    if (!ticket.total && !(ticket.front && ticket.rear))
      complain(path, `ticket ${quote(name)} has no weight`, {
        expected: '`total: 2940 kg`, or `front` and `rear`',
      });
    if (ticket.total && (ticket.front || ticket.rear))
      complain(path, `ticket ${quote(name)} has a total and axles`, { expected: 'one or the other' });
    if (typeof ticket.state === 'object') checkFills(ticket.state, [...path, 'state']);
    else if (ticket.state !== undefined && !states.includes(ticket.state))
      complain([...path, 'state'], `${quote(ticket.state)} is not one of the plan's load_states`, {
        expected: states.length > 0 ? oneOf(states) : 'the filling itself, such as `{fresh tank: 100 %}`',
        meant: nearestState(ticket.state),
        about: ticket.state,
      });
    for (const [index, absent] of (ticket.without ?? []).entries()) {
      if (!things.has(absent))
        complain([...path, 'without', index], `${quote(absent)} is not in the plan`, {
          expected: 'the name of a fixture, a tank, a store, a build-up or a run; or `routes` for all runs',
          meant: nearestThing(absent),
          about: absent,
        });
    }
  }
}

type Tank = NonNullable<Plan['tanks']>[string];

/** The most that a filling may be, in the unit that its thing is counted in. */
interface Capacity {
  readonly massKg?: number | undefined;
  /** Absent for what is not measured in litres. */
  readonly volumeM3?: number | undefined;
  readonly why?: string;
}

function fillsChecker(plan: Plan, complain: Complain): (fills: Fills, path: Path) => void {
  const fuelTank = plan.van.fuel_tank;
  const capacities = new Map<string, Capacity>([
    ...Object.entries(plan.tanks ?? {}).map(([name, tank]) => [name, capacityOf(tank)] as const),
    ...Object.entries(plan.stores ?? {}).map(
      ([name, store]) => [name, { massKg: store.full.value, why: 'it is not a tank' }] as const,
    ),
    // The driver is there whether or not the seats are given.
    ...['driver', ...Object.keys(plan.people?.seats ?? {})].map(
      (name) => [name, { why: 'it is not a tank' }] as const,
    ),
    ...(fuelTank
      ? [['fuel', capacityOf({ holds: fuelTank.holds, contents: fuelTank.fuel ?? 'diesel' })] as const]
      : []),
  ]);
  const nearestVariable = nearestOf(capacities.keys());
  return (fills, path) => {
    for (const [name, fill] of Object.entries(fills)) {
      const at = [...path, name];
      const capacity = capacities.get(name);
      if (!capacity)
        complain(at, `${quote(name)} is neither a tank, a store nor a seat of this plan`, {
          expected: oneOf([...capacities.keys()]),
          meant: nearestVariable(name),
          about: name,
          onKey: true,
        });
      else
        checkFill(fill, capacity, (message, expected) =>
          complain(at, `${quote(name)} ${message}`, { expected }),
        );
    }
  };
}

function capacityOf({ holds, contents }: Pick<Tank, 'holds' | 'contents'>): Capacity {
  return holds.kind === 'mass'
    ? { massKg: holds.value, why: 'what it `holds` is given as a mass' }
    : { volumeM3: holds.value, massKg: holds.value * fluids[contents].densityKgM3 };
}

function checkFill(
  { kind, value }: Fills[string],
  { massKg, volumeM3, why }: Capacity,
  complain: (message: string, expected: string) => void,
): void {
  const slack = 1 + 1e-9;
  if (kind === 'share' && value > slack) complain('cannot be more than full', 'at most `100 %`');
  else if (kind === 'volume' && volumeM3 === undefined)
    complain(`has no litres: ${why ?? ''}`, 'a mass, such as `15 kg`, or a share, such as `50 %`');
  else if (kind === 'volume' && value > (volumeM3 ?? Infinity) * slack)
    complain('cannot be more than full', `at most the ${figure((volumeM3 ?? 0) * 1000)} L that it holds`);
  else if (kind === 'mass' && value > (massKg ?? Infinity) * slack)
    complain('cannot be more than full', `at most the ${figure(massKg ?? 0)} kg that it holds`);
}

const figure = (value: number): string => String(Number(value.toPrecision(4)));

const oneOf = (names: readonly string[]): string => {
  const most = 12;
  const rest = names.length > most ? ` and ${names.length - most} more` : '';
  return `one of ${names.slice(0, most).join(', ')}${rest}`;
};
