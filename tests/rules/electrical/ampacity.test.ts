import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { wired } from '../../support/electrical-plan.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'electrical.ampacity';
const ampacity = (text: string, subject = '') => findingOf(text, rule, subject);
const at12 = (circuits: string) =>
  wired(
    `  voltage: 12 V\n  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}\n  circuits:\n${circuits}`,
  );
const heater = (load: string, more = '', conductor = '2.5 mm2') =>
  at12(
    `    heater: {from: battery, to: fridge, load: ${load}, conductor: ${conductor}, insulation: 105 degC, length: 1 m${more}}`,
  );

// 2.5 mm² at 105 °C: 35 A by one table; by the other as 14 AWG (2.08 mm²), 35 A too. Ambient 30 °C: nothing off.
describe('2.5 mm² of 105 °C inside, 35 A', () => {
  test.each([
    { load: '20 A', verdict: 'pass' },
    { load: '35 A', verdict: 'pass' },
    { load: '35.1 A', verdict: 'fail' },
  ])('$load: $verdict', async ({ load, verdict }) => {
    const finding = await ampacity(heater(load));
    expect(finding.verdict).toBe(verdict);
    expect(finding.limit?.measure.value).toBeCloseTo(35, 9);
  });

  test('the length has no part in it', async () => {
    expect((await ampacity(heater('20 A').replace(', length: 1 m', ''))).verdict).toBe('pass');
  });
});

describe('what is taken off', () => {
  // Engine space: √((105 − 60) / 75) = 0.7746. Two circuits are four conductors: 0.7. Within insulation 0.5, 40 °C: 0.9309.
  test.each([
    { more: ', lies: engine space', factor: Math.sqrt(45 / 75) },
    { more: ', bundled: 2', factor: 0.7 },
    { more: ', lies: in insulation', factor: 0.5 * Math.sqrt(65 / 75) },
    { more: ', ambient: 10 degC', factor: 1 },
  ])('$more', async ({ more, factor }) => {
    expect((await ampacity(heater('5 A', more))).limit?.measure.value).toBeCloseTo(35 * factor, 9);
  });

  test('the reason names table, base current and every factor', async () => {
    const finding = await ampacity(heater('30 A', ', lies: engine space, bundled: 2'));
    expect(finding.verdict).toBe('fail');
    const reason = words(finding.reason);
    expect(reason).toContain('carries 30 A in steady use and may carry 19 A');
    expect(reason).toContain(
      '35 A for 2.5 mm² and insulation for 105 °C by the table “small craft, single in free air” at 30 °C',
    );
    expect(reason).toContain('× 0.77 in 60 °C (engine space), × 0.70 for 4 conductors together, × 1.00');
    expect(words(finding.remedy)).toMatch(/^Use 10 mm² flexible with a fuse of 40 A/);
  });
});

describe('off the table', () => {
  test('too thin: what to change', async () => {
    const finding = await ampacity(heater('1 A', '', '0.5 mm2'));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('no table lets it carry anything there');
    expect(words(finding.remedy)).toContain('Use at least 0.75 mm²');
  });

  test('too warm: insulation that bears more', async () => {
    const finding = await ampacity(
      at12('    heater: {from: battery, to: fridge, load: 5 A, conductor: 2.5 mm2, lies: engine space}'),
    );
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toContain('insulation for 85 °C');
  });
});

// 45 W at the 12.0 V that are left take 3.75 A at least; with the loss a little more.
test('a load that holds its power, at the lowest voltage', async () => {
  const value = measured(await ampacity(heater('45 W')));
  expect(value).toBeGreaterThan(3.75);
  expect(value).toBeLessThan(3.8);
});

// A circuit that is bigger than what is the smallest of one table carries no less than a smaller one: 0.75 mm² carries 10 A.
test('0.75 mm² is bound by the first row of the table that begins above it', async () => {
  const thin = at12(
    '    heater: {from: battery, to: fridge, load: 1 A, conductor: 0.75 mm2, ambient: 40 degC}',
  );
  const limit = (await ampacity(thin)).limit?.measure.value;
  expect(limit).toBeCloseTo(10 * Math.sqrt(20 / 30), 9);
});

test('without conductor it is not checked', async () => {
  expect(await ampacity(heater('5 A').replace('conductor: 2.5 mm2, ', ''))).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.circuits.heater.conductor'],
  });
});

test('without electrics it is not checked', async () => {
  expect(await ampacity(plan())).toMatchObject({ verdict: 'not checked', missing: ['electrical'] });
});
