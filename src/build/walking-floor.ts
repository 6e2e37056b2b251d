import { contains, difference, intersection, union } from '../calc/space/clip.ts';
import {
  type Bounds,
  boundsNear,
  boundsOf,
  isBox,
  type Outline,
  rectangle,
  TOUCH_TOLERANCE_M,
} from '../calc/space/plane.ts';
import type { Prism } from '../calc/space/prism.ts';
import { type Shell, widthAt } from '../calc/space/shell.ts';
import type { Box3, Layout, ShellOpening, Solid } from './layout.ts';

/*
 * The floor as someone finds it who walks on it: what is in the way, where one comes in, and where one stands to reach
 * a thing.
 */

/**
 * What stands between these heights is in the way of someone who walks: feet step over less than 100 mm, and above the
 * shoulders a locker over the aisle is a matter of headroom. Common practice, no source.
 */
export const bodyBand = { bottomM: 0.1, topM: 1.6 } as const;

/** What is built into a cupboard is reached over its edge from this far: about an arm's length. Own choice. */
const armM = 0.6;

/** A thing this near to a doorway stands in it: someone outside who touches it has not come in. Own choice. */
const doorwayDepthM = 0.1;

/** How far outside a doorway a way begins: enough for the widest body to come through it whole. */
const outsideM = 1;

/** Enough for two pieces of floor to hang together. */
const seamM = 0.01;

/** Something that stands in the way. */
export interface Obstacle {
  readonly name: string;
  readonly outline: Outline;
  readonly bounds: Bounds;
  readonly bottomM: number;
  /** The thing at the root of what it stands in or on; itself, where it stands on the floor. */
  readonly root: string;
}

export interface WalkingFloor {
  /** Inside the walls, without doorways. */
  readonly outline: Outline;
  readonly bounds: Bounds;
  readonly obstacles: readonly Obstacle[];
}

/** A way in: a hole in a wall, with a piece of floor outside it to come from. */
export interface Doorway {
  readonly name: string;
  /** From outside to a little inside the wall. */
  readonly passage: Outline;
  /** The far end of the passage. */
  readonly start: Outline;
  /** The strip just inside the wall. */
  readonly threshold: Outline;
  /** What stands here stands in the doorway. */
  readonly mouth: Outline;
}

/** Something that someone wants to get to. */
export interface Target {
  readonly name: string;
  readonly outline: Outline;
  readonly box: Box3;
  readonly hosts: readonly string[];
}

/** The narrowest clear width between two heights. A broken line is least at its breaks. */
export const narrowestWidthM = ({ profile }: Shell, bottomM: number, topM: number): number =>
  Math.min(
    ...[bottomM, topM, ...profile.map(({ heightM }) => heightM)]
      .filter((heightM) => heightM >= bottomM && heightM <= topM)
      .map((heightM) => widthAt(profile, heightM)),
  );

/** Where the load bay ends at the rear: at the doors' inside, where the plan says how thick they are. */
export const rearEndM = ({ shell, fixedParts }: Layout): number =>
  fixedParts.reduce(
    (endM, part) => (isRearDoors(part) ? Math.min(endM, boundsOf(part.prism.outline).leastXM) : endM),
    shell.lengthM,
  );

export const isRearDoors = ({ path }: Layout['fixedParts'][number]): boolean =>
  path.at(-1) === 'rear_door_thickness';

export function walkingFloor(layout: Layout): WalkingFloor {
  const halfM = narrowestWidthM(layout.shell, bodyBand.bottomM, bodyBand.topM) / 2;
  const outline = rectangle(0, -halfM, rearEndM(layout), 2 * halfM);
  return { outline, bounds: boundsOf(outline), obstacles: obstaclesOf(layout) };
}

const isInTheWay = ({ bottomM, topM }: Prism): boolean =>
  bottomM < bodyBand.topM - TOUCH_TOLERANCE_M && topM > bodyBand.bottomM + TOUCH_TOLERANCE_M;

