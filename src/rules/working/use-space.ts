import type { Layout, Solid, UseSpace } from '../../build/layout.ts';
import { boundsOf, type Outline } from '../../calc/space/plane.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { listed } from '../fit-finding.ts';
import { told } from '../told.ts';

/** Something that takes part of the room before a thing. */
interface Taker {
  readonly name: string;
  readonly solid?: Solid;
  readonly leavesM: number;
  readonly pieces: readonly Outline[];
  /** It is a door of the van. */
  readonly opens?: true;
}

/** From the face of a thing to the nearest of what stands in the room before it. */
export function useSpaceSteps(
  space: UseSpace,
  [worst, ...others]: readonly Taker[],
  layout: Layout,
): readonly Step[] {
  const { of, side, depthM, path } = space;
  if (!worst)
    return [
      {
        what: `What is left of the room on the ${side} side of ${of}`,
        sum: say`all that it needs: nothing stands in it`,
        result: length(depthM),
        paths: [path],
      },
    ];
  const { faceM, nearM, from } = placesOf(space, boundsOf(worst.pieces.flat()), layout);
  const isForward = side === 'rear' || side === 'right';
  const rest =
    others.length > 0
      ? say`; the least, since ${listed(others.map(({ name, leavesM }) => say`${name} leaves ${told(leavesM)}`))}`
      : [];
  return [
    {
      what: `Where the ${side} side of ${of} is, ${from}`,
      ...extentSum(space, layout),
      result: length(faceM),
      paths: placeOf(layout.solids.find(({ name }) => name === of)),
    },
    {
      what: worst.opens
        ? `Where the room inside the van ends, at ${worst.name}, ${from}`
        : `How far ${worst.name} reaches into the room before it, ${from}`,
      result: length(nearM),
      paths: placeOf(worst.solid),
    },
    {
      what: `What is left between them, of the room that ${of} needs`,
      sum: say`${isForward ? say`${told(nearM)} − ${told(faceM)}` : say`${told(faceM)} − ${told(nearM)}`}${rest}`,
      result: length(worst.leavesM),
      paths: [path],
    },
  ];
}

/** From where to where the thing stands that the room is before. */
function extentSum({ of, side }: UseSpace, { solids, widthM }: Layout): Pick<Step, 'sum'> {
  const box = solids.find(({ name }) => name === of)?.box;
  if (!box) return {};
  const [least, most] =
    side === 'front' || side === 'rear'
      ? [box.leastXM, box.mostXM]
      : [box.leastYM + widthM / 2, box.mostYM + widthM / 2];
  return { sum: say`it stands from ${told(least)} to ${told(most)}` };
}

const placeOf = (solid: Solid | undefined): readonly PlanPath[] =>
  solid
    ? [
        [...solid.path, 'at'],
        [...solid.path, 'size'],
      ]
    : [];

/** The face, and the end of a body towards it, as a builder measures them: from the front, or from the left. */
function placesOf(
  { side, outline }: UseSpace,
  body: ReturnType<typeof boundsOf>,
  { widthM }: Layout,
): { readonly faceM: number; readonly nearM: number; readonly from: string } {
  const room = boundsOf(outline);
  const halfM = widthM / 2;
  const [front, left] = ['from the front of the load bay', 'from the left of the load bay'];
  return {
    front: { faceM: room.mostXM, nearM: body.mostXM, from: front },
    rear: { faceM: room.leastXM, nearM: body.leastXM, from: front },
    left: { faceM: room.mostYM + halfM, nearM: body.mostYM + halfM, from: left },
    right: { faceM: room.leastYM + halfM, nearM: body.leastYM + halfM, from: left },
  }[side];
}
