import { describe, expect, test } from 'vitest';
import { fuelFor, meanHeat } from '../../../src/calc/heat/fuel.ts';
import { coldestHeldC, heatNeed, lossPerKelvin } from '../../../src/calc/heat/heat-loss.ts';
import { coolingAirM3PerS, overheatedC, solAirC, solarGainW } from '../../../src/calc/heat/summer.ts';
import { airCapacity, warmedCapacity, warmUpS } from '../../../src/calc/heat/warm-up.ts';
import { alongYear, yearBetween } from '../../../src/calc/heat/year-of-cold.ts';
import { ductPracticeFor } from '../../../src/catalogue/heat/heating.ts';

describe('loss', () => {
  const input = { lossWPerK: 50, insideC: 20, outsideC: -10, gainsW: 200, margin: 0.2 };
  test('1500 W, less 200, a fifth more', () => {
    expect(heatNeed(input)).toEqual({ lossW: 1500, netW: 1300, heaterW: 1560 });
  });
  test('never below nothing', () => {
    expect(heatNeed({ ...input, outsideC: 25 })).toEqual({ lossW: 0, netW: 0, heaterW: 0 });
    expect(heatNeed({ ...input, gainsW: 5000 }).netW).toBe(0);
  });
  test('the coldest held is the inverse', () => {
    expect(coldestHeldC({ lossWPerK: 50, insideC: 20, heaterW: 1300, gainsW: 200 })).toBeCloseTo(-10, 9);
  });
  test.each([
    [() => heatNeed({ ...input, margin: -1 })],
    [() => heatNeed({ ...input, lossWPerK: -1 })],
    [() => coldestHeldC({ lossWPerK: 0, insideC: 20, heaterW: 1, gainsW: 0 })],
    [() => lossPerKelvin({ surfaces: [{ areaM2: -1, uValue: 1 }], volumeM3: 1, airChangesPerHour: 1 })],
    [() => lossPerKelvin({ surfaces: [], volumeM3: Number.NaN, airChangesPerHour: 1 })],
  ])('impossible input %#', (act) => {
    expect(act).toThrow(RangeError);
  });
});

describe('warming up', () => {
  const room = { capacityJPerK: 200_000, lossWPerK: 50, heaterW: 2000, startC: 0, targetC: 18, outsideC: -5 };
  test('slower than without loss, and there in the end', () => {
    const without = warmUpS({ ...room, lossWPerK: 0 });
    expect(without).toBeCloseTo((200_000 * 18) / 2000, 9);
    const withLoss = warmUpS(room);
    expect(withLoss).toBeGreaterThan(without);
    // After that time the balance of one lump is at the target.
    const endC = -5 + 40;
    expect(endC - (endC - 0) * Math.exp((-withLoss * 50) / 200_000)).toBeCloseTo(18, 9);
  });
  test('warm enough already, and never', () => {
    expect(warmUpS({ ...room, startC: 18 })).toBe(0);
    expect(warmUpS({ ...room, targetC: 35 })).toBe(Number.POSITIVE_INFINITY);
    expect(warmUpS({ ...room, targetC: 40 })).toBe(Number.POSITIVE_INFINITY);
    expect(warmUpS({ ...room, heaterW: 0, lossWPerK: 0 })).toBe(Number.POSITIVE_INFINITY);
  });
  test('a small loss joins on to none', () => {
    expect(warmUpS({ ...room, lossWPerK: 1e-9 })).toBeCloseTo(warmUpS({ ...room, lossWPerK: 0 }), 5);
  });
  const ply = { thicknessM: 0.006, densityKgM3: 500, heatCapacityJPerKgK: 1600, conductivityWPerMK: 0.17 };
  const foam = { thicknessM: 0.05, densityKgM3: 40, heatCapacityJPerKgK: 1470, conductivityWPerMK: 0.036 };
  const steel = { thicknessM: 0.001, densityKgM3: 7800, heatCapacityJPerKgK: 450, conductivityWPerMK: 50 };
  test('what is stored: the lining, half the insulation, nothing behind', () => {
    expect(warmedCapacity([ply, foam, steel])).toBeCloseTo(4800 + 1470, 9);
    expect(warmedCapacity([steel])).toBeCloseTo(3510 / 2, 9);
    expect(warmedCapacity([])).toBe(0);
    expect(airCapacity(10)).toBe(12_000);
  });
  test('impossible input', () => {
    expect(() => warmUpS({ ...room, capacityJPerK: 0 })).toThrow(RangeError);
    expect(() => warmedCapacity([{ ...ply, densityKgM3: -1 }])).toThrow(RangeError);
  });
});

