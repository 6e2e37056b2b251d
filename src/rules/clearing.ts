import type { Box3, FixedPart, Layout, Solid } from '../build/layout.ts';
import { type ClearingMove, clearingMoves, type Direction } from '../calc/space/clearing-move.ts';
import { overlap } from '../calc/space/clip.ts';
import type { BoxSize } from '../calc/space/fit-in.ts';
import { type Bounds, boundsOf, isBox, type Outline, TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import { type Prism, prismOverlap } from '../calc/space/prism.ts';
import { outOfShell } from '../calc/space/shell.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { boxesMeet, solidsAbout } from './solids-about.ts';

export interface Move {
  readonly direction: Direction | 'up' | 'down';
  readonly distanceM: number;
}

/** A body that moves, and one that it must come free of. */
export interface Meeting {
  readonly moving: Prism;
  readonly fixed: Prism;
}

/** A thing that could give way, and the bodies that it must come free of. */
export interface Mover {
  readonly solid: Solid;
  readonly from: readonly Prism[];
  /** What else its move must mend: what it carries, or what the other carries. */
  readonly along?: readonly Meeting[];
}

/** One straight move that frees a thing. */
export interface Mend {
  readonly solid: Solid;
  readonly move: Move;
  /** What it would stand in after the move. */
  readonly blockedBy?: string;
  /** It ends outside the space that it belongs to. */
  readonly leaves: boolean;
}

/**
 * Rounded up to a whole millimetre, so that doing what is said is enough. A hundredth of one is what slanted edges are
 * rounded by, and not worth the next.
 */
export const upToMillimetre = (lengthM: number): number => Math.ceil(lengthM * 1000 - 0.01) / 1000;

export const boxOf = (prism: Prism): Box3 => ({
  ...boundsOf(prism.outline),
  bottomM: prism.bottomM,
  topM: prism.topM,
});

export const sizeOf = ({ leastXM, leastYM, mostXM, mostYM, bottomM, topM }: Box3): BoxSize => ({
  lengthM: mostXM - leastXM,
  widthM: mostYM - leastYM,
  heightM: topM - bottomM,
});

function sharedBounds(a: Outline, b: Outline): Bounds {
  const [own, other] = [boundsOf(a), boundsOf(b)];
  if (!isBox(a, own) || !isBox(b, other)) return boundsOf(overlap(a, b).flat());
  return {
    leastXM: Math.max(own.leastXM, other.leastXM),
    leastYM: Math.max(own.leastYM, other.leastYM),
    mostXM: Math.min(own.mostXM, other.mostXM),
    mostYM: Math.min(own.mostYM, other.mostYM),
  };
}

/** The box about what two bodies share. They overlap. */
export function sharedBox(a: Prism, b: Prism): Box3 {
  return {
    ...sharedBounds(a.outline, b.outline),
    bottomM: Math.max(a.bottomM, b.bottomM),
    topM: Math.min(a.topM, b.topM),
  };
}

/** How deep two bodies are in each other: the least extent of what they share. */
export const depthOf = (shared: Box3): number => Math.min(...Object.values(sizeOf(shared)));

const steps: Readonly<Record<Move['direction'], readonly [x: number, y: number, z: number]>> = {
  forward: [-1, 0, 0],
  rearward: [1, 0, 0],
  left: [0, -1, 0],
  right: [0, 1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};

export function moved({ outline, bottomM, topM }: Prism, { direction, distanceM }: Move): Prism {
  const [x, y, z] = steps[direction];
  return {
    outline:
      z === 0 ? outline.map(({ xM, yM }) => ({ xM: xM + x * distanceM, yM: yM + y * distanceM })) : outline,
    bottomM: bottomM + z * distanceM,
    topM: topM + z * distanceM,
  };
}

/**
 * `clearingMoves`, with a short way for boxes, which most things are: the polygon library takes a millisecond for each
 * pair, and a crowded van has hundreds.
 */
function movesApart(moving: Outline, fixed: Outline): readonly ClearingMove[] {
  const [own, other] = [boundsOf(moving), boundsOf(fixed)];
  if (!isBox(moving, own) || !isBox(fixed, other)) return clearingMoves(moving, fixed);
  return [
    { direction: 'forward', distanceM: own.mostXM - other.leastXM },
    { direction: 'rearward', distanceM: other.mostXM - own.leastXM },
    { direction: 'left', distanceM: own.mostYM - other.leastYM },
    { direction: 'right', distanceM: other.mostYM - own.leastYM },
  ];
}

const meetingsOf = ({ solid, from, along = [] }: Mover): readonly Meeting[] => [
  ...from.map((fixed) => ({ moving: solid.prism, fixed })),
  ...along,
];

/** The straight moves that free bodies of all that they meet at once, in whole millimetres. */
function freeingMoves(meetings: readonly Meeting[]): Move[] {
  const farthest = new Map<Move['direction'], number>();
  const note = ({ direction, distanceM }: Move) =>
    farthest.set(direction, Math.max(farthest.get(direction) ?? 0, upToMillimetre(distanceM)));
  for (const { moving, fixed } of meetings) {
    for (const move of movesApart(moving.outline, fixed.outline)) note(move);
    note({ direction: 'up', distanceM: fixed.topM - moving.bottomM });
    note({ direction: 'down', distanceM: moving.topM - fixed.bottomM });
  }
  const moves = [...farthest].map(([direction, distanceM]): Move => ({ direction, distanceM }));
  // Free of one of several, it may have come into another.
  return meetings.length === 1
    ? moves
    : moves.filter((move) =>
        meetings.every(({ moving, fixed }) => !prismOverlap(moved(moving, move), fixed)),
      );
}

/** Finds the shortest move after which things no longer stand in each other; the first mover moves most willingly. */
export function mender(layout: Layout): (movers: readonly Mover[]) => Mend | undefined {
  const known = new Map(layout.solids.map((solid) => [solid.name, solid]));
  const carriedBy = new Map<string, Solid[]>();
  for (const solid of layout.solids) {
    for (const host of solid.hosts) {
      const others = carriedBy.get(host);
      if (others) others.push(solid);
      else carriedBy.set(host, [solid]);
    }
  }
  /** The thing that a thing lies in, alone or on top of others; a thing without known room is around nothing. */
  const enclosing = new Map(
    layout.solids.map((solid) => {
      const outwards = [solid, ...solid.hosts.map((host) => known.get(host))];
      const at = solid.hosts.findIndex((host, index) => outwards[index]?.isInside && known.has(host));
      return [solid, solid.hosts[at]] as const;
    }),
  );
  const parts = layout.fixedParts.map((part) => ({ part, box: boxOf(part.prism) }));
  const about = solidsAbout(layout.solids);

  /** What goes along on top of a thing; what is in it takes no room of its own. */
  const ridersOf = ({ name }: Solid): readonly Solid[] =>
    (carriedBy.get(name) ?? []).filter(({ isInside, hosts }) => {
      const between = hosts.slice(0, hosts.indexOf(name));
      return !isInside && between.every((host) => known.get(host)?.isInside === false);
    });

  /** What the thing, or what rides on it, would stand in after a move. */
  function blockerOf(mover: Mover, move: Move): string | undefined {
    const { solid } = mover;
    const own = new Set([solid, ...(carriedBy.get(solid.name) ?? [])]);
    const sunkInto = new Set(solid.hosts.filter((host) => standsIn(solid.prism, known.get(host))));
    // A bed frame over a wheel arch stays over it.
    const others = parts.filter(
      ({ part: { prism } }) =>
        meetingsOf(mover).some(({ fixed }) => fixed === prism) || !standsIn(solid.prism, { prism }),
    );
    for (const { prism } of [solid, ...ridersOf(solid)]) {
      const after = moved(prism, move);
      const box = boxOf(after);
      const blocking =
        about(box).find(
          (other) =>
            enclosing.get(other) === enclosing.get(solid) &&
            !own.has(other) &&
            !sunkInto.has(other.name) &&
            prismOverlap(after, other.prism) !== undefined,
        ) ??
        others.find(({ part, box: other }) => boxesMeet(box, other) && prismOverlap(after, part.prism))?.part;
      if (blocking) return blocking.name;
    }
    return undefined;
  }

  const staysIn = (solid: Solid, move: Move): boolean => {
    const after = moved(solid.prism, move);
    return (
      staysWhereItBelongs(layout, solid, after) &&
      staysWithHost(known.get(solid.hosts[0] ?? ''), solid, after)
    );
  };

  return (movers) => {
    const candidates = movers
      .flatMap((mover, rank) => freeingMoves(meetingsOf(mover)).map((move) => ({ mover, move, rank })))
      .sort((a, b) => costOf(a) - costOf(b) || a.rank - b.rank);
    const staying = candidates.filter(({ mover, move }) => staysIn(mover.solid, move));
    let second: Mend | undefined;
    for (const { mover, move } of staying) {
      const blockedBy = blockerOf(mover, move);
      const mend = { solid: mover.solid, move, leaves: false };
      if (blockedBy === undefined) return mend;
      if (isLevel(move)) second ??= { ...mend, blockedBy };
    }
    const last = candidates.find(({ move }) => isLevel(move)) ?? candidates[0];
    return second ?? (last && { solid: last.mover.solid, move: last.move, leaves: true });
  };
}

/** A thing that comes later among the movers moves only where that more than halves the way. */
const costOf = ({ move, rank }: { readonly move: Move; readonly rank: number }): number =>
  move.distanceM * (1 + rank);

const isLevel = ({ direction }: Move): boolean => direction !== 'up' && direction !== 'down';

const standsIn = (prism: Prism, other: Pick<Solid | FixedPart, 'prism'> | undefined): boolean =>
  other !== undefined && prismOverlap(prism, other.prism) !== undefined;

/** A move must not take a thing through the shell: neither out of it, nor into it. */
function staysWhereItBelongs({ shell, heightM }: Layout, solid: Solid, after: Prism): boolean {
  const { leans, prism, whereabouts } = solid;
  const { leastXM, mostXM } = boundsOf(after.outline);
  if (whereabouts === 'under the floor') return after.topM <= TOUCH_TOLERANCE_M;
  if (whereabouts === 'in the cab') return mostXM <= TOUCH_TOLERANCE_M;
  if (whereabouts === 'on the roof') return after.bottomM >= heightM - TOUCH_TOLERANCE_M;
  if (whereabouts === 'behind the doors') return leastXM >= shell.lengthM - TOUCH_TOLERANCE_M;
  const before = outOfShell(prism, shell, { leans });
  return (
    after.bottomM >= Math.min(0, prism.bottomM) - TOUCH_TOLERANCE_M &&
    outOfShell(after, shell, { leans }).every(({ face, byM }) =>
      before.some((was) => was.face === face && was.byM >= byM - TOUCH_TOLERANCE_M),
    )
  );
}

/** What lies in a thing stays in it, and what stands on one does not come to hang over its edge. */
function staysWithHost(host: Solid | undefined, { box, isInside }: Solid, after: Prism): boolean {
  if (!host) return true;
  const afterBox = boxOf(after);
  if (!isInside) return !liesOver(host.box, box) || liesOver(host.box, afterBox);
  return (
    liesOver(host.box, afterBox) &&
    after.bottomM >= host.box.bottomM - TOUCH_TOLERANCE_M &&
    after.topM <= host.box.topM + TOUCH_TOLERANCE_M
  );
}

const liesOver = (host: Box3, box: Box3): boolean =>
  box.leastXM >= host.leastXM - TOUCH_TOLERANCE_M &&
  box.mostXM <= host.mostXM + TOUCH_TOLERANCE_M &&
  box.leastYM >= host.leastYM - TOUCH_TOLERANCE_M &&
  box.mostYM <= host.mostYM + TOUCH_TOLERANCE_M;

/** What has to come off a thing instead of the move, and the size it comes off. */
const cuts: Readonly<Record<Move['direction'], readonly [side: string, size: keyof BoxSize]>> = {
  forward: ['rear', 'lengthM'],
  rearward: ['front', 'lengthM'],
  left: ['right', 'widthM'],
  right: ['left', 'widthM'],
  up: ['bottom', 'heightM'],
  down: ['top', 'heightM'],
};

/** "Move fridge 40 mm rearward." */
export function mendInWords({ solid, move, blockedBy, leaves }: Mend): Phrase {
  const { direction, distanceM } = move;
  const by = length(distanceM);
  if (direction === 'up') return say`Lift ${solid.name} by ${by}.`;
  if (direction === 'down') return say`Lower ${solid.name} by ${by}.`;
  const way = direction === 'left' || direction === 'right' ? `to the ${direction}` : direction;
  const [side, size] = cuts[direction];
  const smaller =
    distanceM < sizeOf(solid.box)[size] - TOUCH_TOLERANCE_M
      ? say`make ${solid.name} ${by} smaller on its ${side} side`
      : undefined;
  if (leaves)
    return smaller
      ? say`No straight move keeps it where it belongs: ${smaller}, or find another place for it.`
      : say`It would have to move ${by} ${way}, where there is no room for it: find another place for ${solid.name}.`;
  const moving = say`Move ${solid.name} ${by} ${way}`;
  if (blockedBy === undefined) return say`${moving}.`;
  const orSmaller = smaller ? say`, or ${smaller}` : '';
  return say`${moving} and make room for it at ${blockedBy}${orSmaller}.`;
}
