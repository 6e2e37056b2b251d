import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { fannedPlan } from '../../support/air-plan.ts';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.flue-draught';
const roof = 'roof: {in: ceiling, free_area: 400 cm2, closes: false}';
const floor = (cm2: number) => `floor: {in: floor, free_area: ${cm2} cm2, closes: false}`;
const out = 'fan: {vent: roof, blows: exhaust, flow: 360 m3/h, pressure: 50 Pa}';
const gas = (flue: string) => `gas: {appliances: {boiler: {use: water heating, input: 2 kW${flue}}}}\n`;
const open = gas(', flue: open-flued');
const unit = 0.61 * Math.sqrt(2 / 1.1989);
/** With which the fan pulls the room exactly 4 Pa down: there it moves 0.1 · 46 / 50 m³/s. */
const fourPaCm2 = (0.092 / (unit * 2)) * 1e4;

test('beyond 4 Pa it fails with both cautions and the area that is needed', async () => {
  const finding = await findingOf(fannedPlan(`${roof}, ${floor(100)}`, out, open), id);
  expect(finding).toMatchObject({
    verdict: 'fail',
    subject: 'boiler',
    path: ['gas', 'appliances', 'boiler'],
  });
  expect(finding.cautions.slice(0, 2)).toEqual([combustionCaution, gasCaution]);
  // 0.092 m³/s at 4 Pa: 0.092 / (0.7879 · 2) m² = 584 cm², less the 100 that are there.
  expect(words(finding.remedy)).toContain('let 484 cm² more in');
});

test('exactly 4 Pa is kept', async () => {
  const kept = await findingOf(fannedPlan(`${roof}, ${floor(fourPaCm2)}`, out, open), id);
  expect(kept.verdict).toBe('pass');
  expect(measured(kept)).toBeCloseTo(4, 6);
  expect((await findingOf(fannedPlan(`${roof}, ${floor(fourPaCm2 * 0.99)}`, out, open), id)).verdict).toBe(
    'fail',
  );
});

test('without a fan that blows out, or without an open flue, nothing pulls', async () => {
  const intake = out.replace('exhaust', 'intake');
  expect((await findingOf(fannedPlan(roof, intake, open), id)).verdict).toBe('pass');
  const sealed = await findingOf(fannedPlan(roof, out, gas(', flue: room-sealed')), id);
  expect(words(sealed.reason)).toBe('The plan shows nothing with an open flue.');
});

test('not checked: no word on the flue, on what burns, or on the fan', async () => {
  expect((await findingOf(fannedPlan(roof, out, gas('')), id)).missing).toEqual([
    'gas.appliances.boiler.flue',
  ]);
  expect((await findingOf(plan(), id)).missing).toEqual(['gas.appliances', 'heat.heater']);
  expect((await findingOf(plan(open), id)).missing).toEqual(['air.vents', 'air.fans']);
  expect((await findingOf(fannedPlan(roof, 'fan: {vent: roof}', open), id)).missing).toContain(
    'air.fans.fan.flow',
  );
});
