import type { Build } from '../build/build.ts';
import type { Rule } from './rule.ts';
import type { Outcome } from './run.ts';
import { waive } from './waive.ts';

/** Applies the plan's waivers to what its rules found, and lets those rules speak that look at this. */
export function reviewed(rules: readonly Rule[], build: Build, outcome: Outcome, today: string): Outcome {
  const { findings, uses } = waive(outcome.findings, build.waivers, rules, today);
  const said = rules.flatMap((rule) => rule.review?.({ build, uses, today }) ?? []);
  return {
    ...outcome,
    findings: [...findings, ...said.flatMap((each) => each.findings)],
    notes: [...outcome.notes, ...said.flatMap(({ notes = [] }) => notes)],
  };
}
