import { expect, test } from 'vitest';
import { heatDemandOf } from '../../../src/build/heat-demand.ts';
import { buildOf, findingOf, measured, words } from '../../support/check.ts';
import { warmVan } from '../../support/warm-van.ts';

const text = (output: string, within: string) =>
  warmVan({ heat: `heater: {output: ${output}}, warms_up_in: ${within}` });
const warmUp = (output: string, within: string) => findingOf(text(output, within), 'heat.warm-up');

// C / H · ln(P / (P − 20 · H)) from 0 to 20 °C at 0 °C outside.
test('pass, and exactly at the limit', async () => {
  const { worked } = heatDemandOf(await buildOf(text('1 kW', '1 h')));
  if (!worked) throw new Error('no demand');
  const { capacityJPerK: c, awake } = worked;
  const seconds = (c / awake.totalWPerK) * Math.log(1000 / (1000 - 20 * awake.totalWPerK));
  const finding = await warmUp('1 kW', '2 h');
  expect(finding.verdict).toBe('pass');
  expect(measured(finding)).toBeCloseTo(seconds, 6);
  expect((await warmUp('1 kW', `${seconds / 3600} h`)).verdict).toBe('pass');
});

test('too slow warns, and the heater that is named is enough', async () => {
  const finding = await warmUp('1 kW', '10 min');
  expect(finding.verdict).toBe('warn');
  const output = /heater of ([\d,]+) W/.exec(words(finding.remedy))?.[1]?.replace(',', '') ?? '';
  expect((await warmUp(`${output} W`, '10 min')).verdict).toBe('pass');
  expect((await warmUp(`${Number(output) - 100} W`, '10 min')).verdict).toBe('warn');
});

test('a heater that never gets there warns', async () => {
  const finding = await warmUp('500 W', '1 h');
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('never');
});

test('without a time it is not checked', async () => {
  expect(await findingOf(warmVan({ heat: 'heater: {output: 1 kW}' }), 'heat.warm-up')).toMatchObject({
    verdict: 'not checked',
    missing: ['heat.warms_up_in'],
  });
});

test('where it is as warm outside there is nothing to warm up', async () => {
  const found = await findingOf(
    warmVan({ living: 'winter_low: 25 degC', heat: 'heater: {output: 1 kW}, warms_up_in: 1 h' }),
    'heat.warm-up',
  );
  expect(found.verdict).toBe('pass');
  expect(found.measured).toBeUndefined();
  expect(words(found.reason)).toContain('nothing to warm up');
});

test.each(['800 W', '950 W', '1 kW', '1.3 kW'])('the time that is named for %s is enough', async (output) => {
  const remedy = words((await warmUp(output, '2 min')).remedy);
  const time = /allow ([\d.]+ (?:h|min))/.exec(remedy)?.[1] ?? '';
  expect((await warmUp(output, time)).verdict).toBe('pass');
});

test('a heater that never gets there is told no time', async () => {
  expect(words((await warmUp('500 W', '1 h')).remedy)).not.toContain('allow');
});
