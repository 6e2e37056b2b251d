// Which way is blocked to a disc of which size: the gaps between the parts of the walls and obstacles.

import type { Region } from './clip.ts';
import { boundsApartM, type Edge, middleBetweenEdges, ringToRing } from './distance.ts';
import type { EdgeGrid } from './edge-grid.ts';
import { type Bounds, boundsOf, edgesOf, isBox, type Outline, type Point } from './plane.ts';

/** A convex part of what stands in the way: an obstacle without hollows, or one edge of anything else. */
export interface Part {
  readonly corners: Outline;
  readonly bounds: Bounds;
  /** It is its own bounds: an upright rectangle, or an edge along or across the van. */
  readonly isBox: boolean;
}

/** Two parts that a disc wider than the gap between them cannot pass between. */
export interface Gap {
  readonly a: number;
  readonly b: number;
  readonly widthM: number;
  /** Where the gap is narrowest: one end on each part. */
  readonly ends: readonly [Point, Point];
}

/** Gaps, and what is needed to tell whether they part two points. */
export interface GapNet {
  readonly parts: readonly Part[];
  /** Gaps that close a loop with narrower ones, narrowest first. */
  readonly closing: readonly Gap[];
  /** Gaps that join parts to a tree, each after the one that leads to its part `a`. */
  readonly tree: readonly Gap[];
}

/** Slack for comparing lengths that were computed in two ways. */
const ROUNDING_M = 1e-9;

/** Whether the corners of a ring all turn the same way. */
function isConvex(ring: Outline): boolean {
  let turns = 0;
  let [before, at] = [ring.at(-2), ring.at(-1)];
  for (const next of ring) {
    if (before !== undefined && at !== undefined) {
      const cross = (at.xM - before.xM) * (next.yM - at.yM) - (at.yM - before.yM) * (next.xM - at.xM);
      if (cross * turns < 0) return false;
      if (cross !== 0) turns = cross;
    }
    before = at;
    at = next;
  }
  return true;
}

/** The convex parts of what bounds the free floor: its outer edges one by one, the obstacles in it whole if convex. */
export function partsOf(free: Region): Part[] {
  const part = (corners: Outline): Part => {
    const bounds = boundsOf(corners);
    return { corners, bounds, isBox: isBox(corners, bounds) };
  };
  const convex = free.holes.filter(isConvex);
  const hollow = free.holes.filter((hole) => !isConvex(hole));
  return [...convex, ...[...free.outlines, ...hollow].flatMap(edgesOf)].map(part);
}

/** Where two stretches of a line come nearest: a value in each; the middle of what they share, if they do. */
function nearestOfStretches(
  leastA: number,
  mostA: number,
  leastB: number,
  mostB: number,
): readonly [number, number] {
  if (mostA < leastB) return [mostA, leastB];
  if (mostB < leastA) return [leastA, mostB];
  const shared = (Math.max(leastA, leastB) + Math.min(mostA, mostB)) / 2;
  return [shared, shared];
}

function endsBetweenBoxes(a: Bounds, b: Bounds): readonly [Point, Point] {
  const [xA, xB] = nearestOfStretches(a.leastXM, a.mostXM, b.leastXM, b.mostXM);
  const [yA, yB] = nearestOfStretches(a.leastYM, a.mostYM, b.leastYM, b.mostYM);
  return [
    { xM: xA, yM: yA },
    { xM: xB, yM: yB },
  ];
}

function onlyEdgeOf({ corners }: Part): Edge | undefined {
  const [from, to] = corners;
  return corners.length === 2 && from && to ? [from, to] : undefined;
}

/** The nearest points of two parts that do not cross: one of them is a corner. */
function endsBetween(a: Part, b: Part): readonly [Point, Point] {
  if (a.isBox && b.isBox) return endsBetweenBoxes(a.bounds, b.bounds);
  const [edgeA, edgeB] = [onlyEdgeOf(a), onlyEdgeOf(b)];
  const { from, to } = edgeA && edgeB ? middleBetweenEdges(edgeA, edgeB) : ringToRing(a.corners, b.corners);
  return [from, to];
}

function gapBetween(parts: readonly Part[], a: number, b: number): Gap | undefined {
  const [partA, partB] = [parts[a], parts[b]];
  if (partA === undefined || partB === undefined) return undefined;
  const ends = endsBetween(partA, partB);
  return { a, b, widthM: Math.hypot(ends[1].xM - ends[0].xM, ends[1].yM - ends[0].yM), ends };
}

/** Pairs of parts whose bounds are at least `fromM` and less than `belowM` apart. */
function pairsApart(
  parts: readonly Part[],
  fromM: number,
  belowM: number,
  found: (a: number, b: number) => void,
): void {
  const order = parts
    .map(({ bounds }, index) => ({ bounds, index }))
    .sort((a, b) => a.bounds.leastXM - b.bounds.leastXM);
  let abreast: typeof order = [];
  for (const next of order) {
    abreast = abreast.filter(({ bounds }) => next.bounds.leastXM - bounds.mostXM < belowM);
    for (const other of abreast) {
      const apartM = boundsApartM(other.bounds, next.bounds);
      if (apartM >= fromM && apartM < belowM) found(other.index, next.index);
    }
    abreast.push(next);
  }
}

