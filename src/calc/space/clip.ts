// The one place that speaks to the polygon library. It works on whole numbers: micrometres here, metres outside, so
// that plans in millimetres stay exact and slanted edges are rounded by a thousandth of a millimetre.
//
// It is imported part by part: the package's index would add its triangulation, 60 kB and 2 ms at every start.
import { ClipType, FillRule, type Path64, type Paths64, PathType } from 'clipper2-ts/dist/Core.js';
import { Clipper64 } from 'clipper2-ts/dist/Engine.js';
import { Minkowski } from 'clipper2-ts/dist/Minkowski.js';
import { ClipperOffset, EndType, JoinType } from 'clipper2-ts/dist/Offset.js';
import { finite } from '../argument.ts';
import { convexSum, isConvex, mirrored } from './convex-sum.ts';
import { checked, type Outline, outlineArea, type Point, TOUCH_TOLERANCE_M } from './plane.ts';

export const MICROMETRES_PER_M = 1e6;

/** Beyond this the products of two coordinates in micrometres would no longer be exact. */
const FARTHEST_M = 40;

/** How far a rounded corner of an offset may lie inside the true arc: 0.05 mm, or this part of a small offset. */
const ARC_TOLERANCE_MICROMETRES = 50;
const ARC_TOLERANCE_SHARE = 0.01;

/** Slits of up to twice this are closed where rounding may have made them. */
const SLIT_M = 5e-6;

/** What an operation leaves: separate solid outlines, and the holes in them. */
export interface Region {
  /** From the x axis towards the y axis; holes the other way round. */
  readonly outlines: readonly Outline[];
  readonly holes: readonly Outline[];
}

const coordinate = (valueM: number): number => {
  if (Math.abs(valueM) > FARTHEST_M) {
    throw new RangeError(`A corner must lie within ${FARTHEST_M} m of the origin, not at ${valueM} m.`);
  }
  return Math.round(valueM * MICROMETRES_PER_M);
};

/** Twice the signed area of a path, in square micrometres. */
const turn = (path: Path64): number => {
  let sum = 0;
  let from = path.at(-1);
  for (const to of path) {
    if (from !== undefined) sum += from.x * to.y - to.x * from.y;
    from = to;
  }
  return sum;
};

/** An outline as a path of whole micrometres that turns the way the library calls positive. */
function toPath(outline: Outline): Path64 {
  const path = checked(outline, 'An outline').map(({ xM, yM }) => ({ x: coordinate(xM), y: coordinate(yM) }));
  return turn(path) < 0 ? path.reverse() : path;
}

const toOutline = (path: Path64): Outline =>
  path.map(({ x, y }): Point => ({ xM: x / MICROMETRES_PER_M, yM: y / MICROMETRES_PER_M }));

/** Solid paths turn one way and holes the other; a path without area, which nobody needs, is neither. */
const toRegion = (paths: Paths64): Region => ({
  outlines: paths.filter((path) => turn(path) > 0).map(toOutline),
  holes: paths.filter((path) => turn(path) < 0).map(toOutline),
});

/** All rings of a region: by the even-odd rule they describe it, and each has it on its left as one walks along it. */
export const ringsOf = ({ outlines, holes }: Region): Outline[] => [...outlines, ...holes];

