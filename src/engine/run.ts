import type { Build } from '../build/build.ts';
import { type LengthLimitId, lengthLimit } from '../catalogue/fit-limits.ts';
import { type LimitId, limitFor, limitIds } from '../catalogue/limits.ts';
import { isWaterLimitId, type WaterLimitId, waterLimits } from '../catalogue/water/limits.ts';
import { type Finding, type Note, saysTooLittle, topics, verdicts } from './finding.ts';
import { say } from './phrase.ts';
import type { AnyLimitId, EffectiveLimit, Rule } from './rule.ts';

/** A defect of a rule, not of the plan: it threw. The other rules still ran. */
export interface Defect {
  readonly rule: string;
  readonly message: string;
}

export interface Outcome {
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
  readonly defects: readonly Defect[];
}

/** Runs every rule over a build. A rule whose inputs are missing yields "not checked" with the keys to add. */
export function runRules(rules: readonly Rule[], build: Build): Outcome {
  const findings: Finding[] = [];
  const notes: Note[] = [];
  const defects: Defect[] = [];
  for (const rule of rules) {
    try {
      const output = rule.run(build, (id) => effectiveLimit(rule, id, build));
      if ('missing' in output) {
        if (!rule.informationOnly) findings.push(notChecked(rule, output.missing));
      } else {
        findings.push(...output.findings);
        notes.push(...(output.notes ?? []));
      }
    } catch (error) {
      defects.push({ rule: rule.id, message: error instanceof Error ? error.message : String(error) });
    }
  }
  return { findings, notes, defects };
}

export function notChecked(rule: Rule, missing: readonly string[]): Finding {
  return {
    rule: rule.id,
    topic: rule.topic,
    title: rule.title,
    verdict: 'not checked',
    subject: rule.title,
    path: rule.place,
    reason: saysTooLittle,
    remedy: say`Add ${missing.map((key) => `\`${key}\``).join(', ')}.`,
    missing,
    sources: rule.sources,
    cautions: rule.cautions,
  };
}

/** A limit in force for a rule: of the plan's region, or the plan's own. */
export function effectiveLimit(rule: Rule, id: AnyLimitId, build: Build): EffectiveLimit {
  const override =
    rule.override?.limit === id ? build.overrides.find((each) => each.rule === rule.id) : undefined;
  const published = publishedLimit(id, build);
  if (!override) return published;
  const { limit, reason } = override;
  return {
    ...published,
    value: limit.value,
    citations: [
      { title: `The plan's own limit: ${reason}`, provenance: 'own choice' },
      ...published.citations,
    ],
  };
}

function publishedLimit(id: AnyLimitId, build: Build): EffectiveLimit {
  if (isWaterLimitId(id)) return waterLimit(id);
  return isRegional(id) ? regionalLimit(id, build) : bodyLimit(id);
}

const isRegional = (id: AnyLimitId): id is LimitId => limitIds.some((each) => each === id);

function regionalLimit(id: LimitId, build: Build): EffectiveLimit {
  // Without a region the plan is held to the European figure, and it can only warn.
  const { value, citations, caution, force } = limitFor(id, build.codes ?? 'us');
  return { value, citations, cautions: caution ? [caution] : [], failing: force === 'law' };
}

function bodyLimit(id: LengthLimitId): EffectiveLimit {
  const { valueM, citations, caution, force } = lengthLimit(id);
  return { value: valueM, citations, cautions: caution ? [caution] : [], failing: force === 'law' };
}

function waterLimit(id: WaterLimitId): EffectiveLimit {
  const { value, citations, caution, force } = waterLimits[id];
  return { value, citations, cautions: caution ? [caution] : [], failing: force === 'law' };
}

/** Topic by topic, the worst verdict first, then in the order of the plan: the same for the same plan, always. */
export function sortFindings(findings: readonly Finding[], lineOf: (finding: Finding) => number): Finding[] {
  const rank = (finding: Finding): number[] => [
    topics.indexOf(finding.topic),
    verdicts.indexOf(finding.verdict),
    -(finding.utilisation ?? 0),
    lineOf(finding),
  ];
  return findings
    .map((finding) => ({ finding, ranks: rank(finding), name: `${finding.rule} ${finding.subject}` }))
    .sort((a, b) => {
      const differing = a.ranks.findIndex((value, index) => value !== b.ranks[index]);
      if (differing >= 0) return (a.ranks[differing] ?? 0) - (b.ranks[differing] ?? 0);
      return a.name < b.name ? -1 : 1;
    })
    .map(({ finding }) => finding);
}
