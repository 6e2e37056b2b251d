import type { HeatClearance, Layout, Solid } from '../../build/layout.ts';
import { overlap } from '../../calc/space/clip.ts';
import { type Bounds, boundsOf } from '../../calc/space/plane.ts';
import type { Protrusion } from '../../calc/space/shell.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { inBrackets, placePaths } from './box.ts';
import { beyondSteps } from './shell.ts';

/*
 * How far something that burns is from a hot thing: their edges on that side, or the lining of the load bay.
 */

export const inside: Readonly<Record<HeatClearance['side'], string>> = {
  front: 'in front of it',
  rear: 'behind it',
  left: 'to its left',
  right: 'to its right',
  above: 'above it',
};

export interface Gap {
  readonly zone: HeatClearance;
  readonly hot: Solid;
  readonly solid: Solid;
  readonly isHost: boolean;
  readonly apartM: number;
  readonly room: Layout;
}

const countedFrom: Readonly<Record<HeatClearance['side'], string>> = {
  front: 'from the front of the load bay',
  rear: 'from the front of the load bay',
  left: 'from the left wall at the floor',
  right: 'from the left wall at the floor',
  above: 'from the floor',
};

/** Where the hot thing ends on that side, where the other begins, and what is between. */
export function gapSteps({ zone, hot, solid, isHost, apartM, room }: Gap): readonly Step[] {
  const { side, prism } = zone;
  const hotM = innerEdge(side, boundsOf(prism.outline), prism.bottomM, room);
  const otherM = isHost
    ? outerEdge(side, solid.box, solid.box.topM, room)
    : innerEdge(
        side,
        boundsOf(overlap(prism.outline, solid.prism.outline).flat()),
        solid.prism.bottomM,
        room,
      );
  const [greaterM, smallerM] = side === 'front' || side === 'left' ? [hotM, otherM] : [otherM, hotM];
  const within = greaterM < smallerM ? ', less than nothing: it begins before the hot thing ends' : '';
  return [
    {
      what: `Where ${hot.name} ends, ${inside[side]}, counted ${countedFrom[side]}`,
      result: length(hotM),
      paths: placePaths(hot, room),
    },
    {
      what: isHost
        ? `Where ${solid.name} about it ends on that side, outside`
        : `Where ${solid.name} begins there, its nearest part`,
      result: length(otherM),
      paths: placePaths(solid, room),
    },
    {
      what: 'How far they are apart: d, the one less the other',
      sum: say`${inBrackets(greaterM)} − ${inBrackets(smallerM)}${within}`,
      result: length(apartM),
      paths: [zone.path],
    },
  ];
}

/** The edge of something in a zone that looks to the hot thing; across the van from the left wall. */
function innerEdge(side: HeatClearance['side'], bounds: Bounds, bottomM: number, { widthM }: Layout): number {
  if (side === 'above') return bottomM;
  const { leastXM, mostXM, leastYM, mostYM } = bounds;
  return { front: mostXM, rear: leastXM, left: mostYM + widthM / 2, right: leastYM + widthM / 2 }[side];
}

/** The edge that looks away from it. */
function outerEdge(side: HeatClearance['side'], bounds: Bounds, topM: number, { widthM }: Layout): number {
  if (side === 'above') return topM;
  const { leastXM, mostXM, leastYM, mostYM } = bounds;
  return { front: leastXM, rear: mostXM, left: leastYM + widthM / 2, right: mostYM + widthM / 2 }[side];
}

/** How far the room that it needs reaches beyond a side of the load bay, and what is left of it within. */
export function liningSteps(
  zone: HeatClearance,
  hot: Solid,
  room: Layout,
  protrusion: Protrusion,
): readonly Step[] {
  const { depthM, prism, side, path } = zone;
  const paths = placePaths(hot, room);
  return [
    ...beyondSteps(
      { name: `the room that is to be clear ${inside[side]}`, prism, paths, protrusion },
      room.shell,
      room,
    ),
    {
      what: 'What is clear: d, the room that it needs less what is beyond',
      sum: say`${length(depthM)} − ${length(protrusion.byM)}${protrusion.byM > depthM ? ', less than nothing' : ''}`,
      result: length(Math.max(0, depthM - protrusion.byM)),
      paths: [path],
    },
  ];
}
