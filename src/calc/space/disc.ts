import { finite, positive } from '../argument.ts';
import type { Outline, Point } from './plane.ts';

/**
 * How far a drawn circle may stand outside the true one: 0.25 mm. With the 0.5 mm that count as touching, nothing that
 * a disc truly goes into by more than that is missed, and nothing farther than 0.25 mm from it is accused. Own choice.
 */
export const ARC_DEVIATION_M = 0.00025;

/**
 * The corners of a polyline about an arc: it touches the arc in its ends and between every two corners, and stands
 * outside it by at most `ARC_DEVIATION_M` at the corners.
 *
 *     R = r / cos(δ / 2)        R − r ≤ deviation
 *
 * r: radius, m (> 0); δ: angle between two touching points; R: distance of the corners from the centre.
 */
function cornersAbout(centre: Point, radiusM: number, fromAngle: number, sweep: number): Point[] {
  const halfStep = Math.acos(radiusM / (radiusM + ARC_DEVIATION_M));
  const sides = Math.ceil(sweep / (2 * halfStep) / 4) * 4;
  const step = sweep / sides;
  const cornerRadiusM = radiusM / Math.cos(step / 2);
  return Array.from({ length: sides }, (_, index) => {
    const angle = fromAngle + (index + 0.5) * step;
    return {
      xM: centre.xM + cornerRadiusM * Math.cos(angle),
      yM: centre.yM + cornerRadiusM * Math.sin(angle),
    };
  });
}

/**
 * A disc as an outline: a regular polygon about the circle. The number of its sides is a multiple of four and one of
 * them faces each way, so that it is exactly as long and as wide as the disc; elsewhere it stands out by at most
 * `ARC_DEVIATION_M`, and never in. Its area is too great by a factor of at most R² / r².
 *
 * radiusM > 0. Throws RangeError if it is not, or the centre is not finite.
 */
export function disc(centre: Point, radiusM: number): Outline {
  finite(centre.xM, 'The centre of a disc');
  finite(centre.yM, 'The centre of a disc');
  return cornersAbout(centre, positive(radiusM, 'The radius of a disc'), 0, 2 * Math.PI);
}

/**
 * The quarter of a disc between a direction on the plan and the direction square to it: what a door leaf sweeps as it
 * opens by 90°. Both straight edges are exact; the arc stands out by at most `ARC_DEVIATION_M`, and never in.
 *
 * `fromAngle`: of the first edge, radians from the x axis (rearward) towards the y axis (right); radiusM > 0.
 * Throws RangeError if a value is not finite or the radius is not greater than 0.
 */
export function quarterDisc(centre: Point, radiusM: number, fromAngle: number): Outline {
  finite(centre.xM, 'The hinge');
  finite(centre.yM, 'The hinge');
  finite(fromAngle, 'The direction of the closed leaf');
  positive(radiusM, 'The width of the leaf');
  const at = (angle: number): Point => ({
    xM: centre.xM + radiusM * Math.cos(angle),
    yM: centre.yM + radiusM * Math.sin(angle),
  });
  const arc = cornersAbout(centre, radiusM, fromAngle, Math.PI / 2);
  return [centre, at(fromAngle), ...arc, at(fromAngle + Math.PI / 2)];
}
