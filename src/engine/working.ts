import type { Build } from '../build/build.ts';
import type { Finding } from './finding.ts';
import type { Rule } from './rule.ts';
import { effectiveLimit } from './run.ts';

/** The finding with the steps that led to it, where its rule can show them; a check itself pays nothing for them. */
export function withWorking(rules: readonly Rule[], build: Build, finding: Finding): Finding {
  const rule = rules.find(({ id }) => id === finding.rule);
  const working = rule?.work?.(build, (id) => effectiveLimit(rule, id, build), finding);
  return working && working.length > 0 ? { ...finding, working } : finding;
}
