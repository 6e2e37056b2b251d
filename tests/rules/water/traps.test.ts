import { expect, test } from 'vitest';
import { findingOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.traps';
const withTrap = (trap: string, use = 'tap') =>
  waterPlan({ water: `outlets: {sink: {thing: sink, use: ${use}${trap && `, trap: ${trap}`}}}` });

test.each([
  ['75 mm', 'pass'],
  ['50 mm', 'pass'],
  ['100 mm', 'pass'],
  ['49 mm', 'warn'],
  ['101 mm', 'warn'],
])('%s of water in a trap: %s', async (trap, verdict) => {
  expect(await findingOf(withTrap(trap), rule)).toMatchObject({ verdict, subject: 'sink' });
});

test('a drain of whose trap the plan is silent is not checked', async () => {
  expect(await findingOf(withTrap(''), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.outlets.sink.trap'],
  });
});

test('what has no waste pipe needs no trap', async () => {
  expect(await findingOf(withTrap('', 'outside'), rule)).toMatchObject({
    verdict: 'pass',
    subject: 'outlets',
  });
});

test('without outlets it is not checked', async () => {
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.outlets'],
  });
});
