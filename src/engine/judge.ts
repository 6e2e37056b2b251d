import { expandedUncertainty, probabilityAbove } from '../calc/uncertainty.ts';
import type { Citation } from '../catalogue/citation.ts';
import type { Finding, LoadState, PlanPath } from './finding.ts';
import type { Kind } from './measure.ts';
import { type Phrase, say } from './phrase.ts';
import type { RuleText } from './rule.ts';

/** Two numbers closer than this part of the limit are the same; a limit that is just met is kept. */
const sameWithin = 1e-9;

/** Whether a value is beyond a limit by more than the last digits of a sum. */
export const exceeds = (value: number, limit: number): boolean =>
  value - limit > sameWithin * Math.max(Math.abs(limit), Math.abs(value));

/** A value with its standard uncertainty, and the source that most of it comes from. */
export interface Uncertain {
  readonly value: number;
  readonly standard: number;
  readonly dominant?: string;
}

export interface Subject {
  readonly rule: RuleText;
  readonly subject: string;
  readonly path: PlanPath;
  readonly kind: Kind;
  readonly measured: Uncertain;
  readonly state?: LoadState;
  readonly reason: Phrase;
  readonly sources?: readonly Citation[];
  readonly cautions?: readonly string[];
}

export interface Judgement extends Subject {
  readonly limit: number;
  readonly sense: 'at most' | 'at least';
  /** What breaking the limit means. */
  readonly broken: 'fail' | 'warn';
  /** What to do; `shortfall` is how far the value must move to keep the limit beyond its tolerance. */
  readonly remedy?: (shortfall: number) => Phrase | undefined;
}

/** The one place where a number meets a limit and becomes a verdict. */
export function judge(judgement: Judgement): Finding {
  const { kind, measured, limit, sense } = judgement;
  const { value, standard } = measured;
  const margin = sense === 'at most' ? limit - value : value - limit;
  const slack = sameWithin * Math.max(Math.abs(limit), Math.abs(value));
  const expanded = expandedUncertainty(standard);
  const isBroken = sense === 'at most' ? exceeds(value, limit) : exceeds(limit, value);
  const isDoubtful = !isBroken && margin + slack < expanded;
  const verdict = isBroken ? judgement.broken : isDoubtful ? 'warn' : 'pass';
  const probability =
    sense === 'at most'
      ? probabilityAbove(limit, value, standard)
      : probabilityAbove(-limit, -value, standard);
  const remedy = verdict === 'pass' ? undefined : judgement.remedy?.(isBroken ? -margin : expanded - margin);
  const utilisation = sense === 'at most' ? partOf(value, limit) : partOf(limit, value);
  return {
    ...unjudged(judgement),
    verdict,
    limit: { measure: { kind, value: limit }, sense },
    margin: { kind, value: margin },
    ...(utilisation !== undefined && { utilisation }),
    ...(expanded > 0 && { probability }),
    reason: isDoubtful
      ? [...judgement.reason, ...doubtOf(kind, expanded, measured.dominant)]
      : judgement.reason,
    ...(remedy && { remedy: isDoubtful ? say`To be clear of the tolerance: ${remedy}` : remedy }),
  };
}

/** Part over whole; infinite where something is measured against nothing, or nothing is left of what must be there. */
function partOf(part: number, whole: number): number | undefined {
  if (whole > 0) return part / whole;
  return part > 0 ? Number.POSITIVE_INFINITY : undefined;
}

/** A value for which the plan gives no limit: it is shown, and not checked. */
export function withoutLimit(subject: Subject, key: string): Finding {
  return { ...unjudged(subject), remedy: say`Add the maker's limit as \`${key}\`.`, missing: [key] };
}

/** A plan in which the figure that a limit is for has no meaning: it cannot be kept, and cannot be called broken by so much. */
export function meaningless(subject: Subject, verdict: 'fail' | 'warn', remedy: Phrase | undefined): Finding {
  return { ...unjudged(subject), verdict, ...(remedy && { remedy }) };
}

function unjudged({
  rule,
  subject,
  path,
  kind,
  measured,
  state,
  reason,
  sources,
  cautions,
}: Subject): Finding {
  const expanded = expandedUncertainty(measured.standard);
  return {
    rule: rule.id,
    topic: rule.topic,
    title: rule.title,
    verdict: 'not checked',
    subject,
    path,
    measured: { kind, value: measured.value },
    ...(expanded > 0 && { tolerance: { kind, value: expanded } }),
    ...(state && { worstState: state }),
    reason,
    sources: [...(sources ?? []), ...rule.sources],
    cautions: [...rule.cautions, ...(cautions ?? [])],
  };
}

const doubtOf = (kind: Kind, expanded: number, dominant: string | undefined): Phrase =>
  dominant === undefined
    ? say` The limit lies within the tolerance of ± ${{ kind, value: expanded }}.`
    : say` The limit lies within the tolerance of ± ${{ kind, value: expanded }}, most of which comes from ${sourceInWords(dominant)}.`;

const section = '(?:fixtures|stores|tanks|build_ups|people\\.seats|van)';
const placePattern = new RegExp(`^${section}\\.(.+?)(?:\\.at)?\\.(lengthways|sideways|upwards)(\\.size)?$`);
const sizeAlong = new Map([
  ['lengthways', 'length'],
  ['sideways', 'width'],
  ['upwards', 'height'],
]);

/** An error's source as a reader knows it: "where bed is lengthways", "the width of bed", "the density of oak". */
export function sourceInWords(source: string): string {
  const material = /^(?:material|fluid) (.+)$/.exec(source)?.[1];
  if (material !== undefined) return `the density of ${material}`;
  const [, name = '', direction = '', size] = placePattern.exec(source) ?? [];
  const thing = source.startsWith('van.') ? `the ${name.replaceAll('_', ' ')}` : name;
  if (size !== undefined) return `the ${sizeAlong.get(direction)} of ${thing}`;
  return name === '' ? `\`${source}\`` : `where ${thing} is ${direction}`;
}
