import { frictionFactor } from '../../calc/water/friction.ts';
import { columnPa, type PipeSegment, pipeLossPa, reynoldsNumber } from '../../calc/water/pipe-loss.ts';
import type { PumpCurve } from '../../calc/water/pump.ts';
import { outletPressurePa } from '../../calc/water/solve-flow.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import {
  density,
  factor,
  flow,
  length,
  type Measure,
  pressure,
  share,
  waterPressure,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { flowThrough, type KnownSupply, liquidOf, sharedBy } from '../water-network.ts';
import { curveOf, type Supplies } from '../water-supplies.ts';

/*
 * How the flow of an outlet comes about. It was solved for; the steps go round with it once, and come back to it.
 */

/** What flows through each pipe of a supply, as it was solved. */
interface Running {
  readonly supply: KnownSupply;
  readonly curve: PumpCurve | undefined;
  /** One for each of the pipes. */
  readonly flowsM3S: readonly number[];
  /** From this outlet. */
  readonly ownM3S: number;
  readonly pumpM3S: number;
  readonly pumpPa: number;
}

function runningAlone({ water }: Supplies, supply: KnownSupply, curve: PumpCurve | undefined): Running {
  const { totalM3S, pumpPa } = flowThrough(water, [supply], curve);
  const flowsM3S = supply.segments.map(() => totalM3S);
  return { supply, curve, flowsM3S, ownM3S: totalM3S, pumpM3S: totalM3S, pumpPa };
}

/** The pump's pressure, less what the pipes lose and the height, and what the outlet lets through at the rest. */
export const flowSteps = (all: Supplies, supply: KnownSupply): readonly Step[] =>
  stepsThrough(all, runningAlone(all, supply, curveOf(all, supply)));

/** The same with another outlet open: pipes that both share lose what the flow of both makes them lose. */
export function sharedFlowSteps(all: Supplies, supply: KnownSupply, other: KnownSupply): readonly Step[] {
  const curve = curveOf(all, supply);
  const { branches, totalM3S, pumpPa } = flowThrough(all.water, [supply, other], curve);
  const [ownM3S = 0, otherM3S = 0] = branches.map(({ flowM3S }) => flowM3S);
  const shared = sharedBy([supply, other]);
  const together: Step = {
    what: 'What flows from both: Q₁ + Q₂',
    sum: say`${flow(ownM3S)} from ${supply.outlet.name} + ${flow(otherM3S)} from ${other.outlet.name}, as they were solved for together`,
    result: flow(totalM3S),
    paths: [supply.outlet.path, other.outlet.path],
  };
  const flowsM3S = supply.segments.map((_, at) => (at < shared ? totalM3S : ownM3S));
  return [together, ...stepsThrough(all, { supply, curve, flowsM3S, ownM3S, pumpM3S: totalM3S, pumpPa })];
}

/** Of one outlet wide open: what pipes, height and outlet take is what the pump keeps up. */
export function pumpPressureSteps(
  all: Supplies,
  supply: KnownSupply,
  curve: PumpCurve | undefined,
): readonly Step[] {
  const running = runningAlone(all, supply, curve);
  const { pumpM3S, pumpPa } = running;
  const { outlet, wanted, riseM } = supply;
  const [losses, lostPa] = lossStep(all, running);
  const highPa = columnPa(riseM, liquidOf(all.water).densityKgM3);
  const outletPa = outletPressurePa(
    { nominalFlowM3S: wanted.flowM3PerS, nominalPressurePa: wanted.pressurePa },
    pumpM3S,
  );
  return [
    losses,
    heightStep(all, supply, waterPressure(highPa)),
    {
      what: 'What the outlet takes at this flow: p_n·(Q / Q_n)²',
      sum: say`${waterPressure(wanted.pressurePa)} · (${flow(pumpM3S)} / ${flow(wanted.flowM3PerS)})²`,
      result: waterPressure(outletPa),
      paths: [outlet.path],
    },
    {
      what: 'What the pump keeps up: the sum of them',
      sum: say`${waterPressure(lostPa)} + ${waterPressure(highPa)} + ${waterPressure(outletPa)}; ${curveText(all, curve)} it has the same at ${flow(pumpM3S)}: that is how the flow was found`,
      result: pressure(pumpPa),
      paths: pumpPaths(all),
    },
  ];
}

function stepsThrough(all: Supplies, running: Running): readonly Step[] {
  const { supply, curve, flowsM3S, ownM3S, pumpM3S, pumpPa } = running;
  const { outlet, wanted, riseM, isPumped } = supply;
  const [losses, lostPa] = lossStep(all, running);
  const highPa = columnPa(riseM, liquidOf(all.water).densityKgM3);
  const leftPa = pumpPa - lostPa - highPa;
  const isSame = flowsM3S.every((each) => each === pumpM3S);
  const from: Step = {
    what: 'What the pump keeps up at the flow that was solved for',
    sum: say`at ${flow(pumpM3S)}, ${curveText(all, curve)}`,
    result: waterPressure(pumpPa),
    paths: pumpPaths(all),
  };
  return [
    ...(isPumped ? [from] : []),
    losses,
    heightStep(all, supply, waterPressure(highPa)),
    {
      what: 'What is left at the outlet',
      sum: say`${waterPressure(isPumped ? pumpPa : 0)} − ${waterPressure(lostPa)} − ${waterPressure(highPa)}`,
      result: waterPressure(leftPa),
    },
    {
      what: `What ${isSame ? 'the outlet' : outlet.name} lets through at that: Q = Q_n·√(p / p_n)`,
      sum:
        ownM3S > 0
          ? say`${flow(wanted.flowM3PerS)} · √(${waterPressure(leftPa)} / ${waterPressure(wanted.pressurePa)}); the flow that was begun with`
          : say`nothing, as nothing is left`,
      result: flow(throughOutlet(running, leftPa, highPa)),
      paths: [outlet.path],
    },
  ];
}

