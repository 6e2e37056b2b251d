import type { PlanPath, Step } from '../../engine/finding.ts';
import {
  area,
  closeC,
  conductance,
  density,
  duration,
  kelvins,
  length,
  mass,
  volume,
} from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { type ColdPipe, type Cooling, pipeCooling } from '../frost.ts';
import { type TankCooling, tankFillShare } from '../frozen-tanks.ts';

/*
 * How long still water takes to reach freezing: what lets its warmth out, how slowly it follows, and then how far it has
 * to go.
 */

/** A conductivity as one reads it; foam round pipes has more digits than anybody needs. */
const conductivityText = (wMK: number): string => `${Number(wMK.toFixed(4))} W/(m·K)`;

interface Wrapped {
  readonly thicknessM: number;
  readonly conductivityWMK: number;
  readonly path: PlanPath;
}

/** Of a pipe: the insulation about it, then the film of air. */
export function frozenPipeSteps(
  pipe: ColdPipe,
  { thicknessM, conductivityWMK, path }: Wrapped,
): readonly Step[] {
  const { innerDiameterM, outerDiameterM } = pipe;
  const cooling = pipeCooling(pipe, thicknessM, conductivityWMK);
  const { conductanceWK, filmM2KW, densityKgM3, heatCapacityJKgK, followsS } = cooling;
  const overM = outerDiameterM + 2 * thicknessM;
  const film = say`${String(filmM2KW)} m²K/W / (π · ${length(overM)})`;
  return [
    {
      what: 'What a metre of pipe lets out for each kelvin: 1/R, R = ln(D₃/D₂)/(2π·λ) + R_s/(π·D₃)',
      sum:
        thicknessM > 0
          ? say`1 / (ln(${length(overM)} / ${length(outerDiameterM)}) / (2π · ${conductivityText(conductivityWMK)}) + ${film})`
          : say`without insulation only the air about it holds back: 1 / (${film})`,
      result: conductance(conductanceWK),
      paths: [
        [...path, 'size'],
        [...path, 'insulation'],
      ],
    },
    {
      what: 'How slowly the water follows the cold, the time for 63 % of the way: ρ·c·π·(D₁/2)²·R',
      sum: say`${density(densityKgM3)} · ${String(heatCapacityJKgK)} J/(kg·K) · π · (${length(innerDiameterM)} / 2)² / ${conductance(conductanceWK)}`,
      result: duration(followsS),
      paths: [
        [...path, 'size'],
        [...path, 'bore'],
      ],
    },
    tillFrost(cooling),
  ];
}

/** Of a tank: its walls, what they let out, what is in it. */
export function frozenTankSteps(
  cooling: TankCooling,
  { thicknessM, conductivityWMK, path }: Wrapped,
): readonly Step[] {
  const { sidesM, areaM2, conductanceWK, massKg, holdsM3, filmM2KW, heatCapacityJKgK, followsS } = cooling;
  const [longM, wideM, highM] = sidesM;
  const film = `${filmM2KW} m²K/W`;
  return [
    {
      what: 'The walls of its box: A = 2·(l·w + l·h + w·h)',
      sum: say`2 · (${length(longM)} · ${length(wideM)} + ${length(longM)} · ${length(highM)} + ${length(wideM)} · ${length(highM)})`,
      result: area(areaM2),
      paths: [[...path, 'size']],
    },
    {
      what: 'What they let out for each kelvin: G = A / (R_s + s/λ)',
      sum:
        thicknessM > 0
          ? say`${area(areaM2)} / (${film} + ${length(thicknessM)} / ${conductivityText(conductivityWMK)})`
          : say`${area(areaM2)} / ${film}, that of the air, without insulation`,
      result: conductance(conductanceWK),
      paths: [[...path, 'insulation']],
    },
    {
      what: 'What is in it, half full: m',
      sum: say`${String(tankFillShare)} · ${volume(holdsM3)} · ${density(massKg / (tankFillShare * holdsM3))}`,
      result: mass(massKg),
      paths: [[...path, 'holds']],
    },
    {
      what: 'How slowly it follows the cold, the time for 63 % of the way: m·c/G',
      sum: say`${mass(massKg)} · ${String(heatCapacityJKgK)} J/(kg·K) / ${conductance(conductanceWK)}`,
      result: duration(followsS),
    },
    tillFrost(cooling),
  ];
}

/** The last step of both: from the water's warmth down to 0 °C. */
function tillFrost({ waterC, airC, followsS, seconds }: Cooling): Step {
  return {
    what: 'Till it is at freezing: that times ln((T_w − T_a) / (0 − T_a))',
    sum: say`${duration(followsS)} · ln(${kelvins(waterC - airC)} / ${kelvins(-airC)}), for water of ${closeC(waterC)} in air of ${closeC(airC)}`,
    result: duration(seconds),
    paths: [
      ['water', 'cold'],
      ['living', 'winter_low'],
    ],
  };
}
