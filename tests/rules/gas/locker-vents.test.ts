import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, words } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.locker-vents';
// The locker's floor is 400 mm by 300 mm, 1200 cm²: 2 % are 24 cm², so the least of 100 cm² decides.
const locker = (vents: string, codes = 'uk') =>
  gasPlan({ gas: `  locker: {thing: locker${vents && `, ${vents}`}}`, codes });

test.each([
  ['low_vent: 120 cm2', 'pass', 0.01],
  ['low_vent: 100 cm2', 'pass', 0.01],
  ['low_vent: 99 cm2', 'fail', 0.01],
  // Half low and half high will do as well.
  ['low_vent: 50 cm2, high_vent: 50 cm2', 'pass', 0.005],
  ['low_vent: 60 cm2, high_vent: 40 cm2', 'fail', 0.01],
])('%s: %s', async (vents, verdict, limit) => {
  const found = await findingOf(locker(vents), rule);
  expect(found.verdict).toBe(verdict);
  expect(found.limit?.measure.value).toBeCloseTo(limit, 9);
});

test('elsewhere the European figure is a guide', async () => {
  expect(await findingOf(locker('low_vent: 50 cm2', 'au'), rule)).toMatchObject({ verdict: 'warn' });
});

test('in the US both are wanted, a hundredth of the floor each', async () => {
  const without = await findingOf(locker('low_vent: 200 cm2', 'us'), rule);
  expect(without.verdict).not.toBe('pass');
  const both = await findingOf(locker('low_vent: 60 cm2, high_vent: 60 cm2', 'us'), rule);
  expect(both.verdict).toBe('pass');
});

test('a large locker needs two hundredths of its floor', async () => {
  // 1 m by 0.8 m: 160 cm².
  const text = gasPlan({
    fixtures:
      '  shed: {mass: 9 kg, size: {length: 1 m, width: 800 mm, height: 600 mm}, at: {from_front: 2 m, from_left: 0 mm, above_floor: 0 mm}}',
    gas: '  locker: {thing: shed, low_vent: 150 cm2}',
  });
  const found = await findingOf(text, rule);
  expect(found.verdict).toBe('fail');
  expect(found.limit?.measure.value).toBeCloseTo(0.016, 9);
  // Ten more are open floor.
  expect(found.remedy?.some((part) => typeof part !== 'string' && Math.abs(part.value - 0.001) < 1e-9)).toBe(
    true,
  );
});

test.each([
  // Ten more low make 50 low and 60 high, which is less to cut than sixty more low.
  [
    'low_vent: 40 cm2, high_vent: 60 cm2',
    'uk',
    'Open 10 cm² more low down,',
    'low_vent: 50 cm2, high_vent: 60 cm2',
  ],
  [
    'low_vent: 60 cm2, high_vent: 40 cm2',
    'uk',
    'Open 10 cm² more high up,',
    'low_vent: 60 cm2, high_vent: 50 cm2',
  ],
  [
    'low_vent: 90 cm2, high_vent: 20 cm2',
    'uk',
    'Open 10 cm² more in its floor,',
    'low_vent: 100 cm2, high_vent: 20 cm2',
  ],
  [
    'low_vent: 10 cm2, high_vent: 45 cm2',
    'uk',
    'Open 40 cm² more low down and 5.0 cm² more high up,',
    'low_vent: 50 cm2, high_vent: 50 cm2',
  ],
  ['low_vent: 60 cm2', 'us', 'Open 50 cm² more high up,', 'low_vent: 60 cm2, high_vent: 50 cm2'],
])('the least that cures %s in %s is asked for, and cures', async (vents, codes, remedy, cured) => {
  const found = await findingOf(locker(vents, codes), rule);
  expect(found.verdict).not.toBe('pass');
  expect(words(found.remedy)).toContain(remedy);
  expect(await findingOf(locker(cured, codes), rule)).toMatchObject({ verdict: 'pass' });
});

test('what is missing is asked for', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({ missing: ['gas.locker'] });
  expect(await findingOf(locker(''), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.locker.low_vent'],
  });
  expect(await findingOf(gasPlan({ gas: '  locker: {low_vent: 100 cm2}' }), rule)).toMatchObject({
    missing: ['gas.locker.thing'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    locker('low_vent: 120 cm2'),
    locker('low_vent: 99 cm2'),
    locker('low_vent: 50 cm2', 'au'),
    locker(''),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass', 'warn']);
});
