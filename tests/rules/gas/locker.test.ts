import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.locker';
const locker = (keys: string, codes = 'uk') => gasPlan({ gas: `  locker: {thing: locker${keys}}`, codes });
const good = ', sealed: true, opens: outside, source_of_ignition: false';

test('sealed, opening to the outside and without a spark passes', async () => {
  expect(await findingOf(locker(good), rule)).toMatchObject({ verdict: 'pass', subject: 'locker' });
});

test.each([
  ['sealed', good.replace('sealed: true', 'sealed: false')],
  ['opens', good.replace('opens: outside', 'opens: inside')],
  ['source_of_ignition', good.replace('source_of_ignition: false', 'source_of_ignition: true')],
])('%s is asked for', async (key, keys) => {
  const found = (await reportOf(locker(keys))).findings.filter(
    (each) => each.rule === rule && each.verdict !== 'pass',
  );
  expect(found).toMatchObject([{ path: ['gas', 'locker', key] }]);
  expect(['fail', 'warn']).toContain(found[0]?.verdict);
});

test('a locker that leaks into the room fails in Europe', async () => {
  const found = (await reportOf(locker(good.replace('sealed: true', 'sealed: false')))).findings.filter(
    (each) => each.rule === rule,
  );
  expect(found.map(({ verdict }) => verdict)).toContain('fail');
});

test('silence is not checked, in one finding', async () => {
  expect(await findingOf(locker(''), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.locker.sealed', 'gas.locker.opens', 'gas.locker.source_of_ignition'],
  });
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.locker'],
  });
});

test('a fixed tank needs none', async () => {
  const text = gasPlan({
    cylinder: '',
    tanks: '  tank: {contents: propane, holds: 30 L}',
    gas: '  stored_in: fixed tank',
  });
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'pass', subject: 'fixed tank' });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    locker(good),
    locker(good.replace('sealed: true', 'sealed: false')),
    locker(good.replace('sealed: true', 'sealed: false'), 'au'),
    locker(''),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass', 'warn']);
});
