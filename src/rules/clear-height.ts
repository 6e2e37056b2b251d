import type { Layout, Solid } from '../build/layout.ts';
import { contains } from '../calc/space/clip.ts';
import {
  boundsNear,
  boundsOf,
  isBox,
  type Outline,
  rectangle,
  TOUCH_TOLERANCE_M,
} from '../calc/space/plane.ts';
import { type Prism, prismOverlap } from '../calc/space/prism.ts';
import { heightAt, type Shell, widthAt } from '../calc/space/shell.ts';

/*
 * How high it is over a place: up to the roof, which may slope, or to the underside of what hangs there. Walls that
 * lean in are not counted: nobody sits or stands with the middle of the head at the wall.
 */

/** Something that hangs over people's heads. */
interface Overhead {
  readonly name: string;
  readonly prism: Prism;
}

/** The lowest of what is over a place; without a name it is the roof. */
export interface Ceiling {
  readonly atM: number;
  readonly below?: string;
}

/** A spot and how high it is over it. */
export interface Spot {
  readonly outline: Outline;
  readonly ceiling: Ceiling;
}

/** Things and parts of the van whose underside is at `fromM` or higher. */
export const overheadFrom = (
  { solids, fixedParts }: Layout,
  fromM: number,
  counts: (solid: Solid) => boolean,
): readonly Overhead[] =>
  [...solids.filter(counts), ...fixedParts].filter(({ prism }) => prism.bottomM >= fromM - TOUCH_TOLERANCE_M);

/** A broken line is least at an end or at a break. */
const endsAndBreaks = (breaks: readonly number[], from: number, to: number): readonly number[] => [
  from,
  ...breaks.filter((at) => at > from && at < to),
  to,
];

const leastOf = (
  valueAt: (at: number) => number,
  breaks: readonly number[],
  from: number,
  to: number,
): number => Math.min(...endsAndBreaks(breaks, from, to).map(valueAt));

/** Where a broken line is least, the first of equal places. */
const placeOfLeast = (
  valueAt: (at: number) => number,
  breaks: readonly number[],
  from: number,
  to: number,
): number =>
  endsAndBreaks(breaks, from, to).reduce((best, next) => (valueAt(next) < valueAt(best) ? next : best), from);

const roofBreaks = ({ heights }: Shell): number[] => heights.map(({ fromFrontM }) => fromFrontM);

const lowestRoof = (shell: Shell, fromXM: number, toXM: number): number =>
  leastOf((xM) => heightAt(shell.heights, xM), roofBreaks(shell), fromXM, toXM);

/** Where along the van the roof is lowest between two places. */
export const lowestAlong = (shell: Shell, fromXM: number, toXM: number): number =>
  placeOfLeast((xM) => heightAt(shell.heights, xM), roofBreaks(shell), fromXM, toXM);

/** The height, between two, at which the walls are nearest to each other. */
export const narrowestHeight = ({ profile }: Shell, fromM: number, toM: number): number =>
  placeOfLeast(
    (heightM) => widthAt(profile, heightM),
    profile.map(({ heightM }) => heightM),
    fromM,
    toM,
  );

/** The least clear width between two heights. */
export const narrowestBetween = ({ profile }: Shell, fromM: number, toM: number): number =>
  leastOf(
    (heightM) => widthAt(profile, heightM),
    profile.map(({ heightM }) => heightM),
    fromM,
    toM,
  );

/** The lowest of what is over any part of an outline. */
export function lowestOver(shell: Shell, overhead: readonly Overhead[], outline: Outline): Ceiling {
  const bounds = boundsOf(outline);
  let lowest: Ceiling = { atM: lowestRoof(shell, bounds.leastXM, bounds.mostXM) };
  for (const { name, prism } of overhead) {
    if (prism.bottomM >= lowest.atM || !boundsNear(boundsOf(prism.outline), bounds, 0)) continue;
    if (prismOverlap({ ...prism, outline }, prism)) lowest = { atM: prism.bottomM, below: name };
  }
  return lowest;
}

/** Things of more corners are taken as their bounds: a round lamp has hundreds. */
const fewCorners = 8;

const cornersOf = (outline: Outline): Outline => {
  const { leastXM, leastYM, mostXM, mostYM } = boundsOf(outline);
  return outline.length <= fewCorners
    ? outline
    : [
        { xM: leastXM, yM: leastYM },
        { xM: mostXM, yM: mostYM },
      ];
};

/**
 * The spot of a size (along the van, across it; m) within an outline over which it is highest, by the lowest of what is
 * over the spot. Where the outline is smaller than the spot, the spot is as small; undefined if it fits nowhere.
 *
 * Exact for things and outlines with sides along and across the van. At the best place a side of the spot is at the end
 * of the outline, at a corner of something or at a break of the roof, or the roof is as high at the spot's front as at
 * its rear.
 */
export function highestSpot(
  shell: Shell,
  overhead: readonly Overhead[],
  outline: Outline,
  spot: { readonly lengthM: number; readonly widthM: number },
): Spot | undefined {
  const bounds = boundsOf(outline);
  const whole = isBox(outline, bounds);
  const lengthM = Math.min(spot.lengthM, bounds.mostXM - bounds.leastXM);
  const widthM = Math.min(spot.widthM, bounds.mostYM - bounds.leastYM);
  const near = overhead.filter(({ prism }) => boundsNear(boundsOf(prism.outline), bounds, 0));
  const corners = [outline, ...near.map(({ prism }) => prism.outline)].flatMap(cornersOf);
  const xs = withLevelPlaces(
    shell,
    lengthM,
    placesBetween(bounds.leastXM, bounds.mostXM - lengthM, lengthM, [
      ...corners.map(({ xM }) => xM),
      ...roofBreaks(shell),
    ]),
  );
  const ys = placesBetween(
    bounds.leastYM,
    bounds.mostYM - widthM,
    widthM,
    corners.map(({ yM }) => yM),
  );
  let best: Spot | undefined;
  for (const xM of xs) {
    const roofM = lowestRoof(shell, xM, xM + lengthM);
    for (const yM of ys) {
      // Nothing is higher than the roof.
      if (best !== undefined && roofM <= best.ceiling.atM) break;
      const here = rectangle(xM, yM, lengthM, widthM);
      if (!whole && !contains([outline], here)) continue;
      const ceiling = lowestOver(shell, near, here);
      if (best === undefined || ceiling.atM > best.ceiling.atM) best = { outline: here, ceiling };
    }
  }
  return best;
}

/** Where a stretch of a length may begin so that one of its ends is at one of `at`, in order. */
function placesBetween(from: number, to: number, lengthM: number, at: readonly number[]): number[] {
  const places = [from, to, ...at, ...at.map((each) => each - lengthM)];
  return [...new Set(places.filter((each) => each >= from && each <= to))].sort((a, b) => a - b);
}

/** Adds where the roof is as high over the front of the spot as over its rear: astride a ridge. */
function withLevelPlaces(shell: Shell, lengthM: number, places: readonly number[]): number[] {
  const rises = (xM: number) => heightAt(shell.heights, xM) - heightAt(shell.heights, xM + lengthM);
  return places.flatMap((place, index) => {
    const next = places[index + 1];
    if (next === undefined) return [place];
    const [here, there] = [rises(place), rises(next)];
    return here * there < 0 ? [place, place + ((next - place) * here) / (here - there)] : [place];
  });
}
