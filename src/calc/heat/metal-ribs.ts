import { notNegative, positive } from '../argument.ts';
import { type BridgedResistance, bridgedResistance, even } from './bridged.ts';

/** Ribs of sheet metal that stand on the skin and stick into the insulation, all alike and evenly spaced. */
export interface MetalRibs {
  /** From the skin inwards, m (> 0). */
  readonly depthM: number;
  /** Of all webs of one rib together: a hat section has two, m (> 0). */
  readonly metalM: number;
  /** From rib to rib, m (> metalM). */
  readonly spacingM: number;
  /** Of the metal, W/(m·K) (> 0). */
  readonly metalWPerMK: number;
  /** The face that lies along the lining, m (≥ 0). */
  readonly flangeM: number;
}

export interface RibbedWall {
  readonly insideM2KPerW: number;
  readonly outsideM2KPerW: number;
  /** Between the outside and the feet of the ribs: the skin. Each > 0. */
  readonly outerLayersM2KPerW: readonly number[];
  /** Of what fills the depth of the ribs between them, each layer > 0. */
  readonly fillM2KPerW: number;
  /** From the heads of the ribs to the inside: insulation over them, lining. Each > 0. */
  readonly innerLayersM2KPerW: readonly number[];
  readonly ribs: MetalRibs;
}

export interface RibbedResistance {
  /** All of what may be: between the planes of one temperature and the separate paths. */
  readonly bounds: BridgedResistance;
  /** How far the chosen value lies from the lower (0) to the upper bound (1). */
  readonly weight: number;
  /** The value to calculate with, m²·K/W. */
  readonly resistanceM2KPerW: number;
  readonly uValue: number;
  readonly leastUValue: number;
  readonly greatestUValue: number;
  /** As if there were no ribs. */
  readonly clearUValue: number;
  /** By what part the ribs raise the loss; 0.75 is three quarters more. */
  readonly increase: number;
  /** Always false: metal across insulation is outside ISO 6946, so the figures are a range with a chosen value. */
  readonly withinSimpleMethod: false;
}

/** Beyond these the fitted weight is not to be trusted; they also keep the chosen value inside the bounds. */
const leastWeight = 0;
const greatestWeight = 0.5;

/**
 * The resistance of a wall whose insulation is bridged by metal ribs, as a range with a chosen value.
 *
 *     R' , R″: upper and lower bound of the combined method, which holds for any conductor
 *     p = 0.8 · R″ / R' + 0.44 − 0.1 · w / 40 mm − 0.2 · 600 mm / s − 0.04 · d / 100 mm,   0 ≤ p ≤ 0.5
 *     R_T = p · R' + (1 − p) · R″
 *
 * w: flange, s: spacing, d: depth; R in m²·K/W. The share of metal is its thickness over the spacing. p was fitted
 * to calculated fields of heat in cold-formed studs in houses (spacing 400 to 600 mm, flange up to 80 mm); p is kept
 * from 0 to the plain mean, 0.5 (own choice, the strict side), and R″ / R' in it does not fall so far that a better filling
 * would make a worse wall ({@link leastRatioOfFit}). Vans have ribs of other shapes, so treat the chosen value as an
 * estimate and print the range.
 *
 * Throws RangeError if a value is out of its range.
 *
 * Source: BRE Digest 465 (formula from memory); confirmed to 0.001 in p and 0.002 in U by a printed calculation
 * sheet for a light steel frame (read), and near the US correction factors for steel studs (memory).
 */
