import type { Layout, Solid } from '../../build/layout.ts';
import { difference } from '../../calc/space/clip.ts';
import { boundsOf } from '../../calc/space/plane.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import type { Excess, Side } from '../sticking-out.ts';
import { fromLeftWall, fromTo, inBrackets, placePaths } from './box.ts';

/*
 * How far a thing sticks out of what holds it: edge by edge, or where a corner of that is cut off.
 */

/** A thing and what it stands in or on. */
export interface Held {
  readonly solid: Solid;
  readonly host: Solid;
}

const counted: Readonly<Record<Side, string>> = {
  front: 'from the front of the load bay',
  rear: 'from the front of the load bay',
  left: 'from the left wall',
  right: 'from the left wall',
  top: 'from the floor',
  bottom: 'from the floor',
};

/** On the worst side: the place of one edge less that of the other. */
export function stickingSteps(
  { solid, host }: Held,
  excesses: readonly Excess[],
  room: Layout,
): readonly Step[] | undefined {
  const [worst] = excesses;
  if (!worst) return undefined;
  const { side, byM } = worst;
  const [own, its] = [
    edgeOf(fromLeftWall(solid.box, room), side),
    edgeOf(fromLeftWall(host.box, room), side),
  ];
  // Towards the front, the left and the floor places grow smaller.
  const isBack = side === 'front' || side === 'left' || side === 'bottom';
  const [greater, smaller] = isBack ? [its, own] : [own, its];
  const ofSome = excesses.length > 1 ? `, the worst of ${excesses.length} sides` : '';
  return [
    {
      what: `Where ${solid.name} ends ${sides[side]}, counted ${counted[side]}${ofSome}`,
      result: length(own),
      paths: placePaths(solid, room),
    },
    {
      what: `Where ${host.name} ends there, outside`,
      result: length(its),
      paths: placePaths(host, room),
    },
    {
      what: 'How far it sticks out: the one less the other',
      sum: say`${inBrackets(greater)} − ${inBrackets(smaller)}`,
      result: length(byM),
    },
  ];
}

const edgeOf = (box: Solid['box'], side: Side): number =>
  ({
    front: box.leastXM,
    rear: box.mostXM,
    left: box.leastYM,
    right: box.mostYM,
    top: box.topM,
    bottom: box.bottomM,
  })[side];

/** Of the piece that is outside the outline of its host the lesser of length and width. */
export function cutSteps(held: Held, room: Layout): readonly Step[] {
  const { solid, host } = held;
  const piece = outsideOf(held);
  const { leastXM, mostXM, leastYM, mostYM } = fromLeftWall({ ...solid.box, ...piece }, room);
  const extent = (fromM: number, toM: number): Phrase =>
    say`${fromTo(fromM, toM)}: ${length(toM)} − ${inBrackets(fromM)}`;
  return [
    {
      what: `How long the piece is that is outside the shape of ${host.name}, counted from the front of the load bay`,
      sum: extent(leastXM, mostXM),
      result: length(mostXM - leastXM),
      paths: [...placePaths(solid, room), [...host.path, 'outline']],
    },
    {
      what: 'How wide it is, counted from the left wall',
      sum: extent(leastYM, mostYM),
      result: length(mostYM - leastYM),
    },
    {
      what: 'How far it has to come in: the lesser of the two',
      sum: say`the lesser of ${length(mostXM - leastXM)} and ${length(mostYM - leastYM)}`,
      result: length(Math.min(mostXM - leastXM, mostYM - leastYM)),
    },
  ];
}

/** The bounds of what is outside the outline of its host. */
export const outsideOf = ({ solid, host }: Held) => boundsOf(piecesOutside({ solid, host }).flat());

/** What of a thing is outside the outline of its host. */
export const piecesOutside = ({ solid, host }: Held) =>
  difference([solid.prism.outline], [host.prism.outline]).outlines;

export const sides: Readonly<Record<Side, string>> = {
  front: 'at the front',
  rear: 'at the rear',
  left: 'on the left',
  right: 'on the right',
  top: 'at the top',
  bottom: 'at the bottom',
};
