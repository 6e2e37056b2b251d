import { notNegative, positive } from '../argument.ts';

/**
 * How much of a fuel gives so much heat.
 *
 *     amount = Q · t / (η · h)
 *
 * Q: mean heat into the room, W (≥ 0); t: s (≥ 0); η: efficiency of the heater on the same basis (net or gross) as h,
 * above 0 (heat pumps above 1); h: heating value, J in each unit of fuel: J/kg gives kg, J/m³ gives m³, 1 gives J of
 * electricity.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: the definitions of efficiency and heating value (computed).
 */
export function fuelFor(input: {
  readonly meanHeatW: number;
  readonly durationS: number;
  readonly efficiency: number;
  readonly heatingValueJPerUnit: number;
}): number {
  return (
    (notNegative(input.meanHeatW, 'The heat') * notNegative(input.durationS, 'The time')) /
    (positive(input.efficiency, 'The efficiency') * positive(input.heatingValueJPerUnit, 'The heating value'))
  );
}

/** What a fuel a day is reckoned from: hours awake and asleep may have temperatures of their own. */
export interface HeatedHours {
  readonly durationS: number;
  /** Net of gains, W. */
  readonly meanHeatW: number;
}

/** Mean heat of a day, W: Σ (Q · t) / Σ t. Times in s (> 0 in sum). Throws RangeError if a value is negative. */
export function meanHeat(parts: readonly HeatedHours[]): number {
  const heatJ = parts.reduce(
    (sum, { durationS, meanHeatW }) =>
      sum + notNegative(meanHeatW, 'The heat') * notNegative(durationS, 'The time'),
    0,
  );
  return (
    heatJ /
    positive(
      parts.reduce((sum, { durationS }) => sum + durationS, 0),
      'The time',
    )
  );
}
