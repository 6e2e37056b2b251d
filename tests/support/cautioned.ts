import { expect } from 'vitest';
import type { Verdict } from '../../src/engine/finding.ts';
import { reportOf } from './check.ts';

/** Holds every finding of a rule in these plans to its cautions; the verdicts that there were, each once, in order. */
export async function cautionedVerdicts(
  rule: string,
  cautions: readonly string[],
  texts: readonly string[],
): Promise<readonly Verdict[]> {
  const seen = new Set<Verdict>();
  for (const text of texts) {
    const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
    expect(found.length).toBeGreaterThan(0);
    for (const { verdict, subject, cautions: said } of found) {
      seen.add(verdict);
      for (const caution of cautions) expect(said, `${rule} ${subject}`).toContain(caution);
    }
  }
  return [...seen].sort();
}
