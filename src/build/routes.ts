import type { PlaceInVan } from '../calc/space/route.ts';
import type { Assumption, PlanPath } from '../engine/finding.ts';
import { share } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { chaseRuns, Plan } from '../plan/schema.ts';
import type { Body } from './body.ts';
import type { Carried, Drilled } from './layout.ts';
import type { LoadBay, Placed } from './placing.ts';
import { unplannedShare, unplannedWay, usualSlack, usualSlackShare } from './routes-allowances.ts';
import { bodyOfRun, centroidOf } from './routes-mass.ts';
import { type Network, type NoWay, networkOf } from './routes-network.ts';
import { placeOfPoint, type Spot, type Terminal, terminalsOf } from './routes-terminals.ts';
import type { Routing } from './routing.ts';

/*
 * Cables, pipes and ducts: the ways they take and what they weigh. Places are in the load bay's own axes, as in the
 * layout; metres.
 */

export interface RoutePoint {
  readonly name: string;
  readonly path: PlanPath;
  /** Unknown without a load bay. */
  readonly place?: PlaceInVan;
}

export interface RoutedChase {
  readonly id: string;
  readonly path: PlanPath;
  readonly from: string;
  readonly to: string;
  readonly ends?: readonly [PlaceInVan, PlaceInVan];
  /** What may run through it. */
  readonly carries: readonly Carried[];
  readonly runs?: (typeof chaseRuns)[number];
  readonly boreM?: number;
  /** Undefined where the plan does not say. */
  readonly through?: readonly Drilled[];
  /** As typed, or along the van, across it and up or down between its points. */
  readonly lengthM?: number;
}

/** A piece of a run's way. */
export interface Leg {
  /** A spur joins a thing to its point, drop included; `straight` is the whole of a way that nobody has planned. */
  readonly kind: 'spur' | 'chase' | 'straight';
  /** The chase, or the thing that a spur leads to. */
  readonly id: string;
  readonly lengthM: number;
  /** How much of a spur goes up or down. */
  readonly dropM: number;
  readonly ends: readonly [PlaceInVan, PlaceInVan];
}

/**
 * `chases`: through them, from point to point. `straight`: the plan has no chases. `typed`: only the length is known.
 * `none`: the chases do not lead there. `unplaced`: nobody knows where it begins or ends.
 */
export type Way = 'chases' | 'straight' | 'typed' | 'none' | 'unplaced';

export interface RoutedRun {
  readonly name: string;
  readonly path: PlanPath;
  readonly carries: Carried;
  readonly from: string;
  readonly to: string;
  /** How many lie side by side. */
  readonly count: number;
  readonly diameterM?: number;
  readonly way: Way;
  /** Of one of them, slack included. */
  readonly lengthM?: number;
  readonly lengthIsTyped: boolean;
  /** Without slack. */
  readonly legs: readonly Leg[];
  /** The ids of the chases that it passes, in their order. */
  readonly chases: readonly string[];
  /** The part of the way that is added for slack. */
  readonly slackShare: number;
  /** Of all of them. */
  readonly massKg?: number;
  readonly centroid?: PlaceInVan;
  /** Keys that would say where it begins and ends. */
  readonly missing: readonly string[];
  readonly noWay?: NoWay;
  /** Between its two ends along the van, across it and up or down, where both are known. */
  readonly apartM?: number;
}

export interface Routes {
  readonly points: readonly RoutePoint[];
  readonly chases: readonly RoutedChase[];
  readonly runs: readonly RoutedRun[];
}

interface Routed {
  readonly routes: Routes;
  readonly bodies: readonly Body[];
  readonly assumptions: readonly Assumption[];
}

type Given = NonNullable<Plan['routes']>;
type GivenRun = NonNullable<Given['runs']>[string];

