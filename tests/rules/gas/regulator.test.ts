import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { gasPlan, hobInput } from '../../support/gas-plan.ts';

const rule = 'gas.regulator';
const regulated = (regulator: string, hob = 'pressure: 30 mbar', codes = 'uk') =>
  gasPlan({
    gas: `  regulator: {${regulator}}`,
    hob: `use: cooking, ${hobInput}${hob && `, ${hob}`}`,
    codes,
  });

test('enough of it at the pressure of the appliances passes', async () => {
  const found = (await reportOf(regulated('pressure: 30 mbar, capacity: 1.5 kg/h'))).findings.filter(
    (each) => each.rule === rule,
  );
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass', 'pass']);
});

test('its capacity is held against all appliances, exactly', async () => {
  // 3600 W / 46.1 MJ/kg are 281.13 g/h.
  const exactly = `${(3600 / 46.1e6) * 3.6e6} g/h`;
  const at = async (capacity: string) =>
    only(await reportOf(regulated(`pressure: 30 mbar, capacity: ${capacity}`)), rule, 'capacity').verdict;
  expect(await at(exactly)).toBe('pass');
  expect(await at('281 g/h')).toBe('fail');
});

test('an appliance for another pressure does not fit', async () => {
  const found = only(
    await reportOf(regulated('pressure: 30 mbar, capacity: 1.5 kg/h', 'pressure: 50 mbar')),
    rule,
    'hob: pressure',
  );
  expect(['fail', 'warn']).toContain(found.verdict);
});

test('an unusual pressure warns', async () => {
  const found = only(
    await reportOf(regulated('pressure: 60 mbar, capacity: 1.5 kg/h', 'pressure: 60 mbar')),
    rule,
    'pressure',
  );
  expect(found.verdict).toBe('warn');
});

test('what is missing is asked for', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.regulator.pressure'],
  });
  expect(only(await reportOf(regulated('pressure: 30 mbar', '')), rule, 'what the plates say')).toMatchObject(
    {
      missing: ['gas.regulator.capacity', 'gas.appliances.hob.pressure'],
    },
  );
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    regulated('pressure: 30 mbar, capacity: 1.5 kg/h'),
    regulated('pressure: 30 mbar, capacity: 100 g/h'),
    regulated('pressure: 60 mbar, capacity: 1.5 kg/h', 'pressure: 60 mbar'),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'fail',
    'not checked',
    'pass',
    'warn',
  ]);
});
