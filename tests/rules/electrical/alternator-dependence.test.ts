import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { energyPlan } from '../../support/energy-plan.ts';

const rule = 'electrical.alternator-dependence';
const place = 'place: {latitude: 48.2, longitude: 11.6}';
const array = '  solar: {roof: {modules: 4, power: 110 W, open_circuit: 22 V, short_circuit: 6.3 A}}\n';
const drivingFor = (minutes: number, solar = array, current = 30) =>
  findingOf(
    energyPlan({
      more: `${solar}  charging_while_driving: {current: ${current} A}`,
      living: `{${place}, driving: ${minutes} min}`,
    }),
    rule,
  );

describe('dependence on driving', () => {
  test('a little in winter passes', async () => {
    const finding = await drivingFor(15);
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toMatch(
      /^Driving brings \d+ % of the energy in December, the most of all months\.$/,
    );
  });
  test('nothing but driving warns in every month', async () => {
    const finding = await drivingFor(60, '');
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBe(1);
    expect(words(finding.reason)).toContain('in January, February, March');
    expect(words(finding.remedy)).toContain('Wh a day from more array or from hook-ups');
  });
  // Loads above all that is offered take all of it: the share is that of driving over driving and hook-up, which is half
  // where the hook-up's current is so much of the first guess as driving brings of its energy.
  test('exactly half is still allowed', async () => {
    const withShore = (currentA: number) =>
      findingOf(
        energyPlan({
          fridge: 'load: 400 W, hours: 24 h',
          more: `  charging_while_driving: {current: 10 A}\n  shore: {current: 10 A, charger: {current: ${currentA} A}}`,
          living: `{${place}, driving: 1 h, shore_nights: 20}`,
        }),
        rule,
      );
    const first = measured(await withShore(1));
    const edgeA = first / (1 - first);
    expect(measured(await withShore(edgeA))).toBeCloseTo(0.5, 12);
    expect((await withShore(edgeA)).verdict).toBe('pass');
    expect((await withShore(0.999 * edgeA)).verdict).toBe('warn');
  });
  test('more than half warns', async () => {
    const [little, much] = [await drivingFor(15), await drivingFor(60)];
    expect(measured(little)).toBeLessThan(0.5);
    expect(measured(much)).toBeGreaterThan(0.5);
    expect(much.verdict).toBe('warn');
    expect(much.limit).toEqual({ measure: { kind: 'share', value: 0.5 }, sense: 'at most' });
    expect(words(much.reason)).toMatch(
      /^Driving brings more than 50 % of the energy in .*December; in December/,
    );
  });
  test('what is missing', async () => {
    const finding = await findingOf(energyPlan(), rule);
    expect(finding.verdict).toBe('not checked');
    expect(finding.missing).toEqual(['electrical.charging_while_driving', 'living.driving']);
  });
});
