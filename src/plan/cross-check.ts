import { type Material, materialNamed, materials } from '../catalogue/materials.ts';
import type { PlanDocument } from './document.ts';
import { nearest } from './nearest.ts';
import type { Problem } from './problem.ts';
import type { Plan } from './schema.ts';

type Path = readonly (string | number)[];
/** `about` is the name that refers to nothing, if that is the trouble. */
type Complain = (path: Path, message: string, expected?: string, meant?: string, about?: string) => void;

/**
 * What no single key can show: names that refer to nothing, circles, and keys that exclude or need each other.
 * `removed` is what could not be read and was left out of the plan; nothing that hangs on it is complained about.
 */
export function crossCheck(
  plan: Plan,
  document: PlanDocument,
  removed: readonly (readonly PropertyKey[])[],
): Problem[] {
  const problems: Problem[] = [];
  const lost = new Set(removed.flatMap((path) => path.map(String)));
  const complain: Complain = (path, message, expected, meant, about) => {
    const hangs = removed.some((gone) => path.every((key, index) => gone[index] === key));
    if (hangs || (about !== undefined && lost.has(about))) return;
    problems.push({
      message,
      span: document.spanOf(path),
      ...(expected === undefined ? {} : { expected }),
      ...(meant === undefined ? {} : { meant }),
    });
  };
  checkVan(plan, complain);
  checkNames(plan, complain);
  checkHosts(plan, complain);
  checkFixtures(plan, complain);
  checkBuildUps(plan, complain);
  checkStoresAndTanks(plan, complain);
  checkStates(plan, complain);
  return problems;
}

type Standing = Pick<NonNullable<Plan['fixtures']>[string], 'in' | 'on' | 'at' | 'size'>;

/** Everything that has a place of its own, with the section it stands in. */
export function placedThings(
  plan: Plan,
): { readonly section: 'fixtures' | 'stores' | 'tanks'; readonly name: string; readonly thing: Standing }[] {
  return (['fixtures', 'stores', 'tanks'] as const).flatMap((section) =>
    Object.entries(plan[section] ?? {}).map(([name, thing]) => ({ section, name, thing })),
  );
}

function checkVan({ van }: Plan, complain: Complain): void {
  const unladen = van.unladen;
  if (unladen) {
    const at = ['van', 'unladen'];
    const wheels = [unladen.front_left, unladen.front_right, unladen.rear_left, unladen.rear_right];
    const axles = [unladen.front, unladen.rear];
    const given =
      [wheels, axles].filter((group) => group.some((value) => value !== undefined)).length +
      (unladen.mass ? 1 : 0);
    const example =
      'either `front` and `rear`, or the four wheels `front_left` … `rear_right`, or `mass` with `behind_front_axle`';
    if (given === 0) complain(at, 'unladen says no mass', example);
    if (given > 1) complain(at, 'unladen gives the mass in more than one way', example);
    if (axles.some((value) => value === undefined) && axles.some((value) => value !== undefined))
      complain(at, 'unladen has only one axle', 'both `front` and `rear`');
    if (wheels.some((value) => value === undefined) && wheels.some((value) => value !== undefined))
      complain(
        at,
        'unladen does not have all four wheels',
        '`front_left`, `front_right`, `rear_left` and `rear_right`',
      );
    if (unladen.behind_front_axle && !unladen.mass)
      complain(
        [...at, 'behind_front_axle'],
        'behind_front_axle belongs to `mass`; with axle loads it is worked out',
        'no such key here',
      );
    if ((unladen.includes?.fuel?.value ?? 0) > 1)
      complain([...at, 'includes', 'fuel'], 'the tank cannot be more than full', 'at most `100 %`');
    if (unladen.includes?.fuel && !van.fuel_tank)
      complain(
        [...at, 'includes', 'fuel'],
        'fuel is said to be in the weight, but the plan has no fuel tank',
        '`fuel_tank: {holds: 75 L, fuel: diesel}` under `van`',
      );
  }
  for (const [name, opening] of Object.entries(van.openings ?? {})) {
    const sizes = [opening.length, opening.width, opening.height].filter((size) => size !== undefined).length;
    if (sizes !== 2)
      complain(
        ['van', 'openings', name],
        `opening ${name} needs two sizes`,
        'two of `length`, `width` and `height`',
      );
  }
  checkPlace(van.fuel_tank?.at, ['van', 'fuel_tank', 'at'], complain);
}

