import { expect, test } from 'vitest';
import { findingOf } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'water.surge';
const holding = (holds: string, more = '') =>
  plan(`tanks: {fresh tank: {contents: fresh, holds: ${holds}${more}}}\nwater: {}`);

test.each([
  ['99 L', '', 'pass'],
  ['100 L', '', 'warn'],
  ['100 L', ', baffles: 1', 'pass'],
  ['100 L', ', baffles: 0', 'warn'],
])('a tank of %s%s: %s', async (holds, more, verdict) => {
  expect(await findingOf(holding(holds, more), rule)).toMatchObject({ verdict });
});

test('without tanks it is not checked', async () => {
  expect(await findingOf(plan('water: {}'), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['tanks'],
  });
});
