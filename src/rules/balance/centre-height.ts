import { momentOfHeight, totalMass } from '../../build/quantities.ts';
import { centreHeightMethod } from '../../catalogue/methods.ts';
import { judge, withoutLimit } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { aboveGround } from '../above-ground.ts';
import { balanceCaution, stabilityCaution } from '../cautions.ts';
import { floorHeight, placed } from '../needs.ts';
import { greatestRatio } from '../states.ts';
import { heightSteps } from '../working/centre.ts';

const text: RuleText = {
  id: 'balance.centre-height',
  topic: 'balance',
  title: 'height of the centre of mass',
  why: 'The higher it is, the more the van rolls and the sooner it tips; makers of base vehicles give a greatest height.',
  formula: 'h = Σ m·z / Σ m; z height of a mass above ground, that of the floor included, in m',
  sources: [
    centreHeightMethod,
    { title: "The limit is the base vehicle maker's, as the plan gives it", provenance: 'read' },
  ],
  cautions: [balanceCaution, stabilityCaution],
  fix: 'Move heavy things down, most of all those that hang under the roof.',
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { placed, floorHeight },
  check: ({ build, facts }) => {
    const bodies = aboveGround(facts.placed.bodies, facts.floorHeight);
    const worst = greatestRatio(build, bodies, momentOfHeight, totalMass);
    const subject = {
      rule: text,
      subject: 'centre of mass',
      path: ['van', 'centre_limits', 'height'],
      kind: 'length' as const,
      measured: worst,
      state: worst.state,
      reason: say`The centre of mass gets as high as ${length(worst.value)} above the ground.`,
    };
    const limit = build.vehicle.centreHeightLimitM;
    if (limit === undefined) return { findings: [withoutLimit(subject, 'van.centre_limits.height')] };
    return {
      findings: [
        judge({
          ...subject,
          limit,
          sense: 'at most',
          broken: 'fail',
          remedy: (shortfall) =>
            say`Bring heavy things ${length(shortfall)} lower on average: tanks and batteries to the floor, light things to the roof.`,
        }),
      ],
    };
  },
  work: ({ build, facts }) => {
    const bodies = aboveGround(facts.placed.bodies, facts.floorHeight);
    const { filling } = greatestRatio(build, bodies, momentOfHeight, totalMass);
    return heightSteps(bodies, filling, facts.floorHeight.value);
  },
});
