import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type SummerAir, summerAirOf } from '../../src/build/summer-air.ts';
import { fannedPlan, twoAsleep } from '../support/air-plan.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

async function summerOf(text: string): Promise<SummerAir> {
  const found = summerAirOf(await buildOf(text));
  if (!found) throw new Error('no air in the plan');
  return found;
}

/** 0.61 · √(2 / 1.1989): m³/s through 1 m² at 1 Pa. */
const unit = 0.61 * Math.sqrt(2 / 1.1989);
const roof = 'roof: {in: ceiling, free_area: 400 cm2, closes: false}';
const floor = 'floor: {in: floor, free_area: 100 cm2, closes: true}';
const fan = 'fan: {vent: roof, blows: exhaust, flow: 360 m3/h, pressure: 50 Pa}';
const withWindow = (more: string, vents = `${roof}, ${floor}`, fans = fan) =>
  plan(`air: {vents: {${vents}}, fans: {${fans}}}\n${twoAsleep}`, {
    openings: `{pane: {kind: window, in: right wall, length: 500 mm, height: 200 mm, at: {from_front: 1 m, above_floor: 1 m}${more}}}`,
  });

/** By what leaves the room: on the fan's line and through the openings at the same pressure. */
function expectBalance({ flowsM3PerS: [flow = 0], openM2, depressionPa }: SummerAir): void {
  expect(flow).toBeCloseTo(0.1 * (1 - depressionPa / 50), 9);
  expect(flow).toBeCloseTo(unit * openM2 * Math.sqrt(depressionPa), 9);
}

test('vents are open, also those that can be shut', async () => {
  const summer = await summerOf(fannedPlan(`${roof}, ${floor}`, fan));
  expect(summer.openM2).toBeCloseTo(0.01, 12);
  expectBalance(summer);
  expect(summer.freshM3S).toBeCloseTo(summer.flowsM3PerS[0] ?? 0, 9);
});

test('a window counts where the plan says that a person gets out through it', async () => {
  const open = await summerOf(withWindow(', escape: true'));
  // 500 × 200 mm and the vent of 100 cm².
  expect(open.openM2).toBeCloseTo(0.11, 12);
  expectBalance(open);
  const shut = await summerOf(withWindow(''));
  expect(shut.openM2).toBeCloseTo(0.01, 12);
  expect(shut.shutWindows).toEqual(['pane']);
  expect(open.freshM3S).toBeGreaterThan(shut.freshM3S);
});

test('a window that is a vent too counts once, by its free area', async () => {
  const asVent = 'pane: {opening: pane, free_area: 300 cm2, closes: true, level: high}';
  const summer = await summerOf(withWindow(', escape: true', `${roof}, ${floor}, ${asVent}`));
  expect(summer.openings.map(({ name }) => name)).toEqual(['floor', 'pane']);
  expect(summer.openM2).toBeCloseTo(0.04, 12);
});

test('fans in and out of the same air are one flow', async () => {
  const both = `${fan}, into: {vent: floor, blows: intake, flow: 360 m3/h, pressure: 50 Pa}`;
  const summer = await summerOf(fannedPlan(`${roof}, ${floor}`, both));
  expect(summer.freshM3S).toBeCloseTo(0.1, 9);
});

test('a fan of a thing of its own moves no air of the room, and one that says too little is named', async () => {
  const others =
    'own: {blows: exhaust, flow: 360 m3/h, pressure: 50 Pa, serves: box}, quiet: {blows: exhaust, flow: 360 m3/h}';
  const summer = await summerOf(
    fannedPlan(`${roof}, ${floor}`, `${fan}, ${others}`, `${twoAsleep}fixtures: {box: {mass: 1 kg}}\n`),
  );
  expect(summer.fans.map((each) => each.fan.name)).toEqual(['fan']);
  expect(summer.unknownFans.map(({ name }) => name)).toEqual(['quiet']);
});

test('the Curlew: its bed window is a way out, its kitchen window says nothing', async () => {
  const summer = await summerOf(readFileSync('examples/curlew/curlew.yaml', 'utf8'));
  expect(summer.openings.map(({ name }) => name)).toEqual(['floor vent', 'bed window']);
  expect(summer.shutWindows).toEqual(['kitchen window']);
  expect(summer.openM2).toBeCloseTo(0.015 + 0.7 * 0.5, 9);
  expect(summerAirOf(await buildOf(plan()))).toBeUndefined();
});
