// Where on the plan a disc stands free and touches something.
import { type Region, ringsOf } from './clip.ts';
import { type Edge, pointToEdge, squaredDistance } from './distance.ts';
import { type EdgeGrid, edgeGrid } from './edge-grid.ts';
import {
  type Bounds,
  boundsNear,
  boundsOf,
  boundsOfEdge,
  edgesOf,
  isClockwise,
  type Outline,
  type Point,
  TOUCH_TOLERANCE_M,
  within,
} from './plane.ts';

/** The free floor: its rings, with the floor on their left; their edges; and whether a point lies in it. */
export interface FreeFloor {
  readonly rings: readonly Outline[];
  readonly grid: EdgeGrid;
  readonly has: (point: Point) => boolean;
}

export function freeFloor(free: Region): FreeFloor {
  const rings = ringsOf(free);
  const boxed = rings.map((ring) => ({ ring, bounds: boundsOf(ring) }));
  const has = (point: Point): boolean => {
    const near = boxed.filter(({ bounds }) => boundsNear(bounds, boundsOfEdge(point, point), 0));
    return within(
      point,
      near.map(({ ring }) => ring),
    );
  };
  return { rings, grid: edgeGrid(rings), has };
}

/** A disc may stand this much into what it touches: a way that is exactly as wide as the disc lets it through. */
const SLACK_M = 0.00005;

/** Chords about corners stay this near to the arc. */
const SAGITTA_M = 0.0001;

/** A stretch of a line, by distances along it. */
type Stretch = readonly [number, number];

/** The stretch of the line start + t · way (t from 0) within `radiusM` of a point, if any; `way` has length 1. */
function stretchInDisc(start: Point, way: Point, centre: Point, radiusM: number): Stretch | undefined {
  const dx = centre.xM - start.xM;
  const dy = centre.yM - start.yM;
  const footM = dx * way.xM + dy * way.yM;
  const squared = radiusM * radiusM - (dx * way.yM - dy * way.xM) ** 2;
  if (squared <= 0) return undefined;
  const halfM = Math.sqrt(squared);
  return [footM - halfM, footM + halfM];
}

/** The stretch of the same line within `radiusM` beside an edge, between the perpendiculars at its ends. */
function stretchBeside(start: Point, way: Point, edge: Edge, radiusM: number): Stretch | undefined {
  const from = edge[0];
  const to = edge[1];
  const lengthM = Math.hypot(to.xM - from.xM, to.yM - from.yM);
  if (lengthM === 0) return undefined;
  const ux = (to.xM - from.xM) / lengthM;
  const uy = (to.yM - from.yM) / lengthM;
  const dx = start.xM - from.xM;
  const dy = start.yM - from.yM;
  // Along the edge 0 to its length; across it −radius to +radius.
  const along = stretchFromTo(dx * ux + dy * uy, way.xM * ux + way.yM * uy, 0, lengthM);
  if (along === undefined) return undefined;
  const across = stretchFromTo(dy * ux - dx * uy, way.yM * ux - way.xM * uy, -radiusM, radiusM);
  if (across === undefined) return undefined;
  const begin = Math.max(along[0], across[0]);
  const end = Math.min(along[1], across[1]);
  return begin < end ? [begin, end] : undefined;
}

const ALWAYS: Stretch = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];

/** Where a value that begins at `at` and grows by `rate` is between two others. */
function stretchFromTo(at: number, rate: number, least: number, most: number): Stretch | undefined {
  if (Math.abs(rate) < 1e-12) return at <= least || at >= most ? undefined : ALWAYS;
  const one = (least - at) / rate;
  const other = (most - at) / rate;
  return one < other ? [one, other] : [other, one];
}

/**
 * The stretches of a line from one point, `lengthM` far, that are at least `radiusM` from all edges. What lies nearer
 * to an edge is cut out, exactly.
 */
