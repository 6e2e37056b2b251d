import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { energyPlan } from '../../support/energy-plan.ts';

const rule = 'electrical.energy-year';
type Changes = Parameters<typeof energyPlan>[0];
const yearOf = (changes: Changes = {}) => findingOf(energyPlan(changes), rule);
const array = (watts: number, more = '') =>
  `  solar: {roof: {modules: 1, power: ${watts} W, open_circuit: 22 V, short_circuit: 6.3 A${more}}}`;

describe('energy through the year', () => {
  test('enough in every month, dull days too', async () => {
    const finding = await yearOf({ more: array(2000) });
    expect(finding.verdict).toBe('pass');
    expect(finding.subject).toBe('all twelve months');
  });
  test('short on usual days: fails, names the months, and what closes the worst does', async () => {
    const finding = await yearOf();
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toBe(
      'On usual days the battery runs empty in January and December; worst in December, where the loads go short of 3,233 Wh, and ask for 440 Wh a day.',
    );
    const remedy = words(finding.remedy);
    const [, more] = /(\d+) W more array/.exec(remedy) ?? [];
    const december = async (watts: number) => (await yearOf({ more: array(440 + watts) })).subject;
    expect(await december(Number(more))).not.toContain('December');
    expect(await december(Number(more) - 10)).toContain('December');
    // The battery is full but once: no size of it brings energy.
    expect(remedy).not.toContain('more battery');
  });
  test('living on what the battery held: warns', async () => {
    const finding = await yearOf({
      more: '',
      fridge: 'load: 1 W, hours: 24 h',
      lamps: 'load: 1 W, hours: 1 h',
    });
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('In January, February, March');
    // 25 Wh a day through √0.92, and what leaks.
    expect(measured(finding) / 3600).toBeGreaterThan(25 / Math.sqrt(0.92));
    expect(measured(finding) / 3600).toBeLessThan(29);
  });
  test('short in a dull run alone: warns, and more battery closes it', async () => {
    const small = { battery: '{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 60 Ah}' };
    const finding = await yearOf({ ...small, more: array(1000) });
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('a run of dull days empties the battery in');
    expect(words(finding.remedy)).toMatch(
      /Wh a day less load, or \d+ W more array, or \d+ Ah more battery\./,
    );
  });
  test('nothing that a van has room for', async () => {
    const finding = await yearOf({ fridge: 'load: 800 W, hours: 24 h', more: '' });
    expect(words(finding.remedy)).toBe(
      'Nothing that fits a van closes January: plan hook-ups or driving for it.',
    );
  });
  test('what is missing', async () => {
    const finding = await findingOf('storystick: 1\nvan: {max_mass: 3500 kg}\n', rule);
    expect(finding.verdict).toBe('not checked');
    expect(finding.missing).toEqual(['electrical.battery', 'electrical.circuits', 'living.place']);
  });
  test('a tilted array under a typed-in sun brings its doubt', async () => {
    const sun = Array.from({ length: 12 }, () => '2 kWh/m2').join(', ');
    const living = `{place: {latitude: 48.2, longitude: 11.6}, sun: [${sun}]}`;
    const doubt = 'a tilted array looks a little too good';
    expect((await yearOf({ living, more: array(2000, ', tilt_degrees: 40') })).cautions.join(' ')).toContain(
      doubt,
    );
    expect((await yearOf({ more: array(2000, ', tilt_degrees: 40') })).cautions.join(' ')).not.toContain(
      doubt,
    );
    expect((await yearOf({ living, more: array(2000) })).cautions.join(' ')).not.toContain(doubt);
  });
});
