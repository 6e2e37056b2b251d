import { describe, expect, test } from 'vitest';
import { buildOf, findingOf, measured, words } from '../../support/check.ts';
import { fixtureAt, plan } from '../../support/test-van.ts';

const effects = (text: string) => findingOf(text, 'mass.personal-effects');
const passenger = 'people: {seats: {passenger: {mass: 75 kg}}}';

/** The driver (in the 2000 kg) and a passenger of 75 kg in a van of 6 m: 10 · (2 + 6) = 80 kg are to be left. */
describe('two aboard in six metres', () => {
  // 3000 − (2000 + 75 + 845) = 80 kg: exactly what is asked for.
  test('exactly at the limit is kept', async () => {
    const finding = await effects(plan(`${passenger}\n${fixtureAt('1 m', '845 kg')}`));
    expect(finding).toMatchObject({
      verdict: 'pass',
      measured: { value: 80 },
      limit: { measure: { value: 80 }, sense: 'at least' },
      margin: { value: 0 },
      utilisation: 1,
    });
  });

  // 3000 − (2000 + 75 + 845.5) = 79.5 kg. In Europe the rule is law; elsewhere it is a guide and warns.
  test.each([
    { codes: 'uk', verdict: 'fail' },
    { codes: 'eu', verdict: 'fail' },
    { codes: 'us', verdict: 'warn' },
    { codes: 'au', verdict: 'warn' },
  ])('just under it, $codes: $verdict', async ({ codes, verdict }) => {
    const finding = await effects(plan(`${passenger}\n${fixtureAt('1 m', '845.5 kg')}`, {}, codes));
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBeCloseTo(79.5, 9);
  });

  // 3000 − 2075 − 835 = 90 kg, 10 kg to spare; ± 10 kg makes U = 11.547 kg.
  test('the limit within the tolerance warns', async () => {
    const finding = await effects(plan(`${passenger}\n${fixtureAt('1 m', '835 kg ± 10 kg')}`));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('To be clear of the tolerance');
  });

  // 3000 − 2075 − 500 = 425 kg: what people bring along is what the room is for, so it is not counted.
  test('stores are not counted, everything else is', async () => {
    const finding = await effects(
      plan(`${passenger}\n${fixtureAt('1 m', '500 kg')}\nstores: {books: {full: 900 kg, empty: 100 kg}}`),
    );
    expect(finding).toMatchObject({ verdict: 'pass', measured: { value: 425 } });
  });
});

// 10 · (1 + 6) = 70 kg: a driver counts as one aboard though he is in the unladen mass.
test('the driver is one of those aboard', async () => {
  expect((await effects(plan())).limit?.measure.value).toBe(70);
});

test.each([
  { lacks: 'codes', codes: '', van: {}, missing: ['codes'] },
  { lacks: 'max_mass', codes: 'uk', van: { max_mass: undefined }, missing: ['van.max_mass'] },
  {
    lacks: 'overall_length',
    codes: 'uk',
    van: { overall_length: undefined },
    missing: ['van.overall_length'],
  },
  { lacks: 'unladen', codes: 'uk', van: { unladen: undefined }, missing: ['van.unladen'] },
])('without $lacks it is not checked', async ({ codes, van, missing }) => {
  expect(await effects(plan('', van, codes))).toMatchObject({ verdict: 'not checked', missing });
});

/** Where a plan is silent about stores, what the rule asks for counts as carried. */
describe('the allowance in a plan without stores', () => {
  const silent = (van = '') => `storystick: 1
codes: uk
van:
  max_mass: 3000 kg
  unladen: {front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}}
${van}
people: {seats: {passenger: {mass: 75 kg}}}`;

  // 2000 + 75 + 10 · (2 + 7) = 2165 kg with the length given; 10 · (2 + 6) = 80 kg where 6 m have to be assumed.
  test.each([
    { van: '  overall_length: 7 m', allowanceKg: 90 },
    { van: '', allowanceKg: 80 },
  ])('van "$van": $allowanceKg kg', async ({ van, allowanceKg }) => {
    expect((await findingOf(silent(van), 'mass.total')).measured?.value).toBe(2075 + allowanceKg);
    const { assumptions } = await buildOf(silent(van));
    expect(assumptions.some(({ text }) => words(text).startsWith(`personal effects: ${allowanceKg}`))).toBe(
      true,
    );
  });

  // 3000 − 2075 = 925 kg: the allowance itself does not use up the room it is for.
  test('is not counted against the room for it', async () => {
    expect((await effects(silent('  overall_length: 7 m'))).measured?.value).toBe(925);
  });
});
