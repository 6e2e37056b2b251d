import { expect, test } from 'vitest';
import { renderPhrase } from '../../../src/report/format-measure.ts';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.ages';
const dated = (regulator: string, hose: string, rest = '') =>
  gasPlan({
    gas: `  regulator: {pressure: 30 mbar${regulator && `, dated: ${regulator}`}}
  hoses: {pigtail: {length: 400 mm${hose && `, dated: ${hose}`}}}`,
    rest,
  });

test('dates are turned into days of replacement, the first due first', async () => {
  const found = await findingOf(dated('2025-04-01', '2024-02-29'), rule);
  expect(found.verdict).toBe('pass');
  // Ten years on, 2034 is no leap year.
  expect(renderPhrase(found.reason, 'metric')).toContain(
    'pigtail on 2034-02-28 (dated 2024-02-29), regulator on 2035-04-01 (dated 2025-04-01)',
  );
});

test('what was due before another date in the plan is too old', async () => {
  const weighed = (date: string) => `weighed: {spring: {date: ${date}, total: 2500 kg}}`;
  const text = dated('2010-06-01', '2015-06-01', weighed('2021-01-01'));
  expect(only(await reportOf(text), rule, 'regulator')).toMatchObject({ verdict: 'fail' });
  // On the very day it is due it still serves.
  const onTheDay = dated('2010-06-01', '2015-06-01', weighed('2020-06-01'));
  expect(await findingOf(onTheDay, rule)).toMatchObject({ verdict: 'pass' });
});

test('what has no date is not checked', async () => {
  expect(only(await reportOf(dated('2025-04-01', '')), rule, 'pigtail')).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.hoses.pigtail.dated'],
  });
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.regulator', 'gas.hoses'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    dated('2025-04-01', ''),
    dated('2010-06-01', '2015-06-01', 'weighed: {spring: {date: 2021-01-01, total: 2500 kg}}'),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass']);
});
