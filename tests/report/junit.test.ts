import fc from 'fast-check';
import { expect, test } from 'vitest';
import { renderJunit } from '../../src/report/junit.ts';
import { againstJunit, inXml } from '../support/formats.ts';
import { findingOf, longReport, massCaution, noteOf, reportOf, smallReport } from './fixtures.ts';
import { nastyReport } from './nasty-report.ts';

const junit = (report = smallReport, strict = false) => renderJunit(report, { strict });

test('is JUnit XML by its schema, whatever the plan calls its things', () => {
  fc.assert(
    fc.property(nastyReport, (report) => {
      const text = junit(report);
      expect(againstJunit(text)).toEqual([]);
      expect(inXml(text, '//testcase/@name')).toHaveLength(report.findings.length);
    }),
    { numRuns: 60 },
  );
  expect(againstJunit(junit(longReport))).toEqual([]);
  expect(againstJunit(junit(reportOf({})))).toEqual([]);
});

test('what is not JUnit is refused: the schema is not idle', () => {
  expect(againstJunit(junit().replaceAll('testcase', 'case'))).not.toEqual([]);
  expect(againstJunit(junit().replace(' name="mass"', ''))).not.toEqual([]);
});

test('a suite for each topic, a case for each finding, and the sums of both', () => {
  const text = junit();
  expect(inXml(text, '/testsuites/@*')).toEqual(['Curlew, revision 4', '4', '1', '0']);
  expect(inXml(text, '//testsuite/@name')).toEqual(['mass', 'balance']);
  expect(inXml(text, '//testsuite/@tests')).toEqual(['2', '2']);
  expect(inXml(text, '//testsuite/@failures')).toEqual(['1', '0']);
  expect(inXml(text, '//testsuite/@skipped')).toEqual(['1', '0']);
  expect(inXml(text, '//testcase/@classname')).toEqual([
    'mass.total',
    'mass.reserve',
    'balance.rear-axle',
    'balance.front-share',
  ]);
  expect(inXml(text, '//testcase/@status')).toEqual(['fail', 'not checked', 'warn', 'pass']);
});

test('a failure says all there is to say, cautions last', () => {
  expect(inXml(junit(), '//failure/@message')).toEqual([
    'The van weighs 3,612 kg, 112 kg more than its plate allows.',
  ]);
  expect(inXml(junit(), '//failure')).toEqual([
    [
      'fail: van: The van weighs 3,612 kg, 112 kg more than its plate allows.',
      'measured: 3,612 ± 24 kg',
      'limit: at most 3,500 kg',
      'margin: -112 kg',
      'state: fresh full, waste empty, 2 aboard, stores full',
      'do: Leave out 112 kg, or carry less water.',
      'source: EU 2021/535, Annex XIII, Part 2, section A',
      'where: curlew.yaml:5:3, check mass.total',
      `caution: ${massCaution}`,
    ].join('\n'),
  ]);
});

test('what is not checked is skipped, with the keys that are missing', () => {
  expect(inXml(junit(), '//skipped')).toEqual([
    'The plan does not say what is to be kept free. Missing: van.reserve.',
  ]);
});

test('a warning passes and is in the output, but fails where warnings are to fail', () => {
  expect(inXml(junit(), '//testcase[@status="warn"]/system-out')[0]).toMatch(/^warn: rear axle: /);
  expect(inXml(junit(smallReport, true), '//failure/@type')).toEqual(['mass.total', 'balance.rear-axle']);
  expect(inXml(junit(smallReport, true), '/testsuites/@failures')).toEqual(['2']);
});

test('what is waived is skipped with the reason; what is acknowledged fails as before', () => {
  const waived = (as: 'waived' | 'acknowledged') =>
    findingOf({
      verdict: 'fail',
      waived: { as, reason: 'until spring', by: 'Robin', until: '2027-03-01', path: ['waivers', 0] },
    });
  const text = junit(reportOf({ findings: [waived('waived'), waived('acknowledged')] }));
  expect(inXml(text, '//testsuite/@failures')).toEqual(['1']);
  expect(inXml(text, '//skipped')).toEqual(['waived until 2027-03-01 by Robin: until spring']);
  expect(inXml(text, '//testcase[failure]/@status')).toEqual(['fail, acknowledged']);
});

test('a topic of which only a table speaks still has its cautions', () => {
  const text = junit(reportOf({ notes: [noteOf({ cautions: [massCaution] })] }));
  expect(inXml(text, '//testsuite/system-out')).toEqual([`caution: ${massCaution}`]);
});

test('characters that no XML may hold are marked as lost', () => {
  const text = junit(
    reportOf({ name: 'a\uffffb\ufffec', findings: [findingOf({ subject: '\u0000bed\ud800' })] }),
  );
  expect(againstJunit(text)).toEqual([]);
  expect(inXml(text, '/testsuites/@name')).toEqual(['a\ufffdb\ufffdc']);
  expect(inXml(text, '//testcase/@name')).toEqual(['Total mass: \\u{0}bed\\u{d800}']);
});
