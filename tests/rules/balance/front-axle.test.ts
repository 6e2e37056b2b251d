import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const front = (text: string) => findingOf(text, 'balance.front-axle');

/** A mass at x = 2 m of a wheelbase of 4 m rests half on each axle; R_f = 1000 + m / 2 against a limit of 1500 kg. */
describe('a mass in the middle of the wheelbase', () => {
  test('pass', async () => {
    const finding = await front(plan(fixtureAt('1 m', '600 kg')));
    expect(finding).toMatchObject({
      verdict: 'pass',
      measured: { value: 1300 },
      limit: { measure: { value: 1500 }, sense: 'at most' },
      margin: { value: 200 },
    });
    expect(words(finding.reason)).toBe('The front axle carries up to 1,300 kg, 200 kg less than its limit.');
  });

  test('exactly at the limit is kept', async () => {
    expect(await front(plan(fixtureAt('1 m', '1000 kg')))).toMatchObject({ verdict: 'pass', utilisation: 1 });
  });

  test('just over fails', async () => {
    const finding = await front(plan(fixtureAt('1 m', '1001 kg')));
    expect(finding).toMatchObject({ verdict: 'fail', margin: { value: -0.5 } });
  });

  // R_f = 1000 + 980 / 2 = 1490 kg; half of ± 40 kg: u = 20 / √3 = 11.547 kg, U = 23.09 kg, more than the 10 kg left.
  test('the limit within the tolerance of a mass warns', async () => {
    const finding = await front(plan(fixtureAt('1 m', '980 kg ± 40 kg')));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo(40 / Math.sqrt(3), 9);
  });

  // 980 kg at ± 0.1 m: u = 980 · 0.1 / (4 · √3) = 14.145 kg.
  test('the limit within the tolerance of a place warns, and names the place', async () => {
    const finding = await front(plan(fixtureAt('1 m ± 0.1 m', '980 kg')));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 980 * 0.1) / (4 * Math.sqrt(3)), 9);
    expect(words(finding.reason)).toContain('where box is lengthways');
  });
});

describe('outside the wheelbase', () => {
  // x = 5 m, a metre behind the rear axle: the front carries 1 − 5/4 = −1/4 of it. 1000 − 400 / 4 = 900 kg.
  test('what is behind the rear axle lifts the front', async () => {
    expect((await front(plan(fixtureAt('4 m', '400 kg')))).measured?.value).toBe(900);
  });

  // x = −1 m, ahead of the front axle: it carries 1 + 1/4 of it. 1000 + 1.25 · 200 = 1250 kg.
  test('what is ahead of the front axle loads it with more than its mass', async () => {
    expect((await front(plan(fixtureAt('-2 m', '200 kg')))).measured?.value).toBe(1250);
  });

  // A fresh tank at x = 5 m relieves the front, so it is empty where the front is heaviest: 1000 − 5 / 4 = 998.75 kg
  // with the shell alone. The waste tank at x = 2 m then holds the water: + 80 / 2 = 1038.75 kg.
  test('the water is where it loads the front most', async () => {
    const finding = await front(
      plan(`tanks:
  fresh tank: {contents: fresh, holds: 100 L, mass: 5 kg, at: {from_front: 4 m, centred: true, above_floor: 0 m}}
  waste tank: {contents: waste, holds: 80 L, at: {from_front: 1 m, centred: true, above_floor: 0 m}}`),
    );
    expect(measured(finding)).toBeCloseTo(1038.75, 9);
    expect(finding.worstState?.text).toBe('fresh empty, waste full, 1 aboard');
    expect(finding.worstState?.fills).toEqual([
      { name: 'fresh tank', massKg: 0, share: 0 },
      { name: 'waste tank', massKg: 80, share: 1 },
    ]);
  });
});

/** 1000 + 1200 / 2 = 1600 kg, 100 kg too much: 400 kg·m to move. 800 kg by 0.5 m, or the 1200 kg by 0.333 m. */
describe('the remedy', () => {
  test('says what to move how far', async () => {
    const finding = await front(plan(fixtureAt('1 m', '1200 kg')));
    expect(words(finding.remedy)).toBe('Move 800 kg 500 mm rearward, or box (1,200 kg) 340 mm rearward.');
  });

  // 1000 + 1200 · (1 − 2.34 / 4) = 1498 kg.
  test('doing it is enough', async () => {
    const finding = await front(plan(fixtureAt('1.34 m', '1200 kg')));
    expect(measured(finding)).toBeCloseTo(1498, 9);
    expect(finding.verdict).toBe('pass');
  });
});

test.each([
  { lacks: 'wheelbase', van: { wheelbase: undefined }, missing: ['van.wheelbase'] },
  { lacks: 'axle_limits', van: { axle_limits: undefined }, missing: ['van.axle_limits'] },
  { lacks: 'unladen', van: { unladen: undefined }, missing: ['van.unladen'] },
  {
    lacks: 'the place of the empty van',
    van: { unladen: '{mass: 2000 kg, from: weighbridge, includes: {driver: true}}' },
    missing: ['van.unladen.behind_front_axle'],
  },
  {
    lacks: 'wheelbase and the place of the empty van',
    van: {
      wheelbase: undefined,
      unladen: '{mass: 2000 kg, from: weighbridge, includes: {driver: true}}',
    },
    missing: ['van.wheelbase', 'van.unladen.behind_front_axle'],
  },
  { lacks: 'load_bay', van: { load_bay: undefined }, missing: ['van.load_bay'] },
])('without $lacks it is not checked', async ({ van, missing }) => {
  expect(await front(plan(fixtureAt('1 m', '10 kg'), van))).toMatchObject({
    verdict: 'not checked',
    missing,
  });
});

// Nothing in this plan needs the load bay to be placed.
test('without a load bay the empty van alone can be checked', async () => {
  expect(await front(plan('', { load_bay: undefined }))).toMatchObject({
    verdict: 'pass',
    measured: { value: 1000 },
  });
});

// 2000 kg at 1.5 m of 4 m: 1250 kg in front.
test('the empty van as one mass with its place', async () => {
  const van = {
    unladen: '{mass: 2000 kg, behind_front_axle: 1.5 m, from: weighbridge, includes: {driver: true}}',
  };
  expect((await front(plan('', van))).measured?.value).toBe(1250);
});
