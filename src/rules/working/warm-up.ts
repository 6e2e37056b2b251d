import type { Build } from '../../build/build.ts';
import { type WorkedHeatDemand, warmedPartsOf } from '../../build/heat-demand.ts';
import { airHeatJPerM3K } from '../../calc/heat/heat-loss.ts';
import { airCapacity } from '../../calc/heat/warm-up.ts';
import type { Part, Step } from '../../engine/finding.ts';
import {
  airVolume,
  area,
  arealMass,
  closeC,
  conductance,
  duration,
  heatCapacity,
  power,
  specificHeat,
} from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { bracketedC } from '../bracketed.ts';
import { insideAndOutside, lossAtStep, lossPerKelvinSteps } from './loss.ts';

/*
 * How long a cold van takes to get warm: what it loses, what warms up in it, and the heater against both.
 */

interface WarmingUp {
  readonly build: Build;
  readonly demand: WorkedHeatDemand;
  readonly insideC: number;
  readonly outsideC: number;
  readonly outputW: number;
  readonly takesS: number;
}

export function warmUpSteps(warming: WarmingUp): readonly Step[] {
  const { build, demand, insideC, outsideC, outputW, takesS } = warming;
  const lossWPerK = demand.awake.totalWPerK;
  const lossAt = lossAtStep('What is lost once it is warm: H·(T_1 − T_e)', {
    lossWPerK: conductance(lossWPerK),
    insideC,
    outsideC,
  });
  if (takesS === Number.POSITIVE_INFINITY)
    return [
      ...lossPerKelvinSteps(demand, build),
      lossAt,
      { what: 'What the heater gives: P, which is no more', result: power(outputW), paths: outputPaths },
    ];
  const { capacityJPerK } = demand;
  const lining = liningStep(demand);
  const endC = outsideC + outputW / lossWPerK;
  const airJPerK = airCapacity(demand.volumeM3);
  return [
    ...lossPerKelvinSteps(demand, build),
    lining,
    {
      what: 'All that warms up, with the air: C',
      sum: say`${airVolume(demand.volumeM3)} · ${(airHeatJPerM3K / secondsAnHour).toFixed(3)} Wh/(m³·K) + ${heatCapacity(capacityJPerK - airJPerK)}`,
      result: heatCapacity(capacityJPerK),
    },
    {
      what: 'As warm as it would get in the end: T_∞ = T_e + P / H',
      sum: say`${closeC(outsideC)} + ${power(outputW)} / ${conductance(lossWPerK)}`,
      result: closeC(endC),
      paths: [...outputPaths, ['living', 'winter_low']],
    },
    {
      what: 'How long it takes: t = C / H · ln((T_∞ − T_0) / (T_∞ − T_1)), T_0 as cold as outside',
      sum: say`${heatCapacity(capacityJPerK)} / ${conductance(lossWPerK)} · ln((${closeC(endC)} − ${bracketedC(outsideC)}) / (${closeC(endC)} − ${bracketedC(insideC)}))`,
      result: duration(takesS),
      paths: insideAndOutside('inside'),
    },
  ];
}

const secondsAnHour = 3600;
const outputPaths = [['heat', 'heater', 'output']];

/** Layers inside of the insulation, and half of it: what it weighs and how much heat a kilogram takes. */
function liningStep({ surfaces }: WorkedHeatDemand): Step {
  const rows = warmedPartsOf(surfaces).map(
    ({ surface, layer, areaM2, share, kgPerM2, heatCapacityJPerKgK }): Part => ({
      name: `${surface}: ${share < 1 ? 'half of ' : ''}${layer.name}`,
      path: layer.path,
      origin: 'computed',
      values: [area(areaM2), arealMass(share * kgPerM2), specificHeat(heatCapacityJPerKgK)],
      adds: heatCapacity(areaM2 * share * kgPerM2 * heatCapacityJPerKgK),
    }),
  );
  return {
    what: 'What the linings take up for each kelvin, those inside of the insulation and half of it: Σ A·m·c (1 Wh is 3600 J)',
    result: heatCapacity(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
    ...(rows.length > 0
      ? { parts: { columns: ['A', 'm', 'c', 'A·m·c'], rows } }
      : { sum: say`no layer of which weight and heat are known` }),
  };
}
