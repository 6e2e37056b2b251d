import type { Build, BuiltBuildUp, BuiltLayer } from '../build/build.ts';
import { layerMass } from '../calc/sheet-mass.ts';
import { type Material, materials } from '../catalogue/materials.ts';

/** A layer made of another material that serves its main purpose, at the same thickness. */
export interface Swap {
  readonly buildUp: string;
  readonly from: string;
  readonly to: string;
  readonly material: Material;
  readonly savesKg: number;
}

/** Every lighter material of the same purpose for every layer of every build-up, the greatest saving first. */
export function lighterSwaps(build: Build): readonly Swap[] {
  return build.buildUps.flatMap((buildUp) => buildUp.layers.flatMap((layer) => swapsOf(buildUp, layer)));
}

export function bestSwap(build: Build): Swap | undefined {
  return lighterSwaps(build).reduce<Swap | undefined>(
    (best, swap) => (best && best.savesKg >= swap.savesKg ? best : swap),
    undefined,
  );
}

function swapsOf(
  { name, areaM2 }: BuiltBuildUp,
  { material, thicknessM, share, massKg }: BuiltLayer,
): Swap[] {
  const main = material?.purposes[0];
  if (!material || !main || thicknessM === undefined) return [];
  return materials
    .filter((other) => other !== material && other.purposes.includes(main))
    .map((other) => ({
      buildUp: name,
      from: material.name,
      to: other.name,
      material: other,
      savesKg: massKg - layerMass(areaM2, thicknessM, other.densityKgM3, share),
    }))
    .filter(({ savesKg }) => savesKg >= 0.5)
    .sort((a, b) => b.savesKg - a.savesKg);
}
