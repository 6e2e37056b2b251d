import { notNegative, positive } from '../argument.ts';
import { boreAreaM2 } from './pipe-loss.ts';

/** A length of pipe that holds water. */
export interface PipeLength {
  readonly lengthM: number;
  readonly innerDiameterM: number;
}

/**
 * What pipes hold, m³: V = Σ π D²/4 · L. D: inner diameter, m (> 0); L: length, m (≥ 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export const pipeVolumeM3 = (pipes: readonly PipeLength[]): number =>
  pipes.reduce(
    (sum, { lengthM, innerDiameterM }) =>
      sum + boreAreaM2(innerDiameterM) * notNegative(lengthM, 'The length of the pipe'),
    0,
  );

/** Hot water on its way from the heater to an outlet. */
export interface DeadLeg {
  readonly pipes: readonly PipeLength[];
  readonly flowM3S: number;
  /** What the walls of the pipes take on top, as a share of what the pipes hold; 0 where left out. */
  readonly wallShare?: number;
  /** How often a day hot water is drawn after the pipes have cooled; 0 where left out. */
  readonly coldDrawsPerDay?: number;
}

export interface DeadLegResult {
  readonly heldM3: number;
  /** Run off before hot water arrives. */
  readonly wastedM3: number;
  readonly waitS: number;
  readonly wastedM3PerDay: number;
}

/**
 * What cold water stands in a hot pipe, how long it takes to run off and what is lost a day.
 *
 *     V = Σ A L;  V_w = V (1 + s);  t = V_w / Q;  lost a day = n V_w
 *
 * A, L as in {@link pipeVolumeM3}; s: share that the pipe walls take (≥ 0; without it t is a lower bound); Q: flow, m³/s
 * (> 0); n: draws after the pipe has cooled (≥ 0). An instant heater's own starting time comes on top.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: definition; that the walls take about a fifth, from the 0.6 against 0.5 gallons of a US specification (read).
 */
export function deadLeg({ pipes, flowM3S, wallShare = 0, coldDrawsPerDay = 0 }: DeadLeg): DeadLegResult {
  const heldM3 = pipeVolumeM3(pipes);
  const wastedM3 = heldM3 * (1 + notNegative(wallShare, 'The share of the pipe walls'));
  return {
    heldM3,
    wastedM3,
    waitS: wastedM3 / positive(flowM3S, 'The flow'),
    wastedM3PerDay: wastedM3 * notNegative(coldDrawsPerDay, 'The number of draws'),
  };
}

/**
 * The longest pipe of one bore that holds no more than a volume, m: L = V / A.
 *
 * V: volume, m³ (≥ 0); D: inner diameter, m (> 0). Throws RangeError if a value is not finite or out of its range.
 */
export const longestPipeM = (volumeM3: number, innerDiameterM: number): number =>
  notNegative(volumeM3, 'The volume') / boreAreaM2(innerDiameterM);