function obstaclesOf({ solids, fixedParts }: Layout): Obstacle[] {
  const standing = solids.filter(({ whereabouts, prism }) => whereabouts === 'inside' && isInTheWay(prism));
  const byName = new Map(standing.map((solid) => [solid.name, solid]));
  // What is hidden in its host narrows nothing that the host does not.
  const isHidden = ({ prism, box, hosts }: Solid): boolean =>
    hosts.some((name) => {
      const host = byName.get(name);
      return host !== undefined && covers(host.prism.outline, host.box, prism.outline, box);
    });
  return [
    ...standing
      .filter((solid) => !isHidden(solid))
      .map(({ name, prism, box, hosts }) => ({
        name,
        outline: prism.outline,
        bounds: box,
        bottomM: prism.bottomM,
        root: hosts.at(-1) ?? name,
      })),
    ...fixedParts
      .filter((part) => !part.walkable && !isRearDoors(part) && isInTheWay(part.prism))
      .map(({ name, prism: { outline, bottomM } }) => ({
        name,
        outline,
        bounds: boundsOf(outline),
        bottomM,
        root: name,
      })),
  ];
}

function covers(outer: Outline, outerBounds: Bounds, inner: Outline, innerBounds: Bounds): boolean {
  const isWithin =
    outerBounds.leastXM <= innerBounds.leastXM + TOUCH_TOLERANCE_M &&
    outerBounds.leastYM <= innerBounds.leastYM + TOUCH_TOLERANCE_M &&
    outerBounds.mostXM >= innerBounds.mostXM - TOUCH_TOLERANCE_M &&
    outerBounds.mostYM >= innerBounds.mostYM - TOUCH_TOLERANCE_M;
  return isWithin && (isBox(outer, outerBounds) || contains([outer], inner));
}

const rectangleOf = ({ leastXM, leastYM, mostXM, mostYM }: Bounds): Outline =>
  rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM);

/** The ways in of the plan, in its order. A hole in the floor or the roof is none that one walks through. */
export const doorwaysOf = (layout: Layout, { bounds }: WalkingFloor): Doorway[] =>
  layout.openings.flatMap((opening) => doorway(opening, bounds) ?? []);

function doorway({ name, kind, surface, box }: ShellOpening, floor: Bounds): Doorway | undefined {
  if (kind !== 'door') return undefined;
  const { leastXM, mostXM, leastYM, mostYM } = floor;
  const along = { leastXM: Math.max(leastXM, box.leastXM), mostXM: Math.min(mostXM, box.mostXM) };
  const across = { leastYM: Math.max(leastYM, box.leastYM), mostYM: Math.min(mostYM, box.mostYM) };
  /** The piece of floor from so far outside the wall to so far inside it. */
  const piece = (fromM: number, toM: number): Bounds | undefined => {
    if (surface === 'left wall') return { ...along, leastYM: leastYM - fromM, mostYM: leastYM + toM };
    if (surface === 'right wall') return { ...along, leastYM: mostYM - toM, mostYM: mostYM + fromM };
    if (surface === 'bulkhead') return { ...across, leastXM: leastXM - fromM, mostXM: leastXM + toM };
    if (surface === 'rear doors') return { ...across, leastXM: mostXM - toM, mostXM: mostXM + fromM };
    return undefined;
  };
  const [passage, start, threshold, mouth] = [
    piece(outsideM, seamM),
    piece(outsideM, seamM - outsideM),
    piece(0, seamM),
    piece(outsideM, doorwayDepthM),
  ];
  if (!passage || !start || !threshold || !mouth) return undefined;
  // A door beside the load bay, which another check finds.
  if (passage.mostXM - passage.leastXM < seamM || passage.mostYM - passage.leastYM < seamM) return undefined;
  return {
    name,
    passage: rectangleOf(passage),
    start: rectangleOf(start),
    threshold: rectangleOf(threshold),
    mouth: rectangleOf(mouth),
  };
}

