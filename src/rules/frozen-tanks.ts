import type { WaterTank } from '../build/water.ts';
import {
  TANK_WATER_J_PER_KG_K,
  tankConductanceWK,
  tankSecondsToFreezing,
  tankTimeConstantS,
} from '../calc/water/freezing.ts';
import { fluids } from '../catalogue/fluids.ts';
import { airFilm } from '../catalogue/water/frost.ts';
import type { Cooling } from './frost.ts';

/** How full a tank is taken to be in the frost. */
export const tankFillShare = 0.5;

/** More than anyone puts about a tank, m. */
const thickestM = 0.1;

export interface TankCooling extends Cooling {
  readonly sidesM: readonly [number, number, number];
  readonly areaM2: number;
  readonly holdsM3: number;
  readonly massKg: number;
}

/** How a tank in the cold cools with so much about it; undefined where its size is not known. */
export function tankCooling(
  { box, holdsM3, contents }: WaterTank,
  waterC: number,
  airC: number,
  insulationM: number,
  conductivityWMK: number,
): TankCooling | undefined {
  if (!box) return undefined;
  const sidesM = [box.mostXM - box.leastXM, box.mostYM - box.leastYM, box.topM - box.bottomM] as const;
  const [longM, wideM, highM] = sidesM;
  const areaM2 = 2 * (longM * wideM + longM * highM + wideM * highM);
  const filmM2KW = airFilm.outside.m2KW;
  const massKg = tankFillShare * holdsM3 * fluids[contents].densityKgM3;
  const conductanceWK = tankConductanceWK([{ areaM2, surfaceM2KW: filmM2KW, insulationM, conductivityWMK }]);
  return {
    waterC,
    airC,
    filmM2KW,
    sidesM,
    areaM2,
    holdsM3,
    massKg,
    conductanceWK,
    heatCapacityJKgK: TANK_WATER_J_PER_KG_K,
    followsS: tankTimeConstantS({ massKg, conductanceWK }),
    seconds: tankSecondsToFreezing({ massKg, conductanceWK, waterC, airC }),
  };
}

/** The least whole millimetres about a tank that hold off the frost for so long; undefined where none do. */
export function thicknessAgainstFrost(
  tank: WaterTank,
  waterC: number,
  airC: number,
  conductivityWMK: number,
  seconds: number,
): number | undefined {
  for (let millimetres = 1; millimetres <= thickestM * 1000; millimetres += 1) {
    const cooling = tankCooling(tank, waterC, airC, millimetres / 1000, conductivityWMK);
    if ((cooling?.seconds ?? 0) >= seconds) return millimetres / 1000;
  }
  return undefined;
}
