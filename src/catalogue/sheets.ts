import type { Citation } from './citation.ts';
import { birchPlywoodDatasheet } from './sources.ts';

/** One thickness of birch plywood as the datasheet gives it. */
export interface PlywoodSheet {
  /** The thickness it is sold by. */
  readonly nominalMm: number;
  readonly plies: number;
  readonly averageMm: number;
  readonly minMm: number;
  readonly maxMm: number;
  readonly densityKgM3: number;
  /** Mass of one sheet of `birchPlywoodSheetSize`. */
  readonly sheetKg: number;
}

export const birchPlywoodSheetSize = { widthM: 1.22, lengthM: 2.44 } as const;

export const birchPlywoodCitations: readonly Citation[] = [birchPlywoodDatasheet];

const columns = (
  nominalMm: number,
  plies: number,
  averageMm: number,
  minMm: number,
  maxMm: number,
  densityKgM3: number,
  sheetKg: number,
): PlywoodSheet => ({ nominalMm, plies, averageMm, minMm, maxMm, densityKgM3, sheetKg });

/** Thin to thick. The sheet mass is nominal thickness x density x area of the sheet. */
export const birchPlywoodSheets: readonly PlywoodSheet[] = [
  columns(4, 3, 3.8, 3.5, 4.1, 660, 7.9),
  columns(6.5, 5, 6.4, 6.1, 6.9, 670, 13.0),
  columns(9, 7, 9.2, 8.8, 9.5, 710, 19.0),
  columns(12, 9, 12.0, 11.5, 12.5, 695, 24.8),
  columns(15, 11, 14.9, 14.3, 15.3, 690, 30.8),
  columns(18, 13, 17.7, 17.1, 18.1, 685, 36.7),
  columns(21, 15, 20.5, 20.0, 20.9, 680, 42.5),
  columns(24, 17, 23.4, 22.9, 23.7, 680, 48.6),
  columns(27, 19, 26.5, 25.8, 26.8, 673, 54.1),
  columns(30, 21, 29.4, 28.7, 29.9, 672, 60.0),
];

/**
 * What a nominal thickness is worth. From 15 mm up the average sheet is 0.7 to 2.5 % thinner than its name, a 4 mm
 * sheet 5 %, so a mass from the nominal thickness is a little high. The 9 mm sheet is the exception: it is 2.2 %
 * thicker than its name, and 12 mm is 12 mm. Never convert a nominal size to inches as if it were exact.
 */
export const nominalThicknesses: readonly {
  readonly nominalMm: number;
  readonly thinnerThanNominal: number;
}[] = birchPlywoodSheets.map(({ nominalMm, averageMm }) => ({
  nominalMm,
  thinnerThanNominal: (nominalMm - averageMm) / nominalMm,
}));
