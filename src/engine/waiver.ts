import type { Build, Waiver } from '../build/build.ts';
import type { Finding } from './finding.ts';

/** What became of a waiver: one that covers nothing, has ended or has no reason changes nothing. */
export type WaiverState = 'covers' | 'covers nothing' | 'has ended' | 'has no reason';

export interface WaiverUse {
  readonly waiver: Waiver;
  readonly state: WaiverState;
  /** What it covers; where it has ended or has no reason, what it would. */
  readonly findings: readonly Finding[];
  /** All that its check found, whatever the subject and the verdict. */
  readonly ofCheck: readonly Finding[];
}

/** What a rule that looks at the others' findings is given. */
export interface Review {
  readonly build: Build;
  readonly uses: readonly WaiverUse[];
  /** The day on which the plan is checked: "2026-03-14". */
  readonly today: string;
}
