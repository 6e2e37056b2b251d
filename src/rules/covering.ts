import type { Box3, Layout, ShellOpening, Solid } from '../build/layout.ts';
import { intersection, overlap, thickerThan, union } from '../calc/space/clip.ts';
import {
  type Bounds,
  boundsNear,
  boundsOf,
  type Outline,
  outlineArea,
  rectangle,
  TOUCH_TOLERANCE_M,
} from '../calc/space/plane.ts';
import { heightAt, type Shell, widthAt } from '../calc/space/shell.ts';
import { closedShell } from './beyond-shell.ts';

/** What stands nearer to an opening than this stands before it. Own choice: a hand and a blind go in between. */
export const BEFORE_OPENING_M = 0.1;

/** Something no deeper than this that lies within an opening belongs to it: glass, a blind, a net. Own choice. */
export const FLAT_M = 0.06;

/**
 * What a thing covers of the surface that an opening is in, seen square to it. In the plane of the surface: of a wall
 * x is along the van and y is up, of the bulkhead and the rear doors x is to the right and y is up, of the floor and the
 * ceiling as on the plan.
 */
export interface Cover {
  readonly solid: Solid;
  readonly shadow: readonly Outline[];
  /** The part of the shadow that lies on the opening. */
  readonly onOpening: readonly Outline[];
}

/** An opening in the plane of its surface. */
export function inPlane({ surface, box }: ShellOpening): Outline {
  const { leastXM, mostXM, leastYM, mostYM } = inPlaneOf(surface, box);
  return rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM);
}

function inPlaneOf(surface: Surface, box: Box3): Bounds {
  if (isLying(surface)) return box;
  const { bottomM, topM } = box;
  return isWall(surface)
    ? { leastXM: box.leastXM, mostXM: box.mostXM, leastYM: bottomM, mostYM: topM }
    : { leastXM: box.leastYM, mostXM: box.mostYM, leastYM: bottomM, mostYM: topM };
}

export type Surface = ShellOpening['surface'];
export const isLying = (surface: Surface): boolean => surface === 'floor' || surface === 'ceiling';
export const isWall = (surface: Surface): boolean => surface === 'left wall' || surface === 'right wall';

export const areaOf = (pieces: readonly Outline[]): number =>
  pieces.length === 0 ? 0 : union(pieces).outlines.reduce((sum, piece) => sum + outlineArea(piece), 0);

/** What stands before an opening and covers some of it, in the order of the plan. */
export function coversOf(opening: ShellOpening, hole: Outline, layout: Layout): Cover[] {
  const shell = closedShell(layout);
  const holeBounds = boundsOf(hole);
  return layout.solids.flatMap((solid) => {
    if (solid.whereabouts !== 'inside' || fills(solid, opening)) return [];
    if (!boundsNear(inPlaneOf(opening.surface, solid.box), holeBounds, 0)) return [];
    const shadow = shadowOf(solid, opening.surface, shell).filter(isThick);
    if (shadow.length === 0) return [];
    const onOpening = intersection(shadow, [hole]).outlines.filter(isThick);
    return onOpening.length > 0 ? { solid, shadow, onOpening } : [];
  });
}

const isThick = (piece: Outline): boolean => thickerThan({ outlines: [piece], holes: [] }, TOUCH_TOLERANCE_M);

/** It is what fills the opening itself, or stands in that. */
function fills({ name, hosts, box }: Solid, opening: ShellOpening): boolean {
  if (name === opening.name || hosts.includes(opening.name)) return true;
  const [thinM, within] = isLying(opening.surface)
    ? [box.topM - box.bottomM, inX(box, opening.box) && inY(box, opening.box)]
    : isWall(opening.surface)
      ? [box.mostYM - box.leastYM, inX(box, opening.box) && inZ(box, opening.box)]
      : [box.mostXM - box.leastXM, inY(box, opening.box) && inZ(box, opening.box)];
  return thinM <= FLAT_M + TOUCH_TOLERANCE_M && within;
}

const inside = (least: number, most: number, from: number, to: number): boolean =>
  least >= from - TOUCH_TOLERANCE_M && most <= to + TOUCH_TOLERANCE_M;
