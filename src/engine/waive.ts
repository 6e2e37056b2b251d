import type { Waiver } from '../build/build.ts';
import type { Finding, Verdict, Waived } from './finding.ts';
import type { Rule } from './rule.ts';
import type { WaiverState, WaiverUse } from './waiver.ts';

/** A reason shorter than this is none: own choice, as for limits of the plan's own. */
const leastReason = 5;

const hasReason = ({ reason = '' }: Waiver): boolean => reason.trim().length >= leastReason;

/**
 * Applies the waivers of a plan to what its rules found. A waiver covers failures and warnings of its check, those about
 * its subject if it names one; the verdicts stay. Dates are compared as text: year, month, day.
 */
export function waive(
  findings: readonly Finding[],
  waivers: readonly Waiver[],
  rules: readonly Rule[],
  today: string,
): { readonly findings: readonly Finding[]; readonly uses: readonly WaiverUse[] } {
  if (waivers.length === 0) return { findings, uses: [] };
  const lifeSafety = new Set(rules.filter((rule) => rule.lifeSafety).map(({ id }) => id));
  const covered = new Map<Finding, Waived>();
  const coveredBy = new Map<Waiver, readonly Finding[]>();
  const holds = (waiver: Waiver): boolean => hasReason(waiver) && !hasEnded(waiver, today);
  // Those that hold go first, so that an old one left beside the new one is not said to make anything count again. One
  // that names a subject goes before one for the whole check, which then covers the rest.
  const byCare = [...waivers].sort(
    (a, b) =>
      Number(holds(b)) - Number(holds(a)) ||
      Number(b.subject !== undefined) - Number(a.subject !== undefined),
  );
  for (const waiver of byCare) {
    const matching = findings.filter((finding) => isMeant(waiver, finding) && !covered.has(finding));
    coveredBy.set(waiver, matching);
    if (!holds(waiver)) continue;
    const { reason = '', by, until, path } = waiver;
    for (const finding of matching) {
      const as = lifeSafety.has(finding.rule) ? 'acknowledged' : 'waived';
      covered.set(finding, { as, reason, by, until, path });
    }
  }
  const withWaivers = new Map(
    findings.map((finding) => {
      const waived = covered.get(finding);
      return [finding, waived ? { ...finding, waived } : finding] as const;
    }),
  );
  const told = (each: Finding): Finding => withWaivers.get(each) ?? each;
  return {
    findings: findings.map(told),
    uses: waivers.map((waiver) => {
      const found = coveredBy.get(waiver) ?? [];
      return {
        waiver,
        state: stateOf(waiver, found, today),
        findings: found.map(told),
        ofCheck: findings.filter(({ rule }) => rule === waiver.check).map(told),
      };
    }),
  };
}

/** The last day counts. */
const hasEnded = ({ until }: Waiver, today: string): boolean => today > until;

function stateOf(waiver: Waiver, found: readonly Finding[], today: string): WaiverState {
  if (found.length === 0) return 'covers nothing';
  if (hasEnded(waiver, today)) return 'has ended';
  return hasReason(waiver) ? 'covers' : 'has no reason';
}

const isMeant = ({ check, subject }: Waiver, { rule, verdict, subject: about }: Finding): boolean =>
  rule === check &&
  (verdict === 'fail' || verdict === 'warn') &&
  (subject === undefined || foldedSubject(subject) === foldedSubject(about));

/** Neither capitals nor doubled spaces make another subject. */
export const foldedSubject = (subject: string): string => subject.trim().replace(/\s+/g, ' ').toLowerCase();

/** A failure that no waiver made to stand aside: it fails the plan. An acknowledged one is among them. */
export const stands = ({ waived }: Standing): boolean => waived?.as !== 'waived';

/** A verdict with what a waiver of the plan makes of it. */
export interface Judged extends Standing {
  readonly verdict: Verdict;
}

interface Standing {
  readonly waived?: Pick<Waived, 'as'> | undefined;
}

/** "fail"; "fail, waived"; of a check about life and limb "fail, acknowledged". */
export const verdictText = ({ verdict, waived }: Judged): string =>
  waived ? `${verdict}, ${waived.as}` : verdict;
