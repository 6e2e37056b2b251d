import { finite, notNegative, positive } from '../argument.ts';
import { airHeatJPerM3K } from './heat-loss.ts';

/** A layer as seen from the room. */
export interface WarmedLayer {
  readonly thicknessM: number;
  readonly densityKgM3: number;
  readonly heatCapacityJPerKgK: number;
  readonly conductivityWPerMK: number;
}

/** What conducts less is insulation: what lies behind it stays cold. Own choice. */
const insulatesBelowWPerMK = 0.065;

/**
 * Heat stored in a square metre of wall by each kelvin that the room warms up.
 *
 *     κ = Σ (d · ρ · c) of the layers in front of the first insulation + half of that insulation
 *
 * Layers from the room outwards; d in m, ρ in kg/m³, c in J/(kg·K), each ≥ 0. κ in J/(m²·K). The first layer below
 * 0.065 W/(m·K) counts by half, because its temperature falls from that of the room to that outside; nothing behind it
 * counts. Without insulation the layers count by half, for the same reason.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: own choice, after the simple count of ISO 13790 (down to the insulation; memory).
 */
export const warmedCapacity = (layersFromInside: readonly WarmedLayer[]): number =>
  warmedShares(layersFromInside).reduce((sum, share, index) => {
    const layer = layersFromInside[index];
    return layer
      ? sum +
          share *
            notNegative(layer.thicknessM, 'The thickness') *
            notNegative(layer.densityKgM3, 'The density') *
            notNegative(layer.heatCapacityJPerKgK, 'The heat capacity')
      : sum;
  }, 0);

/** What of each layer counts in {@link warmedCapacity}: all, half or nothing of it. */
export function warmedShares(layersFromInside: readonly WarmedLayer[]): readonly number[] {
  const insulation = layersFromInside.findIndex(
    ({ conductivityWPerMK }) => positive(conductivityWPerMK, 'The conductivity') < insulatesBelowWPerMK,
  );
  return layersFromInside.map((_, index) => {
    if (insulation < 0 || index === insulation) return 0.5;
    return index < insulation ? 1 : 0;
  });
}

/** Heat that the air of a room takes up by each kelvin, J/K. Volume in m³ (≥ 0). */
export const airCapacity = (volumeM3: number): number =>
  airHeatJPerM3K * notNegative(volumeM3, 'The volume of air');

/**
 * How long a heater at full output takes from one temperature to another.
 *
 *     C · dT/dt = P − H · (T − T_e)
 *     t = (C / H) · ln((T_∞ − T_0) / (T_∞ − T_1)),   T_∞ = T_e + P / H
 *     t = C · (T_1 − T_0) / P   where H = 0
 *
 * C: J/K (> 0), everything that warms up taken as one lump; H: W/K (≥ 0); P: W (≥ 0); °C. Seconds; 0 where it is warm
 * enough already; Infinity where the heater never gets there. One lump is pessimistic for the air and optimistic for
 * cupboards.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: the balance of heat of one lump (computed).
 */
export function warmUpS(input: {
  readonly capacityJPerK: number;
  readonly lossWPerK: number;
  readonly heaterW: number;
  readonly startC: number;
  readonly targetC: number;
  readonly outsideC: number;
}): number {
  const capacityJPerK = positive(input.capacityJPerK, 'The heat capacity');
  const lossWPerK = notNegative(input.lossWPerK, 'The heat loss for each kelvin');
  const heaterW = notNegative(input.heaterW, 'The output of the heater');
  const startC = finite(input.startC, 'The temperature at the start');
  const targetC = finite(input.targetC, 'The temperature wanted');
  const outsideC = finite(input.outsideC, 'The outside temperature');
  if (startC >= targetC) return 0;
  const driftW = heaterW - lossWPerK * (targetC - outsideC);
  if (driftW <= 0) return Number.POSITIVE_INFINITY;
  const riseK = targetC - startC;
  const lossOverDrift = (lossWPerK * riseK) / driftW;
  // So small a loss makes no difference, and 0 would divide by itself.
  if (lossOverDrift < 1e-9) return (capacityJPerK * riseK) / driftW;
  return (capacityJPerK / lossWPerK) * Math.log1p(lossOverDrift);
}
