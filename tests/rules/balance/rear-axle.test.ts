import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const rear = (text: string) => findingOf(text, 'balance.rear-axle');

/** At the rear doors, x = 5 m: the rear axle takes 5/4 of the mass. R_r = 1000 + 1.25 m against 1800 kg. */
describe('a mass behind the rear axle', () => {
  test('pass', async () => {
    const finding = await rear(plan(fixtureAt('4 m', '400 kg')));
    expect(finding).toMatchObject({ verdict: 'pass', measured: { value: 1500 }, margin: { value: 300 } });
  });

  test('exactly at the limit is kept', async () => {
    expect(await rear(plan(fixtureAt('4 m', '640 kg')))).toMatchObject({ verdict: 'pass', utilisation: 1 });
  });

  test('just over fails', async () => {
    const finding = await rear(plan(fixtureAt('4 m', '641 kg')));
    expect(finding).toMatchObject({ verdict: 'fail', margin: { value: -1.25 } });
    expect(words(finding.reason)).toContain('1.3 kg more than its limit');
  });

  // 1000 + 1.25 · 630 = 1787.5 kg; u = 1.25 · 12 / √3 = 8.66 kg, U = 17.3 kg, more than the 12.5 kg left.
  test('the limit within the tolerance warns', async () => {
    const finding = await rear(plan(fixtureAt('4 m', '630 kg ± 12 kg')));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 1.25 * 12) / Math.sqrt(3), 9);
  });
});

// Over the rear axle, x = 4 m: all of it. Ahead of the front axle, x = −1 m: a quarter of it is lifted off.
test.each([
  { fromFront: '3 m', expected: 1200 },
  { fromFront: '1 m', expected: 1100 },
  { fromFront: '-1 m', expected: 1000 },
  { fromFront: '-2 m', expected: 950 },
])('200 kg at from_front: $fromFront: $expected kg', async ({ fromFront, expected }) => {
  expect((await rear(plan(fixtureAt(fromFront, '200 kg')))).measured?.value).toBe(expected);
});

// The waste tank is 1 m further back than the fresh tank, so the water loads the rear most once it is used: 80 kg in
// the waste tank at x = 5 m and the other 20 kg in the fresh tank at x = 4 m. 1000 + 100 + 20 = 1120 kg.
test('the water runs to where it loads the rear most, and no further than there is of it', async () => {
  const finding = await rear(
    plan(`tanks:
  waste tank: {contents: waste, holds: 80 L, at: {from_front: 4 m, centred: true, above_floor: 0 m}}
  fresh tank: {contents: fresh, holds: 100 L, at: {from_front: 3 m, centred: true, above_floor: 0 m}}`),
  );
  expect(measured(finding)).toBeCloseTo(1120, 9);
  expect(finding.worstState?.text).toBe('fresh 20 % full, waste full, 1 aboard');
});

// 1000 + 1.25 · 720 = 1900 kg, 100 kg too much: 400 kg·m, which is 0.556 m for 720 kg; rounded up to 560 mm.
test('the remedy is enough', async () => {
  const finding = await rear(plan(fixtureAt('4 m', '720 kg')));
  expect(words(finding.remedy)).toBe('Move 800 kg 500 mm forward, or box (720 kg) 560 mm forward.');
  expect((await rear(plan(fixtureAt('3.44 m', '720 kg')))).verdict).toBe('pass');
});

// A cupboard of 100 kg with 700 kg in it, its back against the doors: they move as one.
test('what holds something moves with it', async () => {
  const finding = await rear(
    plan(`fixtures:
  cupboard: {mass: 100 kg, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_rear: 0 m, centred: true}, on: floor}
  safe: {mass: 700 kg, in: cupboard, size: {length: 1 m, width: 1 m, height: 1 m}}`),
  );
  // x = 4.5 m: 1000 + 800 · 1.125 = 1900 kg; 400 kg·m / 800 kg = 0.5 m.
  expect(measured(finding)).toBeCloseTo(1900, 9);
  expect(words(finding.remedy)).toContain('cupboard with what it holds (800 kg) 500 mm forward');
});

// A box of 3.9 m in a bay of 4 m, 0.1 m from its front: x = 3.05 m, 1000 + 720 · 0.7625 = 1549 kg, 49 kg too much:
// 196 kg·m. It can go forward by 0.1 m: 72 of 196 kg·m, 36 %.
test('where nothing can be moved far enough, the remedy says how much it does', async () => {
  const finding = await rear(
    plan(
      'fixtures: {box: {mass: 720 kg, size: {length: 3.9 m}, at: {from_front: 0.1 m, centred: true, above_floor: 0 m}}}',
      { axle_limits: '{front: 1500 kg, rear: 1500 kg}' },
    ),
  );
  expect(words(finding.remedy)).toBe(
    'Move 392 kg 500 mm forward; box (720 kg) as far as it goes, 100 mm, does 36 % of it.',
  );
});

test.each([
  { lacks: 'wheelbase', van: { wheelbase: undefined }, missing: ['van.wheelbase'] },
  { lacks: 'axle_limits', van: { axle_limits: undefined }, missing: ['van.axle_limits'] },
  { lacks: 'unladen', van: { unladen: undefined }, missing: ['van.unladen'] },
  {
    lacks: 'load_bay and wheelbase',
    van: { load_bay: undefined, wheelbase: undefined },
    missing: ['van.wheelbase', 'van.load_bay'],
  },
])('without $lacks it is not checked', async ({ van, missing }) => {
  expect(await rear(plan(fixtureAt('1 m', '10 kg'), van))).toMatchObject({ verdict: 'not checked', missing });
});
