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
const fan = (flow: string) => `air: {fans: {roof fan: {blows: exhaust, flow: ${flow}}}}`;

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
  expect(words(finding.reason)).toContain(`Shut, the van gets to ${(30 + sunW / wPerK).toFixed(0)} °C`);
  expect(finding.cautions.join(' ')).toContain('children');
});

test('a fan counts by half; exactly enough is kept', async () => {
  const needed = (await summer()).limit?.measure.value ?? 0;
  expect((await summer(fan(`${needed * 2 * 3600} m3/h`))).verdict).toBe('pass');
  expect((await summer(fan(`${needed * 2 * 3600 * 0.99} m3/h`))).verdict).toBe('warn');
});

test('without a summer it is not checked', async () => {
  expect(await findingOf(warmVan(), 'heat.summer')).toMatchObject({
    verdict: 'not checked',
    missing: ['living.summer_high'],
  });
});
