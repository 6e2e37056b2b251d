import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.charge-current';
const solar = (limitA: number) =>
  `solar: {roof: {modules: 1, power: 100 W, open_circuit: 22 V, short_circuit: 6 A, controller: {kind: MPPT, current_limit: ${limitA} A, voltage_limit: 100 V}}}`;
const text = (chargers: string, limit = ', charge_limit: 50 A', chemistry = 'lithium iron phosphate') =>
  plan(`electrical:
  voltage: 12 V
  battery: {chemistry: ${chemistry}, voltage: 12.8 V, capacity: 100 Ah${limit}}
${chargers
  .split('\n')
  .map((line) => `  ${line}`)
  .join('\n')}`);
const driving = (currentA: number) => `charging_while_driving: {current: ${currentA} A}`;
const shore = (currentA: number) => `shore: {current: 10 A, charger: {current: ${currentA} A}}`;

describe('all chargers together', () => {
  // 10 + 25 + 15 = 50.
  test('exactly what the battery takes is kept', async () => {
    const finding = await findingOf(text([solar(10), driving(25), shore(15)].join('\n')), id);
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'all chargers together' });
    expect(measured(finding)).toBe(50);
  });

  test('more than the data sheet says fails, with a number to set', async () => {
    const finding = await findingOf(text([solar(10), driving(30), shore(15)].join('\n')), id);
    expect(finding).toMatchObject({
      verdict: 'fail',
      path: ['electrical', 'battery', 'charge_limit'],
    });
    expect(measured(finding)).toBe(55);
    expect(words(finding.remedy)).toBe(
      'Set the chargers 5.0 A lower in all, for example the charger while driving to 25 A, or take a battery that may be charged with 55 A.',
    );
  });

  // Guidance for lithium: 0.5 a hour of 100 Ah is 50 A.
  test('more than guidance only warns, and cites it', async () => {
    const finding = await findingOf(text([driving(40), shore(11)].join('\n'), ''), id);
    expect(finding).toMatchObject({ verdict: 'warn', path: ['electrical', 'battery'] });
    expect(finding.limit?.measure.value).toBe(50);
    expect(words(finding.remedy)).toContain('`electrical.battery.charge_limit`');
    expect(finding.sources.length).toBeGreaterThan(1);
  });

  // Each battery of two side by side may have 50 A.
  test('a typed limit is that of each battery', async () => {
    const finding = await findingOf(text(driving(100), ', charge_limit: 50 A, in_parallel: 2'), id);
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'the charger while driving' });
  });
});

describe('one that is too large alone', () => {
  test('is one finding, and what it may be set to keeps them all within the limit', async () => {
    const finding = await findingOf(text([solar(20), driving(60)].join('\n')), id);
    expect(finding).toMatchObject({
      verdict: 'fail',
      subject: 'the charger while driving',
      path: ['electrical', 'charging_while_driving', 'current'],
    });
    expect(words(finding.remedy)).toMatch(/^Set or choose it for at most 30 A, so that all together/);
    expect((await findingOf(text([solar(20), driving(30)].join('\n')), id)).verdict).toBe('pass');
  });

  test('two of them are two findings', async () => {
    const { findings } = await reportOf(text([driving(60), shore(70)].join('\n'), ''));
    expect(
      findings.filter(({ rule }) => rule === id).map(({ subject, verdict }) => [verdict, subject]),
    ).toEqual([
      ['warn', 'the shore charger'],
      ['warn', 'the charger while driving'],
    ]);
  });
});

describe('what is missing', () => {
  const without = 'solar: {roof: {modules: 1, power: 100 W, open_circuit: 22 V, short_circuit: 6 A}}';

  test('an array without a controller leaves the sum open', async () => {
    const finding = await findingOf(text([without, driving(30)].join('\n')), id);
    expect(finding).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.solar.roof.controller'],
    });
  });

  test('unless the rest is too much already', async () => {
    const finding = await findingOf(text([without, driving(30), shore(30)].join('\n')), id);
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('Others, of unknown current, come on top.');
  });

  test('no charger, no battery, nothing electrical', async () => {
    expect((await findingOf(text('lay_up: 30 d'), id)).missing).toEqual([
      'electrical.solar',
      'electrical.charging_while_driving',
      'electrical.shore.charger',
    ]);
    const bare = plan('electrical: {voltage: 12 V, charging_while_driving: {current: 30 A}}');
    expect((await findingOf(bare, id)).missing).toEqual(['electrical.battery']);
    expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
  });
});
