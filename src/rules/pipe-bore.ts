import type { WaterPipe } from '../build/water.ts';
import { boresOf, type SizedMaterial } from '../catalogue/water/pipes.ts';

export interface PipeBore {
  /** For what is lost and for what freezes. */
  readonly narrowestM: number;
  /** For what it holds. */
  readonly widestM: number;
}

const sizedAs: Readonly<Partial<Record<NonNullable<WaterPipe['material']>, SizedMaterial>>> = {
  copper: 'copper',
  PEX: 'plastic',
  'rigid plastic': 'plastic',
};

/** What a pipe is inside: as typed, or as pipes of its material and size are. Undefined where neither is known. */
export function boreOf({ boreM, material, sizeM }: WaterPipe): PipeBore | undefined {
  if (boreM !== undefined) return { narrowestM: boreM, widestM: boreM };
  if (material === undefined || sizeM === undefined) return undefined;
  // A hose is sold by what it is inside.
  if (material === 'hose') return { narrowestM: sizeM, widestM: sizeM };
  const sized = sizedAs[material];
  const bores = sized && boresOf(sized, sizeM);
  return bores && { narrowestM: bores.narrowest.innerDiameterM, widestM: bores.widest.innerDiameterM };
}

/** The keys that would say what a pipe is inside. */
export function boreKeys({ path, material, sizeM }: WaterPipe): readonly string[] {
  const key = path.join('.');
  if (material !== undefined && sizeM !== undefined) return [`${key}.bore`];
  return [
    ...(material === undefined ? [`${key}.material`] : []),
    ...(sizeM === undefined ? [`${key}.size`] : []),
  ];
}
