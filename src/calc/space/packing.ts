import { finite, positive } from '../argument.ts';
import type { BoxSize } from './fit-in.ts';

/** An upright box square to the van, by its least and its greatest corner: x, y and z, m. */
export interface Cuboid {
  readonly least: Corner;
  readonly most: Corner;
}
export type Corner = readonly [number, number, number];

/** Something to put away. */
export interface ThingToPack {
  readonly size: BoxSize;
  /** It must keep its own height upright. */
  readonly upright: boolean;
}

/** A box thinner than this is none: rounding of sums. A micrometre. */
const NOTHING_M = 1e-6;

const axes = [0, 1, 2] as const;

/** Length, width and height of a box. */
export const extentOf = ({ least, most }: Cuboid): Corner => [
  most[0] - least[0],
  most[1] - least[1],
  most[2] - least[2],
];

const overlaps = (a: Cuboid, b: Cuboid): boolean =>
  axes.every(
    (axis) => Math.min(a.most[axis], b.most[axis]) - Math.max(a.least[axis], b.least[axis]) > NOTHING_M,
  );

const holds = (outer: Cuboid, inner: Cuboid): boolean =>
  axes.every((axis) => outer.least[axis] <= inner.least[axis] && outer.most[axis] >= inner.most[axis]);

const withSide = (corner: Corner, axis: 0 | 1 | 2, value: number): Corner => {
  const [x, y, z] = corner;
  if (axis === 0) return [value, y, z];
  return axis === 1 ? [x, value, z] : [x, y, value];
};

/** What is left of a free box on the six sides of something in it. */
const leftOf = (free: Cuboid, taken: Cuboid): Cuboid[] =>
  axes
    .flatMap((axis): Cuboid[] => [
      { least: free.least, most: withSide(free.most, axis, taken.least[axis]) },
      { least: withSide(free.least, axis, taken.most[axis]), most: free.most },
    ])
    .filter((box) => extentOf(box).every((sideM) => sideM > NOTHING_M));

/** Free boxes with one more taken out of them: the greatest that are left, none within another. */
function without(free: readonly Cuboid[], taken: Cuboid): Cuboid[] {
  const whole = free.filter((box) => !overlaps(box, taken));
  const cut = free.filter((box) => overlaps(box, taken)).flatMap((box) => leftOf(box, taken));
  const kept: Cuboid[] = [];
  for (const box of cut) {
    if (whole.some((other) => holds(other, box)) || kept.some((other) => holds(other, box))) continue;
    for (let index = kept.length - 1; index >= 0; index--) {
      const other = kept[index];
      if (other !== undefined && holds(box, other)) kept.splice(index, 1);
    }
    kept.push(box);
  }
  return [...whole, ...kept];
}

/**
 * All greatest free boxes of a room: those that lie in it, keep clear of everything taken, and lie in no other such box.
 * They overlap each other. Empty if nothing is free.
 *
 * Exact for boxes square to the van: from the room as the only free box, each taken box cuts those it meets into the
 * up to six that remain beside it, and what lies within another is dropped. Any box that keeps clear lies within one of
 * them.
 *
 * Throws RangeError if the room has a side that is not greater than 0, or a corner of anything is not finite.
 *
 * Source: the "maximal rectangles" of two-dimensional bin packing (J. Jylänki, 2010; memory), with a third axis.
 */
export function freeBoxes(room: Cuboid, taken: readonly Cuboid[]): readonly Cuboid[] {
  for (const sideM of extentOf(room)) positive(sideM, 'A side of a room');
  for (const { least, most } of taken)
    for (const valueM of [...least, ...most]) finite(valueM, 'A corner of something in a room');
  return taken.reduce<readonly Cuboid[]>((free, box) => without(free, box), [room]);
}

/** The ways round in which a thing may stand: six, or two where it stays upright; alike ones once. */
export function waysRound({ size: { lengthM, widthM, heightM }, upright }: ThingToPack): readonly Corner[] {
  for (const sideM of [lengthM, widthM, heightM]) positive(sideM, 'A size of a thing');
  const [l, w, h] = [lengthM, widthM, heightM];
  const standing: readonly Corner[] = [
    [l, w, h],
    [w, l, h],
  ];
  const lying: readonly Corner[] = [
    [l, h, w],
    [h, l, w],
    [w, h, l],
    [h, w, l],
  ];
  const all = upright ? standing : [...standing, ...lying];
  return all.filter(
    (one, index) => all.findIndex((other) => axes.every((axis) => other[axis] === one[axis])) === index,
  );
}

