import type { Citation } from '../citation.ts';
import { drainSlopeForum, drainSlopeUk, drainSlopeUs } from './sources.ts';

export const drainRules = ['US plumbing code', 'US residential code', 'Ontario', 'UK'] as const;
export type DrainRule = (typeof drainRules)[number];

/** The least fall of a drain over its length in plan, by its diameter. All are rules for buildings. */
export interface DrainSlope {
  readonly rule: DrainRule;
  /** Up to and with this diameter, m. */
  readonly diameterUpToM: number;
  /** A plain ratio: 0.02 for 2 %. */
  readonly leastSlope: number;
  readonly citations: readonly Citation[];
}

const inch = 0.0254;

const slope = (
  rule: DrainRule,
  diameterUpToM: number,
  leastSlope: number,
  citation: Citation,
): DrainSlope => ({ rule, diameterUpToM, leastSlope, citations: [citation] });

/** By rule and rising diameter. */
export const drainSlopes: readonly DrainSlope[] = [
  slope('US plumbing code', 2.5 * inch, 1 / 48, drainSlopeUs),
  slope('US plumbing code', 6 * inch, 1 / 96, drainSlopeUs),
  slope('US plumbing code', Number.POSITIVE_INFINITY, 1 / 192, drainSlopeUs),
  slope('US residential code', 2.5 * inch, 0.02, drainSlopeForum),
  slope('US residential code', Number.POSITIVE_INFINITY, 0.01, drainSlopeForum),
  slope('Ontario', 3 * inch, 1 / 50, drainSlopeForum),
  slope('UK', 0.04, 0.018, drainSlopeUk),
];

/** What a rule asks of a diameter, m; undefined if it has no row for it. */
export const drainSlopeFor = (rule: DrainRule, diameterM: number): DrainSlope | undefined =>
  drainSlopes.find((row) => row.rule === rule && diameterM <= row.diameterUpToM + 1e-6);

/** The steepest that any rule asks of a diameter, m, with all that were asked cited. */
export function strictestDrainSlope(diameterM: number): Pick<DrainSlope, 'leastSlope' | 'citations'> {
  const rows = drainRules.flatMap((rule) => drainSlopeFor(rule, diameterM) ?? []);
  const steepestFirst = rows.toSorted((a, b) => b.leastSlope - a.leastSlope);
  return {
    leastSlope: steepestFirst[0]?.leastSlope ?? 0,
    citations: [...new Set(steepestFirst.flatMap(({ citations }) => citations))],
  };
}

/** How long and how steep a waste pipe of one use may be, UK: a steep pipe sucks its trap dry. */
export interface WasteBranch {
  readonly use: 'basin' | 'sink or shower';
  readonly diameterM: number;
  readonly longestM: number;
  readonly leastSlope: number;
  readonly greatestSlope: number;
  readonly citations: readonly Citation[];
}

export const wasteBranches: readonly WasteBranch[] = [
  {
    use: 'basin',
    diameterM: 0.032,
    longestM: 1.7,
    leastSlope: 0.018,
    greatestSlope: 0.022,
    citations: [drainSlopeUk],
  },
  {
    use: 'sink or shower',
    diameterM: 0.04,
    longestM: 3,
    leastSlope: 0.018,
    greatestSlope: 0.09,
    citations: [drainSlopeUk],
  },
];
