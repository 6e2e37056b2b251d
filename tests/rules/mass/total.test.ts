import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const total = (text: string) => findingOf(text, 'mass.total');

describe('against the plate', () => {
  // 2000 kg with the driver + 300 kg = 2300 kg; 3000 − 2300 = 700 kg to spare.
  test('pass', async () => {
    const finding = await total(plan(fixtureAt('1 m', '300 kg')));
    expect(finding).toMatchObject({
      verdict: 'pass',
      measured: { kind: 'mass', value: 2300 },
      limit: { measure: { kind: 'mass', value: 3000 }, sense: 'at most' },
      margin: { value: 700 },
    });
    expect(finding.utilisation).toBeCloseTo(2300 / 3000, 12);
  });

  // 2000 + 1000 = 3000 kg, the plate itself.
  test('exactly at the limit is kept', async () => {
    const finding = await total(plan(fixtureAt('1 m', '1000 kg')));
    expect(finding).toMatchObject({ verdict: 'pass', margin: { value: 0 }, utilisation: 1 });
  });

  // 2000 + 999.4 + 0.3 + 0.3 = 3000 kg, but in binary the sum comes out a little above.
  test('the last digits of a sum do not break a limit', async () => {
    const fixtures = `fixtures: {a: {mass: 999.4 kg}, b: {mass: 0.3 kg}, c: {mass: 0.3 kg}}`;
    expect(2000 + 999.4 + 0.3 + 0.3).toBeGreaterThan(3000);
    const finding = await total(plan(fixtures));
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toMatch(/stays 0\.0 kg below/);
  });

  // 2000 + 1000.1 = 3000.1 kg.
  test('just over fails', async () => {
    const finding = await total(plan(fixtureAt('1 m', '1000.1 kg')));
    expect(finding.verdict).toBe('fail');
    expect(finding.margin?.value).toBeCloseTo(-0.1, 9);
  });

  // ± 10 kg: u = 10 / √3 = 5.774 kg, U = 2 u = 11.547 kg. 3000 − 2990 = 10 kg is within it; chance Φ(−10 / 5.774)
  // = Φ(−1.732) = 4.16 %. 3000 − 2985 = 15 kg is not.
  test('a limit within the tolerance warns, one beyond it does not', async () => {
    const near = await total(plan(fixtureAt('1 m', '990 kg ± 10 kg')));
    expect(near.verdict).toBe('warn');
    expect(near.tolerance?.value).toBeCloseTo(11.547, 3);
    expect(near.probability).toBeCloseTo(0.0416, 4);
    expect(words(near.reason)).toContain('within the tolerance of ± 12 kg');
    expect(words(near.reason)).toContain('`fixtures.box.mass`');
    expect((await total(plan(fixtureAt('1 m', '985 kg ± 10 kg')))).verdict).toBe('pass');
  });

  test.each([
    { lacks: 'max_mass', text: plan('', { max_mass: undefined }), missing: ['van.max_mass'] },
    { lacks: 'unladen', text: plan('', { unladen: undefined }), missing: ['van.unladen'] },
    {
      lacks: 'both',
      text: plan('', { max_mass: undefined, unladen: undefined }),
      missing: ['van.max_mass', 'van.unladen'],
    },
  ])('without $lacks it is not checked', async ({ text, missing }) => {
    const finding = await total(text);
    expect(finding).toMatchObject({ verdict: 'not checked', missing });
    expect(finding.measured).toBeUndefined();
  });
});

describe('an overload', () => {
  // 2000 + 1200 = 3200 kg: 200 kg and 6.67 % over, in the band from 5 % to 10 %.
  test('says by how much, and in the UK what it has cost', async () => {
    const finding = await total(plan(fixtureAt('1 m', '1200 kg')));
    expect(finding).toMatchObject({ verdict: 'fail', margin: { value: -200 } });
    expect(words(finding.reason)).toMatch(/200 kg over its plate, 6\.7 % too much/);
    expect(words(finding.reason)).toContain('100 GBP');
    expect(finding.cautions.join()).toContain('Any overload is an offence');
  });

  test('has no British penalty elsewhere', async () => {
    const finding = await total(plan(fixtureAt('1 m', '1200 kg'), {}, 'eu'));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).not.toContain('GBP');
  });

  // 2000 + 950 + 100 = 3050 kg: 50 kg over, which is 50 L of the 100 L of water.
  test('is cured by carrying less water', async () => {
    const finding = await total(
      plan(`${fixtureAt('1 m', '950 kg')}\ntanks: {fresh tank: {contents: fresh, holds: 100 L}}`),
    );
    expect(words(finding.remedy)).toBe('Lose 50 kg: carry 50 L less in fresh tank.');
  });
});

