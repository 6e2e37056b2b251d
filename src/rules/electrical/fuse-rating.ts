import type { Circuit, CircuitFuse, Electrical } from '../../build/electrical.ts';
import { greatestFuse, smallestFuse } from '../../calc/electrical/protection.ts';
import {
  type FuseFamily,
  fuseAgainstAmpacity,
  fuseMargin,
  smallGaugeCaps,
} from '../../catalogue/electrical/fuses.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { current, factor, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { type CircuitChoice, choiceFor, choiceInWords, choiceMethod } from '../circuit-choice.ts';
import { type Ampacity, type CircuitFigures, figuresOf, theBattery } from '../circuits.ts';
import { closestOf, fusesBefore, greatestV, nearestLimit, notKnown, withCircuits } from '../fused.ts';
import { observed } from '../observed.ts';
import { joined } from '../routed.ts';
import { bearsSteps, carriesStep, pushedStep } from '../working/current.ts';

const text: RuleText = {
  id: 'electrical.fuse-rating',
  topic: 'electrical',
  title: 'fuses for cables and loads',
  why: 'A fuse that is too large lets its cable glow before it opens; one that is too small opens in everyday use.',
  formula:
    'm · I_b ≤ I_n ≤ I_z; I_b design current, I_n rating of the fuse, I_z derated ampacity of each conductor behind it up to the next fuse, A; m = 1.25',
  sources: [...fuseMargin.citations, choiceMethod],
  cautions: [electricalCaution],
  fix: 'Take the fuse that lies between the current of the load and what the cable bears; where there is none, take a thicker cable.',
  place: ['electrical', 'circuits'],
};

export default defineRule({
  ...text,
  needs: { electrical: withCircuits },
  check: ({ facts: { electrical } }) => {
    const looked = [...figuresOf(electrical).values()].map((figures) => look(electrical, figures));
    const unknown = looked.filter(({ lacks }) => lacks.length > 0);
    // What is already wrong is said now; what is right so far waits for what is missing.
    const findings = looked.flatMap(({ finding, lacks }) =>
      finding && (finding.verdict !== 'pass' || lacks.length === 0) ? [finding] : [],
    );
    return {
      findings: [
        ...findings.filter(({ verdict }) => verdict !== 'pass'),
        ...closestOf(
          findings.filter(({ verdict }) => verdict === 'pass'),
          (howMany) => say`${howMany} more circuits have at least as much to spare.`,
        ),
        ...notKnown(
          text,
          unknown.map(({ circuit }) => circuit),
          unknown.flatMap(({ lacks }) => lacks),
          say`What a fuse must carry and what its cable bears follow from the load, the battery and the conductor (its size must be in the tables).`,
        ),
      ],
    };
  },
  work: ({ facts: { electrical } }, finding) => {
    const figures = figuresOf(electrical).get(finding.subject);
    return finding.measured && figures ? stepsOf(electrical, figures, finding) : undefined;
  },
});

/** Against the load, against the conductor, or against what US rules let behind a small gauge; then the fuse. */
function stepsOf(given: Electrical, figures: CircuitFigures, { limit }: Finding): readonly Step[] {
  const { circuit } = figures;
  const fuse = circuit.fuse ?? fusesBefore(figures).at(-1)?.fuse;
  if (!fuse) return [];
  const rating: Step = {
    what: circuit.fuse
      ? `The rating of the fuse of ${circuit.name}: I_n`
      : `The rating of the fuse before ${circuit.name}, which has none of its own: I_n`,
    result: current(fuse.ratingA),
    paths: [[...fuse.path, 'rating']],
  };
  if (limit?.sense === 'at least') return [...loadSteps(given, figures), rating];
  const cap = circuit.fuse && capOf(circuit);
  if (cap && cap.mostA === limit?.measure.value)
    return [
      {
        what: `What US rules let behind ${cap.gauge} gauge, whatever it bears`,
        result: current(cap.mostA),
        paths: [[...circuit.path, 'conductor']],
      },
      rating,
    ];
  return [...bearsSteps(figures), rating];
}

/** What flows through the fuse, and what it should have for that. */
function loadSteps(given: Electrical, figures: CircuitFigures): readonly Step[] {
  const { circuit, designA = 0 } = figures;
  const { currentA = 0 } = flowOf(given, figures);
  return [
    circuit.feeds && exceeds(currentA, designA)
      ? pushedStep(`What the chargers push through ${circuit.name}: I_b`, chargingBehind(given, circuit))
      : carriesStep(given, figures),
    {
      what: 'What the fuse should have for hours on end: m · I_b',
      sum: say`${factor(fuseMargin.value)} · ${current(currentA)}`,
      result: current(currentA * fuseMargin.value),
    },
  ];
}

