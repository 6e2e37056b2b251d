import { notNegative, positive } from '../argument.ts';

/** Conductors from one point to the next, away from the source. */
export interface Segment {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Out and back, with its connections, at working temperature. */
  readonly loopOhm: number;
}

/** What is drawn at a point. Several loads may stand at one. */
export interface PointLoad {
  readonly at: string;
  /** Drawn whatever the voltage. */
  readonly currentA?: number;
  /** Drawn by a load that holds its power: the lower the voltage, the more current. */
  readonly powerW?: number;
}

export interface PointVoltage {
  readonly voltageV: number;
  /** Lost between the source and this point, over every segment. */
  readonly dropV: number;
}

export interface SegmentFlow {
  /** The sum of what is drawn downstream. */
  readonly currentA: number;
  readonly dropV: number;
  readonly lossW: number;
}

export type TreeResult =
  | {
      readonly delivers: true;
      readonly points: ReadonlyMap<string, PointVoltage>;
      readonly segments: ReadonlyMap<string, SegmentFlow>;
    }
  /** The segment whose loads together ask for more than it can bring; there may be others. */
  | { readonly delivers: false; readonly atSegment: string };

interface Point {
  readonly name: string;
  /** Undefined at the source. */
  readonly feed: Segment | undefined;
  /** Index of the point that feeds this one; −1 at the source. */
  readonly parent: number;
  readonly currentA: number;
  readonly powerW: number;
}

/** Newton's steps double the correct digits; only at the very limit of what can be brought they merely halve the error. */
const mostSteps = 200;

/**
 * Voltages and currents in a tree of conductors with loads anywhere on it.
 *
 *     U_n = U_parent − R_n · I_n        I_n = Σ downstream of n, itself included: (I_k + P_k / U_k)
 *
 * U: voltage at a point, V; R: resistance out and back of the segment that feeds it, Ω (≥ 0; 0 is a busbar); I_k:
 * current loads, A (≥ 0); P_k: power loads, W (≥ 0). The source holds `sourceV`, V (> 0), whatever is drawn (give its
 * internal resistance a segment of its own if it counts). Among all solutions this is the one with the highest
 * voltages, where the loads settle; it agrees with the equations to 1e-9 of the source's voltage or better.
 *
 * Newton's method from the source's voltage downward: each step replaces P/U by its tangent, and the linear tree is
 * solved from its ends. Since P/U is convex and falls with U, the steps fall monotonically towards the highest
 * solution, and a solution exists only while every pivot of the elimination stays positive; so the loads that cannot
 * be supplied are found exactly (but for the last few digits before the limit).
 *
 * Throws RangeError if a value is not finite or out of its range, if a segment's name or a point fed comes twice, or
 * if a segment or a load is not connected to the source.
 *
 * Source: Kirchhoff's laws (computed).
 */
export function solveDropTree(
  source: string,
  sourceV: number,
  segments: readonly Segment[],
  loads: readonly PointLoad[],
): TreeResult {
  positive(sourceV, 'The voltage at the source');
  const points = pointsOutward(source, segments, loads);
  let voltages = points.map(() => sourceV);
  for (let step = 0; step < mostSteps; step += 1) {
    const next = stepDown(points, voltages, sourceV);
    if (typeof next === 'string') return { delivers: false, atSegment: next };
    const moved = Math.max(...next.map((voltageV, index) => Math.abs(voltageV - (voltages[index] ?? 0))));
    voltages = next;
    if (moved <= 1e-13 * sourceV) break;
  }
  return { delivers: true, ...flows(points, voltages, sourceV) };
}

