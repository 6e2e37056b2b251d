import { type Band, bridgedResistance, even } from '../calc/heat/bridged.ts';
import { layerResistance } from '../calc/heat/layers.ts';
import { ribbedResistance, ribLineUValue } from '../calc/heat/metal-ribs.ts';
import { usualRib } from '../catalogue/heat/metal-bridges.ts';
import {
  airGapResistance,
  type HeatDirection,
  insideFilmM2KPerW,
  outsideFilmM2KPerW,
} from '../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../catalogue/heat/thermal-materials.ts';
import type { Build } from './build.ts';
import type { EnvelopePart, EnvelopeSurface, Heat } from './heat.ts';
import { type Plane, planesOf, spreadResistance } from './wall-planes.ts';

/*
 * U-values of the load bay's surfaces: skin, layers, films. Layers side by side by the combined method (ISO 6946), metal
 * ribs as a range with a chosen value (calc/heat/metal-ribs.ts).
 *
 * Ribs count where they bridge insulation. They stand on the skin as deep as `heat.ribs.depth`; insulation that is deeper
 * covers their heads, and where it is shallower still air is left between it and the lining, which lies on the heads. What
 * covers a rib's head (`covered_by`) is crossed by the heat of its webs after it has spread over the head's width: it counts
 * in the rib's own path as R · metal / width. A rib is a hat section of two webs (own choice), each as thick as
 * `heat.ribs.metal`.
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
  readonly ribs?: RibFigures;
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
  const skinM2KPerW = layerResistance(heat.skin.thicknessM, metalWPerMK(heat));
  const around = { ...films, skinM2KPerW };
  const bridged = ribs && ribbed(planes, ribs, heat, around, direction);
  if (bridged) return { part, planes, ...bridged };
  const clear = bridgedResistance({ ...films, bands: [even(skinM2KPerW), ...planes.map(bandOf)] });
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
  around: Films & { readonly skinM2KPerW: number },
  direction: HeatDirection,
): Ribbed | undefined {
  const innermost = planes.findLastIndex(({ insulates }) => insulates);
  if (innermost < 0) return undefined;
  const behind = planes.slice(0, innermost + 1);
  const lining = planes.slice(innermost + 1);
  const gapM = ribs.depthM - behind.reduce((sum, { thicknessM }) => sum + thicknessM, 0);
  // A gap of a millimetre is none: nobody measures ribs so well.
  const gap: readonly Plane[] =
    gapM > 0.001
      ? [
          {
            thicknessM: gapM,
            insulates: false,
            paths: [{ share: 1, resistanceM2KPerW: airGapResistance(gapM, direction) }],
          },
        ]
      : [];
  const wall = [...behind, ...gap, ...lining];
  const { skinM2KPerW, insideM2KPerW, outsideM2KPerW } = around;
  const clear = bridgedResistance({
    insideM2KPerW,
    outsideM2KPerW,
    bands: [even(skinM2KPerW), ...wall.map(bandOf)],
  });
  const innerLayersM2KPerW = [...beyond(behind, ribs.depthM), ...lining.map(spreadResistance)];
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
  return {
    uValue: result.uValue,
    leastUValue: result.leastUValue,
    greatestUValue: result.greatestUValue,
    clearUValue: result.clearUValue,
    ribLineUValue: ribLineUValue({
      ...outer,
      innerLayersM2KPerW: [...(coverM2KPerW > 0 ? [coverM2KPerW] : []), ...innerLayersM2KPerW],
      ribs: { ...metal, metalWPerMK: conductivity },
    }),
    ribs,
  };
}

/** What of the planes lies farther in than a depth, as resistances of their own. */
function beyond(planes: readonly Plane[], depthM: number): number[] {
  let reachedM = 0;
  return planes.flatMap((plane) => {
    const innerM = Math.min(plane.thicknessM, reachedM + plane.thicknessM - depthM);
    reachedM += plane.thicknessM;
    return innerM > 1e-9 ? [(spreadResistance(plane) * innerM) / plane.thicknessM] : [];
  });
}