const behindOf = (given: Electrical, { name }: Circuit): readonly CircuitFigures[] =>
  [...figuresOf(given).values()].filter(
    ({ circuit, chain }) => !circuit.feeds && chain?.some((each) => each.name === name),
  );

const chargingBehind = (given: Electrical, circuit: Circuit): readonly CircuitFigures[] =>
  behindOf(given, circuit).filter((each) => each.circuit.charges);

interface Looked {
  readonly circuit: Circuit;
  readonly finding?: Finding;
  /** Keys without which something about its fuse stays open. */
  readonly lacks: readonly string[];
}

function look(given: Electrical, figures: CircuitFigures): Looked {
  const { circuit } = figures;
  return circuit.fuse ? fused(given, figures, circuit.fuse) : unfused(given, figures);
}

// --- Without a fuse of its own ---

function unfused(given: Electrical, figures: CircuitFigures): Looked {
  const { circuit, ampacity } = figures;
  const before = fusesBefore(figures).at(-1);
  if (circuit.from === theBattery) {
    const reason = say`The cable of ${circuit.name} leaves the battery without a fuse: a short circuit in it meets all that the battery can give.`;
    return { circuit, lacks: [], finding: unprotected(given, figures, 'fail', reason) };
  }
  if (!before) {
    const reason = say`${circuit.name} has no fuse, and neither has what feeds it.`;
    return { circuit, lacks: [], finding: unprotected(given, figures, 'warn', reason) };
  }
  if (!ampacity) return { circuit, lacks: conductorOf(circuit) };
  const { ratingA, family } = before.fuse;
  const finding = againstAmpacity(given, {
    circuit,
    path: [...circuit.path, 'fuse'],
    ratingA,
    family,
    ampacity,
    reason: say`${circuit.name} has no fuse of its own; the ${current(ratingA)} one of ${before.circuit.name} before it protects a cable of ${current(ratingA)} or more, and this one bears ${current(ampacity.deratedA)}${whereItLies(ampacity)}.`,
    remedy: () => fuseToFit(given, figures),
  });
  return { circuit, lacks: [], finding };
}

const unprotected = (
  given: Electrical,
  figures: CircuitFigures,
  verdict: 'fail' | 'warn',
  reason: Phrase,
): Finding =>
  observed(text, {
    verdict,
    subject: figures.circuit.name,
    path: [...figures.circuit.path, 'fuse'],
    reason,
    remedy: fuseToFit(given, figures),
    sources: fuseAgainstAmpacity[0].citations,
  });

/** For a circuit that has no fuse: the rating, where it can be said, and the place. */
function fuseToFit(given: Electrical, figures: CircuitFigures): Phrase {
  const { circuit, ampacity, designA } = figures;
  const at = circuit.from === theBattery ? 'at the battery' : `at ${circuit.from}`;
  const choice = choiceFor(given, circuit);
  if (choice) return say`Fit a fuse ${at}. ${choiceInWords(choice)}`;
  const bounds = [
    ...(designA === undefined ? [] : [say`at least ${current(designA * fuseMargin.value)}`]),
    ...(ampacity ? [say`at most ${current(ampacity.deratedA)}`] : []),
  ];
  return bounds.length === 0
    ? say`Fit a fuse ${at}, no larger than what its thinnest cable bears; with its \`conductor\` and \`load\` the plan can say how large.`
    : say`Fit a fuse ${at} of ${joined(bounds, ' and ')}.`;
}

// --- With a fuse ---

function fused(given: Electrical, figures: CircuitFigures, fuse: CircuitFuse): Looked {
  const { circuit, ampacity } = figures;
  const flow = flowOf(given, figures);
  const remedy = () => remedyFor(given, figures, fuse, flow.currentA);
  const judged = [
    ...(ampacity ? [forCable(given, figures, fuse, ampacity, remedy)] : []),
    ...forSmallGauge(figures, fuse, remedy),
    ...(flow.currentA === undefined ? [] : [forLoad(figures, fuse, flow.currentA, remedy)]),
    ...nonStandard(circuit, fuse),
  ];
  return {
    circuit,
    ...withFinding(worstOf(judged)),
    lacks: [...(ampacity ? [] : conductorOf(circuit)), ...flow.lacks],
  };
}

interface FlowThroughFuse {
  readonly currentA?: number;
  readonly lacks: readonly string[];
}

