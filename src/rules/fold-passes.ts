import type { Finding } from '../engine/finding.ts';

/**
 * All that is not a pass, and one pass for all of them: the one that uses most of its limit; of several the first by its
 * name, so that the order of the plan decides nothing.
 */
export function foldPasses(findings: readonly Finding[], one: string, many = `${one}s`): Finding[] {
  const passes = findings.filter(({ verdict }) => verdict === 'pass');
  const [closest, ...others] = passes.toSorted(
    (a, b) => (b.utilisation ?? 0) - (a.utilisation ?? 0) || (a.subject < b.subject ? -1 : 1),
  );
  const rest = findings.filter(({ verdict }) => verdict !== 'pass');
  if (!closest) return rest;
  const more =
    others.length === 0
      ? []
      : [
          ` ${others.length} more ${others.length === 1 ? `${one} is` : `${many} are`} no closer to the limit.`,
        ];
  return [...rest, { ...closest, reason: [...closest.reason, ...more] }];
}
