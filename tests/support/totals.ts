import { isPlaced } from '../../src/build/body.ts';
import type { Build, Filling } from '../../src/build/build.ts';
import { evaluate } from '../../src/build/functional.ts';
import { frontAxle, momentRightOfCentre, rearAxle, totalMass } from '../../src/build/quantities.ts';

export interface Totals {
  readonly totalKg: number;
  readonly frontKg: number;
  readonly rearKg: number;
  readonly momentRightKgM: number;
}

/** What a build comes to in a load state. All of it must have a place. */
export function totals(build: Build, filling: Filling): Totals {
  const placed = build.bodies.filter(isPlaced);
  const { wheelbaseM } = build.vehicle;
  if (wheelbaseM === undefined || placed.length < build.bodies.length)
    throw new Error('a mass has no place, or there is no wheelbase');
  return {
    totalKg: evaluate(build.bodies, totalMass, filling).value,
    frontKg: evaluate(placed, frontAxle(wheelbaseM), filling).value,
    rearKg: evaluate(placed, rearAxle(wheelbaseM), filling).value,
    momentRightKgM: evaluate(placed, momentRightOfCentre, filling).value,
  };
}

/** Everything at its least but the van's own fuel, which is at this part of its tank. */
export const fuelled = (build: Build, part: number): Filling =>
  new Map(
    build.bodies.flatMap(({ variable }) =>
      variable ? [[variable.name, variable.name === 'fuel' ? part * variable.mostKg : variable.leastKg]] : [],
    ),
  );
