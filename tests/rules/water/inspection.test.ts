import { expect, test } from 'vitest';
import { findingOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.inspection';

test.each([
  ['150 mm', 'pass'],
  ['100 mm', 'pass'],
  ['99 mm', 'warn'],
])('an opening of %s: %s', async (inspection, verdict) => {
  expect(await findingOf(waterPlan({ fresh: `inspection: ${inspection}` }), rule)).toMatchObject({ verdict });
});

test('a fresh tank of which the plan is silent is not checked; waste tanks are not asked', async () => {
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['tanks.fresh tank.inspection'],
  });
});
