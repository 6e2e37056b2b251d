import type { Box3 } from '../build/layout.ts';
import type { PlaceInVan } from '../calc/space/route.ts';

/** How far two places are apart, in a straight line, m. */
export const metresApart = (one: PlaceInVan, other: PlaceInVan): number =>
  Math.hypot(one.xM - other.xM, one.yM - other.yM, one.zM - other.zM);

const outside = (valueM: number, leastM: number, mostM: number): number =>
  Math.max(0, leastM - valueM, valueM - mostM);

/** How far a place lies outside a box along the van, across it and in height, m; 0 between two faces. */
export const gapsTo = ({ xM, yM, zM }: PlaceInVan, box: Box3): PlaceInVan => ({
  xM: outside(xM, box.leastXM, box.mostXM),
  yM: outside(yM, box.leastYM, box.mostYM),
  zM: outside(zM, box.bottomM, box.topM),
});

/** From a place to the nearest point of a box, m; 0 within it. */
export function metresToBox(place: PlaceInVan, box: Box3): number {
  const { xM, yM, zM } = gapsTo(place, box);
  return Math.hypot(xM, yM, zM);
}

/** A place as a box without extent. */
export const boxAt = ({ xM, yM, zM }: PlaceInVan): Box3 => ({
  leastXM: xM,
  mostXM: xM,
  leastYM: yM,
  mostYM: yM,
  bottomM: zM,
  topM: zM,
});
