import type { Build } from '../build/build.ts';
import { asLiquidC } from '../build/liquid-water.ts';
import type { Water, WaterHeater } from '../build/water.ts';
import { hotWaterC } from '../build/water-use.ts';
import { given, missing, type Need } from '../engine/rule.ts';

/** The heater with all that says how hot its water is. */
export interface HotWater {
  readonly water: Water;
  readonly heater: WaterHeater;
}

export const hotWater: Need<HotWater> = ({ water }) => {
  if (!water) return missing('water');
  return water.heater ? given({ water, heater: water.heater }) : missing('water.heater');
};

/** A store whose size and warmth are known. */
export interface Store extends HotWater {
  readonly holdsM3: number;
  readonly hotC: number;
  readonly coldC: number;
}

/** What a store lacks to be reckoned with, as keys. */
export function storeOf(
  build: Build,
  { water, heater }: HotWater,
): Store | { readonly missing: readonly string[] } {
  const hotC = hotWaterC(build);
  const { holdsM3 } = heater;
  if (holdsM3 !== undefined && hotC !== undefined)
    return { water, heater, holdsM3, hotC, coldC: asLiquidC(water.coldC) };
  return {
    missing: [
      ...(holdsM3 === undefined ? ['water.heater.holds'] : []),
      ...(hotC === undefined ? ['water.heater.temperature'] : []),
    ],
  };
}
