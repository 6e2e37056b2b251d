import { expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { warmVan, warmVanWPerK } from '../../support/warm-van.ts';

const openings =
  '{window: {kind: window, in: right wall, length: 1 m, height: 1 m}, hatch: {kind: vent, in: ceiling, length: 100 mm, width: 100 mm}}';
const summer = (rest = '') =>
  findingOf(
    warmVan({
      living: 'summer_high: 30 degC',
      heat: 'panes: {window: {kind: double acrylic}}',
      van: { openings },
      rest,
    }),
    'heat.summer',
  );

// Window 0.75 · 1 · 500 = 375 W; right wall 7 m² / 1.17 · 0.5 · 500 · 0.04 = 59.8 W; roof 7.99 m² / 1.14 ·
// (0.5 · 900 · 0.04 − 3.9) = 98.8 W: 533.6 W. The hatch has no place, and so no area of its own.
// H: the walls lose 1 / 1.17 and the roof 0.01 / 1.14 less, the window 2.9 more.
const sunW = 375 + (7 / 1.17) * 10 + (7.99 / 1.14) * 14.1;
const wPerK = warmVanWPerK - 1 / 1.17 - 0.01 / 1.14 + 2.9;
const neededM3PerS = (sunW / 5 - wPerK) / 1200;

test('without air it warns, with the flow that would hold it', async () => {
  const finding = await summer();
  expect(finding.verdict).toBe('warn');
  expect(measured(finding)).toBe(0);
  expect(finding.limit?.measure.value).toBeCloseTo(neededM3PerS, 5);
  expect(words(finding.reason)).toContain(
    `Without a fan the van gets to ${(30 + sunW / wPerK).toFixed(0)} °C`,
  );
  expect(finding.cautions.join(' ')).toContain('children');
});

const air = (flow: string, floorVent: string, pressure = 'pressure: 50 Pa') =>
  `air: {vents: {roof: {in: ceiling, free_area: 400 cm2, closes: false}, floor: {in: floor, free_area: ${floorVent}, closes: true}}, fans: {roof fan: {vent: roof, blows: exhaust, flow: ${flow}, ${pressure}}}}`;

// Through a floor vent of 0.05 m²: what the opening lets through at the pressure at which the fan's line gives as much.
test('a fan counts with what it moves through what is open; exactly enough is kept', async () => {
  const needed = (await summer()).limit?.measure.value ?? 0;
  const depressionPa = (needed / (0.61 * 0.05)) ** 2 * (1.1989 / 2);
  const enough = needed / (1 - depressionPa / 50);
  // 1.1989 kg/m³ is rounded.
  expect((await summer(air(`${enough * 3600 * 1.00001} m3/h`, '500 cm2'))).verdict).toBe('pass');
  const short = await summer(air(`${enough * 3600 * 0.99} m3/h`, '500 cm2'));
  expect(short.verdict).toBe('warn');
  expect(words(short.reason)).toContain('With floor open roof fan moves');
});

test('a strong fan with little open is asked for a way in', async () => {
  const strangled = await summer(air('900 m3/h', '20 cm2'));
  expect(strangled.verdict).toBe('warn');
  expect(words(strangled.remedy)).toContain('in the open the fans move 900 m³/h');
  expect((await summer(air('900 m3/h', '2000 cm2'))).verdict).toBe('pass');
});

test('a fan of which too little is known is asked for', async () => {
  const fan = 'air: {fans: {roof fan: {blows: exhaust, flow: 900 m3/h}}}';
  expect(await summer(fan)).toMatchObject({
    verdict: 'not checked',
    missing: ['air.fans.roof fan.pressure'],
  });
});

test('the winter’s draught through the vents does not cool in summer', async () => {
  const vents =
    'air: {vents: {roof: {in: ceiling, free_area: 400 cm2, closes: false}, floor: {in: floor, free_area: 400 cm2, closes: false}}}';
  const flowAt = async (winterLow: string) =>
    measured(
      await findingOf(
        warmVan({ living: `summer_high: 30 degC, winter_low: ${winterLow}`, rest: vents }),
        'heat.summer',
      ),
    );
  expect(await flowAt('-20 degC')).toBe(await flowAt('15 degC'));
});

test('without a summer it is not checked', async () => {
  expect(await findingOf(warmVan(), 'heat.summer')).toMatchObject({
    verdict: 'not checked',
    missing: ['living.summer_high'],
  });
});
