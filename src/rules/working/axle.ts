import type { PlacedBody } from '../../build/body.ts';
import type { Filling } from '../../build/build.ts';
import { frontAxle, rearAxle } from '../../build/quantities.ts';
import type { Step } from '../../engine/finding.ts';
import { factor, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { sumOfBodies } from './parts.ts';

/** What every mass puts on an axle in a load state: its mass times its lever arm over the wheelbase. */
export function axleStep(
  axle: 'front' | 'rear',
  wheelbaseM: number,
  bodies: readonly PlacedBody[],
  filling: Filling,
): Step {
  const functional = axle === 'front' ? frontAxle(wheelbaseM) : rearAxle(wheelbaseM);
  return sumOfBodies({
    what:
      axle === 'front'
        ? 'What every mass puts on the front axle: m·(1 − x / L)'
        : 'What every mass puts on the rear axle: m·x / L',
    sum: say`x behind the front axle; L = ${length(wheelbaseM)}`,
    bodies,
    filling,
    columns: [
      { heading: 'x', of: ({ position }) => length(position.x.valueM) },
      { heading: axle === 'front' ? '1 − x / L' : 'x / L', of: (body) => factor(functional(body).perKg) },
    ],
    adds: ['on the axle', (body) => functional(body).perKg],
    paths: [['van', 'wheelbase']],
  });
}
