import { disc } from '../calc/space/disc.ts';
import { type Outline, outlineArea, outlineCentroid, type Point, rectangle } from '../calc/space/plane.ts';
import type { Standing } from '../plan/cross-check.ts';

/** How a thing fills its box. */
export interface Shape {
  /** Seen from above, from the front left corner of the box; undefined where the box is not known whole. */
  readonly outline?: Outline;
  /** The part of the box that it takes: 1 for a box. */
  readonly fillingOfBox: number;
  /** From the middle of the box to the middle of the thing, where they differ. */
  readonly offCentre?: Point;
}

const wholeBox: Shape = { fillingOfBox: 1 };

/** The plan's checks see to it that the corners of an outline lie in the box, and a cut-out leaves something of it. */
export function shapeOf({ size, shape, outline: corners, cut_out: cutOut }: Standing): Shape {
  const lengthM = size?.length?.value;
  const widthM = size?.width?.value;
  if (lengthM === undefined || widthM === undefined) return wholeBox;
  if (shape === 'cylinder') {
    const radiusM = lengthM / 2;
    return { outline: disc({ xM: radiusM, yM: radiusM }, radiusM), fillingOfBox: Math.PI / 4 };
  }
  if (corners)
    return within(
      corners.map(({ from_front, from_left }) => ({ xM: from_front.value, yM: from_left.value })),
      lengthM,
      widthM,
    );
  if (cutOut)
    return within(
      cornered(lengthM, widthM, cutOut.corner, cutOut.length.value, cutOut.width.value),
      lengthM,
      widthM,
    );
  return { ...wholeBox, outline: rectangle(0, 0, lengthM, widthM) };
}

function within(outline: Outline, lengthM: number, widthM: number): Shape {
  const centroid = outlineCentroid(outline);
  return {
    outline,
    fillingOfBox: outlineArea(outline) / (lengthM * widthM),
    offCentre: { xM: centroid.xM - lengthM / 2, yM: centroid.yM - widthM / 2 },
  };
}

type Corner = NonNullable<Standing['cut_out']>['corner'];

/** A rectangle without one of its corners: an L. */
function cornered(
  lengthM: number,
  widthM: number,
  corner: Corner,
  cutLengthM: number,
  cutWidthM: number,
): Outline {
  // Drawn with the front left corner cut, and turned over as needed.
  const points: readonly (readonly [number, number])[] = [
    [cutLengthM, 0],
    [lengthM, 0],
    [lengthM, widthM],
    [0, widthM],
    [0, cutWidthM],
    [cutLengthM, cutWidthM],
  ];
  return points.map(([xM, yM]) => ({
    xM: corner.startsWith('rear') ? lengthM - xM : xM,
    yM: corner.endsWith('right') ? widthM - yM : yM,
  }));
}
