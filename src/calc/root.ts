import { positive } from './argument.ts';

/** So many halvings take any bracket of doubles below any tolerance that doubles can hold. */
const longestSearch = 300;

/**
 * Where a continuous function of one variable crosses zero.
 *
 *     f(x) = 0,  low ≤ x ≤ high
 *
 * The crossing is bracketed throughout, so the answer never leaves [low, high]; it lies within the tolerance of a
 * change of sign (or within what doubles can tell apart there, if that is coarser). The steps are chosen by Brent's
 * method: inverse quadratic or secant where they gain ground, halving where they do not. A function with a jump through
 * zero gives the place of the jump.
 *
 * Throws RangeError if a bound is not finite, low > high, the tolerance is not above 0, f gives NaN, or f has the same
 * sign at both ends.
 *
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4 (memory).
 */
export function rootBetween(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  positive(tolerance, 'The tolerance');
  if (!Number.isFinite(low) || !Number.isFinite(high) || low > high) {
    throw new RangeError(
      `A root is sought from a lower to a higher finite number, not from ${low} to ${high}.`,
    );
  }
  const at = (x: number): number => {
    const value = f(x);
    if (Number.isNaN(value)) throw new RangeError(`The function has no value at ${x}.`);
    return value;
  };
  // `best` has the value nearest zero, `other` is across zero from it, `before` is where `best` was last.
  let before = low;
  let valueBefore = at(low);
  let best = high;
  let valueBest = at(high);
  if (valueBefore === 0) return before;
  if (valueBest === 0) return best;
  if (valueBefore > 0 === valueBest > 0) {
    throw new RangeError(
      `The function has the same sign at ${low} (${valueBefore}) and at ${high} (${valueBest}), so no root lies between for sure.`,
    );
  }
  let other = before;
  let valueOther = valueBefore;
  let step = best - before;
  let stepBefore = step;
  for (let round = 0; round < longestSearch; round += 1) {
    if (valueBest > 0 === valueOther > 0) {
      other = before;
      valueOther = valueBefore;
      step = best - before;
      stepBefore = step;
    }
    if (Math.abs(valueOther) < Math.abs(valueBest)) {
      [before, best, other] = [best, other, best];
      [valueBefore, valueBest, valueOther] = [valueBest, valueOther, valueBest];
    }
    const nearEnough = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (other - best) / 2;
    if (Math.abs(half) <= nearEnough || valueBest === 0) return best;
    const guess =
      Math.abs(stepBefore) >= nearEnough && Math.abs(valueBefore) > Math.abs(valueBest)
        ? interpolatedStep({ before, best, other, valueBefore, valueBest, valueOther })
        : half;
    const gains =
      guess / half > 0 &&
      Math.abs(guess) < 1.5 * Math.abs(half) - nearEnough / 2 &&
      Math.abs(guess) < Math.abs(stepBefore) / 2;
    stepBefore = gains ? step : half;
    step = gains ? guess : half;
    before = best;
    valueBefore = valueBest;
    best += Math.abs(step) > nearEnough ? step : Math.sign(half) * nearEnough;
    valueBest = at(best);
  }
  return best;
}

interface Three {
  readonly before: number;
  readonly best: number;
  readonly other: number;
  readonly valueBefore: number;
  readonly valueBest: number;
  readonly valueOther: number;
}

/** From `best` to where a line (two points) or a sideways parabola (three) through the points crosses zero. */
function interpolatedStep({ before, best, other, valueBefore, valueBest, valueOther }: Three): number {
  const fromBefore = valueBest / valueBefore;
  if (before === other) {
    return (fromBefore * (best - other)) / (1 - fromBefore) || 0;
  }
  const acrossBefore = valueBefore / valueOther;
  const across = valueBest / valueOther;
  const above =
    fromBefore * ((other - best) * acrossBefore * (acrossBefore - across) - (best - before) * (across - 1));
  const below = (acrossBefore - 1) * (across - 1) * (fromBefore - 1);
  return -above / below || 0;
}
