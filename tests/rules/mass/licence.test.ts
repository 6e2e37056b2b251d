import { describe, expect, test } from 'vitest';
import { findingOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

interface Case {
  readonly codes: string;
  readonly plateKg: number;
  readonly energy?: string;
  readonly licence?: string;
}

const licence = ({ codes, plateKg, energy, licence: held }: Case) =>
  findingOf(
    plan(held ? `people: {licence: ${held}}` : '', { max_mass: `${plateKg} kg`, energy }, codes),
    'mass.licence',
  );

/** The plate decides, inclusive at the limit: category B ends AT 3500 kg. */
describe('the ordinary car licence', () => {
  test.each<Case & { verdict: string; needs: string }>([
    { codes: 'uk', plateKg: 3500, verdict: 'pass', needs: 'B' },
    { codes: 'uk', plateKg: 3501, verdict: 'fail', needs: 'C1' },
    { codes: 'uk', plateKg: 7500, verdict: 'fail', needs: 'C1' },
    { codes: 'uk', plateKg: 7501, verdict: 'fail', needs: 'C' },
    { codes: 'uk', plateKg: 3501, energy: 'electric', verdict: 'pass', needs: 'B' },
    { codes: 'uk', plateKg: 4250, energy: 'electric', verdict: 'pass', needs: 'B' },
    { codes: 'uk', plateKg: 4251, energy: 'electric', verdict: 'fail', needs: 'C1' },
    { codes: 'uk', plateKg: 4250, energy: 'hydrogen', verdict: 'pass', needs: 'B' },
    { codes: 'uk', plateKg: 3501, energy: 'diesel', verdict: 'fail', needs: 'C1' },
    { codes: 'uk', plateKg: 3501, energy: 'hybrid', verdict: 'fail', needs: 'C1' },
    { codes: 'eu', plateKg: 3500, verdict: 'pass', needs: 'B' },
    { codes: 'eu', plateKg: 3501, verdict: 'fail', needs: 'C1' },
    { codes: 'eu', plateKg: 3501, energy: 'electric', verdict: 'fail', needs: 'C1' },
    { codes: 'au', plateKg: 4500, verdict: 'pass', needs: 'C' },
    { codes: 'au', plateKg: 4501, verdict: 'fail', needs: 'LR' },
    { codes: 'us', plateKg: 11793, verdict: 'pass', needs: 'ordinary licence' },
    { codes: 'us', plateKg: 11794, verdict: 'fail', needs: "a state's heavy class" },
  ])('$codes, $plateKg kg, $energy: $verdict ($needs)', async ({ verdict, needs, ...question }) => {
    const finding = await licence(question);
    expect(finding.verdict).toBe(verdict);
    expect(finding.subject).toBe(`class ${needs}`);
  });

  test('what is aboard does not matter', async () => {
    const heavy = plan('fixtures: {anvil: {mass: 2000 kg}}', { max_mass: '3500 kg' });
    expect((await findingOf(heavy, 'mass.licence')).verdict).toBe('pass');
  });

  test('a diesel fuel tank says what the van runs on', async () => {
    const text = plan('', { max_mass: '3501 kg', fuel_tank: '{holds: 75 L, fuel: diesel}' });
    expect((await findingOf(text, 'mass.licence')).verdict).toBe('fail');
  });
});

describe('a car test in the United Kingdom', () => {
  // A test passed before 1 January 1997 includes C1, up to 7500 kg.
  test.each([
    { day: '1996-12-31', plateKg: 3501, verdict: 'pass' },
    { day: '1997-01-01', plateKg: 3501, verdict: 'fail' },
    { day: '1996-12-31', plateKg: 7500, verdict: 'pass' },
    { day: '1996-12-31', plateKg: 7501, verdict: 'fail' },
    { day: '1997-01-01', plateKg: 3500, verdict: 'pass' },
  ])('passed on $day, $plateKg kg: $verdict', async ({ day, plateKg, verdict }) => {
    const finding = await licence({ codes: 'uk', plateKg, licence: `{test_passed: ${day}}` });
    expect(finding.verdict).toBe(verdict);
  });

  test('a test before 1997 keeps its rights when the category is written too', async () => {
    const finding = await licence({
      codes: 'uk',
      plateKg: 4000,
      licence: '{category: B, test_passed: 1996-12-31}',
    });
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'class C1' });
  });

  test('counts for nothing under other codes', async () => {
    const finding = await licence({ codes: 'eu', plateKg: 3501, licence: '{test_passed: 1996-12-31}' });
    expect(finding.verdict).toBe('fail');
  });
});

describe('a licence that the plan declares', () => {
  test.each<Case & { verdict: string }>([
    { codes: 'uk', plateKg: 7500, licence: '{category: C1}', verdict: 'pass' },
    { codes: 'uk', plateKg: 7500, licence: '{category: c1}', verdict: 'pass' },
    { codes: 'uk', plateKg: 7501, licence: '{category: C1}', verdict: 'fail' },
    { codes: 'uk', plateKg: 12000, licence: '{category: C}', verdict: 'pass' },
    { codes: 'uk', plateKg: 3501, licence: '{category: B}', verdict: 'fail' },
    { codes: 'eu', plateKg: 3501, licence: '{category: C1}', verdict: 'pass' },
    { codes: 'au', plateKg: 8000, licence: '{category: LR}', verdict: 'pass' },
    // A class that the table does not have still includes the ordinary licence, and no more.
    { codes: 'uk', plateKg: 3500, licence: '{category: BE}', verdict: 'pass' },
    { codes: 'uk', plateKg: 3501, licence: '{category: BE}', verdict: 'fail' },
  ])('$codes, $plateKg kg, $licence: $verdict', async ({ verdict, ...question }) => {
    expect((await licence(question)).verdict).toBe(verdict);
  });
});

test('a failure says which class it takes, and the plate that does without', async () => {
  const finding = await licence({ codes: 'uk', plateKg: 3850 });
  expect(words(finding.reason)).toMatch(/3,850 kg is too heavy for an ordinary car licence.*C1/);
  expect(words(finding.remedy)).toContain('people: {licence: {category: C1}}');
  expect(words(finding.remedy)).toContain('plated at 3,500 kg or less');
  expect(finding).toMatchObject({ margin: { value: 7500 - 3850 } });
});

test('electric: the plate that does without is the electric one', async () => {
  const finding = await licence({ codes: 'uk', plateKg: 4400, energy: 'electric' });
  expect(words(finding.remedy)).toContain('plated at 4,250 kg or less');
});

test('every finding tells the reader to look at the licence', async () => {
  const finding = await licence({ codes: 'eu', plateKg: 3500 });
  expect(finding.cautions.join()).toContain("Look at the categories on every driver's licence");
  expect(finding.cautions.join()).toContain('4250 kg');
  expect(finding.sources.length).toBeGreaterThan(0);
});

test.each([
  { lacks: 'codes', codes: '', van: {}, missing: ['codes'] },
  { lacks: 'max_mass', codes: 'uk', van: { max_mass: undefined }, missing: ['van.max_mass'] },
])('without $lacks it is not checked', async ({ codes, van, missing }) => {
  expect(await findingOf(plan('', van, codes), 'mass.licence')).toMatchObject({
    verdict: 'not checked',
    missing,
  });
});
