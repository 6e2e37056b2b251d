import type { Build } from '../build/build.ts';
import { frontAxle, rearAxle } from '../build/quantities.ts';
import type { Citation } from '../catalogue/citation.ts';
import type { Step } from '../engine/finding.ts';
import { exceeds, judge } from '../engine/judge.ts';
import { mass } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Output, RuleText } from '../engine/rule.ts';
import type { Quantity } from '../plan/quantity.ts';
import type { Placed } from './needs.ts';
import { moveSomething } from './remedies.ts';
import { greatest } from './states.ts';
import { axleStep } from './working/axle.ts';

export const axlePlate: Citation = { title: "The axle limits on the van's plate", provenance: 'read' };

const functionalOf = (axle: 'front' | 'rear', wheelbaseM: number) =>
  axle === 'front' ? frontAxle(wheelbaseM) : rearAxle(wheelbaseM);

/** What every mass puts on the axle in the state that is worst for it. */
export function workAxle(
  axle: 'front' | 'rear',
  build: Build,
  { wheelbaseM, bodies }: Placed,
): readonly Step[] {
  const { filling } = greatest(build, bodies, functionalOf(axle, wheelbaseM));
  return [axleStep(axle, wheelbaseM, bodies, filling)];
}

/** The heaviest load on one axle against its limit; both axles are checked the same way. */
export function checkAxle(
  rule: RuleText,
  axle: 'front' | 'rear',
  build: Build,
  { wheelbaseM, bodies }: Placed,
  limit: Quantity,
): Output {
  const functional = functionalOf(axle, wheelbaseM);
  const worst = greatest(build, bodies, functional);
  const over = worst.value - limit.value;
  return {
    findings: [
      judge({
        rule,
        subject: `${axle} axle`,
        path: ['van', 'axle_limits', axle],
        kind: 'mass',
        measured: worst,
        limit: limit.value,
        sense: 'at most',
        broken: 'fail',
        state: worst.state,
        reason: exceeds(worst.value, limit.value)
          ? say`The ${axle} axle carries up to ${mass(worst.value)}, ${mass(over)} more than its limit.`
          : say`The ${axle} axle carries up to ${mass(worst.value)}, ${mass(Math.max(0, -over))} less than its limit.`,
        // A mass m moved by d takes m·d/L off one axle and puts it on the other.
        remedy: (shortfall) =>
          moveSomething(
            build,
            bodies,
            worst.filling,
            shortfall * wheelbaseM,
            axle === 'rear' ? 'forward' : 'rearward',
          ),
      }),
    ],
  };
}
