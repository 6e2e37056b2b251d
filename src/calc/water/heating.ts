import { finite, notNegative, positive } from '../argument.ts';
import { waterProperties } from './properties.ts';

/** Water to be made warmer. */
export interface WaterToHeat {
  readonly volumeM3: number;
  readonly fromC: number;
  readonly toC: number;
}

/**
 * Mass of water as it goes in and heat capacity halfway up, which over 0 to 100 °C is within 0.2 % of the mean.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function heldHeat({ volumeM3, fromC, toC }: WaterToHeat): {
  readonly massKg: number;
  readonly capacityJKgK: number;
} {
  return {
    massKg: notNegative(volumeM3, 'The volume') * waterProperties(fromC).densityKgM3,
    capacityJKgK: waterProperties((finite(fromC, 'The first') + finite(toC, 'The last')) / 2)
      .heatCapacityJKgK,
  };
}

/**
 * Heat that goes into water, J.
 *
 *     Q = ρ V c (T₂ − T₁)
 *
 * V: volume as filled, m³ (≥ 0); T₁, T₂: temperatures, °C (0 to 100, T₂ ≥ T₁); ρ at T₁, c at the mean.
 *
 * Throws RangeError if a value is not finite or out of its range, or T₂ < T₁.
 *
 * Source: open college textbook, sensible heat (read).
 */
export function heatingEnergyJ(water: WaterToHeat): number {
  const { massKg, capacityJKgK } = heldHeat(water);
  return sensibleHeatJ(massKg, capacityJKgK, notNegative(water.toC - water.fromC, 'The rise in temperature'));
}

/** Q = m c ΔT, J: m, kg (≥ 0); c, J/(kg K) (> 0); ΔT, K (≥ 0). Throws RangeError if a value is out of its range. */
export const sensibleHeatJ = (massKg: number, capacityJKgK: number, riseK: number): number =>
  notNegative(massKg, 'The mass') *
  positive(capacityJKgK, 'The heat capacity') *
  notNegative(riseK, 'The rise in temperature');

/**
 * How long a heater takes, s: t = Q / (P η). Q: heat, J (≥ 0); P: power, W (> 0); η: share that reaches the water
 * (above 0, up to 1; 1 where left out). Throws RangeError if a value is out of its range.
 */
export const heatingSeconds = (energyJ: number, powerW: number, efficiency = 1): number =>
  notNegative(energyJ, 'The heat') / (positive(powerW, 'The power') * ratio(efficiency));

/** Hot water in a store, and what it is mixed to. */
export interface StoredHotWater {
  readonly storeM3: number;
  readonly hotC: number;
  readonly coldC: number;
  readonly mixedC: number;
}

export interface MixedWater {
  readonly mixedM3: number;
  /** Of `mixedM3`, drawn from the store. */
  readonly hotM3: number;
  readonly coldM3: number;
}

const none: MixedWater = { mixedM3: 0, hotM3: 0, coldM3: 0 };

/**
 * Mixed water from a store whose cold inflow stays below the hot water: as much as there can be.
 *
 *     V_mix = V (T_h − T_c) / (T_m − T_c)
 *
 * V: store, m³ (≥ 0); T_h, T_c, T_m: hot, cold and mixed, °C, T_c < T_m. 0 if the store is cooler than the mix.
 *
 * Throws RangeError if a value is not finite or out of its range, or T_m ≤ T_c.
 *
 * Source: heat balance (definition).
 */
export function mixedFromLayered({ storeM3, hotC, coldC, mixedC }: StoredHotWater): MixedWater {
  const { spanHot, spanMixed } = spans({ storeM3, hotC, coldC, mixedC });
  if (spanHot < spanMixed) return none;
  const mixedM3 = (storeM3 * spanHot) / spanMixed;
  return { mixedM3, hotM3: storeM3, coldM3: mixedM3 - storeM3 };
}

