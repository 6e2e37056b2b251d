import { expect, test } from 'vitest';
import { combustionCaution } from '../../../src/rules/cautions.ts';
import { airy, twoVents } from '../../support/air-plan.ts';
import { findingOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.combustion-air';
const gas = (keys: string) => `gas: {appliances: {boiler: {use: water heating, ${keys}}}}\n`;
const open = gas('input: 4 kW, heating_value: net, flue: open-flued');

test('5 cm² for each net kilowatt, exactly kept', async () => {
  expect((await findingOf(airy(twoVents(10, 10), open), id)).verdict).toBe('pass');
  const finding = await findingOf(airy(twoVents(10, 9), open), id);
  expect(finding).toMatchObject({ verdict: 'fail', path: ['gas', 'appliances', 'boiler'] });
  expect(words(finding.remedy)).toContain('Fit 1.0 cm² more of fixed vents');
  expect(finding.cautions[0]).toBe(combustionCaution);
  expect(finding.cautions.join(' ')).toContain('A van has no leaks to credit');
});

test('a gross input is turned into net', async () => {
  const gross = gas('input: 4 kW, heating_value: gross, flue: open-flued');
  // 4 · 46.1 / 50 = 3.688 kW net: 18.44 cm².
  expect((await findingOf(airy(twoVents(10, 8.45), gross), id)).verdict).toBe('pass');
  expect((await findingOf(airy(twoVents(10, 8.4), gross), id)).verdict).toBe('fail');
});

test('what can be shut does not count', async () => {
  const shut = 'hatch: {in: ceiling, free_area: 900 cm2, closes: true}';
  expect((await findingOf(airy(shut, open), id)).verdict).toBe('fail');
});

test('an open-flued diesel heater counts by its output and efficiency', async () => {
  const diesel = (keys: string) => `heat: {heater: {heated_by: diesel, flue: open-flued${keys}}}\n`;
  // 2 kW / 80 % = 2.5 kW: 12.5 cm².
  expect(
    (await findingOf(airy(twoVents(6, 6.5), diesel(', output: 2 kW, efficiency: 80 %')), id)).verdict,
  ).toBe('pass');
  expect(
    (await findingOf(airy(twoVents(6, 6), diesel(', output: 2 kW, efficiency: 80 %')), id)).verdict,
  ).toBe('fail');
  expect((await findingOf(airy(twoVents(6, 6), diesel('')), id)).missing).toEqual([
    'heat.heater.output',
    'heat.heater.efficiency',
  ]);
});

test('nothing with an open flue; not checked where nobody can tell', async () => {
  expect((await findingOf(plan(gas('flue: room-sealed')), id)).verdict).toBe('pass');
  expect((await findingOf(plan(gas('input: 2 kW')), id)).missing).toEqual(['gas.appliances.boiler.flue']);
  expect((await findingOf(plan(gas('flue: open-flued')), id)).missing).toEqual([
    'gas.appliances.boiler.input',
    'air.vents',
  ]);
  expect((await findingOf(plan(), id)).missing).toEqual(['gas.appliances', 'heat.heater']);
});
