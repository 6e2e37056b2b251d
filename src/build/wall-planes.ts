import { layerResistance } from '../calc/heat/layers.ts';
import { airGapResistance, type HeatDirection } from '../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../catalogue/heat/thermal-materials.ts';
import type { HeatLayer } from './heat.ts';

/*
 * How the layers of a build-up lie in space. A layer that covers a part of the area only lies beside others: layers that
 * follow each other, each with a share below 1, lie side by side in *one* plane as long as their shares add up to no more
 * than 1. The plane is as thick as the thickest of them. What no layer covers, and what a thinner one leaves of the
 * thickness, is still air. (Battens and the wool between them are two layers of a plan and one plane of the wall.)
 */

/** What conducts less is insulation: the same edge as for what warms up with a room (calc/heat/warm-up.ts). */
const insulatesBelowWPerMK = 0.065;
/** Shares are typed in per cent; adding them up rounds. */
const rounding = 1e-9;

/** One way through a plane. */
export interface PlanePath {
  readonly share: number;
  readonly resistanceM2KPerW: number;
  /** Undefined: still air. */
  readonly layer?: HeatLayer;
}

export interface Plane {
  readonly thicknessM: number;
  /** Their shares add up to 1. */
  readonly paths: readonly PlanePath[];
  /** Some of it is insulation; the innermost planes that are not are the lining. */
  readonly insulates: boolean;
}

export interface Planes {
  /** From outside in. Foils have no thickness and are no planes. */
  readonly planes: readonly Plane[];
  /** Keys without which the resistance of a layer is not known. */
  readonly missing: readonly string[];
}

/** W/(m·K): as typed, or of the material. */
export const conductivityOf = ({ conductivity, material }: HeatLayer): number | undefined =>
  conductivity ?? (material && thermalMaterialNamed(material.name)?.conductivityWPerMK);

/** It holds back vapour and is too thin to hold back heat: a layer whose thickness nobody gives, but its air layer. */
export const isFoil = ({ thicknessM, vapourAirM }: HeatLayer): boolean =>
  thicknessM === undefined && vapourAirM !== undefined;

/** `build_ups.walls.layers[2]`. */
export const keyOfLayer = ({ path }: HeatLayer): string =>
  path.map((part, at) => (typeof part === 'number' ? `[${part}]` : `${at > 0 ? '.' : ''}${part}`)).join('');

const missingOf = (layer: HeatLayer): string[] =>
  isFoil(layer)
    ? []
    : [
        ...(layer.thicknessM === undefined ? [`${keyOfLayer(layer)}.thickness`] : []),
        ...(conductivityOf(layer) === undefined ? [`${keyOfLayer(layer)}.conductivity`] : []),
      ];

export function planesOf(layers: readonly HeatLayer[], direction: HeatDirection): Planes {
  const planes = sideBySide(layers)
    .filter((together) => !together.every(isFoil))
    .map((together) => planeOf(together, direction));
  return { planes, missing: layers.flatMap(missingOf) };
}

/** Layers of one plane together. A foil is a plane of its own, so what it parts does not lie side by side. */
export function sideBySide(layers: readonly HeatLayer[]): HeatLayer[][] {
  const groups: { covered: number; layers: HeatLayer[] }[] = [];
  for (const layer of layers) {
    if (layer.share <= 0) continue;
    const last = groups.at(-1);
    const isAlone = isFoil(layer) || last?.layers.some(isFoil);
    if (
      last &&
      !isAlone &&
      last.covered < 1 &&
      layer.share < 1 &&
      last.covered + layer.share <= 1 + rounding
    ) {
      last.covered += layer.share;
      last.layers.push(layer);
    } else groups.push({ covered: layer.share, layers: [layer] });
  }
  return groups.map((group) => group.layers);
}

/** A plane with more room than its thickest layer takes up: still air fills the rest. */
export const deepenedPlane = ({ paths }: Plane, thicknessM: number, direction: HeatDirection): Plane =>
  planeOf(
    paths.flatMap(({ layer }) => layer ?? []),
    direction,
    thicknessM,
  );

function planeOf(
  layers: readonly HeatLayer[],
  direction: HeatDirection,
  thicknessM = Math.max(...layers.map((layer) => layer.thicknessM ?? 0)),
): Plane {
  const covered = layers.map((layer): PlanePath => {
    const ownM = layer.thicknessM ?? 0;
    const conductivity = conductivityOf(layer) ?? Number.POSITIVE_INFINITY;
    const own = Number.isFinite(conductivity) ? layerResistance(ownM, conductivity) : 0;
    return {
      share: layer.share,
      resistanceM2KPerW: own + airGapResistance(thicknessM - ownM, direction),
      layer,
    };
  });
  const bare = 1 - covered.reduce((sum, { share }) => sum + share, 0);
  return {
    thicknessM,
    paths:
      bare > rounding
        ? [...covered, { share: bare, resistanceM2KPerW: airGapResistance(thicknessM, direction) }]
        : covered,
    insulates: layers.some((layer) => (conductivityOf(layer) ?? insulatesBelowWPerMK) < insulatesBelowWPerMK),
  };
}

/** The way that most of the area takes. */
export const mainPath = ({ paths }: Plane): PlanePath | undefined =>
  paths.reduce<PlanePath | undefined>(
    (main, path) => (main === undefined || path.share > main.share ? path : main),
    undefined,
  );

/** Of a plane in which heat spreads freely, m²·K/W. */
export const spreadResistance = ({ paths }: Plane): number =>
  1 / paths.reduce((sum, { share, resistanceM2KPerW }) => sum + share / resistanceM2KPerW, 0);
