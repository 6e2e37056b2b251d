import type { Finding, Verdict } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { type Pen, penOf } from './pen.ts';
import { quietLines } from './quiet.ts';
import { countsText, distinct } from './summary.ts';
import { visible } from './visible.ts';
import { hanging, wrapped } from './wrap.ts';

export interface ShortOptions {
  readonly width: number;
  readonly colour: boolean;
  /** Findings of these verdicts get a line each, and so do waivers that do not hold. */
  readonly shown: readonly Verdict[];
  /** Stands behind the plan's name: "as staged". */
  readonly remark: string;
}

/** A plan's counts in a line, then the findings that matter here, with what to beware of in them. */
export function renderShort(report: Report, { width, colour, shown, remark }: ShortOptions): string {
  const pen = penOf(colour);
  const told = report.findings.filter((finding) => shown.includes(finding.verdict) || doesNotHold(finding));
  const lines = [
    ...wrapped(visible(`${report.file}, ${remark}: ${countsText(report.findings)}`), width).map(pen.strong),
    ...told.flatMap((finding) => quietLines(report, finding, pen, width)),
    ...cautionLines(told, pen, width),
  ];
  return `${lines.join('\n')}\n`;
}

/** A waiver that has ended, or covers nothing: it tells why something counts again, and nobody looks for it. */
export const doesNotHold = ({ topic, verdict }: Finding): boolean => topic === 'plan' && verdict !== 'pass';

/** What to beware of in all that was said of these findings; each caution once. */
export function cautionLines(findings: readonly Finding[], pen: Pen, width: number): readonly string[] {
  const cautions = distinct(findings.flatMap(({ cautions }) => cautions).map(visible));
  if (cautions.length === 0) return [];
  return [pen.caution('Caution'), ...cautions.flatMap((text) => hanging(`- ${text}`, 2, width))];
}
