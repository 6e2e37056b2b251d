import { type Band, type BridgedWall, bridgedResistance, even } from '../calc/heat/bridged.ts';
import { layerResistance } from '../calc/heat/layers.ts';
import { ribbedResistance, ribLineUValue } from '../calc/heat/metal-ribs.ts';
import { usualRib } from '../catalogue/heat/metal-bridges.ts';
import {
  type HeatDirection,
  insideFilmM2KPerW,
  outsideFilmM2KPerW,
} from '../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../catalogue/heat/thermal-materials.ts';
import type { Build } from './build.ts';
import type { EnvelopePart, EnvelopeSurface, Heat } from './heat.ts';
import { conductivityOf, deepenedPlane, type Plane, planesOf, spreadResistance } from './wall-planes.ts';

/*
 * U-values of the load bay's surfaces: skin, layers, films. Layers side by side by the combined method (ISO 6946), metal
 * ribs as a range with a chosen value (calc/heat/metal-ribs.ts).
 *
 * Ribs count where they bridge insulation. They stand on the skin as deep as `heat.ribs.depth`; insulation that is deeper
 * covers their heads, and where it is shallower still air is left between it and the lining, which lies on the heads. What
 * covers a rib's head (`covered_by`) is crossed by the heat of its webs after it has spread over the head's width: it counts
 * in the rib's own path as R · metal / width. A rib is a hat section of two webs (own choice), each as thick as
 * `heat.ribs.metal`.
 *
 * More insulation never raises the U-value, but for two corners that are so in truth: a board worse than 1 / 22 W/(m·K) that
 * fills a thin gap of air, which insulates better than it, and a layer of a part of the area that pushes a gap of the whole
 * area away (tests/properties/heat/thicker.test.ts).
 */

export interface RibFigures {
  readonly depthM: number;
  /** Of both webs together. */
  readonly metalM: number;
  readonly spacingM: number;
  readonly flangeM: number;
  readonly coverM2KPerW: number;
}

export interface SurfaceU {
  readonly part: EnvelopePart;
  readonly planes: readonly Plane[];
  /** W/(m²·K), to calculate with; the least and the greatest that it may be. */
  readonly uValue: number;
  readonly leastUValue: number;
  readonly greatestUValue: number;
  /** Away from ribs. */
  readonly clearUValue: number;
  /** Where ribs bridge insulation: straight through one, which is the coldest that its face can be. */
  readonly ribLineUValue?: number;
  /** What the heat of that line passes, from the air outside to the air inside. */
  readonly ribLine?: readonly PassedLayer[];
  readonly ribs?: RibFigures;
}

/** One after the other, and each with all of the heat through it. */
export interface PassedLayer {
  readonly name: string;
  readonly m2KPerW: number;
}

export const directionOf = (surface: EnvelopeSurface): HeatDirection =>
  surface === 'floor' ? 'downward' : surface === 'ceiling' ? 'upward' : 'horizontal';

export interface Films {
  readonly insideM2KPerW: number;
  readonly outsideM2KPerW: number;
}

export const usualFilms = (surface: EnvelopeSurface): Films => ({
  insideM2KPerW: insideFilmM2KPerW[directionOf(surface)],
  outsideM2KPerW: outsideFilmM2KPerW,
});

const metalWPerMK = ({ skin }: Heat): number =>
  thermalMaterialNamed(skin.material.name)?.conductivityWPerMK ?? 50;

/** Webs of a hat section. */
const websOfRib = 2;

