import type { Finding, Verdict } from './finding.ts';

export type Counts = Readonly<Record<Verdict, number>>;

/** How many findings there are of each verdict, and how many of them a waiver covers. */
export interface Tally {
  readonly counts: Counts;
  /** Of these, those that a waiver makes stand aside. */
  readonly waived: Counts;
  /** Of these, those that are acknowledged and stand as before. */
  readonly acknowledged: Counts;
}

export function tallyOf(findings: readonly Pick<Finding, 'verdict' | 'waived'>[]): Tally {
  const none = () => ({ fail: 0, warn: 0, 'not checked': 0, pass: 0 });
  const [counts, waived, acknowledged] = [none(), none(), none()];
  for (const finding of findings) {
    counts[finding.verdict] += 1;
    if (finding.waived) ({ waived, acknowledged })[finding.waived.as][finding.verdict] += 1;
  }
  return { counts, waived, acknowledged };
}

export const sumOf = ({ fail, warn, 'not checked': notChecked, pass }: Counts): number =>
  fail + warn + notChecked + pass;
