import type { Explanation } from '../../engine/explanation.ts';
import type { Finding, PlanPath } from '../../engine/finding.ts';
import type { Report } from '../../engine/report.ts';

/** What the plan writes at a key, or under it. */
export interface Typed {
  readonly of: PlanPath;
  readonly values: readonly { readonly path: PlanPath; readonly text: string }[];
}

/** A finding, with its working where its rule has one, and with what the plan says that it rests on. */
export interface ExplainedFinding {
  readonly finding: Finding;
  readonly typed: readonly Typed[];
}

/** What is explained: a check in general, and what it came to in a plan. */
export interface Explained {
  readonly checks: readonly Explanation[];
  readonly inPlan?: {
    readonly report: Report;
    readonly findings: readonly ExplainedFinding[];
    /** Whether something is written under a path: what is not has no line of its own. */
    readonly isWritten: (path: PlanPath) => boolean;
  };
}
