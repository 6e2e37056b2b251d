import { fluids } from '../catalogue/fluids.ts';
import { type Material, materialNamed } from '../catalogue/materials.ts';
import type { Assumption, PlanPath } from '../engine/finding.ts';
import { say } from '../engine/phrase.ts';
import { placedThings } from '../plan/cross-check.ts';
import type { Quantity } from '../plan/quantity.ts';
import type { Box, Plan } from '../plan/schema.ts';
import type { Body, ErrorTerm, Origin, Position, Variable } from './body.ts';
import { errorsOf } from './errors.ts';
import { type LoadBay, type Placed, placeIn, type Space, spaceOfBay } from './placing.ts';
import { type Shape, shapeOf } from './shapes.ts';

export interface Things {
  readonly bodies: readonly Body[];
  readonly spaces: ReadonlyMap<string, Space>;
  readonly placed: ReadonlyMap<string, Placed>;
  readonly assumptions: readonly Assumption[];
}

type Thing = ReturnType<typeof placedThings>[number];

/** Fixtures, stores and tanks, each placed after the thing it stands in or on. */
export function thingsOf(plan: Plan, bay: LoadBay | undefined): Things {
  const assumptions: Assumption[] = [];
  const things = new Map(placedThings(plan).map((thing) => [thing.name, thing]));
  const placed = bay ? placeAll(things, bay) : new Map<string, Placed>();
  for (const [name, { assumed }] of placed) {
    const section = things.get(name)?.section ?? 'fixtures';
    if (assumed.length > 0)
      assumptions.push({ path: [section, name], text: say`${name}: ${assumed.join('; ')}` });
  }
  const bodies = [...things.values()].flatMap((thing) => bodiesOf(plan, thing, placed.get(thing.name)));
  return {
    bodies,
    spaces: new Map([...placed].map(([name, { space }]) => [name, space])),
    placed,
    assumptions,
  };
}

function placeAll(things: ReadonlyMap<string, Thing>, bay: LoadBay): Map<string, Placed> {
  const placed = new Map<string, Placed>();
  const inBay = spaceOfBay(bay);
  // The plan's checks refuse circles; a chain of hosts is walked without recursion, however long it is.
  for (const first of things.values()) {
    const waiting: Thing[] = [];
    for (let next: Thing | undefined = first; next && !placed.has(next.name); next = hostOf(next, things)) {
      waiting.push(next);
    }
    for (const { name, section, thing } of waiting.reverse()) {
      const host = thing.in ?? thing.on;
      const space = host === undefined ? undefined : placed.get(host)?.space;
      const inBox = placeIn(space ?? inBay, {
        name,
        source: `${section}.${name}.at`,
        size: thing.size,
        at: thing.at,
        onTop: thing.on !== undefined && space !== undefined,
        onFloor: thing.on === 'floor',
      });
      placed.set(name, { ...inBox, position: centredIn(inBox.position, shapeOf(thing)) });
    }
  }
  return placed;
}

function hostOf({ thing }: Thing, things: ReadonlyMap<string, Thing>): Thing | undefined {
  const host = thing.in ?? thing.on;
  return host === undefined ? undefined : things.get(host);
}

/** A body that does not fill its box has its mass elsewhere than at the middle of the box. */
function centredIn(position: Position, { offCentre }: Shape): Position {
  if (offCentre === undefined) return position;
  const { x, y, z } = position;
  return {
    x: { ...x, valueM: x.valueM + offCentre.xM },
    y: { ...y, valueM: y.valueM + offCentre.yM },
    z,
  };
}

interface Weighed {
  readonly massKg: number;
  readonly errors: readonly ErrorTerm[];
  readonly origin: Origin;
}

