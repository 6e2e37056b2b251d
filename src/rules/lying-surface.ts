import type { Box3, Layout, Solid } from '../build/layout.ts';
import { boxAbout, boxesBeside } from '../calc/space/box-cover.ts';
import { intersection } from '../calc/space/clip.ts';
import { extentOf, freeBoxes } from '../calc/space/packing.ts';
import { boundsOf, edgesOf, type Outline, outlineArea, rectangle } from '../calc/space/plane.ts';

/** What one sits or lies on: the thing itself, or the mattress or cushions on it. */
export interface Surface {
  readonly outline: Outline;
  readonly box: Box3;
  /** The mattress or cushions; none where the plan names none. */
  readonly cushions: readonly Solid[];
}

/** What stands on a bed or seat and covers this part of it is its mattress or a cushion, not a pillow: own choice. */
const leastCovered = 0.3;

const sidesOf = ({ leastXM, leastYM, mostXM, mostYM }: Box3): readonly [number, number] => [
  mostXM - leastXM,
  mostYM - leastYM,
];

const footprintM2 = ({ prism }: Solid): number => outlineArea(prism.outline);

export function surfaceOf(thing: Solid, { solids }: Layout): Surface {
  const cushions = solids.filter(
    (solid) =>
      solid.hosts[0] === thing.name &&
      !solid.isInside &&
      footprintM2(solid) >= leastCovered * footprintM2(thing),
  );
  const [first, ...more] = cushions;
  if (!first) return { outline: thing.prism.outline, box: thing.box, cushions };
  const all = boundsOf(cushions.flatMap(({ prism }) => prism.outline));
  // A mattress that hangs over its frame bears nobody there.
  const [leastXM, mostXM] = [
    Math.max(all.leastXM, thing.box.leastXM),
    Math.min(all.mostXM, thing.box.mostXM),
  ];
  const [leastYM, mostYM] = [
    Math.max(all.leastYM, thing.box.leastYM),
    Math.min(all.mostYM, thing.box.mostYM),
  ];
  if (mostXM <= leastXM || mostYM <= leastYM)
    return { outline: thing.prism.outline, box: thing.box, cushions: [] };
  return {
    outline:
      more.length === 0
        ? first.prism.outline
        : rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM),
    box: {
      leastXM,
      mostXM,
      leastYM,
      mostYM,
      bottomM: Math.min(...cushions.map(({ box }) => box.bottomM)),
      topM: Math.max(...cushions.map(({ box }) => box.topM)),
    },
    cushions,
  };
}

/** The longer and the shorter side. */
export function longAndShortM(box: Box3): readonly [number, number] {
  const [lengthM, widthM] = sidesOf(box);
  return [Math.max(lengthM, widthM), Math.min(lengthM, widthM)];
}

/**
 * How wide and how deep a seat is: of the greatest rectangles that lie in it, the longest long side and the longest
 * short one. So a bench round a corner is as deep as its arms, not as the corner.
 */
export function widthAndDepthM(seat: Solid, { box, cushions }: Surface): readonly [number, number] {
  const seats =
    cushions.length === 0
      ? [seat.prism.outline]
      : intersection(
          cushions.map(({ prism }) => prism.outline),
          [seat.prism.outline],
        ).outlines;
  const inSeats = seats.every(isSquare) ? seats.flatMap(rectanglesIn) : [];
  const sides = inSeats.length > 0 ? inSeats : [sidesOf(box)];
  return [
    Math.max(...sides.map((each) => Math.max(...each))),
    Math.max(...sides.map((each) => Math.min(...each))),
  ];
}

const isSquare = (outline: Outline): boolean =>
  edgesOf(outline).every(([from, to]) => from.xM === to.xM || from.yM === to.yM);

function rectanglesIn(outline: Outline): (readonly [number, number])[] {
  const body = { outline, bottomM: 0, topM: 1 };
  return freeBoxes(boxAbout(body), boxesBeside(body)).map((free) => {
    const [lengthM, widthM] = extentOf(free);
    return [lengthM, widthM] as const;
  });
}
