import type { Box3, Layout, Solid } from '../../build/layout.ts';
import type { Prism } from '../../calc/space/prism.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { boxOf, depthOf, sharedBox, sizeOf } from '../clearing.ts';

/*
 * How places and sizes of things come together, counted as a builder does: from the front of the load bay, from its
 * left wall at the floor, and from the floor.
 */

/** A length that may be negative, in brackets then: nobody reads "100 mm − -20 mm". */
export const inBrackets = (lengthM: number): Phrase =>
  lengthM < 0 ? say`(${length(lengthM)})` : say`${length(lengthM)}`;

/** The same box with its places across the van counted from the left wall. */
export const fromLeftWall = (box: Box3, { widthM }: Layout): Box3 => ({
  ...box,
  leastYM: box.leastYM + widthM / 2,
  mostYM: box.mostYM + widthM / 2,
});

/** "from 80 mm to 1330 mm" */
export const fromTo = (fromM: number, toM: number): Phrase => say`from ${length(fromM)} to ${length(toM)}`;

/** Where a box is in the load bay. */
export function placeText(box: Box3, layout: Layout): Phrase {
  const { leastXM, mostXM, leastYM, mostYM, bottomM, topM } = fromLeftWall(box, layout);
  return say`${fromTo(leastXM, mostXM)} behind the front of the load bay, ${fromTo(leastYM, mostYM)} from its left wall, ${fromTo(bottomM, topM)} above the floor`;
}

/** What places a thing: its own size and place, and those of what it stands in or on. */
export const placePaths = (thing: Solid, { solids }: Layout): readonly PlanPath[] =>
  [thing, ...solids.filter(({ name }) => thing.hosts.includes(name))].flatMap(({ path }): PlanPath[] => [
    [...path, 'size'],
    [...path, 'at'],
  ]);

interface Sharing {
  readonly name: string;
  readonly prism: Prism;
  readonly paths: readonly PlanPath[];
}

/** The piece that two bodies share, side by side, and its least extent: how deep they stand in each other. */
export function sharedSteps(one: Sharing, other: Sharing, layout: Layout): readonly Step[] {
  const [a, b] = [boxOf(one.prism), boxOf(other.prism)].map((box) => fromLeftWall(box, layout));
  const shared = sharedBox(one.prism, other.prism);
  const place = fromLeftWall(shared, layout);
  const size = sizeOf(shared);
  if (!a || !b) return [];
  const names = say`${one.name} and ${other.name}`;
  const paths = [...one.paths, ...other.paths];
  const along = (
    own: readonly [number, number],
    its: readonly [number, number],
    [fromM, toM]: readonly [number, number],
  ): Phrase => {
    const isWhole = fromM === Math.max(own[0], its[0]) && toM === Math.min(own[1], its[1]);
    const shapes = isWhole ? '' : ', since one of them is no rectangle';
    return say`${fromTo(...own)} and ${fromTo(...its)}: both ${fromTo(fromM, toM)}${shapes}, ${length(toM)} − ${inBrackets(fromM)}`;
  };
  return [
    {
      what: 'What they share along the van, counted from the front of the load bay',
      sum: say`${names}, ${along([a.leastXM, a.mostXM], [b.leastXM, b.mostXM], [place.leastXM, place.mostXM])}`,
      result: length(size.lengthM),
      paths,
    },
    {
      what: 'What they share across the van, counted from the left wall at the floor',
      sum: along([a.leastYM, a.mostYM], [b.leastYM, b.mostYM], [place.leastYM, place.mostYM]),
      result: length(size.widthM),
    },
    {
      what: 'What they share in height, counted from the floor',
      sum: along([a.bottomM, a.topM], [b.bottomM, b.topM], [place.bottomM, place.topM]),
      result: length(size.heightM),
    },
    {
      what: 'How deep they stand in each other: the least of the three',
      sum: say`the least of ${length(size.lengthM)}, ${length(size.widthM)} and ${length(size.heightM)}`,
      result: length(depthOf(shared)),
    },
  ];
}
