import { nearestOfEdges, pointToEdge } from './distance.ts';
import type { EdgeGrid } from './edge-grid.ts';
import type { Gap, GapNet } from './gaps.ts';
import { edgesOf, type Outline, type Point } from './plane.ts';

/** A point on the edge of something that bounds a way. */
export interface Side {
  readonly at: Point;
  /** Its place in the list of obstacles; none for the edge of the floor or for something that is no obstacle. */
  readonly obstacle?: number;
}

export interface NarrowestSpot {
  /** Where the centre of the disc is when it is stuck. */
  readonly at: Point;
  /** What it is stuck between. */
  readonly between: readonly [Side, Side];
}

/** Slack for comparing lengths that were computed in two ways. */
const ROUNDING_M = 1e-9;

/** Cutting the floor moves points by a micrometre or two; an edge this near to a point is the one it lies on. */
const ON_EDGE_M = 5e-6;

const middle = (a: Point, b: Point): Point => ({ xM: (a.xM + b.xM) / 2, yM: (a.yM + b.yM) / 2 });

const isOn = (point: Point, outline: Outline): boolean =>
  edgesOf(outline).some((edge) => pointToEdge(point, edge).distanceM <= ON_EDGE_M);

function sideAt(at: Point, obstacles: readonly Outline[]): Side {
  const obstacle = obstacles.findIndex((outline) => isOn(at, outline));
  return obstacle < 0 ? { at } : { at, obstacle };
}

/** The ends of a gap; where it is equally wide for a stretch, as far along it as the way from `from` to `to` goes. */
function acrossGap(gap: Gap, net: GapNet, grid: EdgeGrid, from: Point, to: Point): readonly [Point, Point] {
  const [a, b] = [net.parts[gap.a], net.parts[gap.b]];
  if (a === undefined || b === undefined) return gap.ends;
  for (const edge of edgesOf(a.corners)) {
    for (const other of edgesOf(b.corners)) {
      const [first, last] = nearestOfEdges(edge, other);
      if (first === last || first.distanceM > gap.widthM + ROUNDING_M) continue;
      const stretch = [first.from, last.from] as const;
      const [entry, exit] = [pointToEdge(from, stretch).to, pointToEdge(to, stretch).to];
      const across = pointToEdge(middle(entry, exit), other);
      // Something else may stand in another part of the stretch.
      const clearM = grid.distanceUpTo(middle(across.from, across.to), gap.widthM / 2);
      if (clearM >= gap.widthM / 2 - ROUNDING_M) return [across.from, across.to];
    }
  }
  return gap.ends;
}

/** Where a disc as wide as a gap is stuck in it, on its way from one place to another. */
export function spotInGap(
  gap: Gap,
  way: { readonly net: GapNet; readonly grid: EdgeGrid; readonly from: Point; readonly to: Point },
  obstacles: readonly Outline[],
): NarrowestSpot {
  const [one, other] = acrossGap(gap, way.net, way.grid, way.from, way.to);
  return { at: middle(one, other), between: [sideAt(one, obstacles), sideAt(other, obstacles)] };
}

/** The point of some rings that is nearest to a point, of those that `counts`. */
function nearestOn(rings: readonly Outline[], point: Point, counts: (at: Point) => boolean): Point {
  let nearest = point;
  let leastM = Number.POSITIVE_INFINITY;
  for (const edge of rings.flatMap(edgesOf)) {
    const { to, distanceM } = pointToEdge(point, edge);
    if (distanceM >= leastM || !counts(to)) continue;
    leastM = distanceM;
    nearest = to;
  }
  return nearest;
}

/** Where a disc that touches something, with its centre at `at`, is stuck between it and the nearest other edge. */
export function spotTouching(
  touched: Outline,
  at: Point,
  rings: readonly Outline[],
  obstacles: readonly Outline[],
): NarrowestSpot {
  const near = nearestOn([touched], at, () => true);
  const opposite = nearestOn(rings, at, (point) => !isOn(point, touched));
  return { at, between: [sideAt(near, obstacles), sideAt(opposite, obstacles)] };
}
