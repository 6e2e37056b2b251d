import { boundsOf, type Outline, rectangle } from '../calc/space/plane.ts';
import type { Prism } from '../calc/space/prism.ts';
import type { Shell } from '../calc/space/shell.ts';
import { placedThings, type Standing } from '../plan/cross-check.ts';
import type { Place, Plan } from '../plan/schema.ts';
import type {
  Box3,
  FixedPart,
  HeatClearance,
  Layout,
  Rib,
  ShellOpening,
  Solid,
  Unplaced,
  Whereabouts,
} from './layout.ts';
import { type LoadBay, type Placed, placeIn, spaceOfBay } from './placing.ts';
import { shapeOf } from './shapes.ts';
import { archOutlines, stripBefore, sweepsOf, swivelsOf, useSpacesOf } from './sweeps.ts';

/** Lays out the room that everything takes; `placed` is where the things of the plan were put. */
export function layOut(plan: Plan, bay: LoadBay, placed: ReadonlyMap<string, Placed>): Layout {
  const things = new Map(placedThings(plan).map((entry) => [entry.name, entry]));
  const hostsOf = hostChains(things);
  const solids: Solid[] = [];
  const unplaced: Unplaced[] = [];
  for (const { section, name, thing } of things.values()) {
    if (thing.solid === false) continue;
    const path = [section, name];
    const found = placed.get(name);
    const hosts = hostsOf(name);
    const vagueHost = hosts.find((host) => (placed.get(host)?.missing ?? []).length > 0);
    const missing = [...(found?.missing ?? []), ...(vagueHost === undefined ? [] : [`${vagueHost}.at`])];
    const solid = found && missing.length === 0 ? solidOf(thing, found, bay) : undefined;
    if (!solid || isFarOff(solid.box)) {
      unplaced.push({
        name,
        path,
        missing: solid ? ['at'] : missing,
        ...(thing.in !== undefined && { inside: thing.in }),
        ...(thing.on !== undefined && things.has(thing.on) && { on: thing.on }),
      });
      continue;
    }
    const fixture = section === 'fixtures' ? plan.fixtures?.[name] : undefined;
    solids.push({
      name,
      path,
      ...solid,
      hosts,
      isInside: thing.in !== undefined,
      leans: thing.leans === true,
      ...(fixture?.is && { use: fixture.is }),
      ...(thing.combustible !== undefined && { combustible: thing.combustible }),
      ...(fixture?.material !== undefined && { material: fixture.material }),
    });
  }
  const { fixedParts, unplacedParts } = partsOfVan(plan, bay);
  const openings = Object.entries(plan.van.openings ?? {}).map(([name, opening]) =>
    shellOpening(name, opening, bay),
  );
  const bySolid = <T>(one: (solid: Solid, fixture: Fixture) => readonly T[]): T[] =>
    solids.flatMap((solid) => {
      const fixture = solid.path[0] === 'fixtures' ? plan.fixtures?.[solid.name] : undefined;
      return fixture ? one(solid, fixture) : [];
    });
  return {
    shell: shellOf(plan, bay),
    widthM: bay.widthM,
    heightM: bay.heightM,
    solids,
    unplaced,
    fixedParts,
    unplacedParts,
    openings: openings.filter((opening) => 'box' in opening),
    unplacedOpenings: openings.filter((opening) => 'missing' in opening),
    ribs: (plan.van.load_bay?.ribs ?? []).map(
      (rib, index): Rib => ({
        path: ['van', 'load_bay', 'ribs', index],
        surface: rib.in,
        fromM: rib.from_front.value,
        toM: rib.from_front.value + rib.width.value,
      }),
    ),
    sweeps: [
      ...bySolid(({ name, box, path }, { opens }) => sweepsOf(name, opens, box, path)),
      ...swivelsOf(plan.people?.seats ?? {}, (at) => {
        const { position } = placeIn(spaceOfBay(bay), {
          name: '',
          source: '',
          size: undefined,
          at,
          onTop: false,
        });
        return { xM: position.x.valueM - bay.behindFrontAxleM, yM: position.y.valueM };
      }),
    ],
    useSpaces: bySolid(({ name, box, path }, fixture) => useSpacesOf(name, fixture.needs_space, box, path)),
    stowed: Object.entries(plan.fixtures ?? {}).flatMap(([name, { stows }]) =>
      Object.entries(stows ?? {}).map(([stowed, { size, place, upright }]) => ({
        name: stowed,
        path: ['fixtures', name, 'stows', stowed],
        of: name,
        place: place ?? 'inside',
        size: { lengthM: size.length.value, widthM: size.width.value, heightM: size.height.value },
        upright: upright === true,
      })),
    ),
    fixings: [...things.values()].flatMap(({ section, name, thing }) =>
      thing.fixings
        ? [
            {
              of: name,
              path: [section, name, 'fixings'],
              count: thing.fixings.count.value,
              eachHoldsKg: thing.fixings.each.value,
            },
          ]
        : [],
    ),
    heatClearances: bySolid(({ name, box, prism, path }, { heat_clearance: clearance }) =>
      heatZones(name, clearance, box, prism, [...path, 'heat_clearance']),
    ),
    services: [...things.values()].flatMap(({ section, name, thing }) =>
      thing.service_from === undefined
        ? []
        : [{ of: name, path: [section, name, 'service_from'], from: thing.service_from }],
    ),
    staturesM: (plan.people?.sleepers ?? []).flatMap(({ stature }) => (stature ? [stature.value] : [])),
    sleepers: plan.people?.sleepers?.length ?? 0,
  };
}