export function ribbedResistance(wall: RibbedWall): RibbedResistance {
  const { depthM, metalM, spacingM, metalWPerMK, flangeM } = wall.ribs;
  const share = positive(metalM, 'The metal of a rib') / positive(spacingM, 'The spacing of the ribs');
  if (share >= 1) throw new RangeError('The ribs must be farther apart than their metal is thick.');
  const metalM2KPerW =
    positive(depthM, 'The depth of the ribs') / positive(metalWPerMK, 'The conductivity of the ribs');
  const filled = (band: ReturnType<typeof even>) =>
    bridgedResistance({
      insideM2KPerW: wall.insideM2KPerW,
      outsideM2KPerW: wall.outsideM2KPerW,
      bands: [...wall.outerLayersM2KPerW.map(even), band, ...wall.innerLayersM2KPerW.map(even)],
    });
  const bounds = filled([
    { share, layersM2KPerW: [metalM2KPerW] },
    { share: 1 - share, layersM2KPerW: [wall.fillM2KPerW] },
  ]);
  const clearUValue = filled(even(wall.fillM2KPerW)).uValue;
  const shape = { flangeM: notNegative(flangeM, 'The flange of a rib'), spacingM, depthM };
  const upperM2KPerW = Math.min(
    bounds.upperM2KPerW,
    bounds.lowerM2KPerW / Math.min(1, leastRatioOfFit(shape)),
  );
  const fitted = Math.min(
    greatestWeight,
    Math.max(leastWeight, ribWeight({ lowerOverUpper: bounds.lowerM2KPerW / upperM2KPerW, ...shape })),
  );
  const resistanceM2KPerW = fitted * upperM2KPerW + (1 - fitted) * bounds.lowerM2KPerW;
  const gapM2KPerW = bounds.upperM2KPerW - bounds.lowerM2KPerW;
  const weight = gapM2KPerW > 0 ? (resistanceM2KPerW - bounds.lowerM2KPerW) / gapM2KPerW : fitted;
  return {
    bounds,
    weight,
    resistanceM2KPerW,
    uValue: 1 / resistanceM2KPerW,
    leastUValue: 1 / bounds.upperM2KPerW,
    greatestUValue: 1 / bounds.lowerM2KPerW,
    clearUValue,
    increase: 1 / resistanceM2KPerW / clearUValue - 1,
    withinSimpleMethod: false,
  };
}

export interface RibWeightInput {
  /** R″ / R', 0 to 1. */
  readonly lowerOverUpper: number;
  readonly flangeM: number;
  readonly spacingM: number;
  readonly depthM: number;
}

type RibShape = Omit<RibWeightInput, 'lowerOverUpper'>;

/** How much of p each part of R″ / R' makes. */
const ratioInWeight = 0.8;

/** The fitted weight p of {@link ribbedResistance}, before it is kept within limits. Lengths in m. */
export const ribWeight = ({ lowerOverUpper, ...shape }: RibWeightInput): number =>
  ratioInWeight * lowerOverUpper + shapeInWeight(shape);

const shapeInWeight = ({ flangeM, spacingM, depthM }: RibShape): number =>
  0.44 -
  0.1 * (flangeM / 0.04) -
  0.2 * (0.6 / positive(spacingM, 'The spacing of the ribs')) -
  0.04 * (depthM / 0.1);

/**
 * The R″ / R' below which the fit is not followed. With wide or close ribs its part of the shape, k, is negative, and below
 * r = √(−k / 0.8) a better filling would come out as a *worse* wall: R_T = R″ + (0.8 · R″ / R' + k) · (R' − R″) then falls as
 * R' grows. No wall loses more because a part of it conducts less, so from there on R_T stays in proportion to R″, as if
 * R' had grown no further.
 */
const leastRatioOfFit = (shape: RibShape): number =>
  Math.sqrt(Math.max(0, -shapeInWeight(shape)) / ratioInWeight);

/**
 * Heat through the line of a rib as if none of it spread: the coldest that its face can be.
 *
 *     U_rib = 1 / (R_se + R_outer + d / λ + R_inner + R_si),  W/(m²·K)
 *
 * With {@link ./surface.ts} this gives the lowest surface temperature over a rib. The flange gathers heat from
 * beside it, so the true face is warmer: the strict side.
 *
 * Throws RangeError if a value is out of its range.
 *
 * Source: steady flow of heat through one path (computed).
 */
export function ribLineUValue(wall: Omit<RibbedWall, 'fillM2KPerW'>): number {
  const { depthM, metalWPerMK } = wall.ribs;
  const through = [...wall.outerLayersM2KPerW, ...wall.innerLayersM2KPerW].reduce(
    (sum, layer) => sum + notNegative(layer, 'The resistance of a layer'),
    positive(depthM, 'The depth of the ribs') / positive(metalWPerMK, 'The conductivity of the ribs'),
  );
  return (
    1 /
    positive(
      notNegative(wall.insideM2KPerW, 'The inside surface resistance') +
        notNegative(wall.outsideM2KPerW, 'The outside surface resistance') +
        through,
      'The resistance through a rib',
    )
  );
}
