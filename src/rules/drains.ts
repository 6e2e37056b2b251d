import type { Leg } from '../build/routes.ts';
import type { WaterPipe } from '../build/water.ts';

/** A piece of a drain's way that is laid with one fall. */
export interface DrainPiece {
  /** How much lower it ends than it begins; below 0 where it climbs. */
  readonly fallM: number;
  /** Its length in plan. */
  readonly runM: number;
  /** "in the chase drain". */
  readonly where: string;
}

/**
 * The pieces of a drain's way from the outlet on; undefined where the plan does not say them. What leads from a thing to
 * its point and from a point to its thing may be laid with an even fall, and so may a way that nobody has planned.
 */
export function piecesOf({
  run,
  fromPlace,
  toPlace,
  riseM,
  lengthM,
}: WaterPipe): readonly DrainPiece[] | undefined {
  if (riseM !== undefined && lengthM !== undefined)
    return [{ fallM: -riseM, runM: Math.sqrt(Math.max(0, lengthM ** 2 - riseM ** 2)), where: 'over all' }];
  if (!run || run.legs.length === 0 || !fromPlace || !toPlace) return undefined;
  const legs = run.legs.map((leg, index) => ({
    leg,
    heights: heightsOf(leg, index > 0 && leg.kind === 'spur'),
  }));
  return legs.map(({ leg, heights }, index): DrainPiece => {
    const startM = index === 0 ? fromPlace.zM : heights[0];
    const endM = index === legs.length - 1 ? toPlace.zM : heights[1];
    return {
      fallM: startM - endM,
      runM: inPlan(leg),
      where: leg.kind === 'chase' ? `in the chase ${leg.id}` : `on its way at ${leg.id}`,
    };
  });
}

/** A spur is written from its thing; at the end of the way it is gone the other way round. */
function heightsOf({ ends: [one, other] }: Leg, isReversed: boolean): readonly [number, number] {
  return isReversed ? [other.zM, one.zM] : [one.zM, other.zM];
}

/** Along the van and across it. */
const inPlan = ({ ends: [one, other] }: Leg): number =>
  Math.abs(one.xM - other.xM) + Math.abs(one.yM - other.yM);

/** Fall over length in plan; infinite where it goes straight up or down. */
export const slopeOf = ({ fallM, runM }: DrainPiece): number =>
  runM > 0 ? fallM / runM : fallM < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;

/** The piece with the least fall for its length. */
export const worstOf = (pieces: readonly DrainPiece[]): DrainPiece =>
  pieces.reduce((worst, piece) => (slopeOf(piece) < slopeOf(worst) ? piece : worst));