function clearStretches(
  from: Point,
  way: Point,
  lengthM: number,
  radiusM: number,
  edges: readonly Edge[],
): Stretch[] {
  const blocked: Stretch[] = [];
  for (const edge of edges) {
    // All that is within the radius of the edge, but for its start: there the edge before it ends.
    const beside = stretchBeside(from, way, edge, radiusM);
    if (isBlocking(beside, lengthM)) blocked.push(beside);
    const about = stretchInDisc(from, way, edge[1], radiusM);
    if (isBlocking(about, lengthM)) blocked.push(about);
  }
  if (blocked.length === 0) return [[0, lengthM]];
  blocked.sort((a, b) => a[0] - b[0]);
  const clear: Stretch[] = [];
  let beginM = 0;
  for (const [blockedFrom, blockedTo] of blocked) {
    if (blockedFrom > beginM) clear.push([beginM, blockedFrom]);
    beginM = Math.max(beginM, blockedTo);
  }
  if (beginM < lengthM) clear.push([beginM, lengthM]);
  return clear;
}

const isBlocking = (stretch: Stretch | undefined, lengthM: number): stretch is Stretch =>
  stretch !== undefined && stretch[1] > 0 && stretch[0] < lengthM;

/** A side of a ring and the turn to the next: the line beside it runs straight and then about the corner. */
interface Side {
  readonly from: Point;
  readonly to: Point;
  /** Its direction, radians from the x axis towards the y axis. */
  readonly angle: number;
  /** To the direction of the next side, −π to π; greater than 0 where the line beside the ring goes round outside. */
  readonly turn: number;
}

function sidesOf(ring: Outline): Side[] {
  const sides = edgesOf(ring).map(([from, to]) => {
    return { from, to, angle: Math.atan2(to.yM - from.yM, to.xM - from.xM) };
  });
  return sides.map((side, index) => {
    const next = sides[(index + 1) % sides.length] ?? side;
    return { ...side, turn: ((next.angle - side.angle + 3 * Math.PI) % (2 * Math.PI)) - Math.PI };
  });
}

/** The point at a distance to the right of one who stands at a point and looks in a direction. */
const beside = ({ xM, yM }: Point, angle: number, distanceM: number): Point => ({
  xM: xM + distanceM * Math.sin(angle),
  yM: yM - distanceM * Math.cos(angle),
});

const middle = (a: Point, b: Point): Point => ({ xM: (a.xM + b.xM) / 2, yM: (a.yM + b.yM) / 2 });

/** The bounds of an arc about a corner, from the normal of one direction to that of another. */
function boundsOfArc(corner: Point, angle: number, turn: number, distanceM: number): Bounds {
  const quarter = Math.PI / 2;
  const points = [beside(corner, angle, distanceM), beside(corner, angle + turn, distanceM)];
  for (let axis = Math.ceil(angle / quarter) * quarter; axis < angle + turn; axis += quarter) {
    points.push(beside(corner, axis, distanceM));
  }
  return boundsOf(points);
}

/** More than rounding makes of a distance between points of an arc and edges. */
const ROUNDING_M = 1e-9;

/**
 * Places on the free floor, at least `needM` from every edge, on the lines that run `distanceM` to the right of some
 * rings: one out of each free stretch, the middle of its longest straight piece. Arcs about corners are halved to
 * chords that lie inside them by up to `SAGITTA_M`. A stretch ends where it comes to a piece that is left out.
 */
