import { expect, test } from 'vitest';
import { findingOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.isolating-valves';
const valve = (keys: string, codes = 'uk') => gasPlan({ hob: `use: cooking${keys}`, codes });

test.each([
  [', isolating_valve: true', 'uk', 'pass'],
  [', isolating_valve: false', 'uk', 'fail'],
  [', isolating_valve: false', 'eu', 'fail'],
  // A European text: elsewhere a guide.
  [', isolating_valve: false', 'us', 'warn'],
])('%s in %s: %s', async (keys, codes, verdict) => {
  expect(await findingOf(valve(keys, codes), rule)).toMatchObject({ verdict, subject: 'hob' });
});

test('silence is not checked', async () => {
  expect(await findingOf(valve(''), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.appliances.hob.isolating_valve'],
  });
});
