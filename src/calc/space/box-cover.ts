import type { Cuboid } from './packing.ts';
import { boundsOf, edgesOf, isBox, type Outline, type Point, rectangle } from './plane.ts';
import type { Prism } from './prism.ts';

// Bodies with odd outlines as boxes square to the van, for searches that know nothing else.

/** Stretches that come nearer than this are one: rounding of sums. A micrometre. */
const NOTHING_M = 1e-6;

/** An outline that is not square to the van is covered by strips at least so wide. Own choice. */
const STRIP_M = 0.02;

/** More strips than this only cost time: a very long outline is covered by wider ones. Own choice. */
const MOST_STRIPS = 60;

/** Strips begin and end at every corner of an outline that has no more than these. Own choice. */
const FEW_CORNERS = 12;

/** Where the strips begin and end that cover an outline: at its corners if they are few, evenly if it is not square. */
function stripEnds(outline: Outline): readonly number[] {
  const isSquare = edgesOf(outline).every(([from, to]) => from.xM === to.xM || from.yM === to.yM);
  const { leastYM, mostYM } = boundsOf(outline);
  const ends = isSquare || outline.length <= FEW_CORNERS ? outline.map(({ yM }) => yM) : [leastYM, mostYM];
  const stripM = Math.max(STRIP_M, (mostYM - leastYM) / MOST_STRIPS);
  if (!isSquare) for (let yM = leastYM + stripM; yM < mostYM; yM += stripM) ends.push(yM);
  return [...new Set(ends)].sort((a, b) => a - b);
}

type Interval = readonly [number, number];

/** Intervals as one where they meet. */
function joined(intervals: readonly Interval[]): readonly Interval[] {
  const sorted = [...intervals].sort((a, b) => a[0] - b[0]);
  const result: Interval[] = [];
  for (const [from, to] of sorted) {
    const last = result.at(-1);
    if (last !== undefined && from <= last[1] + NOTHING_M)
      result[result.length - 1] = [last[0], Math.max(last[1], to)];
    else result.push([from, to]);
  }
  return result.filter(([from, to]) => to - from > NOTHING_M);
}

/** Where a line across rings is inside them, by the even-odd rule. */
function insideAlong(rings: readonly Outline[], yM: number): Interval[] {
  const xs = rings
    .flatMap((ring) => edgesOf(ring))
    .flatMap(([from, to]) =>
      from.yM > yM === to.yM > yM ? [] : [from.xM + ((to.xM - from.xM) * (yM - from.yM)) / (to.yM - from.yM)],
    )
    .sort((a, b) => a - b);
  return xs.flatMap((x, index): Interval[] => (index % 2 === 0 ? [[x, xs[index + 1] ?? x]] : []));
}

/** The stretch of x that an edge takes within a strip, if any. */
function stretchOf([from, to]: readonly [Point, Point], startYM: number, endYM: number): Interval[] {
  const [low, high] = from.yM <= to.yM ? [from, to] : [to, from];
  if (high.yM - startYM <= NOTHING_M || endYM - low.yM <= NOTHING_M || high.yM === low.yM) return [];
  const xAt = (yM: number) => low.xM + ((high.xM - low.xM) * (yM - low.yM)) / (high.yM - low.yM);
  const [a, b] = [xAt(Math.max(startYM, low.yM)), xAt(Math.min(endYM, high.yM))];
  return [[Math.min(a, b), Math.max(a, b)]];
}

/**
 * Boxes that cover what lies within rings (even-odd) between two heights: in each strip one for each separate stretch
 * of x that any of it takes. What is in a strip is bounded by edges and by the two lines that cut it off.
 */
function coverOf(
  rings: readonly Outline[],
  ends: readonly number[],
  bottomM: number,
  topM: number,
): Cuboid[] {
  return ends.slice(1).flatMap((endYM, index): Cuboid[] => {
    const startYM = ends[index] ?? endYM;
    if (endYM - startYM <= NOTHING_M) return [];
    const taken = joined([
      ...insideAlong(rings, startYM + NOTHING_M / 10),
      ...insideAlong(rings, endYM - NOTHING_M / 10),
      ...rings.flatMap((ring) => edgesOf(ring)).flatMap((edge) => stretchOf(edge, startYM, endYM)),
    ]);
    return taken.map(([fromXM, toXM]) => ({ least: [fromXM, startYM, bottomM], most: [toXM, endYM, topM] }));
  });
}

/** The box about a body. */
export function boxAbout({ outline, bottomM, topM }: Prism): Cuboid {
  const { leastXM, leastYM, mostXM, mostYM } = boundsOf(outline);
  return { least: [leastXM, leastYM, bottomM], most: [mostXM, mostYM, topM] };
}

/**
 * Boxes that cover a body: itself if it is one; exact if its outline is square to the van; otherwise strips of 20 mm
 * that stand out of it a little and never leave any of it uncovered.
 */
export function boxesOver(prism: Prism): Cuboid[] {
  const { outline, bottomM, topM } = prism;
  if (isBox(outline, boundsOf(outline))) return [boxAbout(prism)];
  return coverOf([outline], stripEnds(outline), bottomM, topM);
}

/** Boxes that cover what of the box about a body is not the body; exact or a little too much, as in `boxesOver`. */
export function boxesBeside(prism: Prism): Cuboid[] {
  const { outline, bottomM, topM } = prism;
  const bounds = boundsOf(outline);
  if (isBox(outline, bounds)) return [];
  const { leastXM, leastYM, mostXM, mostYM } = bounds;
  const about = rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM);
  return coverOf([about, outline], stripEnds(outline), bottomM, topM);
}
