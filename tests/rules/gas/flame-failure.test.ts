import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.flame-failure';

test('a device on each appliance passes', async () => {
  const found = await findingOf(gasPlan({ hob: 'use: cooking, flame_failure: true' }), rule);
  expect(found.verdict).toBe('pass');
  expect(found.cautions).toContain(gasCaution);
  expect(found.cautions).toContain(combustionCaution);
});

test('none fails, and says which appliance', async () => {
  const text = gasPlan({
    hob: 'use: cooking, flame_failure: true',
    appliances: '    fire: {use: cooking, flame_failure: false}',
  });
  expect(only(await reportOf(text), rule, 'fire')).toMatchObject({ verdict: 'fail' });
  expect(only(await reportOf(text), rule, 'hob')).toMatchObject({ verdict: 'pass' });
});

test('silence is not checked', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.appliances.hob.flame_failure'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    gasPlan({ hob: 'use: cooking, flame_failure: true' }),
    gasPlan({ hob: 'use: cooking, flame_failure: false' }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'fail',
    'not checked',
    'pass',
  ]);
});
