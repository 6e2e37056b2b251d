import { describe, expect, test } from 'vitest';
import { findingOf, measured, only, problemsOf, reportOf, words } from '../../support/check.ts';
import { fixtureAt, fixtureOnRight, plan } from '../../support/test-van.ts';

const rear = (text: string) => findingOf(text, 'balance.wheel-load', 'rear');
const front = (text: string) => findingOf(text, 'balance.wheel-load', 'front');
const wheels = (left: number, right: number) => ({
  unladen: `{front_left: ${left} kg, front_right: ${right} kg, rear_left: 500 kg, rear_right: 500 kg, from: weighbridge, includes: {driver: true}}`,
});

/** One wheel may carry 52 % of its axle. */
describe('wheels that were weighed', () => {
  // 520 / (480 + 520) = 52 %.
  test('exactly at the limit is kept', async () => {
    const finding = await front(plan('', wheels(480, 520)));
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'front axle, right wheel' });
    expect(measured(finding)).toBeCloseTo(0.52, 12);
  });

  test('just over warns, as a guide can', async () => {
    expect((await front(plan('', wheels(479, 521)))).verdict).toBe('warn');
  });

  test('on the other side', async () => {
    const finding = await front(plan('', wheels(530, 470)));
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'front axle, left wheel' });
    expect(measured(finding)).toBeCloseTo(0.53, 12);
  });

  test('the other axle is judged by itself', async () => {
    const finding = await rear(plan('', wheels(479, 521)));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.5, 12);
  });
});

/** Over the rear axle, half a metre right of the centre line (from_right: 0.5 m), three quarters are on the right. */
describe('a mass to one side', () => {
  // (500 + 0.75 · 80) / (1000 + 80) = 560 / 1080 = 51.85 %.
  test('pass', async () => {
    const finding = await rear(plan(fixtureOnRight('0.5 m', '80 kg')));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(560 / 1080, 12);
    expect(words(finding.reason)).toContain('560 kg of 1,080 kg');
  });

  // (500 + 0.75 · 100) / 1100 = 575 / 1100 = 52.27 %.
  test('broken', async () => {
    const finding = await rear(plan(fixtureOnRight('0.5 m', '100 kg')));
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(575 / 1100, 12);
  });

  // 80 kg ± 5 kg: the share moves by (0.75 − 0.51852) / 1080 for each kg, u = 5 / √3 · 0.23148 / 1080 = 0.000619.
  // 52 % − 51.85 % = 0.148 % is more than U = 0.124 %; with ± 8 kg, U = 0.198 %, it is not.
  test('the limit within the tolerance warns', async () => {
    const perKg = (0.75 - 560 / 1080) / 1080;
    const calm = await rear(plan(fixtureOnRight('0.5 m', '80 kg ± 5 kg')));
    expect(calm.verdict).toBe('pass');
    expect(calm.tolerance?.value).toBeCloseTo((2 * 5 * perKg) / Math.sqrt(3), 12);
    expect((await rear(plan(fixtureOnRight('0.5 m', '80 kg ± 8 kg')))).verdict).toBe('warn');
  });

  // Between the axles the side counts as the weight does. 200 kg at x = 2 m over the right wheels (y = 1 m): rear right
  // 500 + 100 = 600 of 1100 kg, 54.5 %. 52 % is 572 kg: 28 kg too much. Half of the 200 kg rest on this axle, so
  // 200 kg · d / 2 m / 2 = 28 kg, d = 0.56 m.
  test('the remedy counts only what rests on the axle, and is enough', async () => {
    const box = (fromRight: string) =>
      plan(
        `fixtures: {box: {mass: 200 kg, at: {from_front: 1 m, from_right: ${fromRight}, above_floor: 0 m}}}`,
      );
    const finding = await rear(box('0 m'));
    expect(measured(finding)).toBeCloseTo(600 / 1100, 12);
    expect(words(finding.remedy)).toBe(
      'Move 112 kg over the rear axle 500 mm to the left, or box (200 kg) 560 mm to the left.',
    );
    expect((await rear(box('0.56 m'))).verdict).toBe('pass');
    expect((await rear(box('0.55 m'))).verdict).toBe('warn');
  });
});

