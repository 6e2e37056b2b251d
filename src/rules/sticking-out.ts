import type { Box3, Layout, ShellOpening, Solid } from '../build/layout.ts';
import type { BoxSize } from '../calc/space/fit-in.ts';
import { TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { upToMillimetre } from './clearing.ts';
import { listed } from './fit-finding.ts';

/** The sides of a space, as one who stands in it and looks forward says them. */
export type Side = 'front' | 'rear' | 'left' | 'right' | 'top' | 'bottom';

/** How far something sticks out of one side of a space. */
export interface Excess {
  readonly side: Side;
  readonly byM: number;
}

/** The sides on which one box sticks out of another by more than touching, the worst first. */
export const excessOf = (box: Box3, space: Box3): Excess[] =>
  [
    { side: 'front' as const, byM: space.leastXM - box.leastXM },
    { side: 'rear' as const, byM: box.mostXM - space.mostXM },
    { side: 'left' as const, byM: space.leastYM - box.leastYM },
    { side: 'right' as const, byM: box.mostYM - space.mostYM },
    { side: 'top' as const, byM: box.topM - space.topM },
    { side: 'bottom' as const, byM: space.bottomM - box.bottomM },
  ]
    .filter(({ byM }) => byM > TOUCH_TOLERANCE_M)
    .sort((a, b) => b.byM - a.byM);

const axes = [
  { sides: ['front', 'rear'], size: 'lengthM', extent: 'long', back: { front: 'rearward', rear: 'forward' } },
  {
    sides: ['left', 'right'],
    size: 'widthM',
    extent: 'wide',
    back: { left: 'to the right', right: 'to the left' },
  },
  { sides: ['top', 'bottom'], size: 'heightM', extent: 'high', back: { top: 'down', bottom: 'up' } },
] as const;

const backFrom: Readonly<Record<Side, string>> = { ...axes[0].back, ...axes[1].back, ...axes[2].back };

/** Rounded down to a whole millimetre, so that what is made so large does fit. */
const downToMillimetre = (lengthM: number): number => Math.floor(lengthM * 1000 + 1e-6) / 1000;

/** The sizes in which something is too large for the room there is. */
export const tooLarge = (size: BoxSize, room: BoxSize): readonly (keyof BoxSize)[] =>
  axes.map((axis) => axis.size).filter((each) => size[each] > room[each] + TOUCH_TOLERANCE_M);

/** "Move bed 50 mm forward and make it at most 1,760 mm wide." `room` is as large as the thing may be. */
export function bringIn(name: string, excesses: readonly Excess[], size: BoxSize, room: BoxSize): Phrase {
  const oversized = tooLarge(size, room);
  const moves: Phrase[] = [];
  const limits: Phrase[] = [];
  for (const axis of axes) {
    const [excess] = excesses.filter(({ side }) => axis.sides.some((each) => each === side));
    if (!excess) continue;
    if (oversized.includes(axis.size))
      limits.push(say`${length(Math.max(0, downToMillimetre(room[axis.size])))} ${axis.extent}`);
    else moves.push(say`${length(upToMillimetre(excess.byM))} ${backFrom[excess.side]}`);
  }
  const shrink = limits.length > 0 ? say`at most ${listed(limits)}` : undefined;
  if (moves.length === 0) return shrink ? say`Make ${name} ${shrink}.` : [];
  const move = say`Move ${name} ${listed(moves)}`;
  return shrink ? say`${move}, and make it ${shrink}.` : say`${move}.`;
}

/** How much larger than its opening something may be that goes through the shell: for frames and seals. Own choice. */
const frameM = 0.01;

const surfaces: Readonly<Record<Side, ShellOpening['surface']>> = {
  front: 'bulkhead',
  rear: 'rear doors',
  left: 'left wall',
  right: 'right wall',
  top: 'ceiling',
  bottom: 'floor',
};

/** Whether a thing goes out through an opening made for it. Nothing is meant to stick out of a door. */
export function goesThroughOpening({ openings }: Layout, { box }: Pick<Solid, 'box'>, side: Side): boolean {
  const lengthways = side !== 'front' && side !== 'rear';
  const sideways = side !== 'left' && side !== 'right';
  const upwards = side !== 'top' && side !== 'bottom';
  return openings.some(
    ({ surface, kind, box: hole }) =>
      surface === surfaces[side] &&
      kind !== 'door' &&
      (!lengthways || (box.leastXM >= hole.leastXM - slackM && box.mostXM <= hole.mostXM + slackM)) &&
      (!sideways || (box.leastYM >= hole.leastYM - slackM && box.mostYM <= hole.mostYM + slackM)) &&
      (!upwards || (box.bottomM >= hole.bottomM - slackM && box.topM <= hole.topM + slackM)),
  );
}

/** With what rounding adds, so that just as large is enough. */
const slackM = frameM + 1e-9;

/** The lining of the rear doors, where the plan says how thick it is. */
export const isRearDoorLining = ({ path }: { readonly path: readonly (string | number)[] }): boolean =>
  path[2] === 'rear_door_thickness';
