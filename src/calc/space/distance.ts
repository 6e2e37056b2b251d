import {
  type Bounds,
  boundsNear,
  boundsOf,
  boundsOfEdge,
  checked,
  edgesOf,
  type Outline,
  type Point,
  within,
} from './plane.ts';

/** The shortest straight way between two things: its length and its ends, one on each. */
export interface Span {
  readonly distanceM: number;
  readonly from: Point;
  readonly to: Point;
}

/** A straight edge between two points. */
export type Edge = readonly [Point, Point];

/** Lengths that differ by no more than rounding makes. */
const EQUAL_WITHIN_M = 1e-9;

const between = (from: Point, to: Point): Span => ({
  distanceM: Math.hypot(to.xM - from.xM, to.yM - from.yM),
  from,
  to,
});

const turned = ({ distanceM, from, to }: Span): Span => ({ distanceM, from: to, to: from });

const along = ([from, to]: Edge, share: number): Point => ({
  xM: from.xM + share * (to.xM - from.xM),
  yM: from.yM + share * (to.yM - from.yM),
});

/** How far along an edge (0 its start, 1 its end) the foot of the perpendicular from a point lies, kept within it. */
function shareOfFoot(point: Point, [from, to]: Edge): number {
  const dx = to.xM - from.xM;
  const dy = to.yM - from.yM;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  return Math.min(1, Math.max(0, ((point.xM - from.xM) * dx + (point.yM - from.yM) * dy) / squared));
}

/** From a point to the nearest point of an edge. */
export const pointToEdge = (point: Point, edge: Edge): Span =>
  between(point, along(edge, shareOfFoot(point, edge)));

/** The square of the distance from a point to the nearest point of an edge, m²: `pointToEdge` where only that counts. */
export function squaredDistance({ xM, yM }: Point, [from, to]: Edge): number {
  const dx = to.xM - from.xM;
  const dy = to.yM - from.yM;
  let px = xM - from.xM;
  let py = yM - from.yM;
  const squared = dx * dx + dy * dy;
  if (squared > 0) {
    const share = Math.min(1, Math.max(0, (px * dx + py * dy) / squared));
    px -= share * dx;
    py -= share * dy;
  }
  return px * px + py * py;
}

/** Where two edges cross, if they do at a point inside both. */
function crossing(a: Edge, b: Edge): Point | undefined {
  const ax = a[1].xM - a[0].xM;
  const ay = a[1].yM - a[0].yM;
  const bx = b[1].xM - b[0].xM;
  const by = b[1].yM - b[0].yM;
  const cross = ax * by - ay * bx;
  if (cross === 0) return undefined;
  const ox = b[0].xM - a[0].xM;
  const oy = b[0].yM - a[0].yM;
  const shareOfA = (ox * by - oy * bx) / cross;
  const shareOfB = (ox * ay - oy * ax) / cross;
  return shareOfA >= 0 && shareOfA <= 1 && shareOfB >= 0 && shareOfB <= 1 ? along(a, shareOfA) : undefined;
}

/**
 * The shortest ways between two edges: one way, twice, if there is only one; of edges that run side by side the two
 * at the ends of the stretch that they share.
 */
export function nearestOfEdges(a: Edge, b: Edge): readonly [Span, Span] {
  const meeting = crossing(a, b);
  if (meeting !== undefined) {
    const span = { distanceM: 0, from: meeting, to: meeting };
    return [span, span];
  }
  // Edges that do not cross come nearest in one of their four ends. Only what may be shortest is looked at closely.
  const ofA0 = squaredDistance(a[0], b);
  const ofA1 = squaredDistance(a[1], b);
  const ofB0 = squaredDistance(b[0], a);
  const ofB1 = squaredDistance(b[1], a);
  const enough = (Math.sqrt(Math.min(ofA0, ofA1, ofB0, ofB1)) + 2 * EQUAL_WITHIN_M) ** 2;
  const spans: Span[] = [];
  if (ofA0 <= enough) spans.push(pointToEdge(a[0], b));
  if (ofA1 <= enough) spans.push(pointToEdge(a[1], b));
  if (ofB0 <= enough) spans.push(turned(pointToEdge(b[0], a)));
  if (ofB1 <= enough) spans.push(turned(pointToEdge(b[1], a)));
  if (spans.length > 1) spans.sort((one, other) => one.distanceM - other.distanceM);
  const [shortest = pointToEdge(a[0], b)] = spans;
  let farthest = shortest;
  for (const span of spans) {
    const equal = span.distanceM <= shortest.distanceM + EQUAL_WITHIN_M;
    if (
      equal &&
      between(shortest.from, span.from).distanceM > between(shortest.from, farthest.from).distanceM
    ) {
      farthest = span;
    }
  }
  return [shortest, farthest];
}

/** The shortest way between two edges; of edges that run side by side, across the middle of the stretch that they share. */
export function middleBetweenEdges(a: Edge, b: Edge): Span {
  const [first, last] = nearestOfEdges(a, b);
  return first === last ? first : pointToEdge(along([first.from, last.from], 0.5), b);
}

/** A lower bound of the distance of anything within the bounds. */
export function boundsApartM(a: Bounds, b: Bounds): number {
  return Math.hypot(
    Math.max(0, a.leastXM - b.mostXM, b.leastXM - a.mostXM),
    Math.max(0, a.leastYM - b.mostYM, b.leastYM - a.mostYM),
  );
}

/**
 * The shortest way between the edges of two outlines, whatever lies within them; where edges run side by side, the way
 * across the middle of the stretch that they share.
 */
export function ringToRing(a: Outline, b: Outline): Span {
  let best: Span | undefined;
  let stretchM = 0;
  const edgesOfB = edgesOf(b).map((edge) => ({ edge, bounds: boundsOfEdge(...edge) }));
  for (const edge of edgesOf(a)) {
    const bounds = boundsOfEdge(...edge);
    for (const other of edgesOfB) {
      const leastM = best?.distanceM ?? Number.POSITIVE_INFINITY;
      if (boundsApartM(bounds, other.bounds) > leastM + EQUAL_WITHIN_M) continue;
      const [first, last] = nearestOfEdges(edge, other.edge);
      const longM = between(first.from, last.from).distanceM;
      const nearer = first.distanceM < leastM - EQUAL_WITHIN_M;
      if (!nearer && (first.distanceM > leastM + EQUAL_WITHIN_M || longM <= stretchM)) continue;
      best = longM === 0 ? first : pointToEdge(along([first.from, last.from], 0.5), other.edge);
      stretchM = longM;
    }
  }
  if (best === undefined) throw new RangeError('Both outlines must have corners to measure between them.');
  return best;
}

/**
 * The distance between two bodies seen from above, m, and the points on their edges where they come nearest. It is 0
 * when they touch, overlap or one stands within the other; `from` and `to` are then one point that both share.
 *
 * Exact up to rounding: the nearest points of two polygons that are apart include a corner of one of them.
 *
 * Throws RangeError if an outline has fewer than three corners, one that is not finite, or encloses nothing.
 */
export function distanceBetween(a: Outline, b: Outline): Span {
  const [cornerOfA] = checked(a, 'An outline');
  const [cornerOfB] = checked(b, 'An outline');
  if (boundsNear(boundsOf(a), boundsOf(b), 0)) {
    for (const [corner, outline] of [[cornerOfA, b] as const, [cornerOfB, a] as const]) {
      if (corner !== undefined && within(corner, [outline])) return between(corner, corner);
    }
  }
  return ringToRing(a, b);
}
