import { describe, expect, test } from 'vitest';
import { findingOf, measured, problemsOf, words } from '../../support/check.ts';
import { fixtureOnRight, plan } from '../../support/test-van.ts';

const sides = (text: string) => findingOf(text, 'balance.sides');

/** Right less left is 2·m·y / T = m·y with a track of 2 m, over the whole mass; at most 4 %. */
describe('a mass to one side', () => {
  // 100 kg at y = 1 m: 100 / 2100 = 4.76 %.
  test('broken, as a guide can be: warn', async () => {
    const finding = await sides(plan(fixtureOnRight('0 m', '100 kg')));
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'right side' });
    expect(measured(finding)).toBeCloseTo(100 / 2100, 12);
    expect(words(finding.reason)).toContain('up to 100 kg more than the other');
  });

  // 100 kg at y = −0.5 m, on the left: 50 / 2100 = 2.38 %.
  test('pass, on the left', async () => {
    const text = 'fixtures: {box: {mass: 100 kg, at: {from_front: 1 m, from_left: 0.5 m, above_floor: 0 m}}}';
    const finding = await sides(plan(text));
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'left side' });
    expect(measured(finding)).toBeCloseTo(50 / 2100, 12);
  });

  // 500 kg at y = 0.2 m: 100 / 2500 = 4 %.
  test('exactly at the limit is kept', async () => {
    const finding = await sides(plan(fixtureOnRight('0.8 m', '500 kg')));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.04, 12);
  });

  // y = 0.21 m: 105 / 2500 = 4.2 %.
  test('just over warns', async () => {
    expect((await sides(plan(fixtureOnRight('0.79 m', '500 kg')))).verdict).toBe('warn');
  });

  // y = 0.19 m ± 0.05 m: 95 / 2500 = 3.8 %; u = 500 · 0.05 / √3 / 2500 = 0.577 %, and 0.2 % is within U = 1.155 %.
  test('the limit within the tolerance warns', async () => {
    const finding = await sides(plan(fixtureOnRight('0.81 m ± 0.05 m', '500 kg')));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 0.05 * 500) / Math.sqrt(3) / 2500, 12);
    expect(words(finding.reason)).toContain('where box is sideways');
  });

  // 300 kg at y = 1 m: 300 / 2300; 4 % are 92 kg, 208 kg too many. 2·m·d / T = 208: m·d = 208 kg·m, 300 kg by 0.693 m.
  test('the remedy is enough', async () => {
    const finding = await sides(plan(fixtureOnRight('0 m', '300 kg')));
    expect(words(finding.remedy)).toBe('Move 416 kg 500 mm to the left, or box (300 kg) 700 mm to the left.');
    expect((await sides(plan(fixtureOnRight('0.7 m', '300 kg')))).verdict).toBe('pass');
    expect((await sides(plan(fixtureOnRight('0.69 m', '300 kg')))).verdict).toBe('warn');
  });
});

// A hundred litres against one wall is a hundred kilograms there: 100 / 2100 = 4.76 %.
test('a full tank on one side shows', async () => {
  const tank =
    'tanks: {fresh tank: {contents: fresh, holds: 100 L, at: {from_front: 1 m, from_left: 0 m, above_floor: 0 m}}}';
  const finding = await sides(plan(tank));
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'left side' });
  expect(finding.worstState?.text).toBe('fresh full, 1 aboard');
});

// Wheels 990 kg left, 1010 kg right: 20 / 2000 = 1 %.
test('the empty van has sides of its own', async () => {
  const unladen =
    '{front_left: 495 kg, front_right: 505 kg, rear_left: 495 kg, rear_right: 505 kg, from: weighbridge, includes: {driver: true}}';
  expect(measured(await sides(plan('', { unladen })))).toBeCloseTo(0.01, 12);
});

describe('a limit of the plan', () => {
  const own = (limit: string, reason = 'the maker allows it, guide page 14') =>
    plan(
      `${fixtureOnRight('0 m', '100 kg')}\nrules: {balance.sides: {limit: ${limit}, reason: "${reason}"}}`,
    );

  test.each([
    // 4.76 % keeps 5 % and breaks 4.5 %.
    { limit: '5 %', verdict: 'pass' },
    { limit: '4.5 %', verdict: 'warn' },
  ])('$limit: $verdict', async ({ limit, verdict }) => {
    const finding = await sides(own(limit));
    expect(finding.verdict).toBe(verdict);
    expect(finding.limit?.measure.value).toBeCloseTo(Number.parseFloat(limit) / 100, 12);
    expect(finding.sources[0]?.title).toContain('the maker allows it, guide page 14');
  });

  test('needs a reason that says something', async () => {
    expect(await problemsOf(own('5 %', ' ok '))).toHaveLength(1);
  });
});

test.each([
  { lacks: 'track', van: { track: undefined }, missing: ['van.track'] },
  { lacks: 'wheelbase', van: { wheelbase: undefined }, missing: ['van.wheelbase'] },
  { lacks: 'unladen', van: { unladen: undefined }, missing: ['van.unladen'] },
])('without $lacks it is not checked', async ({ van, missing }) => {
  expect(await sides(plan('', van))).toMatchObject({ verdict: 'not checked', missing });
});
