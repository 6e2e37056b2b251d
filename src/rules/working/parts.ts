import type { Body } from '../../build/body.ts';
import type { Filling } from '../../build/build.ts';
import { massIn } from '../../build/functional.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { type Measure, mass } from '../../engine/measure.ts';
import type { Phrase } from '../../engine/phrase.ts';

/*
 * Steps that rules share to show how a figure came about.
 */

export interface PartColumn<B extends Body> {
  readonly heading: string;
  readonly of: (body: B) => Measure;
}

export interface SumOfBodies<B extends Body> {
  readonly what: string;
  readonly bodies: readonly B[];
  readonly filling: Filling;
  /** Between the mass and what it adds. */
  readonly columns: readonly PartColumn<B>[];
  /** The heading of what each body adds, and what a kilogram of it adds. */
  readonly adds: readonly [heading: string, perKg: (body: B) => number];
  readonly sum?: Phrase;
  readonly paths?: Step['paths'];
}

/** Every mass aboard in a load state with what it adds to a sum in kilograms. */
export function sumOfBodies<B extends Body>(sum: SumOfBodies<B>): Step {
  const [heading, perKg] = sum.adds;
  const rows = sum.bodies.map((body): Part => {
    const massKg = massIn(body, sum.filling);
    return {
      name: body.variable && body.sort === 'contents' ? `${body.label} (contents)` : body.label,
      path: body.path,
      origin: body.origin,
      values: [...(heading === 'mass' ? [] : [mass(massKg)]), ...sum.columns.map(({ of }) => of(body))],
      adds: mass(massKg * perKg(body)),
    };
  });
  return {
    what: sum.what,
    ...(sum.sum && { sum: sum.sum }),
    result: mass(rows.reduce((total, { adds }) => total + adds.value, 0)),
    ...(sum.paths && { paths: sum.paths }),
    parts: {
      columns: [...(heading === 'mass' ? [] : ['mass']), ...sum.columns.map((each) => each.heading), heading],
      rows,
    },
  };
}

/** The whole mass in a load state, body by body. */
export const massOfEverything = (bodies: readonly Body[], filling: Filling, what: string): Step =>
  sumOfBodies({ what, bodies, filling, columns: [], adds: ['mass', () => 1] });
