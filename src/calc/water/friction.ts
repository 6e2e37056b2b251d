import { notNegative, positive } from '../argument.ts';

/** Below this Reynolds number the laminar formula holds alone. */
const laminarBelow = 1800;
/** From here the larger of the two factors counts. */
const largerFrom = 2000;

/**
 * Darcy friction factor of laminar flow in a round pipe.
 *
 *     f = 64 / Re
 *
 * Re: Reynolds number (> 0; laminar up to about 2000). Throws RangeError if Re is not greater than 0.
 *
 * Source: textbook (Hagen and Poiseuille), as printed with a worked question (read).
 */
export const laminarFrictionFactor = (reynolds: number): number =>
  64 / positive(reynolds, 'The Reynolds number');

/**
 * Darcy friction factor of turbulent flow by Colebrook and White, solved to the last places of a double.
 *
 *     1/√f = −2 log₁₀( (ε/D)/3.7 + 2.51/(Re √f) )
 *
 * Re: Reynolds number (> 0; meant for 4000 to 10⁸); ε/D: roughness over inner diameter (0 to 0.1). The Fanning factor
 * of other books is a quarter of this. Some books print 3.71 or 3.7065 for 3.7, which changes the fifth figure.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: Colebrook–White as printed in D. Clamond, Ind. Eng. Chem. Res. 48 (2009), eq. 1 (read).
 */
export function colebrookFrictionFactor(reynolds: number, relativeRoughness: number): number {
  const fromRoughness = roughness(relativeRoughness) / 3.7;
  const perReynolds = 2.51 / positive(reynolds, 'The Reynolds number');
  // x = 1/√f; Newton's method on x + 2 log₁₀(a + b x), which is concave and rising: it never runs away.
  let x = 4;
  for (let round = 0; round < 50; round += 1) {
    const inside = fromRoughness + perReynolds * x;
    const step = (x + 2 * Math.log10(inside)) / (1 + ((2 / Math.LN10) * perReynolds) / inside);
    // A first step from far off may overshoot below zero, where there is no logarithm.
    x = Math.max(x - step, x / 10);
    if (Math.abs(step) < 1e-14 * x) break;
  }
  return 1 / x ** 2;
}

/**
 * Darcy friction factor of flow in a round pipe, continuous in the Reynolds number.
 *
 * Up to Re 1800 the laminar factor; from 2000 the larger of the laminar and the Colebrook factor, so that between 2000
 * and 4000, where the flow may be either, the loss is never too small. Between 1800 and 2000 it runs straight from the
 * one to the other, so that a loss rises without a jump and a flow can always be solved for.
 *
 * Throws RangeError as {@link colebrookFrictionFactor} does.
 *
 * Source: the two formulas (read); the larger of both in doubt and the ramp: own choice, on the safe side.
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  const laminar = laminarFrictionFactor(reynolds);
  roughness(relativeRoughness);
  if (reynolds <= laminarBelow) return laminar;
  const larger = Math.max(laminar, colebrookFrictionFactor(reynolds, relativeRoughness));
  const share = Math.min(1, (reynolds - laminarBelow) / (largerFrom - laminarBelow));
  return laminar + share * (larger - laminar);
}

function roughness(relative: number): number {
  if (notNegative(relative, 'The relative roughness') > 0.1) {
    throw new RangeError(`The relative roughness must not be more than 0.1, not ${relative}.`);
  }
  return relative;
}
