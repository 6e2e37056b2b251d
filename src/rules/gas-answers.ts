import type { Build } from '../build/build.ts';
import type { GasRequirementId } from '../catalogue/gas/requirements.ts';
import type { Finding, PlanPath } from '../engine/finding.ts';
import type { Phrase } from '../engine/phrase.ts';
import { say } from '../engine/phrase.ts';
import type { RuleText } from '../engine/rule.ts';
import { asked, keyOf } from './gas-facts.ts';
import { observed } from './observed.ts';
import { namesOf } from './routed.ts';

/** Something that the plan says yes or no to, and what is asked for. */
export interface Answer {
  readonly subject: string;
  readonly path: PlanPath;
  readonly key: string;
  /** Undefined where the plan does not say. */
  readonly isKept: boolean | undefined;
  readonly requirement: GasRequirementId;
  readonly kept: Phrase;
  readonly broken: Phrase;
  readonly remedy: Phrase;
}

/** One finding for each that is broken, one for all that the plan does not say, one for all that are kept. */
export function answered(rule: RuleText, answers: readonly Answer[], build: Build): Finding[] {
  const kept = answers.filter(({ isKept }) => isKept === true);
  const unsaid = answers.filter(({ isKept }) => isKept === undefined);
  const [firstKept] = kept;
  const [firstUnsaid] = unsaid;
  return [
    ...answers
      .filter(({ isKept }) => isKept === false)
      .map(({ subject, path, key, requirement, broken, remedy }) => {
        const { words, broken: verdict, sources, cautions } = asked(requirement, build);
        return observed(rule, {
          verdict,
          subject,
          path: [...path, key],
          reason: say`${broken} What is asked for: ${words}.`,
          remedy,
          sources,
          cautions,
        });
      }),
    ...(firstUnsaid
      ? [
          observed(rule, {
            verdict: 'not checked',
            subject: namesOf([...new Set(unsaid.map(({ subject }) => subject))]),
            path: firstUnsaid.path,
            reason: say`The plan does not say whether this is so: ${[...new Set(unsaid.map(({ requirement }) => asked(requirement, build).words))].join('; ')}.`,
            remedy: say`Add ${namesOf(
              unsaid.map(({ path, key }) => `\`${keyOf(path, key)}\``),
              8,
            )}.`,
            missing: unsaid.map(({ path, key }) => keyOf(path, key)),
          }),
        ]
      : []),
    ...(firstKept
      ? [
          observed(rule, {
            verdict: 'pass',
            subject: namesOf([...new Set(kept.map(({ subject }) => subject))]),
            path: firstKept.path,
            reason: say`By the plan ${kept.reduce<Phrase>((all, { kept: one }, at) => (at === 0 ? one : say`${all}; ${one}`), [])}.`,
            sources: [...new Set(kept.flatMap(({ requirement }) => asked(requirement, build).sources))],
            cautions: [...new Set(kept.flatMap(({ requirement }) => asked(requirement, build).cautions))],
          }),
        ]
      : []),
  ];
}
