import { expect, test } from 'vitest';
import { cylinderOffTake } from '../../../src/catalogue/gas/off-take.ts';
import { findingOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.off-take';
const at = (low: string, changes: Parameters<typeof gasPlan>[0] = {}) =>
  gasPlan({ ...changes, living: `winter_low: ${low}` });

test('propane gives a hob what it takes for some minutes, in frost too', async () => {
  const found = await findingOf(at('-8 degC'), rule);
  expect(found.verdict).toBe('pass');
  const { kgPerS } = cylinderOffTake({
    gas: 'propane',
    holdsKg: 6,
    duty: 'bursts of 20 minutes',
    ambientC: -8,
  });
  expect(found.limit?.measure.value).toBeCloseTo(kgPerS, 12);
  expect(found.measured?.value).toBeCloseTo(3600 / 46.1e6, 12);
});

test('butane gives nothing below its boiling point, and little up to where it feeds the regulator', async () => {
  const cylinder = 'contents: butane, holds: 6 kg';
  const cold = await findingOf(at('-8 degC', { cylinder }), rule);
  expect(cold).toMatchObject({ verdict: 'fail', subject: 'cylinder' });
  // It boils at -0.5 °C and starves below 6.5 °C.
  expect((await findingOf(at('-0.6 degC', { cylinder }), rule)).verdict).toBe('fail');
  expect((await findingOf(at('3 degC', { cylinder }), rule)).verdict).toBe('warn');
});

test('more than a cylinder gives at once fails, exactly', async () => {
  const { kgPerS } = cylinderOffTake({
    gas: 'propane',
    holdsKg: 6,
    duty: 'bursts of 20 minutes',
    ambientC: -8,
  });
  const taking = (gramsPerHour: number) =>
    findingOf(at('-8 degC', { hob: `use: cooking, input: ${gramsPerHour} g/h` }), rule);
  expect((await taking(kgPerS * 3.6e6)).verdict).toBe('pass');
  const over = await taking(kgPerS * 3.6e6 * 1.01);
  expect(over.verdict).toBe('fail');
  expect(over.remedy).toBeDefined();
});

test('a heater that burns for hours warns long before', async () => {
  const long = cylinderOffTake({ gas: 'propane', holdsKg: 6, duty: 'uninterrupted', ambientC: -8 });
  const heater = (gramsPerHour: number) =>
    findingOf(
      at('-8 degC', {
        hob: 'use: cooking, input: 1 g/h',
        appliances: `    heater: {use: room heating, input: ${gramsPerHour} g/h}`,
      }),
      rule,
    );
  expect((await heater(long.kgPerS * 3.6e6 * 0.99)).verdict).toBe('pass');
  expect((await heater(long.kgPerS * 3.6e6 * 1.05)).verdict).toBe('warn');
});

test('two cylinders at once give twice as much', async () => {
  const second = '  second: {contents: propane, holds: 6 kg, in: locker}';
  const one = await findingOf(at('-8 degC', { tanks: second }), rule);
  const two = await findingOf(at('-8 degC', { tanks: second, gas: '  in_use: 2' }), rule);
  expect(two.limit?.measure.value).toBeCloseTo(2 * (one.limit?.measure.value ?? 0), 12);
});

test('what is missing is asked for', async () => {
  expect((await findingOf(gasPlan({}), rule)).missing).toEqual(['living.winter_low']);
  expect((await findingOf(at('-8 degC', { hob: 'use: cooking' }), rule)).missing).toEqual([
    'gas.appliances.hob.input',
  ]);
});
