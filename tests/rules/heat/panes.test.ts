import { expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { warmVan } from '../../support/warm-van.ts';

const openings = (more = '') =>
  `{window: {kind: window, in: right wall, length: 600 mm, height: 500 mm}${more}}`;
const text = (pane: string, more = '', rest = '') =>
  warmVan({ heat: `panes: {${pane}}`, van: { openings: openings(more) }, rest });
const panes = (pane: string) => findingOf(text(pane), 'heat.panes');

// Class 4: 0.9 · 611 + 1080 = 1630 Pa, dew point 14.3 °C. Double acrylic: 20 · (1 − 2.9 · 0.13) = 12.46 °C.
test('a pane below the dew point warns', async () => {
  const finding = await panes('window: {kind: double acrylic}');
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'window', path: ['heat', 'panes', 'window'] });
  expect(measured(finding)).toBeCloseTo(20 * (1 - 2.9 * 0.13), 9);
  expect(finding.limit?.measure.value).toBeCloseTo(14.3, 1);
  expect(words(finding.reason)).toContain('humidity class 4');
});

test('a warm one passes; exactly at the dew point too', async () => {
  expect((await panes('window: {u_value: 1.5 W/m2/K}')).verdict).toBe('pass');
  const dew = (await panes('window: {kind: double acrylic}')).limit?.measure.value ?? 0;
  const u = (1 - dew / 20) / 0.13;
  expect((await panes(`window: {u_value: ${u} W/m2/K}`)).verdict).toBe('pass');
  expect((await panes(`window: {u_value: ${u + 0.01} W/m2/K}`)).verdict).toBe('warn');
});

test('a cover inside does not help', async () => {
  const finding = await panes('window: {kind: double acrylic, cover: true}');
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('colder still');
});

test('panes that are alike are one finding, whichever comes first', async () => {
  const more = ', attic: {kind: window, in: left wall, length: 300 mm, height: 300 mm}';
  const one = await reportOf(text('window: {kind: double acrylic}, attic: {kind: double acrylic}', more));
  const found = one.findings.filter(({ rule }) => rule === 'heat.panes');
  expect(found.map(({ subject }) => subject)).toEqual(['attic and window']);
});

test('the air of the plan counts where it is given', async () => {
  const rest = `people: {sleepers: [{stature: 1.7 m}]}
air: {vents: {low: {in: floor, free_area: 200 cm2, closes: false}, high: {in: ceiling, free_area: 200 cm2, closes: false}}}`;
  const finding = await findingOf(text('window: {kind: double acrylic}', '', rest), 'heat.panes');
  expect(words(finding.reason)).toContain('the water and the fixed vents of the plan');
  expect(finding.verdict).toBe('pass');
});

test('a U-value beyond what the film lets through is no error', async () => {
  expect((await panes('window: {u_value: 20 W/m2/K}')).verdict).toBe('warn');
});

test('missing', async () => {
  expect(await panes('window: {cover: true}')).toMatchObject({
    verdict: 'not checked',
    missing: ['heat.panes.window.kind'],
  });
  expect(await findingOf(warmVan(), 'heat.panes')).toMatchObject({ missing: ['van.openings'] });
});

// So damp that the pane would have to be nearly as warm as the room: 0.5 and 0.3 W/(m²·K), and less than nothing.
test.each([12.6, 13.4, 20])(
  'no pane that nobody makes is asked for, with %s L of wet clothes',
  async (litres) => {
    const wet = warmVan({
      heat: 'panes: {window: {kind: double acrylic}}',
      living: `winter_low: 0 degC, wet_clothes: ${litres} L`,
      van: { openings: openings() },
      rest: `people: {sleepers: [{stature: 1.7 m}]}
air: {vents: {low: {in: floor, free_area: 200 cm2, closes: false}, high: {in: ceiling, free_area: 200 cm2, closes: false}}}`,
    });
    const finding = await findingOf(wet, 'heat.panes');
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('No pane that is made');
    expect(words(finding.remedy)).not.toContain('W/m²K');
  },
);

test('a better pane that is named is enough, and never one of less than three panes have', async () => {
  const remedy = words((await panes('window: {kind: double acrylic}')).remedy);
  const u = /a pane of ([\d.]+) W\/m²K/.exec(remedy)?.[1] ?? '';
  expect(Number(u)).toBeGreaterThanOrEqual(0.6);
  expect((await panes(`window: {u_value: ${u} W/m2/K}`)).verdict).toBe('pass');
});
