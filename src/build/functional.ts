import { rootSumSquare } from '../calc/uncertainty.ts';
import type { Body, PlacedBody } from './body.ts';
import type { Filling } from './build.ts';

/** What one kilogram of a body does to a quantity, and how that changes when the body's place is out. */
export interface Effect {
  readonly perKg: number;
  /** Change of `perKg` for each metre further back, to the right, and up. */
  readonly perKgM: { readonly x?: number; readonly y?: number; readonly z?: number };
}

/** A quantity that is a sum over bodies of mass times effect: a total, an axle load, a wheel load, a moment. */
export type Functional<B extends Body = PlacedBody> = (body: B) => Effect;

export interface Evaluated {
  readonly value: number;
  /** Combined standard uncertainty; errors of one source add with their signs, sources by root sum of squares. */
  readonly standard: number;
  /** The source that most of the uncertainty comes from. */
  readonly dominant?: string;
}

/** The mass of a body in a load state. */
export const massIn = (body: Body, filling: Filling): number =>
  body.variable ? (filling.get(body.variable.name) ?? body.variable.leastKg) : body.massKg;

/** A sum over bodies in a load state, without its uncertainty. */
export function sumOf<B extends Body>(
  bodies: readonly B[],
  functional: Functional<B>,
  filling: Filling,
): number {
  let sum = 0;
  for (const body of bodies) sum += massIn(body, filling) * functional(body).perKg;
  return sum;
}

/** A sum over bodies in a load state, with its uncertainty (JCGM 100:2008, 5.1.2 and 5.2.2). */
export function evaluate<B extends Body>(
  bodies: readonly B[],
  functional: Functional<B>,
  filling: Filling,
): Evaluated {
  let value = 0;
  const bySource = new Map<string, number>();
  const add = (source: string, amount: number) => {
    if (amount !== 0) bySource.set(source, (bySource.get(source) ?? 0) + amount);
  };
  for (const body of bodies) {
    const massKg = massIn(body, filling);
    const { perKg, perKgM } = functional(body);
    value += massKg * perKg;
    // A half-full tank is as uncertain in proportion as a full one.
    const part = body.variable && body.massKg !== 0 ? massKg / body.massKg : 1;
    for (const { source, standard } of body.massErrors) add(source, perKg * part * standard);
    if (!body.position) continue;
    for (const axis of axes) {
      const slope = perKgM[axis];
      if (!slope) continue;
      for (const { source, standard } of body.position[axis].errors) add(source, massKg * slope * standard);
    }
  }
  const dominant = greatestOf(bySource);
  return {
    value,
    standard: rootSumSquare(bySource.values()),
    ...(dominant !== undefined && { dominant }),
  };
}

const axes = ['x', 'y', 'z'] as const;

export const ratioOf = <B extends Body>(
  bodies: readonly B[],
  over: Functional<B>,
  under: Functional<B>,
  filling: Filling,
): number => sumOf(bodies, over, filling) / sumOf(bodies, under, filling);

/** A ratio of two sums; its uncertainty follows from the linear part of its change (JCGM 100:2008, 5.1.2). */
export function evaluateRatio<B extends Body>(
  bodies: readonly B[],
  over: Functional<B>,
  under: Functional<B>,
  filling: Filling,
): Evaluated {
  const value = ratioOf(bodies, over, under, filling);
  const change = evaluate(bodies, (body) => minus(over(body), under(body), value), filling);
  return { ...change, value, standard: change.standard / Math.abs(sumOf(bodies, under, filling)) };
}

function greatestOf(bySource: ReadonlyMap<string, number>): string | undefined {
  let dominant: string | undefined;
  let greatest = 0;
  for (const [source, amount] of bySource) {
    const size = Math.abs(amount);
    if (size > greatest) [dominant, greatest] = [source, size];
  }
  return dominant;
}

/** a − factor · b */
export function minus(a: Effect, b: Effect, factor: number): Effect {
  const along = (axis: 'x' | 'y' | 'z') => (a.perKgM[axis] ?? 0) - factor * (b.perKgM[axis] ?? 0);
  return { perKg: a.perKg - factor * b.perKg, perKgM: { x: along('x'), y: along('y'), z: along('z') } };
}

export const variableBodies = <B extends Body>(bodies: readonly B[]): readonly B[] =>
  bodies.filter((body) => body.variable);
