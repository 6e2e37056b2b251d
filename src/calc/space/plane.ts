import { finite, positive } from '../argument.ts';

/** A point on the plan: x runs rearward from the front of the load bay, y to the right. Metres. */
export interface Point {
  readonly xM: number;
  readonly yM: number;
}

/**
 * The edge of something seen from above: the corners of a simple polygon (it does not cross itself), in order, either
 * way round, the first corner not repeated at the end.
 */
export type Outline = readonly Point[];

/** The smallest upright rectangle about something. */
export interface Bounds {
  readonly leastXM: number;
  readonly leastYM: number;
  readonly mostXM: number;
  readonly mostYM: number;
}

/**
 * Two things that go into each other by no more than this only touch: half a millimetre, less than a tape shows and
 * more than rounding makes. Own choice.
 */
export const TOUCH_TOLERANCE_M = 0.0005;

/** The corners followed by the first one again, as pairs: the edges. */
export function edgesOf(outline: Outline): (readonly [Point, Point])[] {
  const edges: (readonly [Point, Point])[] = [];
  let from = outline.at(-1);
  for (const to of outline) {
    if (from !== undefined) edges.push([from, to]);
    from = to;
  }
  return edges;
}

/** Twice the enclosed area, m²: positive when the corners run from the x axis towards the y axis. */
function twiceSignedArea(outline: Outline): number {
  const first = outline[0];
  if (first === undefined) return 0;
  let sum = 0;
  for (const [from, to] of edgesOf(outline)) {
    // Measured from the first corner, so that an outline far from the origin loses no digits.
    sum += (from.xM - first.xM) * (to.yM - first.yM) - (to.xM - first.xM) * (from.yM - first.yM);
  }
  return sum;
}

/** Whether the corners run from the y axis towards the x axis: clockwise as seen from above. */
export const isClockwise = (outline: Outline): boolean => twiceSignedArea(outline) < 0;

/**
 * `outline`, if it can be the edge of a body. Throws RangeError if it has fewer than three corners, a corner that is
 * not finite, or encloses nothing. It does not look for edges that cross each other: see `crossesItself`.
 */
export function checked(outline: Outline, what: string): Outline {
  if (outline.length < 3) {
    throw new RangeError(`${what} must have at least three corners, not ${outline.length}.`);
  }
  for (const { xM, yM } of outline) {
    finite(xM, `A corner of ${what}`);
    finite(yM, `A corner of ${what}`);
  }
  if (twiceSignedArea(outline) === 0) throw new RangeError(`${what} must enclose some area.`);
  return outline;
}

/**
 * Area of an outline, m².
 *
 *     A = ½ · | Σ (x_i · y_(i+1) − x_(i+1) · y_i) |
 *
 * x, y: the corners in order, m. Either way round gives the same area.
 *
 * Throws RangeError if the outline has fewer than three corners, one that is not finite, or encloses nothing.
 *
 * Source: the shoelace formula (A. L. F. Meister, 1769), as stated with a worked example on a collection of
 * programming tasks (read).
 */
export function outlineArea(outline: Outline): number {
  return Math.abs(twiceSignedArea(checked(outline, 'An outline'))) / 2;
}

/**
 * Centroid of the area within an outline.
 *
 *     x̄ = Σ (x_i + x_(i+1)) · c_i / (6 · A)    ȳ = Σ (y_i + y_(i+1)) · c_i / (6 · A)    c_i = x_i · y_(i+1) − x_(i+1) · y_i
 *
 * x, y: the corners in order, m; A: the signed area ½ · Σ c_i, m². Either way round gives the same point. It may lie
 * outside an outline that is hollow on one side.
 *
 * Throws RangeError as `outlineArea` does.
 *
 * Source: Paul Bourke, "Calculating the area and centroid of a polygon", July 1988 (formula read on pages that cite
 * it).
 */
