import { sumOf } from '../../build/functional.ts';
import { momentRightOfCentre, totalMass } from '../../build/quantities.ts';
import { judge, withoutLimit } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { balanceCaution } from '../cautions.ts';
import { placed, sideways } from '../needs.ts';
import { moveSomething } from '../remedies.ts';
import { furthestLean } from '../states.ts';
import { centreSteps } from '../working/centre.ts';

const text: RuleText = {
  id: 'balance.lateral-centre',
  topic: 'balance',
  title: 'centre of mass off the centre line',
  why: 'Makers of base vehicles say how far off the middle the centre of mass may be, for braking and for the stability control.',
  formula: 'y = Σ m·y / Σ m, in m right of the centre line',
  sources: [{ title: "The limit is the base vehicle maker's, as the plan gives it", provenance: 'read' }],
  cautions: [balanceCaution],
  fix: 'Move heavy things towards the other side of the van.',
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { placed, sideways },
  check: ({ build, facts }) => {
    const { bodies } = facts.placed;
    const { isRight, worst } = furthestLean(build, bodies, momentRightOfCentre, totalMass);
    const side = isRight ? 'right' : 'left';
    const subject = {
      rule: text,
      subject: `centre of mass, ${side}`,
      path: ['van', 'centre_limits', 'sideways'],
      kind: 'length' as const,
      measured: worst,
      state: worst.state,
      reason: say`The centre of mass gets as far as ${length(worst.value)} to the ${side} of the centre line.`,
    };
    const limit = build.vehicle.centreSidewaysLimitM;
    if (limit === undefined) return { findings: [withoutLimit(subject, 'van.centre_limits.sideways')] };
    const totalKg = sumOf(bodies, totalMass, worst.filling);
    return {
      findings: [
        judge({
          ...subject,
          limit,
          sense: 'at most',
          broken: 'warn',
          remedy: (shortfall) =>
            moveSomething(
              build,
              bodies,
              worst.filling,
              shortfall * totalKg,
              isRight ? 'to the left' : 'to the right',
            ),
        }),
      ],
    };
  },
  work: ({ build, facts }) => {
    const { bodies } = facts.placed;
    const { isRight, worst } = furthestLean(build, bodies, momentRightOfCentre, totalMass);
    const [side, other] = isRight ? ['right', 'left'] : ['left', 'right'];
    return centreSteps({
      what: `how far the centre of mass is to the ${side}`,
      letter: 'y',
      from: say`to the ${side} of the centre line (to the ${other} with a minus)`,
      ofWhat: 'everything in this state',
      bodies,
      filling: worst.filling,
      placeM: ({ position }) => (isRight ? position.y.valueM : -position.y.valueM),
      paths: [
        ['van', 'load_bay', 'width'],
        ['van', 'track'],
      ],
    });
  },
});