/** The ribs of a surface: those of the plan, or usual ones where it describes ribs and places none. */
export function ribsOn(surface: EnvelopeSurface, build: Build): RibFigures | undefined {
  const { heat, layout, vehicle } = build;
  const lengthM = vehicle.bay?.lengthM;
  if (!heat || lengthM === undefined) return undefined;
  const all = layout?.ribs ?? [];
  const here = all.filter((rib) => rib.surface === surface);
  const unplaced = all.length === 0 && heat.ribs !== undefined;
  const isRibbed = surface === 'left wall' || surface === 'right wall' || surface === 'ceiling';
  if (here.length === 0 && !(unplaced && isRibbed)) return undefined;
  const { coveredBy, depthM = usualRib.depthM, metalM } = heat.ribs ?? {};
  const coverWPerMK = coveredBy && thermalMaterialNamed(coveredBy.material.name)?.conductivityWPerMK;
  const webM = metalM === undefined ? usualRib.metalM : websOfRib * metalM;
  const spacingM = here.length > 0 ? lengthM / here.length : usualRib.spacingM;
  return {
    depthM,
    metalM: Math.min(webM, spacingM / 2),
    spacingM,
    flangeM:
      here.length > 0
        ? here.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0) / here.length
        : usualRib.flangeM,
    coverM2KPerW:
      coveredBy && coverWPerMK !== undefined ? layerResistance(coveredBy.thicknessM, coverWPerMK) : 0,
  };
}

/** The same wall where heat spreads freely in every plane, from the air outside to the air inside. */
export const passedLayers = (planes: readonly Plane[], wall: ClearWall): readonly PassedLayer[] => [
  { name: 'film of air outside', m2KPerW: wall.outsideM2KPerW },
  { name: 'skin', m2KPerW: wall.skinM2KPerW },
  ...planes.map(passedPlane),
  { name: 'film of air inside', m2KPerW: wall.insideM2KPerW },
];

const passedPlane = (plane: Plane): PassedLayer => ({
  name: nameOfPlane(plane),
  m2KPerW: spreadResistance(plane),
});

/** A surface without ribs as the combined method sees it: the skin, then plane by plane. */
export interface ClearWall extends BridgedWall {
  readonly skinM2KPerW: number;
}

export const clearWall = (planes: readonly Plane[], heat: Heat, films: Films): ClearWall => {
  const skinM2KPerW = layerResistance(heat.skin.thicknessM, metalWPerMK(heat));
  return { ...films, skinM2KPerW, bands: [even(skinM2KPerW), ...planes.map(bandOf)] };
};

const bandOf = ({ paths }: Plane): Band =>
  paths.map(({ share, resistanceM2KPerW }) => ({ share, layersM2KPerW: [resistanceM2KPerW] }));

/** The U-value of a surface; undefined where some layer is not known. */
export function surfaceU(
  part: EnvelopePart,
  heat: Heat,
  ribs: RibFigures | undefined,
  films: Films = usualFilms(part.surface),
): SurfaceU | undefined {
  const direction = directionOf(part.surface);
  const { planes, missing } = planesOf(part.layers, direction);
  if (missing.length > 0) return undefined;
  const bridged = ribs && ribbed(planes, ribs, heat, films, direction);
  if (bridged) return { part, planes, ...bridged };
  const clear = bridgedResistance(clearWall(planes, heat, films));
  return {
    part,
    planes,
    uValue: clear.uValue,
    leastUValue: 1 / clear.upperM2KPerW,
    greatestUValue: 1 / clear.lowerM2KPerW,
    clearUValue: clear.uValue,
  };
}

type Ribbed = Omit<SurfaceU, 'part' | 'planes'>;

