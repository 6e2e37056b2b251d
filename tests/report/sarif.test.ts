import fc from 'fast-check';
import type { Result } from 'sarif';
import { describe, expect, test } from 'vitest';
import type { Report } from '../../src/engine/report.ts';
import { renderSarif, uriOf } from '../../src/report/sarif.ts';
import { sarifOf } from '../support/formats.ts';
import { findingOf, longReport, massCaution, reportOf, smallReport } from './fixtures.ts';
import { nastyReport } from './nasty-report.ts';

const options = {
  version: '0.1.0',
  exitCode: 1,
  rules: [{ id: 'mass.total', why: 'A van over its plate is off the road.', formula: 'm = sum of all, kg' }],
};

const written = (report: Report) => sarifOf(renderSarif(report, options));
const resultsOf = (report: Report): readonly Result[] => written(report).runs[0]?.results ?? [];

test('is SARIF 2.1.0 by its published schema, whatever the plan calls its things', () => {
  fc.assert(
    fc.property(nastyReport, (report) => {
      expect(resultsOf(report)).toHaveLength(report.findings.length + report.notes.length);
    }),
    { numRuns: 60 },
  );
  expect(resultsOf(longReport)).toHaveLength(longReport.findings.length + 2);
  expect(resultsOf(reportOf({}))).toEqual([]);
});

test('what is not SARIF is refused: the schema is not idle', () => {
  const broken = renderSarif(smallReport, options).replace('"kind": "open"', '"kind": "unsure"');
  expect(() => sarifOf(broken)).toThrow(/must be equal to one of the allowed values/);
});

describe('a result', () => {
  test('has the kind and the level of its verdict', () => {
    expect(resultsOf(smallReport).map(({ kind, level }) => [kind, level])).toEqual([
      ['fail', 'error'],
      ['open', 'none'],
      ['fail', 'warning'],
      ['pass', 'none'],
    ]);
  });

  test('says what, what to do, and the cautions, and points into the plan', () => {
    const [total, , axle] = resultsOf(smallReport);
    expect(total?.message.text).toBe(
      `van: The van weighs 3,612 kg, 112 kg more than its plate allows.\n\nDo: Leave out 112 kg, or carry less water.\n\nCaution: ${massCaution}`,
    );
    expect(axle?.locations?.[0]).toEqual({
      physicalLocation: {
        artifactLocation: { uri: 'curlew.yaml', index: 0 },
        region: { startLine: 6, startColumn: 38 },
      },
      logicalLocations: [{ fullyQualifiedName: 'van.axle_limits.rear' }],
    });
  });

  test('has a fingerprint that neither numbers nor lines change', () => {
    const printOf = (report: Report) => resultsOf(report).map((each) => each.partialFingerprints);
    const moved: Report = {
      ...smallReport,
      findings: smallReport.findings.map((finding) => ({ ...finding, reason: ['Now different.'] })),
      spot: () => ({ line: 99, column: 1 }),
    };
    expect(printOf(moved)).toEqual(printOf(smallReport));
    const twice = [findingOf({}), findingOf({}), findingOf({ subject: 'trailer' })];
    expect(new Set(printOf(reportOf({ findings: twice })).map((each) => JSON.stringify(each))).size).toBe(3);
  });

  test('a waived one is suppressed with its reason; an acknowledged one is not', () => {
    const waived = (as: 'waived' | 'acknowledged') => ({
      as,
      reason: 'the spare wheel moves in spring',
      by: 'Robin',
      until: '2027-03-01',
      path: ['waivers', 0],
    });
    const [first, second, third] = resultsOf(
      reportOf({
        findings: [
          findingOf({ verdict: 'fail', waived: waived('waived') }),
          findingOf({ verdict: 'fail', subject: 'gas', waived: waived('acknowledged') }),
          findingOf({ subject: 'trailer' }),
        ],
      }),
    );
    expect(first?.suppressions).toEqual([
      expect.objectContaining({
        kind: 'inSource',
        justification: expect.stringContaining('the spare wheel moves in spring'),
      }),
    ]);
    expect([second?.suppressions, third?.suppressions]).toEqual([[], []]);
  });

  test('braces and brackets of a name are no markup of the message', () => {
    const [result] = resultsOf(reportOf({ findings: [findingOf({ subject: 'bed {0} [a](b)' })] }));
    expect(result?.message.text).toMatch(/^bed \{\{0\}\} \\\[a\]\(b\): /);
  });

  test('a table of information is informational', () => {
    const note = resultsOf(longReport).at(-1);
    expect(note).toMatchObject({ kind: 'informational', level: 'none', ruleId: 'balance.states' });
  });
});

test('a rule is listed once, with why, formula, sources and cautions of all its findings', () => {
  const [run] = written(smallReport).runs;
  const rules = run?.tool.driver.rules ?? [];
  expect(rules.map(({ id }) => id)).toEqual([
    'mass.total',
    'mass.reserve',
    'balance.rear-axle',
    'balance.front-share',
  ]);
  expect(rules[0]).toMatchObject({
    shortDescription: { text: 'Total mass' },
    fullDescription: { text: 'A van over its plate is off the road.' },
  });
  expect(rules[0]?.help?.text.split('\n\n')).toEqual([
    'A van over its plate is off the road.',
    'Formula: m = sum of all, kg',
    'Source: EU 2021/535, Annex XIII, Part 2, section A',
    `Caution: ${massCaution}`,
  ]);
  for (const { ruleId, ruleIndex } of run?.results ?? []) expect(rules[ruleIndex ?? -1]?.id).toBe(ruleId);
});

test.each([
  ['curlew.yaml', 'curlew.yaml'],
  ['plans/curlew revision 4.yaml', 'plans/curlew%20revision%204.yaml'],
  ['plans\\größe.yaml', 'plans/gr%C3%B6%C3%9Fe.yaml'],
  ['a:b.yaml', 'a%3Ab.yaml'],
  ['/home/robin/curlew.yaml', 'file:///home/robin/curlew.yaml'],
  ['C:\\vans\\curlew.yaml', 'file:///C:/vans/curlew.yaml'],
  ['\ud800.yaml', '%EF%BF%BD.yaml'],
])('the file %j as a URI', (file, uri) => {
  expect(uriOf(file)).toBe(uri);
});
