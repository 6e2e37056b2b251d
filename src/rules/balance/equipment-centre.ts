import type { PlacedBody } from '../../build/body.ts';
import { sumOf } from '../../build/functional.ts';
import { momentBehindFrontAxle, totalMass } from '../../build/quantities.ts';
import { centreInWheelbaseRule } from '../../catalogue/methods.ts';
import { judge } from '../../engine/judge.ts';
import { factor, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { balanceCaution } from '../cautions.ts';
import { type Placed, placed } from '../needs.ts';
import { moveSomething } from '../remedies.ts';
import { greatestRatio } from '../states.ts';
import { centreSteps } from '../working/centre.ts';

const text: RuleText = {
  id: 'balance.equipment-centre',
  topic: 'balance',
  title: 'centre of what was built in',
  why: 'Equipment whose centre lies behind the rear axle lifts the front wheels with every kilogram; makers ask for it to stay within the wheelbase.',
  formula: 'x = Σ m·x / Σ m over everything but the van, its fuel and its people; x ≤ L',
  sources: [centreInWheelbaseRule],
  cautions: [balanceCaution],
  fix: 'Move heavy equipment forward of the rear axle, the heaviest first.',
  limits: ['equipment-centre-rearmost'],
  place: ['van'],
};

const notEquipment = ['van', 'fuel', 'person'];

const equipment: Need<readonly PlacedBody[]> = (build) => {
  const found = placed(build);
  if (!found.ok) return found;
  const bodies = found.value.bodies.filter(
    ({ sort, origin, massKg }) => !notEquipment.includes(sort) && origin !== 'assumed' && massKg > 0,
  );
  return bodies.length > 0 ? given(bodies) : missing('fixtures');
};

export default defineRule({
  ...text,
  needs: { placed, equipment },
  check: ({ build, facts, limit }) => {
    const { wheelbaseM }: Placed = facts.placed;
    const regional = limit('equipment-centre-rearmost');
    const worst = greatestRatio(build, facts.equipment, momentBehindFrontAxle, totalMass);
    const limitM = regional.value * wheelbaseM;
    // A place is not a load: how much of the wheelbase it uses says nothing, so it is not ranked with the others.
    const { utilisation: _, ...finding } = judge({
      rule: text,
      subject: 'equipment',
      path: ['van', 'wheelbase'],
      kind: 'length',
      measured: worst,
      limit: limitM,
      sense: 'at most',
      broken: regional.failing ? 'fail' : 'warn',
      state: worst.state,
      reason: say`What was built in and packed has its centre up to ${length(worst.value)} behind the front axle; the rear axle is at ${length(wheelbaseM)}.`,
      remedy: (shortfall) =>
        moveSomething(
          build,
          facts.equipment,
          worst.filling,
          shortfall * sumOf(facts.equipment, totalMass, worst.filling),
          'forward',
        ),
      sources: regional.citations,
      cautions: regional.cautions,
    });
    return { findings: [finding] };
  },
  work: ({ build, facts, limit }) => {
    const { wheelbaseM } = facts.placed;
    const { value } = limit('equipment-centre-rearmost');
    const { filling } = greatestRatio(build, facts.equipment, momentBehindFrontAxle, totalMass);
    const [whole, ...centre] = centreSteps({
      what: 'the place of its centre behind the front axle',
      letter: 'x',
      from: say`behind the front axle (ahead of it with a minus)`,
      ofWhat: 'what was built in and packed, in this state',
      bodies: facts.equipment,
      filling,
      placeM: ({ position }) => position.x.valueM,
      paths: [['van', 'load_bay', 'behind_front_axle']],
    });
    return [
      ...(whole ? [whole] : []),
      {
        what: 'How far back its centre may be: no further than the rear axle',
        sum: say`${factor(value)} · ${length(wheelbaseM)} of wheelbase`,
        result: length(value * wheelbaseM),
        paths: [['van', 'wheelbase']],
      },
      ...centre,
    ];
  },
});
