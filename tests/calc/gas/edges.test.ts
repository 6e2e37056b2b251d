import { describe, expect, test } from 'vitest';
import { antoinePressurePa } from '../../../src/calc/gas/antoine.ts';
import { escapeToFlammableKg, vapourKgM3 } from '../../../src/calc/gas/combustion.ts';
import { gasForInput, mixedHeatingValue, vapourFlow } from '../../../src/calc/gas/input-rate.ts';
import { coldShare, lyingTankW } from '../../../src/calc/gas/off-take.ts';
import {
  boilingPointC,
  mixturePressurePa,
  propaneMoleShare,
  saturationPressurePa,
} from '../../../src/calc/gas/saturation.ts';
import {
  dailyGasKg,
  daysOfGas,
  gasWhenFilled,
  shareWhenWarm,
  storedEnergyJ,
} from '../../../src/calc/gas/stored.ts';

describe('saturation', () => {
  test('holds from −60 to 60 °C, the ends included', () => {
    expect(saturationPressurePa('propane', -60)).toBeGreaterThan(0);
    expect(saturationPressurePa('butane', 60)).toBeGreaterThan(0);
    for (const at of [-60.01, 60.01, Number.NaN, Infinity])
      expect(() => saturationPressurePa('propane', at)).toThrow(RangeError);
  });

  test('the boiling point brings the pressure back, and only within the range', () => {
    for (const at of [-60, -30, 0, 25, 60])
      expect(boilingPointC('propane', saturationPressurePa('propane', at))).toBeCloseTo(at, 5);
    for (const pa of [0, -1, 1, 1e8, Number.NaN])
      expect(() => boilingPointC('butane', pa)).toThrow(RangeError);
  });

  test('a mixture of nothing but one gas is that gas', () => {
    expect(mixturePressurePa(1, 10)).toBe(saturationPressurePa('propane', 10));
    expect(mixturePressurePa(0, 10)).toBe(saturationPressurePa('butane', 10));
    for (const share of [-0.1, 1.1, Number.NaN]) {
      expect(() => mixturePressurePa(share, 10)).toThrow(RangeError);
      expect(() => propaneMoleShare(share)).toThrow(RangeError);
    }
  });

  test('half the mass is 57 % of the molecules', () => {
    // (1 / 44.096) / (1 / 44.096 + 1 / 58.122) = 0.5686.
    expect(propaneMoleShare(0.5)).toBeCloseTo(0.5686, 4);
  });

  test('the Antoine fits end where their ranges end', () => {
    expect(() => antoinePressurePa('butane', -0.6)).toThrow(RangeError);
    expect(() => antoinePressurePa('propane', 48)).toThrow(RangeError);
    expect(() => antoinePressurePa('propane', Number.NaN)).toThrow(RangeError);
  });
});

describe('burning', () => {
  test('a third of a kilogram makes 10 m³ flammable throughout', () => {
    // 0.017 · 10 m³ · 1.85 kg/m³ = 0.3145 kg.
    expect(escapeToFlammableKg({ lowerLimit: 0.017, spaceM3: 10, vapourKgM3: 1.85 })).toBeCloseTo(0.3145, 10);
    expect(() => escapeToFlammableKg({ lowerLimit: 1.7, spaceM3: 10, vapourKgM3: 1.85 })).toThrow(RangeError);
    expect(() => escapeToFlammableKg({ lowerLimit: 0.017, spaceM3: -1, vapourKgM3: 1.85 })).toThrow(
      RangeError,
    );
  });

  test('no vapour at absolute zero or in a vacuum', () => {
    expect(() => vapourKgM3('propane', -273.15)).toThrow(RangeError);
    expect(() => vapourKgM3('propane', 15, 0)).toThrow(RangeError);
  });
});

describe('input', () => {
  test('nothing burns nothing, and a heating value of 0 is refused', () => {
    expect(gasForInput(0, 46e6)).toBe(0);
    expect(vapourFlow(0, 0.54)).toBe(0);
    expect(() => gasForInput(-1, 46e6)).toThrow(RangeError);
    expect(() => gasForInput(1, 0)).toThrow(RangeError);
  });

  test('a mixture lies between', () => {
    expect(mixedHeatingValue(1, 50, 40)).toBe(50);
    expect(mixedHeatingValue(0.25, 50, 40)).toBe(42.5);
    expect(() => mixedHeatingValue(1.5, 50, 40)).toThrow(RangeError);
  });
});

