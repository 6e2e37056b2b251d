import { type Finding, saysTooLittle } from '../finding.ts';
import { identitiesOf } from '../identity.ts';
import type { Rename } from './edits.ts';

/** A finding of one plan and the one of the other that says the same thing, as far as there is one. */
export interface PairOfFindings {
  readonly identity: string;
  readonly before?: Finding;
  readonly after?: Finding;
}

/**
 * Findings of two plans that are about the same: by their identity, then by what it would be under the new names of what
 * was renamed. A check that could not begin in one plan is the other side of all that it found in the other plan.
 */
export function pairFindings(
  before: readonly Finding[],
  after: readonly Finding[],
  renames: readonly Rename[],
): readonly PairOfFindings[] {
  const [old, now] = [identified(before), identified(after)];
  const partners = new Map<Finding, Finding>();
  for (const [identity, finding] of now) {
    const same = old.get(identity);
    if (same) partners.set(finding, same);
  }
  const found = new Set(partners.values());
  const underNewNames = new Map(
    [...identified(before, neutral(renames, 'from'))].filter(([, finding]) => !found.has(finding)),
  );
  for (const [identity, finding] of identified(after, neutral(renames, 'to'))) {
    const same = partners.has(finding) ? undefined : underNewNames.get(identity);
    if (!same) continue;
    partners.set(finding, same);
    found.add(same);
  }
  const unbegunBefore = unbegun(before.filter((each) => !found.has(each)));
  const unbegunAfter = unbegun(after.filter((each) => !partners.has(each)));
  const begun = new Set<Finding>();
  const pairs: PairOfFindings[] = [];
  for (const [identity, finding] of now) {
    const partner = partners.get(finding) ?? unbegunBefore.get(finding.rule);
    if (partner && !found.has(partner)) begun.add(partner);
    pairs.push({ identity, after: finding, ...(partner && { before: partner }) });
  }
  const stopped = new Set<Finding>();
  const gone: PairOfFindings[] = [];
  for (const [identity, finding] of old) {
    if (found.has(finding) || begun.has(finding)) continue;
    const partner = unbegunAfter.get(finding.rule);
    if (partner) stopped.add(partner);
    gone.push({ identity, before: finding, ...(partner && { after: partner }) });
  }
  return [...pairs.filter(({ after: finding }) => !finding || !stopped.has(finding)), ...gone];
}

/** By rule, the finding that it could not begin. */
const unbegun = (findings: readonly Finding[]): ReadonlyMap<string, Finding> =>
  new Map(findings.filter(({ reason }) => reason === saysTooLittle).map((each) => [each.rule, each]));

/** Findings by identity, in their order. */
function identified(
  findings: readonly Finding[],
  spelling: (subject: string) => string = (subject) => subject,
): ReadonlyMap<string, Finding> {
  const spelt = findings.map(({ rule, subject }) => ({ rule, subject: spelling(subject) }));
  const identities = identitiesOf(spelt);
  return new Map(findings.map((finding, at) => [identities[at] ?? '', finding]));
}

/** Puts the same mark for the old name into the one plan's subjects and for the new name into the other's. */
function neutral(renames: readonly Rename[], name: 'from' | 'to'): (subject: string) => string {
  if (renames.length === 0) return (subject) => subject;
  const marks = new Map(
    renames.map((rename) => [rename[name], `\u0001${[rename.from, rename.to].sort().join('\u0001')}`]),
  );
  // The longest first: a name may begin like another.
  const names = [...marks.keys()].sort((a, b) => b.length - a.length).map(escapedForPattern);
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${names.join('|')})(?![\\p{L}\\p{N}])`, 'gu');
  return (subject) => subject.replace(pattern, (found) => marks.get(found) ?? found);
}

const escapedForPattern = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
