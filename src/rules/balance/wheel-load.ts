import type { Build } from '../../build/build.ts';
import { type Functional, massIn, minus, sumOf } from '../../build/functional.ts';
import { frontAxle, rearAxle, rightWheel } from '../../build/quantities.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge, meaningless } from '../../engine/judge.ts';
import { length, mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type RuleText } from '../../engine/rule.ts';
import { balanceCaution } from '../cautions.ts';
import { type Placed, placed, tracks } from '../needs.ts';
import { moveSomething } from '../remedies.ts';
import { furthestLean, type Leaning, least } from '../states.ts';
import { axleStep } from '../working/axle.ts';
import { sumOfBodies } from '../working/parts.ts';

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
  work: ({ build, facts }, finding) => {
    const axleName = finding.subject.startsWith('front') ? 'front' : 'rear';
    const trackM = axleName === 'front' ? facts.tracks.frontM : facts.tracks.rearM;
    const { bodies, wheelbaseM } = facts.placed;
    const lightest = least(build, bodies, axleOf(axleName, wheelbaseM));
    if (lightest.value > 0) return wheelSteps(axleName, trackM, build, facts.placed);
    const lifted = axleStep(axleName, wheelbaseM, bodies, lightest.filling);
    return [{ ...lifted, what: `${lifted.what}, in the state in which it carries least` }];
  },
});

const axleOf = (axleName: 'front' | 'rear', wheelbaseM: number): Functional =>
  axleName === 'front' ? frontAxle(wheelbaseM) : rearAxle(wheelbaseM);

/** How far the load of an axle leans, as what the right wheel has beyond a half of it. */
function leanOf(axle: Functional, trackM: number, build: Build, { bodies }: Placed): Leaning {
  const right = rightWheel(axle, trackM);
  return furthestLean(build, bodies, (body) => minus(right(body), axle(body), 0.5), axle);
}

function wheelSteps(
  axleName: 'front' | 'rear',
  trackM: number,
  build: Build,
  placedThings: Placed,
): readonly Step[] {
  const { bodies, wheelbaseM } = placedThings;
  const axle = axleOf(axleName, wheelbaseM);
  const { isRight, worst } = leanOf(axle, trackM, build, placedThings);
  const [side, sign] = isRight ? ['right', '+'] : ['left', '−'];
  const right = rightWheel(axle, trackM);
  const onWheel = (body: Parameters<Functional>[0]): number =>
    isRight ? right(body).perKg : axle(body).perKg - right(body).perKg;
  const onAxle = axleName === 'front' ? 'm·(1 − x / L)' : 'm·x / L';
  const wheel = sumOfBodies({
    what: `What every mass puts on the ${side} wheel: P = r·(½ ${sign} y / T), r what it puts on the ${axleName} axle`,
    sum: say`r = ${onAxle}, x behind the front axle, L = ${length(wheelbaseM)}; y right of the centre line; T = ${length(trackM)}`,
    bodies,
    filling: worst.filling,
    columns: [
      { heading: 'x', of: ({ position }) => length(position.x.valueM) },
      { heading: 'r', of: (body) => mass(massIn(body, worst.filling) * axle(body).perKg) },
      { heading: 'y', of: ({ position }) => length(position.y.valueM) },
    ],
    adds: [`on the ${side} wheel`, onWheel],
    paths: [
      ['van', 'wheelbase'],
      ['van', 'track'],
    ],
  });
  const wheelKg = wheel.result?.value ?? 0;
  const axleKg = sumOf(bodies, axle, worst.filling);
  return [
    wheel,
    {
      what: `What the ${axleName} axle carries in this state: R = Σ r`,
      sum: say`all that stands under "r" above, added up`,
      result: mass(axleKg),
    },
    {
      what: `The ${side} wheel's share of it: P / R`,
      sum: say`${mass(wheelKg)} / ${mass(axleKg)}`,
      result: share(wheelKg / axleKg),
    },
  ];
}

function heavierWheel(
  axleName: 'front' | 'rear',
  trackM: number,
  build: Build,
  placedThings: Placed,
  limit: EffectiveLimit,
): Finding {
  const { bodies, wheelbaseM } = placedThings;
  const axle = axleOf(axleName, wheelbaseM);
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
  const lean = leanOf(axle, trackM, build, placedThings);
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
