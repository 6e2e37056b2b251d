import type { NamedState } from '../../build/build.ts';
import { evaluate, sumOf } from '../../build/functional.ts';
import { frontAxle, momentRightOfCentre, rearAxle, totalMass } from '../../build/quantities.ts';
import { describe } from '../../build/worst-state.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import { type Finding, verdicts } from '../../engine/finding.ts';
import { judge, type Uncertain } from '../../engine/judge.ts';
import { length, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, type Need, type RuleText } from '../../engine/rule.ts';
import { balanceCaution, vehicleLawCaution } from '../cautions.ts';
import { frontLimit, maxMass, placed, rearLimit, sideways } from '../needs.ts';

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
    const { wheelbaseM, bodies } = facts.placed;
    const inState = facts.states.map((state) => ({
      state,
      total: evaluate(bodies, totalMass, state.filling),
      front: evaluate(bodies, frontAxle(wheelbaseM), state.filling),
      rear: evaluate(bodies, rearAxle(wheelbaseM), state.filling),
      sidewaysM: sumOf(bodies, momentRightOfCentre, state.filling),
    }));
    const findings = inState.map(({ state, total, front, rear }): Finding => {
      const judged = (what: string, measured: Uncertain, limit: number): Finding =>
        judge({
          rule: text,
          subject: state.name,
          path: state.path,
          kind: 'mass',
          measured,
          limit,
          sense: 'at most',
          broken: 'fail',
          state: describe(build, state.filling),
          reason: say`In this state ${what} is closest to its limit: ${mass(measured.value)} of ${mass(limit)}.`,
          remedy: (shortfall) => say`Take ${mass(Math.ceil(shortfall))} off ${what} in this state.`,
        });
      return [
        judged('the whole van', total, facts.maxMass.value),
        judged('the front axle', front, facts.frontLimit.value),
        judged('the rear axle', rear, facts.rearLimit.value),
      ].reduce((a, b) => (isWorse(b, a) ? b : a));
    });
    const sidesKnown = sideways(build).ok;
    const side = (valueM: number) =>
      valueM >= 0 ? say`${length(valueM)} right` : say`${length(-valueM)} left`;
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
});
