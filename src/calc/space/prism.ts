import { finite } from '../argument.ts';
import { overlap, thickerThan } from './clip.ts';
import {
  type Bounds,
  boundsNear,
  boundsOf,
  checked,
  isBox,
  type Outline,
  outlineArea,
  TOUCH_TOLERANCE_M,
} from './plane.ts';

/** An upright body: the same outline at every height from its bottom to its top. */
export interface Prism {
  readonly outline: Outline;
  /** Above the floor; negative below it. */
  readonly bottomM: number;
  /** Above `bottomM`. */
  readonly topM: number;
}

/** What two bodies share. */
export interface PrismOverlap {
  readonly areaM2: number;
  readonly heightM: number;
  readonly volumeM3: number;
}

/** Two of a list of bodies, by their places in it (`first` < `second`), and what they share. */
export interface OverlappingPair {
  readonly first: number;
  readonly second: number;
  readonly overlap: PrismOverlap;
}

/** A lift or a drop that frees one body from another. */
export interface VerticalMove {
  readonly direction: 'up' | 'down';
  readonly distanceM: number;
}

/** `prism`, if it can be a body. Throws RangeError for an impossible outline or a top that is not above the bottom. */
export function checkedPrism(prism: Prism): Prism {
  checked(prism.outline, 'The outline of a body');
  if (finite(prism.topM, 'The top of a body') <= finite(prism.bottomM, 'The bottom of a body')) {
    throw new RangeError(`The top of a body must be above its bottom: ${prism.topM} m, ${prism.bottomM} m.`);
  }
  return prism;
}

interface Placed {
  readonly prism: Prism;
  readonly bounds: Bounds;
  readonly isBox: boolean;
}

/** A body does not change, and is compared with many others. */
const known = new WeakMap<Prism, Placed>();

function placed(prism: Prism): Placed {
  const before = known.get(prism);
  if (before) return before;
  const { outline } = checkedPrism(prism);
  const bounds = boundsOf(outline);
  const found = { prism, bounds, isBox: isBox(outline, bounds) };
  known.set(prism, found);
  return found;
}

/** Whether the bounds share enough for what is in them to share anything that is thicker than touching. */
const areNear = (a: Placed, b: Placed): boolean => boundsNear(a.bounds, b.bounds, -TOUCH_TOLERANCE_M / 2);

/** The area that two outlines share, m², or undefined if they share nothing that is thicker than touching. */
function sharedAreaM2(a: Placed, b: Placed): number | undefined {
  if (a.isBox && b.isBox) {
    const lengthM = Math.min(a.bounds.mostXM, b.bounds.mostXM) - Math.max(a.bounds.leastXM, b.bounds.leastXM);
    const widthM = Math.min(a.bounds.mostYM, b.bounds.mostYM) - Math.max(a.bounds.leastYM, b.bounds.leastYM);
    return Math.min(lengthM, widthM) > TOUCH_TOLERANCE_M ? lengthM * widthM : undefined;
  }
  const pieces = overlap(a.prism.outline, b.prism.outline);
  if (!thickerThan({ outlines: pieces, holes: [] }, TOUCH_TOLERANCE_M)) return undefined;
  return pieces.reduce((sum, piece) => sum + outlineArea(piece), 0);
}

function shared(a: Placed, b: Placed): PrismOverlap | undefined {
  const heightM = Math.min(a.prism.topM, b.prism.topM) - Math.max(a.prism.bottomM, b.prism.bottomM);
  if (heightM <= TOUCH_TOLERANCE_M) return undefined;
  const areaM2 = sharedAreaM2(a, b);
  return areaM2 === undefined ? undefined : { areaM2, heightM, volumeM3: areaM2 * heightM };
}

/**
 * What two upright bodies share: area on the plan, m², height, m, and their product, m³; undefined if they are apart
 * or only touch. They only touch where the shared part is nowhere thicker than `TOUCH_TOLERANCE_M`, on the plan or in
 * height.
 *
 * Throws RangeError if a body's top is not above its bottom, its outline has fewer than three corners or encloses
 * nothing, or a value is not finite or farther than 40 m from the origin.
 */
export function prismOverlap(a: Prism, b: Prism): PrismOverlap | undefined {
  const one = placed(a);
  const other = placed(b);
  return areNear(one, other) ? shared(one, other) : undefined;
}

/**
 * All pairs of bodies that overlap, as `prismOverlap` has it, ordered by first and second place in the list.
 *
 * A sweep along the van: bodies are taken by their front ends, and each is compared with those that have not ended
 * before it begins and that it meets in width and height. Time grows with the number of bodies (n · log n) and of pairs
 * that stand abreast, not with all n² pairs.
 *
 * Errors as `prismOverlap`.
 */
export function pairsThatOverlap(prisms: readonly Prism[]): OverlappingPair[] {
  const order = prisms
    .map((prism, index) => ({ body: placed(prism), index }))
    .sort((a, b) => a.body.bounds.leastXM - b.body.bounds.leastXM);
  const pairs: OverlappingPair[] = [];
  let abreast: typeof order = [];
  for (const next of order) {
    abreast = abreast.filter(({ body }) => body.bounds.mostXM > next.body.bounds.leastXM);
    for (const other of abreast) {
      const found = areNear(other.body, next.body) ? shared(other.body, next.body) : undefined;
      if (found === undefined) continue;
      const [first, second] = [Math.min(other.index, next.index), Math.max(other.index, next.index)];
      pairs.push({ first, second, overlap: found });
    }
    abreast.push(next);
  }
  return pairs.sort((a, b) => a.first - b.first || a.second - b.second);
}

/**
 * The shorter of lifting `moving` onto `fixed` and dropping it beneath, m; equal ones: up. Undefined if they do not
 * overlap. Whether there is room above or below is the caller's to check. Errors as `prismOverlap`.
 */
export function verticalClearingMove(moving: Prism, fixed: Prism): VerticalMove | undefined {
  if (prismOverlap(moving, fixed) === undefined) return undefined;
  const upM = fixed.topM - moving.bottomM;
  const downM = moving.topM - fixed.bottomM;
  return upM <= downM ? { direction: 'up', distanceM: upM } : { direction: 'down', distanceM: downM };
}
