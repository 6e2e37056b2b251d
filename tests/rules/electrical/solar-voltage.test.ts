import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.solar-voltage';
const array = (name: string, limitV: number, more = '', inSeries = 2) =>
  `${name}: {modules: 2, in_series: ${inSeries}, power: 100 W, open_circuit: 20 V, short_circuit: 6 A${more}, controller: {kind: MPPT, current_limit: 20 A, voltage_limit: ${limitV} V}}`;
const text = (arrays: string, coldest = '-5 degC') =>
  plan(`electrical: {voltage: 12 V, coldest: ${coldest}, solar: {${arrays}}}`);

describe('by the table', () => {
  // The factors at exactly −5, −10 and −15 °C are 1.12, 1.14 and 1.16, on 40 V; a shifted copy of the table circulates.
  test.each([
    { coldest: '-5 degC', stringV: 44.8 },
    { coldest: '-5.5 degC', stringV: 45.6 },
    { coldest: '-10 degC', stringV: 45.6 },
    { coldest: '14 degF', stringV: 45.6 },
    { coldest: '-15 degC', stringV: 46.4 },
    { coldest: '30 degC', stringV: 40 },
  ])('at $coldest two modules in series give $stringV V', async ({ coldest, stringV }) => {
    const finding = await findingOf(text(array('roof', 50), coldest), id);
    expect(measured(finding)).toBeCloseTo(stringV, 10);
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('by the table for silicon modules');
  });

  test.each([
    { limitV: 44.8, verdict: 'pass' },
    { limitV: 44.7, verdict: 'fail' },
  ])('against $limitV V: $verdict', async ({ limitV, verdict }) => {
    const finding = await findingOf(text(array('roof', limitV)), id);
    expect(finding).toMatchObject({ verdict, path: ['electrical', 'solar', 'roof', 'in_series'] });
  });

  test('beyond its end the coefficient is asked for', async () => {
    expect((await findingOf(text(array('roof', 50), '-40 degC'), id)).verdict).toBe('pass');
    const finding = await findingOf(text(array('roof', 50), '-41 degC'), id);
    expect(finding).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.solar.roof.voltage_per_kelvin'],
    });
  });
});

describe('by the coefficient', () => {
  const own = ', voltage_per_kelvin: -60 mV/K';
  // 2 · (20 V + 0.06 V/K · 30 K) = 43.6 V.
  test.each([
    { limitV: 43.6, verdict: 'pass' },
    { limitV: 43.5, verdict: 'fail' },
  ])('against $limitV V: $verdict', async ({ limitV, verdict }) => {
    const finding = await findingOf(text(array('roof', limitV, own)), id);
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBeCloseTo(43.6, 10);
    expect(words(finding.reason)).toContain('by its own coefficient');
  });

  test('the remedy says how many in series, and how strong a controller', async () => {
    const finding = await findingOf(text(array('roof', 40, own)), id);
    expect(words(finding.remedy)).toBe(
      'Put at most 1 in series, or take a controller that bears at least 44.00 V.',
    );
    const hopeless = await findingOf(text(array('roof', 21, own, 1)), id);
    expect(words(hopeless.remedy)).toMatch(/^Not even one module suits this controller: .* 22.00 V/);
  });

  test('without its minus sign it is not believed', async () => {
    const finding = await findingOf(text(array('roof', 50, ', voltage_per_kelvin: 60 mV/K')), id);
    expect(finding.verdict).toBe('not checked');
    expect(words(finding.reason)).toContain('write the minus sign');
  });
});

test('passes are one finding, about the closest', async () => {
  const finding = await findingOf(text(`${array('roof', 100)}, ${array('side', 50)}`), id);
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'side' });
  expect(words(finding.reason)).toMatch(/1 more array is no closer to the limit\.$/);
});

test('not checked without controller, coldest or array', async () => {
  const bare = 'side: {modules: 1, power: 100 W, open_circuit: 20 V, short_circuit: 6 A}';
  const { findings } = await reportOf(text(`${array('roof', 50)}, ${bare}`));
  expect(findings.filter(({ rule }) => rule === id)).toMatchObject([
    { verdict: 'not checked', subject: 'side', missing: ['electrical.solar.side.controller'] },
    { verdict: 'pass', subject: 'roof' },
  ]);
  expect((await findingOf(plan(`electrical: {voltage: 12 V, solar: {${bare}}}`), id)).missing).toEqual([
    'electrical.coldest',
  ]);
  expect((await findingOf(plan('electrical: {voltage: 12 V, coldest: 0 degC}'), id)).missing).toEqual([
    'electrical.solar',
  ]);
  expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
});
