import { expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const all = async (heater: string) =>
  (await reportOf(plan(`water: {heater: {${heater}}}`))).findings
    .filter(({ rule }) => rule === 'water.heater-fittings')
    .map(({ subject, verdict }) => [subject, verdict]);

test.each([
  ['kind: storage, temperature: 60 degC, relief_valve: true, mixing_valve: true', [['water heater', 'pass']]],
  // What mixes is not asked how hot it comes.
  ['kind: instant, mixing_valve: true', [['water heater', 'pass']]],
  ['kind: instant, temperature: 43 degC', [['water heater', 'pass']]],
  ['kind: instant, temperature: 43.1 degC', [['mixing valve', 'not checked']]],
  ['kind: instant, temperature: 43.1 degC, mixing_valve: false', [['mixing valve', 'warn']]],
  ['kind: instant, mixing_valve: false', [['mixing valve', 'not checked']]],
  ['kind: storage, temperature: 40 degC, relief_valve: false', [['relief valve', 'fail']]],
  [
    'kind: storage, temperature: 60 degC, relief_valve: false, mixing_valve: false',
    [
      ['relief valve', 'fail'],
      ['mixing valve', 'warn'],
    ],
  ],
  [
    'kind: storage',
    [
      ['mixing valve', 'not checked'],
      ['relief valve', 'not checked'],
    ],
  ],
])('%s', async (heater, verdicts) => {
  expect((await all(heater)).sort()).toEqual(verdicts.toSorted());
});

test('how much too hot', async () => {
  const text = plan(
    'water: {heater: {kind: storage, temperature: 60 degC, relief_valve: true, mixing_valve: false}}',
  );
  const finding = await findingOf(text, 'water.heater-fittings');
  expect(measured(finding)).toBeCloseTo(17, 9);
  expect(words(finding.remedy)).toContain('set to 43 °C');
});

test('without a heater there is nothing to check', async () => {
  expect(await findingOf(plan('water: {}'), 'water.heater-fittings')).toMatchObject({
    verdict: 'not checked',
    missing: ['water.heater'],
  });
});

test.each(['kind: instant, temperature: 60 degC', 'kind: instant'])(
  'where too little is said, it says from how hot a mixing valve is needed: %s',
  async (heater) => {
    const found = await findingOf(plan(`water: {heater: {${heater}}}`), 'water.heater-fittings');
    expect(words(found.remedy)).toContain('above 43 °C');
  },
);
