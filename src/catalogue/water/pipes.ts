import type { Citation } from '../citation.ts';
import {
  copperSizes,
  copperSizesRemembered,
  hoseRoughness,
  hotWaterProblemSet,
  plasticRoughness,
  plasticSizesRemembered,
  textbookCompilation,
} from './sources.ts';

export const pipeMaterials = ['copper', 'plastic', 'hose', 'steel', 'galvanized steel'] as const;
export type PipeMaterial = (typeof pipeMaterials)[number];

export interface Roughness {
  readonly roughnessM: number;
  readonly citations: readonly Citation[];
}

/** The roughness of a new pipe's wall; scale and slime come on top. Where sources differ, the rougher. */
export const pipeRoughness: Readonly<Record<PipeMaterial, Roughness>> = {
  copper: { roughnessM: 1.5e-6, citations: [textbookCompilation] },
  plastic: { roughnessM: 7e-6, citations: [plasticRoughness, textbookCompilation] },
  hose: { roughnessM: 1e-5, citations: [hoseRoughness, textbookCompilation] },
  steel: { roughnessM: 4.5e-5, citations: [textbookCompilation] },
  'galvanized steel': { roughnessM: 1.5e-4, citations: [textbookCompilation] },
};

/** Tube sold by its outside diameter. */
export type SizedMaterial = 'copper' | 'plastic';

export interface PipeSize {
  readonly material: SizedMaterial;
  /** As it is asked for: `15 x 0.7`, in millimetres. */
  readonly name: string;
  readonly outerDiameterM: number;
  readonly wallM: number;
  readonly innerDiameterM: number;
  readonly citations: readonly Citation[];
}

const sized = (material: SizedMaterial, citation: Citation, outerMm: number, wallMm: number): PipeSize => ({
  material,
  name: `${outerMm} x ${wallMm}`,
  outerDiameterM: outerMm / 1000,
  wallM: wallMm / 1000,
  // In whole micrometres, so that 15 x 0.7 is 13.6 mm and not a hair off it.
  innerDiameterM: Math.round((outerMm - 2 * wallMm) * 1000) / 1e6,
  citations: [citation],
});

const copper = (outerMm: number, wallMm: number): PipeSize => sized('copper', copperSizes, outerMm, wallMm);
const copperRemembered = (outerMm: number, wallMm: number): PipeSize =>
  sized('copper', copperSizesRemembered, outerMm, wallMm);
const plastic = (outerMm: number, wallMm: number): PipeSize =>
  sized('plastic', plasticSizesRemembered, outerMm, wallMm);

/** By material and rising outside diameter. 15 mm plastic holds little more than half of what 15 mm copper holds. */
export const pipeSizes: readonly PipeSize[] = [
  copperRemembered(10, 0.6),
  copperRemembered(12, 0.6),
  copper(15, 0.7),
  copper(15, 1),
  copper(22, 0.9),
  copper(22, 1.2),
  copperRemembered(28, 0.9),
  plastic(10, 1.8),
  plastic(12, 2),
  plastic(15, 2.5),
  plastic(16, 2),
  plastic(18, 2.5),
  plastic(20, 2),
  plastic(20, 2.8),
  plastic(22, 3),
  plastic(25, 3.5),
  plastic(28, 4),
];

/** All that is sold with this outside diameter: none, one, or several walls. */
export const pipeSizesOf = (material: SizedMaterial, outerDiameterM: number): readonly PipeSize[] =>
  pipeSizes.filter(
    (size) => size.material === material && Math.abs(size.outerDiameterM - outerDiameterM) < 5e-5,
  );

export interface Bores {
  /** For the loss of pressure. */
  readonly narrowest: PipeSize;
  /** For what a pipe holds. */
  readonly widest: PipeSize;
}

/** The bores that an outside diameter may have; undefined if the size is not in the table. */
export function boresOf(material: SizedMaterial, outerDiameterM: number): Bores | undefined {
  const byBore = pipeSizesOf(material, outerDiameterM).toSorted(
    (a, b) => a.innerDiameterM - b.innerDiameterM,
  );
  const narrowest = byBore[0];
  const widest = byBore.at(-1);
  return narrowest && widest ? { narrowest, widest } : undefined;
}

/** US tube by its nominal size in inches, with the volume that the code prints. */
export interface UsPipe {
  readonly kind: 'copper M' | 'PEX SDR9';
  readonly nominal: '3/8' | '1/2' | '3/4';
  readonly innerDiameterM: number;
  readonly printedOzPerFt: number;
  readonly citations: readonly Citation[];
}

const us = (
  kind: UsPipe['kind'],
  nominal: UsPipe['nominal'],
  innerIn: number,
  printedOzPerFt: number,
): UsPipe => ({
  kind,
  nominal,
  innerDiameterM: innerIn * 0.0254,
  printedOzPerFt,
  citations: [hotWaterProblemSet],
});

export const usPipes: readonly UsPipe[] = [
  us('copper M', '1/2', 0.569, 1.69),
  // 0.824 in the source, which does not give its own 3.43 oz/ft; 0.811 (memory) does.
  us('copper M', '3/4', 0.811, 3.43),
  us('PEX SDR9', '3/8', 0.35, 0.64),
  us('PEX SDR9', '1/2', 0.485, 1.18),
];
