import { describe, expect, test } from 'vitest';
import { compare } from '../../src/engine/compare/compare.ts';
import { besideEachOther } from '../../src/engine/compare/variants.ts';
import type { Report } from '../../src/engine/report.ts';
import { renderDiff } from '../../src/report/diff/terminal.ts';
import { exitCodeOf } from '../../src/report/exit-code.ts';
import { renderJson } from '../../src/report/json.ts';
import { renderJunit } from '../../src/report/junit.ts';
import { renderMarkdown } from '../../src/report/markdown.ts';
import { renderSarif } from '../../src/report/sarif.ts';
import { renderShort } from '../../src/report/short.ts';
import { renderTerminal } from '../../src/report/terminal.ts';
import { renderVariants } from '../../src/report/variants/terminal.ts';
import { rules } from '../../src/rules/index.ts';
import { reportOf } from '../support/check.ts';
import { comparedText } from '../support/compared.ts';
import { againstJsonReport, againstJunit, inXml, sarifOf } from '../support/formats.ts';
import { axleWaived, overlapWaived, waivedPlan } from '../support/waived-plan.ts';

const today = '2026-06-01';
const of = (...waivers: readonly string[]): Promise<Report> =>
  reportOf(waivedPlan(waivers.join('\n')), today);
const options = { width: 100, colour: false, detail: false, quiet: false };
const reason = 'the stove goes out in spring';

/** Everything else in the test van aside: only what is waived or acknowledged failed. */
describe('the exit code', () => {
  test('does not count what is waived, and counts what is acknowledged', async () => {
    expect(exitCodeOf(await of(overlapWaived), { strict: false })).toBe(1);
    expect(exitCodeOf(await of(axleWaived, overlapWaived), { strict: false })).toBe(1);
    const { findings } = await of(overlapWaived);
    const withoutAxle = { findings: findings.filter(({ rule }) => rule !== 'balance.rear-axle') };
    expect(exitCodeOf(withoutAxle, { strict: false })).toBe(0);
    const unwaived = { findings: withoutAxle.findings.map(({ waived: _, ...rest }) => rest) };
    expect(exitCodeOf(unwaived, { strict: false })).toBe(1);
  });
});

describe('on a terminal', () => {
  test('it stays in sight, with the waiver, and is counted apart', async () => {
    const text = renderTerminal(await of(overlapWaived, axleWaived), options);
    expect(text).toMatch(/^fail, waived +no two things in one place/m);
    expect(text).toMatch(/^fail, waived {2}bed and stove: /m);
    expect(text).toContain(`waiver:  waived until 2026-12-01 by Robin: ${reason}`);
    expect(text).toMatch(/^fail, acknowledged {2}rear axle: /m);
    expect(text.replace(/\s+/g, ' ')).toContain('a check about life and limb is never waived');
    expect(text).toMatch(/^1 fail \(1 acknowledged\), \d+ warn, 1 waived, \d+ not checked, \d+ pass$/m);
  });

  test.each([60, 80, 100, 160])('no line is longer than %i columns', async (width) => {
    const report = await of(overlapWaived, axleWaived);
    for (const quiet of [true, false]) {
      const lines = renderTerminal(report, { ...options, width, quiet }).split('\n');
      expect(lines.filter((line) => line.length > width)).toEqual([]);
    }
  });

  test('in few words, as a hook prints it', async () => {
    const text = renderShort(await of(overlapWaived, axleWaived), {
      width: 200,
      colour: false,
      shown: ['fail'],
      remark: 'as staged',
    });
    expect(text).toMatch(/^fail, waived {2}fit\.overlap .*\n.*\(waived until 2026-12-01 by Robin/m);
    expect(text).toMatch(/^fail, acknowledged {2}balance\.rear-axle /m);
    expect(text).toContain('1 waived');
  });
});

describe('in files', () => {
  test('JSON: the verdict stays, the waiver stands beside it', async () => {
    const text = renderJson(await of(overlapWaived, axleWaived), {
      version: '0',
      exitCode: 1,
      strict: false,
    });
    expect(againstJsonReport(text)).toEqual([]);
    const { summary, findings } = JSON.parse(text);
    expect(summary).toMatchObject({ fail: 2, waived: 1, acknowledged: 1 });
    const found = findings.filter(({ waived }: { waived: unknown }) => waived !== null);
    expect(found).toMatchObject([
      { rule: 'balance.rear-axle', verdict: 'fail', waived: { as: 'acknowledged', by: 'Kit' } },
      {
        rule: 'fit.overlap',
        verdict: 'fail',
        waived: { as: 'waived', reason, path: 'waivers.0', keys: ['waivers', 0] },
      },
    ]);
  });

  test('SARIF: what is waived is suppressed, what is acknowledged is not', async () => {
    const sarif = (report: Report) =>
      sarifOf(renderSarif(report, { version: '0', exitCode: 1, rules })).runs[0]?.results;
    const results = (await sarif(await of(overlapWaived, axleWaived))) ?? [];
    const by = (rule: string) => results.find(({ ruleId }) => ruleId === rule);
    expect(by('fit.overlap')?.suppressions).toMatchObject([
      { kind: 'inSource', status: 'accepted', justification: expect.stringContaining(reason) },
    ]);
    expect(by('balance.rear-axle')).toMatchObject({ level: 'error', suppressions: [] });
    // Where one result says whether it is suppressed, all have to (3.27.23).
    for (const result of results) expect(result.suppressions).toBeDefined();
    for (const result of sarif(await of(axleWaived)) ?? []) expect(result.suppressions).toBeUndefined();
  });

  test('JUnit: what is waived is skipped, what is acknowledged fails', async () => {
    const text = renderJunit(await of(overlapWaived, axleWaived), { strict: false });
    expect(againstJunit(text)).toEqual([]);
    const cases = (path: string) => inXml(text, `//testcase[${path}]/@classname`);
    expect(cases('failure')).toEqual(['balance.rear-axle']);
    expect(cases('skipped')).toContain('fit.overlap');
    expect(inXml(text, '//testcase[@classname="fit.overlap"]/skipped').join()).toContain(reason);
  });

  test('Markdown', async () => {
    const text = renderMarkdown(await of(overlapWaived, axleWaived));
    expect(text).toMatch(
      /\| \*\*fail, waived\*\* \| \*\*bed and stove\*\*.*\*Waiver:\* waived until 2026-12-01 by Robin/,
    );
    expect(text).toContain('**fail, acknowledged**');
    expect(text).toContain('1 fail (1 acknowledged)');
  });
});

describe('from one revision to the next', () => {
  const sides = async () => ({
    open: await comparedText(waivedPlan('')),
    waived: await comparedText(waivedPlan(overlapWaived.replace('2026', '2999'))),
  });

  test('a waiver that came or went is a change', async () => {
    const { open, waived } = await sides();
    const shown = { width: 160, colour: false, detail: false };
    expect(renderDiff(compare(open, waived), shown)).toMatch(/fail, waived, was fail {2}fit\.overlap/);
    const back = compare(waived, open);
    expect(renderDiff(back, shown)).toMatch(/fail, was fail, waived {2}fit\.overlap/);
    expect(back.verdicts.find(({ shown: finding }) => finding.rule === 'fit.overlap')?.turn).toBe('worse');
  });

  test('beside a variant without it', async () => {
    const { open, waived } = await sides();
    const text = renderVariants(besideEachOther([open, waived]), {
      width: 160,
      colour: false,
      all: true,
    });
    expect(text).toContain('fail, waived');
  });
});