function checkPlace(place: Standing['at'], path: Path, complain: Complain): void {
  if (!place) return;
  if (place.from_front && place.from_rear)
    complain([...path, 'from_rear'], 'both from_front and from_rear are given', 'one of them');
  const sideways = [
    place.from_left && 'from_left',
    place.from_right && 'from_right',
    place.centred && 'centred',
  ].filter(Boolean);
  if (sideways.length > 1)
    complain([...path, String(sideways[1])], `both ${sideways.join(' and ')} are given`, 'one of them');
}

const reserved = new Set(['floor', 'ceiling', 'fuel']);

function checkNames(plan: Plan, complain: Complain): void {
  const seen = new Map<string, string>();
  const check = (section: string, name: string, path: Path) => {
    const first = seen.get(name);
    if (first !== undefined)
      complain(
        path,
        `\`${name}\` is the name of something in ${first} and in ${section}`,
        'a name of its own, since things are referred to by name',
      );
    if (reserved.has(name)) complain(path, `\`${name}\` is a word with a meaning here`, 'another name');
    seen.set(name, section);
  };
  for (const { section, name } of placedThings(plan)) check(section, name, [section, name]);
  for (const name of Object.keys(plan.people?.seats ?? {}))
    check('people.seats', name, ['people', 'seats', name]);
  for (const [name, seat] of Object.entries(plan.people?.seats ?? {}))
    checkPlace(seat.at, ['people', 'seats', name, 'at'], complain);
}

function checkHosts(plan: Plan, complain: Complain): void {
  const things = new Map(placedThings(plan).map((entry) => [entry.name, entry]));
  const hostOf = (thing: Standing): string | undefined =>
    thing.in ?? (thing.on === 'floor' ? undefined : thing.on);
  for (const { section, name, thing } of things.values()) {
    const path = [section, name];
    if (thing.in !== undefined && thing.on !== undefined)
      complain([...path, 'on'], `${name} is both in and on something`, 'one of them');
    checkPlace(thing.at, [...path, 'at'], complain);
    const host = hostOf(thing);
    if (host === undefined) continue;
    const key = thing.in === undefined ? 'on' : 'in';
    if (!things.has(host)) {
      const known = [...things.keys()].filter((other) => other !== name);
      complain(
        [...path, key],
        `${name} is ${key} \`${host}\`, which is not in the plan`,
        `the name of a fixture, a store or a tank${key === 'on' ? ', or `floor`' : ''}`,
        nearest(host, known),
        host,
      );
      continue;
    }
    const trail = [name];
    for (let next: string | undefined = host; next !== undefined; ) {
      if (next === name) {
        complain(
          [...path, key],
          `${name} stands in or on itself: ${[...trail, name].join(' → ')}`,
          'one of them on the floor',
        );
        break;
      }
      if (trail.includes(next)) break;
      trail.push(next);
      const thingAbove: Standing | undefined = things.get(next)?.thing;
      next = thingAbove && hostOf(thingAbove);
    }
  }
}

function checkMaterial(name: string, path: Path, complain: Complain): Material | undefined {
  const material = materialNamed(name);
  if (!material) {
    const names = materials.map((each) => each.name);
    complain(
      path,
      `\`${name}\` is not a material of the catalogue`,
      `one of its ${names.length} materials, or the mass itself`,
      nearest(name, names),
    );
  }
  return material;
}

function checkFixtures(plan: Plan, complain: Complain): void {
  for (const [name, fixture] of Object.entries(plan.fixtures ?? {})) {
    const path = ['fixtures', name];
    const ways = [fixture.mass, fixture.material, fixture.each].filter((way) => way !== undefined).length;
    const example = '`mass: 24 kg`, or `material` with a full `size`, or `count: 4` with `each: 2 kg`';
    if (ways === 0) complain(path, `${name} has no mass`, example);
    if (ways > 1) complain(path, `${name} gives its mass in more than one way`, example);
    if (fixture.material !== undefined) {
      checkMaterial(fixture.material, [...path, 'material'], complain);
      const { length, width, height } = fixture.size ?? {};
      if (!length || !width || !height)
        complain(
          [...path, 'size'],
          `${name} is computed from its material, but its size is not complete`,
          '`size: {length: 1200 mm, width: 450 mm, height: 27 mm}`',
        );
    }
    if (fixture.count && !fixture.each)
      complain([...path, 'count'], `${name} has a count but no mass for each`, '`each: 2 kg`');
    if (fixture.each && !fixture.count)
      complain([...path, 'each'], `${name} has a mass for each but no count`, '`count: 4`');
    if (fixture.count && !Number.isInteger(fixture.count.value))
      complain([...path, 'count'], 'a count is a whole number', 'such as `4`');
  }
}

