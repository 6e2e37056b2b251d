import type { Citation } from '../citation.ts';
import { coldTable } from './supply-sources.ts';

export interface ColdVoltageRow {
  /** Lowest air temperature for which the row holds, °C; the rows are printed in whole degrees. */
  readonly fromC: number;
  readonly toC: number;
  readonly factor: number;
}

const row = (fromC: number, toC: number, factor: number): ColdVoltageRow => ({ fromC, toC, factor });

/** Factors for the rated open-circuit voltage of crystalline silicon at the lowest expected air temperature. */
export const coldVoltageRows: readonly ColdVoltageRow[] = [
  { fromC: 25, toC: Number.POSITIVE_INFINITY, factor: 1 },
  row(20, 24, 1.02),
  row(15, 19, 1.04),
  row(10, 14, 1.06),
  row(5, 9, 1.08),
  row(0, 4, 1.1),
  row(-5, -1, 1.12),
  row(-10, -6, 1.14),
  row(-15, -11, 1.16),
  row(-20, -16, 1.18),
  row(-25, -21, 1.2),
  row(-30, -26, 1.21),
  row(-35, -31, 1.23),
  row(-40, -36, 1.25),
];

export const coldVoltageCitations: readonly Citation[] = [coldTable];
