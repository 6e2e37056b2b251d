import type { NamedState } from '../../build/build.ts';
import { evaluate } from '../../build/functional.ts';
import { frontAxle, momentRightOfCentre, rearAxle, totalMass } from '../../build/quantities.ts';
import { describe } from '../../build/worst-state.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, type Need, type RuleText } from '../../engine/rule.ts';
import { balanceCaution, vehicleLawCaution } from '../cautions.ts';
import { frontLimit, maxMass, placed, rearLimit } from '../needs.ts';

const text: RuleText = {
  id: 'balance.load-states',
  topic: 'balance',
  title: "the plan's own load states",
  why: 'The worst state decides, but the states one really drives in show how much of it is theory.',
  formula: 'M, R_f and R_r in each state of `load_states`; the one closest to its limit is judged',
  sources: [axleLoadMethod],
  cautions: [vehicleLawCaution, balanceCaution],
  place: ['van'],
};

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
      sidewaysM: evaluate(bodies, momentRightOfCentre, state.filling).value,
    }));
    const findings = inState.map(({ state, total, front, rear }): Finding => {
      const candidates = [
        { what: 'the whole van', measured: total, limit: facts.maxMass.value },
        { what: 'the front axle', measured: front, limit: facts.frontLimit.value },
        { what: 'the rear axle', measured: rear, limit: facts.rearLimit.value },
      ];
      const closest = candidates.reduce((a, b) =>
        b.measured.value / b.limit > a.measured.value / a.limit ? b : a,
      );
      return judge({
        rule: text,
        subject: state.name,
        path: state.path,
        kind: 'mass',
        measured: closest.measured,
        limit: closest.limit,
        sense: 'at most',
        broken: 'fail',
        state: describe(build, state.filling),
        reason: say`In this state ${closest.what} is closest to its limit: ${mass(closest.measured.value)} of ${mass(closest.limit)}.`,
        remedy: (shortfall) => say`Travel with ${mass(Math.ceil(shortfall))} less in this state.`,
      });
    });
    const sideways = (valueM: number) =>
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
            sideways(sidewaysM / total.value),
          ]),
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
});