/** The sides of a rectangle in whole micrometres; of one without area, a side may be on the wrong side of the other. */
interface Sides {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The sides of what is a rectangle square to the axes, and nothing else. */
function sidesOf(paths: Paths64): Sides | undefined {
  const path = paths.length === 1 ? paths[0] : undefined;
  if (path?.length !== 4) return undefined;
  const [a, b, c, d] = path;
  if (!a || !b || !c || !d) return undefined;
  const isSquare =
    (a.x === b.x && b.y === c.y && c.x === d.x && d.y === a.y) ||
    (a.y === b.y && b.x === c.x && c.y === d.y && d.x === a.x);
  return isSquare
    ? {
        left: Math.min(a.x, c.x),
        right: Math.max(a.x, c.x),
        top: Math.min(a.y, c.y),
        bottom: Math.max(a.y, c.y),
      }
    : undefined;
}

/** As the library gives a rectangle: its corners in the same order. */
const rectanglePaths = ({ left, right, top, bottom }: Sides): Paths64 =>
  left < right && top < bottom
    ? [
        [
          { x: right, y: bottom },
          { x: left, y: bottom },
          { x: left, y: top },
          { x: right, y: top },
        ],
      ]
    : [];

/**
 * The short way for rectangles, which most things are: the library takes a tenth of a millisecond for each, and a
 * plan asks for hundreds. The result is the same to the last corner.
 */
function combinedRectangles(how: ClipType, subject: Paths64, clip: Paths64): Paths64 | undefined {
  const one = sidesOf(subject);
  if (!one) return undefined;
  if (how === ClipType.Union && clip.length === 0) return rectanglePaths(one);
  const other = how === ClipType.Intersection ? sidesOf(clip) : undefined;
  return (
    other &&
    rectanglePaths({
      left: Math.max(one.left, other.left),
      right: Math.min(one.right, other.right),
      top: Math.max(one.top, other.top),
      bottom: Math.min(one.bottom, other.bottom),
    })
  );
}

function combined(how: ClipType, subject: Paths64, clip: Paths64): Paths64 {
  const known = combinedRectangles(how, subject, clip);
  if (known) return known;
  const clipping = new Clipper64();
  clipping.addPaths(subject, PathType.Subject);
  clipping.addPaths(clip, PathType.Clip);
  const result: Paths64 = [];
  clipping.execute(how, FillRule.NonZero, result);
  return result;
}

const united = (outlines: readonly Outline[]): Paths64 => combined(ClipType.Union, outlines.map(toPath), []);

/**
 * Everything that at least one of the outlines covers. Throws RangeError as `outlineArea` does, or if a corner lies
 * more than 40 m from the origin; the same holds for the other operations of this file.
 */
export const union = (outlines: readonly Outline[]): Region => toRegion(united(outlines));

/** What one of `from` covers and none of `less` does. */
export const difference = (from: readonly Outline[], less: readonly Outline[]): Region =>
  toRegion(combined(ClipType.Difference, united(from), united(less)));

/** What one of `a` and one of `b` both cover. */
export const intersection = (a: readonly Outline[], b: readonly Outline[]): Region =>
  toRegion(combined(ClipType.Intersection, united(a), united(b)));

/** What two outlines both cover: none, one or several pieces, without holes. */
export const overlap = (a: Outline, b: Outline): readonly Outline[] =>
  toRegion(combined(ClipType.Intersection, [toPath(a)], [toPath(b)])).outlines;

/** Area that two outlines both cover, m²; 0 when they are apart or only touch. */
export const overlapArea = (a: Outline, b: Outline): number =>
  overlap(a, b).reduce((sum, piece) => sum + outlineArea(piece), 0);

const grown = (paths: Paths64, byM: number, arcTolerance = ARC_TOLERANCE_MICROMETRES): Paths64 => {
  const micrometres = finite(byM, 'The offset') * MICROMETRES_PER_M;
  const tolerance = Math.min(arcTolerance, Math.abs(micrometres) * ARC_TOLERANCE_SHARE);
  const offsetting = new ClipperOffset(2, tolerance);
  offsetting.addPaths(paths, JoinType.Round, EndType.Polygon);
  const result: Paths64 = [];
  offsetting.execute(micrometres, result);
  return result;
};

/**
 * Everything within `byM` of the outlines (`byM` > 0), or what remains of them farther than −`byM` from their edge
 * (`byM` < 0). Corners are rounded; a rounded corner lies within 0.05 mm of the true arc, on its inner side.
 */
export const offset = (outlines: readonly Outline[], byM: number): Region =>
  toRegion(grown(united(outlines), byM));

/** As `offset`, with corners that are rounded only roughly: to a hundredth of the offset, in a fifth of the edges. */
export const offsetRoughly = (outlines: readonly Outline[], byM: number): Region =>
  toRegion(grown(united(outlines), byM, Number.POSITIVE_INFINITY));

/**
 * Whether any part of a region is thicker than `thicknessM`, so that a disc of that diameter lies in it. A sliver that
 * is thinner everywhere is what touching faces and rounded corners leave.
 */
export function thickerThan({ outlines, holes }: Region, thicknessM: number): boolean {
  if (outlines.length === 0) return false;
  const paths = [...outlines.map(toPath), ...holes.map((hole) => toPath(hole).reverse())];
  const sides = sidesOf(paths);
  // Half a thickness that is no whole number of micrometres would be rounded.
  const thickness = thicknessM * MICROMETRES_PER_M;
  if (sides && thickness > 0 && thickness % 2 === 0)
    return Math.min(sides.right - sides.left, sides.bottom - sides.top) > thickness;
  return grown(paths, -thicknessM / 2).length > 0;
}

/**
 * Whether `inner` lies within what the outlines of `outer` cover together. What sticks out by no more than
 * `TOUCH_TOLERANCE_M` is forgiven.
 */
export const contains = (outer: readonly Outline[], inner: Outline): boolean =>
  !thickerThan(difference([inner], outer), TOUCH_TOLERANCE_M);

/**
 * Whether the edges of an outline cross each other, so that it has no plain inside: a corner was probably written out
 * of order. It compares the area the corners sum to with the area they cover; loops of less than 1 mm² go unnoticed.
 */
export function crossesItself(outline: Outline): boolean {
  const { outlines, holes } = union([outline]);
  const area = (rings: readonly Outline[]) => rings.reduce((sum, ring) => sum + outlineArea(ring), 0);
  return Math.abs(area(outlines) - area(holes) - outlineArea(outline)) > 1e-6;
}

/**
 * All moves of `moving` after which it and `fixed` share a point, as paths in micrometres: the Minkowski sum of `fixed`
 * and of `moving` mirrored in the origin. The library gives the sum of the edges only; where one outline is small in
 * the other, the inside is filled by the copy of each placed at a corner of the other. Rounding leaves slits of a
 * micrometre between the parts; growing and shrinking closes them.
 */
export function meetingMoves(moving: Outline, fixed: Outline): readonly Path64[] {
  const [movingPath, fixedPath] = [toPath(moving), toPath(fixed)];
  if (isConvex(movingPath) && isConvex(fixedPath)) return [convexSum(fixedPath, mirrored(movingPath))];
  const [{ x: mx, y: my } = { x: 0, y: 0 }] = movingPath;
  const [{ x: fx, y: fy } = { x: 0, y: 0 }] = fixedPath;
  const parts = [
    ...Minkowski.diff(movingPath, fixedPath, true),
    fixedPath.map(({ x, y }) => ({ x: x - mx, y: y - my })),
    movingPath.map(({ x, y }) => ({ x: fx - x, y: fy - y })),
  ];
  return grown(grown(combined(ClipType.Union, parts, []), SLIT_M), -SLIT_M);
}
