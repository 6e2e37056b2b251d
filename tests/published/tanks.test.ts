// Volumes and loads of tanks, and days between fillings.
import { describe, expect, test } from 'vitest';
import { dailyWater, tankDays } from '../../src/calc/water/supply.ts';
import {
  boxOverArchVolumeM3,
  boxVolumeM3,
  cylinderVolumeM3,
  freeSurfaceM4,
  lyingCylinderVolumeM3,
  strapForceN,
  wallLoad,
} from '../../src/calc/water/tank.ts';
import { ventDiameterM, ventPressurePa } from '../../src/calc/water/vent.ts';
import { waterLimits } from '../../src/catalogue/water/limits.ts';
import {
  damExample,
  emergencyNeed,
  freeSurfaceTest,
  householdUse,
  partFilledTanks,
  strapExample,
  tankHygiene,
  tankShapes,
} from '../../src/catalogue/water/sources.ts';
import { emergencyNeeds, householdUses } from '../../src/catalogue/water/use.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

describe('volume', () => {
  test('box, cylinder, part of a lying cylinder, box over a wheel arch', () => {
    expectPublished(boxVolumeM3(0.6, 0.4, 0.3) * 1000, exactly(72), tankShapes);
    expectPublished(cylinderVolumeM3(0.15, 0.8) * 1000, printed(56.55, 0.01), tankShapes);
    expectPublished(lyingCylinderVolumeM3(0.15, 0.8, 0.075) * 1000, printed(11.055, 0.001), tankShapes);
    expectPublished(boxOverArchVolumeM3(0.9, 0.3, 0.4, 0.35) * 1000, printed(50.27, 0.01), tankShapes);
  });

  test('a lying cylinder empty, half and full', () => {
    expect(lyingCylinderVolumeM3(0.15, 0.8, 0)).toBeCloseTo(0, 12);
    expect(lyingCylinderVolumeM3(0.15, 0.8, 0.15)).toBeCloseTo(cylinderVolumeM3(0.15, 0.8) / 2, 12);
    expect(lyingCylinderVolumeM3(0.15, 0.8, 0.3)).toBeCloseTo(cylinderVolumeM3(0.15, 0.8), 12);
  });
});

describe('load', () => {
  test('a dam of 500 by 80 m: 392 kPa in the mean, 1.568e10 N', () => {
    const { meanPa, forceN, actsAboveBottomM, deepestPa } = wallLoad(500, 80);
    const because = 'the book takes 9.8 m/s²';
    expectPublished(meanPa, { value: 392_000, within: 0.0008 * 392_000, because }, damExample);
    expectPublished(forceN, { value: 1.568e10, within: 0.0008 * 1.568e10, because }, damExample);
    expect(actsAboveBottomM).toBeCloseTo(80 / 3, 12);
    expect(deepestPa).toBeCloseTo(2 * meanPa, 6);
  });

  test('80 kg at 0.8 g: 628 N, half of it on each of two straps', () => {
    expectPublished(strapForceN(80, 0.8, 1), printed(628, 1), strapExample);
    expectPublished(strapForceN(80, 0.8, 2), printed(314, 1), strapExample);
    expect(strapForceN(80, 0.8, 1, 0.25)).toBeCloseTo(strapForceN(80, 0.8, 1) * 2, 9);
  });

  test('free surface of 5 by 5 m: 52.083 m⁴', () => {
    expectPublished(freeSurfaceM4(5, 5), printed(52.083, 0.001), freeSurfaceTest);
  });

  test('part filled from 20 to 80 %', () => {
    expectPublished(waterLimits['part-fill-from'].value, exactly(0.2), partFilledTanks);
    expectPublished(waterLimits['part-fill-to'].value, exactly(0.8), partFilledTanks);
  });
});

describe('use', () => {
  test('the parts of the need in emergencies add up', () => {
    const parts = [emergencyNeeds['drinking and food'], emergencyNeeds.hygiene, emergencyNeeds.cooking];
    const sum = (of: (part: (typeof parts)[number]) => number) =>
      parts.map(of).reduce((total, value) => total + value, 0);
    expectPublished(
      sum(({ leastL }) => leastL),
      exactly(7.5),
      emergencyNeed,
    );
    expectPublished(
      sum(({ mostL }) => mostL),
      exactly(15),
      emergencyNeed,
    );
    expect(emergencyNeeds.total).toMatchObject({ leastL: 7.5, mostL: 15 });
  });

  test('90 l for two at 15 l: 2.85 days', () => {
    const { freshM3 } = dailyWater(2, [{ m3PerPersonDay: 0.015, drainedShare: 0.8 }]);
    expectPublished(tankDays(0.09, 0.95, freshM3), exactly(2.85), tankShapes);
  });

  test('a US house', () => {
    expectPublished(11.6 * 3.785411784, printed(householdUses.showersL, 0.1), householdUse);
    expectPublished(10.9 * 3.785411784, printed(householdUses.tapsL, 0.1), householdUse);
  });
});

describe('vent', () => {
  test('25 l/min through 10 mm needs little pressure, through 5 mm too much', () => {
    const flow = 25 / 60_000;
    expect(ventPressurePa(flow, waterLimits['vent-bore'].value)).toBeLessThan(
      waterLimits['vent-pressure'].value,
    );
    expect(ventPressurePa(flow, 0.005)).toBeGreaterThan(waterLimits['vent-pressure'].value);
    expectPublished(
      waterLimits['vent-bore'].value,
      { value: 0.01, within: 0, because: 'the row itself' },
      tankHygiene,
    );
    expect(ventPressurePa(flow, ventDiameterM(flow, 500))).toBeCloseTo(500, 9);
  });
});
