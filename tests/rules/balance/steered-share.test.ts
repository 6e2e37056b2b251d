import { describe, expect, test } from 'vitest';
import { findingOf, measured, only, reportOf, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const steered = (text: string) => findingOf(text, 'balance.steered-share');

/** At least 30 % of the permissible 3000 kg: 900 kg on the front axle. A mass at x = 5 m takes a quarter off it. */
describe('a heavy tail', () => {
  // 1000 − 200 / 4 = 950 kg, 31.7 % of 3000 kg.
  test('pass', async () => {
    const finding = await steered(plan(fixtureAt('4 m', '200 kg')));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(950 / 3000, 12);
    expect(finding.limit).toEqual({ measure: { kind: 'share', value: 0.3 }, sense: 'at least' });
  });

  // 1000 − 400 / 4 = 900 kg.
  test('exactly at the limit is kept', async () => {
    expect((await steered(plan(fixtureAt('4 m', '400 kg')))).verdict).toBe('pass');
  });

  // 1000 − 404 / 4 = 899 kg. The rear axle carries 1000 + 1.25 · 404 = 1505 of 1800 kg, the van weighs 2404 of
  // 3000 kg: nothing is overloaded. Of what the van weighs 899 kg would be 37.4 %, which is not what the rule asks.
  test('just below fails though no axle is overloaded', async () => {
    const report = await reportOf(plan(fixtureAt('4 m', '404 kg')));
    for (const rule of ['mass.total', 'balance.front-axle', 'balance.rear-axle'])
      expect(only(report, rule).verdict).toBe('pass');
    const finding = only(report, 'balance.steered-share');
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(899 / 3000, 12);
    expect(words(finding.reason)).toContain('899 kg');
    expect(words(finding.reason)).toContain('has to carry 900 kg');
  });

  test.each([
    { codes: 'eu', verdict: 'fail' },
    { codes: 'us', verdict: 'warn' },
    { codes: 'au', verdict: 'warn' },
  ])('under $codes codes: $verdict', async ({ codes, verdict }) => {
    const finding = await steered(plan(fixtureAt('4 m', '404 kg'), {}, codes));
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'warn') expect(finding.cautions.join()).toContain('it can only warn');
  });

  // 1000 − 396 / 4 = 901 kg; ± 4 kg at x = 5 m is u = 1 / √3 = 0.577 kg, U = 1.155 kg, more than the 1 kg left.
  test('the limit within the tolerance warns', async () => {
    const finding = await steered(plan(fixtureAt('4 m', '396 kg ± 4 kg')));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 1) / Math.sqrt(3) / 3000, 12);
  });

  // 1000 − 440 / 4 = 890 kg, 10 kg short: 40 kg·m forward. 80 kg by 0.5 m, or the 440 kg by 0.0909, rounded up to 0.1 m.
  test('the remedy is enough', async () => {
    const finding = await steered(plan(fixtureAt('4 m', '440 kg')));
    expect(words(finding.remedy)).toBe('Move 80 kg 500 mm forward, or box (440 kg) 100 mm forward.');
    expect((await steered(plan(fixtureAt('3.9 m', '440 kg')))).verdict).toBe('pass');
  });
});

// The lightest front has no passenger over it (x = 0 m: 60 kg) and the store behind the rear axle full:
// 1000 − 100 / 4 = 975 kg.
test('the state in which the front is lightest', async () => {
  const finding = await steered(
    plan(`people: {seats: {passenger: {mass: 60 kg, at: {from_front: -1 m, from_left: 0.5 m, above_floor: 0.6 m}}}}
stores: {bicycles: {full: 100 kg, empty: 0 kg, at: {from_front: 4 m, centred: true, above_floor: 0 m}}}`),
  );
  expect(measured(finding)).toBeCloseTo(975 / 3000, 12);
  expect(finding.worstState?.text).toBe('1 aboard, stores full');
});

// 3000 kg at x = 7 m: the front is lifted by three quarters of it. Below nothing no figure says how far past it is.
test('a front axle that leaves the ground is the worst there is', async () => {
  const finding = await steered(plan(fixtureAt('6 m', '1600 kg')));
  expect(finding.verdict).toBe('fail');
  expect(measured(finding)).toBeCloseTo((1000 - 0.75 * 1600) / 3000, 12);
  expect(finding.utilisation).toBe(Number.POSITIVE_INFINITY);
});

test.each([
  { lacks: 'codes', codes: '', van: {}, missing: ['codes'] },
  { lacks: 'max_mass', codes: 'uk', van: { max_mass: undefined }, missing: ['van.max_mass'] },
  { lacks: 'wheelbase', codes: 'uk', van: { wheelbase: undefined }, missing: ['van.wheelbase'] },
])('without $lacks it is not checked', async ({ codes, van, missing }) => {
  expect(await steered(plan('', van, codes))).toMatchObject({ verdict: 'not checked', missing });
});
