// Saturation, dew point, humidity and the standard atmosphere, against tables and against an open library.
import psychrolib from 'psychrolib';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  airDensityKgM3,
  humidityRatio,
  pressureAtAltitudePa,
  seaLevelPa,
  temperatureAtAltitudeC,
  vapourDensityKgM3,
  vapourPressureOfRatioPa,
} from '../../src/calc/air/moist-air.ts';
import { vapourPressurePa } from '../../src/calc/air/moisture.ts';
import { roomAirKgM3 } from '../../src/calc/air/orifice.ts';
import {
  dewPointC,
  magnusConstants,
  magnusDewPointC,
  magnusPressurePa,
  relativeHumidityOf,
  saturationPressurePa,
} from '../../src/calc/air/saturation.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { expectPublished } from './agreement.ts';

const handbook: Citation = {
  title: 'ASHRAE Fundamentals 2017, chapter 1, tables 1 and 3, as an open library’s tests quote them',
  readAt: 'https://github.com/psychrometrics/psychrolib (tests/test_psychrolib_si.py)',
  provenance: 'read',
};

describe('tables of the handbook', () => {
  test.each([
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [100, 101418],
  ])('saturation at %d °C: %d Pa', (temperatureC, pressurePa) => {
    expectPublished(
      saturationPressurePa(temperatureC),
      { value: pressurePa, within: 0.0003 * pressurePa, because: 'what the library’s own tests grant' },
      handbook,
    );
  });

  test.each([
    [-500, 107_478, 18.2],
    [0, 101_325, 15],
    [500, 95_461, 11.8],
    [1000, 89_875, 8.5],
    [4000, 61_640, -11],
  ])('%d m: %d Pa and %d °C', (altitudeM, pressurePa, temperatureC) => {
    expectPublished(
      pressureAtAltitudePa(altitudeM),
      { value: pressurePa, within: 1, because: 'printed to whole pascals, from more digits' },
      handbook,
    );
    expectPublished(
      temperatureAtAltitudeC(altitudeM),
      { value: temperatureC, within: 0.051, because: 'half a unit in the last printed place, halves cut' },
      handbook,
    );
  });
});

describe('short formulas', () => {
  const page: Citation = {
    title:
      'Pages on the formula of Magnus, and a program of the Spanish code with the constants of ISO 13788',
    readAt: 'https://ing-moehn.de/die-magnus-formel/',
    provenance: 'read',
  };
  const last = (value: number) => ({ value, within: 0.005, because: 'half a unit in the last place' });

  test.each([
    [0, 611.2, 610.5],
    [5, 871.74, 871.86],
    [10, 1226.03, 1227.31],
    [15, 1701.67, 1704.41],
    [20, 2332.6, 2336.95],
    [25, 3160.06, 3165.92],
  ])('%d °C: %d Pa by Magnus, %d Pa by ISO 13788', (temperatureC, magnus, iso) => {
    expectPublished(magnusPressurePa(temperatureC), last(magnus), page);
    expectPublished(magnusPressurePa(temperatureC, magnusConstants.iso13788Water), last(iso), page);
    // They part from the full formula by 0.4 % at most here.
    expect(Math.abs(magnus / saturationPressurePa(temperatureC) - 1)).toBeLessThan(0.004);
  });

  test('over ice at −20 °C: 103.26 Pa, as the library has it', () => {
    expectPublished(
      magnusPressurePa(-20, magnusConstants.ice),
      { value: 103.26, within: 0.01, because: 'one unit in the last place' },
      page,
    );
  });

  test('the formula as one page prints it, without exp, is no pressure of air', () => {
    expect(611.2 * ((17.62 * 20) / (243.12 + 20))).toBeLessThan(0.5 * magnusPressurePa(20));
  });
});

