import type { Circuit, Electrical, Inverter, MainsCircuit } from '../../build/electrical.ts';
import { type PointLoad, type Segment, solveDropTree } from '../../calc/electrical/drop-tree.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { conductorsOf } from '../../catalogue/electrical/conductors.ts';
import { inverterEfficiency } from '../../catalogue/electrical/inverter-guidance.ts';
import type { Finding, Part, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { power, share, voltage } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution, mainsCaution } from '../cautions.ts';
import { bank } from '../chargers.ts';
import { electrical, figuresOf, hotOhmPerM, theBattery } from '../circuits.ts';
import { sizeText } from '../conductor-text.ts';
import { shareBehind, steadyA } from '../drawn.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { cannotBringSteps, type Leg, leftSteps } from '../working/inverter.ts';

/** What must be left of the nominal voltage at the inverter while something starts. */
const leftAtSurge = 0.85;
const leftAtSurgeChoice: Citation = {
  title: `At least ${leftAtSurge * 100} % of the nominal voltage at the inverter during a surge`,
  provenance: 'own choice',
  caution: 'Inverters switch off at a low voltage of their own: its manual says at which.',
};

const text: RuleText = {
  id: 'electrical.inverter',
  topic: 'electrical',
  title: 'the inverter and its feed',
  why: 'The inverter draws more than all else together; with thin cables it drops out as soon as a motor starts.',
  formula:
    'U = U_parent − R · Σ I along the way from the battery, I = P / (η · U), solved; U at the surge ≥ 0.85 · U_nominal; Σ P of the mains loads ≤ P of the inverter; V, Ω, A, W',
  sources: [
    { title: 'Kirchhoff’s laws for loads of constant power, solved exactly', provenance: 'computed' },
    ...inverterEfficiency.citations,
    leftAtSurgeChoice,
  ],
  cautions: [
    electricalCaution,
    mainsCaution,
    'What the battery itself and the terminals lose at a surge comes on top.',
  ],
  fix: 'Give the inverter a thicker or shorter feed, or a smaller load.',
  lifeSafety: true,
  place: ['electrical', 'inverter'],
};

const inverter: Need<Inverter> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  return found.value.inverter ? given(found.value.inverter) : missing('electrical.inverter');
};

export default defineRule({
  ...text,
  needs: { inverter, bank, electrical },
  check: ({ facts }) => ({
    findings: [
      ...supplied(facts.electrical, facts.inverter, facts.bank.lowestV),
      ...loaded(facts.electrical, facts.inverter),
    ],
  }),
  work: ({ facts }, { subject, measured }) => {
    if (!measured) return undefined;
    return subject === loadsSubject
      ? loadsSteps(facts.electrical, facts.inverter)
      : feedSteps(facts.electrical, facts.inverter, facts.bank.lowestV);
  },
});

const loadsSubject = 'loads of the inverter';

function feedSteps(plan: Electrical, unit: Inverter, lowestV: number): readonly Step[] | undefined {
  const { circuit, chain } = figuresOf(plan).get(unit.circuit) ?? {};
  if (!circuit || !chain) return undefined;
  const way = wayOf(plan, unit, circuit, chain, lowestV);
  const supply = { plan, unit, lowestV, leastV: leftAtSurge * plan.nominalV, leastShare: leftAtSurge };
  if (way.at(unit.powerW, 0) === undefined) return cannotBringSteps(supply, way.legs, unit.powerW);
  const surge = way.at(unit.surgeW, 0);
  if (!surge) return cannotBringSteps(supply, way.legs, unit.surgeW);
  const legs = way.legs.map((leg) => ({ ...leg, currentA: surge.currentA(leg.circuit) }));
  return leftSteps(supply, legs, surge.leftV);
}