type Fixture = NonNullable<Plan['fixtures']>[string];
type Things = ReadonlyMap<string, ReturnType<typeof placedThings>[number]>;

/** What each thing stands in or on, from the nearest on. The plan's checks refuse circles. */
function hostChains(things: Things): (name: string) => readonly string[] {
  const known = new Map<string, readonly string[]>();
  const hostOf = (name: string): string | undefined => {
    const thing = things.get(name)?.thing;
    const host = thing?.in ?? thing?.on;
    return host !== undefined && things.has(host) ? host : undefined;
  };
  return (name) => {
    const trail: string[] = [];
    let at: string | undefined = name;
    while (at !== undefined && !known.has(at)) {
      trail.push(at);
      at = hostOf(at);
    }
    for (const each of trail.reverse()) {
      const host = hostOf(each);
      known.set(each, host === undefined ? [] : [host, ...(known.get(host) ?? [])]);
    }
    return known.get(name) ?? [];
  };
}

const shellOf = ({ van: { load_bay: given } }: Plan, bay: LoadBay): Shell => ({
  lengthM: bay.lengthM,
  centreYM: 0,
  profile: given?.profile?.map(({ above_floor, width }) => ({
    heightM: above_floor.value,
    widthM: width.value,
  })) ?? [{ heightM: 0, widthM: bay.widthM }],
  heights: given?.heights?.map(({ from_front, height }) => ({
    fromFrontM: from_front.value,
    heightM: height.value,
  })) ?? [{ fromFrontM: 0, heightM: bay.heightM }],
});

const shifted = (outline: Outline, byXM: number, byYM: number): Outline =>
  outline.map(({ xM, yM }) => ({ xM: xM + byXM, yM: yM + byYM }));

/** The room of something in bay axes, or undefined where its sizes are not all known. */
function roomOf(thing: Standing, { space }: Placed, bay: LoadBay): { box: Box3; prism: Prism } | undefined {
  const { outline } = shapeOf(thing);
  const heightM = space.z.lengthM;
  if (!outline || heightM === undefined) return undefined;
  const bottomM = space.z.startM;
  const topM = bottomM + heightM;
  const placedOutline = shifted(outline, space.x.startM - bay.behindFrontAxleM, space.y.startM);
  return {
    box: { ...boundsOf(placedOutline), bottomM, topM },
    prism: { outline: placedOutline, bottomM, topM },
  };
}

function solidOf(
  thing: Standing,
  placed: Placed,
  bay: LoadBay,
): Pick<Solid, 'box' | 'prism' | 'whereabouts'> | undefined {
  const room = roomOf(thing, placed, bay);
  return room && { ...room, whereabouts: whereaboutsOf(room.box, bay) };
}

/** Geometry is exact up to 40 m from the load bay's front; a chain of hosts, each with a slip in it, leads farther. */
const farOffM = 35;
const isFarOff = (box: Box3): boolean => Object.values(box).some((edgeM) => Math.abs(edgeM) > farOffM);

/** Rounding of sums of lengths; a thing that stands at the edge is on its far side. */
const slackM = 1e-6;

function whereaboutsOf(box: Box3, bay: LoadBay): Whereabouts {
  if (box.topM <= slackM) return 'under the floor';
  if (box.mostXM <= slackM) return 'in the cab';
  if (box.leastXM >= bay.lengthM - slackM) return 'behind the doors';
  return box.bottomM >= bay.heightM - slackM ? 'on the roof' : 'inside';
}

