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

/**
 * The greatest part of a conduit's cross-section that a given number of cables may take: 0.53 for one, 0.31 for two,
 * 0.40 for three and more. Two lie side by side and make an oval, which jams sooner than one or three.
 *
 * Throws RangeError if the number is not a whole number of at least 1.
 *
 * Source: NFPA 70 (NEC), chapter 9, table 1 (read on pages that reproduce it). It is for conduit and tubing through
 * which cables are drawn.
 */
export function conduitFillLimit(cables: number): number {
  if (!Number.isInteger(cables) || cables < 1) {
    throw new RangeError(`The number of cables must be a whole number of at least 1, not ${cables}.`);
  }
  if (cables === 1) return 0.53;
  return cables === 2 ? 0.31 : 0.4;
}

/**
 * The greatest part of a trunking's cross-section that cables may take where they are laid in, not drawn through.
 *
 * Source: On-Site Guide to BS 7671, appendix E, "other sizes and types of cable or trunking" (read as quoted by a member
 * of the institution's forum, page 150, and in a guide to electrical installation). It is for sizes that its tables do
 * not list.
 */
export const TRUNKING_FILL_LIMIT = 0.45;

/**
 * The same guide's limit for conduit. Where `conduitFillLimit` differs from it the stricter holds: this one from three
 * cables on.
 *
 * Source: On-Site Guide to BS 7671, appendix E (read on one secondary page only).
 */
export const CONDUIT_SPACE_FACTOR = 0.35;
