import type { Report } from '../engine/report.ts';
import { stands } from '../engine/waive.ts';

/**
 * The exit code that a report asks for: 1 when a check failed, and with `strict` also when one warned. What could
 * not be checked never fails: a plan may grow section by section, and says itself what it is still missing. What a waiver
 * makes stand aside does not count; what is only acknowledged does.
 */
export const exitCodeOf = ({ findings }: Pick<Report, 'findings'>, { strict }: { strict: boolean }): 0 | 1 =>
  findings.some(
    (finding) => stands(finding) && (finding.verdict === 'fail' || (strict && finding.verdict === 'warn')),
  )
    ? 1
    : 0;