/** How a thing goes into a free box, or how far it is from going in. */
export interface BestFit {
  readonly free: Cuboid;
  readonly way: Corner;
  /** What is free beyond the thing along x, y and z, m; negative where it is too big. */
  readonly spare: Corner;
  readonly fits: boolean;
}

/**
 * The free box and the way round that suit a thing best: where it goes in, with the most to spare on its tightest side;
 * where it goes in nowhere, with the least sum of what is too big. Undefined if nothing is free. Exact for free boxes
 * from `freeBoxes` and things that are not tilted.
 *
 * Throws RangeError if a size is not finite or not greater than 0.
 */
export function bestFit(thing: ThingToPack, free: readonly Cuboid[]): BestFit | undefined {
  let best: (BestFit & { readonly score: number }) | undefined;
  for (const box of free) {
    for (const way of waysRound(thing)) {
      const [length, width, height] = extentOf(box);
      const spare: Corner = [length - way[0], width - way[1], height - way[2]];
      const tightestM = Math.min(...spare);
      const fits = tightestM >= -NOTHING_M;
      const score = fits ? tightestM + NOTHING_M : spare.reduce((sum, each) => sum + Math.min(0, each), 0);
      if (best === undefined || score > best.score) best = { free: box, way, spare, fits, score };
    }
  }
  if (best === undefined) return undefined;
  const { free: box, way, spare, fits } = best;
  return { free: box, way, spare, fits };
}

const volumeOf = ({ size: { lengthM, widthM, heightM } }: ThingToPack): number => lengthM * widthM * heightM;

const alike = (a: ThingToPack, b: ThingToPack): boolean =>
  a.upright === b.upright &&
  a.size.lengthM === b.size.lengthM &&
  a.size.widthM === b.size.widthM &&
  a.size.heightM === b.size.heightM;

/** How long a search goes on: each place that is tried counts as the square of the free boxes there are. Own choice. */
const SEARCH_LIMIT = 200_000;

/** The volume of the box about all free boxes: nothing larger goes in, however it is laid. */
function volumeAbout(free: readonly Cuboid[]): number {
  return axes.reduce<number>(
    (product, axis) =>
      product *
      (Math.max(...free.map(({ most }) => most[axis])) - Math.min(...free.map(({ least }) => least[axis]))),
    1,
  );
}

/**
 * Whether a way was found to put all things into free boxes at once. A search that goes back on itself: the largest
 * first, each in every way round at the least corner of every free box, for a limited time that does not depend on the
 * computer. `true` is certain; `false` only says that no way was found.
 *
 * Throws RangeError if a size is not finite or not greater than 0.
 */
export function packsTogether(things: readonly ThingToPack[], free: readonly Cuboid[]): boolean {
  const sorted = things
    .map((thing) => ({ thing, ways: waysRound(thing) }))
    .sort((a, b) => volumeOf(b.thing) - volumeOf(a.thing));
  if (sorted.length === 0) return true;
  const totalM3 = things.reduce((sum, thing) => sum + volumeOf(thing), 0);
  if (free.length === 0 || totalM3 > volumeAbout(free) * (1 + NOTHING_M)) return false;
  let left = SEARCH_LIMIT;
  const place = (waiting: typeof sorted, boxes: readonly Cuboid[]): boolean => {
    if (waiting.length === 0) return true;
    // What nothing that waits goes into is as good as taken.
    const useful = boxes.filter((box) => waiting.some(({ ways }) => ways.some((way) => goesInto(way, box))));
    for (const [index, { thing, ways }] of waiting.entries()) {
      const before = waiting[index - 1];
      if (before !== undefined && alike(before.thing, thing)) continue;
      const rest = waiting.filter((_, other) => other !== index);
      for (const way of ways) {
        for (const box of useful) {
          if (!goesInto(way, box)) continue;
          left -= useful.length ** 2;
          if (left < 0) return false;
          const { least } = box;
          const taken: Cuboid = { least, most: [least[0] + way[0], least[1] + way[1], least[2] + way[2]] };
          if (place(rest, without(useful, taken))) return true;
        }
      }
    }
    return false;
  };
  return place(sorted, free);
}

const goesInto = (way: Corner, box: Cuboid): boolean =>
  axes.every((axis) => box.least[axis] + way[axis] <= box.most[axis] + NOTHING_M);
