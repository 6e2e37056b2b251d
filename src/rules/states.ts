import type { Body, PlacedBody } from '../build/body.ts';
import type { Build, Filling } from '../build/build.ts';
import { type Evaluated, evaluate, evaluateRatio, type Functional } from '../build/functional.ts';
import { opposite } from '../build/quantities.ts';
import { describe, fillingWithGreatest, fillingWithGreatestRatio } from '../build/worst-state.ts';
import type { LoadState } from '../engine/finding.ts';

/** A quantity in the load state that is worst for it. */
export interface Worst extends Evaluated {
  readonly filling: Filling;
  readonly state: LoadState;
}

export function greatest<B extends Body>(
  build: Build,
  bodies: readonly B[],
  functional: Functional<B>,
): Worst {
  const filling = fillingWithGreatest(bodies, functional, build.supplyKg);
  return { ...evaluate(bodies, functional, filling), filling, state: describe(build, filling) };
}

export function least<B extends Body>(build: Build, bodies: readonly B[], functional: Functional<B>): Worst {
  const filling = fillingWithGreatest(bodies, opposite(functional), build.supplyKg);
  return { ...evaluate(bodies, functional, filling), filling, state: describe(build, filling) };
}

export function greatestRatio(
  build: Build,
  bodies: readonly PlacedBody[],
  over: Functional,
  under: Functional,
): Worst {
  const filling = fillingWithGreatestRatio(bodies, over, under, build.supplyKg);
  return { ...evaluateRatio(bodies, over, under, filling), filling, state: describe(build, filling) };
}

export function leastRatio(
  build: Build,
  bodies: readonly PlacedBody[],
  over: Functional,
  under: Functional,
): Worst {
  const filling = fillingWithGreatestRatio(bodies, opposite(over), under, build.supplyKg);
  return { ...evaluateRatio(bodies, over, under, filling), filling, state: describe(build, filling) };
}
