import { expect, test } from 'vitest';
import { saturationPressurePa } from '../../../src/calc/air/saturation.ts';
import { airy, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.humidity';
const winter = (more = '') => `${twoAsleep}living: {winter_low: -10 degC, cooking: 30 min${more}}\n`;

test('dry winter air through large vents carries the water out', async () => {
  const finding = await findingOf(airy(twoVents(100, 100), winter()), id);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain(
    "A winter's day sets 2.7 kg of water free (people 2.4 kg, cooking 0.3 kg)",
  );
});

test('asleep: the balance by hand', async () => {
  const finding = await findingOf(airy(twoVents(40, 40), winter(', wet_clothes: 0 L')), id);
  // Asleep at 15 °C and −10 °C outside, equal vents 2 m apart: h = 2 / (1 + 288.15 / 263.15) = 0.95467 m,
  // Q = 0.65 · 0.004 · √(2 · 9.81 · 0.95467 · 25 / 288.15) = 0.0033144 m³/s; 100 g/h.
  const flow = 0.65 * 0.004 * Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 263.15)) * 25) / 288.15);
  const inside = 0.9 * saturationPressurePa(-10) + ((0.1 / 3600) * 461.524 * 288.15) / flow;
  expect(measured(finding)).toBeCloseTo(inside / saturationPressurePa(15), 6);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('While people are asleep');
  expect(words(finding.remedy)).toMatch(
    /It takes 1\d m³\/h for 60 %: run a fan, .* more low and .* more high/,
  );
});

test('exactly at 60 % is kept, a little less air is not', async () => {
  const flow =
    ((0.1 / 3600) * 461.524 * 288.15) / (0.6 * saturationPressurePa(15) - 0.9 * saturationPressurePa(-10));
  const cm2 = (flow / 0.65 / Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 263.15)) * 25) / 288.15)) * 1e4;
  expect((await findingOf(airy(twoVents(cm2, cm2), winter()), id)).verdict).toBe('pass');
  expect((await findingOf(airy(twoVents(cm2 * 0.99, cm2 * 0.99), winter()), id)).verdict).toBe('warn');
});

test('wet clothes and showers make the day the damper part', async () => {
  const finding = await findingOf(
    airy(twoVents(60, 60), winter(', wet_clothes: 3 L, showers_per_person_day: 2')),
    id,
  );
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('showers 2.4 kg, wet clothes 3.0 kg');
  expect(words(finding.reason)).toContain('Over the day');
});

test('more than the air can hold settles', async () => {
  const finding = await findingOf(airy(twoVents(5, 5), winter()), id);
  expect(measured(finding)).toBe(1);
  expect(words(finding.reason)).toContain('the air cannot hold it');
});

test('damp outside air wants warmth, not more of it', async () => {
  const mild = `${twoAsleep}living: {winter_low: 14 degC, cooking: 30 min}\n`;
  const finding = await findingOf(airy(twoVents(300, 300), mild), id);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.remedy)).toMatch(/warm the room by more than 5\.\d K/);
});

test('not checked without the coldest weather, vents and sleepers', async () => {
  expect((await findingOf(airy(twoVents(50, 50)), id)).missing).toEqual(['living.winter_low']);
  expect((await findingOf(plan(), id)).missing).toEqual([
    'people.sleepers',
    'air.vents',
    'living.winter_low',
  ]);
});