describe('fuel', () => {
  test('electric: joules for joules', () => {
    expect(fuelFor({ meanHeatW: 1000, durationS: 86_400, efficiency: 1, heatingValueJPerUnit: 1 })).toBe(
      86_400_000,
    );
  });
  test('a day of two parts', () => {
    expect(
      meanHeat([
        { durationS: 57_600, meanHeatW: 900 },
        { durationS: 28_800, meanHeatW: 300 },
      ]),
    ).toBe(700);
    expect(() => meanHeat([])).toThrow(RangeError);
    expect(() => fuelFor({ meanHeatW: 1, durationS: 1, efficiency: 0, heatingValueJPerUnit: 1 })).toThrow(
      RangeError,
    );
  });
  test('rows', () => {
    expect(ductPracticeFor(2000)?.leastBoreM).toBe(0.06);
    expect(ductPracticeFor(2500)?.leastBoreM).toBe(0.06);
    expect(ductPracticeFor(9000)).toBeUndefined();
  });
});

describe('summer', () => {
  test('a dark roof of 900 W/m² at 30 °C', () => {
    expect(
      solAirC({ outsideC: 30, absorptance: 0.9, sunWM2: 900, outsideM2KPerW: 0.04, skyLossK: 3.9 }),
    ).toBeCloseTo(58.5, 9);
    expect(() =>
      solAirC({ outsideC: 30, absorptance: 1.1, sunWM2: 900, outsideM2KPerW: 0.04, skyLossK: 0 }),
    ).toThrow(RangeError);
  });
  test('gains, the heat they make, and the air against it', () => {
    const gainsW = solarGainW({
      outsideC: 30,
      panes: [{ areaM2: 0.5, solarShare: 0.75, sunWM2: 500 }],
      skins: [{ areaM2: 6, uValue: 1, solAirC: 58.5 }],
    });
    expect(gainsW).toBeCloseTo(187.5 + 171, 9);
    const shut = overheatedC({ outsideC: 30, gainsW, transmissionWPerK: 25, airM3PerS: 0 });
    expect(shut).toBeCloseTo(30 + 358.5 / 25, 9);
    const airM3PerS = coolingAirM3PerS({ gainsW, transmissionWPerK: 25, riseK: 5 });
    expect(overheatedC({ outsideC: 30, gainsW, transmissionWPerK: 25, airM3PerS })).toBeCloseTo(35, 9);
    expect(coolingAirM3PerS({ gainsW: 10, transmissionWPerK: 25, riseK: 5 })).toBe(0);
  });
  test('impossible input', () => {
    expect(() =>
      solarGainW({ outsideC: 30, panes: [{ areaM2: 1, solarShare: 2, sunWM2: 1 }], skins: [] }),
    ).toThrow(RangeError);
    expect(() => overheatedC({ outsideC: 30, gainsW: 1, transmissionWPerK: 0, airM3PerS: 0 })).toThrow(
      RangeError,
    );
    expect(() => coolingAirM3PerS({ gainsW: 1, transmissionWPerK: 0, riseK: 0 })).toThrow(RangeError);
  });
});

describe('a year between extremes', () => {
  test('January coldest, July warmest', () => {
    const year = yearBetween(-10, 32, 10);
    expect(year).toHaveLength(12);
    expect(year[0]).toBeCloseTo(0, 9);
    expect(year[6]).toBeCloseTo(22, 9);
    expect(year[3]).toBeCloseTo(11, 9);
  });
  test('extremes too near each other are one mean', () => {
    expect(yearBetween(10, 20, 10).every((one) => one === 15)).toBe(true);
    expect(() => yearBetween(20, 10, 5)).toThrow(RangeError);
  });
  test('humidity along it', () => {
    const year = alongYear(0.9, 0.75);
    expect(year[0]).toBeCloseTo(0.9, 12);
    expect(year[6]).toBeCloseTo(0.75, 12);
  });
});
