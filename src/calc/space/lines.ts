import type { PlaceInVan } from './route.ts';

/** A straight line between two places in the van. */
export type Line = readonly [PlaceInVan, PlaceInVan];

const lessened = (a: PlaceInVan, b: PlaceInVan): PlaceInVan => ({
  xM: a.xM - b.xM,
  yM: a.yM - b.yM,
  zM: a.zM - b.zM,
});
const product = (a: PlaceInVan, b: PlaceInVan): number => a.xM * b.xM + a.yM * b.yM + a.zM * b.zM;
const onward = (from: PlaceInVan, way: PlaceInVan, share: number): PlaceInVan => ({
  xM: from.xM + share * way.xM,
  yM: from.yM + share * way.yM,
  zM: from.zM + share * way.zM,
});
const within = (share: number): number => Math.min(1, Math.max(0, share));

/** The length of the straight way between two places, m. */
export const straightDistance = (a: PlaceInVan, b: PlaceInVan): number =>
  Math.hypot(b.xM - a.xM, b.yM - a.yM, b.zM - a.zM);

/** From a place to the nearest place of a line, which may be of no length, m. */
export function distanceToLine(place: PlaceInVan, [from, to]: Line): number {
  const way = lessened(to, from);
  const squared = product(way, way);
  const share = squared === 0 ? 0 : within(product(lessened(place, from), way) / squared);
  return straightDistance(place, onward(from, way, share));
}

/**
 * The least distance of two straight lines in space, m.
 *
 * Lines that are not parallel come nearest where both are square to what joins them, if that is within both; otherwise,
 * and where they are parallel, one of their four ends is nearest.
 *
 * Method: C. Ericson, Real-Time Collision Detection, 5.1.9 (memory).
 */
export function distanceOfLines(a: Line, b: Line): number {
  const ends = [
    distanceToLine(a[0], b),
    distanceToLine(a[1], b),
    distanceToLine(b[0], a),
    distanceToLine(b[1], a),
  ];
  const [wayOfA, wayOfB, apart] = [lessened(a[1], a[0]), lessened(b[1], b[0]), lessened(a[0], b[0])];
  const [aa, ab, bb] = [product(wayOfA, wayOfA), product(wayOfA, wayOfB), product(wayOfB, wayOfB)];
  const turned = aa * bb - ab * ab;
  // The square of the sine of the angle between them; less is rounding.
  if (turned > 1e-12 * aa * bb) {
    const [ca, cb] = [product(wayOfA, apart), product(wayOfB, apart)];
    const shareOfA = (ab * cb - ca * bb) / turned;
    const shareOfB = (aa * cb - ab * ca) / turned;
    if (shareOfA > 0 && shareOfA < 1 && shareOfB > 0 && shareOfB < 1)
      return straightDistance(onward(a[0], wayOfA, shareOfA), onward(b[0], wayOfB, shareOfB));
  }
  return Math.min(...ends);
}
