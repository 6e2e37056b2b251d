import { frontAxle } from '../../build/quantities.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import { judge } from '../../engine/judge.ts';
import { mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { balanceCaution, vehicleLawCaution } from '../cautions.ts';
import { codes, maxMass, placed } from '../needs.ts';
import { moveSomething } from '../remedies.ts';
import { least } from '../states.ts';
import { axleStep } from '../working/axle.ts';

const text: RuleText = {
  id: 'balance.steered-share',
  topic: 'balance',
  title: 'weight on the steered axle',
  why: 'Wheels that carry too little neither steer nor brake on a wet road, and a heavy tail lifts them though no axle is overloaded.',
  formula:
    'least R_f ≥ share × M_max (the plated maximum, not the weighed mass), whatever is then put over the rear axle until that is at its limit: load over the rear axle does not change R_f',
  sources: [axleLoadMethod],
  cautions: [vehicleLawCaution, balanceCaution],
  fix: 'Move heavy things forward, or carry less behind the rear axle.',
  limits: ['steered-axle-share'],
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { codes, maxMass, placed },
  check: ({ build, facts, limit }) => {
    const { wheelbaseM, bodies } = facts.placed;
    const regional = limit('steered-axle-share');
    const maxKg = facts.maxMass.value;
    const worst = least(build, bodies, frontAxle(wheelbaseM));
    const neededKg = regional.value * maxKg;
    return {
      findings: [
        judge({
          rule: text,
          subject: 'front axle at its lightest',
          path: ['van', 'max_mass'],
          kind: 'share',
          measured: { ...worst, value: worst.value / maxKg, standard: worst.standard / maxKg },
          limit: regional.value,
          sense: 'at least',
          broken: regional.failing ? 'fail' : 'warn',
          state: worst.state,
          reason: say`The front axle can get as light as ${mass(worst.value)}, ${share(worst.value / maxKg)} of the permissible ${mass(maxKg)}; with the rear axle at its limit it has to carry ${mass(neededKg)}.`,
          remedy: (shortfall) =>
            moveSomething(build, bodies, worst.filling, shortfall * maxKg * wheelbaseM, 'forward'),
          sources: regional.citations,
          cautions: regional.cautions,
        }),
      ],
    };
  },
  work: ({ build, facts }) => {
    const { wheelbaseM, bodies } = facts.placed;
    const maxKg = facts.maxMass.value;
    const { value, filling } = least(build, bodies, frontAxle(wheelbaseM));
    const lightest = axleStep('front', wheelbaseM, bodies, filling);
    return [
      { ...lightest, what: `${lightest.what}, in the state in which it carries least` },
      {
        what: 'That as a share of the plated maximum: R_f / M_max',
        sum: say`${mass(value)} / ${mass(maxKg)}`,
        result: share(value / maxKg),
        paths: [['van', 'max_mass']],
      },
    ];
  },
});
