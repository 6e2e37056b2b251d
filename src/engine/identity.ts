import type { Finding } from './finding.ts';

/**
 * What a finding is known by from one revision of a plan to the next, in the order of the findings: rule and subject,
 * and a counter where a rule has more than one finding on one subject. No line numbers, no messages.
 */
export function identitiesOf(findings: readonly Pick<Finding, 'rule' | 'subject'>[]): readonly string[] {
  const seen = new Map<string, number>();
  return findings.map(({ rule, subject }) => {
    const name = `${rule} ${subject}`;
    const nth = (seen.get(name) ?? 0) + 1;
    seen.set(name, nth);
    return nth === 1 ? name : `${name} #${nth}`;
  });
}
