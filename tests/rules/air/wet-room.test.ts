import { expect, test } from 'vitest';
import { fannedPlan } from '../../support/air-plan.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.wet-room';
const things = `fixtures:
  cabin: {mass: 20 kg, size: {length: 1 m, width: 1 m, height: 1.9 m}, at: {from_front: 0 m, from_left: 0 m, above_floor: 0 mm}}
  tray: {is: shower, mass: 5 kg, in: cabin, size: {length: 700 mm, width: 700 mm, height: 100 mm}, at: {from_front: 0 m, from_left: 0 m, above_floor: 0 mm}}
`;
const toilet = things.replace('is: shower', 'is: toilet');
const roof = 'roof: {in: ceiling, free_area: 400 cm2, closes: false}';
const floor = 'floor: {in: floor, free_area: 400 cm2, closes: false}';
const fan = (flow: number, more = '') =>
  `fan: {vent: roof, blows: exhaust, flow: ${flow} m3/h, pressure: 1 kPa${more}}`;

test('54 m³/h out of a shower by a fan of its own room', async () => {
  const finding = await findingOf(fannedPlan(`${roof}, ${floor}`, fan(60, ', serves: cabin'), things), id);
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'tray' });
  expect(finding.limit?.measure.value).toBeCloseTo(0.015, 12);
  expect(words(finding.reason)).toMatch(/fan draws 60 m³\/h out of tray/);
  const weak = await findingOf(fannedPlan(`${roof}, ${floor}`, fan(50, ', serves: cabin'), things), id);
  expect(weak.verdict).toBe('warn');
  expect(words(weak.remedy)).toMatch(/Let a fan draw 4\.\d m³\/h more out of it/);
});

test('a fan of the whole room stands in, and a fan of another cupboard does not', async () => {
  const room = await findingOf(fannedPlan(`${roof}, ${floor}`, fan(60), things), id);
  expect(words(room.reason)).toContain('out of the whole room');
  const other = `${things}  locker: {mass: 1 kg}\n`;
  const finding = await findingOf(fannedPlan(`${roof}, ${floor}`, fan(60, ', serves: locker'), other), id);
  expect(finding.verdict).toBe('warn');
  expect(measured(finding)).toBe(0);
  expect(words(finding.remedy)).toContain('Let a fan draw 54 m³/h out of it');
});

test('a toilet asks for 30 m³/h, exactly kept', async () => {
  // The fan stalls at 1000 Pa and 400 cm² take hardly any pressure; a hair over 30 m³/h gives 30.
  const kept = await findingOf(fannedPlan(`${roof}, ${floor}`, fan(30.01), toilet), id);
  expect(kept.verdict).toBe('pass');
  expect(kept.utilisation).toBeCloseTo(1, 3);
  expect((await findingOf(fannedPlan(`${roof}, ${floor}`, fan(29.9), toilet), id)).verdict).toBe('warn');
});

test('a vent alone draws nothing for certain', async () => {
  const own = 'own: {in: floor, free_area: 50 cm2, closes: false, serves: cabin}';
  const finding = await findingOf(fannedPlan(`${roof}, ${own}`, '', toilet), id);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toBe(
    'No fan draws air out of tray or out of the room. own opens it to the outside. A toilet asks for 30 m³/h.',
  );
});

test('not checked: no shower or toilet, or a fan that says too little', async () => {
  expect((await findingOf(plan(), id)).missing).toEqual(['fixtures.NAME.is', 'air.fans', 'air.vents']);
  expect(
    (await findingOf(fannedPlan(roof, 'fan: {vent: roof, blows: exhaust}', things), id)).missing,
  ).toEqual(['air.fans.fan.flow', 'air.fans.fan.pressure']);
});

test('two places that pass are one finding', async () => {
  const both = `${things}  loo: {is: toilet, mass: 5 kg, in: cabin, size: {length: 300 mm, width: 300 mm, height: 300 mm}, at: {from_rear: 0 m, from_right: 0 m, above_floor: 0 mm}}\n`;
  const found = (await reportOf(fannedPlan(`${roof}, ${floor}`, fan(90), both))).findings.filter(
    ({ rule }) => rule === id,
  );
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass']);
});
