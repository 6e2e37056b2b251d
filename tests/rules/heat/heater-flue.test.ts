import { expect, test } from 'vitest';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { warmVan } from '../../support/warm-van.ts';

const flue = (heater: string) => findingOf(warmVan({ heat: `heater: {${heater}}` }), 'heat.heater-flue');

test.each([
  { heater: 'heated_by: diesel, flue: room-sealed', verdict: 'pass' },
  { heater: 'heated_by: gas, flue: open-flued', verdict: 'warn' },
  { heater: 'heated_by: gas, flue: flueless', verdict: 'fail' },
  { heater: 'heated_by: diesel, flue: flueless', verdict: 'fail' },
])('$heater: $verdict', async ({ heater, verdict }) => {
  const finding = await flue(heater);
  expect(finding).toMatchObject({ verdict, path: ['heat', 'heater', 'flue'] });
  expect(finding.cautions[0]).toContain('Carbon monoxide');
  expect(words(finding.reason)).not.toContain('safe');
});

test('an electric heater has no fumes', async () => {
  const { findings } = await reportOf(warmVan({ heat: 'heater: {heated_by: mains}' }));
  expect(findings.some(({ rule }) => rule === 'heat.heater-flue')).toBe(false);
});

test('missing', async () => {
  expect(await flue('output: 2 kW')).toMatchObject({
    verdict: 'not checked',
    missing: ['heat.heater.heated_by', 'heat.heater.flue'],
  });
  expect(await findingOf(warmVan(), 'heat.heater-flue')).toMatchObject({ missing: ['heat.heater'] });
});