/** What flows through a fuse at most: to all that hangs on it, or the other way from all chargers there at once. */
function flowOf(given: Electrical, { circuit, designA, missing }: CircuitFigures): FlowThroughFuse {
  if (!circuit.feeds) {
    // Neither the length nor the size of its conductor is needed for it.
    const own = circuit.path.join('.');
    return designA === undefined
      ? { lacks: missing.filter((key) => key !== `${own}.conductor` && key !== `${own}.length`) }
      : { currentA: designA, lacks: [] };
  }
  const behind = behindOf(given, circuit);
  if (behind.length === 0) return { lacks: ['electrical.circuits'] };
  const unknown = behind.filter((each) => each.designA === undefined);
  if (unknown.length > 0) return { lacks: unknown.flatMap((each) => [...flowOf(given, each).lacks]) };
  const chargingA = chargingBehind(given, circuit).reduce((sum, each) => sum + (each.designA ?? 0), 0);
  return { currentA: Math.max(designA ?? 0, chargingA), lacks: [] };
}

const withFinding = (finding: Finding | undefined) => (finding ? { finding } : {});

/** One finding for one fuse: the worst, with what else is wrong; or the one that is nearest to its limit. */
function worstOf(judged: readonly Finding[]): Finding | undefined {
  const broken = judged.filter(({ verdict }) => verdict !== 'pass');
  const [worst] = [...broken.filter(({ verdict }) => verdict === 'fail'), ...broken];
  if (!worst) return nearestLimit(judged);
  const others = broken.filter((each) => each !== worst);
  return {
    ...worst,
    reason: joined([worst.reason, ...others.map(({ reason }) => reason)], ' '),
    sources: [...new Set([worst, ...others].flatMap(({ sources }) => sources))],
    cautions: [...new Set([worst, ...others].flatMap(({ cautions }) => cautions))],
  };
}

interface Protection {
  readonly circuit: Circuit;
  readonly path: PlanPath;
  readonly ratingA: number;
  readonly family: FuseFamily;
  readonly ampacity: Ampacity;
  readonly reason: Phrase;
  readonly remedy: () => Phrase;
}

/** The rating of a fuse against what a conductor behind it bears. */
function againstAmpacity(given: Electrical, protection: Protection): Finding {
  const { circuit, path, ratingA, ampacity, reason, remedy } = protection;
  const practice = practiceFor(given, protection);
  const isAllowedBySome = practice !== undefined && exceeds(ratingA, ampacity.deratedA);
  return judge({
    rule: text,
    subject: circuit.name,
    path,
    kind: 'current',
    measured: { value: ratingA, standard: 0 },
    limit: ampacity.deratedA,
    sense: 'at most',
    broken: practice ? 'warn' : 'fail',
    reason: isAllowedBySome ? say`${reason} That is more than it bears for good; ${practice.words}.` : reason,
    remedy,
    sources: [...ampacity.listed.citations, ...(practice ?? strict).citations],
  });
}

const [strict, belowFiftyVolts, nextStandard] = fuseAgainstAmpacity;

/** What some sources allow above the ampacity at this voltage, if it is kept. */
function practiceFor(given: Electrical, { ratingA, family, ampacity: { deratedA } }: Protection) {
  const isBelow = greatestV(given) < belowFiftyVolts.belowV;
  const { share: most, citations } = isBelow ? belowFiftyVolts : nextStandard;
  if (exceeds(ratingA, most * deratedA)) return undefined;
  // A rating between the ampacity and this one is nearer, and then this is not the next.
  if (!isBelow && family.ratingsA.some((each) => !exceeds(deratedA, each) && exceeds(ratingA, each)))
    return undefined;
  return {
    citations,
    words: isBelow
      ? say`rules for boats below ${belowFiftyVolts.belowV.toString()} V let it be up to ${share(most)}`
      : say`US boat law lets it be the next standard rating above, up to ${share(most)}`,
  };
}

function forCable(
  given: Electrical,
  { circuit }: CircuitFigures,
  { path, ratingA, family }: CircuitFuse,
  ampacity: Ampacity,
  remedy: () => Phrase,
): Finding {
  return againstAmpacity(given, {
    circuit,
    path: [...path, 'rating'],
    ratingA,
    family,
    ampacity,
    reason: say`The fuse of ${circuit.name} is ${current(ratingA)}, and its cable bears ${current(ampacity.deratedA)}${whereItLies(ampacity)}.`,
    remedy,
  });
}

/** What is left of the tabulated current, if not all. */
const whereItLies = ({ deratedA, listed }: Ampacity): Phrase =>
  exceeds(listed.currentA, deratedA)
    ? say` where it lies (${current(listed.currentA)} in free air at ${listed.ambientC.toString()} °C)`
    : say``;

/** The most that US rules let behind a small gauge; SAE has less copper still. */
const capOf = ({ wire }: Circuit) =>
  wire.size === undefined || wire.size.system === 'mm²'
    ? undefined
    : smallGaugeCaps.find(({ gauge }) => gauge === wire.size?.size);

