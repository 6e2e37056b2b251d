import { finite, notNegative, positive } from '../argument.ts';

const secondsAnHour = 3600;

/**
 * How often the air of a room is changed, times an hour: 3600 · Q / V. Q: m³/s (≥ 0); V: m³ (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function airChangesPerHour(flowM3S: number, volumeM3: number): number {
  return (
    (secondsAnHour * notNegative(flowM3S, 'The flow of fresh air')) /
    positive(volumeM3, 'The volume of the room')
  );
}

/** The flow that changes the air so many times an hour, m³/s: the way back from {@link airChangesPerHour}. */
export function flowOfAirChangesM3S(changesPerHour: number, volumeM3: number): number {
  return (
    (notNegative(changesPerHour, 'The changes of air') * positive(volumeM3, 'The volume of the room')) /
    secondsAnHour
  );
}

/** Exact by definition. */
const cubicFootM3 = 0.3048 ** 3;
const cfmM3S = cubicFootM3 / 60;
const squareFootM2 = 0.3048 ** 2;

/**
 * Steady fan flow for a dwelling, m³/s.
 *
 *     Q = 0.03 · A + 7.5 · (N + 1) cubic feet a minute
 *
 * A: floor, square feet (given here in m²); N: bedrooms (≥ 0), so that N + 1 stands for the people. The metric coefficients
 * 0.15 and 3.5 (memory) give 1 % less and are not used.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: ASHRAE 62.2-2022, equation 4.1a, as restated on a reference page (read). For dwellings.
 */
export function dwellingFanFlowM3S(floorM2: number, bedrooms: number): number {
  const floorFt2 = notNegative(floorM2, 'The floor area') / squareFootM2;
  return (0.03 * floorFt2 + 7.5 * (notNegative(bedrooms, 'The number of bedrooms') + 1)) * cfmM3S;
}

/** J/(kg·K) of dry air at room temperature. */
export const airHeatJPerKgK = 1005;

/** What air carries heat away with. */
export interface CarryingAir {
  /** 1.2 where left out; less in the heat and up a mountain. */
  readonly airKgM3?: number;
}

/**
 * Heat that fresh air carries away, W: ρ · c · Q · ΔT. Q: m³/s (≥ 0); ΔT: K that the room is warmer than outside;
 * c: 1005 J/(kg·K).
 *
 * Throws RangeError if a value is not finite or the flow negative.
 *
 * Source: definition of specific heat (computed); with 1.2 kg/m³ it is 0.335 · n · V · ΔT, printed as 0.33.
 */
export function heatCarriedW(flowM3S: number, riseK: number, { airKgM3 = 1.2 }: CarryingAir = {}): number {
  return (
    positive(airKgM3, 'The density of the air') *
    airHeatJPerKgK *
    notNegative(flowM3S, 'The flow of fresh air') *
    finite(riseK, 'The rise of temperature')
  );
}

/**
 * Fresh air that holds a room no more than so many kelvin above the outside, m³/s.
 *
 *     Q = Φ / (ρ · c · ΔT)
 *
 * Φ: sun, people and appliances together, W (≥ 0); ΔT: K (> 0). Nothing is counted for what leaves through the walls,
 * which in the sun is rather a gain.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: as {@link heatCarriedW}.
 */
export function flowForHeatM3S(gainW: number, riseK: number, air: CarryingAir = {}): number {
  return (
    notNegative(gainW, 'The heat gain') / heatCarriedW(1, positive(riseK, 'The rise of temperature'), air)
  );
}

/**
 * How much warmer than outside the room gets by a gain, K: the way back from {@link flowForHeatM3S}. Infinite without
 * flow, 0 without gain.
 *
 * Throws RangeError if a value is not finite or negative.
 */
export function riseOfHeatK(gainW: number, flowM3S: number, air: CarryingAir = {}): number {
  const carriedWPerK = heatCarriedW(flowM3S, 1, air);
  return notNegative(gainW, 'The heat gain') === 0 ? 0 : gainW / carriedWPerK;
}
