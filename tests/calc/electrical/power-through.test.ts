import { expect, test } from 'vitest';
import { currentForPower } from '../../../src/calc/electrical/power-through.ts';

test('what the current does to the voltage comes to the same current again', () => {
  for (const [powerW, voltageV, ohm] of [
    [1778, 12, 0.00176],
    [50, 12.8, 0.1],
    [3000, 24, 0.01],
  ] as const) {
    const currentA = currentForPower(powerW, voltageV, ohm) ?? Number.NaN;
    expect(currentA * (voltageV - ohm * currentA)).toBeCloseTo(powerW, 8);
    // The load takes the lesser of the two currents that would do.
    expect(ohm * currentA).toBeLessThan(voltageV / 2);
  }
});

test('without resistance it is power over voltage', () => {
  expect(currentForPower(120, 12, 0)).toBe(10);
  expect(currentForPower(0, 12, 0.1)).toBe(0);
});

test('half of the voltage is the most that a resistance may take', () => {
  expect(currentForPower(360, 12, 0.1)).toBeCloseTo(60, 9);
  expect(currentForPower(360.01, 12, 0.1)).toBeUndefined();
});

test('values out of range are refused', () => {
  expect(() => currentForPower(-1, 12, 0.1)).toThrow(RangeError);
  expect(() => currentForPower(1, 0, 0.1)).toThrow(RangeError);
  expect(() => currentForPower(1, 12, Number.NaN)).toThrow(RangeError);
});
