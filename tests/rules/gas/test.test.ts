import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.test';

test.each([
  ['true', 'pass'],
  ['false', 'warn'],
])('a tightness test in the plan: %s, %s', async (said, verdict) => {
  expect(await findingOf(gasPlan({ gas: `  tightness_test: ${said}` }), rule)).toMatchObject({ verdict });
});

test('silence is not checked', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.tightness_test'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    gasPlan({ gas: '  tightness_test: true' }),
    gasPlan({ gas: '  tightness_test: false' }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['not checked', 'pass', 'warn']);
});
