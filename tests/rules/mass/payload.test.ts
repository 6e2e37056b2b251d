import { expect, test } from 'vitest';
import { findingOf, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const payload = (text: string) => findingOf(text, 'mass.payload');

// 3000 − 2300 = 700 kg.
test('pass', async () => {
  const finding = await payload(plan(fixtureAt('1 m', '300 kg')));
  expect(finding).toMatchObject({ verdict: 'pass', measured: { value: 700 }, margin: { value: 700 } });
  expect(words(finding.reason)).toContain('no mass in the plan has a tolerance');
  expect(finding.probability).toBeUndefined();
});

// 3000 − 3200 = −200 kg. The total mass has the remedy, so this one only says so.
test('over the plate it warns', async () => {
  const finding = await payload(plan(fixtureAt('1 m', '1200 kg')));
  expect(finding).toMatchObject({ verdict: 'warn', measured: { value: -200 } });
  expect(words(finding.reason)).toBe('Nothing is left: the plan is 200 kg over.');
});

test('nothing left, but nothing over, passes', async () => {
  expect(await payload(plan(fixtureAt('1 m', '1000 kg')))).toMatchObject({
    verdict: 'pass',
    measured: { value: 0 },
  });
});

// The same 3000 kg, out by the last binary digits.
test('the last digits of a sum are no overload', async () => {
  const fixtures = 'fixtures: {a: {mass: 999.4 kg}, b: {mass: 0.3 kg}, c: {mass: 0.3 kg}}';
  expect((await payload(plan(fixtures))).verdict).toBe('pass');
});

test('just over warns', async () => {
  expect((await payload(plan(fixtureAt('1 m', '1000.1 kg')))).verdict).toBe('warn');
});

/**
 * u = 10 / √3 = 5.774 kg. With 10 kg left the chance of an overload is Φ(−1.732) = 4.2 %, below one in twenty; with
 * 9 kg it is Φ(−1.559) = 6.0 %, which is worth a warning. To be clear of it U − 9 = 11.547 − 9 = 2.5 kg must go.
 */
test('a chance of an overload of one in twenty or more warns', async () => {
  const calm = await payload(plan(fixtureAt('1 m', '990 kg ± 10 kg')));
  expect(calm.verdict).toBe('pass');
  expect(calm.probability).toBeCloseTo(0.0416, 4);
  const uneasy = await payload(plan(fixtureAt('1 m', '991 kg ± 10 kg')));
  expect(uneasy.verdict).toBe('warn');
  expect(uneasy.probability).toBeCloseTo(0.0595, 4);
  expect(words(uneasy.reason)).toMatch(/give or take 12 kg: the chance of an overload is 6\.0 %/);
  expect(words(uneasy.reason)).toContain('most of the tolerance comes from `fixtures.box.mass`');
  expect(words(uneasy.remedy)).toContain('Lose 3.0 kg');
});

test.each([
  { lacks: 'max_mass', van: { max_mass: undefined }, missing: ['van.max_mass'] },
  { lacks: 'unladen', van: { unladen: undefined }, missing: ['van.unladen'] },
])('without $lacks it is not checked', async ({ van, missing }) => {
  expect(await payload(plan('', van))).toMatchObject({ verdict: 'not checked', missing });
});