function ribbed(
  planes: readonly Plane[],
  ribs: RibFigures,
  heat: Heat,
  films: Films,
  direction: HeatDirection,
): Ribbed | undefined {
  const innermost = planes.findLastIndex(({ insulates }) => insulates);
  if (innermost < 0) return undefined;
  const insulation = planes.slice(0, innermost + 1);
  const lining = planes.slice(innermost + 1);
  const behind = filledUpTo(ribs.depthM, insulation, direction);
  const wall = [...behind, ...lining];
  const clearOfRibs = clearWall(wall, heat, films);
  const { skinM2KPerW, insideM2KPerW, outsideM2KPerW } = clearOfRibs;
  const clear = bridgedResistance(clearOfRibs);
  const inner: readonly PassedLayer[] = [...beyond(behind, ribs.depthM), ...lining.map(passedPlane)];
  const innerLayersM2KPerW = inner.map(({ m2KPerW }) => m2KPerW);
  const fillM2KPerW =
    clear.resistanceM2KPerW -
    insideM2KPerW -
    outsideM2KPerW -
    skinM2KPerW -
    innerLayersM2KPerW.reduce((sum, one) => sum + one, 0);
  if (fillM2KPerW <= 0) return undefined;
  const { depthM, metalM, spacingM, flangeM, coverM2KPerW } = ribs;
  const conductivity = metalWPerMK(heat);
  const metal = { depthM, metalM, spacingM, flangeM };
  const outer = { insideM2KPerW, outsideM2KPerW, outerLayersM2KPerW: [skinM2KPerW] };
  const withCover = depthM / conductivity + (coverM2KPerW * metalM) / Math.max(flangeM, metalM);
  const result = ribbedResistance({
    ...outer,
    fillM2KPerW,
    innerLayersM2KPerW,
    ribs: { ...metal, metalWPerMK: depthM / withCover },
  });
  const overHead: readonly PassedLayer[] = [
    ...(coverM2KPerW > 0 ? [{ name: 'cover on the rib', m2KPerW: coverM2KPerW }] : []),
    ...inner,
  ];
  return {
    uValue: result.uValue,
    leastUValue: result.leastUValue,
    greatestUValue: result.greatestUValue,
    clearUValue: result.clearUValue,
    ribLineUValue: ribLineUValue({
      ...outer,
      innerLayersM2KPerW: overHead.map(({ m2KPerW }) => m2KPerW),
      ribs: { ...metal, metalWPerMK: conductivity },
    }),
    ribLine: [
      { name: 'film of air outside', m2KPerW: outsideM2KPerW },
      { name: 'skin', m2KPerW: skinM2KPerW },
      { name: 'rib, along its metal', m2KPerW: depthM / conductivity },
      ...overHead,
      { name: 'film of air inside', m2KPerW: insideM2KPerW },
    ],
    ribs,
  };
}

/**
 * The innermost plane reaches up to the lining on the heads of the ribs. What it leaves of the room is one layer of air with
 * that beside or in front of a thinner layer of it: no second gap behind a first one.
 */
function filledUpTo(depthM: number, planes: readonly Plane[], direction: HeatDirection): readonly Plane[] {
  const last = planes.at(-1);
  const gapM = depthM - planes.reduce((sum, { thicknessM }) => sum + thicknessM, 0);
  return last && gapM > 1e-9
    ? [...planes.slice(0, -1), deepenedPlane(last, last.thicknessM + gapM, direction)]
    : planes;
}

/** "sheep wool (λ 0.038) with spruce (λ 0.13)". */
const nameOfPlane = ({ paths }: Plane): string => paths.map(nameOfPath).join(' with ');

export function nameOfPath({ layer }: Plane['paths'][number]): string {
  if (!layer) return 'still air';
  const conductivity = conductivityOf(layer);
  return conductivity === undefined ? layer.name : `${layer.name} (λ ${String(conductivity)})`;
}

/** What of the planes lies farther in than a depth, as resistances of their own. */
function beyond(planes: readonly Plane[], depthM: number): PassedLayer[] {
  let reachedM = 0;
  return planes.flatMap((plane) => {
    const innerM = Math.min(plane.thicknessM, reachedM + plane.thicknessM - depthM);
    reachedM += plane.thicknessM;
    return innerM > 1e-9
      ? [
          {
            name: `${nameOfPlane(plane)} over the rib`,
            m2KPerW: (spreadResistance(plane) * innerM) / plane.thicknessM,
          },
        ]
      : [];
  });
}
