import { finite, notNegative, positive } from '../argument.ts';

/** A pressure vessel with a gas cushion beside a pump. Gauge pressures. */
export interface Accumulator {
  /** Of the whole vessel, water and gas. */
  readonly volumeM3: number;
  /** Of the gas with no water in it. */
  readonly prechargePa: number;
  /** Where the pump switches on and off. */
  readonly cutInPa: number;
  readonly cutOutPa: number;
  /** 101 325 Pa where left out. */
  readonly atmospherePa?: number;
}

/**
 * Water that an accumulator gives between the pump's cut-out and cut-in, m³.
 *
 *     V_w = V (p_pre + p_atm) · (1/(p_on + p_atm) − 1/(p_off + p_atm))
 *
 * V: whole volume, m³ (> 0); the pressures as gauge pressures, Pa (≥ 0), p_off > p_on; p_atm: Pa (> 0). Slow draw, so
 * that the gas keeps its temperature. With a pre-charge above the cut-in pressure the vessel is empty before the pump
 * starts, so that the pre-charge counts as p_on; at or above the cut-out pressure it holds no water: 0.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: Boyle's law (definition).
 */
export function accumulatorUsableM3(vessel: Accumulator): number {
  const atmospherePa = positive(vessel.atmospherePa ?? 101_325, 'The air pressure');
  const prechargePa = notNegative(vessel.prechargePa, 'The pre-charge');
  const cutInPa = notNegative(vessel.cutInPa, 'The cut-in pressure');
  positive(finite(vessel.cutOutPa, 'The cut-out pressure') - cutInPa, 'The step from cut-in to cut-out');
  const gas = positive(vessel.volumeM3, 'The volume of the accumulator') * (prechargePa + atmospherePa);
  const emptiest = Math.max(cutInPa, prechargePa);
  return Math.max(0, gas / (emptiest + atmospherePa) - gas / (vessel.cutOutPa + atmospherePa));
}
