import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf } from '../../support/check.ts';
import { gasPlan, hobInput } from '../../support/gas-plan.ts';

const rule = 'gas.days';

// The hob takes 281.13 g/h: an hour a day makes 6 kg last 21.34 days.
const days = (wanted: string, cooking = '1 h') =>
  gasPlan({ living: `cooking: ${cooking}, days_between_gas_refills: ${wanted}` });
const lasts = 6 / ((3600 / 46.1e6) * 3600);

test('gas for longer than between refills passes', async () => {
  const found = await findingOf(days('14'), rule);
  expect(found.verdict).toBe('pass');
  expect(found.measured?.value).toBeCloseTo(lasts, 6);
});

test('exactly enough passes, a little less warns', async () => {
  expect((await findingOf(days(String(lasts)), rule)).verdict).toBe('pass');
  expect((await findingOf(days(String(lasts + 0.01)), rule)).verdict).toBe('warn');
});

test('hot water comes on top', async () => {
  const text = gasPlan({
    appliances: '    boiler: {use: water heating, input: 1.5 kW, heating_value: net}',
    living: 'cooking: 1 h, days_between_gas_refills: 14, hot_litres_per_person_day: 10 L',
    rest: `people: {sleepers: [{stature: 1.7 m}]}
water: {cold: 10 degC, heater: {kind: storage, temperature: 60 degC, heated_by: gas, efficiency: 80 %}}`,
  });
  const found = await findingOf(text, rule);
  // 10 L through 50 K: 2.09 MJ, over 80 % and 46.1 MJ/kg 56.7 g a day, beside 281.1 g.
  expect(found.measured?.value).toBeCloseTo(6 / (0.2811 + 0.0567), 1);
});

test('what is missing is asked for', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['living.cooking', 'living.days_between_gas_refills'],
  });
  const noInput = gasPlan({ hob: `use: cooking`, living: 'cooking: 1 h, days_between_gas_refills: 3' });
  expect((await findingOf(noInput, rule)).missing).toContain('gas.appliances.hob.input');
  expect(hobInput).toContain('net');
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [days('14'), days('30'), gasPlan({})];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'not checked',
    'pass',
    'warn',
  ]);
});
