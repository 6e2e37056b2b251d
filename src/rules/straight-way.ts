import type { Box3, FixedPart, Layout, ShellOpening, Solid } from '../build/layout.ts';
import { clearingMoves } from '../calc/space/clearing-move.ts';
import { type Outline, rectangle, TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import { type Prism, prismOverlap, verticalClearingMove } from '../calc/space/prism.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { upToMillimetre } from './whole-millimetres.ts';

/** The way out of a thing through a surface: the axis, and whether towards its greater values. */
export type Axis = 'x' | 'y' | 'z';
export interface Way {
  readonly axis: Axis;
  readonly forward: boolean;
}

export const wayTo: Readonly<Record<ShellOpening['surface'], Way>> = {
  bulkhead: { axis: 'x', forward: false },
  'rear doors': { axis: 'x', forward: true },
  'left wall': { axis: 'y', forward: false },
  'right wall': { axis: 'y', forward: true },
  floor: { axis: 'z', forward: false },
  ceiling: { axis: 'z', forward: true },
};

export const spanOf = (box: Box3, axis: Axis): readonly [number, number] => {
  if (axis === 'x') return [box.leastXM, box.mostXM];
  return axis === 'y' ? [box.leastYM, box.mostYM] : [box.bottomM, box.topM];
};

/** From the near face of a thing to an opening. */
export const distanceTo = (box: Box3, opening: Box3, { axis, forward }: Way): number =>
  Math.max(
    0,
    forward
      ? spanOf(opening, axis)[0] - spanOf(box, axis)[1]
      : spanOf(box, axis)[0] - spanOf(opening, axis)[1],
  );

/** What a box sweeps from one distance to another before its face; undefined where that is nothing. */
export function swept(box: Box3, { axis, forward }: Way, fromM: number, toM: number): Prism | undefined {
  if (toM - fromM <= TOUCH_TOLERANCE_M) return undefined;
  const [least, most] = spanOf(box, axis);
  const [start, end] = forward ? [most + fromM, most + toM] : [least - toM, least - fromM];
  const part: Box3 =
    axis === 'x'
      ? { ...box, leastXM: start, mostXM: end }
      : axis === 'y'
        ? { ...box, leastYM: start, mostYM: end }
        : { ...box, bottomM: start, topM: end };
  return { outline: planOf(part), bottomM: part.bottomM, topM: part.topM };
}

export const planOf = ({ leastXM, leastYM, mostXM, mostYM }: Box3): Outline =>
  rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM);

type Obstacle = Solid | FixedPart;

const isRearDoors = ({ path }: FixedPart): boolean => path.at(-1) === 'rear_door_thickness';

/** What stands in a sweep: neither what the thing is in or on, nor what is in or on it. */
export function inTheWay(
  thing: Solid,
  sweep: Prism,
  { solids, fixedParts }: Layout,
  doorsOpen: boolean,
): readonly Obstacle[] {
  const things = solids.filter(
    ({ name, hosts }) => name !== thing.name && !thing.hosts.includes(name) && !hosts.includes(thing.name),
  );
  const parts = fixedParts.filter((part) => !part.walkable && !(doorsOpen && isRearDoors(part)));
  return [...things, ...parts].filter(({ prism }) => prismOverlap(prism, sweep) !== undefined);
}

const directionInWords = {
  forward: 'forward',
  rearward: 'rearward',
  left: 'to the left',
  right: 'to the right',
  up: 'up',
  down: 'down',
} as const;

const axisOf = {
  forward: 'x',
  rearward: 'x',
  left: 'y',
  right: 'y',
  up: 'z',
  down: 'z',
} as const;

/** "take crate out or move it 120 mm rearward": aside, not along the way that must be free. */
export function moveAside(other: Obstacle, sweep: Prism, { axis }: Way): Phrase {
  if (!('hosts' in other)) return say`${other.name} is a part of the van and stays, so it needs another way`;
  const vertical = verticalClearingMove(other.prism, sweep);
  const [shortest] = [...clearingMoves(other.prism.outline, sweep.outline), ...(vertical ? [vertical] : [])]
    .filter(({ direction }) => axisOf[direction] !== axis)
    .sort((a, b) => a.distanceM - b.distanceM);
  return shortest
    ? say`take ${other.name} out or move it ${length(upToMillimetre(shortest.distanceM))} ${directionInWords[shortest.direction]}`
    : say`take ${other.name} out`;
}

/** How much of a thing lies beyond an edge of an opening, and the way to move it to mend that. */
export interface Masked {
  readonly side: string;
  readonly byM: number;
  readonly back: string;
}

const edges: Readonly<
  Record<Axis, readonly [low: readonly [string, string], high: readonly [string, string]]>
> = {
  x: [
    ['at its front', 'rearward'],
    ['at its rear', 'forward'],
  ],
  y: [
    ['on its left', 'to the right'],
    ['on its right', 'to the left'],
  ],
  z: [
    ['at its bottom', 'up'],
    ['at its top', 'down'],
  ],
};

/** The part of a thing's face that an opening shows, by area. */
export const shownShare = (box: Box3, opening: ShellOpening, { axis }: Way): number =>
  (['x', 'y', 'z'] as const)
    .filter((each) => each !== axis)
    .reduce((share, each) => {
      const [least, most] = spanOf(box, each);
      const [from, to] = spanOf(opening.box, each);
      return (share * Math.max(0, Math.min(most, to) - Math.max(least, from))) / (most - least);
    }, 1);

export function maskedBy(box: Box3, opening: ShellOpening, { axis }: Way): readonly Masked[] {
  return (['x', 'y', 'z'] as const)
    .filter((each) => each !== axis)
    .flatMap((each): Masked[] => {
      const [least, most] = spanOf(box, each);
      const [from, to] = spanOf(opening.box, each);
      const [low, high] = edges[each];
      return [
        { side: low[0], back: low[1], byM: from - least },
        { side: high[0], back: high[1], byM: most - to },
      ];
    })
    .filter(({ byM }) => byM > TOUCH_TOLERANCE_M)
    .map((masked) => ({ ...masked, byM: upToMillimetre(masked.byM) }));
}