// A tank on the left and the toilet on the right of the rear axle: the worst right has the water on the right only,
// (500 + 40) / 1040 = 51.92 %; the worst left has it on the left, (500 + 60) / 1060 = 52.83 %.
test('each side has its own worst state', async () => {
  const finding = await rear(
    plan(`tanks:
  fresh tank: {contents: fresh, holds: 60 L, at: {from_front: 3 m, from_left: 0 m, above_floor: 0 m}}
  toilet: {contents: waste, holds: 40 L, at: {from_front: 3 m, from_right: 0 m, above_floor: 0 m}}`),
  );
  expect(finding).toMatchObject({ subject: 'rear axle, left wheel', verdict: 'warn' });
  expect(measured(finding)).toBeCloseTo(560 / 1060, 12);
  expect(finding.worstState?.text).toBe('fresh full, waste empty, 1 aboard');
});

// 150 kg over the rear axle, right: 650 / 1150 with a track of 2 m. A rear track of 2.5 m puts 1/2 + 1/2.5 = 90 % of
// it on the right wheel: (500 + 135) / 1150.
test('the rear axle has its own track', async () => {
  const text = fixtureOnRight('0 m', '150 kg');
  expect(measured(await rear(plan(text)))).toBeCloseTo(650 / 1150, 12);
  expect(measured(await rear(plan(text, { rear_track: '2.5 m' })))).toBeCloseTo(635 / 1150, 12);
});

describe('a limit of the plan', () => {
  const own = (limit: string) =>
    `${fixtureOnRight('0.5 m', '100 kg')}
rules: {balance.wheel-load: {limit: ${limit}, reason: "the base van's guide, page 14"}}`;

  // 52.27 % breaks 52 % and keeps 53 %.
  test('moves the limit, and its reason is cited first', async () => {
    const finding = await rear(plan(own('53 %')));
    expect(finding).toMatchObject({ verdict: 'pass', limit: { measure: { value: 0.53 } } });
    expect(finding.sources[0]).toMatchObject({
      title: "The plan's own limit: the base van's guide, page 14",
      provenance: 'own choice',
    });
    expect(finding.sources.length).toBeGreaterThan(1);
  });

  test('of another kind is refused', async () => {
    expect(await problemsOf(plan(own('53 kg')))).toHaveLength(1);
  });
});

/** 1600 kg at x = 7 m: R_f = 1000 − 0.75 · 1600 = −200 kg. There is no load for the front wheels to share. */
describe('an axle that leaves the ground', () => {
  test('warns instead of dividing by nothing, and the other checks go on', async () => {
    const report = await reportOf(plan(fixtureAt('6 m', '1600 kg')));
    const finding = only(report, 'balance.wheel-load', 'front');
    expect(finding).toMatchObject({ verdict: 'warn', measured: { kind: 'mass', value: -200 } });
    expect(words(finding.reason)).toContain('leave the ground');
    expect(words(finding.remedy)).toContain('forward');
    expect(only(report, 'balance.wheel-load', 'rear').verdict).toBe('pass');
  });
});

test.each([
  { lacks: 'track', van: { track: undefined }, missing: ['van.track'] },
  { lacks: 'wheelbase', van: { wheelbase: undefined }, missing: ['van.wheelbase'] },
  {
    lacks: 'unladen and track',
    van: { track: undefined, unladen: undefined },
    missing: ['van.unladen', 'van.track'],
  },
])('without $lacks it is not checked', async ({ van, missing }) => {
  const finding = await findingOf(plan('', van), 'balance.wheel-load');
  expect(finding).toMatchObject({ verdict: 'not checked', missing });
});
