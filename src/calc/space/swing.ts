import { finite, positive } from '../argument.ts';
import { disc, quarterDisc } from './disc.ts';
import { checked, type Outline, type Point, rectangle } from './plane.ts';
import type { Prism } from './prism.ts';

/** The footprint of a box that stands square to the van: least x and y, length along the van, width across. */
export interface Footprint {
  readonly xM: number;
  readonly yM: number;
  readonly lengthM: number;
  readonly widthM: number;
}

/** An upright face of a box, by the way it looks. */
export type Face = 'front' | 'rear' | 'left' | 'right';

/** The way a face looks, as an angle from the x axis (rearward) towards the y axis (right). */
const LOOKS: Readonly<Record<Face, number>> = {
  rear: 0,
  right: Math.PI / 2,
  front: Math.PI,
  left: -Math.PI / 2,
};

function checkedFootprint(box: Footprint): Footprint {
  rectangle(box.xM, box.yM, box.lengthM, box.widthM);
  return box;
}

const widthOf = (box: Footprint, face: Face): number =>
  face === 'front' || face === 'rear' ? box.widthM : box.lengthM;

/** The corner at the left or right end of a face, as seen by someone who stands in front of it. */
function endOf({ xM, yM, lengthM, widthM }: Footprint, face: Face, end: 'left' | 'right'): Point {
  const atRear =
    face === 'rear' || (face === 'left' && end === 'right') || (face === 'right' && end === 'left');
  const atRight =
    face === 'right' || (face === 'rear' && end === 'right') || (face === 'front' && end === 'left');
  return { xM: atRear ? xM + lengthM : xM, yM: atRight ? yM + widthM : yM };
}

function noWiderThanFace(sizeM: number, faceM: number, what: string): number {
  if (positive(sizeM, what) > faceM + 1e-9) {
    throw new RangeError(`${what} must not be more than the ${faceM} m of the box, not ${sizeM} m.`);
  }
  return sizeM;
}

/**
 * What a hinged door sweeps on the plan as it opens by 90°: the quarter of a disc about the hinge.
 *
 * The hinge is at the left or right end of the face, as seen by someone who stands in front of the door and looks at
 * it. The arc stands out of the true one by at most 0.25 mm and never in.
 *
 * Throws RangeError if a value is not finite, a size is not greater than 0, or the leaf is wider than the face.
 */
export function doorSweep(box: Footprint, face: Face, hinge: 'left' | 'right', leafWidthM: number): Outline {
  const faceM = widthOf(checkedFootprint(box), face);
  const radiusM = noWiderThanFace(leafWidthM, faceM, 'The leaf of a door');
  // Someone looking at the face has it running to the right from its left end, which is the way it looks turned on by
  // 90°; from its right end it runs the way it looks turned back by 90°.
  const fromAngle = hinge === 'left' ? LOOKS[face] : LOOKS[face] - Math.PI / 2;
  return quarterDisc(endOf(box, face, hinge), radiusM, fromAngle);
}

/**
 * What a drawer covers on the plan when it is pulled out: a rectangle in front of the face, as wide as the face and as
 * deep as the travel. Throws RangeError if a value is not finite or a size or the travel is not greater than 0.
 */
export function drawerTravel(box: Footprint, face: Face, travelM: number): Outline {
  const { xM, yM, lengthM, widthM } = checkedFootprint(box);
  positive(travelM, 'The travel of a drawer');
  if (face === 'front') return rectangle(xM - travelM, yM, travelM, widthM);
  if (face === 'rear') return rectangle(xM + lengthM, yM, travelM, widthM);
  if (face === 'left') return rectangle(xM, yM - travelM, lengthM, travelM);
  return rectangle(xM, yM + widthM, lengthM, travelM);
}

/**
 * The space above a box that a lid needs as it opens from flat to upright: in side view the quarter of a disc about
 * the hinge, here the upright body about it. It stands on the strip that the closed lid covers (from the face it is
 * hinged at, as deep as the lid) and is as high as the lid is deep.
 *
 * The corner above the free edge, which the lid never enters, is counted in.
 *
 * Throws RangeError if a value is not finite, a size is not greater than 0, or the lid is deeper than the box.
 */
export function lidSwing(box: Footprint, boxTopM: number, hingedAt: Face, lidDepthM: number): Prism {
  const { xM, yM, lengthM, widthM } = checkedFootprint(box);
  const alongVan = hingedAt === 'front' || hingedAt === 'rear';
  const depthM = noWiderThanFace(lidDepthM, alongVan ? lengthM : widthM, 'The depth of a lid');
  const outline = alongVan
    ? rectangle(hingedAt === 'front' ? xM : xM + lengthM - depthM, yM, depthM, widthM)
    : rectangle(xM, hingedAt === 'left' ? yM : yM + widthM - depthM, lengthM, depthM);
  const bottomM = finite(boxTopM, 'The top of the box');
  return { outline, bottomM, topM: bottomM + depthM };
}

/**
 * What a swivelling seat sweeps on the plan in a full turn: the disc about its pivot out to its farthest corner. Errors
 * as `outlineArea`, or if the pivot is not finite.
 */
export function swivelSweep(seat: Outline, pivot: Point): Outline {
  const radii = checked(seat, 'The seat').map(({ xM, yM }) => Math.hypot(xM - pivot.xM, yM - pivot.yM));
  return disc(pivot, Math.max(...radii));
}
