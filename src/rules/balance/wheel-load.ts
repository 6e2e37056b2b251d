import type { Build } from '../../build/build.ts';
import { type Functional, minus, sumOf } from '../../build/functional.ts';
import { frontAxle, rearAxle, rightWheel } from '../../build/quantities.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge, meaningless } from '../../engine/judge.ts';
import { mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type RuleText } from '../../engine/rule.ts';
import { balanceCaution } from '../cautions.ts';
import { type Placed, placed, tracks } from '../needs.ts';
import { moveSomething } from '../remedies.ts';
import { furthestLean, least } from '../states.ts';

const text: RuleText = {
  id: 'balance.wheel-load',
  topic: 'balance',
  title: 'heavier wheel of an axle',
  why: 'A wheel that carries much more than its fellow pulls to one side under braking, and its tyre is the first to be overloaded.',
  formula:
    'share = P_wheel / R_axle; P_right = R·(½ + y / T), y distance right of the centre line, T track; each mass shares its lateral moment between the axles as it shares its weight',
  sources: [axleLoadMethod],
  cautions: [balanceCaution],
  fix: 'Move heavy things across, away from the wheel that carries more.',
  limits: ['heavier-wheel-share'],
  place: ['van'],
};

export default defineRule({
  ...text,
  override: { limit: 'heavier-wheel-share', kinds: ['share'] },
  needs: { placed, tracks },
  check: ({ build, facts, limit }) => {
    const regional = limit('heavier-wheel-share');
    return {
      findings: [
        heavierWheel('front', facts.tracks.frontM, build, facts.placed, regional),
        heavierWheel('rear', facts.tracks.rearM, build, facts.placed, regional),
      ],
    };
  },
});

function heavierWheel(
  axleName: 'front' | 'rear',
  trackM: number,
  build: Build,
  { bodies, wheelbaseM }: Placed,
  limit: EffectiveLimit,
): Finding {
  const axle: Functional = axleName === 'front' ? frontAxle(wheelbaseM) : rearAxle(wheelbaseM);
  const broken = limit.failing ? 'fail' : 'warn';
  const lightest = least(build, bodies, axle);
  if (lightest.value <= 0) {
    return meaningless(
      {
        rule: text,
        subject: `${axleName} axle`,
        path: ['van', 'track'],
        kind: 'mass',
        measured: lightest,
        state: lightest.state,
        reason: say`The wheels of the ${axleName} axle leave the ground (${mass(lightest.value)}), so there is nothing for them to share.`,
      },
      broken,
      moveSomething(
        build,
        bodies,
        lightest.filling,
        -lightest.value * wheelbaseM,
        axleName === 'front' ? 'forward' : 'rearward',
      ),
    );
  }
  const right = rightWheel(axle, trackM);
  const lean = furthestLean(build, bodies, (body) => minus(right(body), axle(body), 0.5), axle);
  const { isRight } = lean;
  const worst = { ...lean.worst, value: 0.5 + lean.worst.value };
  const side = isRight ? 'right' : 'left';
  const axleKg = sumOf(bodies, axle, worst.filling);
  return judge({
    rule: text,
    subject: `${axleName} axle, ${side} wheel`,
    path: ['van', 'track'],
    kind: 'share',
    measured: worst,
    limit: limit.value,
    sense: 'at most',
    broken,
    state: worst.state,
    reason: say`The ${side} wheel carries up to ${share(worst.value)} of the ${axleName} axle's load, ${mass(worst.value * axleKg)} of ${mass(axleKg)}.`,
    // A mass m moved across by d takes s·m·d/T off the wheel; s is the part of it that rests on this axle.
    remedy: (shortfall) =>
      moveSomething(
        build,
        bodies,
        worst.filling,
        shortfall * axleKg * trackM,
        isRight ? 'to the left' : 'to the right',
        { where: `over the ${axleName} axle`, part: (body) => axle(body).perKg },
      ),
    sources: limit.citations,
    cautions: limit.cautions,
  });
}
