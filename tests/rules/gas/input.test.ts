import { expect, test } from 'vitest';
import { renderPhrase } from '../../../src/report/format-measure.ts';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.input';
const hob = (input: string) => gasPlan({ hob: `use: cooking${input && `, ${input}`}` });

test.each([
  // 3600 W over 46.1 MJ/kg net and 50 MJ/kg gross.
  ['input: 3.6 kW, heating_value: net', '281 g/h'],
  ['input: 3.6 kW, heating_value: gross', '259 g/h'],
  ['input: 160 g/h', '160 g/h'],
])('%s takes %s of propane', async (input, taken) => {
  const found = await findingOf(hob(input), rule);
  expect(found.verdict).toBe('pass');
  expect(renderPhrase(found.reason, 'metric')).toContain(`hob takes ${taken} of propane`);
});

test('a power without a word of net or gross is not checked, nor is silence', async () => {
  expect(await findingOf(hob('input: 3.6 kW'), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.appliances.hob.heating_value'],
  });
  const text = gasPlan({ appliances: '    fire: {use: cooking}' });
  expect(only(await reportOf(text), rule, 'fire')).toMatchObject({ missing: ['gas.appliances.fire.input'] });
});

test('butane has less heat in a kilogram', async () => {
  const text = gasPlan({
    cylinder: 'contents: butane, holds: 6 kg',
    hob: 'use: cooking, input: 3.6 kW, heating_value: net',
  });
  // 3600 / 45.75e6 kg/s.
  expect(renderPhrase((await findingOf(text, rule)).reason, 'metric')).toContain('283 g/h of butane');
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [hob('input: 160 g/h'), hob('')];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'not checked',
    'pass',
  ]);
});
