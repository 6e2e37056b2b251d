import type { WaterPipe } from '../build/water.ts';
import { pipeSizes, type SizedMaterial } from '../catalogue/water/pipes.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';

/** Another size of a pipe, with the bore that counts for what it loses. */
export interface OtherSize {
  readonly sizeM: number;
  readonly narrowestM: number;
  readonly widestM: number;
  /** As one asks for it: "22 mm PEX". */
  readonly text: Phrase;
}

const sized: Readonly<Partial<Record<NonNullable<WaterPipe['material']>, SizedMaterial>>> = {
  copper: 'copper',
  PEX: 'plastic',
  'rigid plastic': 'plastic',
};

/** Inner diameters that hose is commonly sold in: common practice, no source. */
const hoseSizesM = [0.008, 0.01, 0.013, 0.016, 0.019, 0.025] as const;

/** All sizes that a pipe's material is sold in, by rising size; none for a pipe of which the plan gives the bore alone. */
export function sizesLike({ material }: WaterPipe): readonly OtherSize[] {
  if (material === undefined) return [];
  const table = sized[material];
  if (!table)
    return hoseSizesM.map((sizeM) => ({
      sizeM,
      narrowestM: sizeM,
      widestM: sizeM,
      text: say`${length(sizeM)} ${material}`,
    }));
  const rows = pipeSizes.filter((row) => row.material === table);
  return [...new Set(rows.map(({ outerDiameterM }) => outerDiameterM))].map((sizeM) => {
    const bores = rows
      .filter(({ outerDiameterM }) => outerDiameterM === sizeM)
      .map(({ innerDiameterM }) => innerDiameterM);
    return {
      sizeM,
      narrowestM: Math.min(...bores),
      widestM: Math.max(...bores),
      text: say`${length(sizeM)} ${material}`,
    };
  });
}

/** The sizes that are wider inside than so much, the narrowest first. */
export const widerThan = (pipe: WaterPipe, boreM: number): readonly OtherSize[] =>
  sizesLike(pipe)
    .filter(({ narrowestM }) => narrowestM > boreM + 1e-6)
    .toSorted((a, b) => a.narrowestM - b.narrowestM);

/** The sizes that are narrower inside than so much, the widest first. */
export const narrowerThan = (pipe: WaterPipe, boreM: number): readonly OtherSize[] =>
  sizesLike(pipe)
    .filter(({ widestM }) => widestM < boreM - 1e-6)
    .toSorted((a, b) => b.widestM - a.widestM);
