import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Finding, Note } from '../../src/engine/finding.ts';
import type { Report } from '../../src/engine/report.ts';
import { formats } from '../../src/report/format.ts';
import { renderJson } from '../../src/report/json.ts';
import { jsonReportSchema } from '../../src/report/json-schema.ts';
import { renderJunit } from '../../src/report/junit.ts';
import { renderMarkdown } from '../../src/report/markdown.ts';
import { markdownText } from '../../src/report/markdown-text.ts';
import { renderSarif } from '../../src/report/sarif.ts';
import { renderTerminal } from '../../src/report/terminal.ts';
import { rules } from '../../src/rules/index.ts';
import { reportOf } from '../support/check.ts';
import { againstJsonReport, againstJunit, inXml, sarifOf } from '../support/formats.ts';

// A caution that a format loses can cost a hand. Here every rule speaks, in an example, of a plan that says nothing, or of one with waivers,
// and what it warns of has to come out of every format.
const folder = fileURLToPath(new URL('../../examples', import.meta.url));
const examples = readdirSync(folder, { recursive: true })
  .map(String)
  .filter((name) => name.endsWith('.yaml'))
  .sort();
const reports: readonly (readonly [name: string, report: Report])[] = await Promise.all([
  ...examples.map(async (name) => [name, await reportOf(readFileSync(`${folder}/${name}`, 'utf8'))] as const),
  reportOf('storystick: 1\nvan: {}').then((report) => ['a bare plan', report] as const),
  reportOf(waivedPlan()).then((report) => ['a plan with waivers', report] as const),
]);

/** One of its failures stands aside, one is about life and limb, one waiver has ended. */
function waivedPlan(): string {
  const waiver = (check: string, until: string) =>
    `  - {check: ${check}, reason: mended in spring, by: Robin, until: ${until}}\n`;
  return `${readFileSync(`${folder}/curlew/oak.yaml`, 'utf8')}\nwaivers:\n${waiver('balance.stability', '2026-06-20')}${waiver('mass.total', '2027-03-01')}${waiver('mass.payload', '2026-01-01')}`;
}

const speakers = ({ findings, notes }: Report): readonly (Finding | Note)[] => [...findings, ...notes];
const cautionsOf = (report: Report): readonly string[] =>
  speakers(report).flatMap(({ cautions }) => cautions);

/** For each format the texts in which the cautions of a speaker have to be, in the order of the speakers. */
const writers: Readonly<Record<(typeof formats)[number], (report: Report) => readonly string[]>> = {
  table: (report) => {
    const options = { width: 100_000, colour: false, detail: false };
    const texts = [true, false].map((quiet) => renderTerminal(report, { ...options, quiet }));
    return speakers(report).map(({ cautions }) =>
      cautions.filter((caution) => texts.every((text) => text.includes(`- ${caution}`))).join(' '),
    );
  },
  json: (report) => {
    const text = renderJson(report, { version: '1.2.3', exitCode: 0, strict: false });
    const { findings, notes } = jsonReportSchema.parse(JSON.parse(text));
    return [...findings, ...notes].map(({ cautions }) => cautions.join(' '));
  },
  sarif: (report) => {
    const [run] = sarifOf(renderSarif(report, { version: '1.2.3', exitCode: 0, rules })).runs;
    const helps = run?.tool.driver.rules ?? [];
    return (run?.results ?? []).map(({ message, ruleIndex = -1 }) => {
      const help = helps[ruleIndex]?.help?.text ?? '';
      // Both have to say it: some show the message only, some show the help only.
      return (message.text ?? '')
        .split('\n\n')
        .filter((paragraph) => help.includes(paragraph))
        .join(' ');
    });
  },
  junit: (report) => {
    const text = renderJunit(report, { strict: false });
    const cases = inXml(text, '//testcase');
    const suites = inXml(text, '//testsuite/system-out').join(' ');
    return [...report.findings.map((_, at) => cases[at] ?? ''), ...report.notes.map(() => suites)];
  },
  markdown: (report) => {
    const text = renderMarkdown(report);
    // Not folded away.
    const open = text.replace(/<details>.*?<\/details>/gs, '');
    return speakers(report).map(({ cautions }) =>
      cautions.filter((caution) => open.includes(`- ${markdownText(caution)}`)).join(' '),
    );
  },
};

test('every rule speaks in one of these plans, with all its cautions', () => {
  for (const { id, cautions } of rules) {
    const said = reports.flatMap(([, report]) => speakers(report)).filter(({ rule }) => rule === id);
    expect(said.length, id).toBeGreaterThan(0);
    for (const each of said) expect(each.cautions).toEqual(expect.arrayContaining([...cautions]));
  }
});

describe.each(formats)('as %s', (format) => {
  test.each(reports)('%s loses none', (_, report) => {
    const texts = writers[format](report);
    expect(cautionsOf(report).length).toBeGreaterThan(50);
    const lost = speakers(report).flatMap(({ rule, cautions }, at) =>
      cautions.filter((caution) => !texts[at]?.includes(caution)).map((caution) => `${rule}: ${caution}`),
    );
    expect(lost).toEqual([]);
  });
});

describe.each(reports)('%s', (_, report) => {
  test('fits the schemas of the formats', () => {
    const options = { version: '1.2.3', exitCode: 0, strict: false, rules };
    expect(againstJsonReport(renderJson(report, options))).toEqual([]);
    expect(againstJunit(renderJunit(report, options))).toEqual([]);
    expect(sarifOf(renderSarif(report, options)).version).toBe('2.1.0');
  });
});

test('a JSON report that lacks a field, or has one too many, does not fit its schema', () => {
  const [, report] = reports[0] ?? [];
  if (!report) throw new Error('no example');
  const text = renderJson(report, { version: '1.2.3', exitCode: 0, strict: false });
  expect(againstJsonReport(text.replace('"strict": false', '"lenient": true'))).not.toEqual([]);
  expect(againstJsonReport(text.replace('"schemaVersion": 1', '"schemaVersion": 2'))).not.toEqual([]);
});