/** Things stand side by side right across it: nobody comes in. */
export function isBlocked({ threshold }: Doorway, { obstacles }: WalkingFloor): boolean {
  const bounds = boundsOf(threshold);
  const near = obstacles.filter((obstacle) => boundsNear(obstacle.bounds, bounds, 0));
  return (
    difference(
      [threshold],
      near.map(({ outline }) => outline),
    ).outlines.length === 0
  );
}

/** What is left of an outline beyond a doorway. */
export function beyond({ mouth }: Doorway, outlines: readonly Outline[]): readonly Outline[] {
  const isNear = outlines.some((outline) => boundsNear(boundsOf(outline), boundsOf(mouth), 0));
  return isNear ? difference(outlines, [mouth]).outlines : outlines;
}

/**
 * What one must touch to have got to a thing: its own outline, or, where it is built into something or stands on it,
 * also the faces of that in front of the thing which an arm reaches over; or the nearest one, if none is so near.
 */
export function reachedAt(target: Target, { obstacles, bounds }: WalkingFloor): readonly Outline[] {
  const own = towards(bounds, target.outline);
  const about = obstacles.filter((obstacle) => isAbout(obstacle, target));
  if (about.length === 0) return [own];
  const furniture = union([own, ...about.map(({ outline }) => outline)]);
  const thing = boundsOf(own);
  // A thing too thin for the geometry is not part of what was joined.
  const all = boundsOf([...own, ...furniture.outlines.flat()]);
  const arms = [
    { ...thing, leastXM: all.leastXM },
    { ...thing, mostXM: all.mostXM },
    { ...thing, leastYM: all.leastYM },
    { ...thing, mostYM: all.mostYM },
  ].map((strip) => {
    const pieces = intersection([rectangleOf(strip)], furniture.outlines).outlines;
    const reached = pieces.filter((piece) => boundsNear(boundsOf(piece), thing, 0));
    // Nothing is left of a strip that is thinner than what the geometry tells apart.
    return { reached, lengthM: reached.length === 0 ? 0 : beyondM(boundsOf(reached.flat()), thing) };
  });
  const nearestM = Math.min(...arms.map(({ lengthM }) => lengthM));
  const kept = arms.filter(({ lengthM }) => lengthM <= Math.max(armM, nearestM) + TOUCH_TOLERANCE_M);
  const reached = union([own, ...kept.flatMap((arm) => arm.reached)]).outlines;
  return reached.length > 0 ? reached : [own];
}

/** How far a strip goes beyond the thing that it begins at. */
const beyondM = (strip: Bounds, thing: Bounds): number =>
  Math.max(
    thing.leastXM - strip.leastXM,
    strip.mostXM - thing.mostXM,
    thing.leastYM - strip.leastYM,
    strip.mostYM - thing.mostYM,
  );

/** It is the same piece of furniture, or lies under or around the thing. */
function isAbout({ name, root, bounds, bottomM }: Obstacle, { name: of, hosts, box }: Target): boolean {
  if (name === of) return false;
  if (root === (hosts.at(-1) ?? of)) return true;
  return bottomM <= box.topM + TOUCH_TOLERANCE_M && boundsNear(bounds, box, -TOUCH_TOLERANCE_M);
}

/** Something flat on a leaning wall lies outside the floor of those who walk; it is reached from beside it. */
function towards(floor: Bounds, outline: Outline): Outline {
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(outline);
  if (boundsNear({ leastXM, mostXM, leastYM, mostYM }, floor, -TOUCH_TOLERANCE_M)) return outline;
  return rectangleOf({
    leastXM: Math.min(leastXM, floor.mostXM - seamM),
    mostXM: Math.max(mostXM, floor.leastXM + seamM),
    leastYM: Math.min(leastYM, floor.mostYM - seamM),
    mostYM: Math.max(mostYM, floor.leastYM + seamM),
  });
}
