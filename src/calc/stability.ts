import { positive } from './argument.ts';

/**
 * Static stability factor, a bare number: the sideways acceleration, in g, at which a *rigid* vehicle tips on level
 * ground; also the tangent of the side slope on which it tips.
 *
 *     SSF = T / (2 h)
 *
 * T: track, m (> 0; with two different tracks, their mean); h: height of the centre of gravity above the road, m
 * (> 0). A real vehicle tips earlier, because its springs and tyres give: at 70 % to 90 % of this figure,
 * says a crash reconstruction note on T/2H (read). Use it to compare loadings of one van, not as a speed that can be driven.
 *
 * Throws RangeError if a value is not finite or not greater than 0.
 *
 * Source: US NHTSA, rollover rule-making paper, chapter V "Why choose SSF?", section A (read).
 */
export function staticStabilityFactor(trackM: number, centreHeightM: number): number {
  return positive(trackM, 'The track') / (2 * positive(centreHeightM, 'The height of the centre of gravity'));
}
