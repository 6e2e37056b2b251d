import type { Layout, ShellOpening } from '../../build/layout.ts';
import type { NarrowSpot, Way } from '../../build/walking.ts';
import type { Point } from '../../calc/space/plane.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { listed } from '../fit-finding.ts';
import { told } from '../told.ts';
import { sideInWords } from '../ways.ts';

/*
 * How wide a way is: from one thing to the other where it is narrowest, as one would measure it with a tape.
 */

/** A way's width is in steps of a tenth of a millimetre. */
const gapWithinM = 0.0001;

const apartM = (a: Point, b: Point): number => Math.hypot(b.xM - a.xM, b.yM - a.yM);

/** "660 mm from the front and 420 mm from the left" */
const placeFrom = ({ xM, yM }: Point, { widthM }: Layout): Phrase =>
  say`${told(xM)} from the front and ${told(yM + widthM / 2)} from the left`;

const root = (a: Point, b: Point): Phrase =>
  say`√((${told(Math.abs(b.xM - a.xM))})² + (${told(Math.abs(b.yM - a.yM))})²) along and across the van`;

/** An opening that a way begins at. */
type Mouth = Pick<ShellOpening, 'name' | 'kind' | 'path'>;

/** The narrowest spot is the clear width of the door itself. */
const isInMouth = (
  { between: [one, other] }: NarrowSpot,
  mouth: Mouth | undefined,
  layout: Layout,
): boolean =>
  mouth?.kind === 'door' &&
  one.of === undefined &&
  other.of === undefined &&
  sideInWords(one, layout) === sideInWords(other, layout);

function spotSum(spot: NarrowSpot, widthM: number, layout: Layout, mouth: Mouth | undefined): Phrase {
  const { at, between } = spot;
  const [one, other] = between;
  const isMouth = isInMouth(spot, mouth, layout);
  const called = (side: typeof one): string => {
    if (!isMouth) return sideInWords(side, layout);
    return side === one ? `one edge of ${mouth?.name ?? ''}` : 'its other edge';
  };
  const from = (side: typeof one): Phrase => say`${called(side)} at ${placeFrom(side.at, layout)}`;
  if (Math.abs(apartM(one.at, other.at) - widthM) <= gapWithinM)
    return say`${root(one.at, other.at)}, from ${from(one)} to ${from(other)}`;
  // Where somebody is stuck before the thing itself, what they touch is not right opposite.
  const offM = (side: typeof one) => Math.abs(2 * apartM(at, side.at) - widthM);
  const [near, far] = offM(one) < offM(other) ? [one, other] : [other, one];
  return say`2 · ${root(at, near.at)}, from the middle of the disc, ${placeFrom(at, layout)}, to ${from(near)}; on its other side it touches ${called(far)}`;
}

/** What stands at the two sides of the narrowest spot. */
const sidePaths = ({ between }: NarrowSpot, { solids, fixedParts }: Layout): readonly PlanPath[] =>
  between.flatMap(({ of }) => {
    const found = [...solids, ...fixedParts].find(({ name }) => name === of);
    return found
      ? [
          [...found.path, 'at'],
          [...found.path, 'size'],
        ]
      : [];
  });

/** Where a way is narrowest; its width is the result. */
export function narrowestStep(
  what: string,
  { widthM, narrowest, from }: Pick<Way, 'widthM' | 'narrowest'> & { readonly from: Mouth | undefined },
  layout: Layout,
  why?: Phrase,
): Step {
  const result = length(widthM);
  if (!narrowest) return { what, sum: why ?? say`no disc gets there, not even one 10 mm across`, result };
  return {
    what,
    sum: spotSum(narrowest, widthM, layout, from),
    result,
    paths: from && isInMouth(narrowest, from, layout) ? [from.path] : sidePaths(narrowest, layout),
  };
}

/** Every way with its width, then the narrowest of them. */
export function waysSteps(ways: readonly Way[], worst: Way, layout: Layout, why?: Phrase): readonly Step[] {
  const door = layout.openings.find(({ name }) => name === worst.from);
  const what = `The narrowest spot on the way from ${worst.from} to ${worst.to}: w is the widest disc that gets past it`;
  const only = narrowestStep(what, { ...worst, from: door }, layout, why);
  if (ways.length < 2) return [only];
  return [
    {
      what: `How wide the ways are from ${worst.from}, each where it is narrowest: the least counts`,
      sum: listed(ways.map(({ to, widthM }) => say`${told(widthM)} to ${to}`)),
      paths: ways.map(({ path }) => path),
    },
    only,
  ];
}
