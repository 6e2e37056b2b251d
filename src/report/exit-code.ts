import type { Report } from '../engine/report.ts';

/**
 * The exit code that a report asks for: 1 when a check failed, and with `strict` also when one warned. What could
 * not be checked never fails: a plan may grow section by section, and says itself what it is still missing.
 */
export const exitCodeOf = ({ findings }: Pick<Report, 'findings'>, { strict }: { strict: boolean }): 0 | 1 =>
  findings.some(({ verdict }) => verdict === 'fail' || (strict && verdict === 'warn')) ? 1 : 0;
