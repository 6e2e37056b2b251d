import type { Body, PlacedBody } from '../build/body.ts';
import type { Build, Filling } from '../build/build.ts';
import { type Evaluated, evaluate, evaluateRatio, type Functional, ratioOf } from '../build/functional.ts';
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

/** A ratio that leans to the right (above 0) or to the left (below), in the state where it leans furthest. */
export interface Leaning {
  readonly isRight: boolean;
  /** Counted towards that side, so never negative unless it leans the other way in every state. */
  readonly worst: Worst;
}

export function furthestLean(
  build: Build,
  bodies: readonly PlacedBody[],
  over: Functional,
  under: Functional,
): Leaning {
  const toRight = fillingWithGreatestRatio(bodies, over, under, build.supplyKg);
  const toLeft = fillingWithGreatestRatio(bodies, opposite(over), under, build.supplyKg);
  const isRight = ratioOf(bodies, over, under, toRight) >= -ratioOf(bodies, over, under, toLeft);
  const filling = isRight ? toRight : toLeft;
  const lean = evaluateRatio(bodies, isRight ? over : opposite(over), under, filling);
  return { isRight, worst: { ...lean, filling, state: describe(build, filling) } };
}
