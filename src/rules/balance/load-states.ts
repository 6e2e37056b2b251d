import type { Build, NamedState } from '../../build/build.ts';
import { evaluate, sumOf } from '../../build/functional.ts';
import { frontAxle, momentRightOfCentre, rearAxle, totalMass } from '../../build/quantities.ts';
import { describe } from '../../build/worst-state.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import { type Finding, type Step, verdicts } from '../../engine/finding.ts';
import { judge, type Uncertain } from '../../engine/judge.ts';
import { length, mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, type Need, type RuleText } from '../../engine/rule.ts';
import type { Quantity } from '../../plan/quantity.ts';
import { balanceCaution, vehicleLawCaution } from '../cautions.ts';
import { frontLimit, maxMass, type Placed, placed, rearLimit, sideways } from '../needs.ts';
import { nearestMillimetre } from '../whole-millimetres.ts';
import { axleStep } from '../working/axle.ts';
import { massOfEverything } from '../working/parts.ts';

const text: RuleText = {
  id: 'balance.load-states',
  topic: 'balance',
  title: "the plan's own load states",
  why: 'The worst state decides, but the states one really drives in show how much of it is theory.',
  formula: 'M, R_f and R_r in each state of `load_states`; the one closest to its limit is judged',
  sources: [axleLoadMethod],
  cautions: [vehicleLawCaution, balanceCaution],
  fix: 'In the state that comes out worst carry less, or move what it loads.',
  lifeSafety: true,
  place: ['van'],
};

/** A limit within its tolerance comes before one that is used further but surely kept. */
function isWorse(a: Finding, b: Finding): boolean {
  const [first, second] = [verdicts.indexOf(a.verdict), verdicts.indexOf(b.verdict)];
  return first === second ? (a.utilisation ?? 0) > (b.utilisation ?? 0) : first < second;
}

/** A plan need not have any. */
const states: Need<readonly NamedState[]> = (build) => given(build.states);

export default defineRule({
  ...text,
  needs: { states, placed, maxMass, frontLimit, rearLimit },
  check: ({ build, facts }) => {
    if (facts.states.length === 0) return { findings: [] };
    const { bodies } = facts.placed;
    const inState = facts.states.map((state) => ({
      ...figuresIn(state, facts.placed),
      sidewaysM: sumOf(bodies, momentRightOfCentre, state.filling),
    }));
    const findings = inState.map((figures) => closestOf(judgedIn(figures, facts, build)).finding);
    const sidesKnown = sideways(build).ok;
    const side = (valueM: number) =>
      valueM >= 0
        ? say`${length(nearestMillimetre(valueM))} right`
        : say`${length(nearestMillimetre(-valueM))} left`;
    return {
      findings,
      notes: [
        {
          rule: text.id,
          topic: text.topic,
          title: 'Load states of the plan',
          detailOnly: false,
          columns: ['state', 'total', 'front axle', 'rear axle', 'centre'],
          rows: inState.map(({ state, total, front, rear, sidewaysM }) => [
            say`${state.name}`,
            say`${mass(total.value)}`,
            say`${mass(front.value)}`,
            say`${mass(rear.value)}`,
            sidesKnown ? side(sidewaysM / total.value) : say`unknown without the track`,
          ]),
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
  work: ({ build, facts }, finding) => {
    const state = facts.states.find(({ name }) => name === finding.subject);
    if (!state) return undefined;
    const judged = judgedIn(figuresIn(state, facts.placed), facts, build);
    const closest = closestOf(judged);
    return [comparedStep(judged, closest), stepOf(closest.what, facts.placed, state)];
  },
});

interface Figures {
  readonly state: NamedState;
  readonly total: Uncertain;
  readonly front: Uncertain;
  readonly rear: Uncertain;
}

const figuresIn = (state: NamedState, { bodies, wheelbaseM }: Placed): Figures => ({
  state,
  total: evaluate(bodies, totalMass, state.filling),
  front: evaluate(bodies, frontAxle(wheelbaseM), state.filling),
  rear: evaluate(bodies, rearAxle(wheelbaseM), state.filling),
});

interface Limits {
  readonly maxMass: Quantity;
  readonly frontLimit: Quantity;
  readonly rearLimit: Quantity;
}

interface Judged {
  readonly what: 'the whole van' | 'the front axle' | 'the rear axle';
  readonly measuredKg: number;
  readonly limitKg: number;
  readonly finding: Finding;
}

type AllJudged = readonly [Judged, ...Judged[]];

/** The three loads of a state against their limits. */
function judgedIn({ state, total, front, rear }: Figures, limits: Limits, build: Build): AllJudged {
  const judged = (what: Judged['what'], measured: Uncertain, { value: limitKg }: Quantity): Judged => ({
    what,
    measuredKg: measured.value,
    limitKg,
    finding: judge({
      rule: text,
      subject: state.name,
      path: state.path,
      kind: 'mass',
      measured,
      limit: limitKg,
      sense: 'at most',
      broken: 'fail',
      state: describe(build, state.filling),
      reason: say`In this state ${what} is closest to its limit: ${mass(measured.value)} of ${mass(limitKg)}.`,
      remedy: (shortfall) => say`Take ${mass(Math.ceil(shortfall))} off ${what} in this state.`,
    }),
  });
  return [
    judged('the whole van', total, limits.maxMass),
    judged('the front axle', front, limits.frontLimit),
    judged('the rear axle', rear, limits.rearLimit),
  ];
}

const closestOf = (judged: AllJudged): Judged =>
  judged.reduce((a, b) => (isWorse(b.finding, a.finding) ? b : a));

function comparedStep(judged: AllJudged, { what }: Judged): Step {
  const used = judged.map(
    (each) =>
      say`${each.what} ${mass(each.measuredKg)} / ${mass(each.limitKg)} = ${share(each.measuredKg / each.limitKg)}`,
  );
  return {
    what: `Which of the three loads is closest to its limit: ${what}`,
    sum: used.reduce((all, each) => say`${all}; ${each}`),
    paths: [
      ['van', 'max_mass'],
      ['van', 'axle_limits'],
    ],
  };
}

function stepOf(what: Judged['what'], { bodies, wheelbaseM }: Placed, { filling, path }: NamedState): Step {
  if (what === 'the whole van')
    return {
      ...massOfEverything(bodies, filling, 'Everything aboard in this state: M = Σ m'),
      paths: [path],
    };
  const step = axleStep(what === 'the front axle' ? 'front' : 'rear', wheelbaseM, bodies, filling);
  return { ...step, what: `${step.what}, in this state`, paths: [...(step.paths ?? []), path] };
}
