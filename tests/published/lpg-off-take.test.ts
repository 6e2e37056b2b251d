// How much vapour cylinders and tanks give, and why large ones must not be scaled to small ones.
import { describe, expect, test } from 'vitest';
import { inputOfGas } from '../../src/calc/gas/input-rate.ts';
import { fromBtuPerHour, lyingTankW } from '../../src/calc/gas/off-take.ts';
import {
  cylinderOffTake,
  germanCylinders,
  germanDrum,
  hundredPoundAmbientsC,
  hundredPoundRows,
  hundredPoundW,
  lyingTankAir,
  lyingTankFactors,
  lyingTankOffTake,
  offTakeDuties,
  southAfricanNeeds,
} from '../../src/catalogue/gas/off-take.ts';
import { gasProperties } from '../../src/catalogue/gas/properties.ts';
import {
  germanOffTake,
  hundredPoundTable,
  lyingTankGuide,
  southAfricanContainers,
} from '../../src/catalogue/gas/sources.ts';
import { exactly, expectPublished } from './agreement.ts';

const fahrenheit = (degrees: number): number => ((degrees - 32) * 5) / 9;

describe('German cylinders', () => {
  test.each([
    [5, 0.2, 0.5, 1],
    [11, 0.3, 0.8, 1.5],
    [33, 0.6, 1.8, 3],
  ])('%d kg: %d, %d and %d kg/h', (holdsKg, ...kgPerHour) => {
    for (const [index, duty] of offTakeDuties.entries())
      expectPublished(
        cylinderOffTake({ gas: 'propane', holdsKg, duty, ambientC: 20 }).kgPerS * 3600,
        exactly(kgPerHour[index] ?? Number.NaN),
        germanOffTake,
      );
  });

  test('0.3 kg/h from 11 kg is 3.9 kW net', () => {
    expectPublished(
      inputOfGas(0.3 / 3600, gasProperties.propane.netJPerKg) / 1000,
      { value: 3.9, within: 0.1, because: 'two printed digits, net value 0.5 % below that of the source' },
      germanOffTake,
    );
  });

  test('a size between two takes the smaller, below the smallest in proportion', () => {
    const of = (holdsKg: number) =>
      cylinderOffTake({ gas: 'propane', holdsKg, duty: 'uninterrupted', ambientC: 20 });
    expect(of(13).kgPerS).toBe(of(11).kgPerS);
    expect(of(10).rowKg).toBe(5);
    expect(of(6).kgPerS).toBe(of(5).kgPerS);
    expect(of(2.5).kgPerS).toBeCloseTo(of(5).kgPerS / 2, 15);
    // The drum of 300 kg never serves a cylinder.
    expect(of(300).rowKg).toBe(33);
    expect(germanDrum.kgPerHour.uninterrupted).toBe(3);
  });
});

describe('the cylinder of 100 lb', () => {
  test('its columns are −18, −7, 4, 16 and 21 °C', () => {
    for (const [index, printed] of [-18, -7, 4, 16, 21].entries())
      expectPublished(
        hundredPoundAmbientsC[index] ?? Number.NaN,
        { value: printed, within: 0.5, because: 'whole degrees' },
        hundredPoundTable,
      );
  });

  test.each([
    [1, 0, 33.1],
    [1, 70, 87.9],
    [0.5, 20, 27.5],
    [0.3, 40, 24.9],
    [0.1, 0, 8.2],
  ])('full to %d at %d °F: %d kW', (share, degrees, kilowatts) => {
    expectPublished(
      (hundredPoundW(share, fahrenheit(degrees)) ?? Number.NaN) / 1000,
      { value: kilowatts, within: 0.05, because: 'half the last place of the conversion' },
      hundredPoundTable,
    );
  });

  test('113 000 Btu/h are 2.38 kg/h at 13.9 kWh/kg', () => {
    expectPublished(
      (fromBtuPerHour(113_000) / (13.9 * 3.6e6)) * 3600,
      { value: 2.38, within: 0.005, because: 'half the last place' },
      hundredPoundTable,
    );
  });

  test('more contents and warmer air never give less', () => {
    for (const [index, [, row]] of hundredPoundRows.entries()) {
      expect(row).toEqual(row.toSorted((a, b) => a - b));
      const emptier = hundredPoundRows[index + 1]?.[1];
      for (const [column, value] of row.entries()) expect(value).toBeGreaterThan(emptier?.[column] ?? 0);
    }
  });

  test('nothing is read outside it', () => {
    expect(hundredPoundW(1, -18.5)).toBeUndefined();
    expect(hundredPoundW(0.05, 20)).toBeUndefined();
  });

  test('scaled by the wall to 11 kg, even its coldest column is three times what the German table allows', () => {
    const kgPerHour = (fromBtuPerHour(113_000) / gasProperties.propane.grossJPerKg) * 3600;
    const scaled = kgPerHour * (11 / 45.36) ** (2 / 3);
    const german =
      germanCylinders.find(({ holdsKg }) => holdsKg === 11)?.kgPerHour.uninterrupted ?? Number.NaN;
    expect(scaled / german).toBeGreaterThan(3);
  });
});

