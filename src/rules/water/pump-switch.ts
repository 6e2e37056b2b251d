import type { Pump, Water } from '../../build/water.ts';
import { accumulatorUsableM3 } from '../../calc/water/accumulator.ts';
import { columnPa } from '../../calc/water/pipe-loss.ts';
import { leastCycle, smallPump } from '../../catalogue/water/pumps.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { density, flow, length, pressure, volume, wait, waterPressure } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { flowThrough, givenCurveOf, type KnownSupply, liquidOf } from '../water-network.ts';
import { assumedOf, heightText, type Supplies, supplies, supplyName } from '../water-supplies.ts';
import { pumpPressureSteps } from '../working/flow.ts';

const text: RuleText = {
  id: 'water.pump-switch',
  topic: 'water',
  title: 'pump starts and runs steadily',
  why: 'A pump whose switch lets go and catches again many times a minute rattles, makes the shower pulse and wears out; one whose switch never catches does not start at all.',
  formula:
    'starts: p_on > ρ·g·h; steady: p_pump(Q) ≤ p_on; else t = V_w / Q ≥ 10 s; V_w = V·(p_pre + p_atm)·(1/(max(p_on, p_pre) + p_atm) − 1/(p_off + p_atm)), m³; p_on and p_off pressures of the switch, p_pre of the accumulator, p_atm 101325 Pa; Q flow of one outlet, wide open, m³/s',
  sources: [
    ...smallPump.citations,
    ...leastCycle.citations,
    {
      title:
        'Boyle’s law for the gas in the accumulator; a drained accumulator is filled while the outlet runs',
      provenance: 'computed',
      caution: 'A tap that is only half open makes any pump start and stop more often.',
    },
  ],
  cautions: [waterCaution],
  fix: 'Take a pump that starts at a higher pressure, wider pipes, or an accumulator.',
  place: ['water', 'pump'],
};

interface Switched {
  readonly all: Supplies;
  readonly water: Water;
  readonly pump: Pump;
  readonly cutInPa: number;
  readonly cutInGiven: boolean;
  readonly cutOutPa: number;
}

const switched: Need<Switched> = (build) => {
  const pump = build.water?.pump;
  if (build.water && !pump) return missing('water.pump');
  const found = supplies(build);
  if (!found.ok) return found;
  if (!pump || pump.cutOutPa === undefined) return missing('water.pump.cut_out');
  // Without a pump the known ways are not enough, whatever else the plan says.
  if (!found.value.known.some(({ isPumped }) => isPumped)) return missing('water.pipes.NAME.from');
  const usualCutInPa = pump.cutOutPa - smallPump.cutInBelowCutOutBar.usual * 1e5;
  return given({
    all: found.value,
    water: found.value.water,
    pump,
    cutInPa: pump.cutInPa ?? Math.max(0, usualCutInPa),
    cutInGiven: pump.cutInPa !== undefined,
    cutOutPa: pump.cutOutPa,
  });
};

export default defineRule({
  ...text,
  needs: { switched },
  check: ({ facts: { switched } }) => {
    const pumped = pumpedOf(switched);
    const highest = highestOf(pumped);
    const column = columnOf(switched, highest);
    if (column >= switched.cutInPa) return { findings: [neverStarts(switched, highest, column)] };
    const findings = pumped.flatMap((supply) => runningOf(switched, supply));
    return { findings: foldPasses(worstOf(findings), 'way to an outlet', 'ways to outlets') };
  },
  work: ({ facts: { switched } }, finding) => stepsOf(switched, finding),
});

const pumpedOf = ({ all }: Switched): readonly KnownSupply[] =>
  all.known.filter(({ isPumped }) => isPumped).toSorted((a, b) => (supplyName(a) < supplyName(b) ? -1 : 1));

const highestOf = (pumped: readonly KnownSupply[]): KnownSupply =>
  pumped.reduce((high, each) => (each.riseM > high.riseM ? each : high));