/** The source and every point it feeds, each after the one that feeds it. */
function pointsOutward(
  source: string,
  segments: readonly Segment[],
  loads: readonly PointLoad[],
): readonly Point[] {
  const away = new Map<string, Segment[]>();
  const ids = new Set<string>();
  const fed = new Set([source]);
  for (const segment of segments) {
    notNegative(segment.loopOhm, `The resistance of “${segment.id}”`);
    if (ids.has(segment.id)) throw new RangeError(`Two segments are called “${segment.id}”.`);
    if (fed.has(segment.to))
      throw new RangeError(`“${segment.to}” is fed twice: a tree has one way to a point.`);
    ids.add(segment.id);
    fed.add(segment.to);
    away.set(segment.from, [...(away.get(segment.from) ?? []), segment]);
  }
  const drawn = new Map<string, { currentA: number; powerW: number }>();
  for (const { at, currentA = 0, powerW = 0 } of loads) {
    if (!fed.has(at)) throw new RangeError(`The load at “${at}” is not connected to “${source}”.`);
    const sum = drawn.get(at) ?? { currentA: 0, powerW: 0 };
    drawn.set(at, {
      currentA: sum.currentA + notNegative(currentA, `The current at “${at}”`),
      powerW: sum.powerW + notNegative(powerW, `The power at “${at}”`),
    });
  }
  const pointOf = (name: string, feed: Segment | undefined, parent: number): Point => {
    return { name, feed, parent, ...(drawn.get(name) ?? { currentA: 0, powerW: 0 }) };
  };
  const points = [pointOf(source, undefined, -1)];
  for (let index = 0; index < points.length; index += 1)
    for (const segment of away.get(points[index]?.name ?? '') ?? [])
      points.push(pointOf(segment.to, segment, index));
  if (points.length <= segments.length) {
    const reached = new Set(points.map(({ name }) => name));
    const loose = segments.find(({ to }) => !reached.has(to));
    throw new RangeError(`“${loose?.id}” is not connected to “${source}”.`);
  }
  return points;
}

/** The voltages after one of Newton's steps, or the segment that cannot bring what is asked of it. */
function stepDown(points: readonly Point[], voltages: readonly number[], sourceV: number): number[] | string {
  // What a point and all behind it draw is `constant − slope · U` in the tangent's linear tree.
  const constant = points.map(
    ({ currentA, powerW }, index) => currentA + (2 * powerW) / (voltages[index] ?? sourceV),
  );
  const slope = points.map(({ powerW }, index) => powerW / (voltages[index] ?? sourceV) ** 2);
  for (let index = points.length - 1; index > 0; index -= 1) {
    const { feed, parent } = points[index] ?? {};
    if (feed === undefined || parent === undefined) continue;
    const pivot = 1 - (slope[index] ?? 0) * feed.loopOhm;
    if (pivot <= 0) return feed.id;
    constant[parent] = (constant[parent] ?? 0) + (constant[index] ?? 0) / pivot;
    slope[parent] = (slope[parent] ?? 0) + (slope[index] ?? 0) / pivot;
  }
  const next = [sourceV];
  for (const [index, { feed, parent }] of points.entries()) {
    if (feed === undefined) continue;
    const before = next[parent] ?? sourceV;
    const drawn = (constant[index] ?? 0) - (slope[index] ?? 0) * before;
    const voltageV = before - (feed.loopOhm * drawn) / (1 - (slope[index] ?? 0) * feed.loopOhm);
    if (voltageV <= 0) return feed.id;
    next.push(voltageV);
  }
  return next;
}

/** Currents from the loads inward, then voltages outward from those currents, so that the sums close exactly. */
function flows(points: readonly Point[], solved: readonly number[], sourceV: number) {
  const drawn = points.map(({ currentA, powerW }, index) => currentA + powerW / (solved[index] ?? sourceV));
  for (let index = points.length - 1; index > 0; index -= 1) {
    const parent = points[index]?.parent ?? 0;
    drawn[parent] = (drawn[parent] ?? 0) + (drawn[index] ?? 0);
  }
  const drops = [0];
  const voltages = new Map<string, PointVoltage>();
  const currents = new Map<string, SegmentFlow>();
  for (const [index, { name, feed, parent }] of points.entries()) {
    if (feed !== undefined) {
      const currentA = drawn[index] ?? 0;
      const dropV = currentA * feed.loopOhm;
      drops.push((drops[parent] ?? 0) + dropV);
      currents.set(feed.id, { currentA, dropV, lossW: currentA * dropV });
    }
    const dropV = drops[index] ?? 0;
    voltages.set(name, { voltageV: sourceV - dropV, dropV });
  }
  return { points: voltages, segments: currents };
}
