import type { Assumption, Finding, LoadState, Note, PlanPath } from './finding.ts';

/** Where a path stands in the plan's text; lines and columns count from 1. */
export interface Spot {
  readonly line: number;
  readonly column: number;
}

/** Everything one check of one plan found. This is all that the renderers know. */
export interface Report {
  readonly file: string;
  readonly name: string;
  readonly codes: string;
  readonly units: 'metric' | 'imperial';
  /** Sorted: topic, then verdict (fail, warn, not checked, pass), then line and rule. */
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
  readonly assumptions: readonly Assumption[];
  readonly spot: (path: PlanPath) => Spot | undefined;
}

export type { LoadState };
