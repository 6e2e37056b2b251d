import { notNegative, positive } from '../argument.ts';
import { restraintForceN, STANDARD_GRAVITY_M_PER_S2 } from '../space/restraint.ts';

/** A box: V = L W H, m³. Throws RangeError if a length is not greater than 0. */
export const boxVolumeM3 = (lengthM: number, widthM: number, heightM: number): number =>
  positive(lengthM, 'The length') * positive(widthM, 'The width') * positive(heightM, 'The height');

/** A cylinder: V = π r² L, m³. Throws RangeError if a length is not greater than 0. */
export const cylinderVolumeM3 = (radiusM: number, lengthM: number): number =>
  Math.PI * positive(radiusM, 'The radius') ** 2 * positive(lengthM, 'The length');

/**
 * What a lying cylinder holds up to a depth, m³.
 *
 *     V = L (r² arccos((r − h)/r) − (r − h) √(2 r h − h²))
 *
 * r: radius, m (> 0); L: length, m (> 0); h: depth, m (0 to 2 r). Throws RangeError if a value is out of its range.
 */
export function lyingCylinderVolumeM3(radiusM: number, lengthM: number, depthM: number): number {
  const r = positive(radiusM, 'The radius');
  const h = notNegative(depthM, 'The depth');
  if (h > 2 * r) throw new RangeError(`The depth must not be more than ${2 * r}, not ${h}.`);
  const segment = r ** 2 * Math.acos((r - h) / r) - (r - h) * Math.sqrt(Math.max(0, 2 * r * h - h ** 2));
  return positive(lengthM, 'The length') * segment;
}

/**
 * A box over a wheel arch: V = L W H − π R² W / 2, m³.
 *
 * The arch is half a cylinder of radius R across the whole width, R > 0; L ≥ 2 R and H ≥ R, so that it lies within.
 *
 * Throws RangeError if a length is not greater than 0 or the arch sticks out of the box.
 */
export function boxOverArchVolumeM3(
  lengthM: number,
  widthM: number,
  heightM: number,
  archRadiusM: number,
): number {
  const box = boxVolumeM3(lengthM, widthM, heightM);
  const radius = positive(archRadiusM, 'The radius of the wheel arch');
  if (2 * radius > lengthM || radius > heightM) {
    throw new RangeError(`A wheel arch of radius ${radius} sticks out of a box of ${lengthM} by ${heightM}.`);
  }
  return box - (Math.PI * radius ** 2 * widthM) / 2;
}

/** What a liquid that stands does to an upright wall. */
export interface WallLoad {
  readonly meanPa: number;
  readonly deepestPa: number;
  readonly forceN: number;
  /** Of the force, above the bottom. */
  readonly actsAboveBottomM: number;
}

/**
 * Load on an upright rectangular wall of a full tank.
 *
 *     p = ρ g H;  F = ρ g H² L / 2, at H/3 above the bottom
 *
 * L: width of the wall, m (> 0); H: depth of the liquid, m (> 0); ρ: kg/m³ (> 0; 1000 where left out). At rest: braking
 * adds ρ a times the length of the tank to it.
 *
 * Throws RangeError if a value is not greater than 0.
 *
 * Source: open college textbook, force on a dam (read).
 */
export function wallLoad(widthM: number, depthM: number, densityKgM3 = 1000): WallLoad {
  const depth = positive(depthM, 'The depth');
  const deepestPa = positive(densityKgM3, 'The density') * STANDARD_GRAVITY_M_PER_S2 * depth;
  return {
    meanPa: deepestPa / 2,
    deepestPa,
    forceN: (deepestPa / 2) * depth * positive(widthM, 'The width'),
    actsAboveBottomM: depth / 3,
  };
}

/**
 * Pull that each strap over a tank must bear, N.
 *
 *     blocking: F = c m g / n;  by friction only: F = c m g / (n · 2 μ)
 *
 * c: acceleration in g (≥ 0; rows of the restraint catalogue); m: mass, full, kg (> 0); n: straps (≥ 1); μ: coefficient
 * of friction that can be relied on (> 0), or left out where the straps block the tank. By friction each strap presses
 * down with both its ends, and the tank's own weight is not counted.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: balance of forces after EN 12195-1 (memory).
 */
export function strapForceN(
  massKg: number,
  coefficient: number,
  straps: number,
  frictionCoefficient?: number,
): number {
  if (!Number.isInteger(straps) || straps < 1) {
    throw new RangeError(`A tank is held by a whole number of straps, not ${straps}.`);
  }
  const pull = restraintForceN(massKg, coefficient) / straps;
  return frictionCoefficient === undefined
    ? pull
    : pull / (2 * positive(frictionCoefficient, 'The friction'));
}

/**
 * Second moment of the free surface of a tank about its fore-and-aft axis, m⁴: i = L B³ / 12.
 *
 * L: length, m (> 0); B: breadth across the vehicle, m (> 0). Two tanks of half the breadth have a quarter of it.
 *
 * Throws RangeError if a length is not greater than 0.
 *
 * Source: naval architecture, as tested in an open hydrostatics library (read).
 */
export const freeSurfaceM4 = (lengthM: number, breadthM: number): number =>
  (positive(lengthM, 'The length') * positive(breadthM, 'The breadth') ** 3) / 12;
