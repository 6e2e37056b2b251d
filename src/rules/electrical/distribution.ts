import type { DistributionPoint, Electrical } from '../../build/electrical.ts';
import { greatestFuse } from '../../calc/electrical/protection.ts';
import { fuseMargin } from '../../catalogue/electrical/fuses.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { count, current } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { type CircuitFigures, electrical, figuresOf } from '../circuits.ts';
import { type Drawn, drawnThrough } from '../drawn.ts';
import { foldPasses } from '../fold-passes.ts';
import { type FusedCircuit, fusesBefore } from '../fused.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { drawnStep, inverterTakes, pushedStep } from '../working/current.ts';

const text: RuleText = {
  id: 'electrical.distribution',
  topic: 'electrical',
  title: 'busbars, fuse boxes and isolators',
  why: 'A busbar, fuse box or switch that carries more than it is made for gets hot at its screws, and nothing opens.',
  formula:
    'Σ a_k · I_k ≤ I_r and Σ I_c ≤ I_r; I_k current of each load, A, a_k its part and that of the points between that are on at once, I_c current of each charger, A, I_r rating, A; the fuse before it ≤ I_r',
  sources: [
    { title: 'Currents into one node add up (Kirchhoff); the rating is its maker’s', provenance: 'computed' },
    {
      title: 'The fuse before a point is no larger than the point’s rating',
      provenance: 'common practice',
      caution: 'No source.',
    },
  ],
  cautions: [electricalCaution],
  fix: 'Fit a part with a higher rating, or hang less on it.',
  place: ['electrical', 'distribution'],
};

const withPoints: Need<Electrical> = (build) => {
  const found = electrical(build);
  if (!found.ok || found.value.distribution.length > 0) return found;
  return missing('electrical.distribution');
};

export default defineRule({
  ...text,
  needs: { electrical: withPoints },
  check: ({ facts }) => {
    const points = facts.electrical.distribution.map((point) => lookAt(facts.electrical, point));
    const findings = points.flatMap(({ finding }) => (finding ? [finding] : []));
    return { findings: [...foldPasses(findings, 'point'), ...notKnown(points)] };
  },
  work: ({ facts: { electrical: plan } }, finding) => {
    const point = plan.distribution.find(({ name }) => name === finding.subject);
    return finding.measured && point ? stepsOf(plan, point) : undefined;
  },
});

function stepsOf(plan: Electrical, point: DistributionPoint): readonly Step[] {
  const { name, kind, ratingA = 0 } = point;
  const rating = {
    what: `What the ${kind} is made for`,
    result: current(ratingA),
    paths: [ratingPath(point)],
  };
  const drawn = drawnThrough(plan, name);
  const before = tooLargeBefore(plan, point, ratingA, drawn);
  if (before)
    return [
      rating,
      {
        what: `What the fuse of ${before.circuit.name} before it lets through`,
        result: current(before.fuse.ratingA),
        paths: [[...before.fuse.path, 'rating']],
      },
    ];
  if (drawn.chargingA > drawn.currentA)
    return [rating, pushedStep(`What the chargers push through ${name}: Σ I_c`, chargingThrough(plan, name))];
  return [
    ...inverterTakes(plan, drawn.each),
    rating,
    drawnStep(plan, `What hangs on ${name} draws through it: Σ a·I`, drawn),
  ];
}

/** The chargers whose current passes a point on its way to the battery. */
const chargingThrough = (plan: Electrical, point: string): readonly CircuitFigures[] =>
  [...figuresOf(plan).values()].filter(
    ({ circuit, chain }) => circuit.charges && chain?.some(({ feeds, to }) => feeds && to === point),
  );

interface Looked {
  readonly point: DistributionPoint;
  readonly finding?: Finding;
  readonly missing: readonly string[];
}

function lookAt(plan: Electrical, point: DistributionPoint): Looked {
  const { name, path, ratingA } = point;
  const isFed = [...figuresOf(plan).values()].some(({ circuit, chain }) => circuit.to === name && chain);
  const drawn = drawnThrough(plan, name);
  const keys = [
    ...(ratingA === undefined ? [`${path.join('.')}.rating`] : []),
    ...(isFed ? drawn.missing : ['electrical.circuits.NAME.to']),
  ];
  if (ratingA === undefined || !isFed) return { point, missing: keys };
  const through = Math.max(drawn.currentA, drawn.chargingA);
  if (exceeds(through, ratingA)) return { point, finding: overloaded(point, ratingA, drawn), missing: [] };
  const before = tooLargeBefore(plan, point, ratingA, drawn);
  if (before) return { point, finding: fuseTooLarge(point, ratingA, before, through), missing: keys };
  if (keys.length > 0) return { point, missing: keys };
  return { point, finding: overloaded(point, ratingA, drawn), missing: [] };
}