/** Finds the way, the length and the mass of everything that runs. `placed` is where the things of the plan were put. */
export function routesOf(
  plan: Plan,
  given: Given,
  bay: LoadBay | undefined,
  placed: ReadonlyMap<string, Placed>,
  routing: Routing,
): Routed {
  const spots = new Map(
    Object.entries(given.points ?? {}).flatMap(([name, point]) =>
      bay ? [[name, placeOfPoint(name, point.at, bay)] as const] : [],
    ),
  );
  const chases = Object.entries(given.chases ?? {}).map(([id, chase]): RoutedChase => {
    const [from = '', to = ''] = chase.between;
    const ends = [spots.get(from), spots.get(to)] as const;
    const [a, b] = ends;
    const lengthM = chase.length?.value ?? (a && b && routing.rectilinearDistance(a, b));
    return {
      id,
      path: ['routes', 'chases', id],
      from,
      to,
      ...(a && b && { ends: [a, b] }),
      carries: chase.carries,
      ...(chase.runs && { runs: chase.runs }),
      ...(chase.bore && { boreM: chase.bore.value }),
      ...(chase.through && { through: chase.through }),
      ...(lengthM !== undefined && { lengthM }),
    };
  });
  const router: Router = {
    network: networkOf(spots, chases, routing),
    terminalOf: terminalsOf(plan, placed, spots, bay),
    spots,
    chases: new Map(chases.map((chase) => [chase.id, chase])),
    routing,
    slackShare: given.slack?.value ?? usualSlackShare,
    unplannedShare: Math.max(unplannedShare, given.slack?.value ?? 0),
  };
  const entries = Object.entries(given.runs ?? {}).map(([name, run]) => {
    const tracked = trackOf(router, name, run);
    return { routed: tracked.routed, body: bodyOfRun(name, run, tracked, bay) };
  });
  const runs = entries.map(({ routed, body }) =>
    body === undefined ? routed : { ...routed, massKg: body.massKg },
  );
  return {
    routes: {
      points: Object.keys(given.points ?? {}).map((name) => {
        const place = spots.get(name);
        return { name, path: ['routes', 'points', name], ...(place && { place }) };
      }),
      chases,
      runs,
    },
    bodies: entries.flatMap(({ body }) => (body ? [body] : [])),
    assumptions: assumptionsOf(runs, router, given),
  };
}

interface Router {
  /** Undefined where the plan has no chases. */
  readonly network: Network | undefined;
  readonly terminalOf: (name: string) => Terminal;
  readonly spots: ReadonlyMap<string, Spot>;
  readonly chases: ReadonlyMap<string, RoutedChase>;
  readonly routing: Routing;
  readonly slackShare: number;
  readonly unplannedShare: number;
}

/** A leg whose ends know their errors. */
export interface SpottedLeg extends Leg {
  readonly ends: readonly [Spot, Spot];
}

/** A run with its way, and with what its mass acts through. */
export interface Tracked {
  readonly routed: RoutedRun;
  readonly centroid: Spot | undefined;
}

function trackOf(router: Router, name: string, run: GivenRun): Tracked {
  const { network, terminalOf } = router;
  const from = terminalOf(run.from);
  const to = terminalOf(run.to);
  const found = network
    ? throughChases(router, network, run, from, to)
    : withoutChases(router, run, from, to);
  const { legs, way } = found;
  const known = way === 'chases' || way === 'straight';
  const added = way === 'straight' ? router.unplannedShare : router.slackShare;
  const wayM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const typedM = run.length?.value;
  const lengthM = typedM ?? (known && found.missing.length === 0 ? wayM * (1 + added) : undefined);
  const apartM = from.spot && to.spot && router.routing.rectilinearDistance(from.spot, to.spot);
  const centroid = centroidOf(legs, [from.spot, to.spot]);
  return {
    centroid,
    routed: {
      name,
      path: ['routes', 'runs', name],
      carries: run.carries,
      from: run.from,
      to: run.to,
      count: Math.max(1, Math.round(run.count?.value ?? 1)),
      ...(run.diameter && { diameterM: run.diameter.value }),
      way,
      ...(lengthM !== undefined && { lengthM }),
      lengthIsTyped: typedM !== undefined,
      legs,
      chases: legs.flatMap(({ kind, id }) => (kind === 'chase' ? [id] : [])),
      slackShare: typedM === undefined ? added : 0,
      ...(centroid && { centroid }),
      missing: found.missing,
      ...(found.noWay && { noWay: found.noWay }),
      ...(apartM !== undefined && { apartM }),
    },
  };
}