function partsOfVan(
  { van }: Plan,
  bay: LoadBay,
): { readonly fixedParts: readonly FixedPart[]; readonly unplacedParts: readonly Unplaced[] } {
  const fixedParts: FixedPart[] = [];
  const unplacedParts: Unplaced[] = [];
  const arches = van.wheel_arches;
  const archPath = ['van', 'wheel_arches'];
  if (arches?.height) {
    const { from_front: start, length, width, height } = arches;
    const [left, right] = archOutlines(start.value, length.value, width.value, bay.widthM);
    const between = { bottomM: 0, topM: height.value };
    if (isFarOff({ ...boundsOf([...left, ...right]), ...between }))
      unplacedParts.push({ name: 'wheel arches', path: archPath, missing: ['from_front'] });
    else
      fixedParts.push(
        {
          name: 'left wheel arch',
          path: archPath,
          prism: { outline: left, ...between },
          walkable: false,
        },
        {
          name: 'right wheel arch',
          path: archPath,
          prism: { outline: right, ...between },
          walkable: false,
        },
      );
  } else if (arches) unplacedParts.push({ name: 'wheel arches', path: archPath, missing: ['height'] });
  const thickness = van.load_bay?.rear_door_thickness?.value;
  if (thickness !== undefined)
    fixedParts.push({
      name: 'rear doors',
      path: ['van', 'load_bay', 'rear_door_thickness'],
      prism: {
        outline: rectangle(bay.lengthM - thickness, -bay.widthM / 2, thickness, bay.widthM),
        bottomM: 0,
        topM: bay.heightM,
      },
      walkable: false,
    });
  for (const [name, { size, at, walkable }] of Object.entries(van.obstructions ?? {})) {
    const path = ['van', 'obstructions', name];
    const found = placeIn(spaceOfBay(bay), { name, source: '', size, at, onTop: false });
    const room = found.missing.length === 0 ? roomOf({ size }, found, bay) : undefined;
    if (room && !isFarOff(room.box))
      fixedParts.push({ name, path, prism: room.prism, walkable: walkable === true });
    else unplacedParts.push({ name, path, missing: room ? ['at'] : found.missing });
  }
  return { fixedParts, unplacedParts };
}

type Opening = NonNullable<Plan['van']['openings']>[string];

function shellOpening(name: string, opening: Opening, bay: LoadBay): ShellOpening | Unplaced {
  const path = ['van', 'openings', name];
  const surface = opening.in;
  const lies = surface === 'floor' || surface === 'ceiling';
  const across = surface === 'bulkhead' || surface === 'rear doors';
  const spans = lies ? ['length', 'width'] : across ? ['width', 'height'] : ['length', 'height'];
  const missing = [
    ...(opening.kind ? [] : ['kind']),
    ...(['length', 'width', 'height'] as const).filter((side) => spans.includes(side) && !opening[side]),
    ...missingOfPlace(opening.at, { lengthways: !across, sideways: lies || across }),
    // A door begins at the floor.
    ...(lies || opening.at?.above_floor || opening.kind === 'door' ? [] : ['at.above_floor']),
  ];
  const sides = [opening.length, opening.width, opening.height].flatMap((side) => (side ? [side.value] : []));
  const [first = 0, second = 0] = sides;
  const box = openingBox(opening, bay);
  if (missing.length > 0 || !box) return { name, path, missing };
  if (isFarOff(box)) return { name, path, missing: ['at'] };
  return {
    name,
    path,
    surface,
    ...(opening.kind && { kind: opening.kind }),
    escape: opening.escape === true,
    box,
    sidesM: [Math.max(first, second), Math.min(first, second)],
  };
}

const missingOfPlace = (
  at: Place | undefined,
  { lengthways, sideways }: { readonly lengthways: boolean; readonly sideways: boolean },
): string[] => [
  ...(!lengthways || at?.from_front || at?.from_rear ? [] : ['at.from_front']),
  ...(!sideways || at?.from_left || at?.from_right || at?.centred ? [] : ['at.from_left']),
];

/** Where an opening is: along its surface as the plan places it, and flat on the surface. */
function openingBox({ in: surface, length, width, height, at }: Opening, bay: LoadBay): Box3 | undefined {
  const { space } = placeIn(spaceOfBay(bay), {
    name: '',
    source: '',
    size: { length, width, height },
    at,
    onTop: false,
    onFloor: at?.above_floor === undefined,
  });
  const leastXM = space.x.startM - bay.behindFrontAxleM;
  const halfM = bay.widthM / 2;
  const box: Box3 = {
    leastXM,
    mostXM: leastXM + (length?.value ?? 0),
    leastYM: space.y.startM,
    mostYM: space.y.startM + (width?.value ?? 0),
    bottomM: space.z.startM,
    topM: space.z.startM + (height?.value ?? 0),
  };
  if (surface === 'floor' || surface === 'ceiling') {
    const zM = surface === 'floor' ? 0 : bay.heightM;
    return length && width ? { ...box, bottomM: zM, topM: zM } : undefined;
  }
  if (surface === 'left wall' || surface === 'right wall') {
    const yM = surface === 'left wall' ? -halfM : halfM;
    return length && height ? { ...box, leastYM: yM, mostYM: yM } : undefined;
  }
  const xM = surface === 'bulkhead' ? 0 : bay.lengthM;
  return width && height ? { ...box, leastXM: xM, mostXM: xM } : undefined;
}

function heatZones(
  name: string,
  clearance: Fixture['heat_clearance'],
  box: Box3,
  prism: Prism,
  path: readonly (string | number)[],
): HeatClearance[] {
  return (['front', 'rear', 'left', 'right', 'above'] as const).flatMap((side) => {
    const depthM = clearance?.[side]?.value;
    if (depthM === undefined) return [];
    const zone =
      side === 'above'
        ? { outline: prism.outline, bottomM: box.topM, topM: box.topM + depthM }
        : { outline: stripBefore(box, side, depthM), bottomM: box.bottomM, topM: box.topM };
    return { of: name, path: [...path, side], side, depthM, prism: zone };
  });
}