function checkBuildUps(plan: Plan, complain: Complain): void {
  for (const [name, buildUp] of Object.entries(plan.build_ups ?? {})) {
    const path = ['build_ups', name];
    if (!buildUp.of && !buildUp.area)
      complain(path, `${name} has no area`, '`of: walls` (needs the load bay), or `area: 14.2 m2`');
    if (buildUp.of && !buildUp.area && !plan.van.load_bay)
      complain(
        [...path, 'of'],
        `the area of the ${buildUp.of} needs the size of the load bay`,
        '`load_bay` under `van`, or `area: 14.2 m2` here',
      );
    checkPlace(buildUp.at, [...path, 'at'], complain);
    buildUp.layers.forEach((layer, index) => {
      const at = [...path, 'layers', index];
      const example =
        '`{material: birch plywood, thickness: 6 mm}` or `{name: carpet, areal_mass: 1.2 kg/m2}`';
      if (layer.material !== undefined && layer.areal_mass)
        complain(at, 'this layer gives its mass in two ways', example);
      if (layer.material === undefined && !layer.areal_mass) complain(at, 'this layer has no mass', example);
      if (layer.material !== undefined && !layer.thickness)
        complain(at, 'this layer has no thickness', example);
      if (layer.material !== undefined) checkMaterial(layer.material, [...at, 'material'], complain);
      if ((layer.share?.value ?? 0) > 1)
        complain([...at, 'share'], 'a layer cannot cover more than the whole area', 'at most `100 %`');
    });
  }
}

function checkStoresAndTanks(plan: Plan, complain: Complain): void {
  for (const [name, store] of Object.entries(plan.stores ?? {})) {
    if (store.empty && store.empty.value > store.full.value)
      complain(
        ['stores', name, 'empty'],
        `${name} weighs more empty than full`,
        'the smaller mass as `empty`',
      );
  }
}

function checkStates(plan: Plan, complain: Complain): void {
  const variable = [
    ...Object.keys(plan.tanks ?? {}),
    ...Object.keys(plan.stores ?? {}),
    ...Object.keys(plan.people?.seats ?? {}),
    ...(plan.van.fuel_tank ? ['fuel'] : []),
  ];
  const checkFills = (fills: Record<string, { value: number; kind: string }>, path: Path) => {
    for (const [name, fill] of Object.entries(fills)) {
      if (!variable.includes(name))
        complain(
          [...path, name],
          `\`${name}\` is neither a tank, a store nor a seat of this plan`,
          variable.length > 0 ? `one of ${variable.join(', ')}` : 'tanks or stores to fill',
          nearest(name, variable),
          name,
        );
      else if (fill.kind === 'share' && fill.value > 1)
        complain([...path, name], `${name} cannot be more than full`, 'at most `100 %`');
      else if (fill.kind === 'volume' && plan.tanks?.[name] === undefined && name !== 'fuel')
        complain([...path, name], `${name} is not a tank, so it has no litres`, 'a mass or a share');
    }
  };
  for (const [name, fills] of Object.entries(plan.load_states ?? {}))
    checkFills(fills, ['load_states', name]);
  const things = placedThings(plan).map((entry) => entry.name);
  for (const [name, ticket] of Object.entries(plan.weighed ?? {})) {
    const path = ['weighed', name];
    if (!ticket.total && !(ticket.front && ticket.rear))
      complain(path, `ticket ${name} has no weight`, '`total: 2940 kg`, or `front` and `rear`');
    if (ticket.total && (ticket.front || ticket.rear))
      complain(path, `ticket ${name} has a total and axles`, 'one or the other');
    if (typeof ticket.state === 'string') {
      const states = Object.keys(plan.load_states ?? {});
      if (!states.includes(ticket.state))
        complain(
          [...path, 'state'],
          `\`${ticket.state}\` is not one of the plan's load_states`,
          states.length > 0
            ? `one of ${states.join(', ')}`
            : 'the filling itself, such as `{fresh tank: 100 %}`',
          nearest(ticket.state, states),
          ticket.state,
        );
    } else if (ticket.state) checkFills(ticket.state, [...path, 'state']);
    ticket.without?.forEach((absent, index) => {
      if (!things.includes(absent) && plan.build_ups?.[absent] === undefined)
        complain(
          [...path, 'without', index],
          `\`${absent}\` is not in the plan`,
          'the name of a fixture, a tank, a store or a build-up',
          nearest(absent, things),
          absent,
        );
    });
  }
}