/** What stands in the pipe up to an outlet presses so much. */
const columnOf = ({ water }: Switched, { riseM }: KnownSupply): number =>
  columnPa(riseM, liquidOf(water).densityKgM3);

/** The column; or where the pump runs on, its pressure; or how long the accumulator lasts. */
function stepsOf(all: Switched, { subject, measured }: Finding): readonly Step[] | undefined {
  const pumped = pumpedOf(all);
  if (subject === neverSubject) {
    const { outlet, riseM } = highestOf(pumped);
    return [
      {
        what: `The column up to ${outlet.name}, the highest outlet: ρ·g·h`,
        sum: say`${density(liquidOf(all.water).densityKgM3)} · 9.81 m/s² · ${length(riseM)}; 100,000 Pa are a bar`,
        result: pressure(columnOf(all, highestOf(pumped))),
        paths: [outlet.path],
      },
    ];
  }
  const supply = pumped.find((each) => supplyName(each) === subject);
  const curve = givenCurveOf(all.pump);
  if (!supply || !measured) return undefined;
  const pressures = pumpPressureSteps(all.all, supply, curve);
  if (measured.kind === 'pressure') return pressures;
  return lastingSteps(all, supply, flowThrough(all.water, [supply], curve).totalM3S);
}

/** What the accumulator gives, and how long that lasts. */
function lastingSteps(all: Switched, { outlet }: KnownSupply, totalM3S: number): readonly Step[] {
  const { water, pump, cutInPa, cutOutPa } = all;
  const { accumulator } = water;
  const heldM3 = heldOf(all);
  const chargePa = accumulator?.chargedToPa ?? cutInPa;
  const air = waterPressure(101_325);
  const held: Step = accumulator
    ? {
        what: 'What the accumulator gives from one start to the next, by absolute pressures: V·(p_pre + p_atm)·(1/(p_on + p_atm) − 1/(p_off + p_atm))',
        sum: say`${volume(accumulator.holdsM3)} · (${waterPressure(chargePa)} + ${air}) · (1/(${waterPressure(Math.max(cutInPa, chargePa))} + ${air}) − 1/(${waterPressure(cutOutPa)} + ${air}))${chargePa >= cutOutPa ? say`; charged so high, it takes no water` : []}`,
        result: volume(heldM3),
        paths: [accumulator.path, pump.path],
      }
    : {
        what: 'What lies between one start and the next',
        sum: say`next to nothing without an accumulator`,
        result: volume(0),
        paths: [pump.path],
      };
  return [
    held,
    {
      what: `What flows from ${outlet.name}, wide open`,
      sum: say`as it was solved; \`storystick explain water.flow\` shows how, for a pump that its switch does not stop`,
      result: flow(totalM3S),
      paths: [outlet.path],
    },
    {
      what: 'From one start to the next: t = V_w / Q',
      sum: say`${volume(heldM3)} / ${flow(totalM3S)}`,
      result: wait(heldM3 / totalM3S),
    },
  ];
}

/** What the accumulator gives from one start to the next; without one nothing. */
function heldOf({ water: { accumulator }, cutInPa, cutOutPa }: Switched): number {
  if (!accumulator) return 0;
  return accumulatorUsableM3({
    volumeM3: accumulator.holdsM3,
    prechargePa: accumulator.chargedToPa ?? cutInPa,
    cutInPa,
    cutOutPa,
  });
}

/** The switch and the accumulator are the same for all outlets: of what is amiss with them, the worst is told once. */
function worstOf(findings: readonly Finding[]): readonly Finding[] {
  const [worst, ...others] = findings
    .filter(({ verdict }) => verdict === 'warn')
    .toSorted(
      (a, b) => (a.measured?.value ?? 0) - (b.measured?.value ?? 0) || (a.subject < b.subject ? -1 : 1),
    );
  if (!worst) return findings;
  const more =
    others.length === 0 ? [] : [` So it is with ${others.map(({ subject }) => subject).join('; ')}.`];
  return [{ ...worst, reason: [...worst.reason, ...more] }];
}

