import XMLBuilder from 'fast-xml-builder';
import { type Finding, type Topic, topics } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { stands } from '../engine/waive.ts';
import { resultText, saidLines } from './said.ts';
import { distinct } from './summary.ts';
import { visible } from './visible.ts';
import { verdictText, waiverText } from './waiver-text.ts';

export interface JunitOptions {
  /** Lets warnings fail, as the command's exit code then does. */
  readonly strict: boolean;
}

/**
 * Writes a report as JUnit XML: a test suite for each topic, a test case for each finding. The format knows no warning:
 * one is a test that passes, with `status="warn"` and the warning in its output, unless warnings are to fail. What could
 * not be checked is skipped, and so is what a waiver makes stand aside. There are no times in it, so that the same plan gives the same file. Ends with a line break.
 */
export function renderJunit(report: Report, options: JunitOptions): string {
  const suites = topics.flatMap((topic, at) => suiteOf(report, topic, at, options));
  const builder = new XMLBuilder({
    ignoreAttributes: false,
    attributeNamePrefix: '@',
    format: true,
    suppressEmptyNode: true,
  });
  return builder.build({
    '?xml': { '@version': '1.0', '@encoding': 'UTF-8' },
    testsuites: {
      '@name': text(report.name),
      ...totals(report.findings, options),
      ...(suites.length > 0 && { testsuite: suites }),
    },
  });
}

const fails = (finding: Finding, { strict }: JunitOptions): boolean =>
  stands(finding) && (finding.verdict === 'fail' || (strict && finding.verdict === 'warn'));

const totals = (findings: readonly Finding[], options: JunitOptions) => ({
  '@tests': `${findings.length}`,
  '@failures': `${findings.filter((finding) => fails(finding, options)).length}`,
  '@errors': '0',
});

function suiteOf(report: Report, topic: Topic, id: number, options: JunitOptions) {
  const findings = report.findings.filter((finding) => finding.topic === topic);
  const notes = report.notes.filter((note) => note.topic === topic);
  if (findings.length + notes.length === 0) return [];
  const cautions = distinct(notes.flatMap((note) => note.cautions)).map((caution) => `caution: ${caution}`);
  return [
    {
      '@name': topic,
      ...totals(findings, options),
      '@skipped': `${findings.filter((finding) => skippedText(report, finding) !== undefined).length}`,
      '@id': `${id}`,
      ...(findings.length > 0 && { testcase: findings.map((finding) => caseOf(report, finding, options)) }),
      // What the tables of the topic must not be taken for; the tables themselves have no place here.
      ...(cautions.length > 0 && { 'system-out': cautions.map(text).join('\n') }),
    },
  ];
}

/** All that a finding says is in the text of its failure, or else in what it put out. */
function caseOf(report: Report, finding: Finding, options: JunitOptions) {
  const { title, subject, rule } = finding;
  const said = saidLines(report, finding).map(text).join('\n');
  const message = text(resultText(finding, report.units));
  const skipped = skippedText(report, finding);
  return {
    '@name': text(title === subject ? title : `${title}: ${subject}`),
    '@classname': text(rule),
    '@status': verdictText(finding),
    ...(skipped !== undefined && { skipped }),
    ...(fails(finding, options)
      ? { failure: { '@type': text(rule), '@message': message, '#text': said } }
      : { 'system-out': said }),
  };
}

/** Why it does not count, if it does not. */
function skippedText({ units }: Report, finding: Finding): string | undefined {
  if (finding.verdict === 'not checked') return text(resultText(finding, units));
  return finding.waived && !stands(finding) ? text(waiverText(finding.waived)) : undefined;
}

/** What XML cannot hold, even written as an entity: controls, which `visible` writes out, and U+FFFE and U+FFFF. */
const text = (said: string): string => visible(said).replace(/[\ufffe\uffff]/g, '\ufffd');
