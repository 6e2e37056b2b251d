import fc from 'fast-check';
import { openingKinds, sides, surfaces, uses } from '../../src/plan/schema.ts';

/** A value of a plan with its kind, so that it can be written in more than one unit. Values are in SI. */
export interface Amount {
  readonly kind: 'mass' | 'length' | 'volume' | 'area' | 'areal mass' | 'share' | 'number';
  readonly value: number;
  readonly tolerance?: number;
}

export type Value = string | boolean | Amount | readonly Value[] | Section;
export interface Section {
  readonly [key: string]: Value | undefined;
}

/** A plan before it is written down: sections of named things. */
export interface Draft {
  readonly codes: string | undefined;
  readonly van: Section;
  readonly people: Section;
  readonly fixtures: Section;
  readonly build_ups: Section;
  readonly tanks: Section;
  readonly stores: Section | undefined;
}

export type Style = Readonly<Record<Amount['kind'], readonly [symbol: string, factor: number]>>;

export const metric: Style = {
  mass: ['kg', 1],
  length: ['mm', 1e-3],
  volume: ['L', 1e-3],
  area: ['m2', 1],
  'areal mass': ['kg/m2', 1],
  share: ['%', 0.01],
  number: ['', 1],
};

const inch = 0.0254;
const pound = 0.45359237;

/** The same quantities as a builder with other tapes and scales would write them. */
export const otherStyles: readonly Style[] = [
  {
    ...metric,
    mass: ['lb', pound],
    length: ['in', inch],
    volume: ['gal_imp', 4.54609e-3],
    area: ['ft2', (12 * inch) ** 2],
    'areal mass': ['lb/ft2', pound / (12 * inch) ** 2],
  },
  {
    ...metric,
    mass: ['g', 1e-3],
    length: ['m', 1],
    volume: ['m3', 1],
    area: ['cm2', 1e-4],
    'areal mass': ['g/m2', 1e-3],
  },
  { ...metric, mass: ['t', 1000], length: ['ft', 12 * inch], volume: ['ml', 1e-6] },
];

export const isAmount = (value: Value): value is Amount =>
  typeof value === 'object' && 'kind' in value && 'value' in value;
export const isList = (value: Value): value is readonly Value[] => Array.isArray(value);

/** The text of one value, in YAML's flow style. */
function written(value: Value, style: Style): string {
  if (typeof value === 'string' || typeof value === 'boolean') return String(value);
  if (isList(value)) return `[${value.map((each) => written(each, style)).join(', ')}]`;
  if (isAmount(value)) {
    const [symbol, factor] = style[value.kind];
    const one = (number: number) => `${number / factor} ${symbol}`.trim();
    return value.tolerance === undefined ? one(value.value) : `${one(value.value)} ± ${one(value.tolerance)}`;
  }
  return `{${entriesOf(value)
    .map(([key, each]) => `${key}: ${written(each, style)}`)
    .join(', ')}}`;
}

const entriesOf = (section: Section): [string, Value][] =>
  Object.entries(section).flatMap(([key, value]): [string, Value][] =>
    value === undefined ? [] : [[key, value]],
  );

/** In which order things are written: any numbers, one for each key; those with the smaller number come first. */
export type Order = (key: string) => number;
const asGiven: Order = () => 0;

export function write(draft: Draft, style: Style = metric, order: Order = asGiven): string {
  const inOrder = (section: Section) => entriesOf(section).sort(([a], [b]) => order(a) - order(b));
  const blocks = inOrder({ ...draft }).map(([name, value]) =>
    typeof value === 'string' || typeof value === 'boolean' || isList(value) || isAmount(value)
      ? `${name}: ${written(value, style)}`
      : `${name}:${inOrder(value).length === 0 ? ' {}' : ''}\n${inOrder(value)
          .map(([key, each]) => `  ${key}: ${written(each, style)}\n`)
          .join('')}`,
  );
  return `storystick: 1\n${blocks.join('\n')}`;
}

export const kg = (value: number, tolerance?: number): Amount => amount('mass', value, tolerance);
export const m = (value: number, tolerance?: number): Amount => amount('length', value, tolerance);
const amount = (kind: Amount['kind'], value: number, tolerance?: number): Amount => ({
  kind,
  value,
  ...(tolerance !== undefined && { tolerance }),
});

