import { expect, test } from 'vitest';
import { findingOf, reportOf } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.filling';

test('filling and overflow outside pass', async () => {
  const text = waterPlan({ fresh: 'filled_from: outside, overflows_to: outside' });
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'pass', subject: 'fresh tank' });
});

test('either of them inside warns', async () => {
  const text = waterPlan({ fresh: 'filled_from: inside, overflows_to: inside' });
  const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
  expect(found.map(({ verdict, subject }) => [verdict, subject])).toEqual([
    ['warn', 'fresh tank, filling'],
    ['warn', 'fresh tank, overflow'],
  ]);
});

test('half of it said is half not checked', async () => {
  expect(await findingOf(waterPlan({ fresh: 'filled_from: outside' }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['tanks.fresh tank.overflows_to'],
  });
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    missing: ['tanks.fresh tank.filled_from', 'tanks.fresh tank.overflows_to'],
  });
});

test('a waste tank is not filled with a hose', async () => {
  expect(
    await findingOf(plan('tanks: {waste: {contents: waste, holds: 20 L}}\nwater: {}'), rule),
  ).toMatchObject({ verdict: 'pass', subject: 'fresh tanks' });
});
