/**
 * Mass and balance once more, from the text of a plan and by the shortest way: no classes of errors, no selection, no
 * shared code but the densities of the catalogue. It knows the metric plans of random-plan.ts, and finds the worst
 * state of a limit by trying every corner.
 */
import { parse } from 'yaml';
import { fluidNames, fluids } from '../../src/catalogue/fluids.ts';
import { materialNamed } from '../../src/catalogue/materials.ts';

type Node = { readonly [key: string]: unknown };

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const sub = (node: Node, key: string): Node => {
  const value = Object.hasOwn(node, key) ? node[key] : undefined;
  return isNode(value) ? value : {};
};

/** The number in a text such as "38 kg ± 2 kg", in kg, m, m², m³ or a plain ratio. */
function number(node: Node, key: string): number | undefined {
  const value = node[key];
  if (typeof value === 'number') return value;
  if (typeof value !== 'string') return undefined;
  const [, digits, unit = ''] = /^([-+.\deE]+) ?(\S*)/.exec(value) ?? [];
  const factor = { mm: 1e-3, L: 1e-3, '%': 0.01 }[unit] ?? 1;
  return Number(digits) * factor;
}

/** A box by its low corner; an extent that is unknown is undefined. */
interface BoxOf {
  readonly low: readonly [number, number, number];
  readonly extent: readonly [number | undefined, number | undefined, number | undefined];
}

