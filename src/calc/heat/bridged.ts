import { notNegative, positive } from '../argument.ts';

/** One way through a band, with the share of the area that takes it. */
export interface Path {
  /** Above 0, up to 1. The shares of a band add up to 1. */
  readonly share: number;
  /** From outside in, m²·K/W, each > 0. All paths of a band have as many. */
  readonly layersM2KPerW: readonly number[];
}

/** Layers that change together: one path if they are even, more if something bridges them. */
export type Band = readonly Path[];

export interface BridgedWall {
  readonly insideM2KPerW: number;
  readonly outsideM2KPerW: number;
  /** From outside in. Bridges of different bands cross each other at random. */
  readonly bands: readonly Band[];
}

export interface BridgedResistance {
  /** Heat takes no side steps: each path by itself. */
  readonly upperM2KPerW: number;
  /** Heat spreads freely in every plane between layers. */
  readonly lowerM2KPerW: number;
  /** Their mean. */
  readonly resistanceM2KPerW: number;
  /** 1 / mean, W/(m²·K). */
  readonly uValue: number;
  /** Upper over lower; what the method may be trusted with is in the catalogue. */
  readonly ratio: number;
  /** Half the gap of the bounds over the mean: the greatest part by which the mean can be wrong. */
  readonly greatestError: number;
}

/** A band of one even layer. */
export const even = (resistanceM2KPerW: number): Band => [{ share: 1, layersM2KPerW: [resistanceM2KPerW] }];

/**
 * The resistance of a wall some of whose layers are bridged (battens, joints), by the combined method.
 *
 *     R' = 1 / Σ_paths (f / R_path)        (upper)
 *     R″ = R_si + R_se + Σ_layers 1 / Σ_parts (f / R_part)        (lower)
 *     R_T = (R' + R″) / 2
 *
 * f: share of the area; R in m²·K/W. A path through the whole wall takes one path of each band, with the product of
 * their shares.
 *
 * Not for bridges of metal: {@link ./metal-ribs.ts} has those. The bounds themselves hold for any conductor.
 *
 * Throws RangeError if a resistance is not above 0, the shares of a band do not add up to 1, or the paths of one band
 * differ in their number of layers.
 *
 * Source: ISO 6946:2007, 6.2 (6.7.2 of the 2017 edition; clause numbers from memory), as used in a worked example of
 * the Scottish building standards (read as quoted in an open program's test).
 */
export function bridgedResistance(wall: BridgedWall): BridgedResistance {
  const films = filmsOf(wall);
  for (const band of wall.bands) checkBand(band);
  const upperM2KPerW =
    1 /
    pathsThrough(wall).reduce(
      (sum, { share, m2KPerW }) => sum + share / positive(m2KPerW, 'The resistance of a path'),
      0,
    );
  const lowerM2KPerW = wall.bands.reduce((sum, band) => sum + spreadResistance(band), films);
  const resistanceM2KPerW = (upperM2KPerW + lowerM2KPerW) / 2;
  return {
    upperM2KPerW,
    lowerM2KPerW,
    resistanceM2KPerW,
    uValue: 1 / resistanceM2KPerW,
    ratio: upperM2KPerW / lowerM2KPerW,
    greatestError: (upperM2KPerW - lowerM2KPerW) / (2 * resistanceM2KPerW),
  };
}

const filmsOf = ({ insideM2KPerW, outsideM2KPerW }: BridgedWall): number =>
  notNegative(insideM2KPerW, 'The inside surface resistance') +
  notNegative(outsideM2KPerW, 'The outside surface resistance');

/** One way through a whole wall, films included. */
export interface WholePath {
  readonly share: number;
  readonly m2KPerW: number;
  /** Which path it takes in each band, from 0. */
  readonly taken: readonly number[];
}

/** Every way through the wall: one path of each band, with the product of their shares. */
export function pathsThrough(wall: BridgedWall): readonly WholePath[] {
  let paths: readonly WholePath[] = [{ share: 1, m2KPerW: filmsOf(wall), taken: [] }];
  for (const band of wall.bands)
    paths = paths.flatMap((before) =>
      band.map(({ share, layersM2KPerW }, index) => ({
        share: before.share * share,
        m2KPerW: before.m2KPerW + layersM2KPerW.reduce((sum, layer) => sum + layer, 0),
        taken: [...before.taken, index],
      })),
    );
  return paths;
}

/** Of the layers of a band where every plane between them is at one temperature. */
function spreadResistance(band: Band): number {
  const conductances: number[] = [];
  for (const { share, layersM2KPerW } of band)
    layersM2KPerW.forEach((layer, index) => {
      conductances[index] = (conductances[index] ?? 0) + share / layer;
    });
  return conductances.reduce((sum, conductance) => sum + 1 / conductance, 0);
}

function checkBand(band: Band): void {
  const shares = band.reduce((sum, { share }) => sum + positive(share, 'The share of a path'), 0);
  // Shares come from spacings and thicknesses; adding them up rounds.
  if (Math.abs(shares - 1) > 1e-9) {
    throw new RangeError(`The shares of the paths through one band must add up to 1, not ${shares}.`);
  }
  const counts = new Set(band.map(({ layersM2KPerW }) => layersM2KPerW.length));
  if (counts.size !== 1) {
    throw new RangeError('All paths through one band must have the same number of layers.');
  }
  for (const { layersM2KPerW } of band)
    for (const layer of layersM2KPerW) positive(layer, 'The resistance of a layer');
}
