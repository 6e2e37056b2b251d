import type { Path64 } from 'clipper2-ts/dist/Core.js';

/*
 * The library's Minkowski sum pairs every edge of one path with every edge of the other, which two discs of a hundred
 * corners feel: seconds for a pair. Of convex paths the sum needs their edges only once each.
 */

const steps = (path: Path64): Path64 =>
  path.map(({ x, y }, index) => {
    const next = path[(index + 1) % path.length] ?? { x, y };
    return { x: next.x - x, y: next.y - y };
  });

const cross = (a: Path64[number], b: Path64[number]): number => a.x * b.y - a.y * b.x;

/** A path that turns only one way, and once round in all: discs, quarter discs, boxes. */
export function isConvex(path: Path64): boolean {
  const all = steps(path).filter(({ x, y }) => x !== 0 || y !== 0);
  const turnsBack = all.some((step, index) => {
    const next = all[(index + 1) % all.length];
    if (next === undefined) return true;
    const sine = cross(step, next);
    return sine < 0 || (sine === 0 && step.x * next.x + step.y * next.y < 0);
  });
  return (
    !turnsBack && all.filter((step, index) => isUp(step) && !isUp(all.at(index - 1) ?? step)).length === 1
  );
}

/** In the half of all directions that begins with that of the x axis. */
const isUp = ({ x, y }: Path64[number]): boolean => y > 0 || (y === 0 && x > 0);

export const mirrored = (path: Path64): Path64 => path.map(({ x, y }) => ({ x: -x, y: -y }));

/** From the lowest corner on; of two as low, from the one with the least x. */
function fromLowest(path: Path64): Path64 {
  const lowest = path.reduce((best, corner, index) => {
    const known = path[best] ?? corner;
    return corner.y < known.y || (corner.y === known.y && corner.x < known.x) ? index : best;
  }, 0);
  return [...path.slice(lowest), ...path.slice(0, lowest)];
}

/**
 * The Minkowski sum of two convex paths that turn the way of the library's solid paths: their edges one after the other
 * by direction. Time grows with the number of corners and not with its square.
 *
 * Source: the merging of the edges of convex polygons by their angles (M. de Berg and others, Computational Geometry,
 * chapter on robot motion planning; memory). Tests compare it with the library's sum.
 */
export function convexSum(a: Path64, b: Path64): Path64 {
  const [one, other] = [fromLowest(a), fromLowest(b)];
  const [oneSteps, otherSteps] = [steps(one), steps(other)];
  let at = { x: (one[0]?.x ?? 0) + (other[0]?.x ?? 0), y: (one[0]?.y ?? 0) + (other[0]?.y ?? 0) };
  const sum: Path64 = [];
  let [i, j] = [0, 0];
  while (i < oneSteps.length || j < otherSteps.length) {
    const [first, second] = [oneSteps[i], otherSteps[j]];
    const takesFirst = first !== undefined && (second === undefined || comesBefore(first, second));
    const step = takesFirst ? first : second;
    if (step === undefined) break;
    if (takesFirst) i += 1;
    else j += 1;
    sum.push(at);
    at = { x: at.x + step.x, y: at.y + step.y };
  }
  return sum;
}

const comesBefore = (a: Path64[number], b: Path64[number]): boolean =>
  isUp(a) === isUp(b) ? cross(a, b) >= 0 : isUp(a);
