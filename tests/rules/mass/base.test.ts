import { describe, expect, test } from 'vitest';
import { buildOf, findingOf, only, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const base = (text: string) => findingOf(text, 'mass.base');
const unladen = (rest: string) => ({ unladen: `{front: 1000 kg, rear: 1000 kg, ${rest}}` });

test('weighed, with the driver and the fuel known: pass', async () => {
  const van = {
    ...unladen('from: weighbridge, includes: {driver: false, fuel: 90 %}'),
    fuel_tank: '{holds: 75 L, fuel: diesel}',
  };
  expect(await base(plan('', van))).toMatchObject({ verdict: 'pass' });
});

test('a van without a fuel tank in the plan need not say how much fuel was in it', async () => {
  expect((await base(plan())).verdict).toBe('pass');
});

test.each([
  {
    doubt: 'no word where it comes from',
    van: unladen('includes: {driver: true}'),
    says: /not said to come from a weighbridge\./,
    add: /from: weighbridge/,
  },
  {
    doubt: 'from a brochure',
    van: unladen('from: brochure, includes: {driver: true}'),
    says: /from a weighbridge but from a brochure/,
    add: /have the empty van weighed/,
  },
  {
    doubt: 'driver not mentioned',
    van: unladen('from: weighbridge'),
    says: /whether the driver is in it/,
    add: /driver: false/,
  },
  {
    doubt: 'fuel not mentioned',
    van: { ...unladen('from: weighbridge, includes: {driver: true}'), fuel_tank: '{holds: 75 L}' },
    says: /how much fuel is in it/,
    add: /fuel: 90 %/,
  },
])('$doubt: warn', async ({ van, says, add }) => {
  const finding = await base(plan('', van));
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toMatch(says);
  expect(words(finding.remedy)).toMatch(add);
});

test('without unladen it is not checked', async () => {
  expect(await base(plan('', { unladen: undefined }))).toMatchObject({
    verdict: 'not checked',
    missing: ['van.unladen'],
  });
});

// 100 L of diesel are 84.5 kg: a van of 84 kg that was weighed with them in it is a slip (2 t typed as 2 kg, perhaps).
test('a van that weighs less than what is in it fails, and nothing is reckoned from it', async () => {
  const van = {
    unladen: '{front: 40 kg, rear: 44 kg, from: weighbridge, includes: {driver: true, fuel: 100 %}}',
    fuel_tank: '{holds: 100 L, fuel: diesel}',
  };
  const report = await reportOf(plan('', van));
  const finding = only(report, 'mass.base');
  expect(finding.verdict).toBe('fail');
  expect(words(finding.reason)).toContain('no more than what is said to have been in it');
  for (const rule of ['mass.total', 'balance.front-axle', 'balance.sides'])
    expect(only(report, rule)).toMatchObject({ verdict: 'not checked', missing: ['van.unladen'] });
});

/** A brochure's figure may be 5 % out (rectangular), and both axles of it are out together. */
describe('a brochure mass', () => {
  const brochure = unladen('from: brochure, includes: {driver: true}');

  // 5 % of 1000 kg on each axle: u = 50 / √3 = 28.87 kg an axle. Together 57.74 kg, not 28.87 · √2 = 40.8 kg.
  test('is taken as ± 5 %, both axles together', async () => {
    const report = await reportOf(plan('', brochure));
    expect(only(report, 'mass.total').tolerance?.value).toBeCloseTo((2 * 100) / Math.sqrt(3), 9);
    expect(only(report, 'balance.front-axle').tolerance?.value).toBeCloseTo((2 * 50) / Math.sqrt(3), 9);
  });

  test('says so among the assumptions, with its source', async () => {
    const { assumptions } = await buildOf(plan('', brochure));
    const found = assumptions.find(({ text }) => words(text).includes('brochure mass'));
    expect(words(found?.text ?? [])).toContain('± 5.0 %');
    expect(found?.source?.title).toBeDefined();
  });

  // A tolerance that is typed is kept: 2 · √(10² + 10²) / √3 = 16.33 kg, each axle weighed by itself.
  test('keeps a tolerance of its own', async () => {
    const van = {
      unladen: '{front: 1000 kg ± 10 kg, rear: 1000 kg ± 10 kg, from: brochure, includes: {driver: true}}',
    };
    const finding = await findingOf(plan('', van), 'mass.total');
    expect(finding.tolerance?.value).toBeCloseTo((2 * Math.hypot(10, 10)) / Math.sqrt(3), 9);
  });

  // So is one that comes through a parameter: both axles use it, so 2 · (10 + 10) / √3 = 23.09 kg.
  test('keeps a tolerance that comes from a parameter', async () => {
    const van = {
      unladen: '{front: half + 0 kg, rear: half + 0 kg, from: brochure, includes: {driver: true}}',
    };
    const finding = await findingOf(plan('params: {half: 1000 kg ± 10 kg}', van), 'mass.total');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 20) / Math.sqrt(3), 9);
  });

  test('from a weighbridge is exact where no tolerance is typed', async () => {
    expect((await findingOf(plan(), 'mass.total')).tolerance).toBeUndefined();
  });
});