export function outlineCentroid(outline: Outline): Point {
  const first = checked(outline, 'An outline')[0] ?? { xM: 0, yM: 0 };
  let sumX = 0;
  let sumY = 0;
  for (const [from, to] of edgesOf(outline)) {
    const [fromX, fromY, toX, toY] = [
      from.xM - first.xM,
      from.yM - first.yM,
      to.xM - first.xM,
      to.yM - first.yM,
    ];
    const cross = fromX * toY - toX * fromY;
    sumX += (fromX + toX) * cross;
    sumY += (fromY + toY) * cross;
  }
  const divisor = 3 * twiceSignedArea(outline);
  return { xM: first.xM + sumX / divisor, yM: first.yM + sumY / divisor };
}

/**
 * The outline of a box that stands square to the van: its least x and y, m, its length along the van and its width
 * across, m (both > 0). Throws RangeError if a value is not finite or a size is not greater than 0.
 */
export function rectangle(xM: number, yM: number, lengthM: number, widthM: number): Outline {
  const endXM = finite(xM, 'The front of a rectangle') + positive(lengthM, 'The length of a rectangle');
  const endYM = finite(yM, 'The left of a rectangle') + positive(widthM, 'The width of a rectangle');
  return [
    { xM, yM },
    { xM: endXM, yM },
    { xM: endXM, yM: endYM },
    { xM, yM: endYM },
  ];
}

/** The smallest upright rectangle about the points. Throws RangeError if there are none or one is not finite. */
export function boundsOf(points: readonly Point[]): Bounds {
  const [first] = points;
  if (first === undefined) throw new RangeError('There must be at least one point to put bounds about.');
  let [leastXM, leastYM, mostXM, mostYM] = [first.xM, first.yM, first.xM, first.yM];
  for (const { xM, yM } of points) {
    leastXM = Math.min(leastXM, finite(xM, 'A point'));
    leastYM = Math.min(leastYM, finite(yM, 'A point'));
    mostXM = Math.max(mostXM, xM);
    mostYM = Math.max(mostYM, yM);
  }
  return { leastXM, leastYM, mostXM, mostYM };
}

/** Whether an outline is its own bounds: a rectangle square to the van, or an edge (two corners) along or across it. */
export function isBox(corners: Outline, { leastXM, leastYM, mostXM, mostYM }: Bounds): boolean {
  if (corners.length === 2) return leastXM === mostXM || leastYM === mostYM;
  return (
    corners.length === 4 &&
    corners.every(({ xM, yM }) => (xM === leastXM || xM === mostXM) && (yM === leastYM || yM === mostYM))
  );
}

/** The bounds of a straight edge. */
export const boundsOfEdge = (from: Point, to: Point): Bounds => ({
  leastXM: Math.min(from.xM, to.xM),
  leastYM: Math.min(from.yM, to.yM),
  mostXM: Math.max(from.xM, to.xM),
  mostYM: Math.max(from.yM, to.yM),
});

/** Whether the bounds come within `withinM` of each other, sideways and lengthways both. */
export function boundsNear(a: Bounds, b: Bounds, withinM: number): boolean {
  return (
    a.leastXM - b.mostXM <= withinM &&
    b.leastXM - a.mostXM <= withinM &&
    a.leastYM - b.mostYM <= withinM &&
    b.leastYM - a.mostYM <= withinM
  );
}

/**
 * Whether a point lies within a set of rings, by the even-odd rule: a ray from it crosses their edges an odd number
 * of times. Rings within rings are holes. A point on an edge may count either way.
 */
export function within(point: Point, rings: readonly Outline[]): boolean {
  let inside = false;
  for (const ring of rings) {
    let from = ring.at(-1);
    for (const to of ring) {
      if (
        from !== undefined &&
        from.xM > point.xM !== to.xM > point.xM &&
        point.yM < from.yM + ((to.yM - from.yM) * (point.xM - from.xM)) / (to.xM - from.xM)
      ) {
        inside = !inside;
      }
      from = to;
    }
  }
  return inside;
}