function bodiesOf(plan: Plan, { section, name, thing }: Thing, placed: Placed | undefined): Body[] {
  const path = [section, name];
  const host = thing.in ?? (thing.on === 'floor' ? undefined : thing.on);
  const common = {
    label: name,
    path,
    ...(placed && { position: placed.position }),
    ...(host !== undefined && { host }),
  };
  const body = (sort: Body['sort'], { massKg, errors, origin }: Weighed, variable?: Variable): Body => ({
    ...common,
    sort,
    massKg,
    massErrors: errors,
    origin,
    ...(variable && { variable }),
  });
  if (section === 'fixtures') {
    const fixture = plan.fixtures?.[name];
    return fixture ? [body('fixture', massOfFixture(fixture, path))] : [];
  }
  if (section === 'stores') {
    const store = plan.stores?.[name];
    if (!store) return [];
    const weighed: Weighed = {
      massKg: store.full.value,
      errors: errorsOf(store.full, `${path.join('.')}.full`),
      origin: 'typed',
    };
    return [
      body('store', weighed, {
        group: 'stores',
        name,
        leastKg: store.empty?.value ?? 0,
        mostKg: store.full.value,
        countedIn: 'mass',
      }),
    ];
  }
  const tank = plan.tanks?.[name];
  if (!tank) return [];
  const shell = tank.mass ? [body('tank', typed(tank.mass, `${path.join('.')}.mass`))] : [];
  return [...shell, { ...contents(tank, path, body), path: [...path, 'holds'] }];
}

type Tank = NonNullable<Plan['tanks']>[string];

function contents(
  tank: Tank,
  path: PlanPath,
  body: (sort: Body['sort'], weighed: Weighed, variable: Variable) => Body,
): Body {
  const fluid = fluids[tank.contents];
  const source = `${path.join('.')}.holds`;
  const inLitres = tank.holds.kind === 'volume';
  const scale = inLitres ? fluid.densityKgM3 : 1;
  const massKg = tank.holds.value * scale;
  const bandKg = ((fluid.highKgM3 - fluid.lowKgM3) / 2) * tank.holds.value;
  const band = inLitres
    ? errorsOf({ value: 0, halfWidth: bandKg, shared: [] }, `fluid ${tank.contents}`)
    : [];
  const group =
    tank.contents === 'propane' || tank.contents === 'butane'
      ? 'gas'
      : isWater(tank.contents)
        ? tank.contents
        : 'fuel';
  return body(
    'contents',
    {
      massKg,
      errors: [...errorsOf(tank.holds, source, scale), ...band],
      origin: inLitres ? 'catalogue' : 'typed',
    },
    {
      group,
      name: String(path[1]),
      leastKg: 0,
      mostKg: massKg,
      countedIn: inLitres ? 'volume' : 'mass',
      ...(inLitres && { densityKgM3: fluid.densityKgM3 }),
    },
  );
}

const isWater = (contents: Tank['contents']): contents is 'fresh' | 'waste' =>
  contents === 'fresh' || contents === 'waste';

const typed = (quantity: Quantity, source: string): Weighed => ({
  massKg: quantity.value,
  errors: errorsOf(quantity, source),
  origin: 'typed',
});

function massOfFixture(fixture: NonNullable<Plan['fixtures']>[string], path: PlanPath): Weighed {
  const source = path.join('.');
  if (fixture.each && fixture.count) {
    const count = fixture.count.value;
    // Units off one shelf are wrong together: their tolerances add up rather than cancel out.
    return {
      massKg: count * fixture.each.value,
      errors: errorsOf(fixture.each, `${source}.each`, count),
      origin: 'computed',
    };
  }
  const material = fixture.material === undefined ? undefined : materialNamed(fixture.material);
  if (material && fixture.size) return solid(material, fixture.size, shapeOf(fixture).fillingOfBox, source);
  return fixture.mass ? typed(fixture.mass, `${source}.mass`) : { massKg: 0, errors: [], origin: 'assumed' };
}

function solid(
  material: Material,
  { length, width, height }: Box,
  fillingOfBox: number,
  source: string,
): Weighed {
  const volumeM3 = fillingOfBox * (length?.value ?? 0) * (width?.value ?? 0) * (height?.value ?? 0);
  const massKg = volumeM3 * material.densityKgM3;
  const sides = Object.entries({ lengthways: length, sideways: width, upwards: height });
  const errors = sides.flatMap(([key, side]) =>
    side && side.value > 0 ? errorsOf(side, `${source}.at.${key}.size`, massKg / side.value) : [],
  );
  return { massKg, errors: [...errors, ...densityErrors(material, volumeM3)], origin: 'computed' };
}

/** The catalogue's band of a density: one error for everything that is made of that material. */
export function densityErrors(material: Material, volumeM3: number): ErrorTerm[] {
  const halfWidth = ((material.highKgM3 - material.lowKgM3) / 2) * volumeM3;
  return errorsOf({ value: 0, halfWidth, shared: [] }, `material ${material.name}`);
}