interface Found {
  readonly way: Way;
  readonly legs: readonly SpottedLeg[];
  readonly missing: readonly string[];
  readonly noWay?: NoWay;
}

function throughChases(router: Router, network: Network, run: GivenRun, from: Terminal, to: Terminal): Found {
  const missing = [...new Set([...from.missing, ...to.missing])];
  const start = joinOf(router, network, run, from, run.from_point);
  const end = joinOf(router, network, run, to, run.to_point);
  if (start === undefined || end === undefined)
    return { way: run.length ? 'typed' : 'unplaced', legs: [], missing };
  const route = network.way(run.carries, start, end);
  if (!route) return { way: 'none', legs: [], missing, noWay: network.noWay(run.carries, start, end) };
  let at = start;
  const legs: SpottedLeg[] = spurOf(router, from, start);
  for (const id of route) {
    const chase = router.chases.get(id);
    const next = chase?.from === at ? chase.to : (chase?.from ?? at);
    const [a, b] = [router.spots.get(at), router.spots.get(next)];
    if (chase && a && b)
      legs.push({ kind: 'chase', id, lengthM: chase.lengthM ?? 0, dropM: 0, ends: [a, b] });
    at = next;
  }
  return { way: 'chases', legs: [...legs, ...spurOf(router, to, end)], missing };
}

/** The point at which an end joins the chases: itself, the one that the plan names, or the nearest permitted one. */
function joinOf(
  { spots }: Router,
  network: Network,
  { carries }: GivenRun,
  { point, spot }: Terminal,
  named: string | undefined,
): string | undefined {
  if (point !== undefined) return spots.has(point) ? point : undefined;
  if (named !== undefined && spots.has(named)) return named;
  return spot && network.nearest(carries, spot);
}

function spurOf({ routing, spots }: Router, { name, point, spot }: Terminal, join: string): SpottedLeg[] {
  const joined = spots.get(join);
  if (point !== undefined || !spot || !joined) return [];
  const lengthM = routing.rectilinearDistance(spot, joined);
  return [{ kind: 'spur', id: name, lengthM, dropM: Math.abs(joined.zM - spot.zM), ends: [spot, joined] }];
}

function withoutChases({ routing }: Router, run: GivenRun, from: Terminal, to: Terminal): Found {
  const missing = [...new Set([...from.missing, ...to.missing])];
  if (!from.spot || !to.spot) return { way: run.length ? 'typed' : 'unplaced', legs: [], missing };
  const ends = [from.spot, to.spot] as const;
  const lengthM = routing.rectilinearDistance(...ends);
  const dropM = Math.abs(to.spot.zM - from.spot.zM);
  return { way: 'straight', legs: [{ kind: 'straight', id: to.name, lengthM, dropM, ends }], missing };
}

function assumptionsOf(runs: readonly RoutedRun[], router: Router, given: Given): readonly Assumption[] {
  const workedOut = runs.filter(({ lengthM, lengthIsTyped }) => lengthM !== undefined && !lengthIsTyped);
  const planned = workedOut.filter(({ way }) => way === 'chases');
  const straight = workedOut.filter(({ way }) => way === 'straight');
  const toThings = workedOut.some(({ from, to }) => !router.spots.has(from) || !router.spots.has(to));
  return [
    ...(planned.length > 0 && !given.slack
      ? [
          {
            path: ['routes'],
            text: say`${share(usualSlackShare)} slack on every way through the chases`,
            source: usualSlack,
          },
        ]
      : []),
    ...(straight.length > 0
      ? [
          {
            path: ['routes', 'runs'],
            text: say`without chases, ${straight.map(({ name }) => name).join(', ')}: the way along the van, across it and up or down, and ${share(router.unplannedShare)} more`,
            source: unplannedWay,
          },
        ]
      : []),
    ...(toThings
      ? [{ path: ['routes', 'runs'], text: say`a run begins and ends at the middle of a thing's box` }]
      : []),
    ...runs
      .filter(({ lengthIsTyped }) => lengthIsTyped)
      .map(({ name, path }) => ({
        path: [...path, 'length'],
        text: say`${name}: the length is taken as it is typed, without slack`,
      })),
  ];
}
