import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.cold-charging';
const text = (
  coldest: string,
  { currentA = 20, battery = '', chemistry = 'lithium iron phosphate', more = '' } = {},
) =>
  plan(`electrical:
  voltage: 12 V
  ${coldest === '' ? '' : `coldest: ${coldest}`}
  battery: {chemistry: ${chemistry}, voltage: ${chemistry === 'AGM' ? '12 V' : '12.8 V'}, capacity: 200 Ah${battery}}
  charging_while_driving: {current: ${currentA} A}
  ${more}`);
const check = (...given: Parameters<typeof text>) => findingOf(text(...given), id);

describe('lithium by the table', () => {
  // 0 to 5 °C: 0.1 of 200 Ah an hour is 20 A; 10 to 25 °C: 0.2, 40 A; on a border the lower counts.
  test.each([
    { coldest: '3 degC', currentA: 20, verdict: 'pass', limit: 20 },
    { coldest: '3 degC', currentA: 21, verdict: 'warn', limit: 20 },
    { coldest: '10 degC', currentA: 21, verdict: 'warn', limit: 20 },
    { coldest: '11 degC', currentA: 40, verdict: 'pass', limit: 40 },
    { coldest: '11 degC', currentA: 41, verdict: 'warn', limit: 40 },
  ])('$currentA A at $coldest: $verdict', async ({ coldest, currentA, verdict, limit }) => {
    const finding = await check(coldest, { currentA });
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBe(currentA);
    expect(finding.limit?.measure.value).toBeCloseTo(limit, 12);
  });

  test('the remedy is a battery that is large enough', async () => {
    const finding = await check('3 degC', { currentA: 30 });
    expect(words(finding.remedy)).toContain('at most 20 A while it is that cold, take a battery of 300 Ah');
  });

  test.each(['0 degC', '-5 degC', '32 degF'])('at %s it must not be charged', async (coldest) => {
    const finding = await check(coldest, { currentA: 1 });
    expect(finding).toMatchObject({ verdict: 'fail', path: ['electrical', 'battery'] });
    expect(words(finding.reason)).toMatch(/must not be charged at all/);
  });

  test('a charger of unknown current is too much there as well', async () => {
    const array = 'solar: {roof: {modules: 1, power: 100 W, open_circuit: 22 V, short_circuit: 6 A}}';
    const unknown = text('-5 degC', { more: array }).replace(/ {2}charging_while_driving.*\n/, '');
    const finding = await findingOf(unknown, id);
    expect(finding.verdict).toBe('fail');
    expect(finding.measured).toBeUndefined();
    expect(await findingOf(unknown.replace('-5 degC', '3 degC'), id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.solar.roof.controller'],
    });
  });
});

describe('what the plan says of its battery comes first', () => {
  test.each([
    { coldest: '-10 degC', from: '-20 degC', verdict: 'pass' },
    { coldest: '-20 degC', from: '-20 degC', verdict: 'pass' },
    { coldest: '-21 degC', from: '-20 degC', verdict: 'fail' },
    { coldest: '3 degC', from: '5 degC', verdict: 'fail' },
    // Above freezing the table still limits the current.
    { coldest: '3 degC', from: '0 degC', verdict: 'warn' },
  ])('$coldest, charges from $from: $verdict', async ({ coldest, from, verdict }) => {
    const finding = await check(coldest, { currentA: 30, battery: `, charges_from: ${from}` });
    expect(finding.verdict).toBe(verdict);
    if (verdict !== 'warn') expect(finding.path).toEqual(['electrical', 'battery', 'charges_from']);
  });
});

describe('lead', () => {
  // 6 cells · 3 mV/K · 35 K = 0.63 V more than 14.4 V.
  test('takes charge, and the voltage it wants is named', async () => {
    const finding = await check('-10 degC', { chemistry: 'AGM' });
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('wants 15.03 V there instead of 14.40 V at 25 °C');
  });

  test('but not below what the plan says', async () => {
    const finding = await check('-10 degC', { chemistry: 'AGM', battery: ', charges_from: -5 degC' });
    expect(finding.verdict).toBe('fail');
  });
});

test('not checked without the lowest temperature, a battery or a charger', async () => {
  expect((await check('')).missing).toEqual(['electrical.coldest']);
  expect(await findingOf(plan('electrical: {voltage: 12 V, coldest: 1 degC}'), id)).toMatchObject({
    verdict: 'not checked',
    missing: [
      'electrical.battery',
      'electrical.solar',
      'electrical.charging_while_driving',
      'electrical.shore.charger',
    ],
  });
  expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
});
