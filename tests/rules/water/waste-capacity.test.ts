import { expect, test } from 'vitest';
import { findingOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.waste-capacity';
const water = 'outlets: {sink: {thing: sink}}';

// Two use 10 L each on a day and drink 2.5 L of it: 15 L run down the drain. The waste tank holds 50 L.
const living = (days: string) => `litres_per_person_day: 10 L, days_between_fills: ${days}`;

test('a waste tank that takes what drains between fillings passes', async () => {
  const found = await findingOf(waterPlan({ water, living: living('3') }), rule);
  expect(found.verdict).toBe('pass');
  expect(found.limit?.measure.value).toBeCloseTo(0.045, 9);
});

test('exactly enough passes', async () => {
  expect(await findingOf(waterPlan({ water, living: living('50 / 15') }), rule)).toMatchObject({
    verdict: 'pass',
  });
});

test('one that fills before warns, and says after how many days it is full', async () => {
  const found = await findingOf(waterPlan({ water, living: living('4') }), rule);
  expect(found.verdict).toBe('warn');
  expect(found.limit?.measure.value).toBeCloseTo(0.06, 9);
  // 50 L / 15 L are three whole days.
  expect(
    found.remedy?.some((part) => typeof part !== 'string' && part.kind === 'count' && part.value === 3),
  ).toBe(true);
});

test('no more drains than is carried', async () => {
  // 10 days would drain 150 L, but 100 L are aboard.
  const found = await findingOf(waterPlan({ water, living: living('10') }), rule);
  expect(found.limit?.measure.value).toBeCloseTo(0.1, 9);
});

test('what a waste tank cannot take before it must be emptied does not count', async () => {
  const found = await findingOf(waterPlan({ water, living: living('3'), waste: 'usable: 50 %' }), rule);
  expect(found.measured?.value).toBeCloseTo(0.025, 9);
  expect(found.verdict).toBe('warn');
});

test('without habits it is not checked', async () => {
  expect(await findingOf(waterPlan({ water }), rule)).toMatchObject({ verdict: 'not checked' });
});
