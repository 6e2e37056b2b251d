import { finite, notNegative, positive } from '../argument.ts';

/** What warming a cubic metre of air by a kelvin takes, J/(m³·K): 1.2 kJ, MacKay, page 289 (read). */
export const airHeatJPerM3K = 1200;

const secondsAnHour = 3600;

export interface LosingSurface {
  readonly areaM2: number;
  /** W/(m²·K). */
  readonly uValue: number;
}

/** What holds warmth, and how leaky it is. */
export interface Envelope {
  readonly surfaces: readonly LosingSurface[];
  readonly volumeM3: number;
  readonly airChangesPerHour: number;
}

export interface LossPerKelvin {
  readonly transmissionWPerK: number;
  readonly ventilationWPerK: number;
  readonly totalWPerK: number;
}

/**
 * Heat lost for each kelvin between inside and outside.
 *
 *     H = Σ (U · A) + n · V · 1200 J/(m³·K) / 3600 s = Σ (U · A) + 0.333 · n · V
 *
 * U: W/(m²·K); A: m²; n: changes of air an hour; V: m³; each ≥ 0. H in W/K. The printed rule has 0.33; EN 12831 0.34
 * (memory).
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: 0.33 · n · V · ΔT on an engineering reference page (read); air heat as above.
 */
export function lossPerKelvin({ surfaces, volumeM3, airChangesPerHour }: Envelope): LossPerKelvin {
  const transmissionWPerK = surfaces.reduce(
    (sum, { areaM2, uValue }) => sum + notNegative(areaM2, 'The area') * notNegative(uValue, 'The U-value'),
    0,
  );
  const ventilationWPerK =
    (notNegative(airChangesPerHour, 'The number of air changes') *
      notNegative(volumeM3, 'The volume of air') *
      airHeatJPerM3K) /
    secondsAnHour;
  return { transmissionWPerK, ventilationWPerK, totalWPerK: transmissionWPerK + ventilationWPerK };
}

export interface HeatNeed {
  /** Before gains, W, never below 0. */
  readonly lossW: number;
  /** After gains, never below 0. */
  readonly netW: number;
  /** The least output of a heater with the margin. */
  readonly heaterW: number;
}

/**
 * The output that a heater needs to hold a temperature.
 *
 *     Q = H · (T_i − T_e) − gains,   heater = Q · (1 + margin)
 *
 * H: W/K (≥ 0); temperatures in °C; gains: W (≥ 0); margin: a part of Q (≥ 0), so 0.2 is a fifth more. All results in
 * W, 0 where it is warmer outside.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: the balance of heat (computed).
 */
export function heatNeed(input: {
  readonly lossWPerK: number;
  readonly insideC: number;
  readonly outsideC: number;
  readonly gainsW: number;
  readonly margin: number;
}): HeatNeed {
  const differenceK =
    finite(input.insideC, 'The inside temperature') - finite(input.outsideC, 'The outside temperature');
  const lossW = Math.max(0, notNegative(input.lossWPerK, 'The heat loss for each kelvin') * differenceK);
  const netW = Math.max(0, lossW - notNegative(input.gainsW, 'The internal gains'));
  return { lossW, netW, heaterW: netW * (1 + notNegative(input.margin, 'The margin of the heater')) };
}

/**
 * The coldest outside that a heater can hold the inside temperature against.
 *
 *     T_e = T_i − (P + gains) / H
 *
 * P, gains: W (≥ 0); H: W/K (> 0); °C.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: the balance of heat (computed).
 */
export function coldestHeldC(input: {
  readonly lossWPerK: number;
  readonly insideC: number;
  readonly heaterW: number;
  readonly gainsW: number;
}): number {
  return (
    finite(input.insideC, 'The inside temperature') -
    (notNegative(input.heaterW, 'The output of the heater') +
      notNegative(input.gainsW, 'The internal gains')) /
      positive(input.lossWPerK, 'The heat loss for each kelvin')
  );
}
