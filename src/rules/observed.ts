import type { Citation } from '../catalogue/citation.ts';
import type { Finding, PlanPath, Verdict } from '../engine/finding.ts';
import type { Measure } from '../engine/measure.ts';
import type { Phrase } from '../engine/phrase.ts';
import type { RuleText } from '../engine/rule.ts';

interface Observation {
  readonly verdict: Verdict;
  readonly subject: string;
  readonly path: PlanPath;
  readonly reason: Phrase;
  readonly measured?: Measure | undefined;
  readonly remedy?: Phrase | undefined;
  readonly missing?: readonly string[];
  readonly cautions?: readonly string[];
  readonly sources?: readonly Citation[];
}

/** A finding about what meets what, where no single number meets a limit. */
export function observed(rule: RuleText, observation: Observation): Finding {
  const { verdict, subject, path, reason, measured, remedy, missing, cautions, sources } = observation;
  return {
    rule: rule.id,
    topic: rule.topic,
    title: rule.title,
    verdict,
    subject,
    path,
    reason,
    ...(measured && { measured }),
    ...(remedy && { remedy }),
    ...(missing && { missing }),
    sources: [...(sources ?? []), ...rule.sources],
    cautions: [...rule.cautions, ...(cautions ?? [])],
  };
}
