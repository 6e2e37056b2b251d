import { frictionFactor } from '../calc/water/friction.ts';
import { columnPa, type PipeSegment, pipeLossPa, reynoldsNumber } from '../calc/water/pipe-loss.ts';
import type { PumpCurve } from '../calc/water/pump.ts';
import type { Step } from '../engine/finding.ts';
import { density, factor, flow, length, pressure } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { flowThrough, type KnownSupply, liquidOf } from './water-network.ts';
import { curveOf, type Supplies } from './water-supplies.ts';

/*
 * How the flow of an outlet comes about. It was solved for; the steps go round with it once, and come back to it.
 */

/** The pump's pressure, less what the pipes lose and the height, and what the outlet lets through at the rest. */
export function flowSteps(all: Supplies, supply: KnownSupply): readonly Step[] {
  const { outlet, wanted, riseM, segments, pipes, isPumped } = supply;
  const liquid = liquidOf(all.water);
  const { totalM3S, pumpPa } = flowThrough(all.water, [supply], curveOf(all, supply));
  const losses = segments.map((segment) => pipeLossPa(totalM3S, segment, liquid));
  const lostPa = losses.reduce((sum, each) => sum + each, 0);
  const highPa = columnPa(riseM, liquid.densityKgM3);
  const leftPa = pumpPa - lostPa - highPa;
  const from = isPumped ? [pumpStep(all, totalM3S, pumpPa)] : [];
  return [
    ...from,
    {
      what: 'What the pipes lose at this flow, each: (f·L/D + ΣK)·ρ·v²/2',
      sum: say`v = 4·Q/(π·D²), Q = ${flow(totalM3S)}, ρ = ${density(liquid.densityKgM3)}; f by Colebrook–White`,
      result: pressure(lostPa),
      parts: {
        columns: ['L', 'D', 'f', 'ΣK', 'lost'],
        rows: pipes.map(({ name, path }, at) => {
          const segment = segments[at];
          return {
            name,
            path,
            origin: 'computed',
            values: [
              length(segment?.lengthM ?? 0),
              length(segment?.innerDiameterM ?? 0),
              factor(segment ? frictionOf(segment, totalM3S, liquid.kinematicViscosityM2S) : 0),
              factor(segment?.minorK ?? 0),
            ],
            adds: pressure(losses[at] ?? 0),
          };
        }),
      },
      paths: pipes.map(({ path }) => path),
    },
    {
      what: 'What the height takes: ρ·g·h',
      sum: say`${density(liquid.densityKgM3)} · 9.81 m/s² · ${length(riseM)} from the bottom of the tank up to the outlet`,
      result: pressure(highPa),
    },
    {
      what: 'What is left at the outlet',
      sum: say`${isPumped ? say`${pressure(pumpPa)} − ` : say`0 − `}${pressure(lostPa)} − ${pressure(highPa)}`,
      result: pressure(leftPa),
    },
    {
      what: 'What the outlet lets through at that: Q = Q_n·√(p / p_n)',
      sum:
        leftPa > 0
          ? say`${flow(wanted.flowM3PerS)} · √(${pressure(leftPa)} / ${pressure(wanted.pressurePa)}); the flow that was begun with`
          : say`nothing, as nothing is left`,
      result: flow(leftPa > 0 ? wanted.flowM3PerS * Math.sqrt(leftPa / wanted.pressurePa) : 0),
      paths: [outlet.path],
    },
  ];
}

/** Without flow nothing is lost, and there is no factor. */
const frictionOf = (
  { innerDiameterM, roughnessM }: PipeSegment,
  flowM3S: number,
  viscosityM2S: number,
): number =>
  flowM3S > 0
    ? frictionFactor(reynoldsNumber(flowM3S, innerDiameterM, viscosityM2S), roughnessM / innerDiameterM)
    : 0;

function pumpStep({ water, curve }: Supplies, flowM3S: number, pumpPa: number): Step {
  return {
    what: 'What the pump keeps up at the flow that was solved for',
    sum: say`at ${flow(flowM3S)}, ${water.pump?.curve ? 'along its curve' : straight(curve)}`,
    result: pressure(pumpPa),
    paths: water.pump ? [water.pump.path] : [],
  };
}

function straight(curve: PumpCurve | undefined): Phrase {
  const [shutOff, open] = curve ?? [];
  return shutOff && open
    ? say`on the straight line from ${pressure(shutOff.pressurePa)} without flow to no pressure at ${flow(open.flowM3S)}`
    : [];
}
