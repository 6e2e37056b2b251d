import type { Circuit, Electrical } from '../../build/electrical.ts';
import { copperTemperatureFactor } from '../../calc/electrical/resistance.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { type DropLimit, permittedDropV } from '../../catalogue/electrical/drop-limits.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import {
  current,
  factor,
  length,
  power,
  resistance,
  resistancePerMetre,
  share,
  temperatureC,
  voltage,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { choiceFor, choiceInWords, choiceMethod } from '../circuit-choice.ts';
import { dropLimitOf } from '../circuit-limits.ts';
import { type CircuitFigures, figuresOf } from '../circuits.ts';
import { sizeText } from '../conductor-text.ts';
import { closestOf, notKnown, withCircuits } from '../fused.ts';
import { observed } from '../observed.ts';

/** Up to so many times what is permitted a loss is a warning; the limits are guides. */
const WARNS_UP_TO = 2;

const method: Citation = {
  title:
    "Ohm's and Kirchhoff's laws over the tree of conductors, with loads that hold their power solved exactly",
  provenance: 'computed',
  caution: 'Contacts, fuses and switches lose more, and are not counted.',
};

const text: RuleText = {
  id: 'electrical.voltage-drop',
  topic: 'electrical',
  title: 'voltage lost in cables',
  why: 'What a thin or long cable loses warms the cable and is missing at the load: pumps slow down, fridges and heaters switch off early.',
  formula:
    'ΔU = Σ R·I over every segment from the battery; R = r₂₀·(1 + 0.00393·(T − 20))·(l_out + l_back) in Ω, T what the insulation bears, °C; I = P / U at the load, at the lowest battery voltage with all loads on',
  sources: [
    method,
    {
      title: `Up to ${WARNS_UP_TO} times the limit of a guide warns, more fails`,
      provenance: 'own choice',
    },
  ],
  cautions: [electricalCaution],
  fix: 'Take a thicker conductor, a shorter way, or one nearer to the battery.',
  place: ['electrical', 'circuits'],
};

export default defineRule({
  ...text,
  needs: { electrical: withCircuits },
  check: ({ facts }) => {
    const { electrical } = facts;
    const figures = [...figuresOf(electrical).values()];
    const failing = figures.find(({ circuit, failsAt }) => failsAt === circuit.name);
    const judged: Finding[] = [];
    const unknown: Circuit[] = [];
    for (const each of figures) {
      const { circuit, dropV, loadsKnown } = each;
      if (circuit.feeds || (failing && !circuit.charges)) continue;
      const limit = dropLimitOf(electrical, circuit);
      const finding = dropV === undefined || !limit ? undefined : lossOf(electrical, each, dropV, limit);
      // More load only loses more: what is broken already stays so, what is kept may not.
      if (finding && (loadsKnown || finding.verdict !== 'pass')) judged.push(finding);
      else unknown.push(circuit);
    }
    const passes = judged.filter(({ verdict }) => verdict === 'pass');
    return {
      findings: [
        ...(failing ? [notSupplied(electrical, failing)] : []),
        ...judged.filter(({ verdict }) => verdict !== 'pass'),
        ...closestOf(passes, (more) => say`${more} more lose less of what they may.`),
        ...notKnown(
          text,
          unknown,
          figures.flatMap(({ missing }) => missing),
          say`The loss from the battery to the end needs conductor, length and load of every circuit on the way, and the battery.`,
        ),
      ],
    };
  },
  work: ({ facts: { electrical } }, finding) => {
    const figures = figuresOf(electrical).get(finding.subject);
    return finding.measured && figures ? stepsOf(electrical, figures) : undefined;
  },
});

interface Feeder {
  readonly circuit: Circuit;
  readonly lostV: number;
}

/** The circuit on the way that loses most, the judged one left out. */
function worstFeeder(
  electrical: Electrical,
  { circuit, chain = [], designA = 0 }: CircuitFigures,
): Feeder | undefined {
  const figures = figuresOf(electrical);
  return chain
    .filter(({ name }) => name !== circuit.name)
    .map((feeder): Feeder => {
      const { ownDropV = 0, loopOhm = 0 } = figures.get(feeder.name) ?? {};
      return { circuit: feeder, lostV: circuit.charges ? designA * loopOhm : ownDropV };
    })
    .reduce<Feeder | undefined>(
      (worst, each) => (worst && worst.lostV >= each.lostV ? worst : each),
      undefined,
    );
}

function lossOf(electrical: Electrical, figures: CircuitFigures, dropV: number, limit: DropLimit): Finding {
  const { circuit } = figures;
  const { nominalV } = electrical;
  const permittedV = permittedDropV(limit, nominalV);
  return judge({
    rule: text,
    subject: circuit.name,
    path: circuit.path,
    kind: 'voltage',
    measured: { value: dropV, standard: 0 },
    limit: permittedV,
    sense: 'at most',
    broken: exceeds(dropV, WARNS_UP_TO * permittedV) ? 'fail' : 'warn',
    reason: say`${working(electrical, figures, dropV)} The guide for ${limit.practice} allows ${share(permittedV / nominalV)} (${limit.of}).`,
    sources: [...limit.citations, ...(circuit.wire.conductor?.citations ?? []), choiceMethod],
    remedy: () => remedyOf(electrical, figures, dropV, permittedV),
  });
}

/** Length, resistance, current and volts, as one would check them on paper. */
function working(electrical: Electrical, figures: CircuitFigures, dropV: number): Phrase {
  const { circuit, designA = 0, loopOhm = 0, ownDropV = 0 } = figures;
  const { outM = 0, backM = 0, size, conductor, insulationC } = circuit.wire;
  const cable = size ? sizeText(size, conductor) : say`its conductor`;
  const own = say`${length(outM)} out and ${length(backM)} back of ${cable} have ${resistance(loopOhm)} at ${temperatureC(insulationC)} and lose ${voltage(ownDropV)} at ${current(designA)}`;
  const part = say`${share(dropV / electrical.nominalV)} of ${voltage(electrical.nominalV)}`;
  const feeder = worstFeeder(electrical, figures);
  if (!feeder) return say`${own}: ${part}.`;
  return say`${own}. With the ${voltage(dropV - ownDropV)} lost on the way to it, most of it in ${feeder.circuit.name} (${voltage(feeder.lostV)}), ${circuit.to} misses ${voltage(dropV)}: ${part}.`;
}

function remedyOf(
  electrical: Electrical,
  figures: CircuitFigures,
  dropV: number,
  permittedV: number,
): Phrase {
  const { circuit, ownDropV = 0 } = figures;
  const choice = choiceFor(electrical, circuit);
  if (choice) return choiceInWords(choice);
  const leftV = permittedV - (dropV - ownDropV);
  const feeder = worstFeeder(electrical, figures);
  if (leftV <= 0 && feeder)
    return say`No conductor of its own helps: ${voltage(dropV - ownDropV)} are lost before it. Give ${feeder.circuit.name}, which loses ${voltage(feeder.lostV)}, a bigger conductor, or take a way of its own from the battery.`;
  const { outM = 0, backM = 0 } = circuit.wire;
  const shorter = leftV / ownDropV;
  return say`No standard size of this kind of conductor keeps the drop and suits a fuse where it lies. Bring it to ${length(outM * shorter)} out and ${length(backM * shorter)} back, or share the load between two circuits.`;
}

function notSupplied(electrical: Electrical, { circuit }: CircuitFigures): Finding {
  const choice = choiceFor(electrical, circuit);
  return observed(text, {
    verdict: 'fail',
    subject: circuit.name,
    path: circuit.path,
    reason: say`${circuit.name} cannot bring what ${circuit.to} asks for at any voltage: with all loads on they pull their own supply down from ${voltage(electrical.bank?.lowestV ?? electrical.nominalV)}, and nothing can be said of the other circuits before that is mended.`,
    remedy: choice
      ? choiceInWords(choice)
      : say`No single standard conductor mends it: at least one of the circuits on its way is far too thin or too long for ${voltage(electrical.nominalV)}. Give each the size its fuse allows, or bring the loads nearer to the battery.`,
  });
}

/** Current, then resistance and loss of every circuit on the way, then their sum. */
function stepsOf(electrical: Electrical, figures: CircuitFigures): readonly Step[] {
  const { circuit, chain = [], designA = 0, dropV = 0 } = figures;
  const all = figuresOf(electrical);
  const legs = chain.map((each) => {
    const { loopOhm = 0, ownDropV = 0 } = all.get(each.name) ?? {};
    // A charger pushes its own current through all of them.
    const lostV = circuit.charges ? designA * loopOhm : ownDropV;
    return { each, loopOhm, lostV };
  });
  return [
    currentStep(electrical, figures, dropV),
    ...legs.flatMap(({ each, loopOhm, lostV }) => legSteps(each, loopOhm, lostV)),
    {
      what: 'Lost from the battery to the end: ΔU = Σ R·I',
      result: voltage(legs.reduce((sum, { lostV }) => sum + lostV, 0)),
      parts: {
        columns: ['resistance', 'lost'],
        rows: legs.map(({ each, loopOhm, lostV }) => ({
          name: each.name,
          path: each.path,
          origin: 'computed',
          values: [resistance(loopOhm)],
          adds: voltage(lostV),
        })),
      },
    },
  ];
}

/** What flows in it, at the voltage that is left for its load. */
function currentStep(electrical: Electrical, { circuit, designA = 0 }: CircuitFigures, dropV: number): Step {
  const { load, path } = circuit;
  const lowestV = electrical.bank?.lowestV ?? electrical.nominalV;
  const common = {
    what: `The current in ${circuit.name}`,
    result: current(designA),
    paths: [[...path, 'load']],
  };
  if (!load || circuit.charges) return { ...common, sum: say`the rated current of the charger` };
  return 'powerW' in load
    ? {
        ...common,
        sum: say`I = P / U = ${power(load.powerW)} / (${voltage(lowestV)} at the lowest − ${voltage(dropV)} lost on the way)`,
      }
    : { ...common, sum: say`as the plan says, whatever the voltage` };
}

function legSteps({ name, path, wire, feeds }: Circuit, loopOhm: number, lostV: number): readonly Step[] {
  const { outM = 0, backM = 0, conductor, insulationC, lengthFrom } = wire;
  const knownAtC = conductor?.resistanceAtC ?? 20;
  const paths = [...(lengthFrom === 'route' ? [] : [[...path, 'length']]), [...path, 'conductor']];
  return [
    {
      what: `The resistance of ${name}, out and back`,
      sum: say`(${length(outM)} + ${length(backM)}${lengthFrom === 'route' ? ', by its route' : ''}) · ${resistancePerMetre(conductor?.resistanceOhmPerM ?? 0)} at ${temperatureC(knownAtC)} · ${factor(copperTemperatureFactor(insulationC, knownAtC))} at the ${temperatureC(insulationC)} that its insulation bears`,
      result: resistance(loopOhm),
      paths,
    },
    {
      what: `What ${name} loses: R·I`,
      sum: say`${resistance(loopOhm)} · ${current(loopOhm > 0 ? lostV / loopOhm : 0)}${feeds ? ', all that hangs on it and is on at once' : ''}`,
      result: voltage(lostV),
    },
  ];
}