function forSmallGauge(
  { circuit }: CircuitFigures,
  { path, ratingA }: CircuitFuse,
  remedy: () => Phrase,
): readonly Finding[] {
  const cap = capOf(circuit);
  if (!cap || !circuit.wire.size) return [];
  return [
    judge({
      rule: text,
      subject: circuit.name,
      path: [...path, 'rating'],
      kind: 'current',
      measured: { value: ratingA, standard: 0 },
      limit: cap.mostA,
      sense: 'at most',
      broken: 'warn',
      reason: say`US rules let no more than ${current(cap.mostA)} protect ${cap.gauge} ${circuit.wire.size.system}, whatever it bears; the fuse of ${circuit.name} is ${current(ratingA)}.`,
      remedy,
      sources: cap.citations,
    }),
  ];
}

function forLoad(
  { circuit }: CircuitFigures,
  { path, ratingA }: CircuitFuse,
  designA: number,
  remedy: () => Phrase,
): Finding {
  return judge({
    rule: text,
    subject: circuit.name,
    path: [...path, 'rating'],
    kind: 'current',
    measured: { value: ratingA, standard: 0 },
    limit: designA * fuseMargin.value,
    sense: 'at least',
    broken: 'warn',
    reason: exceeds(designA, ratingA)
      ? say`${circuit.name} draws up to ${current(designA)}: a fuse of ${current(ratingA)} opens in everyday use.`
      : say`${circuit.name} draws up to ${current(designA)}, and its fuse is ${current(ratingA)}; for hours on end a fuse should have ${current(designA * fuseMargin.value)}.`,
    remedy,
  });
}

function nonStandard(circuit: Circuit, { path, ratingA, family }: CircuitFuse): readonly Finding[] {
  if (family.ratingsA.some((each) => !exceeds(each, ratingA) && !exceeds(ratingA, each))) return [];
  const near = [
    family.ratingsA.findLast((each) => each < ratingA),
    family.ratingsA.find((each) => each > ratingA),
  ];
  const sold = near.flatMap((each) => (each === undefined ? [] : [[current(each)]]));
  return [
    observed(text, {
      verdict: 'warn',
      subject: circuit.name,
      path: [...path, 'rating'],
      reason: say`Fuses of type \`${family.id}\` do not usually come with ${current(ratingA)}, as ${circuit.name} has it.`,
      remedy: say`The nearest standard: ${joined(sold, ' and ')}. Look at what is printed on the fuse.`,
      sources: family.citations,
    }),
  ];
}

/** A fuse that suits both load and cable, if there is one; otherwise the cable must change too. */
function remedyFor(
  given: Electrical,
  { circuit, ampacity }: CircuitFigures,
  fuse: CircuitFuse,
  designA: number | undefined,
): Phrase {
  const { ratingsA } = fuse.family;
  const bearsA = Math.min(ampacity?.deratedA ?? 0, capOf(circuit)?.mostA ?? Number.POSITIVE_INFINITY);
  const mostA = bearsA > 0 ? greatestFuse(ratingsA, bearsA) : undefined;
  const wantedA = (designA ?? 0) * fuseMargin.value;
  const leastA = wantedA > 0 ? smallestFuse(ratingsA, designA ?? 0, fuseMargin.value) : ratingsA[0];
  const found = choiceFor(given, circuit);
  // A choice is for what is drawn; where chargers push more the other way it is none.
  const choice = found && !exceeds(wantedA, found.fuseA) ? found : undefined;
  if (leastA === undefined || mostA === undefined || leastA > mostA)
    return choice
      ? choiceInWords(choice)
      : say`Take a cable that bears ${current(leastA ?? Math.max(wantedA, fuse.ratingA))} where it lies, with a fuse of as much.`;
  const fits =
    wantedA === 0
      ? say`Fit a fuse of ${current(mostA)} at most.`
      : leastA < mostA
        ? say`Fit a fuse of ${current(leastA)} to ${current(mostA)}.`
        : say`Fit a fuse of ${current(leastA)}.`;
  return choice && needsOtherCable(choice)
    ? say`${fits} But for all checks of this circuit together: ${choiceInWords(choice)}`
    : fits;
}

/** A cable that is too thin for another check; a thicker one than needed is no fault of a fuse. */
const needsOtherCable = ({ circuit, conductor }: CircuitChoice): boolean =>
  circuit.wire.conductor === undefined || exceeds(conductor.areaMm2, circuit.wire.conductor.areaMm2);

// --- What the plan lacks ---

const conductorOf = ({ path }: Circuit): readonly string[] => [[...path, 'conductor'].join('.')];
