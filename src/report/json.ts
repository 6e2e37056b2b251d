import type { Citation } from '../catalogue/citation.ts';
import type { Assumption, Finding, Note, PlanPath } from '../engine/finding.ts';
import type { Kind, Measure } from '../engine/measure.ts';
import type { Report } from '../engine/report.ts';
import { sumOf, tallyOf } from '../engine/tally.ts';
import { sentenceOf } from './figures.ts';
import { formatMeasure, formatNonZero, formatPair, renderPhrase } from './format-measure.ts';
// The type only: the schema's library takes longer to load than a plan to check.
import type { JsonReport } from './json-schema.ts';
import { closestToLimit } from './summary.ts';

type JsonFinding = JsonReport['findings'][number];
type JsonNote = JsonReport['notes'][number];
type JsonAssumption = JsonReport['assumptions'][number];
type JsonSource = JsonFinding['sources'][number];
type JsonMeasure = NonNullable<JsonFinding['measured']>;

export interface JsonOptions {
  /** The tool's version. */
  readonly version: string;
  readonly exitCode: number;
  readonly strict: boolean;
}

/** Writes a report as JSON, as `json-schema.ts` describes it. Ends with a line break. */
export function renderJson(report: Report, options: JsonOptions): string {
  return `${escaped(JSON.stringify(jsonReport(report, options), undefined, 2))}\n`;
}

function jsonReport(report: Report, { version, exitCode, strict }: JsonOptions): JsonReport {
  const { file, name, codes, units, findings, notes, assumptions } = report;
  const { counts, waived, acknowledged } = tallyOf(findings);
  const closest = closestToLimit(findings);
  return {
    schemaVersion: 1,
    tool: { name: 'storystick', version },
    plan: { file, name, codes, units },
    summary: {
      fail: counts.fail,
      warn: counts.warn,
      notChecked: counts['not checked'],
      pass: counts.pass,
      waived: sumOf(waived),
      acknowledged: sumOf(acknowledged),
      exitCode,
      strict,
      closest: closest
        ? { rule: closest.rule, subject: closest.subject, utilisation: closest.utilisation }
        : null,
    },
    findings: findings.map((finding) => jsonFinding(report, finding)),
    notes: notes.map((note) => jsonNote(report, note)),
    assumptions: assumptions.map((assumption) => jsonAssumption(report, assumption)),
  };
}

export function jsonFinding(report: Pick<Report, 'units' | 'spot'>, finding: Finding): JsonFinding {
  const { units } = report;
  const { measured, limit, margin, tolerance, worstState, remedy, waived } = finding;
  const pair = measured && limit ? formatPair(measured, limit.measure, units) : undefined;
  return {
    rule: finding.rule,
    topic: finding.topic,
    title: finding.title,
    verdict: finding.verdict,
    subject: finding.subject,
    ...jsonPlace(report, finding.path),
    measured: measured ? jsonMeasure(measured, pair?.measured ?? formatMeasure(measured, units)) : null,
    limit: limit
      ? {
          ...jsonMeasure(limit.measure, pair?.limit ?? formatMeasure(limit.measure, units)),
          sense: limit.sense,
        }
      : null,
    margin: margin ? jsonMeasure(margin, formatNonZero(margin, units)) : null,
    // An infinite one, over a limit of nothing, is written as null too: JSON has no infinity.
    utilisation: finding.utilisation ?? null,
    tolerance: tolerance ? jsonMeasure(tolerance, formatNonZero(tolerance, units)) : null,
    probability: finding.probability ?? null,
    worstState: worstState
      ? {
          text: worstState.text,
          fills: worstState.fills.map(({ name, massKg, share }) => ({ name, massKg, share })),
        }
      : null,
    reason: sentenceOf(finding, finding.reason, units),
    remedy: remedy ? sentenceOf(finding, remedy, units) : null,
    waived: waived
      ? {
          as: waived.as,
          reason: waived.reason,
          by: waived.by,
          until: waived.until,
          ...jsonPlace(report, waived.path),
        }
      : null,
    missing: [...(finding.missing ?? [])],
    assumptions: [...(finding.assumptions ?? [])],
    sources: finding.sources.map(jsonSource),
    cautions: [...finding.cautions],
  };
}

function jsonNote({ units }: Report, note: Note): JsonNote {
  const { rule, topic, title, detailOnly, columns, rows, text, sources, cautions } = note;
  return {
    rule,
    topic,
    title,
    detailOnly,
    columns: [...columns],
    rows: rows.map((row) =>
      row.map((cell) => ({
        text: renderPhrase(cell, units),
        measures: cell
          .filter((part) => typeof part !== 'string')
          .map((measure) => jsonMeasure(measure, formatMeasure(measure, units))),
      })),
    ),
    text: text ? renderPhrase(text, units) : null,
    sources: sources.map(jsonSource),
    cautions: [...cautions],
  };
}

const jsonAssumption = (report: Report, { path, text, source }: Assumption): JsonAssumption => ({
  ...jsonPlace(report, path),
  text: renderPhrase(text, report.units),
  source: source ? jsonSource(source) : null,
});

export function jsonPlace({ spot }: Pick<Report, 'spot'>, path: PlanPath) {
  const { line, column } = spot(path) ?? { line: null, column: null };
  return { path: path.join('.'), keys: [...path], line, column };
}

export const jsonSource = ({ title, readAt, provenance, caution }: Citation): JsonSource => ({
  title,
  readAt: readAt ?? null,
  provenance,
  caution: caution ?? null,
});

const siUnits: Readonly<Record<Kind, JsonMeasure['unit']>> = {
  mass: 'kg',
  length: 'm',
  area: 'm2',
  volume: 'm3',
  'small volume': 'm3',
  'areal mass': 'kg/m2',
  density: 'kg/m3',
  share: '1',
  factor: '1',
  count: '1',
  current: 'A',
  voltage: 'V',
  power: 'W',
  energy: 'J',
  charge: 'C',
  resistance: 'ohm',
  'resistance per metre': 'ohm',
  duration: 's',
  temperature: 'K',
  'close temperature': 'K',
  'cross-section': 'm2',
  pressure: 'Pa',
  'water pressure': 'Pa',
  flow: 'm3/s',
  'air flow': 'm3/s',
  'air volume': 'm3',
  draught: 'Pa',
  'mass flow': 'kg/s',
  wait: 's',
  'temperature difference': 'K',
  transmittance: 'W/(m2.K)',
  conductance: 'W/K',
  'heat resistance': 'm2.K/W',
  'heat capacity': 'J/K',
  'specific heat': 'J/(kg.K)',
  'free area': 'm2',
  concentration: '1',
  condensate: 'kg/m2',
  'small mass': 'kg',
};

export const jsonMeasure = ({ kind, value }: Measure, text: string): JsonMeasure => ({
  value,
  unit: siUnits[kind],
  text,
});

/**
 * Escapes what a terminal would obey or that turns the reading direction round, and that JSON itself would leave
 * raw; a reader of the JSON gets back the same text.
 */
export const escaped = (json: string): string =>
  json.replace(
    /[\u007f-\u009f\u2028\u2029\p{Bidi_Control}]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
