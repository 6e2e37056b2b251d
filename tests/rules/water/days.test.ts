import { expect, test } from 'vitest';
import { findingOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.days';

// 100 L for two who use 10 L each a day last 5 days.
const living = 'litres_per_person_day: 10 L';

test('water for longer than between fillings passes', async () => {
  const found = await findingOf(waterPlan({ living: `${living}, days_between_fills: 4` }), rule);
  expect(found).toMatchObject({ verdict: 'pass', limit: { measure: { value: 4 } } });
  expect(found.measured?.value).toBeCloseTo(5, 9);
});

test('exactly as many days as are wanted pass', async () => {
  expect(await findingOf(waterPlan({ living: `${living}, days_between_fills: 5` }), rule)).toMatchObject({
    verdict: 'pass',
  });
});

test('fewer days warn, and the remedy says how many litres are short', async () => {
  const found = await findingOf(waterPlan({ living: `${living}, days_between_fills: 6` }), rule);
  expect(found.verdict).toBe('warn');
  // 6 days take 120 L: 20 L more, or 20 − 100/6 = 3.33 L less on a day, rounded up so that it is enough.
  expect(JSON.stringify(found.remedy)).toContain('0.02');
  expect(found.remedy?.some((part) => typeof part !== 'string' && Math.abs(part.value - 0.0034) < 1e-9)).toBe(
    true,
  );
});

test('what cannot be drawn does not count', async () => {
  const found = await findingOf(
    waterPlan({ fresh: 'usable: 80 %', living: `${living}, days_between_fills: 5` }),
    rule,
  );
  expect(found.verdict).toBe('warn');
  expect(found.measured?.value).toBeCloseTo(4, 9);
});

test('showers come on top', async () => {
  const found = await findingOf(
    waterPlan({
      living: `${living}, days_between_fills: 3, showers_per_person_day: 1, litres_per_shower: 15 L`,
    }),
    rule,
  );
  // 2 × (10 + 15) L a day.
  expect(found.measured?.value).toBeCloseTo(2, 9);
  expect(found.verdict).toBe('warn');
});

test('without days between fillings the nights off grid count', async () => {
  expect(await findingOf(waterPlan({ living: `${living}, nights_off_grid: 5` }), rule)).toMatchObject({
    verdict: 'pass',
  });
});

test('a plan that does not say how people live is not checked', async () => {
  const found = await findingOf(waterPlan({ sleepers: 0 }), rule);
  expect(found).toMatchObject({
    verdict: 'not checked',
    missing: ['people.sleepers', 'living.litres_per_person_day', 'living.days_between_fills'],
  });
});