export interface Mass {
  readonly name: string;
  readonly sort: 'van' | 'person' | 'fuel' | 'equipment' | 'allowance';
  /** Present when it varies: what it may weigh, and whether it draws on the water that is carried. */
  readonly least?: number;
  readonly most: number;
  readonly water?: boolean;
  readonly store?: boolean;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface Model {
  readonly masses: readonly Mass[];
  readonly waterKg: number;
  readonly wheelbase: number;
  readonly frontTrack: number;
  readonly rearTrack: number;
  readonly floor: number;
  readonly maxMass: number;
}

export type Fill = ReadonlyMap<string, number>;

export function modelOf(text: string): Model {
  const parsed: unknown = parse(text);
  const plan = isNode(parsed) ? parsed : {};
  const van = sub(plan, 'van');
  const bay = sub(van, 'load_bay');
  const at = (node: Node, key: string): number => number(node, key) ?? Number.NaN;
  const start = at(bay, 'behind_front_axle');
  const [length, width, height] = [at(bay, 'length'), at(bay, 'width'), at(bay, 'height')];
  const wheelbase = at(van, 'wheelbase');
  const frontTrack = at(van, 'track');
  const rearTrack = number(van, 'rear_track') ?? frontTrack;
  const floor = at(bay, 'floor_above_ground');
  const bayBox: BoxOf = { low: [start, -width / 2, 0], extent: [length, width, height] };
  const masses: Mass[] = [];

  // The empty van.
  const unladen = sub(van, 'unladen');
  const z = at(unladen, 'centre_height') - floor;
  const empty = (name: string, most: number, x: number, y: number) =>
    masses.push({ name, sort: 'van', most, x, y, z });
  for (const [key, x] of [
    ['front', 0],
    ['rear', wheelbase],
  ] as const) {
    const whole = number(unladen, key);
    if (whole !== undefined) empty(key, whole, x, 0);
    for (const [side, sign] of [
      ['left', -0.5],
      ['right', 0.5],
    ] as const) {
      const wheel = number(unladen, `${key}_${side}`);
      if (wheel !== undefined)
        empty(`${key} ${side}`, wheel, x, sign * (key === 'front' ? frontTrack : rearTrack));
    }
  }
  const whole = number(unladen, 'mass');
  if (whole !== undefined) empty('whole', whole, at(unladen, 'behind_front_axle'), 0);

  // The fuel, less what was on the scale.
  const tank = sub(van, 'fuel_tank');
  if (number(tank, 'holds') !== undefined) {
    const most = at(tank, 'holds') * fluids[tank.fuel === 'petrol' ? 'petrol' : 'diesel'].densityKgM3;
    const place = sub(tank, 'at');
    const given = Object.hasOwn(tank, 'at');
    const fuel = {
      sort: 'fuel' as const,
      x: given ? along(bayBox, 0, undefined, place, 'from_front', 'from_rear') : wheelbase / 2,
      y: given ? along(bayBox, 1, undefined, place, 'from_left', 'from_right') : 0,
      z: number(place, 'above_floor') ?? -0.2,
    };
    masses.push({ ...fuel, name: 'fuel', least: 0, most });
    const before = number(sub(unladen, 'includes'), 'fuel') ?? 0;
    if (before > 0) masses.push({ ...fuel, name: 'fuel on the scale', most: -before * most });
  }

  // People.
  const seats = sub(sub(plan, 'people'), 'seats');
  const names = Object.keys(seats);
  if (!names.includes('driver')) names.unshift('driver');
  const right = plan.codes === 'uk' || plan.codes === 'au' ? 1 : -1;
  for (const name of names) {
    if (name === 'driver' && sub(unladen, 'includes').driver === true) continue;
    const seat = sub(seats, name);
    const place = sub(seat, 'at');
    const most = number(seat, 'mass') ?? (plan.codes === 'us' ? 68 : 75);
    const side = name === 'driver' ? right : name === 'passenger' ? -right : 0;
    const across = ['from_left', 'from_right', 'centred'].some((key) => Object.hasOwn(place, key));
    const lengthways = ['from_front', 'from_rear'].some((key) => Object.hasOwn(place, key));
    masses.push({
      name,
      sort: 'person',
      least: name === 'driver' ? most : 0,
      most,
      x: lengthways ? along(bayBox, 0, undefined, place, 'from_front', 'from_rear') : start / 2,
      y: across ? along(bayBox, 1, undefined, place, 'from_left', 'from_right') : (side * width) / 4,
      z: number(place, 'above_floor') ?? 0.65,
    });
  }

  // Linings.
  const openings = Object.values(sub(van, 'openings')).filter(isNode);
  const areaOf = (surface: string): number => {
    const gross = { floor: length * width, ceiling: length * width }[surface];
    const wall = surface.endsWith('wall') ? length * height : width * height;
    const holes = openings
      .filter((opening) => opening.in === surface)
      .map((opening) =>
        ['length', 'width', 'height'].reduce((product, key) => product * (number(opening, key) ?? 1), 1),
      );
    const arches = sub(van, 'wheel_arches');
    const under =
      surface === 'floor' ? 2 * (number(arches, 'length') ?? 0) * (number(arches, 'width') ?? 0) : 0;
    return Math.max(0, (gross ?? wall) - holes.reduce((a, b) => a + b, 0) - under);
  };
  for (const [name, value] of Object.entries(sub(plan, 'build_ups'))) {
    if (!isNode(value)) continue;
    const [left, rightWall] = [areaOf('left wall'), areaOf('right wall')];
    const surface = typeof value.of === 'string' ? value.of : '';
    const area = number(value, 'area') ?? (surface === 'walls' ? left + rightWall : areaOf(surface));
    const layers = Array.isArray(value.layers) ? value.layers.filter(isNode) : [];
    const perArea = layers.map((layer) => {
      const density = materialNamed(String(layer.material))?.densityKgM3 ?? 0;
      const own = number(layer, 'areal_mass') ?? (number(layer, 'thickness') ?? 0) * density;
      return own * (number(layer, 'share') ?? 1);
    });
    const most = area * perArea.reduce((a, b) => a + b, 0);
    const lean = left + rightWall > 0 ? ((rightWall - left) / (left + rightWall)) * (width / 2) : 0;
    const middle: readonly [number, number, number] = [start + length / 2, 0, height / 2];
    const byHand: Readonly<Record<string, readonly [number, number, number]>> = {
      floor: [middle[0], 0, 0],
      ceiling: [middle[0], 0, height],
      walls: [middle[0], lean, middle[2]],
      'left wall': [middle[0], -width / 2, middle[2]],
      'right wall': [middle[0], width / 2, middle[2]],
      bulkhead: [start, 0, middle[2]],
      'rear doors': [start + length, 0, middle[2]],
    };
    const place = sub(value, 'at');
    const [x, y, zz] = Object.hasOwn(value, 'at')
      ? centre(bayBox, {}, place, false, false).centre
      : (byHand[surface] ?? middle);
    masses.push({ name, sort: 'equipment', most, x, y, z: zz });
  }

  // Fixtures, tanks and stores, each in or on something.
  const things = new Map<string, readonly [section: string, thing: Node]>();
  for (const section of ['fixtures', 'tanks', 'stores'])
    for (const [name, thing] of Object.entries(sub(plan, section)))
      if (isNode(thing)) things.set(name, [section, thing]);
  const boxOf = (name: string): ReturnType<typeof centre> => {
    const [, thing] = things.get(name) ?? ['', {}];
    const host = thing.in ?? thing.on;
    const space = typeof host === 'string' && host !== 'floor' ? boxOf(host).box : bayBox;
    return centre(
      space,
      sub(thing, 'size'),
      sub(thing, 'at'),
      thing.on !== undefined && thing.on !== 'floor',
      thing.on === 'floor',
    );
  };
  for (const [name, [section, thing]] of things) {
    const [x, y, zz] = boxOf(name).centre;
    const add = (rest: Pick<Mass, 'most'> & Partial<Mass>) =>
      masses.push({ name, sort: 'equipment', x, y, z: zz, ...rest });
    if (section === 'fixtures') {
      const size = sub(thing, 'size');
      const solid = ['length', 'width', 'height'].reduce((v, key) => v * (number(size, key) ?? 0), 1);
      const density = materialNamed(String(thing.material))?.densityKgM3 ?? 0;
      add({
        most:
          number(thing, 'mass') ??
          (number(thing, 'each') ?? 0) * (number(thing, 'count') ?? 0) + density * solid,
      });
    } else if (section === 'tanks') {
      const contents = fluidNames.find((fluid) => fluid === thing.contents) ?? 'fresh';
      const holds = String(thing.holds).endsWith('L')
        ? at(thing, 'holds') * fluids[contents].densityKgM3
        : at(thing, 'holds');
      if (number(thing, 'mass') !== undefined) add({ most: at(thing, 'mass') });
      add({ most: holds, least: 0, water: contents === 'fresh' || contents === 'waste' });
    } else {
      add({ most: at(thing, 'full'), least: number(thing, 'empty') ?? 0, store: true });
    }
  }
  if (!Object.hasOwn(plan, 'stores'))
    masses.push({
      name: 'personal effects',
      sort: 'allowance',
      least: 0,
      most: 10 * (names.length + (number(van, 'overall_length') ?? 6)),
      store: true,
      x: start + length / 2,
      y: 0,
      z: height / 2,
    });

  const holding = (contents: string) =>
    [...things].reduce((sum, [name, [, thing]]) => {
      const mass = masses.find((each) => each.name === name && each.water);
      return thing.contents === contents && mass ? sum + mass.most : sum;
    }, 0);
  return {
    masses,
    waterKg: holding('fresh') > 0 ? holding('fresh') : holding('waste'),
    wheelbase,
    frontTrack,
    rearTrack,
    floor,
    maxMass: at(van, 'max_mass'),
  };
}

function along(
  space: BoxOf,
  axis: 0 | 1,
  size: number | undefined,
  place: Node,
  low: string,
  high: string,
): number {
  const half = (size ?? 0) / 2;
  const [start, extent] = [space.low[axis], space.extent[axis]];
  const fromLow = number(place, low);
  const fromHigh = number(place, high);
  if (fromLow !== undefined) return start + fromLow + half;
  if (fromHigh !== undefined && extent !== undefined) return start + extent - fromHigh - half;
  return start + (extent ?? 0) / 2;
}

/** Where a thing's centre is, and the box that others find when they stand in it. */
function centre(
  space: BoxOf,
  size: Node,
  place: Node,
  onTop: boolean,
  onFloor: boolean,
): { readonly centre: readonly [number, number, number]; readonly box: BoxOf } {
  const [length, width, height] = [number(size, 'length'), number(size, 'width'), number(size, 'height')];
  const x = along(space, 0, length, place, 'from_front', 'from_rear');
  const y = along(space, 1, width, place, 'from_left', 'from_right');
  const base = space.low[2] + (onTop ? (space.extent[2] ?? 0) : 0);
  const above = number(place, 'above_floor');
  const floating = above === undefined && !onTop && !onFloor && height === undefined;
  const bottom = floating ? base + (space.extent[2] ?? 0) / 2 : base + (above ?? 0);
  return {
    centre: [x, y, bottom + (height ?? 0) / 2],
    box: {
      low: [x - (length ?? 0) / 2, y - (width ?? 0) / 2, bottom],
      extent: [length, width, height],
    },
  };
}

/** The figures that limits are for, in one load state. */
export interface Figures {
  readonly total: number;
  readonly withoutStores: number;
  readonly front: number;
  readonly rear: number;
  /** Part of the front axle's load on its right wheel, and of the rear axle's. */
  readonly frontRight: number;
  readonly rearRight: number;
  /** Right less left, as a part of the whole. */
  readonly lean: number;
  readonly sideways: number;
  readonly heightAboveGround: number;
  /** NaN where there is no equipment aboard. */
  readonly equipment: number;
}

/** What a load state comes to. A mass that the state does not name is at its least. */
export function figures(model: Model, fill: Fill): Figures {
  const sum = (part: (mass: Mass) => number) =>
    model.masses.reduce((all, mass) => {
      const kg = mass.least === undefined ? mass.most : (fill.get(mass.name) ?? mass.least);
      return all + kg * part(mass);
    }, 0);
  const onRear = ({ x }: Mass) => x / model.wheelbase;
  const onRight = ({ y }: Mass, track: number) => 0.5 + y / track;
  const total = sum(() => 1);
  const rear = sum(onRear);
  const front = total - rear;
  const frontRight = sum((mass) => (1 - onRear(mass)) * onRight(mass, model.frontTrack));
  const rearRight = sum((mass) => onRear(mass) * onRight(mass, model.rearTrack));
  const isEquipment = ({ sort }: Mass) => (sort === 'equipment' ? 1 : 0);
  const equipmentKg = sum(isEquipment);
  return {
    total,
    withoutStores: sum(({ store }) => (store ? 0 : 1)),
    front,
    rear,
    frontRight: frontRight / front,
    rearRight: rearRight / rear,
    lean: (2 * (frontRight + rearRight) - total) / total,
    sideways: sum(({ y }) => y) / total,
    heightAboveGround: sum(({ z }) => z + model.floor) / total,
    equipment: equipmentKg > 0 ? sum((mass) => isEquipment(mass) * mass.x) / equipmentKg : Number.NaN,
  };
}

/**
 * Every corner of what the plan allows: each variable mass at its least or its most, and, where the water would be more
 * than there is, one tank with what is left of it.
 */
export function corners(model: Model): Fill[] {
  const variable = model.masses.flatMap(({ name, least, most, water }) =>
    least === undefined ? [] : [{ name, least, most, water: water === true }],
  );
  const found: Fill[] = [];
  const go = (index: number, fill: readonly (readonly [string, number])[], waterKg: number) => {
    const mass = variable[index];
    if (!mass) {
      found.push(new Map(fill));
      return;
    }
    const { name, least, most, water } = mass;
    go(index + 1, [...fill, [name, least]], waterKg);
    if (most === least) return;
    if (!water || most <= waterKg) go(index + 1, [...fill, [name, most]], water ? waterKg - most : waterKg);
    // The tank that gets the rest: whatever comes after it in this corner is full or empty within nothing.
    if (water) partial(index, fill, waterKg);
  };
  const partial = (index: number, fill: readonly (readonly [string, number])[], waterKg: number) => {
    const tank = variable[index];
    if (!tank) return;
    const later = (next: number, rest: readonly (readonly [string, number])[], leftKg: number) => {
      const mass = variable[next];
      if (!mass) {
        if (leftKg > 0 && leftKg < tank.most) found.push(new Map([...fill, [tank.name, leftKg], ...rest]));
        return;
      }
      later(next + 1, [...rest, [mass.name, mass.least]], leftKg);
      if (mass.most > mass.least)
        later(next + 1, [...rest, [mass.name, mass.most]], mass.water ? leftKg - mass.most : leftKg);
    };
    later(index + 1, [], waterKg);
  };
  go(0, [], model.waterKg);
  return found;
}

/** A state somewhere inside what the plan allows, from numbers between 0 and 1. */
export function someState(model: Model, parts: readonly number[]): Fill {
  const variable = model.masses.filter(({ least }) => least !== undefined);
  const wanted = variable.map(({ name, least = 0, most, water }, index) => ({
    name,
    kg: least + (parts[index % parts.length] ?? 0) * (most - least),
    water,
  }));
  const water = wanted.reduce((sum, each) => sum + (each.water ? each.kg : 0), 0);
  const scale = water > model.waterKg ? model.waterKg / water : 1;
  return new Map(wanted.map((each) => [each.name, each.water ? each.kg * scale : each.kg]));
}
