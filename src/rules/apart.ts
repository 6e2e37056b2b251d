import type { Box3 } from '../build/layout.ts';
import type { PlaceInVan } from '../calc/space/route.ts';

/** How far two places are apart, in a straight line, m. */
export const metresApart = (one: PlaceInVan, other: PlaceInVan): number =>
  Math.hypot(one.xM - other.xM, one.yM - other.yM, one.zM - other.zM);

const outside = (valueM: number, leastM: number, mostM: number): number =>
  Math.max(0, leastM - valueM, valueM - mostM);

/** From a place to the nearest point of a box, m; 0 within it. */
export const metresToBox = ({ xM, yM, zM }: PlaceInVan, box: Box3): number =>
  Math.hypot(
    outside(xM, box.leastXM, box.mostXM),
    outside(yM, box.leastYM, box.mostYM),
    outside(zM, box.bottomM, box.topM),
  );
