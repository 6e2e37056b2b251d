import type { ExplainedLimit, Explanation } from '../../engine/explanation.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { formatMeasure, renderPhrase, type Units } from '../format-measure.ts';
import { escaped, jsonFinding, jsonMeasure, jsonPlace, jsonSource } from '../json.ts';
import type { Explained, ExplainedFinding } from './explained.ts';
// The type only: the schema's library takes longer to load than a plan to check.
import type { JsonExplained } from './json-schema.ts';

type InPlan = NonNullable<Explained['inPlan']>;
type JsonStep = NonNullable<JsonExplained['findings']>[number]['working'][number];

/** Writes an explanation as JSON, as `json-schema.ts` describes it. Ends with a line break. */
export function renderJsonExplained(
  { checks, inPlan }: Explained,
  { version }: { readonly version: string },
): string {
  const units = inPlan?.report.units ?? 'metric';
  const document: JsonExplained = {
    schemaVersion: 1,
    kind: 'explain',
    tool: { name: 'storystick', version },
    units,
    checks: checks.map((check) => jsonCheck(check, units)),
    plan: inPlan ? { file: inPlan.report.file, name: inPlan.report.name, codes: inPlan.report.codes } : null,
    findings: inPlan ? inPlan.findings.map((each) => jsonExplainedFinding(inPlan, each)) : null,
  };
  return `${escaped(JSON.stringify(document, undefined, 2))}\n`;
}

function jsonCheck(check: Explanation, units: Units): JsonExplained['checks'][number] {
  const { id, topic, title, why, formula, fix, limits, settable, waivable, informationOnly } = check;
  return {
    id,
    topic,
    title,
    why,
    formula,
    fix: fix ?? null,
    limits: limits.map((limit) => jsonLimit(limit, units)),
    settable: settable ?? null,
    waivable,
    informationOnly,
    sources: check.sources.map(jsonSource),
    cautions: [...check.cautions],
  };
}

const jsonLimit = (
  { id, value, sense, of, force, codes, sources, caution }: ExplainedLimit,
  units: Units,
): JsonExplained['checks'][number]['limits'][number] => ({
  id,
  value: jsonMeasure(value, formatMeasure(value, units)),
  sense,
  of,
  force,
  codes: [...codes],
  sources: sources.map(jsonSource),
  caution: caution ?? null,
});

function jsonExplainedFinding(
  inPlan: InPlan,
  { finding, typed }: ExplainedFinding,
): NonNullable<JsonExplained['findings']>[number] {
  return {
    ...jsonFinding(inPlan.report, finding),
    typed: typed.flatMap(({ values }) =>
      values.map(({ path, text }) => ({ ...placeIn(inPlan, path), text })),
    ),
    working: (finding.working ?? []).map((step) => jsonStep(inPlan, step)),
  };
}

function jsonStep(inPlan: InPlan, { what, sum, result, paths = [], parts }: Step): JsonStep {
  const { units } = inPlan.report;
  return {
    what,
    sum: sum ? renderPhrase(sum, units) : null,
    result: result ? jsonMeasure(result, formatMeasure(result, units)) : null,
    places: paths.filter(inPlan.isWritten).map((path) => placeIn(inPlan, path)),
    parts: parts
      ? {
          columns: [...parts.columns],
          rows: parts.rows.map(({ name, path, origin, values, adds }) => ({
            name,
            ...placeIn(inPlan, path),
            origin,
            values: [...values, adds].map((measure) => jsonMeasure(measure, formatMeasure(measure, units))),
          })),
        }
      : null,
  };
}

/** What is not written has no line, though something above it has one. */
function placeIn({ report, isWritten }: InPlan, path: PlanPath) {
  const place = jsonPlace(report, path);
  return isWritten(path) ? place : { ...place, line: null, column: null };
}
