import type { VariantRow, Variants } from '../../engine/compare/variants.ts';
import type { Measure } from '../../engine/measure.ts';
import { formatMeasure, formatNonZero, type Units } from '../format-measure.ts';
import { escaped, jsonMeasure } from '../json.ts';
import { jsonTally } from '../json-tally.ts';
import { distinct } from '../summary.ts';
// The type only: the schema's library takes longer to load than a plan to check.
import type { JsonVariants } from './json-schema.ts';

/** Writes variants as JSON, as `json-schema.ts` describes it. Ends with a line break. */
export function renderJsonVariants(
  { sides, rows }: Variants,
  { version }: { readonly version: string },
): string {
  const units = sides[0]?.units ?? 'metric';
  const document: JsonVariants = {
    schemaVersion: 1,
    kind: 'compare',
    tool: { name: 'storystick', version },
    units,
    variants: sides.map((side) => ({
      file: side.file,
      name: side.name,
      codes: side.codes,
      summary: jsonTally(side),
    })),
    rows: rows.map((row) => jsonRow(row, units)),
  };
  return `${escaped(JSON.stringify(document, undefined, 2))}\n`;
}

function jsonRow(row: VariantRow, units: Units): JsonVariants['rows'][number] {
  const { identity, rule, topic, title, subject, findings, best, isSame } = row;
  const measured = (measure: Measure | undefined, text: typeof formatNonZero) =>
    measure ? jsonMeasure(measure, text(measure, units)) : null;
  return {
    identity,
    rule,
    topic,
    title,
    subject,
    same: isSame,
    cells: findings.map((finding, at) =>
      finding
        ? {
            verdict: finding.verdict,
            waived: finding.waived?.as ?? null,
            measured: measured(finding.measured, formatMeasure),
            margin: measured(finding.margin, formatNonZero),
            best: best.includes(at),
          }
        : null,
    ),
    cautions: distinct(findings.flatMap((finding) => finding?.cautions ?? [])),
  };
}