/** The fuse before a point, where it lets more through than the point is made for, though what flows there is less. */
function tooLargeBefore(
  plan: Electrical,
  { name }: DistributionPoint,
  ratingA: number,
  { currentA, chargingA }: Drawn,
): FusedCircuit | undefined {
  const before = fuseBefore(plan, name);
  return before && exceeds(before.fuse.ratingA, ratingA) && !exceeds(Math.max(currentA, chargingA), ratingA)
    ? before
    : undefined;
}

/** The fuse in the circuit that feeds a point, or the nearest before it. */
function fuseBefore(plan: Electrical, point: string): FusedCircuit | undefined {
  const feeder = [...figuresOf(plan).values()].find(({ circuit }) => circuit.feeds && circuit.to === point);
  if (!feeder) return undefined;
  const { circuit } = feeder;
  return circuit.fuse ? { circuit, fuse: circuit.fuse } : fusesBefore(feeder).at(-1);
}

const ratingPath = ({ path }: DistributionPoint) => [...path, 'rating'];

/** Loads and chargers share a point, but take from each other: the greater of the two goes through it. */
function overloaded(point: DistributionPoint, ratingA: number, drawn: Drawn): Finding {
  const { name, kind } = point;
  const { currentA, chargingA, loads } = drawn;
  const charging = chargingA > currentA;
  const through = charging ? chargingA : currentA;
  const other = charging
    ? loads > 0
      ? say`; its loads take ${current(currentA)}`
      : []
    : chargingA > 0
      ? say`; its chargers bring ${current(chargingA)}`
      : [];
  return judge({
    rule: text,
    subject: name,
    path: ratingPath(point),
    kind: 'current',
    measured: { value: through, standard: 0 },
    limit: ratingA,
    sense: 'at most',
    broken: 'fail',
    reason: say`${charging ? 'Chargers push' : say`What hangs on it draws`} ${current(through)} through the ${kind}${drawn.missing.length > 0 ? ', and more whose current is not known' : ''}${other}.${surgeOf(point, ratingA, drawn)}`,
    remedy: (shortfallA) =>
      say`Fit one that carries ${current(Math.ceil(through - 1e-9))} or more, with cable and fuse to match, or take ${current(shortfallA)} of ${charging ? 'charging current' : 'load'} off it.${charging ? [] : ` If not all of it is ever on together, say so with \`${[...point.path, 'at_once'].join('.')}\`.`}`,
  });
}

/** What a switch bears for seconds is its maker's to say. */
function surgeOf({ kind }: DistributionPoint, ratingA: number, { currentA, surgeA, surgeBy }: Drawn): Phrase {
  if (kind !== 'isolator' || surgeBy === undefined || !exceeds(surgeA, currentA)) return [];
  const start = say` While ${surgeBy} starts it is ${current(surgeA)} for some seconds`;
  return exceeds(surgeA, ratingA)
    ? say`${start}, more than its rating: the isolator needs a maker's short-time rating of at least that.`
    : say`${start}.`;
}

function fuseTooLarge(
  point: DistributionPoint,
  ratingA: number,
  { circuit, fuse }: FusedCircuit,
  through: number,
): Finding {
  const smallerA = greatestFuse(fuse.family.ratingsA, ratingA);
  const fits = smallerA !== undefined && !exceeds(through * fuseMargin.value, smallerA);
  const larger = say`a ${point.kind} rated ${current(fuse.ratingA)} or more`;
  return judge({
    rule: text,
    subject: point.name,
    path: ratingPath(point),
    kind: 'current',
    measured: { value: fuse.ratingA, standard: 0 },
    limit: ratingA,
    sense: 'at most',
    broken: 'warn',
    reason: say`The ${current(fuse.ratingA)} fuse of ${circuit.name} lets more through than the ${kindOf(point)} is made for, before it opens; ${current(through)} of steady current is known so far.`,
    remedy: () =>
      fits
        ? say`Fit a ${current(smallerA)} fuse in ${circuit.name}, or ${larger}.`
        : say`Fit ${larger}; a fuse small enough for this one would not carry its loads.`,
  });
}

const kindOf = ({ kind }: DistributionPoint): string => kind;

/** Everything that cannot be looked at, in one finding. */
function notKnown(points: readonly Looked[]): readonly Finding[] {
  const lacking = points.filter((each) => each.missing.length > 0);
  const [first] = lacking;
  if (!first) return [];
  const keys = [...new Set(lacking.flatMap((each) => each.missing))];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: namesOf(lacking.map(({ point }) => point.name)),
      path: first.point.path,
      reason: say`${count(lacking.length)} ${lacking.length === 1 ? 'point' : 'points'} of the distribution ${lacking.length === 1 ? 'lacks' : 'lack'} a rating, a circuit that feeds it, or the current of what hangs on it.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    }),
  ];
}
