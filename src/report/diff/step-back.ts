import type { Comparison } from '../../engine/compare/comparison.ts';
import { isStepBack } from '../../engine/compare/standing.ts';
import type { Report } from '../../engine/report.ts';

/** The second plan's report with only those findings that are a step back: for formats that know no comparison. */
export function stepsBack({ verdicts }: Comparison, report: Report): Report {
  const worse = verdicts.filter(isStepBack).flatMap((change) => ('after' in change ? [change.after] : []));
  return { ...report, findings: report.findings.filter((finding) => worse.includes(finding)), notes: [] };
}