describe('lying tanks', () => {
  // 24 in across, 60 in long, half full: 24 · 60 · 90 = 129 600 Btu/h.
  test('diameter × length × factor, in inches and Btu/h', () => {
    expectPublished(
      lyingTankW(24 * 0.0254, 60 * 0.0254, 90),
      { value: 129_600 * 0.293071, within: 0.01, because: 'the formula itself' },
      lyingTankGuide,
    );
  });

  test.each([
    [0.6, 100],
    [0.5, 90],
    [0.4, 80],
    [0.3, 70],
    [0.2, 60],
    [0.1, 45],
  ])('factor at %d full: %d', (fullShare, factor) => {
    const tank = { diameterM: 0.0254, lengthM: 0.0254, fullShare, ambientC: 0, grossJPerKg: 0.293071 };
    expectPublished(
      lyingTankOffTake({ gas: 'propane', ...tank })?.kgPerS ?? Number.NaN,
      exactly(factor),
      lyingTankGuide,
    );
  });

  test('between two fillings the lower counts, below a tenth nothing, above 0.6 the last', () => {
    const at = (fullShare: number, ambientC = -10) =>
      lyingTankOffTake({
        gas: 'propane',
        diameterM: 0.25,
        lengthM: 0.8,
        fullShare,
        ambientC,
        grossJPerKg: 50e6,
      })?.kgPerS ?? Number.NaN;
    expect(at(0.29)).toBe(at(0.2));
    expect(at(0.09)).toBe(0);
    expect(at(0.8)).toBe(at(0.6));
    expect(at(0.5, 30)).toBe(at(0.5, lyingTankAir.ambientC));
    expect(at(0.5, lyingTankAir.liquidC)).toBe(0);
    expect(lyingTankFactors.map(({ factor }) => factor)).toEqual([45, 60, 70, 80, 90, 100]);
    expect(
      lyingTankOffTake({
        gas: 'butane',
        diameterM: 0.25,
        lengthM: 0.8,
        fullShare: 0.5,
        ambientC: 20,
        grossJPerKg: 50e6,
      }),
    ).toBeUndefined();
  });
});

describe('South African containers', () => {
  test('an instant heater for one tap, 37 000 kJ/h, needs two of 9 kg: 5.1 kW from each', () => {
    const row = southAfricanNeeds.find(({ appliance }) => appliance === 'instant water heater for one tap');
    expectPublished(
      (row?.inputW ?? Number.NaN) / (row?.of9Kg ?? Number.NaN) / 1000,
      { value: 5.14, within: 0.005, because: 'half the last place' },
      southAfricanContainers,
    );
  });

  test('cold winter: a heater gets no more from 9 kg than the German table grants 11 kg in bursts', () => {
    for (const { inputW, of9Kg } of southAfricanNeeds) {
      const kgPerHour = (inputW / of9Kg / gasProperties.propane.grossJPerKg) * 3600;
      expect(kgPerHour).toBeLessThan(1.5);
      expect(kgPerHour).toBeGreaterThan(0.2);
    }
  });

  test('a larger cylinder never serves less', () => {
    for (const { of9Kg, of19Kg, of48Kg } of southAfricanNeeds) {
      expect(of9Kg).toBeGreaterThan(of19Kg);
      expect(of19Kg).toBeGreaterThan(of48Kg);
    }
  });
});
