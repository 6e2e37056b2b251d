import type { Layout, Solid } from '../build/layout.ts';
import { overlap } from '../calc/space/clip.ts';
import { boundsOf, TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import { type Prism, prismOverlap } from '../calc/space/prism.ts';
import { outOfShell, type Shell } from '../calc/space/shell.ts';
import { inTheWay, spanOf, swept, type Way } from './straight-way.ts';

/** Where nothing may stand on that floor: above the toes, up to the shoulders of someone who bends down. */
const clearHeight = { bottomM: 0.1, topM: 1.4 };

interface Side {
  readonly words: string;
  readonly way: Way;
}

const sides: readonly Side[] = [
  { words: 'to its left', way: { axis: 'y', forward: false } },
  { words: 'to its right', way: { axis: 'y', forward: true } },
  { words: 'in front of it', way: { axis: 'x', forward: false } },
  { words: 'behind it', way: { axis: 'x', forward: true } },
];

/** Free floor before one side of a thing. */
export interface Place {
  readonly words: string;
  /** Where it begins, before the thing, and how deep it is. */
  readonly startM: number;
  readonly depthM: number;
  /** What stands at its end, and whether it could be moved. */
  readonly end: string;
  readonly endMoves: boolean;
}

/** Farther than any load bay is long. */
const farM = 20;

/** Where something stands before a side, as distances from it. */
interface Stretch {
  readonly fromM: number;
  readonly toM: number;
  readonly name: string;
  readonly endMoves: boolean;
}

/** Free floor before one side, wherever it begins within reach; only what hosts the thing may stand in between. */
function placesBefore(thing: Solid, { words, way }: Side, room: Layout, reachM: number): readonly Place[] {
  const strip = swept({ ...thing.box, ...clearHeight }, way, 0, farM);
  if (!strip) return [];
  const [least, most] = spanOf(thing.box, way.axis);
  const stretches = [...room.solids, ...room.fixedParts.filter(({ walkable }) => !walkable)].flatMap(
    (other): Stretch[] => {
      if (other.name === thing.name || !prismOverlap(strip, other.prism)) return [];
      const [from, to] = spanOf(
        { ...boundsOf(overlap(strip.outline, other.prism.outline).flat()), ...clearHeight },
        way.axis,
      );
      const [fromM, toM] = way.forward ? [from - most, to - most] : [least - to, least - from];
      return [{ fromM, toM, name: other.name, endMoves: 'hosts' in other }];
    },
  );
  const shell = toShell(strip, way, room.shell);
  return [0, ...stretches.map(({ toM }) => toM)].flatMap((startM): Place[] => {
    if (startM > reachM + TOUCH_TOLERANCE_M) return [];
    const between = swept(thing.box, way, 0, startM);
    if (between && inTheWay(thing, between, room, false).length > 0) return [];
    const ahead = stretches.filter(({ toM }) => toM > startM + TOUCH_TOLERANCE_M);
    const end = ahead.reduce<Omit<Stretch, 'toM'>>(
      (nearest, next) => (next.fromM < nearest.fromM ? next : nearest),
      shell,
    );
    const depthM = end.fromM - startM;
    return depthM > TOUCH_TOLERANCE_M
      ? [{ words, startM, depthM, end: end.name, endMoves: end.endMoves }]
      : [];
  });
}

/** From a thing to the inside of the load bay's wall. */
function toShell(strip: Prism, { axis, forward }: Way, shell: Shell): Omit<Stretch, 'toM'> {
  const face = axis === 'x' ? (forward ? 'rear' : 'front') : forward ? 'right' : 'left';
  const byM = outOfShell(strip, shell, { leans: false }).find((each) => each.face === face)?.byM ?? 0;
  const name = {
    rear: 'the rear doors',
    front: 'the bulkhead',
    left: 'the left wall',
    right: 'the right wall',
  }[face];
  return { fromM: farM - byM, name, endMoves: false };
}

/** Free floor beside a thing on all of its sides. */
export const floorBeside = (thing: Solid, room: Layout, reachM: number): readonly Place[] =>
  sides.flatMap((side) => placesBefore(thing, side, room, reachM));
