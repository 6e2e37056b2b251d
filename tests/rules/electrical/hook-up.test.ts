import { describe, expect, test } from 'vitest';
import { mainsCaution } from '../../../src/rules/cautions.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.hook-up';
const text = (lead: string, currentA = 16) =>
  plan(`electrical: {voltage: 12 V, shore: {current: ${currentA} A, lead: {${lead}}}}`);
const all = async (lead: string, currentA?: number) =>
  (await reportOf(text(lead, currentA))).findings.filter(({ rule }) => rule === id);

// 2.5 mm² flexible: 7.98 mΩ/m at 20 °C, times 294.5 / 254.5 at 60 °C; 2 · 25 m · 16 A: 7.39 V of 230.
test('a lead just as it should be passes, and its loss is named', async () => {
  const finding = await findingOf(text('length: 25 m, conductor: 2.5 mm2'), id);
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'size of the lead' });
  expect(words(finding.reason)).toContain('it loses 7.39 V of 230.00 V (3.2 %) at 16 A');
  expect(finding.cautions).toContain(mainsCaution);
});

describe('size', () => {
  test.each([
    { conductor: '1.5 mm2', currentA: 10, verdict: 'warn' },
    { conductor: '2.5 mm2', currentA: 16, verdict: 'pass' },
    { conductor: '2.5 mm2', currentA: 16.1, verdict: 'warn' },
    { conductor: '4 mm2', currentA: 25, verdict: 'pass' },
    { conductor: '6 mm2', currentA: 32, verdict: 'pass' },
    { conductor: '10 AWG', currentA: 30, verdict: 'warn' },
  ])('$conductor at $currentA A: $verdict', async ({ conductor, currentA, verdict }) => {
    const finding = await findingOf(text(`length: 25 m, conductor: ${conductor}`, currentA), id, 'size');
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'warn') expect(finding.path).toEqual(['electrical', 'shore', 'lead', 'conductor']);
  });

  test('the remedy names the size, and what this one is for', async () => {
    const finding = await findingOf(text('length: 25 m, conductor: 2.5 mm2', 20), id, 'size');
    expect(words(finding.remedy)).toBe('Take a lead of 4 mm², or draw no more than 16 A through this one.');
  });

  test('above the table only the length is judged', async () => {
    expect(await all('length: 25 m, conductor: 50 mm2', 125)).toMatchObject([
      { verdict: 'pass', subject: 'length of the lead' },
    ]);
  });
});

describe('length', () => {
  test('27 m are within what is allowed, more is not', async () => {
    expect(await all('length: 27 m, conductor: 2.5 mm2')).toMatchObject([{ verdict: 'pass' }]);
    const [finding, ...others] = await all('length: 27.1 m, conductor: 2.5 mm2');
    expect(finding).toMatchObject({ verdict: 'warn', path: ['electrical', 'shore', 'lead', 'length'] });
    expect(others).toMatchObject([{ verdict: 'pass' }]);
    expect(words(finding?.remedy)).toContain('at most 27.00 m');
  });
});

describe('coiled', () => {
  // A flexible cord of 2.5 mm² carries 20 A; 35 % in four layers: 7 A.
  test.each([
    { currentA: 7, verdict: 'pass' },
    { currentA: 7.1, verdict: 'warn' },
  ])('at $currentA A: $verdict', async ({ currentA, verdict }) => {
    const findings = await all('length: 25 m, conductor: 2.5 mm2, coiled: true', currentA);
    const coiled = findings.find(({ subject }) => subject === 'coiled lead');
    if (verdict === 'pass') expect(findings.map((each) => each.verdict)).toEqual(['pass']);
    else {
      expect(coiled).toMatchObject({ verdict, path: ['electrical', 'shore', 'lead', 'coiled'] });
      expect(coiled && measured(coiled)).toBe(currentA);
      expect(words(coiled?.remedy)).toMatch(/^Unroll the whole lead .* no more than 7.0 A/);
    }
  });

  // Heavy flexible cable of 6 mm²: 39 A, 13.65 A coiled.
  test('a thicker lead carries more, and the remedy is rounded down', async () => {
    const lead = 'length: 25 m, conductor: 6 mm2, coiled: true';
    expect((await all(lead, 13.6)).map(({ verdict }) => verdict)).toEqual(['pass']);
    const coiled = await findingOf(text(lead, 16), id, 'coiled');
    expect(coiled.verdict).toBe('warn');
    expect(coiled.limit?.measure.value).toBeCloseTo(13.65, 12);
  });
});

test('not checked without a lead or a supply', async () => {
  const shore = plan('electrical: {voltage: 12 V, shore: {current: 10 A}}');
  expect((await findingOf(shore, id)).missing).toEqual(['electrical.shore.lead']);
  expect((await findingOf(plan('electrical: {voltage: 12 V}'), id)).missing).toEqual(['electrical.shore']);
  expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
});
