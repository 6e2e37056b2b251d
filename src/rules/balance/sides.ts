import { type Functional, sumOf } from '../../build/functional.ts';
import { frontAxle, rearAxle, rightWheel, totalMass } from '../../build/quantities.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import { judge } from '../../engine/judge.ts';
import { length, mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { balanceCaution } from '../cautions.ts';
import { placed, type Tracks, tracks } from '../needs.ts';
import { moveSomething } from '../remedies.ts';
import { furthestLean } from '../states.ts';
import { massOfEverything, sumOfBodies } from '../working/parts.ts';

const text: RuleText = {
  id: 'balance.sides',
  topic: 'balance',
  title: 'left and right',
  why: 'A van that leans to one side wears the springs and tyres of that side and rolls more readily in a bend.',
  formula: 'difference = |P_right − P_left| / M over all wheels; P_right = Σ m·(½ + y / T)',
  sources: [axleLoadMethod],
  cautions: [balanceCaution],
  fix: 'Move heavy things from the heavier side to the other: each kilogram moved counts twice.',
  limits: ['side-difference'],
  place: ['van'],
};

export default defineRule({
  ...text,
  override: { limit: 'side-difference', kinds: ['share'] },
  needs: { placed, tracks },
  check: ({ build, facts, limit }) => {
    const { wheelbaseM, bodies } = facts.placed;
    const regional = limit('side-difference');
    const leaning = rightLessLeft(wheelbaseM, facts.tracks);
    const { isRight, worst } = furthestLean(build, bodies, leaning, totalMass);
    const heavy = isRight ? 'right' : 'left';
    const totalKg = sumOf(bodies, totalMass, worst.filling);
    const trackM = Math.max(facts.tracks.frontM, facts.tracks.rearM);
    return {
      findings: [
        judge({
          rule: text,
          subject: `${heavy} side`,
          path: ['van', 'track'],
          kind: 'share',
          measured: worst,
          limit: regional.value,
          sense: 'at most',
          broken: regional.failing ? 'fail' : 'warn',
          state: worst.state,
          reason: say`The ${heavy} side weighs up to ${mass(worst.value * totalKg)} more than the other.`,
          // A mass m moved across by d takes 2·m·d/T off the difference; T is that of the axle it rests on, and the
          // wider one is the safe one to count with.
          remedy: (shortfall) =>
            moveSomething(
              build,
              bodies,
              worst.filling,
              (shortfall * totalKg * trackM) / 2,
              isRight ? 'to the left' : 'to the right',
              { part: (body) => ((leaning(body).perKgM.y ?? 0) * trackM) / 2 },
            ),
          sources: regional.citations,
          cautions: regional.cautions,
        }),
      ],
    };
  },
  work: ({ build, facts }) => {
    const { wheelbaseM, bodies } = facts.placed;
    const leaning = rightLessLeft(wheelbaseM, facts.tracks);
    const { isRight, worst } = furthestLean(build, bodies, leaning, totalMass);
    const sign = isRight ? 1 : -1;
    const heavy = isRight ? 'right' : 'left';
    const difference = sumOfBodies({
      what: `How much more of every mass the ${heavy} wheels carry than the others: P_${heavy} − P_${isRight ? 'left' : 'right'}`,
      sum: say`m·(2·(½ + y / T) − 1) with y right of the centre line; T = ${length(facts.tracks.frontM)} in front and ${length(facts.tracks.rearM)} behind, each for its axle's part of the mass`,
      bodies,
      filling: worst.filling,
      columns: [
        { heading: 'y', of: ({ position }) => length(position.y.valueM) },
        { heading: 'x', of: ({ position }) => length(position.x.valueM) },
      ],
      adds: [`more ${heavy}`, (body) => sign * leaning(body).perKg],
      paths: [
        ['van', 'track'],
        ['van', 'wheelbase'],
      ],
    });
    const differenceKg = difference.result?.value ?? 0;
    const totalKg = sumOf(bodies, totalMass, worst.filling);
    return [
      difference,
      massOfEverything(bodies, worst.filling, 'The mass of everything in this state: M = Σ m'),
      {
        what: 'The difference as a share of the mass',
        sum: say`${mass(differenceKg)} / ${mass(totalKg)}`,
        result: share(differenceKg / totalKg),
      },
    ];
  },
});

/** What a kilogram adds to the right side less what it adds to the left. */
function rightLessLeft(wheelbaseM: number, { frontM, rearM }: Tracks): Functional {
  const front = rightWheel(frontAxle(wheelbaseM), frontM);
  const rear = rightWheel(rearAxle(wheelbaseM), rearM);
  return (body) => {
    const [f, r] = [front(body), rear(body)];
    return {
      perKg: 2 * (f.perKg + r.perKg) - 1,
      perKgM: {
        x: 2 * ((f.perKgM.x ?? 0) + (r.perKgM.x ?? 0)),
        y: 2 * ((f.perKgM.y ?? 0) + (r.perKgM.y ?? 0)),
      },
    };
  };
}
