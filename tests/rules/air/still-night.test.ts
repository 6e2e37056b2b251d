import { expect, test } from 'vitest';
import { airy, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.still-night';

test('50 and 100 cm² give half a change an hour, and no more than the small one lets through', async () => {
  const finding = await findingOf(airy(twoVents(50, 100)), id);
  // 0.0023945 m³/s are 8.62 m³/h; half a change of 16 m³ is 8 m³/h. By hand in tests/build/night-air.test.ts.
  expect(finding.verdict).toBe('pass');
  expect(measured(finding) * 3600).toBeCloseTo(8.62, 2);
  expect(finding.limit?.measure.value).toBeCloseTo(8 / 3600, 9);
  expect(words(finding.reason)).toContain(
    '50 cm² low and 100 cm² high are worth 45 cm² one behind the other',
  );
});

test('a small low vent starves a large high one', async () => {
  const finding = await findingOf(airy(twoVents(10, 400)), id);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('The small low one starves the high one.');
  // h ≈ 2 m: Q = 0.65 · A · √(2 · 9.81 · 2 · 5 / 288.15); 8 m³/h take 41.5 cm², of which 10 are there.
  expect(words(finding.remedy)).toContain('fit fixed vents of 32 cm² more low');
});

test('exactly at half a change is kept', async () => {
  // h = 2 / (1 + 288.15 / 283.15) = 0.99125 m and √(2 · 9.81 · h · 5 / 288.15) = 0.58093 m/s for equal vents, so
  // 8 / 3600 = 0.65 · A · 0.58093 gives 58.849 cm² each.
  const drive = Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 283.15)) * 5) / 288.15);
  const cm2 = (8 / 3600 / 0.65 / drive) * 1e4;
  expect((await findingOf(airy(twoVents(cm2, cm2)), id)).verdict).toBe('pass');
  const finding = await findingOf(airy(twoVents(cm2 * 0.99, cm2 * 0.99)), id);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.remedy)).toMatch(/0\.6 cm² more low and 0\.6 cm² more high/);
});

test('without a low vent warmth draws nothing through', async () => {
  const finding = await findingOf(airy('high: {in: ceiling, free_area: 100 cm2, closes: false}'), id);
  expect(finding.verdict).toBe('warn');
  expect(measured(finding)).toBe(0);
  expect(words(finding.reason)).toContain('There is no fixed low vent');
  expect(words(finding.remedy)).toContain('1500 mm apart in height');
});

test('leaks that are more than the vents give are named as such', async () => {
  const leaky = twoAsleep.replace('15 degC}', '15 degC, air_changes_per_hour: 1}');
  const finding = await findingOf(airy(twoVents(10, 10), leaky), id);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain('the leaks that `heat.air_changes_per_hour` stands for');
});

test('not checked without vents, sleepers or a word on what can be shut', async () => {
  expect((await findingOf(plan(), id)).missing).toEqual(['people.sleepers', 'air.vents']);
  expect((await findingOf(airy('roof: {in: ceiling, free_area: 90 cm2}'), id)).missing).toEqual([
    'air.vents.roof.closes',
  ]);
});