/** In millimetres, as tapes show; SI inside. */
const lengthBetween = (leastMm: number, mostMm: number): fc.Arbitrary<Amount> =>
  fc.integer({ min: leastMm, max: mostMm }).map((mm) => m(mm / 1000));

/** In tenths of a kilogram, with a tolerance or without. */
const massUpTo = (mostKg: number): fc.Arbitrary<Amount> =>
  fc
    .tuple(
      fc.integer({ min: 0, max: mostKg * 10 }),
      fc.option(fc.integer({ min: 1, max: 50 }), { nil: undefined }),
    )
    .map(([tenths, tolerance]) => kg(tenths / 10, tolerance === undefined ? undefined : tolerance / 10));

const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined });

/** A place in the load bay or in a host; any part of it may be left out. */
const place: fc.Arbitrary<Section> = fc
  .tuple(
    maybe(fc.tuple(fc.constantFrom('from_front', 'from_rear'), lengthBetween(-1000, 3500))),
    maybe(fc.tuple(fc.constantFrom('from_left', 'from_right', 'centred'), lengthBetween(-200, 1500))),
    maybe(lengthBetween(-400, 1800)),
  )
  .map(([along, across, above]) => ({
    ...(along && { [along[0]]: along[1] }),
    ...(across && { [across[0]]: across[0] === 'centred' ? true : across[1] }),
    ...(above && { above_floor: above }),
  }));

const size: fc.Arbitrary<Section> = fc.record({
  length: lengthBetween(50, 2000),
  width: lengthBetween(50, 1500),
  height: lengthBetween(20, 1800),
});

type Standing = fc.Arbitrary<Section>;
/** Where a thing stands; a host is one of those written before it. */
const standing = (hosts: readonly string[]): Standing =>
  fc
    .tuple(
      maybe(size),
      maybe(place),
      hosts.length === 0
        ? fc.constant(undefined)
        : maybe(fc.tuple(fc.constantFrom('in', 'on'), fc.constantFrom(...hosts, 'floor'))),
    )
    .map(([dimensions, at, host]) => ({
      ...(dimensions && { size: dimensions }),
      ...(at && { at }),
      ...(host && (host[0] === 'on' || host[1] !== 'floor') && { [host[0]]: host[1] }),
    }));

const fixtureMass: fc.Arbitrary<Section> = fc.oneof(
  { weight: 3, arbitrary: massUpTo(60).map((mass): Section => ({ mass })) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.integer({ min: 1, max: 12 }), massUpTo(5))
      .map(([count, each]): Section => ({ count: amount('number', count), each })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom('ash', 'birch plywood', 'spruce'), size)
      .map(([material, dimensions]): Section => ({ material, size: shrunk(dimensions) })),
  },
);

/** A board rather than a block of the same material. */
const shrunk = (dimensions: Section): Section => ({ ...dimensions, height: m(0.027) });

/** What a fixture needs besides its size and place; none of it weighs anything. */
const needs: fc.Arbitrary<Section> = fc
  .tuple(
    maybe(fc.constantFrom(...uses)),
    maybe(fc.tuple(fc.constantFrom(...sides), lengthBetween(50, 900))),
    maybe(fc.tuple(fc.constantFrom(...sides, 'above'), lengthBetween(10, 600))),
    maybe(fc.tuple(fc.integer({ min: 1, max: 8 }), massUpTo(120))),
    maybe(fc.tuple(fc.constantFrom(...sides), fc.constantFrom('left', 'right'))),
    maybe(fc.tuple(size, fc.constantFrom('inside', 'underneath'), fc.boolean())),
    fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
  )
  .map(([is, room, heat, fixings, door, stowed, [leans, burns, spread]]) => ({
    ...(is && { is }),
    ...(room && { needs_space: { [room[0]]: room[1] } }),
    ...(heat && { heat_clearance: { [heat[0]]: heat[1] } }),
    ...(fixings &&
      fixings[1].value > 0 && { fixings: { count: amount('number', fixings[0]), each: fixings[1] } }),
    ...(door && { opens: { leaf: { kind: 'door', side: door[0], hinge: door[1] } } }),
    ...(stowed && { stows: { trunk: { size: stowed[0], place: stowed[1], upright: stowed[2] } } }),
    ...(leans && { leans }),
    ...(burns && { combustible: burns }),
    ...(spread && { solid: false }),
  }));

