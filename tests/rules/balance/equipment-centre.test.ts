import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const centre = (text: string) => findingOf(text, 'balance.equipment-centre');

const pair = (rearKg: string) => `fixtures:
  front box: {mass: 100 kg, at: {from_front: 2 m, centred: true, above_floor: 0 m}}
  rear box: {mass: ${rearKg}, at: {from_front: 4 m, centred: true, above_floor: 0 m}}`;

/** The rear axle is at x = 4 m. 100 kg at x = 3 m and m at x = 5 m: the centre is at (300 + 5 m) / (100 + m). */
describe('two boxes', () => {
  // (300 + 250) / 150 = 3.667 m.
  test('pass', async () => {
    const finding = await centre(plan(pair('50 kg')));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(550 / 150, 12);
    expect(finding.limit?.measure).toEqual({ kind: 'length', value: 4 });
  });

  // (300 + 500) / 200 = 4 m: above the axle itself.
  test('exactly at the limit is kept', async () => {
    expect((await centre(plan(pair('100 kg')))).verdict).toBe('pass');
  });

  test('just over warns', async () => {
    expect((await centre(plan(pair('101 kg')))).verdict).toBe('warn');
  });

  // (300 + 475) / 195 = 3.974 m. A kilogram more at the rear moves it by (5 − 3.974) / 195 = 0.00526 m; ± 6 kg is
  // u = 18.2 mm, and 26 mm are within U = 36.4 mm.
  test('the limit within the tolerance warns', async () => {
    const finding = await centre(plan(pair('95 kg ± 6 kg')));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 6 * (5 - 775 / 195)) / 195 / Math.sqrt(3), 12);
  });

  // (300 + 1000) / 300 = 4.333 m, 0.333 m · 300 kg = 100 kg·m too far back: the 200 kg by 0.5 m.
  test('the remedy is enough', async () => {
    const finding = await centre(plan(pair('200 kg')));
    expect(words(finding.remedy)).toContain('rear box (200 kg) 500 mm forward');
    const moved = pair('200 kg').replace('from_front: 4 m', 'from_front: 3.5 m');
    expect((await centre(plan(moved))).verdict).toBe('pass');
  });
});

test('a place is not ranked among the loads', async () => {
  expect((await centre(plan(fixtureAt('1 m', '10 kg')))).utilisation).toBeUndefined();
});

// Only the 10 kg at x = 2 m were built in; the driver, the fuel and the van itself are not equipment.
test('the van, its fuel and its people do not count', async () => {
  const text = plan(
    `people: {seats: {driver: {}, passenger: {at: {from_front: -1 m}}}}\n${fixtureAt('1 m', '10 kg')}`,
    { fuel_tank: '{holds: 100 L, fuel: diesel, at: {from_front: 4 m, centred: true}}' },
  );
  expect(measured(await centre(text))).toBeCloseTo(2, 12);
});

/** What is at its least may weigh nothing; where there is nothing, there is no centre. */
describe('equipment that can be nothing at all', () => {
  const tank =
    'tanks: {fresh tank: {contents: fresh, holds: 100 L, at: {from_front: 2 m, centred: true, above_floor: 0 m}}}';

  // One tank at x = 3 m, full or empty: its centre is there whenever there is any.
  test('a tank alone', async () => {
    const finding = await centre(plan(tank));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(3, 12);
  });

  // A store at x = 5 m and the tank at x = 3 m: furthest back with the store alone.
  test('a tank and a store', async () => {
    const store = 'stores: {bicycles: {full: 30 kg, at: {from_front: 4 m, centred: true, above_floor: 0 m}}}';
    const finding = await centre(plan(`${tank}\n${store}`));
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(5, 12);
    expect(finding.worstState?.text).toBe('fresh empty, 1 aboard, stores full');
  });

  test('a fixture without weight is none', async () => {
    expect(await centre(plan(fixtureAt('1 m', '0 kg')))).toMatchObject({
      verdict: 'not checked',
      missing: ['fixtures'],
    });
  });
});

// The allowance for personal effects is no equipment of the plan.
test('what the tool assumed does not count', async () => {
  const silent = plan(fixtureAt('1 m', '10 kg')).replace('stores: {}\n', '');
  expect(measured(await centre(silent))).toBeCloseTo(2, 12);
});

test.each([
  { lacks: 'anything built in', rest: '', van: {}, missing: ['fixtures'] },
  {
    lacks: 'wheelbase',
    rest: fixtureAt('1 m', '10 kg'),
    van: { wheelbase: undefined },
    missing: ['van.wheelbase'],
  },
  {
    lacks: 'load_bay',
    rest: fixtureAt('1 m', '10 kg'),
    van: { load_bay: undefined },
    missing: ['van.load_bay'],
  },
])('without $lacks it is not checked', async ({ rest, van, missing }) => {
  expect(await centre(plan(rest, van))).toMatchObject({ verdict: 'not checked', missing });
});
