import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { linings, warmVan, warmVanWPerK } from '../../support/warm-van.ts';

const withHeater = (output: string) =>
  findingOf(warmVan({ heat: `heater: {output: ${output}}` }), 'heat.loss');

// 20 K · 34.72 W/K = 694.5 W; a fifth more is 833.4 W.
describe('the heater against the loss', () => {
  test('pass, with the most losing surfaces named', async () => {
    const finding = await withHeater('1 kW');
    expect(finding).toMatchObject({ verdict: 'pass', path: ['heat', 'heater', 'output'] });
    expect(measured(finding)).toBe(1000);
    expect(finding.limit?.measure.value).toBeCloseTo(1.2 * 20 * warmVanWPerK, 1);
    expect(words(finding.reason)).toContain(
      'the ceiling (140 W), the left wall (137 W) and the right wall (137 W)',
    );
  });

  test('within the margin it warns', async () => {
    expect((await withHeater('800 W')).verdict).toBe('warn');
  });

  test('smaller than the loss it fails, and the remedies are enough', async () => {
    const finding = await withHeater('600 W');
    expect(finding.verdict).toBe('fail');
    expect(finding.limit?.measure.value).toBeCloseTo(20 * warmVanWPerK, 1);
    // With the margin of a fifth, or the next run would warn.
    const watts = /^Take a heater of (\d+) W or more/.exec(words(finding.remedy))?.[1] ?? '';
    expect(Number(watts)).toBeGreaterThanOrEqual(1.2 * 20 * warmVanWPerK);
    expect((await withHeater(`${watts} W`)).verdict).toBe('pass');
  });

  test('within the margin it warns, and thicker insulation is enough', async () => {
    const heater = `heater: {output: ${Math.ceil(1.15 * 20 * warmVanWPerK)} W}`;
    const finding = await findingOf(warmVan({ heat: heater }), 'heat.loss');
    expect(finding.verdict).toBe('warn');
    const mm = /make the XPS of walls \d+ mm thicker \((\d+) mm\)/.exec(words(finding.remedy))?.[1] ?? '';
    const thicker = linings.replace(
      '{of: walls, layers: [{material: XPS, thickness: 36 mm}]}',
      `{of: walls, layers: [{material: XPS, thickness: ${mm} mm}]}`,
    );
    expect((await findingOf(warmVan({ linings: thicker, heat: heater }), 'heat.loss')).verdict).toBe('pass');
  });

  test.each([36, 25.4, 30.6, 41.7])(
    'thicker insulation than %s mm is enough as it is printed',
    async (nowMm) => {
      const foam = (mm: string | number) =>
        linings.replace(
          '{of: walls, layers: [{material: XPS, thickness: 36 mm}]}',
          `{of: walls, layers: [{material: XPS, thickness: ${mm} mm}]}`,
        );
      const at = (mm: string | number, watts: number) =>
        findingOf(warmVan({ linings: foam(mm), heat: `heater: {output: ${watts} W}` }), 'heat.loss');
      const needed = (await at(nowMm + 30, 1)).limit?.measure.value ?? 0;
      // Just what 30 mm more would need with the margin, so that a rounded millimetre would not do.
      const finding = await at(nowMm, needed * 1.2);
      const mm = /of walls \d+ mm thicker \((\d+) mm\)/.exec(words(finding.remedy))?.[1] ?? '';
      expect((await at(mm, needed * 1.2)).verdict).toBe('pass');
    },
  );

  test('the fixed vents count where they let in more than the leaks, once', async () => {
    const vents =
      'air: {vents: {roof: {in: ceiling, free_area: 400 cm2, closes: false}, floor: {in: floor, free_area: 400 cm2, closes: false}}}';
    const tight = await withHeater('600 W');
    const vented = await findingOf(`${warmVan({ heat: 'heater: {output: 600 W}' })}\n${vents}`, 'heat.loss');
    expect(vented.limit?.measure.value).toBeGreaterThan((tight.limit?.measure.value ?? 0) + 300);
  });

  test('where it is as warm outside there is nothing to heat', async () => {
    const found = await findingOf(
      warmVan({ living: 'winter_low: 25 degC', heat: 'heater: {output: 1 kW}' }),
      'heat.loss',
    );
    expect(found.verdict).toBe('pass');
    expect(words(found.reason)).toContain('nothing to heat');
  });

  test('exactly the loss does not fail; exactly the margin passes', async () => {
    const lossW = (await withHeater('1 W')).limit?.measure.value ?? 0;
    expect((await withHeater(`${lossW} W`)).verdict).toBe('warn');
    expect((await withHeater(`${1.2 * lossW} W`)).verdict).toBe('pass');
  });
});

test('what is missing is named', async () => {
  expect(await findingOf(warmVan({ living: 'nights_off_grid: 1' }), 'heat.loss')).toMatchObject({
    verdict: 'not checked',
    missing: ['heat.heater.output', 'living.winter_low'],
  });
});