/** As near as the flow was solved for, as a part of the greatest pressure. */
const solvedWithin = 1e-6;

/**
 * What an outlet lets through at a pressure. Where pipes take nearly all that the pump has, what is left is the difference
 * of two numbers that are nearly the same: its last digits say nothing against the flow that was solved for.
 */
function throughOutlet({ supply, ownM3S, pumpPa }: Running, leftPa: number, highPa: number): number {
  const { flowM3PerS, pressurePa } = supply.wanted;
  const solvedPa = outletPressurePa({ nominalFlowM3S: flowM3PerS, nominalPressurePa: pressurePa }, ownM3S);
  const isSame = Math.abs(leftPa - solvedPa) <= solvedWithin * Math.max(pumpPa, Math.abs(highPa));
  if (isSame || leftPa <= 0) return isSame ? ownM3S : 0;
  return flowM3PerS * Math.sqrt(leftPa / pressurePa);
}

const pumpPaths = ({ water }: Supplies): readonly PlanPath[] => (water.pump ? [water.pump.path] : []);

function heightStep({ water }: Supplies, { riseM, tank }: KnownSupply, high: Measure): Step {
  return {
    what: 'What the height takes: ρ·g·h',
    sum: say`${density(liquidOf(water).densityKgM3)} · 9.81 m/s² · ${length(riseM)} from the bottom of ${tank.name} up to the outlet; 100,000 Pa are a bar`,
    result: high,
    paths: [tank.path],
  };
}

/** What each pipe loses, and all of them. */
function lossStep({ water }: Supplies, { supply, flowsM3S }: Running): readonly [Step, lostPa: number] {
  const { segments, pipes } = supply;
  const liquid = liquidOf(water);
  const losses = segments.map((segment, at) => pipeLossPa(flowsM3S[at] ?? 0, segment, liquid));
  const lostPa = losses.reduce((sum, each) => sum + each, 0);
  const [first = 0] = flowsM3S;
  const isSame = flowsM3S.every((each) => each === first);
  const step: Step = {
    what: 'What the pipes lose at that flow, each: (f·L/D + ΣK)·ρ·v²/2',
    sum: say`v = 4·Q/(π·D²), ${isSame ? say`Q = ${flow(first)}` : say`Q by pipe`}, ρ = ${density(liquid.densityKgM3)}; f the friction, by Colebrook–White, ΣK bends and valves`,
    result: waterPressure(lostPa),
    parts: {
      columns: [...(isSame ? [] : ['Q']), 'L', 'D', 'f', 'ΣK', 'lost'],
      rows: pipes.map(({ name, path }, at) => ({
        name,
        path,
        origin: 'computed',
        values: [
          ...(isSame ? [] : [flow(flowsM3S[at] ?? 0)]),
          ...pipeValues(segments[at], flowsM3S[at] ?? 0, liquid.kinematicViscosityM2S),
        ],
        adds: waterPressure(losses[at] ?? 0),
      })),
    },
    paths: pipes.map(({ path }) => path),
  };
  return [step, lostPa];
}

/** Length, bore, friction factor and loss coefficient of a pipe, as a table has them. */
export const pipeValues = (
  segment: PipeSegment | undefined,
  flowM3S: number,
  viscosityM2S: number,
): readonly Measure[] => [
  length(segment?.lengthM ?? 0),
  length(segment?.innerDiameterM ?? 0),
  // In per cent, since two decimals of so small a number would say little.
  share(segment ? frictionOf(segment, flowM3S, viscosityM2S) : 0),
  factor(segment?.minorK ?? 0),
];

/** Without flow nothing is lost, and there is no factor. */
const frictionOf = (
  { innerDiameterM, roughnessM }: PipeSegment,
  flowM3S: number,
  viscosityM2S: number,
): number =>
  flowM3S > 0
    ? frictionFactor(reynoldsNumber(flowM3S, innerDiameterM, viscosityM2S), roughnessM / innerDiameterM)
    : 0;

function curveText({ water }: Supplies, curve: PumpCurve | undefined): Phrase {
  if (water.pump?.curve) return say`along its curve`;
  const [shutOff, open] = curve ?? [];
  return shutOff && open
    ? say`on the straight line from ${waterPressure(shutOff.pressurePa)} without flow to no pressure at ${flow(open.flowM3S)}`
    : [];
}
