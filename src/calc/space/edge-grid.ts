import type { Edge } from './distance.ts';
import {
  type Bounds,
  boundsNear,
  boundsOf,
  boundsOfEdge,
  edgesOf,
  type Outline,
  type Point,
} from './plane.ts';

/** The edges of many rings, laid out in squares so that those near a place are found at once. */
export interface EdgeGrid {
  /** Distance from a point to the nearest edge, m, or `capM` if none is nearer. */
  readonly distanceUpTo: (point: Point, capM: number) => number;
  /** Whether some edge is nearer to a point than this. */
  readonly comesWithin: (point: Point, distanceM: number) => boolean;
  /** The edges whose own bounds come within `marginM` of the bounds, each once. */
  readonly near: (bounds: Bounds, marginM: number) => readonly Edge[];
}

/** Squares smaller than this would only make long edges lie in many of them. */
const LEAST_SQUARE_M = 0.02;

export function edgeGrid(rings: readonly Outline[]): EdgeGrid {
  const edges = rings.flatMap(edgesOf);
  if (edges.length === 0)
    return { distanceUpTo: (_, capM) => capM, comesWithin: () => false, near: () => [] };
  const { leastXM, leastYM, mostXM, mostYM } = boundsOf(rings.flat());
  // About one square an edge.
  const sizeM = Math.max(LEAST_SQUARE_M, Math.sqrt(((mostXM - leastXM) * (mostYM - leastYM)) / edges.length));
  const columns = Math.floor((mostXM - leastXM) / sizeM) + 1;
  const rows = Math.floor((mostYM - leastYM) / sizeM) + 1;
  const column = (xM: number) => Math.min(columns - 1, Math.max(0, Math.floor((xM - leastXM) / sizeM)));
  const row = (yM: number) => Math.min(rows - 1, Math.max(0, Math.floor((yM - leastYM) / sizeM)));

  // Four numbers an edge: its start, and the way from there to its end.
  const numbers = new Float64Array(4 * edges.length);
  const lists: number[][] = Array.from({ length: columns * rows }, () => []);
  const edgeBounds = edges.map(([from, to]) => boundsOfEdge(from, to));
  edges.forEach(([from, to], index) => {
    numbers.set([from.xM, from.yM, to.xM - from.xM, to.yM - from.yM], 4 * index);
    const bounds = edgeBounds[index] ?? boundsOfEdge(from, to);
    for (let x = column(bounds.leastXM); x <= column(bounds.mostXM); x++) {
      for (let y = row(bounds.leastYM); y <= row(bounds.mostYM); y++) lists[x * rows + y]?.push(index);
    }
  });

  const squaredDistance = (index: number, xM: number, yM: number): number => {
    const start = 4 * index;
    const dx = numbers[start + 2] ?? 0;
    const dy = numbers[start + 3] ?? 0;
    let px = xM - (numbers[start] ?? 0);
    let py = yM - (numbers[start + 1] ?? 0);
    const squared = dx * dx + dy * dy;
    if (squared > 0) {
      const share = Math.min(1, Math.max(0, (px * dx + py * dy) / squared));
      px -= share * dx;
      py -= share * dy;
    }
    return px * px + py * py;
  };

  /** The squared distance of the nearest edge in one square, or `least` if none is nearer. */
  const leastInSquare = (x: number, y: number, xM: number, yM: number, least: number): number => {
    let nearest = least;
    for (const index of lists[x * rows + y] ?? []) {
      const squared = squaredDistance(index, xM, yM);
      if (squared < nearest) nearest = squared;
    }
    return nearest;
  };

  const distanceUpTo = ({ xM, yM }: Point, capM: number) => {
    let least = capM * capM;
    const atColumn = column(xM);
    const atRow = row(yM);
    const farthest = Math.max(columns, rows);
    // Rings of squares about the point, until all of the next ring is farther away than what was found. The point may
    // lie anywhere in its square, or outside all of them.
    for (let ring = 0; ring <= farthest && (ring - 1) * sizeM < Math.sqrt(least); ring++) {
      const low = atRow - ring;
      const high = atRow + ring;
      for (let x = Math.max(0, atColumn - ring); x <= Math.min(columns - 1, atColumn + ring); x++) {
        const step = x === atColumn - ring || x === atColumn + ring ? 1 : Math.max(1, 2 * ring);
        for (let y = low; y <= high; y += step) {
          if (y < 0 || y >= rows) continue;
          least = leastInSquare(x, y, xM, yM, least);
        }
      }
    }
    return Math.sqrt(least);
  };
  const comesWithin = ({ xM, yM }: Point, distanceM: number) => {
    if (distanceM <= 0) return false;
    const squared = distanceM * distanceM;
    const lastColumn = column(xM + distanceM);
    const lastRow = row(yM + distanceM);
    for (let x = column(xM - distanceM); x <= lastColumn; x++) {
      for (let y = row(yM - distanceM); y <= lastRow; y++) {
        if (leastInSquare(x, y, xM, yM, squared) < squared) return true;
      }
    }
    return false;
  };

  // The number of the last search that met an edge, so that each is returned once.
  const metIn = new Int32Array(edges.length);
  let searches = 0;
  const near = (bounds: Bounds, marginM: number): Edge[] => {
    searches += 1;
    const found: Edge[] = [];
    for (let x = column(bounds.leastXM - marginM); x <= column(bounds.mostXM + marginM); x++) {
      for (let y = row(bounds.leastYM - marginM); y <= row(bounds.mostYM + marginM); y++) {
        for (const index of lists[x * rows + y] ?? []) {
          const edge = edges[index];
          if (metIn[index] === searches || edge === undefined) continue;
          metIn[index] = searches;
          if (boundsNear(edgeBounds[index] ?? bounds, bounds, marginM)) found.push(edge);
        }
      }
    }
    return found;
  };

  return { distanceUpTo, comesWithin, near };
}