/**
 * Mixed water from a store that the inflow stirs through at once: as little as there can be, without reheating.
 *
 *     V_hot = V ln((T_h − T_c)/(T_m − T_c));  V_mix = V (T_h − T_m)/(T_m − T_c);  V_cold = V_mix − V_hot
 *
 * As {@link mixedFromLayered}. Real small stores lie between the two.
 *
 * Throws RangeError as {@link mixedFromLayered} does.
 *
 * Source: heat balance of a stirred vessel, integrated (definition).
 */
export function mixedFromStirred({ storeM3, hotC, coldC, mixedC }: StoredHotWater): MixedWater {
  const { spanHot, spanMixed } = spans({ storeM3, hotC, coldC, mixedC });
  if (spanHot < spanMixed) return none;
  const hotM3 = storeM3 * Math.log(spanHot / spanMixed);
  const mixedM3 = (storeM3 * (spanHot - spanMixed)) / spanMixed;
  return { mixedM3, hotM3, coldM3: mixedM3 - hotM3 };
}

function spans({ storeM3, hotC, coldC, mixedC }: StoredHotWater) {
  notNegative(storeM3, 'The volume of the store');
  const cold = finite(coldC, 'The cold temperature');
  return {
    spanHot: finite(hotC, 'The hot temperature') - cold,
    spanMixed: positive(
      finite(mixedC, 'The mixed temperature') - cold,
      'What the mix is warmer than the cold',
    ),
  };
}

/** Share of hot water in a mix: x = (T_m − T_c)/(T_h − T_c). Throws RangeError unless T_c < T_h and T_c ≤ T_m ≤ T_h. */
export function hotShare(hotC: number, coldC: number, mixedC: number): number {
  const share =
    (finite(mixedC, 'The mixed temperature') - finite(coldC, 'The cold temperature')) /
    positive(finite(hotC, 'The hot temperature') - coldC, 'What the hot is warmer than the cold');
  if (share < 0 || share > 1) throw new RangeError(`No mix of ${coldC} and ${hotC} °C has ${mixedC} °C.`);
  return share;
}

/**
 * How much warmer an instant heater makes a steady flow, K.
 *
 *     ΔT = P η / (ρ c Q)
 *
 * P: power taken, W (≥ 0); η: share that reaches the water (above 0, up to 1; 1 where left out); Q: flow, m³/s (> 0);
 * ρ, c: of water at the inlet temperature, °C (0 to 100). What would pass 100 °C is no longer water.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function flowRiseK(powerW: number, flowM3S: number, inletC: number, efficiency = 1): number {
  const { densityKgM3, heatCapacityJKgK } = waterProperties(inletC);
  return (
    (notNegative(powerW, 'The power') * ratio(efficiency)) /
    (densityKgM3 * heatCapacityJKgK * positive(flowM3S, 'The flow'))
  );
}

/**
 * The flow that an instant heater can make so much warmer, m³/s: Q = P η / (ρ c ΔT); as {@link flowRiseK}, ΔT > 0.
 */
export function flowHeatedM3S(powerW: number, riseK: number, inletC: number, efficiency = 1): number {
  const { densityKgM3, heatCapacityJKgK } = waterProperties(inletC);
  return (
    (notNegative(powerW, 'The power') * ratio(efficiency)) /
    (densityKgM3 * heatCapacityJKgK * positive(riseK, 'The rise in temperature'))
  );
}

function ratio(efficiency: number): number {
  if (positive(efficiency, 'The efficiency') > 1) {
    throw new RangeError(`The efficiency must not be more than 1, not ${efficiency}.`);
  }
  return efficiency;
}

/** Heat lost by a store, W: P = G (T_w − T_a). G: conductance, W/K (≥ 0). Below 0 if the air is warmer. */
export const standingLossW = (conductanceWK: number, waterC: number, airC: number): number =>
  notNegative(conductanceWK, 'The conductance') *
  (finite(waterC, 'The temperature of the water') - finite(airC, 'The temperature of the air'));
