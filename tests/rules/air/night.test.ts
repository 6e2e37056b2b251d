import { expect, test } from 'vitest';
import { flowForPpmAfterM3S } from '../../../src/calc/air/carbon-dioxide.ts';
import { airy, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.night';

test('beyond 2000 ppm it warns, and says when and what would keep it', async () => {
  const finding = await findingOf(airy(twoVents(50, 100)), id);
  // Steady: 425 + 10⁶ · 7.817e-6 / 0.0023945 = 3690 ppm; 1.3 % of the way from 1000 ppm is left after 8 h.
  expect(finding.verdict).toBe('warn');
  expect(measured(finding) * 1e6).toBeCloseTo(3654, -1);
  expect(words(finding.reason)).toContain('carbon dioxide goes from 1,000 ppm to 3,6');
  // t = V / Q · ln(2690 / 1690) = 6682 s · 0.4648 = 0.86 h.
  expect(words(finding.reason)).toContain('It reaches 2,000 ppm after 52 min.');
  // 10⁶ · 7.817e-6 / 1575 = 0.004963 m³/s = 17.9 m³/h.
  expect(words(finding.remedy)).toContain('It takes 18 m³/h to stay at 2,000 ppm');
});

test('beyond the limit of workplaces it fails', async () => {
  const finding = await findingOf(airy(twoVents(20, 20)), id);
  expect(finding.verdict).toBe('fail');
  expect(finding.limit?.measure.value).toBeCloseTo(5000e-6, 12);
  expect(words(finding.reason)).toContain(
    'The limit of workplaces, for healthy adults awake, is passed after',
  );
});

test('exactly at 2000 ppm is kept', async () => {
  const generationM3S = (2 * 0.0039 * 0.95 * (288.15 / 273.15)) / 1000;
  const room = { outsidePpm: 425, generationM3S, volumeM3: 16, startPpm: 1000 };
  const flowM3S = flowForPpmAfterM3S(room, 2000, 28_800);
  // Equal vents, 2 m apart: as in the test of still-night.
  const cm2 = (flowM3S / 0.65 / Math.sqrt((2 * 9.81 * (2 / (1 + 288.15 / 283.15)) * 5) / 288.15)) * 1e4;
  const kept = await findingOf(airy(twoVents(cm2, cm2)), id);
  expect(kept.verdict).toBe('pass');
  expect(kept.utilisation).toBeCloseTo(1, 9);
  expect((await findingOf(airy(twoVents(cm2 * 0.999, cm2 * 0.999)), id)).verdict).toBe('warn');
});

test('what the remedy asks for is just enough', async () => {
  const short = await findingOf(airy(twoVents(80, 200)), id);
  const needed = Number(/fixed vents of (\d+) cm² more low/.exec(words(short.remedy))?.[1]);
  expect(needed).toBeGreaterThan(0);
  expect((await findingOf(airy(twoVents(80 + needed + 1, 200)), id)).verdict).toBe('pass');
  expect((await findingOf(airy(twoVents(80 + needed - 1, 200)), id)).verdict).toBe('warn');
});

test('one sleeper breathes half, and a short night ends before the limit', async () => {
  const alone = twoAsleep.replace('[{stature: 1.7 m}, {stature: 1.8 m}]', '[{stature: 1.7 m}]');
  expect((await findingOf(airy(twoVents(70, 140), alone), id)).verdict).toBe('pass');
  expect((await findingOf(airy(twoVents(70, 140)), id)).verdict).toBe('warn');
  const nap = `${twoAsleep}living: {asleep: 0.5 h}\n`;
  expect((await findingOf(airy(twoVents(50, 100), nap), id)).verdict).toBe('pass');
});

test('a closable roof vent beside fixed ones is taken as shut, and it is said', async () => {
  const finding = await findingOf(airy(`${twoVents(50, 100)}, roof: {in: ceiling, free_area: 300 cm2}`), id);
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain(
    'roof is taken as shut, since the plan does not say `closes: false`',
  );
});

test('not checked without vents and sleepers', async () => {
  expect((await findingOf(plan(), id)).missing).toEqual(['people.sleepers', 'air.vents']);
});
