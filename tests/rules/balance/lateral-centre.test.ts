import { expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureOnRight, plan } from '../../support/test-van.ts';

const centre = (text: string) => findingOf(text, 'balance.lateral-centre');
const limited = { centre_limits: '{sideways: 100 mm}' };

// 500 kg at y = 0.4 m: 200 / 2500 = 0.08 m.
test('pass', async () => {
  const finding = await centre(plan(fixtureOnRight('0.6 m', '500 kg'), limited));
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'centre of mass, right' });
  expect(measured(finding)).toBeCloseTo(0.08, 12);
});

// y = 0.5 m: 250 / 2500 = 0.1 m.
test('exactly at the limit is kept', async () => {
  expect((await centre(plan(fixtureOnRight('0.5 m', '500 kg'), limited))).verdict).toBe('pass');
});

// y = 0.51 m: 255 / 2500 = 0.102 m.
test('just over warns', async () => {
  expect((await centre(plan(fixtureOnRight('0.49 m', '500 kg'), limited))).verdict).toBe('warn');
});

// y = −0.6 m: 300 / 2500 = 0.12 m, 0.02 m · 2500 kg = 50 kg·m too much; 500 kg by 0.1 m to the right.
test('on the left, with a remedy that is enough', async () => {
  const left = (fromLeft: string) =>
    plan(
      `fixtures: {box: {mass: 500 kg, at: {from_front: 1 m, from_left: ${fromLeft}, above_floor: 0 m}}}`,
      limited,
    );
  const finding = await centre(left('0.4 m'));
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'centre of mass, left' });
  expect(measured(finding)).toBeCloseTo(0.12, 12);
  expect(words(finding.remedy)).toContain('box (500 kg) 100 mm to the right');
  expect((await centre(left('0.5 m'))).verdict).toBe('pass');
});

// y = 0.49 m ± 0.05 m: 0.098 m; u = 500 · 0.05 / √3 / 2500 = 5.77 mm, and 2 mm are within U = 11.5 mm.
test('the limit within the tolerance warns', async () => {
  const finding = await centre(plan(fixtureOnRight('0.51 m ± 0.05 m', '500 kg'), limited));
  expect(finding.verdict).toBe('warn');
  expect(finding.tolerance?.value).toBeCloseTo((2 * 500 * 0.05) / Math.sqrt(3) / 2500, 12);
});

// 100 kg of water on the right, with and without: the fuller the tank the further right. 100 / 2100 = 0.0476 m.
test('the worst state is the one furthest out', async () => {
  const tank =
    'tanks: {fresh tank: {contents: fresh, holds: 100 L, at: {from_front: 1 m, from_right: 0 m, above_floor: 0 m}}}';
  const finding = await centre(plan(tank, limited));
  expect(measured(finding)).toBeCloseTo(100 / 2100, 12);
  expect(finding.worstState?.text).toBe('fresh full, 1 aboard');
});

test('without a limit the figure is shown, and not checked', async () => {
  const finding = await centre(plan(fixtureOnRight('0.6 m', '500 kg')));
  expect(finding).toMatchObject({ verdict: 'not checked', missing: ['van.centre_limits.sideways'] });
  expect(measured(finding)).toBeCloseTo(0.08, 12);
  expect(words(finding.remedy)).toContain('van.centre_limits.sideways');
});

// Wheels say how the empty van leans only with the track between them; axle loads say nothing of it.
test('wheel loads need the track', async () => {
  const unladen =
    '{front_left: 480 kg, front_right: 520 kg, rear_left: 500 kg, rear_right: 500 kg, from: weighbridge, includes: {driver: true}}';
  const finding = await centre(plan('', { ...limited, unladen, track: undefined }));
  expect(finding).toMatchObject({ verdict: 'not checked', missing: ['van.track'] });
  // With it: 40 kg more on the right front, 40 · 1 m / 2000 kg = 20 mm.
  expect(measured(await centre(plan('', { ...limited, unladen })))).toBeCloseTo(0.02, 12);
  expect((await centre(plan('', { ...limited, track: undefined }))).verdict).toBe('pass');
});

test.each([
  { lacks: 'wheelbase', van: { wheelbase: undefined }, missing: ['van.wheelbase'] },
  { lacks: 'unladen', van: { unladen: undefined }, missing: ['van.unladen'] },
])('without $lacks it is not checked', async ({ van, missing }) => {
  expect(await centre(plan('', { ...limited, ...van }))).toMatchObject({ verdict: 'not checked', missing });
});
