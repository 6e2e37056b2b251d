import { expandedUncertainty, probabilityAbove } from '../calc/uncertainty.ts';
import type { Citation } from '../catalogue/citation.ts';
import type { Finding, LoadState, PlanPath } from './finding.ts';
import type { Kind } from './measure.ts';
import { type Phrase, say } from './phrase.ts';
import type { RuleText } from './rule.ts';

/** Two numbers closer than this part of the limit are the same; a limit that is just met is kept. */
const sameWithin = 1e-9;

export interface Judgement {
  readonly rule: RuleText;
  readonly subject: string;
  readonly path: PlanPath;
  readonly kind: Kind;
  readonly value: number;
  readonly standard: number;
  readonly limit: number;
  readonly sense: 'at most' | 'at least';
  /** What breaking the limit means. */
  readonly broken: 'fail' | 'warn';
  readonly state?: LoadState;
  readonly reason: Phrase;
  /** What to do, asked for only when the verdict is not a pass. */
  readonly remedy?: () => Phrase | undefined;
  readonly sources?: readonly Citation[];
  readonly cautions?: readonly string[];
}

/** The one place where a number meets a limit and becomes a verdict. */
export function judge(judgement: Judgement): Finding {
  const { rule, kind, value, standard, limit, sense } = judgement;
  const side = sense === 'at most' ? 1 : -1;
  const margin = side * (limit - value);
  const slack = sameWithin * Math.max(Math.abs(limit), Math.abs(value));
  const expanded = expandedUncertainty(standard);
  const isBroken = margin < -slack;
  const isDoubtful = !isBroken && expanded > 0 && margin + slack < expanded;
  const verdict = isBroken ? judgement.broken : isDoubtful ? 'warn' : 'pass';
  const probability =
    side === 1 ? probabilityAbove(limit, value, standard) : probabilityAbove(-limit, -value, standard);
  const remedy = verdict === 'pass' ? undefined : judgement.remedy?.();
  const utilisation = sense === 'at most' ? value / limit : limit / value;
  const doubt = isDoubtful
    ? say` The limit lies within the tolerance of ± ${{ kind, value: expanded }}.`
    : [];
  return {
    rule: rule.id,
    topic: rule.topic,
    title: rule.title,
    verdict,
    subject: judgement.subject,
    path: judgement.path,
    measured: { kind, value },
    limit: { measure: { kind, value: limit }, sense },
    margin: { kind, value: margin },
    ...(Number.isFinite(utilisation) && { utilisation }),
    ...(expanded > 0 && { tolerance: { kind, value: expanded }, probability }),
    ...(judgement.state && { worstState: judgement.state }),
    reason: [...judgement.reason, ...doubt],
    ...(remedy && { remedy }),
    sources: [...(judgement.sources ?? []), ...rule.sources],
    cautions: [...rule.cautions, ...(judgement.cautions ?? [])],
  };
}
