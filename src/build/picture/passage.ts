import { difference, offset, ringsOf } from '../../calc/space/clip.ts';
import { type Outline, type Point, within } from '../../calc/space/plane.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import type { Layout } from '../layout.ts';
import { type NarrowSpot, type Way, type WaySide, waysFromDoor } from '../walking.ts';
import { walkingFloor } from '../walking-floor.ts';

export interface NarrowestWay {
  readonly way: Way;
  readonly spot: NarrowSpot;
}

/** The narrowest of the ways from the door, where there is one at all, and what there is to say of the others. */
export function narrowestWay(layout: Layout): {
  readonly narrowest?: NarrowestWay;
  readonly notes: readonly Phrase[];
} {
  const found = waysFromDoor(layout);
  if (!found)
    return { notes: [say`No passage is drawn: the plan has no door with a place in van.openings.`] };
  if (found.ways.length === 0)
    return { notes: [say`No passage is drawn: no fixture says what it is, such as is: bed.`] };
  const open = found.ways.flatMap((way) => (way.narrowest ? [{ way, spot: way.narrowest }] : []));
  const shut = found.ways.filter(({ narrowest }) => !narrowest).map(({ to }) => to);
  const [first, ...others] = open;
  const narrowest = others.reduce(
    (least, each) => (least && each.way.widthM < least.way.widthM ? each : least),
    first,
  );
  return {
    ...(narrowest && { narrowest }),
    notes: shut.length === 0 ? [] : [say`No way leads from a door to: ${shut.join(', ')}.`],
  };
}

/** Rounding where a body only just gets through. */
const slackM = 0.001;

/** The floor that a round body of this width comes over, on the way past a place. */
export function passageFor(layout: Layout, widthM: number, past: Point): readonly Outline[] {
  const radiusM = Math.max(slackM, widthM / 2 - slackM);
  const { outline, obstacles } = walkingFloor(layout);
  const standing = obstacles.map((obstacle) => obstacle.outline);
  const blocked = standing.length === 0 ? [] : offset(standing, radiusM).outlines;
  const centres = difference(offset([outline], -radiusM).outlines, blocked).outlines;
  const reached = centres.filter((piece) => within(past, [piece]));
  return ringsOf(difference(offset(reached, radiusM).outlines, standing));
}

export const sideText = ({ of }: WaySide): string => of ?? 'the wall';
