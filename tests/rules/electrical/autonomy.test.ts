import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { energyPlan } from '../../support/energy-plan.ts';

const rule = 'electrical.autonomy';
const place = 'place: {latitude: 48.2, longitude: 11.6}';
const wanting = (nights: number | string, changes: Parameters<typeof energyPlan>[0] = {}) =>
  findingOf(energyPlan({ living: `{nights_off_grid: ${nights}, ${place}}`, ...changes }), rule);

describe('nights on the battery alone', () => {
  // 2048 Wh · √0.92 = 1964 Wh at 440 Wh a day: 4.46 days; a day and a half per cent go by themselves, and the evening comes first.
  test('by hand', async () => {
    const finding = await wanting(3);
    expect(finding.verdict).toBe('pass');
    expect(measured(finding) / 86_400).toBeGreaterThan(4.2);
    expect(measured(finding) / 86_400).toBeLessThan(4.46);
  });
  // 2048 · √0.92 Wh at a steady 80 W: 24.55 h; 3 % a month are 0.1 % by then.
  test('of a steady load', async () => {
    const steady = { fridge: 'load: 79 W, hours: 24 h', lamps: 'load: 1 W, hours: 24 h' };
    expect(measured(await wanting(1, steady)) / 3600).toBeCloseTo(24.55, 1);
  });
  test('too few fail, and name a battery that lasts', async () => {
    const finding = await wanting(6);
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('for 104 h, which is 4.3 nights; the plan wants 6 nights.');
    const more = /^Fit (\d+) Ah more/.exec(words(finding.remedy))?.[1];
    const with_ = (ah: number) =>
      wanting(6, {
        battery: `{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: ${200 + ah} Ah}`,
      });
    expect((await with_(Number(more))).verdict).toBe('pass');
    expect((await with_(Number(more) - 10)).verdict).toBe('fail');
  });
  test('exactly as many as are wanted are enough', async () => {
    const days = measured(await wanting(3)) / 86_400;
    expect((await wanting(days)).verdict).toBe('pass');
    expect((await wanting(days * 1.001)).verdict).toBe('fail');
  });
  test('no battery of a van lasts for hundreds of nights', async () => {
    expect(words((await wanting(300)).remedy)).toBe(
      'Use less: even 2000 Ah more battery would not last so long.',
    );
  });
  test('what is missing', async () => {
    const finding = await findingOf(energyPlan({ living: '{driving: 1 h}' }), rule);
    expect(finding.verdict).toBe('not checked');
    expect(finding.missing).toEqual(['living.place', 'living.nights_off_grid']);
  });
  test('says where the sun is from, and how far to trust it', async () => {
    const { cautions } = await wanting(3);
    expect(cautions.join(' ')).toContain('Munich, Germany, 11 km away');
    expect(cautions.join(' ')).toContain('10 to 20 % off');
    expect(cautions.join(' ')).toContain('qualified installer');
  });
});
