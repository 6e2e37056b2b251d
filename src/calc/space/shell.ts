import { finite, positive } from '../argument.ts';
import { boundsOf, TOUCH_TOLERANCE_M } from './plane.ts';
import { checkedPrism, type Prism } from './prism.ts';

/** The clear width of the load bay at one height above the floor. */
export interface WidthAtHeight {
  readonly heightM: number;
  readonly widthM: number;
}

/** The clear height from the floor to the roof lining at one distance from the front of the load bay. */
export interface HeightAlong {
  readonly fromFrontM: number;
  readonly heightM: number;
}

/** The inside of a load bay whose walls lean in towards the roof, alike on both sides, and whose roof may slope. */
export interface Shell {
  /** From x = 0, the front. */
  readonly lengthM: number;
  /** y of the centre line, about which the widths lie evenly. */
  readonly centreYM: number;
  /** At least one; a single one is a straight wall. */
  readonly profile: readonly WidthAtHeight[];
  /** At least one; a single one is a level roof. */
  readonly heights: readonly HeightAlong[];
}

export type ShellFace = 'front' | 'rear' | 'left' | 'right' | 'top';

/** One side of a body that sticks out of the load bay. */
export interface Protrusion {
  readonly face: ShellFace;
  readonly byM: number;
  /** `left` and `right` only: the height above the floor at which it sticks out most, the lowest of equal ones. */
  readonly atHeightM?: number;
  /** `top` only: the distance from the front at which it sticks out most, the foremost of equal ones. */
  readonly fromFrontM?: number;
}

interface Given {
  readonly at: number;
  readonly value: number;
}

function inOrder(given: readonly Given[], what: string): readonly Given[] {
  if (given.length === 0) throw new RangeError(`${what} must be given at one place at least.`);
  const sorted = [...given].sort((a, b) => a.at - b.at);
  let before: Given | undefined;
  for (const each of sorted) {
    finite(each.at, `The place of ${what}`);
    positive(each.value, what);
    if (before !== undefined && each.at === before.at) {
      throw new RangeError(`${what} must be given once at each place, not twice at ${each.at} m.`);
    }
    before = each;
  }
  return sorted;
}

/** Straight between the given places, unchanged beyond the first and the last. `sorted` has been in `inOrder`. */
function between(sorted: readonly Given[], at: number): number {
  const next = sorted.find((given) => given.at >= at);
  const previous = sorted.findLast((given) => given.at < at);
  if (next === undefined) return previous?.value ?? Number.NaN;
  if (previous === undefined) return next.value;
  return previous.value + ((next.value - previous.value) * (at - previous.at)) / (next.at - previous.at);
}

const widths = (profile: readonly WidthAtHeight[]): readonly Given[] =>
  inOrder(
    profile.map(({ heightM, widthM }) => ({ at: heightM, value: widthM })),
    'The width of the load bay',
  );

const roof = (heights: readonly HeightAlong[]): readonly Given[] =>
  inOrder(
    heights.map(({ fromFrontM, heightM }) => ({ at: fromFrontM, value: heightM })),
    'The height of the load bay',
  );

/**
 * Clear width of the load bay at a height above the floor, m: straight between the given heights, and the nearest
 * given width below the lowest and above the highest of them. The heights may come in any order.
 *
 * Throws RangeError if there are none, two at one height, one that is not finite, or a width not greater than 0.
 */
export const widthAt = (profile: readonly WidthAtHeight[], heightM: number): number =>
  between(widths(profile), finite(heightM, 'A height above the floor'));

/**
 * Clear height of the load bay at a distance from its front, m: straight between the given places, and the nearest
 * given height before the first and behind the last. Errors as `widthAt`.
 */
export const heightAt = (heights: readonly HeightAlong[], fromFrontM: number): number =>
  between(roof(heights), finite(fromFrontM, 'A distance from the front'));

/** The least value between `from` and `to`, and the first place that has it. A broken line is least at its breaks. */
function leastBetween(sorted: readonly Given[], from: number, to: number): Given {
  let least: Given = { at: from, value: between(sorted, from) };
  for (const { at } of [...sorted, { at: to }]) {
    if (at <= from || at > to) continue;
    const value = between(sorted, at);
    if (value < least.value) least = { at, value };
  }
  return least;
}

/**
 * The sides on which a body sticks out of the load bay by more than `TOUCH_TOLERANCE_M`, the worst first; empty if it
 * stands within.
 *
 * Exact: its sides are upright, so it sticks out of a wall most where the bay is narrowest between its bottom and its
 * top, and that is at one of them or at a given height between; the same along the roof. A body that `leans` follows
 * the slope of the wall, so left and right are held at its foot (`bottomM`) only. The floor is no face: a body may
 * hang below it.
 *
 * Throws RangeError as `widthAt` does, if the length is not greater than 0, or for an impossible body.
 */
export function outOfShell(prism: Prism, shell: Shell, { leans }: { readonly leans: boolean }): Protrusion[] {
  const { outline, bottomM, topM } = checkedPrism(prism);
  const { leastXM, leastYM, mostXM, mostYM } = boundsOf(outline);
  const narrowest = leastBetween(widths(shell.profile), bottomM, leans ? bottomM : topM);
  const lowest = leastBetween(roof(shell.heights), leastXM, mostXM);
  const centreYM = finite(shell.centreYM, 'The centre line');
  const halfM = narrowest.value / 2;
  const protrusions: Protrusion[] = [
    { face: 'front', byM: -leastXM },
    { face: 'rear', byM: mostXM - positive(shell.lengthM, 'The length of the load bay') },
    { face: 'left', byM: centreYM - halfM - leastYM, atHeightM: narrowest.at },
    { face: 'right', byM: mostYM - centreYM - halfM, atHeightM: narrowest.at },
    { face: 'top', byM: topM - lowest.value, fromFrontM: lowest.at },
  ];
  return protrusions.filter(({ byM }) => byM > TOUCH_TOLERANCE_M).sort((a, b) => b.byM - a.byM);
}