function loadsSteps({ mains }: Electrical, unit: Inverter): readonly Step[] {
  const rows = mains.filter(isFed).map(
    ({ name, path, loadW }): Part => ({
      name: loadW === undefined ? `${name} (not known)` : name,
      path: [...path, 'load'],
      origin: 'typed',
      values: [],
      adds: power(loadW ?? 0),
    }),
  );
  return [
    {
      what: 'What the inverter gives',
      result: power(unit.powerW),
      paths: [[...unit.path, 'power']],
    },
    {
      what: 'What the mains circuits take that it feeds, all at once: Σ P',
      result: power(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
      parts: { columns: ['takes'], rows },
    },
  ];
}

// --- From the battery to the inverter ---

function supplied(plan: Electrical, unit: Inverter, lowestV: number): readonly Finding[] {
  const figures = figuresOf(plan);
  const feed = figures.get(unit.circuit);
  const { circuit, chain } = feed ?? {};
  const lacking = chain
    ? chain.flatMap(({ name }) => (figures.get(name)?.missing ?? []).filter((key) => !key.endsWith('.load')))
    : ['electrical.circuits.NAME.to'];
  if (
    !circuit ||
    !chain ||
    lacking.length > 0 ||
    chain.some(({ name }) => figures.get(name)?.loopOhm === undefined)
  )
    return [notKnown(unit, lacking)];
  const way = wayOf(plan, unit, circuit, chain, lowestV);
  const steadyV = way.leftV(unit.powerW, 0);
  const leastV = leftAtSurge * plan.nominalV;
  if (steadyV === undefined) return [cannotBring(unit, circuit, way, unit.powerW, leastV)];
  const surgeV = way.leftV(unit.surgeW, 0);
  if (surgeV === undefined) return [cannotBring(unit, circuit, way, unit.surgeW, leastV)];
  return [leftAt(unit, circuit, way, surgeV, leastV)];
}

interface Way {
  readonly lowestV: number;
  readonly ownOhm: number;
  readonly legs: readonly Omit<Leg, 'currentA'>[];
  /** At the inverter's terminals for a power it gives, with so many ohms less in its own circuit; undefined where it cannot be brought. */
  readonly leftV: (outputW: number, lessOhm: number) => number | undefined;
  /** The same, with what flows in each circuit of the way. */
  readonly at: (
    outputW: number,
    lessOhm: number,
  ) => { readonly leftV: number; readonly currentA: (circuit: Circuit) => number } | undefined;
}

/** The way from the battery, with what else is on at once along it. */
function wayOf(
  plan: Electrical,
  { efficiency }: Inverter,
  circuit: Circuit,
  chain: readonly Circuit[],
  lowestV: number,
): Way {
  const figures = figuresOf(plan);
  const startOf = ({ from }: Circuit): string => (from === theBattery ? theBattery : `point ${from}`);
  const endOf = (each: Circuit): string => (each.feeds ? `point ${each.to}` : `end ${each.name}`);
  const others = plan.circuits.flatMap((other): PointLoad[] => {
    const otherChain = figures.get(other.name)?.chain;
    if (other.feeds || other.charges || other.name === circuit.name || !otherChain) return [];
    const leaves = chain.filter((each) => otherChain.includes(each)).at(-1);
    const currentA = steadyA(plan, other);
    if (!leaves || currentA === undefined) return [];
    return [{ at: endOf(leaves), currentA: currentA * shareBehind(plan, other, otherChain) }];
  });
  const ohmOf = ({ name }: Circuit): number => figures.get(name)?.loopOhm ?? 0;
  const at: Way['at'] = (outputW, lessOhm) => {
    const segments = chain.map(
      (each): Segment => ({
        id: each.name,
        from: startOf(each),
        to: endOf(each),
        loopOhm: Math.max(0, ohmOf(each) - (each.name === circuit.name ? lessOhm : 0)),
      }),
    );
    const loads = [...others, { at: endOf(circuit), powerW: outputW / efficiency }];
    const solved = solveDropTree(theBattery, lowestV, segments, loads);
    const leftV = solved.delivers ? solved.points.get(endOf(circuit))?.voltageV : undefined;
    if (!solved.delivers || leftV === undefined) return undefined;
    return { leftV, currentA: ({ name }) => solved.segments.get(name)?.currentA ?? 0 };
  };
  return {
    lowestV,
    ownOhm: ohmOf(circuit),
    legs: chain.map((each) => ({ circuit: each, loopOhm: ohmOf(each) })),
    leftV: (outputW, lessOhm) => at(outputW, lessOhm)?.leftV,
    at,
  };
}

function cannotBring(unit: Inverter, circuit: Circuit, way: Way, outputW: number, leastV: number): Finding {
  const when = outputW > unit.powerW ? 'at its surge' : 'at full power';
  return observed(text, {
    verdict: 'fail',
    subject: 'inverter feed',
    path: circuit.path,
    measured: power(outputW / unit.efficiency),
    reason: say`The inverter takes ${power(outputW / unit.efficiency)} ${when} for the ${power(outputW)} it gives; from ${voltage(way.lowestV)} the cables of ${circuit.name} cannot bring that at any current.`,
    remedy:
      thicker(circuit, way, (lessOhm) => way.leftV(unit.surgeW, lessOhm), leastV) ??
      thicker(circuit, way, (lessOhm) => way.leftV(unit.surgeW, lessOhm), 0) ??
      withoutCable(circuit),
  });
}

function leftAt(unit: Inverter, circuit: Circuit, way: Way, surgeV: number, leastV: number): Finding {
  const takesW = unit.surgeW / unit.efficiency;
  const what =
    unit.surgeW > unit.powerW
      ? say`At its surge of ${power(unit.surgeW)}`
      : say`At its ${power(unit.powerW)} (the plan gives no surge)`;
  return judge({
    rule: text,
    subject: 'inverter feed',
    path: circuit.path,
    kind: 'voltage',
    measured: { value: surgeV, standard: 0 },
    limit: leastV,
    sense: 'at least',
    broken: 'warn',
    reason: say`${what} it takes ${power(takesW)}${unit.efficiencyAssumed ? say` (if it gives ${share(unit.efficiency)} of what it takes)` : []}, and of ${voltage(way.lowestV)} at the battery ${voltage(surgeV)} are left at its terminals.`,
    remedy: () =>
      thicker(circuit, way, (lessOhm) => way.leftV(unit.surgeW, lessOhm), leastV) ?? withoutCable(circuit),
  });
}

const withoutCable = ({ name }: Circuit): Phrase =>
  say`No cable of ${name} alone does it: take a smaller inverter or a higher system voltage, or thicker cables in the circuits that feed ${name}.`;

/** The smallest conductor of the same make that leaves enough, or how near the inverter must come. */
function thicker(
  { wire, name }: Circuit,
  way: Way,
  leftV: (lessOhm: number) => number | undefined,
  leastV: number,
): Phrase | undefined {
  const { conductor, outM = 0, backM = 0 } = wire;
  const loopM = outM + backM;
  const enough = conductor
    ? conductorsOf(conductor.system, conductor.build, conductor.finish).find((row) => {
        if (row.areaMm2 <= conductor.areaMm2) return false;
        const ohm = (hotOhmPerM({ ...wire, conductor: row }) ?? 0) * loopM;
        return (leftV(way.ownOhm - ohm) ?? -1) >= leastV;
      })
    : undefined;
  const nearer = shorter(way, loopM, leftV, leastV);
  if (enough)
    return say`Take ${sizeText(enough, enough)} for ${name}${nearer === undefined ? [] : say`, or bring the inverter nearer, so that out and back are ${share(nearer)} of the way now`}.`;
  if (nearer !== undefined)
    return say`Bring the inverter so near to the battery that out and back of ${name} are ${share(nearer)} of the way now; no size of this cable does it alone.`;
  return undefined;
}

/** The part of the present length at which enough is left, rounded down to whole per cents. */
function shorter(
  { ownOhm }: Way,
  loopM: number,
  leftV: (lessOhm: number) => number | undefined,
  leastV: number,
): number | undefined {
  if (loopM === 0) return undefined;
  for (let percent = 99; percent >= 10; percent -= 1)
    if ((leftV(ownOhm * (1 - percent / 100)) ?? -1) >= leastV) return percent / 100;
  return undefined;
}

const notKnown = (unit: Inverter, keys: readonly string[]): Finding => {
  const known = keys.length > 0 ? [...new Set(keys)] : [`electrical.circuits.${unit.circuit}.conductor`];
  return observed(text, {
    verdict: 'not checked',
    subject: 'inverter feed',
    path: ['electrical', 'circuits', unit.circuit],
    reason: say`What is left at the inverter needs the conductor and the length of every circuit from the battery to it.`,
    remedy: say`Add ${known.map((key) => `\`${key}\``).join(', ')}.`,
    missing: known,
  });
};

// --- What hangs on it ---

const isFed = ({ from }: MainsCircuit): boolean => from !== 'shore';

function loaded({ mains }: Electrical, unit: Inverter): readonly Finding[] {
  const fed = mains.filter(isFed);
  const summed = fed.reduce((sum, { loadW }) => sum + (loadW ?? 0), 0);
  const unknown = fed.filter(({ loadW }) => loadW === undefined);
  const keys =
    fed.length === 0
      ? ['electrical.mains_circuits.NAME.load']
      : unknown.map(({ path }) => [...path, 'load'].join('.'));
  if (keys.length > 0 && summed <= unit.powerW)
    return [
      observed(text, {
        verdict: 'not checked',
        subject: loadsSubject,
        path: ['electrical', 'mains_circuits'],
        reason:
          fed.length === 0
            ? say`The inverter gives ${power(unit.powerW)}; the plan has no mains circuit from it.`
            : say`The inverter gives ${power(unit.powerW)}; what ${namesOf(unknown.map(({ name }) => name))} takes is not known.`,
        remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
        missing: keys,
      }),
    ];
  return [
    judge({
      rule: text,
      subject: loadsSubject,
      path: [...unit.path, 'power'],
      kind: 'power',
      measured: { value: summed, standard: 0 },
      limit: unit.powerW,
      sense: 'at most',
      broken: 'warn',
      reason: say`The mains circuits that it feeds (${namesOf(fed.map(({ name }) => name))}) take up to ${power(summed)} together${unknown.length > 0 ? ', and more that is not known' : ''}.`,
      remedy: (shortfallW) =>
        say`Use ${power(shortfallW)} less at once, put a circuit \`from: shore\`, or take an inverter of ${power(summed)} with battery and cables to match.`,
    }),
  ];
}
