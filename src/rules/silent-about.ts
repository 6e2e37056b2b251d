import type { Finding, PlanPath } from '../engine/finding.ts';
import { say } from '../engine/phrase.ts';
import type { RuleText } from '../engine/rule.ts';
import { observed } from './observed.ts';
import { namesOf } from './routed.ts';

interface Named {
  readonly name: string;
  readonly path: PlanPath;
}

/** One finding for all things of which the plan does not say what a rule needs. `what`: "the bore of its vent". */
export function silentAbout(
  rule: RuleText,
  things: readonly Named[],
  what: string,
  keysOf: (thing: Named) => readonly string[],
): Finding[] {
  const [first] = things;
  if (!first) return [];
  const names = namesOf(things.map(({ name }) => name));
  return [
    observed(rule, {
      verdict: 'not checked',
      subject: names,
      path: first.path,
      reason: say`Of ${names}, the plan does not say ${what}.`,
      missing: things.flatMap(keysOf),
    }),
  ];
}

/** The key of a thing, as the plan would write it. */
export const keyAt =
  (...last: readonly string[]) =>
  ({ path }: { readonly path: PlanPath }): readonly string[] =>
    last.map((key) => [...path, key].join('.'));