describe('table of dew points and of water in the air', () => {
  const table: Citation = {
    title: 'Dew point table',
    readAt: 'https://ru.scribd.com/doc/39380596/Dew-Point-Table',
    provenance: 'read',
    caution: 'Its dew points are whole degrees, often cut off and in places half a degree further off.',
  };
  const rows: readonly (readonly [number, readonly number[], readonly number[]])[] = [
    [30, [-6, 3, 10, 14, 18, 21, 24, 26, 28, 30], [3.0, 6.1, 9.1, 12.1, 15.2, 18.2, 21.3, 24.3, 27.3, 30.4]],
    [25, [-8, 0, 5, 10, 13, 16, 19, 21, 23, 25], [2.3, 4.6, 6.9, 9.2, 11.5, 13.8, 16.1, 18.4, 20.7, 23.0]],
    [15, [-16, -7, -3, 1, 4, 7, 9, 11, 13, 15], [1.3, 2.6, 3.9, 5.1, 6.4, 7.7, 9.0, 10.3, 11.5, 12.8]],
    [10, [-19, -11, -7, -3, 0, 1, 4, 6, 8, 10], [0.9, 1.9, 2.8, 3.8, 4.7, 5.6, 6.6, 7.5, 8.5, 9.4]],
    [0, [-26, -19, -14, -11, -8, -6, -4, -3, -2, 0], [0.5, 1.0, 1.5, 1.9, 2.4, 2.9, 3.4, 3.9, 4.4, 4.8]],
  ];

  test.each(rows)('%d °C', (temperatureC, dewPoints, grams) => {
    grams.forEach((gramsM3, index) => {
      const humidity = (index + 1) / 10;
      const pressurePa = vapourPressurePa(temperatureC, humidity);
      expectPublished(
        1000 * vapourDensityKgM3(pressurePa, temperatureC),
        { value: gramsM3, within: 0.06, because: 'one decimal, with a rounded saturation behind it' },
        table,
      );
      const printed = dewPoints[index] ?? Number.NaN;
      expectPublished(
        dewPointC(pressurePa),
        { value: printed, within: 1.65, because: 'whole degrees, cut off' },
        table,
      );
      expect(dewPointC(pressurePa)).toBeGreaterThan(printed - 0.35);
    });
  });
});

test('air of 20 °C and 50 %: 1.1989 kg/m³', () => {
  expectPublished(
    airDensityKgM3(20, vapourPressurePa(20, 0.5)),
    { value: roomAirKgM3, within: 0.0003, because: 'the molar masses have other last digits' },
    { title: 'Orifice formula in an open repository', provenance: 'read' },
  );
});

describe('an open library of psychrometrics over a grid', () => {
  beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

  const temperatures = Array.from({ length: 31 }, (_, step) => -20 + 2 * step);
  const humidities = Array.from({ length: 17 }, (_, step) => 0.2 + 0.05 * step).map((share) =>
    Math.min(1, share),
  );

  test.each(temperatures)('%d °C', (temperatureC) => {
    const library: Citation = { title: 'psychrolib, the same formulas coded by others', provenance: 'read' };
    expectPublished(
      saturationPressurePa(temperatureC),
      {
        value: psychrolib.GetSatVapPres(temperatureC),
        within: 1e-9 * psychrolib.GetSatVapPres(temperatureC),
        because: 'the same formula; rounding only',
      },
      library,
    );
    for (const humidity of humidities) {
      const pressurePa = vapourPressurePa(temperatureC, humidity);
      const dewC = psychrolib.GetTDewPointFromRelHum(temperatureC, humidity);
      expectPublished(
        dewPointC(pressurePa),
        { value: dewC, within: 0.002, because: 'the library stops searching at 0.001 K' },
        library,
      );
      expectPublished(
        magnusDewPointC(temperatureC, humidity),
        // Over water; frost points lie up to 3 K above it.
        { value: dewC, within: dewC < 0 ? 3.2 : 0.06, because: 'the short formula, over water' },
        library,
      );
      expectPublished(
        relativeHumidityOf(saturationPressurePa(dewC), temperatureC),
        {
          value: psychrolib.GetRelHumFromTDewPoint(temperatureC, dewC),
          within: 1e-9,
          because: 'the same formula; rounding only',
        },
        library,
      );
      for (const barometerPa of [seaLevelPa, pressureAtAltitudePa(2000)]) {
        const ratio = psychrolib.GetHumRatioFromVapPres(pressurePa, barometerPa);
        expectPublished(
          humidityRatio(pressurePa, barometerPa),
          { value: ratio, within: 1e-9, because: 'the library has a floor of 1e-7 kg/kg, not reached' },
          library,
        );
        expectPublished(
          vapourPressureOfRatioPa(ratio, barometerPa),
          { value: pressurePa, within: 1e-6 * pressurePa, because: 'the same formula; rounding only' },
          library,
        );
        const density = psychrolib.GetMoistAirDensity(temperatureC, ratio, barometerPa);
        expectPublished(
          airDensityKgM3(temperatureC, pressurePa, barometerPa),
          { value: density, within: 1e-4 * density, because: 'the library rounds 1.607858 in its volume' },
          library,
        );
      }
    }
  });

  test.each([-500, 0, 300, 1000, 2500, 5000])('%d m', (altitudeM) => {
    const value = psychrolib.GetStandardAtmPressure(altitudeM);
    expect(Math.abs(pressureAtAltitudePa(altitudeM) - value)).toBeLessThan(1e-6 * value);
    expect(temperatureAtAltitudeC(altitudeM)).toBeCloseTo(psychrolib.GetStandardAtmTemperature(altitudeM), 9);
  });
});
