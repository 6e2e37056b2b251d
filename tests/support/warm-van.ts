import { plan } from './test-van.ts';

/*
 * The test van (4 m by 2 m by 2 m) with linings for sums in the head: 36 mm of XPS, 0.036 W/(m·K), is 1 m²·K/W. The skin
 * has so little that it is left out of the sums: 0.00002 m²·K/W.
 */
const foam = '{material: XPS, thickness: 36 mm}';

export const linings = `build_ups:
  floor: {of: floor, layers: [${foam}]}
  walls: {of: walls, layers: [${foam}]}
  ceiling: {of: ceiling, layers: [${foam}]}
  rear doors: {of: rear doors, layers: [${foam}]}
`;

/** No air is changed, and the cab is beyond a bulkhead of 1 W/(m²·K). */
const still =
  'inside: 20 degC, asleep: 20 degC, air_changes_per_hour: 0, cab: {closed_by: bulkhead, u_value: 1 W/m2/K}';

interface Changes {
  readonly heat?: string;
  readonly living?: string;
  readonly linings?: string;
  readonly rest?: string;
  readonly van?: Readonly<Record<string, string>>;
}

export function warmVan({
  heat = '',
  living = 'winter_low: 0 degC',
  linings: own = linings,
  rest = '',
  van = {},
}: Changes = {}): string {
  const keys = heat === '' ? still : `${still}, ${heat}`;
  return plan(`${own}heat: {${keys}}\nliving: {${living}}\n${rest}`, van);
}

/**
 * Σ U·A of it, W/K: walls 16 m² and rear doors 4 m² with 1 / (1 + 0.13 + 0.04), ceiling 8 m² with 1 / (1 + 0.10 + 0.04),
 * floor 8 m² with 1 / (1 + 0.17 + 0.04), bulkhead 4 m² with 1.
 */
export const warmVanWPerK = 20 / 1.17 + 8 / 1.14 + 8 / 1.21 + 4;