describe('stored gas', () => {
  test('11 kg: 141 kWh net', () => {
    // 11 · 46.1 / 3.6.
    expect(storedEnergyJ(11, 46.1e6) / 3.6e6).toBeCloseTo(140.86, 2);
  });

  test('days: 45 minutes of a hob at 200 g/h and 3 kWh of heat a day', () => {
    const hob = dailyGasKg({ gasKgPerS: 0.2 / 3600, secondsPerDay: 2700 });
    expect(hob).toBeCloseTo(0.15, 12);
    // 3 · 3.6 / (0.9 · 46.1) = 0.2603 kg.
    const heat = dailyGasKg({ heatJPerDay: 10.8e6, efficiency: 0.9, heatingValueJPerKg: 46.1e6 });
    expect(heat).toBeCloseTo(0.2603, 4);
    expect(daysOfGas(11, [hob, heat])).toBeCloseTo(11 / (hob + heat), 10);
  });

  test('a share of the input counts', () => {
    expect(dailyGasKg({ gasKgPerS: 1e-4, secondsPerDay: 1000, shareOfInput: 0.4 })).toBeCloseTo(0.04, 12);
  });

  test('what burns nothing lasts for ever, an empty tank not at all', () => {
    expect(daysOfGas(5, [])).toBe(Infinity);
    expect(daysOfGas(5, [0, 0])).toBe(Infinity);
    expect(daysOfGas(0, [1])).toBe(0);
    expect(() => daysOfGas(5, [-1])).toThrow(RangeError);
    expect(() => daysOfGas(-5, [])).toThrow(RangeError);
  });

  test('a day has 24 hours and a heater no miracle', () => {
    expect(dailyGasKg({ gasKgPerS: 1e-5, secondsPerDay: 86_400 })).toBeCloseTo(0.864, 12);
    expect(() => dailyGasKg({ gasKgPerS: 1e-5, secondsPerDay: 86_401 })).toThrow(RangeError);
    expect(() => dailyGasKg({ gasKgPerS: 1e-5, secondsPerDay: 1, shareOfInput: 1.1 })).toThrow(RangeError);
    expect(() => dailyGasKg({ heatJPerDay: 1, efficiency: 1.2, heatingValueJPerKg: 46e6 })).toThrow(
      RangeError,
    );
    expect(() => dailyGasKg({ heatJPerDay: 1, efficiency: 0, heatingValueJPerKg: 46e6 })).toThrow(RangeError);
  });

  test('a filling is above 0 and at most all', () => {
    expect(gasWhenFilled(0.04, 1, 500)).toBe(20);
    for (const share of [0, -0.1, 1.01, Number.NaN]) {
      expect(() => gasWhenFilled(0.04, share, 500)).toThrow(RangeError);
      expect(() => shareWhenWarm(share, 500, 450)).toThrow(RangeError);
    }
  });
});

describe('off-take', () => {
  const cold = (ambientC: number, leastInletPa = 0, gas: 'propane' | 'butane' = 'butane') =>
    coldShare({ gas, ambientC, tableAmbientC: 15, leastInletPa });

  test('all at the ambient of the table, nothing at and below the boiling point, half between', () => {
    const boils = boilingPointC('butane', 101_325);
    expect(cold(15)).toBe(1);
    expect(cold(30)).toBe(1);
    expect(cold(boils)).toBe(0);
    expect(cold(-10)).toBe(0);
    expect(cold((15 + boils) / 2)).toBeCloseTo(0.5, 12);
  });

  test('butane starves a regulator before it boils no more, propane does not mind the frost', () => {
    expect(cold(2)).toBeGreaterThan(0);
    expect(cold(2, 30_000)).toBe(0);
    expect(cold(-10, 30_000, 'propane')).toBeGreaterThan(0.5);
  });

  test('a table for an ambient below the boiling point is refused', () => {
    expect(() => coldShare({ gas: 'butane', ambientC: 10, tableAmbientC: -5, leastInletPa: 0 })).toThrow(
      RangeError,
    );
    expect(() => cold(Number.NaN)).toThrow(RangeError);
    expect(() => cold(10, -1)).toThrow(RangeError);
    expect(() => lyingTankW(0, 1, 60)).toThrow(RangeError);
  });
});