const inX = (a: Box3, b: Box3): boolean => inside(a.leastXM, a.mostXM, b.leastXM, b.mostXM);
const inY = (a: Box3, b: Box3): boolean => inside(a.leastYM, a.mostYM, b.leastYM, b.mostYM);
const inZ = (a: Box3, b: Box3): boolean => inside(a.bottomM, a.topM, b.bottomM, b.topM);

/** Farther than anything in a plan. */
const farM = 15;

function shadowOf(solid: Solid, surface: Surface, shell: Shell): Outline[] {
  const { outline, bottomM, topM } = solid.prism;
  if (surface === 'floor') return bottomM < BEFORE_OPENING_M - TOUCH_TOLERANCE_M && topM > 0 ? [outline] : [];
  if (surface === 'ceiling') return underRoof(solid, shell);
  if (isWall(surface)) return onWall(solid, surface === 'left wall' ? 1 : -1, shell);
  const strip =
    surface === 'bulkhead'
      ? rectangle(0, -farM, BEFORE_OPENING_M, 2 * farM)
      : rectangle(shell.lengthM - BEFORE_OPENING_M, -farM, BEFORE_OPENING_M, 2 * farM);
  return overlap(outline, strip)
    .filter(isThick)
    .map((piece) => {
      const { leastYM, mostYM } = boundsOf(piece);
      return rectangle(leastYM, bottomM, mostYM - leastYM, topM - bottomM);
    });
}

/** Where along a sloping roof the thing comes near to it, and is not above it. */
function underRoof({ prism: { outline, bottomM, topM } }: Solid, { heights }: Shell): Outline[] {
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(outline);
  const given = heights.map(({ fromFrontM, heightM }) => ({ at: fromFrontM, value: heightM }));
  return bands(given, [topM + BEFORE_OPENING_M, bottomM], leastXM, mostXM).flatMap(([fromM, toM]) => {
    const roofM = heightAt(heights, (fromM + toM) / 2);
    const isNear = roofM - topM < BEFORE_OPENING_M - TOUCH_TOLERANCE_M && bottomM < roofM;
    return isNear ? overlap(outline, rectangle(fromM, leastYM, toM - fromM, mostYM - leastYM)) : [];
  });
}

/** A wall that leans in comes near to an upright thing at the top first: the thing is taken height by height. */
function onWall({ prism, leans }: Solid, sign: 1 | -1, { profile }: Shell): Outline[] {
  const { bottomM, topM } = prism;
  // Both walls are alike: the right one is looked at in a mirror.
  const outline = prism.outline.map(({ xM, yM }) => ({ xM, yM: yM * sign }));
  const given = leans ? [] : profile.map(({ heightM, widthM }) => ({ at: heightM, value: widthM / 2 }));
  const levels = outline.flatMap(({ yM }) => [-yM, BEFORE_OPENING_M - yM]);
  return bands(given, levels, bottomM, topM).flatMap(([fromM, toM]) => {
    const wallYM = -widthAt(profile, leans ? bottomM : (fromM + toM) / 2) / 2;
    return overlap(outline, rectangle(-farM, wallYM, 2 * farM, BEFORE_OPENING_M))
      .filter(isThick)
      .map((piece) => {
        const { leastXM, mostXM } = boundsOf(piece);
        return rectangle(leastXM, fromM, mostXM - leastXM, toM - fromM);
      });
  });
}

interface Given {
  readonly at: number;
  readonly value: number;
}

/** A stretch cut wherever a broken line has a corner or crosses one of the levels. */
function bands(
  line: readonly Given[],
  levels: readonly number[],
  from: number,
  to: number,
): (readonly [number, number])[] {
  const sorted = [...line].sort((a, b) => a.at - b.at);
  const cuts = sorted.flatMap((corner, index) => {
    const next = sorted[index + 1];
    if (!next || next.value === corner.value) return [corner.at];
    const rate = (next.at - corner.at) / (next.value - corner.value);
    return [
      corner.at,
      ...levels
        .map((level) => corner.at + (level - corner.value) * rate)
        .filter((at) => at > corner.at && at < next.at),
    ];
  });
  const ends = [from, ...cuts.filter((at) => at > from && at < to).sort((a, b) => a - b), to];
  return ends.slice(1).flatMap((end, index) => {
    const start = ends[index] ?? from;
    return end - start > 1e-6 ? [[start, end] as const] : [];
  });
}