/** Named things, each of which may stand in or on those before it. */
function chained(
  prefix: string,
  most: number,
  hosts: readonly string[],
  one: (hosts: readonly string[]) => fc.Arbitrary<Section>,
): fc.Arbitrary<Section> {
  return fc.integer({ min: 0, max: most }).chain((count) => {
    const names = Array.from({ length: count }, (_, index) => `${prefix} ${index + 1}`);
    return fc
      .tuple(...names.map((_, index) => one([...hosts, ...names.slice(0, index)])))
      .map((things) => Object.fromEntries(names.map((name, index) => [name, things[index] ?? {}])));
  });
}

const fixtures = chained('box', 12, [], (hosts) =>
  fc
    .tuple(standing(hosts), fixtureMass, fc.oneof(fc.constant({}), needs))
    .map(([where, what, room]): Section => ({ ...where, ...what, ...room })),
);

const buildUps = chained('lining', 3, [], () =>
  fc
    .tuple(
      fc.constantFrom(...surfaces, undefined),
      maybe(place),
      fc.array(layer, { minLength: 1, maxLength: 3 }),
      fc.integer({ min: 1, max: 200 }),
    )
    .map(
      ([surface, at, layers, tenths]): Section => ({
        ...(surface === undefined ? { area: amount('area', tenths / 10) } : { of: surface }),
        ...(at && { at }),
        layers,
      }),
    ),
);

const layer: fc.Arbitrary<Section> = fc
  .tuple(
    fc.boolean(),
    fc.constantFrom('birch plywood', 'sheep wool', 'spruce'),
    fc.integer({ min: 1, max: 40 }),
    maybe(fc.integer({ min: 0, max: 100 })),
  )
  .map(([catalogued, material, number, share]) => ({
    ...(catalogued
      ? { material, thickness: m(number / 1000) }
      : { name: 'felt', areal_mass: amount('areal mass', number / 10) }),
    ...(share !== undefined && { share: amount('share', share / 100) }),
  }));

const tank = (hosts: readonly string[]): fc.Arbitrary<Section> =>
  fc
    .tuple(
      standing(hosts),
      fc.constantFrom('fresh', 'waste', 'fresh', 'waste', 'propane', 'diesel'),
      fc.integer({ min: 1, max: 120 }),
      fc.boolean(),
      maybe(massUpTo(10)),
    )
    .map(([where, contents, number, inLitres, mass]) => ({
      ...where,
      contents,
      holds: inLitres ? amount('volume', number / 1000) : kg(number),
      ...(mass && { mass }),
    }));

const store = (hosts: readonly string[]): fc.Arbitrary<Section> =>
  fc
    .tuple(
      standing(hosts),
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 0, max: 400 }),
      maybe(fc.boolean()),
    )
    .map(([where, a, b, hasEmpty]) => ({
      ...where,
      full: kg(Math.max(a, b) / 10),
      ...(hasEmpty && { empty: kg(Math.min(a, b) / 10) }),
    }));

const seat: fc.Arbitrary<Section> = fc
  .tuple(maybe(massUpTo(110)), maybe(place))
  .map(([mass, at]) => ({ ...(mass && { mass }), ...(at && { at }) }));

const people: fc.Arbitrary<Section> = fc
  .tuple(maybe(seat), maybe(seat), maybe(seat))
  .map(([driver, passenger, third]) => ({
    ...((driver || passenger || third) && {
      seats: { ...(driver && { driver }), ...(passenger && { passenger }), ...(third && { third }) },
    }),
  }));

const unladen: fc.Arbitrary<Section> = fc
  .tuple(
    fc.integer({ min: 700, max: 1300 }),
    fc.integer({ min: 700, max: 1300 }),
    fc.integer({ min: -60, max: 60 }),
    fc.constantFrom('axles', 'wheels', 'mass'),
    maybe(fc.integer({ min: 1, max: 30 })),
    fc.constantFrom('weighbridge', 'brochure', undefined),
    maybe(fc.boolean()),
    maybe(fc.integer({ min: 0, max: 100 })),
  )
  .map(([front, rear, lean, form, tolerance, from, driver, fuel]) => ({
    ...(form === 'axles' && { front: kg(front, tolerance), rear: kg(rear, tolerance) }),
    ...(form === 'wheels' && {
      front_left: kg((front - lean) / 2, tolerance),
      front_right: kg((front + lean) / 2, tolerance),
      rear_left: kg((rear + lean) / 2, tolerance),
      rear_right: kg((rear - lean) / 2, tolerance),
    }),
    ...(form === 'mass' && {
      mass: kg(front + rear, tolerance),
      behind_front_axle: m(1.2 + (rear - front) / 1000),
    }),
    ...(from && { from }),
    includes: {
      ...(driver !== undefined && { driver }),
      ...(fuel !== undefined && { fuel: amount('share', fuel / 100) }),
    },
  }));

