import { describe, expect, test } from 'vitest';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { warmVan } from '../../support/warm-van.ts';

const text = (heater: string, ducts: string) => warmVan({ heat: `heater: {${heater}}, ducts: {${ducts}}` });
const ducts = async (heater: string, given: string, subject = '') =>
  findingOf(text(heater, given), 'heat.ducts', subject);
const good = 'warm: {length: 2 m, bore: 60 mm, outlets: 1}';

test('one pass for all that is kept', async () => {
  const { findings } = await reportOf(text('output: 2 kW', good));
  const found = findings.filter(({ rule }) => rule === 'heat.ducts');
  expect(found).toHaveLength(1);
  expect(found[0]?.verdict).toBe('pass');
  expect(found[0]?.cautions.length).toBeGreaterThan(0);
});

describe('length', () => {
  const two = (metres: number) =>
    `one: {length: ${metres} m, bore: 60 mm, outlets: 1}, other: {length: 2 m, bore: 60 mm, outlets: 1}`;
  // 5 m are usual up to 2.5 kW.
  test.each([
    { metres: 3, heater: 'output: 2 kW', verdict: 'pass' },
    { metres: 3.1, heater: 'output: 2 kW', verdict: 'warn' },
    { metres: 3.1, heater: 'output: 2 kW, duct_limit: 5.1 m', verdict: 'pass' },
    { metres: 3.2, heater: 'output: 2 kW, duct_limit: 5.1 m', verdict: 'fail' },
  ])('$metres m and 2 m of $heater: $verdict', async ({ metres, heater, verdict }) => {
    const { findings } = await reportOf(text(heater, two(metres)));
    const found = findings.filter(({ rule }) => rule === 'heat.ducts');
    expect(found.some((finding) => finding.verdict === verdict)).toBe(true);
    if (verdict !== 'pass') {
      const long = await ducts(heater, two(metres), 'length of the ducts');
      expect(long.verdict).toBe(verdict);
      expect(words(long.remedy)).toContain('100 mm');
    }
  });
});

test('too many outlets', async () => {
  const many = 'warm: {length: 2 m, bore: 60 mm, outlets: 4}';
  expect((await ducts('output: 2 kW', many, 'outlets')).verdict).toBe('warn');
  expect((await ducts('output: 2 kW, duct_outlets_limit: 2', many, 'outlets')).verdict).toBe('fail');
  expect((await ducts('output: 2 kW, duct_outlets_limit: 4', many)).verdict).toBe('pass');
});

test('no outlet at all fails', async () => {
  const none = 'warm: {length: 2 m, bore: 60 mm, outlets: 0}';
  expect((await ducts('output: 2 kW', none, 'outlets')).verdict).toBe('fail');
});

test('a narrow duct warns', async () => {
  const narrow = 'warm: {length: 2 m, bore: 50 mm, outlets: 1}';
  expect(await ducts('output: 2 kW', narrow, 'warm')).toMatchObject({
    verdict: 'warn',
    path: ['heat', 'ducts', 'warm', 'bore'],
  });
});

test('what is missing is one finding', async () => {
  expect(await ducts('output: 9 kW', 'warm: {bore: 60 mm}')).toMatchObject({
    verdict: 'not checked',
    missing: [
      'heat.ducts.warm.length',
      'heat.heater.duct_limit',
      'heat.ducts.warm.outlets',
      'heat.heater.duct_outlets_limit',
    ],
  });
  expect(await findingOf(warmVan(), 'heat.ducts')).toMatchObject({ missing: ['heat.heater', 'heat.ducts'] });
});
