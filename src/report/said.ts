import type { Finding } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { figuresOf, sentenceOf } from './figures.ts';
import { missingText } from './missing-text.ts';
import { placeText } from './place.ts';
import { sourceText } from './source-text.ts';
import { distinct } from './summary.ts';
import { visible } from './visible.ts';
import { verdictText, waiverText } from './waiver-text.ts';

/** The result of a finding in one sentence, with the keys that are missing. */
export const resultText = (finding: Finding, units: Report['units']): string =>
  sentenceOf(finding, finding.reason, units) + missingText(finding);

/**
 * All that a finding says, a line each, for formats that carry plain text. The cautions come last and each on a line
 * of its own, so that no reader of a long line misses one.
 */
export function saidLines(report: Report, finding: Finding): string[] {
  const { subject, rule, path, remedy, worstState, waived, assumptions = [], sources, cautions } = finding;
  const { measured, limit, margin } = figuresOf(finding, report.units);
  const lines: readonly (readonly [label: string, text: string | undefined])[] = [
    [verdictText(finding), `${subject}: ${resultText(finding, report.units)}`],
    ['measured', measured],
    ['limit', limit],
    ['margin', margin],
    ['state', worstState?.text],
    ['do', remedy && sentenceOf(finding, remedy, report.units)],
    ['waiver', waived && waiverText(waived)],
    ...assumptions.map((text) => ['assumes', text] as const),
    ...sources.map((source) => ['source', sourceText(source)] as const),
    ['where', `${placeText(report, path)}, check ${rule}`],
    ...distinct(cautions).map((text) => ['caution', text] as const),
  ];
  return lines.flatMap(([label, text = '']) => (text === '' ? [] : [visible(`${label}: ${text}`)]));
}
