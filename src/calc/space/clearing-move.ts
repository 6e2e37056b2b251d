import { MICROMETRES_PER_M, meetingMoves } from './clip.ts';
import { type Outline, TOUCH_TOLERANCE_M } from './plane.ts';

/** A way to move something on the plan, as the people in the van say it. */
export type Direction = 'forward' | 'rearward' | 'left' | 'right';

export interface ClearingMove {
  readonly direction: Direction;
  readonly distanceM: number;
}

/** A path in whole micrometres. */
type Path = readonly { readonly x: number; readonly y: number }[];

/**
 * Where the edges cross the line y = `height`, sorted. At half a micrometre above or below the axis no corner can lie
 * on the line, because all corners are whole micrometres.
 */
function crossings(paths: readonly Path[], height: number): number[] {
  const found: number[] = [];
  for (const path of paths) {
    let from = path.at(-1);
    for (const to of path) {
      if (from !== undefined && from.y > height !== to.y > height) {
        found.push(from.x + ((to.x - from.x) * (height - from.y)) / (to.y - from.y));
      }
      from = to;
    }
  }
  return found.sort((a, b) => a - b);
}

/** How far from 0 towards +x and towards −x the inside of the paths reaches along the x axis, in micrometres. */
function reachAlongX(paths: readonly Path[]): { readonly ahead: number; readonly back: number } | undefined {
  let ahead = Number.POSITIVE_INFINITY;
  let back = Number.POSITIVE_INFINITY;
  // Just touching along an edge is no overlap, so a place is inside only if both of its sides are.
  for (const height of [-0.5, 0.5]) {
    const xs = crossings(paths, height);
    const after = xs.findIndex((x) => x > 0);
    // Inside means an odd number of crossings ahead.
    if (after < 0 || (xs.length - after) % 2 === 0) return undefined;
    ahead = Math.min(ahead, xs[after] ?? 0);
    back = Math.min(back, -(xs[after - 1] ?? 0));
  }
  return { ahead, back };
}

/**
 * The straight moves along or across the van after which `moving` no longer overlaps `fixed` on the plan, shortest
 * first; equal ones in the order forward, rearward, left, right. Empty if they do not overlap (touching is none).
 *
 * For each direction it is the first place where they come free of each other, which for a hollow outline may be in
 * the hollow. Exact for any simple outlines, to a micrometre: whether `moving` shifted by v meets `fixed` is whether v
 * lies in the Minkowski sum of `fixed` and mirrored `moving`, and the move is where the ray leaves that sum. Where a
 * move ends the two touch.
 *
 * Throws RangeError if an outline has fewer than three corners, one that is not finite or farther than 40 m from the
 * origin, or encloses nothing.
 *
 * Source: the forbidden placements of a body that only shifts (J. O'Rourke, Computational Geometry in C, chapter on
 * motion planning; read in course notes that follow it).
 */
export function clearingMoves(moving: Outline, fixed: Outline): ClearingMove[] {
  const paths = meetingMoves(moving, fixed);
  const lengthways = reachAlongX(paths);
  const across = reachAlongX(paths.map((path) => path.map(({ x, y }) => ({ x: y, y: x }))));
  if (lengthways === undefined || across === undefined) return [];
  const move = (direction: Direction, micrometres: number): ClearingMove => ({
    direction,
    distanceM: Math.round(micrometres) / MICROMETRES_PER_M,
  });
  return [
    move('forward', lengthways.back),
    move('rearward', lengthways.ahead),
    move('left', across.back),
    move('right', across.ahead),
  ].sort((a, b) => a.distanceM - b.distanceM);
}

/**
 * The shortest of `clearingMoves`, or undefined where the two do not overlap or are free of each other after less than
 * `TOUCH_TOLERANCE_M`. Errors as there.
 */
export function shortestClearingMove(moving: Outline, fixed: Outline): ClearingMove | undefined {
  const [shortest] = clearingMoves(moving, fixed);
  return shortest !== undefined && shortest.distanceM > TOUCH_TOLERANCE_M ? shortest : undefined;
}
