import { positive } from '../argument.ts';

/**
 * The part of a round bore's cross-section that round cables or pipes take, 0 to 1 (above 1 they cannot go in).
 *
 *     s = Σ d_i² / D²
 *
 * d_i: overall diameters with insulation and sheath, any one length unit as long as D has the same (> 0); a flat cable
 * counts as a circle of its greater width; D: inner diameter of the bore (> 0). No cables: 0.
 *
 * Throws RangeError if a diameter is not finite or not greater than 0.
 *
 * Source: the ratio of the cross-sections of the cables to the inner one of the enclosure, the "space factor" of the
 * On-Site Guide to BS 7671, appendix E (read as quoted by a member of the institution's forum, page 150).
 */
export function fillFraction(diametersM: readonly number[], boreM: number): number {
  const cables = diametersM.reduce(
    (sum, diameterM) => sum + positive(diameterM, 'The diameter of a cable') ** 2,
    0,
  );
  return cables / positive(boreM, 'The bore of a chase') ** 2;
}
