import { heatingEnergyJ, heatingSeconds, heldHeat, type WaterToHeat } from '../../calc/water/heating.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { density, duration, energyWh, kelvins, mass, power, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';

/*
 * How long a heater takes for so much water: what the water weighs, the heat that goes into it, and the power for that.
 */

interface Heated {
  readonly water: WaterToHeat;
  /** "the store" */
  readonly of: string;
  readonly powerW: number;
  readonly volumePaths: readonly PlanPath[];
  readonly degreePaths: readonly PlanPath[];
  readonly powerPath: PlanPath;
}

export function heatingSteps(heated: Heated): readonly Step[] {
  const { water, of, powerW, volumePaths, degreePaths, powerPath } = heated;
  const { volumeM3, fromC, toC } = water;
  const last = (heatJ: number): Step => ({
    what: 'How long the heater takes: t = Q / P',
    sum: say`${energyWh(heatJ / 3600)} / ${power(powerW)}`,
    result: duration(heatingSeconds(heatJ, powerW)),
    paths: [powerPath],
  });
  if (toC <= fromC) return [last(0)];
  const { massKg, capacityJKgK } = heldHeat(water);
  const heatJ = heatingEnergyJ(water);
  const capacity = String(Number(capacityJKgK.toFixed(1)));
  return [
    {
      what: `What the water of ${of} weighs: m = V·ρ`,
      sum: say`${volume(volumeM3)} · ${density(massKg / volumeM3)}`,
      result: mass(massKg),
      paths: volumePaths,
    },
    {
      what: 'The heat that goes into it: Q = m·c·(T_h − T_c)',
      sum: say`${mass(massKg)} · ${capacity} J/(kg·K) · ${kelvins(toC - fromC)}, and 3,600 J are a watt-hour`,
      result: energyWh(heatJ / 3600),
      paths: degreePaths,
    },
    last(heatJ),
  ];
}