const van: fc.Arbitrary<Section> = fc
  .record({
    max_mass: fc.integer({ min: 2800, max: 4500 }).map((mass) => kg(mass)),
    front: fc.integer({ min: 1400, max: 2200 }).map((mass) => kg(mass)),
    rear: fc.integer({ min: 1400, max: 2600 }).map((mass) => kg(mass)),
    unladen,
    wheelbase: lengthBetween(2900, 4500),
    track: lengthBetween(1500, 1800),
    rear_track: maybe(lengthBetween(1500, 1800)),
    overall_length: maybe(lengthBetween(4500, 7500)),
    centre: fc.tuple(lengthBetween(550, 900), lengthBetween(400, 700)),
    bay: fc.tuple(
      lengthBetween(700, 1500),
      lengthBetween(2400, 4400),
      lengthBetween(1500, 2000),
      lengthBetween(1400, 2200),
    ),
    arches: fc.boolean(),
    door: fc.constantFrom('left wall', 'right wall', undefined),
    fuel: maybe(
      fc.tuple(fc.integer({ min: 40, max: 120 }), fc.constantFrom('diesel', 'petrol'), maybe(place)),
    ),
    limits: fc.tuple(maybe(lengthBetween(700, 1100)), maybe(lengthBetween(20, 120))),
    rib: maybe(lengthBetween(0, 3000)),
    opening: maybe(fc.tuple(fc.constantFrom(...openingKinds), fc.boolean(), place)),
  })
  .map(({ front, rear, centre, bay, arches, door, fuel, limits, rib, opening, ...rest }) => {
    const [behind, length, width, height] = bay;
    return {
      ...rest,
      axle_limits: { front, rear },
      unladen: { ...withoutFuel(rest.unladen, fuel === undefined), centre_height: centre[0] },
      load_bay: {
        behind_front_axle: behind,
        length,
        width,
        height,
        floor_above_ground: centre[1],
        ...(rib && { ribs: [{ in: 'left wall', from_front: rib, width: m(0.06) }] }),
      },
      ...(arches && {
        wheel_arches: { from_front: m(1.2), length: m(0.8), width: m(0.2), ...(rib && { height: m(0.3) }) },
      }),
      ...(door && {
        openings: {
          'sliding door': {
            in: door,
            length: m(1),
            height: m(1.2),
            ...(opening && { kind: opening[0], escape: opening[1], at: opening[2] }),
          },
        },
      }),
      ...(fuel && {
        fuel_tank: {
          holds: amount('volume', fuel[0] / 1000),
          fuel: fuel[1],
          ...(fuel[2] && { at: fuel[2] }),
        },
      }),
      centre_limits: {
        ...(limits[0] && { height: limits[0] }),
        ...(limits[1] && { sideways: limits[1] }),
      },
    };
  });

/** A van without a tank in the plan cannot have been weighed with fuel in it. */
function withoutFuel(unladenMass: Section, noTank: boolean): Section {
  const { includes } = unladenMass;
  if (!noTank || typeof includes !== 'object' || isAmount(includes) || isList(includes)) return unladenMass;
  const { fuel: _, ...rest } = includes;
  return { ...unladenMass, includes: rest };
}

/** Any plan that can be understood, with everything the mass and balance rules need. */
export const drafts: fc.Arbitrary<Draft> = fixtures.chain((things) => {
  const hosts = Object.keys(things);
  return fc.record({
    codes: fc.constantFrom('uk', 'eu', 'us', 'au'),
    van,
    people,
    fixtures: fc.constant(things),
    build_ups: buildUps,
    tanks: chained('tank', 4, hosts, tank),
    stores: maybe(chained('store', 4, hosts, store)),
  });
});