const cutInText = ({ cutInPa, cutInGiven }: Switched): Phrase =>
  cutInGiven
    ? say`${pressure(cutInPa)}`
    : say`${pressure(cutInPa)} (a usual step below \`cut_out\`, as the plan has no \`cut_in\`)`;

const neverSubject = 'cut-in';

/** The column that stands in the pipe keeps the switch open with the outlet open and dry. */
const neverStarts = (all: Switched, { outlet, riseM }: KnownSupply, columnPascals: number): Finding =>
  observed(text, {
    verdict: 'fail',
    subject: neverSubject,
    path: all.pump.path,
    measured: pressure(columnPascals),
    reason: say`${outlet.name} lies ${heightText(riseM)} the bottom of the tank: the water that stands up to there presses with ${pressure(columnPascals)}, and the pump starts only below ${cutInText(all)}.`,
    remedy: say`Take a pump that starts above ${pressure(columnPascals)}, or set the outlet lower.`,
  });

function runningOf(all: Switched, supply: KnownSupply): Finding[] {
  const { pump, water, cutInPa, cutOutPa } = all;
  const curve = givenCurveOf(pump);
  const { totalM3S, pumpPa } = flowThrough(water, [supply], curve);
  // One that gives nothing is for the check of its flow.
  if (totalM3S === 0) return [];
  const { outlet } = supply;
  const at = { rule: text, subject: supplyName(supply) };
  const begins = say`With ${outlet.name} wide open, ${flow(totalM3S)} flow, at ${pressure(pumpPa)} behind the pump.`;
  if (!exceeds(pumpPa, cutInPa))
    return [
      judge({
        ...at,
        path: pump.path,
        kind: 'pressure',
        measured: { value: pumpPa, standard: 0 },
        limit: cutInPa,
        sense: 'at most',
        broken: 'warn',
        reason: say`${begins} That is below the ${cutInText(all)} at which it starts: it runs on steadily.${assumedOf(supply)}`,
      }),
    ];
  const { accumulator } = water;
  const held = heldOf(all);
  const stops = pumpPa >= cutOutPa ? 'it stops and starts again' : 'its switch may stop it';
  const store = accumulator
    ? say`The accumulator of ${volume(accumulator.holdsM3)} gives ${volume(held)} from one start to the next${accumulator.chargedToPa === undefined ? ', if it is charged to the pressure of the start' : ''}.`
    : say`Without an accumulator next to no water lies between two starts.`;
  return [
    judge({
      ...at,
      path: accumulator?.path ?? pump.path,
      kind: 'wait',
      measured: { value: held / totalM3S, standard: 0 },
      limit: leastCycle.seconds,
      sense: 'at least',
      broken: 'warn',
      reason: say`${begins} The pump starts below ${cutInText(all)} and stops at ${pressure(cutOutPa)}: at this flow ${stops}. ${store}${assumedOf(supply)}`,
      remedy: () => accumulatorFor(all, totalM3S * leastCycle.seconds),
    }),
  ];
}

/** The accumulator, charged to the pressure of the start, that gives so much. */
function accumulatorFor({ cutInPa, cutOutPa }: Switched, wantedM3: number): Phrase {
  const perVolume = accumulatorUsableM3({ volumeM3: 1, prechargePa: cutInPa, cutInPa, cutOutPa });
  // In half litres, as they are sold.
  const volumeM3 = Math.ceil(wantedM3 / perVolume / 0.0005 - 1e-9) * 0.0005;
  return say`Fit an accumulator of ${volume(volumeM3)}, charged to ${pressure(cutInPa)}: it gives ${wait(leastCycle.seconds)} of water from one start to the next. Or take a pump whose speed follows the flow.`;
}
