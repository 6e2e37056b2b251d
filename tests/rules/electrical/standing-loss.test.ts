import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.standing-loss';
const text = (
  layUp: string,
  standing = '0.05 A',
  { battery = 'lithium iron phosphate, voltage: 12.8 V', usable = '', inverter = '' } = {},
) =>
  plan(`fixtures: {alarm: {mass: 1 kg, solid: false}, radio: {mass: 1 kg, solid: false}}
electrical:
  voltage: 12 V
${layUp === '' ? '' : `  lay_up: ${layUp}`}
  battery: {chemistry: ${battery}, capacity: 100 Ah${usable}}
  circuits:
    alarm supply: {from: battery, to: alarm, load: 1 A${standing === '' ? '' : `, standing: ${standing}`}}
    feed: {from: battery, to: radio}
${inverter === '' ? '' : `  inverter: {power: 500 W, circuit: feed, ${inverter}}`}`);

/** 3 % of 100 Ah in a month of 365.2425 / 12 days. */
const selfPerDayAh = 3 / (365.2425 / 12);
const ampereHours = async (yaml: string) => measured(await findingOf(yaml, id)) / 3600;

describe('what is lost', () => {
  // 0.05 A · 24 h = 1.2 Ah a day, and 0.0986 Ah by itself: 80 Ah last 61.6 days.
  test('standing currents and self-discharge add up', async () => {
    expect(await ampereHours(text('30 d'))).toBeCloseTo(30 * (1.2 + selfPerDayAh), 9);
  });

  test.each([
    { days: '61 d', verdict: 'pass' },
    { days: '62 d', verdict: 'warn' },
  ])('$days: $verdict', async ({ days, verdict }) => {
    const finding = await findingOf(text(days), id);
    expect(finding.verdict).toBe(verdict);
    expect(words(finding.reason)).toContain('which lasts 61 days');
  });

  test('exactly all that can be used is kept', async () => {
    // 30 days at 1.2 Ah and by itself, as the usable share of 100 Ah.
    const share = 30 * (1.2 + selfPerDayAh);
    const finding = await findingOf(text('30 d', '0.05 A', { usable: `, usable: ${share} %` }), id);
    expect(finding.verdict).toBe('pass');
    expect(finding.utilisation).toBeCloseTo(1, 9);
  });

  // 80 Ah over 100 days are 0.8 Ah a day, less 0.0986.
  test('the remedy says what may be drawn and how often to charge', async () => {
    const finding = await findingOf(text('100 d'), id);
    expect(words(finding.remedy)).toBe(
      'Switch off what you can, alarm supply first, so that at most 0.7 Ah a day are drawn, or charge it every 61 days.',
    );
  });

  // 1.2 W at 12 V are 0.1 A.
  test('a power counts at the lowest voltage', async () => {
    expect(await ampereHours(text('10 d', '1.2 W'))).toBeCloseTo(10 * (2.4 + selfPerDayAh), 9);
  });

  // Flooded lead: 12 % a month of 100 Ah, half of it usable; 10 months lose more than all.
  test('a battery that empties itself', async () => {
    const finding = await findingOf(text('200 d', '0.001 A', { battery: 'flooded lead, voltage: 12 V' }), id);
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('What it loses by itself is too much');
  });
});

describe('an inverter', () => {
  // 12 W at 12 V is 1 A: 24 Ah a day.
  test('that is always on counts with its idle power', async () => {
    const inverter = 'idle: 12 W, always_on: true';
    expect(await ampereHours(text('2 d', '', { inverter }))).toBeCloseTo(2 * (24 + selfPerDayAh), 9);
  });

  test('that is switched off does not', async () => {
    expect(await findingOf(text('2 d', '', { inverter: 'idle: 12 W' }), id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits.NAME.standing'],
    });
  });

  test('that is always on without an idle power is asked for it', async () => {
    const inverter = 'always_on: true';
    expect(await findingOf(text('2 d', '0.05 A', { inverter }), id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.inverter.idle'],
    });
    expect((await findingOf(text('100 d', '0.05 A', { inverter }), id)).verdict).toBe('warn');
  });
});

test('without lay_up it is not checked', async () => {
  expect(await findingOf(text(''), id)).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.lay_up'],
  });
});

test('nothing electrical', async () => {
  expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
});