function freePlaces(
  { has, grid }: FreeFloor,
  rings: readonly Outline[],
  distanceM: number,
  needM: number,
  isLeftOut: (bounds: Bounds) => boolean = () => false,
): Point[] {
  const places: Point[] = [];
  let longest: { readonly place: Point; readonly lengthM: number } | undefined;
  const endStretch = () => {
    if (longest !== undefined && has(longest.place)) places.push(longest.place);
    longest = undefined;
  };
  const walkPast = (from: Point, to: Point, lengthM: number, edges: readonly Edge[]) => {
    const way = { xM: (to.xM - from.xM) / lengthM, yM: (to.yM - from.yM) / lengthM };
    const clear = clearStretches(from, way, lengthM, needM, edges);
    if (clear.length === 0) endStretch();
    for (const [beginM, endM] of clear) {
      if (beginM > 0) endStretch();
      if (longest === undefined || endM - beginM > longest.lengthM) {
        const middleM = (beginM + endM) / 2;
        const place = { xM: from.xM + middleM * way.xM, yM: from.yM + middleM * way.yM };
        longest = { place, lengthM: endM - beginM };
      }
      if (endM < lengthM) endStretch();
    }
  };
  const walk = (from: Point, to: Point) => {
    const lengthM = Math.hypot(to.xM - from.xM, to.yM - from.yM);
    if (lengthM === 0) return;
    // So near an edge that no place of it is free: most are, among clutter.
    if (grid.comesWithin(middle(from, to), needM - lengthM / 2)) endStretch();
    else walkPast(from, to, lengthM, grid.near(boundsOfEdge(from, to), needM));
  };
  // The edges near an arc are looked for once; each half has those of the whole that come near to it. A piece that no
  // edge crosses lies on the floor or beside it as a whole.
  const walkAbout = (
    corner: Point,
    angle: number,
    turn: number,
    edges: readonly Edge[],
    isOnFloor: boolean,
  ) => {
    const half = turn / 2;
    const at = beside(corner, angle + half, distanceM);
    const blockedM = needM - distanceM * half;
    const blocked = blockedM > 0 ? blockedM * blockedM : 0;
    const near = (needM + distanceM * half + ROUNDING_M) ** 2;
    const crossing = (distanceM * half + ROUNDING_M) ** 2;
    let isCrossed = false;
    const nearer: Edge[] = [];
    for (const edge of edges) {
      const squared = squaredDistance(at, edge);
      if (squared < crossing) isCrossed = true;
      if (squared < blocked) {
        endStretch();
        return;
      }
      if (squared < near) nearer.push(edge);
    }
    if (!isOnFloor && !isCrossed && !has(at)) {
      endStretch();
      return;
    }
    const isOn = isOnFloor || !isCrossed;
    if (distanceM * (1 - Math.cos(half)) > SAGITTA_M) {
      walkAbout(corner, angle, half, nearer, isOn);
      walkAbout(corner, angle + half, half, nearer, isOn);
      return;
    }
    const [from, to] = [beside(corner, angle, distanceM), beside(corner, angle + turn, distanceM)];
    const lengthM = Math.hypot(to.xM - from.xM, to.yM - from.yM);
    if (lengthM > 0) walkPast(from, to, lengthM, nearer);
  };
  for (const { from, to, angle, turn } of rings.flatMap(sidesOf)) {
    const start = beside(from, angle, distanceM);
    const end = beside(to, angle, distanceM);
    if (isLeftOut(boundsOfEdge(start, end))) endStretch();
    else walk(start, end);
    const arc = turn > 0 ? boundsOfArc(to, angle, turn, distanceM) : undefined;
    if (arc && !isLeftOut(arc)) walkAbout(to, angle, turn, grid.near(arc, needM + ROUNDING_M), false);
    else endStretch();
  }
  endStretch();
  return places;
}

/**
 * Places for the centre of a disc of radius `radiusM` where it stands on the free floor and just touches one of
 * `outlines` (to within `TOUCH_TOLERANCE_M`): one out of each stretch of such places.
 */
export function touchingPlaces(floor: FreeFloor, outlines: readonly Outline[], radiusM: number): Point[] {
  const rings = outlines.map((outline) => (isClockwise(outline) ? [...outline].reverse() : outline));
  return freePlaces(floor, rings, radiusM + TOUCH_TOLERANCE_M, radiusM - SLACK_M);
}

/**
 * Places as `touchingPlaces` gives them, but where the disc lies over `outline` more or less and touches a wall or an
 * obstacle instead: one at least out of every part of the free places that is nowhere far enough from `outline` for
 * `touchingPlaces` to see it. Such a part has an edge, and there the disc touches something.
 */
export function coveringPlaces(floor: FreeFloor, outline: Outline, radiusM: number): Point[] {
  const reachM = radiusM + TOUCH_TOLERANCE_M;
  const bounds = boundsOf(outline);
  const rings = floor.rings
    .filter((ring) => boundsNear(boundsOf(ring), bounds, reachM + radiusM))
    // Walked the other way round, they have the free floor on the right.
    .map((ring) => [...ring].reverse());
  const isFar = (piece: Bounds): boolean => !boundsNear(piece, bounds, reachM + ROUNDING_M);
  return freePlaces(floor, rings, radiusM + SAGITTA_M, radiusM - SLACK_M, isFar).filter((place) =>
    isWithin(place, [outline], reachM),
  );
}

/** Whether a point lies within `distanceM` of one of the outlines or in it. */
export const isWithin = (point: Point, outlines: readonly Outline[], distanceM: number): boolean =>
  outlines.some(
    (outline) =>
      within(point, [outline]) ||
      edgesOf(outline).some((edge) => pointToEdge(point, edge).distanceM <= distanceM),
  );
