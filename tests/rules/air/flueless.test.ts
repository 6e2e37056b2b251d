import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { airy, fannedPlan, hob, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.flueless';
const gas = (appliances: string, more = '') => `${twoAsleep}gas: {appliances: {${appliances}}}\n${more}`;
const heater = (flue: string) => `fire: {use: room heating, input: 2 kW, flue: ${flue}}`;
const cooking = 'living: {cooking: 30 min}\n';

test('a heater without a flue fails, one with an open flue warns', async () => {
  const finding = await findingOf(airy(twoVents(50, 100), gas(heater('flueless'))), id);
  expect(finding).toMatchObject({
    verdict: 'fail',
    subject: 'fire',
    path: ['gas', 'appliances', 'fire', 'flue'],
  });
  expect(words(finding.remedy)).toContain('room-sealed');
  expect(finding.cautions.slice(0, 2)).toEqual([combustionCaution, gasCaution]);
  expect((await findingOf(airy(twoVents(50, 100), gas(heater('open-flued'))), id)).verdict).toBe('warn');
  expect((await findingOf(airy(twoVents(50, 100), gas(heater('room-sealed'))), id)).verdict).toBe('pass');
});

test('a hob in a room that warmth alone airs', async () => {
  const finding = await findingOf(airy(twoVents(50, 100), gas(hob, cooking)), id);
  // 3 kW / 46.1 MJ/kg = 65.08 mg/s of propane, 0.04410 kg/mol, three of carbon dioxide each, 24.055 L/mol at 20 °C.
  const generation = (3000 / 46.1e6 / 0.044097) * 3 * ((8.31446261815324 * 293.15) / 101_325);
  // 20 °C inside, 15 °C outside: h = 2 / (1 + 0.25 · 293.15 / 288.15) m.
  const flow = 0.65 * 0.005 * Math.sqrt((2 * 9.81 * (2 / (1 + (0.25 * 293.15) / 288.15)) * 5) / 293.15);
  const steady = 425 + (1e6 * generation) / flow;
  const end = steady - (steady - 1000) * Math.exp((-flow * 1800) / 16);
  expect(finding.verdict).toBe('warn');
  expect(measured(finding) * 1e6).toBeCloseTo(end, 0);
  // 65.08 mg/s · 1800 s · 1.634 = 0.191 kg.
  expect(words(finding.reason)).toContain('leaves 0.2 kg of water in the air');
  expect(words(finding.remedy)).toMatch(/Move \d+ m³\/h while it burns/);
});

test('a fan that blows out makes the difference; what the remedy asks for is just enough', async () => {
  const vents =
    'roof: {in: ceiling, free_area: 900 cm2, closes: false}, floor: {in: floor, free_area: 900 cm2, closes: false}';
  const fan = (flow: number) => `fan: {vent: roof, blows: exhaust, flow: ${flow} m3/h, pressure: 2 kPa}`;
  expect((await findingOf(fannedPlan(vents, fan(200), gas(hob, cooking)), id)).verdict).toBe('pass');
  const short = await findingOf(airy(twoVents(50, 100), gas(hob, cooking)), id);
  const needed = Number(/Move (\d+) m³\/h/.exec(words(short.remedy))?.[1]);
  const small = vents.replaceAll('900', '60');
  const finding = await findingOf(fannedPlan(small, fan(needed + 2), gas(hob, cooking)), id);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain('by fan');
  expect((await findingOf(fannedPlan(small, fan(needed - 2), gas(hob, cooking)), id)).verdict).toBe('warn');
});

test('cooking that is not given is taken as an hour, and said', async () => {
  const finding = await findingOf(airy(twoVents(50, 100), gas(hob)), id);
  expect(words(finding.reason)).toContain('at full flame for 1.0 h (`living.cooking` is not given)');
});

test('not checked: no word on the flue, no input, no vents, nothing that burns', async () => {
  expect((await findingOf(airy(twoVents(5, 5), gas('fire: {use: room heating}')), id)).missing).toEqual([
    'gas.appliances.fire.flue',
  ]);
  expect((await findingOf(airy(twoVents(5, 5), gas('hob: {use: cooking}')), id)).missing).toEqual([
    'gas.appliances.hob.input',
  ]);
  expect((await findingOf(plan(gas(hob)), id)).missing).toEqual(['air.vents']);
  expect((await findingOf(plan(), id)).missing).toEqual(['gas.appliances', 'heat.heater']);
});
