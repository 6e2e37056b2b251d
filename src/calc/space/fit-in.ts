import { finite, positive } from '../argument.ts';

/** A box, or a hole of that shape. */
export interface BoxSize {
  readonly lengthM: number;
  readonly widthM: number;
  readonly heightM: number;
}

/** A flat rectangle, either side the longer. */
export interface RectangleSize {
  readonly lengthM: number;
  readonly widthM: number;
}

/** Sizes that differ by no more than rounding makes count as equal: a micrometre. */
const EQUAL_WITHIN_M = 1e-6;

const longestFirst = (sizesM: readonly number[]): number[] => [...sizesM].sort((a, b) => b - a);

const noneGreater = (sizesM: readonly number[], roomM: readonly number[]): boolean =>
  sizesM.every((sizeM, index) => sizeM <= (roomM[index] ?? 0) + EQUAL_WITHIN_M);

const checkedSizes = (sizesM: readonly number[], what: string): readonly number[] =>
  sizesM.map((sizeM) => positive(sizeM, `A size of ${what}`));

/**
 * Whether a box goes into a box-shaped hole with its edges along those of the hole, in any of the six ways round, or
 * with its own height upright only (`upright`: two ways round). A box exactly as large as the hole fits.
 *
 * Sorted by size it fits if and only if no size of it is greater than that of the hole: if any way round fits, the
 * sorted one does. Tilted placings are not tried.
 *
 * Throws RangeError if a size is not finite or not greater than 0.
 */
export function boxFits(box: BoxSize, hole: BoxSize, { upright }: { readonly upright: boolean }): boolean {
  const [boxPlan, holePlan] = [box, hole].map(({ lengthM, widthM }) => [lengthM, widthM]);
  if (boxPlan === undefined || holePlan === undefined) return false;
  checkedSizes([...boxPlan, box.heightM], 'a box');
  checkedSizes([...holePlan, hole.heightM], 'a hole');
  if (upright) {
    return (
      box.heightM <= hole.heightM + EQUAL_WITHIN_M &&
      noneGreater(longestFirst(boxPlan), longestFirst(holePlan))
    );
  }
  return noneGreater(longestFirst([...boxPlan, box.heightM]), longestFirst([...holePlan, hole.heightM]));
}

/**
 * Whether one flat rectangle fits into another, turned by any angle.
 *
 *     (p ≤ a and q ≤ b)    or    p > a, q ≤ b and b ≥ (2·p·q·a + (p² − q²)·√(p² + q² − a²)) / (p² + q²)
 *
 * p ≥ q: sides of the one that goes in, m; a ≥ b: sides of the other, m (all > 0). The first case is straight, the
 * second turned. Necessary and sufficient. A page that quotes it points out that q ≤ b must be asked for in the second
 * case too: without it a 10 × 10 square would fit into 8 × 8.
 *
 * Throws RangeError if a size is not finite or not greater than 0.
 *
 * Source: W. B. Carver, answer to problem E 1225, American Mathematical Monthly 64 (1957), as given by J. E. Wetzel,
 * "Rectangles in Rectangles", Mathematics Magazine 73 (2000), pp. 204-211 (the opening read; the theorem read on pages
 * that quote it).
 */
export function rectangleFitsTurned(inner: RectangleSize, outer: RectangleSize): boolean {
  const [p = 0, q = 0] = longestFirst(checkedSizes([inner.lengthM, inner.widthM], 'a rectangle'));
  const [a = 0, b = 0] = longestFirst(checkedSizes([outer.lengthM, outer.widthM], 'a rectangle'));
  if (q > b + EQUAL_WITHIN_M) return false;
  if (p <= a + EQUAL_WITHIN_M) return true;
  const neededM = (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);
  return b + EQUAL_WITHIN_M >= neededM;
}

/**
 * The longest straight line that lies on a mattress, m: its diagonal.
 *
 *     d = √(l² + w²)
 *
 * l, w: length and width, m (> 0). It has no width of its own: a person needs `longestLying`.
 *
 * Throws RangeError if a size is not finite or not greater than 0. Source: Pythagoras (computed).
 */
export function diagonal({ lengthM, widthM }: RectangleSize): number {
  return Math.hypot(positive(lengthM, 'The length'), positive(widthM, 'The width'));
}

/**
 * The longest rectangle of a given width that lies on a mattress at any angle, m: how tall someone of that breadth may
 * be and still lie stretched out, if only across the corners. Undefined if even the width does not fit.
 *
 * It is the greatest p with `rectangleFitsTurned(p × widthM)`, found by halving (a shorter one of the same width always
 * fits where a longer one does) between the longer side and the diagonal, to a micrometre from below.
 *
 * widthM > 0. Throws RangeError if a size is not finite or not greater than 0.
 */
export function longestLying(widthM: number, mattress: RectangleSize): number | undefined {
  const fits = (lengthM: number) =>
    rectangleFitsTurned({ lengthM, widthM: finite(widthM, 'The width') }, mattress);
  let fittingM = Math.max(mattress.lengthM, mattress.widthM);
  if (!fits(fittingM)) return undefined;
  let tooLongM = diagonal(mattress) + EQUAL_WITHIN_M;
  while (tooLongM - fittingM > EQUAL_WITHIN_M) {
    const middleM = (fittingM + tooLongM) / 2;
    if (fits(middleM)) fittingM = middleM;
    else tooLongM = middleM;
  }
  return fittingM;
}
