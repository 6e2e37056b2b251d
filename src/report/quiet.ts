import type { Finding } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { sentenceOf } from './figures.ts';
import { missingText } from './missing-text.ts';
import { couldNotBegin } from './not-checked.ts';
import type { Pen } from './pen.ts';
import { placeText } from './place.ts';
import { visible } from './visible.ts';
import { verdictText, waiverText } from './waiver-text.ts';
import { hanging } from './wrap.ts';

const indent = 6;

/** A finding in one line: verdict, rule, subject, reason and place; folded only where the line is too long. */
export function quietLines(
  report: Pick<Report, 'file' | 'spot' | 'units'>,
  finding: Finding,
  pen: Pen,
  width: number,
  /** What is said behind the verdict: ", was pass". */
  history = '',
): string[] {
  const { verdict, rule, subject, reason, path, waived } = finding;
  const { missing = [] } = finding;
  // That the plan does not say enough, a hundred times over, would bury the line that matters.
  const sentence =
    couldNotBegin(finding) && missing.length > 0
      ? `missing ${missing.join(', ')}`
      : sentenceOf(finding, reason, report.units) + missingText(finding);
  const waiver = waived ? `  (${waiverText(waived)})` : '';
  const text = visible(`${rule}  ${subject}: ${sentence}${waiver}  ${placeText(report, path)}`);
  const [first = '', ...rest] = hanging(`${verdictText(finding)}${history}  ${text}`, indent, width);
  return [pen.verdict[verdict](verdict) + first.slice(verdict.length), ...rest];
}
