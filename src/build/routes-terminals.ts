import type { PlaceInVan } from '../calc/space/route.ts';
import { placedThings } from '../plan/cross-check.ts';
import type { Place, Plan } from '../plan/schema.ts';
import type { ErrorTerm } from './body.ts';
import { type LoadBay, type Placed, placeIn, spaceOfBay } from './placing.ts';

/** A place in the load bay's own axes, with the errors of its coordinates. */
export interface Spot extends PlaceInVan {
  readonly errors: Readonly<Record<'x' | 'y' | 'z', readonly ErrorTerm[]>>;
}

/** Where a run begins or ends. */
export interface Terminal {
  readonly name: string;
  /** It is a point of the routes, and nothing leads from it to one. */
  readonly point?: string;
  readonly spot?: Spot;
  /** Keys of the plan that would say where it is; empty where that is known. */
  readonly missing: readonly string[];
}

const spotOf = ({ position, space }: Placed, bay: LoadBay): Spot => ({
  xM: space.x.startM + (space.x.lengthM ?? 0) / 2 - bay.behindFrontAxleM,
  yM: space.y.startM + (space.y.lengthM ?? 0) / 2,
  zM: space.z.startM + (space.z.lengthM ?? 0) / 2,
  errors: { x: position.x.errors, y: position.y.errors, z: position.z.errors },
});

export const placeOfPoint = (name: string, at: Place, bay: LoadBay): Spot =>
  spotOf(
    placeIn(spaceOfBay(bay), {
      name,
      source: `routes.points.${name}.at`,
      size: undefined,
      at,
      onTop: false,
      onFloor: at.above_floor === undefined,
    }),
    bay,
  );

type Things = ReadonlyMap<string, ReturnType<typeof placedThings>[number]>;

/**
 * Finds the ends of runs by their names: points of the routes, and things. The terminal of a thing is the middle of its
 * box, or the place given for a thing without a size: the plan knows nothing of where its terminals and unions sit.
 */
export function terminalsOf(
  plan: Plan,
  placed: ReadonlyMap<string, Placed>,
  points: ReadonlyMap<string, Spot>,
  bay: LoadBay | undefined,
): (name: string) => Terminal {
  const things: Things = new Map(placedThings(plan).map((entry) => [entry.name, entry]));
  const known = new Map<string, Terminal>();
  const find = (name: string): Terminal => {
    if (!bay) return { name, missing: ['van.load_bay'] };
    const found = placed.get(name);
    const spot = points.get(name);
    if (spot && !found) return { name, point: name, spot, missing: [] };
    const missing = placesMissing(name, things, placed);
    return found && missing.length === 0 ? { name, spot: spotOf(found, bay), missing } : { name, missing };
  };
  return (name) => {
    const terminal = known.get(name) ?? find(name);
    known.set(name, terminal);
    return terminal;
  };
}

/** What the plan lacks to say where a thing is: of itself, or of what it stands in or on. */
function placesMissing(name: string, things: Things, placed: ReadonlyMap<string, Placed>): string[] {
  const missing: string[] = [];
  const passed = new Set<string>();
  for (let at: string | undefined = name; at !== undefined && !passed.has(at); ) {
    passed.add(at);
    const entry = things.get(at);
    if (!entry) break;
    const { section, thing } = entry;
    const key = `${section}.${at}`;
    const hostName = thing.in ?? thing.on;
    const host = hostName === undefined ? undefined : things.get(hostName);
    const ofHost = (side: string) => (host ? [`${host.section}.${host.name}.size.${side}`] : []);
    const lacking = placed.get(at)?.missing ?? [];
    if (lacking.includes('at.from_front'))
      missing.push(...(thing.at?.from_rear ? ofHost('length') : [`${key}.at.from_front`]));
    if (lacking.includes('at.from_left'))
      missing.push(...(thing.at?.from_right ? ofHost('width') : [`${key}.at.from_left`]));
    if (thing.on !== undefined && host && placed.get(host.name)?.space.z.lengthM === undefined)
      missing.push(...ofHost('height'));
    if (!thing.at?.above_floor && thing.on === undefined && !thing.size?.height)
      missing.push(`${key}.at.above_floor`);
    at = host?.name;
  }
  return [...new Set(missing)];
}
