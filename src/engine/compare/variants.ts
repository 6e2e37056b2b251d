import { type Finding, saysTooLittle, type Topic, topics } from '../finding.ts';
import { identitiesOf } from '../identity.ts';
import type { Report } from '../report.ts';
import type { Compared } from './compare.ts';
import type { Side } from './comparison.ts';
import { editsBetween } from './edits.ts';
import { pairFindings } from './pair-findings.ts';
import { sideOf } from './side.ts';
import { compareStandings } from './standing.ts';
import { isSameNumber } from './values.ts';

/** What a check says of one thing in each variant. */
export interface VariantRow {
  /** What the finding is known by, in the first variant that has it. */
  readonly identity: string;
  readonly rule: string;
  readonly topic: Topic;
  readonly title: string;
  readonly subject: string;
  /** One for each variant, in their order; undefined where a variant has no such finding. */
  readonly findings: readonly (Finding | undefined)[];
  /** Which of the variants are best; empty where none is better than another. */
  readonly best: readonly number[];
  /** All variants have the same verdict and the same value. */
  readonly isSame: boolean;
}

export interface Variants {
  readonly sides: readonly Side[];
  /** By topic; the worst first. */
  readonly rows: readonly VariantRow[];
}

/** Puts the findings of several variants of a plan side by side. Things that were renamed are found again. */
export function besideEachOther(variants: readonly Compared[]): Variants {
  const rows = new Map<string, (Finding | undefined)[]>();
  const put = (identity: string, at: number, finding: Finding) => {
    const row = rows.get(identity) ?? variants.map(() => undefined);
    row[at] = finding;
    rows.set(identity, row);
  };
  const [first, ...others] = variants;
  const begun = new Set<Finding>();
  const namesInFirst = first ? namesOf(first.report) : new Map<Finding, string>();
  others.forEach((other, index) => {
    const { renames } = first ? editsBetween(first, other) : { renames: [] };
    for (const { identity, before, after } of pairFindings(
      first?.report.findings ?? [],
      other.report.findings,
      renames,
    )) {
      const isUnbegun = before?.reason === saysTooLittle && after?.reason !== saysTooLittle;
      if (isUnbegun && before && after) {
        begun.add(before);
        put(identity, 0, before);
      }
      const name = before && !isUnbegun ? (namesInFirst.get(before) ?? identity) : identity;
      if (after) put(name, index + 1, after);
    }
  });
  for (const [finding, name] of namesInFirst) if (!begun.has(finding)) put(name, 0, finding);
  return {
    sides: variants.map(sideOf),
    rows: [...rows].flatMap(([identity, findings]) => rowOf(identity, findings)).sort(byTopicAndWorst),
  };
}

const namesOf = ({ findings }: Report): ReadonlyMap<Finding, string> => {
  const names = identitiesOf(findings);
  return new Map(findings.map((finding, at) => [finding, names[at] ?? '']));
};

function rowOf(identity: string, findings: readonly (Finding | undefined)[]): VariantRow[] {
  const shown =
    findings.find((each) => each !== undefined && each.reason !== saysTooLittle) ??
    findings.find((each) => each !== undefined);
  if (!shown) return [];
  const { rule, topic, title, subject } = shown;
  const isSame = findings.every((each) => each !== undefined && isLike(each, shown));
  return [{ identity, rule, topic, title, subject, findings, best: isSame ? [] : bestOf(findings), isSame }];
}

const isLike = (one: Finding, other: Finding): boolean =>
  one.verdict === other.verdict &&
  one.waived?.as === other.waived?.as &&
  isSameValue(one.measured?.value, other.measured?.value) &&
  isSameValue(one.margin?.value, other.margin?.value);

const isSameValue = (one: number | undefined, other: number | undefined): boolean =>
  one === other ||
  (one !== undefined && other !== undefined && (isSameNumber(one, other) || Math.abs(one - other) < 1e-9));

/** By the verdict, then by the margin where all of the best verdict have one. None is best where all are. */
function bestOf(findings: readonly (Finding | undefined)[]): readonly number[] {
  const there = findings.flatMap((finding, at) => (finding ? [{ finding, at }] : []));
  const leading = there.filter(({ finding }) =>
    there.every((other) => compareStandings(finding, other.finding) <= 0),
  );
  const margins = leading.flatMap(({ finding: { margin } }) => (margin ? [margin.value] : []));
  const most = Math.max(...margins);
  const best =
    margins.length === leading.length
      ? leading.filter(({ finding: { margin } }) => isSameValue(margin?.value, most))
      : leading;
  return best.length === there.length ? [] : best.map(({ at }) => at);
}

/** The finding that stands worst. */
const worstOf = ({ findings }: VariantRow): Pick<Finding, 'verdict' | 'waived'> =>
  findings.reduce<Pick<Finding, 'verdict' | 'waived'>>(
    (worst, finding) => (finding && compareStandings(finding, worst) > 0 ? finding : worst),
    { verdict: 'pass' },
  );

const byTopicAndWorst = (one: VariantRow, other: VariantRow): number =>
  topics.indexOf(one.topic) - topics.indexOf(other.topic) || compareStandings(worstOf(other), worstOf(one));
