import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.solar-current';
const array = (kind: string, limitA: number, more = '', powerW = 48) =>
  `roof: {modules: 2, power: ${powerW} W, open_circuit: 20 V, short_circuit: 4 A, controller: {kind: ${kind}, current_limit: ${limitA} A, voltage_limit: 60 V}${more}}`;
const text = (arrays: string, more = '', volt = 12) =>
  plan(`fixtures: {box: {mass: 1 kg}}
electrical:
  voltage: ${volt} V
  solar: {${arrays}}
  ${more}`);

describe('a controller that only switches', () => {
  // Two strings of 4 A, times 1.25: 10 A.
  test.each([
    { limitA: 10, verdict: 'pass' },
    { limitA: 9.9, verdict: 'warn' },
  ])('of $limitA A: $verdict', async ({ limitA, verdict }) => {
    const finding = await findingOf(text(array('PWM', limitA)), id);
    expect(finding).toMatchObject({
      verdict,
      path: ['electrical', 'solar', 'roof', 'controller', 'current_limit'],
    });
    expect(measured(finding)).toBe(10);
  });

  test('modules in series share one current', async () => {
    expect(measured(await findingOf(text(array('PWM', 10, ', in_series: 2')), id))).toBe(5);
  });
});

describe('a controller that tracks', () => {
  // 96 W: 1.25 · 96 / 12 = 10 A; over 14.4 V 6.67 A.
  test.each([
    { limitA: 10, verdict: 'pass' },
    { limitA: 9.9, verdict: 'warn' },
  ])('of $limitA A: $verdict, by the practice that is named', async ({ limitA, verdict }) => {
    const finding = await findingOf(text(array('MPPT', limitA)), id);
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBeCloseTo(10, 12);
    expect(words(finding.reason)).toContain(
      'the strictest of three practices, its power times 1.25 over the nominal voltage (6.7 A over the charge voltage)',
    );
  });

  // 12 cells of lead at 10.5 V in 12: 21 V in 24; 1.25 / 24 is still more than 1 / 21. A bank of half the voltage of the
  // system is no plan to believe, but its lowest voltage is then what counts: 192 / 10.5 = 18.3 A, and 10 A by 24 V.
  test('by the lowest voltage of the battery, where that is stricter', async () => {
    const battery = 'battery: {chemistry: AGM, voltage: 12 V, capacity: 100 Ah}';
    const finding = await findingOf(text(array('MPPT', 15, '', 96), battery, 24), id);
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(192 / 10.5, 10);
    expect(words(finding.reason)).toContain('over the lowest voltage of the battery');
  });

  test('the remedy is the next size', async () => {
    const finding = await findingOf(text(array('MPPT', 20, '', 130)), id);
    // 1.25 · 260 / 12 = 27.1 A.
    expect(words(finding.remedy)).toMatch(/^Take a controller for at least 30 A;/);
    expect((await findingOf(text(array('MPPT', 30, '', 130)), id)).verdict).toBe('pass');
  });
});

describe('the cable', () => {
  const circuits = (conductor: string) =>
    `circuits: {supply: {from: battery, to: box${conductor}, length: 1 m}}
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}`;
  const cable = async (kind: string, limitA: number, conductor: string) =>
    (await reportOf(text(array(kind, limitA, ', circuit: supply'), circuits(conductor)))).findings.filter(
      ({ rule }) => rule === id,
    );

  // 4 mm² of 70 °C carries 25 A by the stricter table (12 AWG at 60 °C); 1.25 · 20 A is just that.
  test.each([
    { limitA: 20, verdicts: ['pass'] },
    { limitA: 20.1, verdicts: ['warn', 'pass'] },
    // More than it carries at all is said of the circuit.
    { limitA: 25.1, verdicts: ['pass'] },
  ])('of a tracking controller of $limitA A', async ({ limitA, verdicts }) => {
    const findings = await cable('MPPT', limitA, ', conductor: 4 mm2');
    expect(findings.map(({ verdict }) => verdict)).toEqual(verdicts);
    if (verdicts[0] === 'warn')
      expect(findings[0]).toMatchObject({
        subject: 'the cable supply',
        path: ['electrical', 'circuits', 'supply', 'conductor'],
      });
  });

  // 1.25 · 1.25 · 8 A = 12.5 A; 1 mm² carries 10 A by the stricter table (18 AWG).
  test('of a switching controller bears the modules, not the controller', async () => {
    const [finding] = await cable('PWM', 10, ', conductor: 1 mm2');
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'the cable supply' });
    expect(finding && measured(finding)).toBeCloseTo(12.5, 12);
    expect(finding?.limit?.measure.value).toBeCloseTo(10, 12);
    expect((await cable('PWM', 10, ', conductor: 1.5 mm2')).map(({ verdict }) => verdict)).toEqual(['pass']);
  });

  test('without a conductor is not checked', async () => {
    expect(await cable('MPPT', 20, '')).toMatchObject([
      { verdict: 'not checked', missing: ['electrical.circuits.supply.conductor'] },
      { verdict: 'pass' },
    ]);
  });
});

test('not checked without a controller or an array', async () => {
  const bare = 'roof: {modules: 1, power: 100 W, open_circuit: 20 V, short_circuit: 6 A}';
  expect(await findingOf(text(bare), id)).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.solar.roof.controller'],
  });
  expect((await findingOf(plan('electrical: {voltage: 12 V}'), id)).missing).toEqual(['electrical.solar']);
  expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
});
