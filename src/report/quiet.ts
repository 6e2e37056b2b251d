import type { Finding } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { sentenceOf } from './figures.ts';
import { missingText } from './missing-text.ts';
import type { Pen } from './pen.ts';
import { placeText } from './place.ts';
import { visible } from './visible.ts';
import { hanging } from './wrap.ts';

const indent = 6;

/** A finding in one line: verdict, rule, subject, reason and place; folded only where the line is too long. */
export function quietLines(report: Report, finding: Finding, pen: Pen, width: number): string[] {
  const { verdict, rule, subject, reason, path } = finding;
  const sentence = sentenceOf(finding, reason, report.units) + missingText(finding);
  const text = visible(`${rule}  ${subject}: ${sentence}  ${placeText(report, path)}`);
  const [first = '', ...rest] = hanging(`${verdict}  ${text}`, indent, width);
  return [pen.verdict[verdict](verdict) + first.slice(verdict.length), ...rest];
}