/** Whether a point is nearer to the middle of a gap than its ends are. */
const reachesInto = ({ xM, yM }: Point, [from, to]: readonly [Point, Point]): boolean =>
  (xM - from.xM) * (xM - to.xM) + (yM - from.yM) * (yM - to.yM) < -ROUNDING_M;

/**
 * Finds the gaps of a scene, band by band: each call gives the net of the gaps narrower than `belowM`, which must grow
 * from call to call.
 *
 * Left out are gaps that some third part reaches into, nearer to the middle of the gap than its ends: a disc that such
 * a gap stops is stopped by the two narrower gaps beside it. Most are seen from the neighbours already known.
 */
export function gapFinder(parts: readonly Part[], grid: EdgeGrid): (belowM: number) => GapNet {
  const kept: Gap[] = [];
  const neighbours: number[][] = parts.map(() => []);
  let wider: Gap[] = [];
  let doneM = 0;
  const crowded = ({ a, b, ends, widthM }: Gap): boolean => {
    const blocks = (index: number) =>
      parts[index]?.corners.some((corner) => reachesInto(corner, ends)) ?? false;
    if (neighbours[a]?.some(blocks) || neighbours[b]?.some(blocks)) return true;
    const [from, to] = ends;
    const middle = { xM: (from.xM + to.xM) / 2, yM: (from.yM + to.yM) / 2 };
    return grid.comesWithin(middle, widthM / 2 - ROUNDING_M);
  };
  return (belowM) => {
    const waiting = wider;
    wider = [];
    const take = (gap: Gap) => {
      if (gap.widthM >= belowM) wider.push(gap);
      else if (!crowded(gap)) {
        kept.push(gap);
        neighbours[gap.a]?.push(gap.b);
        neighbours[gap.b]?.push(gap.a);
      }
    };
    waiting.forEach(take);
    pairsApart(parts, doneM, belowM, (a, b) => {
      const gap = gapBetween(parts, a, b);
      if (gap !== undefined) take(gap);
    });
    doneM = belowM;
    kept.sort((a, b) => a.widthM - b.widthM || a.a - b.a || a.b - b.b);
    return netOf(parts, kept);
  };
}

/** Gaps, narrowest first, as a tree of the narrowest and those that close loops with it. */
function netOf(parts: readonly Part[], gaps: readonly Gap[]): GapNet {
  const parents = parts.map((_, index) => index);
  const rootOf = (index: number): number => {
    let root = index;
    for (let up = parents[root]; up !== undefined && up !== root; up = parents[root]) {
      parents[root] = parents[up] ?? up;
      root = up;
    }
    return root;
  };
  const closing: Gap[] = [];
  const joining: Gap[][] = parts.map(() => []);
  for (const gap of gaps) {
    const [rootA, rootB] = [rootOf(gap.a), rootOf(gap.b)];
    if (rootA === rootB) {
      closing.push(gap);
      continue;
    }
    parents[rootA] = rootB;
    joining[gap.a]?.push(gap);
    joining[gap.b]?.push({ ...gap, a: gap.b, b: gap.a, ends: [gap.ends[1], gap.ends[0]] });
  }
  const tree: Gap[] = [];
  const seen = parts.map(() => false);
  parts.forEach((_, root) => {
    if (seen[root]) return;
    seen[root] = true;
    const open = [root];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      for (const gap of joining[at] ?? []) {
        if (seen[gap.b]) continue;
        seen[gap.b] = true;
        tree.push(gap);
        open.push(gap.b);
      }
    }
  });
  return { parts, closing, tree };
}

/** Whether the ray from `point` towards +y crosses the straight way between two points. */
const rayCrosses = ({ xM, yM }: Point, from: Point, to: Point): boolean =>
  from.xM > xM !== to.xM > xM && yM < from.yM + ((to.yM - from.yM) * (xM - from.xM)) / (to.xM - from.xM);

/**
 * For each closing gap, whether the loop that it closes goes round `point`: the loop runs through the gap and back
 * along the tree, from part to part across the gaps and within each part along it.
 */
export function loopsAround({ parts, closing, tree }: GapNet, point: Point): boolean[] {
  const crossesOdd = ({ a, b, ends: [atA, atB] }: Gap): boolean => {
    const anchorA = parts[a]?.corners[0] ?? atA;
    const anchorB = parts[b]?.corners[0] ?? atB;
    return (
      (rayCrosses(point, anchorA, atA) !== rayCrosses(point, atA, atB)) !== rayCrosses(point, atB, anchorB)
    );
  };
  const odd = new Array<boolean>(parts.length).fill(false);
  for (const gap of tree) odd[gap.b] = (odd[gap.a] ?? false) !== crossesOdd(gap);
  return closing.map((gap) => (odd[gap.a] !== odd[gap.b]) !== crossesOdd(gap));
}