describe('the heaviest state', () => {
  // Water can be in one tank only: 2000 + 100 kg, not 2000 + 100 + 80.
  test('counts the water that is carried once', async () => {
    const tanks = `tanks:
  waste tank: {contents: waste, holds: 80 L}
  fresh tank: {contents: fresh, holds: 100 L}`;
    const finding = await total(plan(tanks));
    expect(finding.measured?.value).toBe(2100);
    expect(finding.worstState?.text).toBe('fresh full, waste empty, 1 aboard');
  });

  // Where the fresh tank is not in the plan, the water still comes from somewhere: 2000 + 80 kg.
  test('fills a waste tank that has no fresh tank beside it', async () => {
    const finding = await total(plan('tanks: {waste tank: {contents: waste, holds: 80 L}}'));
    expect(finding.measured?.value).toBe(2080);
  });

  // 2000 + shell 5 + 100 L of water + gas 11 + store 40 = 2156 kg.
  test('has everything full and everyone aboard', async () => {
    const finding = await total(
      plan(`tanks:
  fresh tank: {contents: fresh, holds: 100 L, mass: 5 kg}
  gas cylinder: {contents: propane, holds: 11 kg}
stores: {clothes: {full: 40 kg, empty: 12 kg}}`),
    );
    expect(measured(finding)).toBeCloseTo(2156, 9);
    expect(finding.worstState?.text).toBe('fresh full, 1 aboard, stores full, gas full');
  });
});

describe('the driver and the fuel count once', () => {
  const people = 'people: {seats: {driver: {mass: 80 kg}}}';
  const unladen = (includes: string) =>
    `{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: ${includes}}`;

  // The scale showed 2000 kg. With the driver on it he is in the 2000; without him 80 kg come on top.
  test.each([
    { includes: '{driver: true}', expected: 2000 },
    { includes: '{driver: false}', expected: 2080 },
    { includes: '{}', expected: 2080 },
  ])('driver: $includes', async ({ includes, expected }) => {
    expect((await total(plan(people, { unladen: unladen(includes) }))).measured?.value).toBe(expected);
  });

  // The same driver, where a weighbridge ticket makes him a mass of his own: 2000 + 80 − 80.
  test('driver in the unladen mass, in a plan with tickets', async () => {
    const weighed = 'weighed: {spring: {date: 2026-03-14, total: 2000 kg}}';
    const text = plan(`${people}\n${weighed}`, { unladen: unladen('{driver: true}') });
    expect((await total(text)).measured?.value).toBe(2000);
  });

  // 100 L of diesel at 845 kg/m³ are 84.5 kg. What was in the tank on the scale is in the 2000 kg already.
  test.each([
    { fuel: '0 %', expected: 2084.5 },
    { fuel: '50 %', expected: 2042.25 },
    { fuel: '90 %', expected: 2008.45 },
    { fuel: '100 %', expected: 2000 },
  ])('fuel: $fuel on the scale', async ({ fuel, expected }) => {
    const text = plan('', {
      unladen: unladen(`{driver: true, fuel: ${fuel}}`),
      fuel_tank: '{holds: 100 L, fuel: diesel}',
    });
    expect(measured(await total(text))).toBeCloseTo(expected, 9);
  });

  // ± 10 % of 84.5 kg: u = 8.45 / √3 = 4.879 kg. A full tank against a full tank: the density cancels out.
  test('how full the tank was is as uncertain as the plan says', async () => {
    const text = plan('', {
      unladen: unladen('{driver: true, fuel: 100 % ± 10 %}'),
      fuel_tank: '{holds: 100 L, fuel: diesel}',
    });
    expect((await total(text)).tolerance?.value).toBeCloseTo((2 * 8.45) / Math.sqrt(3), 9);
  });

  // Two people whose masses the plan does not say: 75 kg each in Europe and Australia, 68 kg (150 lb) in the US.
  test.each([
    { codes: 'uk', expected: 2150 },
    { codes: 'eu', expected: 2150 },
    { codes: 'au', expected: 2150 },
    { codes: 'us', expected: 2136 },
  ])('people of the usual mass: $codes', async ({ codes, expected }) => {
    const text = plan(
      'people: {seats: {driver: {}, passenger: {}}}',
      { unladen: unladen('{driver: false}') },
      codes,
    );
    expect((await total(text)).measured?.value).toBe(expected);
  });
});
