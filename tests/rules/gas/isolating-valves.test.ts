import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.isolating-valves';
const valve = (keys: string, codes = 'uk') => gasPlan({ hob: `use: cooking${keys}`, codes });

test.each([
  [', isolating_valve: true', 'uk', 'pass'],
  [', isolating_valve: false', 'uk', 'fail'],
  [', isolating_valve: false', 'eu', 'fail'],
  // A European text: elsewhere a guide.
  [', isolating_valve: false', 'us', 'warn'],
])('%s in %s: %s', async (keys, codes, verdict) => {
  expect(await findingOf(valve(keys, codes), rule)).toMatchObject({ verdict, subject: 'hob' });
});

test('without codes the strictest is taken, and the finding says whose', async () => {
  const text = valve(', isolating_valve: false').replace('codes: uk\n', '');
  const found = await findingOf(text, rule);
  expect(found.verdict).toBe('fail');
  expect(found.cautions.join(' ')).toContain(
    'The plan names no codes, so the strictest of the tables is taken: that of the United Kingdom and the European Union.',
  );
  expect((await findingOf(valve(', isolating_valve: false'), rule)).cautions.join(' ')).not.toContain(
    'names no codes',
  );
});

test('silence is not checked', async () => {
  expect(await findingOf(valve(''), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.appliances.hob.isolating_valve'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    valve(', isolating_valve: true'),
    valve(', isolating_valve: false'),
    valve(', isolating_valve: false', 'us'),
    valve(''),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass', 'warn']);
});
