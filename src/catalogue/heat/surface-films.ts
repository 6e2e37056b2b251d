import type { Citation } from '../citation.ts';
import { elementCatalogue, moistureStandard, remembered, surfaceFilms } from './heat-sources.ts';

/** Which way heat goes: up through a ceiling, sideways through a wall, down through a floor. */
export const heatDirections = ['upward', 'horizontal', 'downward'] as const;
export type HeatDirection = (typeof heatDirections)[number];

/** The film of air on an inner face, m²·K/W, in winter. */
export const insideFilmM2KPerW: Readonly<Record<HeatDirection, number>> = {
  upward: 0.1,
  horizontal: 0.13,
  downward: 0.17,
};

export const outsideFilmM2KPerW = 0.04;

export const filmCitations: readonly Citation[] = [
  surfaceFilms,
  remembered('ISO 6946: horizontal means within 30° of horizontal'),
];

/** The film on an inner face in still air (corners, behind furniture), for mould, m²·K/W. */
export const mouldFilmM2KPerW = 0.25;
export const mouldFilmCitations: readonly Citation[] = [
  {
    ...elementCatalogue,
    title: 'Spanish building code (CTE DB-HE): the temperature factor as 1 − 0.25 · U, as in an open program',
    readAt: 'https://github.com/pachi/condensaciones (condensaciones/test/test_comprobaciones.py)',
    caution: 'Read as the formula of a program.',
  },
];

/** Dew forms on a face at 1; mould may grow where it stays above this for days. */
export const mouldHumidity = 0.8;
export const mouldHumidityCitations: readonly Citation[] = [
  {
    title:
      'BS 5250, annex D, on ISO 13788: against mould the humidity at a face should not exceed 80 % for several days',
    readAt:
      'https://1library.net/article/annex-normative-calculation-methods-code-practice-control-condensation.qovgeljz',
    provenance: 'read',
    caution: 'Read on a page that reprints the annex.',
  },
];

export interface AirGap {
  readonly thicknessM: number;
  readonly resistanceM2KPerW: Readonly<Record<HeatDirection, number>>;
}

const gap = (thicknessMm: number, upward: number, horizontal: number, downward: number): AirGap => ({
  thicknessM: thicknessMm / 1000,
  resistanceM2KPerW: { upward, horizontal, downward },
});

/**
 * Still air between two ordinary (not shiny) faces. Where ISO 6946 and the Spanish catalogue differ, the lower: at
 * 10 mm the same, at 20 mm upright 0.17, at 100 mm upright 0.18. Between rows: in a straight line.
 */
export const airGaps: readonly AirGap[] = [
  gap(0, 0, 0, 0),
  gap(5, 0.11, 0.11, 0.11),
  gap(7, 0.13, 0.13, 0.13),
  gap(10, 0.15, 0.15, 0.15),
  gap(15, 0.16, 0.16, 0.16),
  gap(20, 0.16, 0.17, 0.16),
  gap(25, 0.16, 0.17, 0.16),
  gap(50, 0.16, 0.18, 0.16),
  gap(100, 0.16, 0.18, 0.18),
  gap(300, 0.16, 0.18, 0.18),
];

export const airGapCitations: readonly Citation[] = [
  elementCatalogue,
  remembered('ISO 6946, table 2: still layers of air by thickness and direction'),
];

/** A gap with small openings to outside is worth half. */
export const slightlyVentilatedShare = 0.5;

/** A gap of still air holds back as much vapour as 10 mm of air, however thick. */
export const airGapEquivalentAirM = 0.01;
export const airGapVapourCitations: readonly Citation[] = [moistureStandard];

/**
 * Resistance of a gap of still air, m²·K/W, by straight lines between {@link airGaps}; beyond 300 mm as at 300 mm.
 * Thickness in m, ≥ 0 (less counts as 0).
 */
export function airGapResistance(thicknessM: number, direction: HeatDirection): number {
  let below = airGaps[0];
  for (const row of airGaps) {
    if (row.thicknessM >= thicknessM && below !== undefined) {
      const width = row.thicknessM - below.thicknessM;
      const share = width > 0 ? Math.max(0, (thicknessM - below.thicknessM) / width) : 0;
      const from = below.resistanceM2KPerW[direction];
      return from + share * (row.resistanceM2KPerW[direction] - from);
    }
    below = row;
  }
  return below?.resistanceM2KPerW[direction] ?? 0;
}
