// The conductor table against the definition of copper, printed temperature factors and printed drops per metre.
import { describe, expect, test } from 'vitest';
import {
  copperTemperatureFactor,
  equivalentCopperMm2,
  idealResistancePerM,
  loopResistance,
} from '../../src/calc/electrical/resistance.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  annealedCopper,
  conductorStandard,
  conductorTemperatureTable,
  ukFlexibleCords,
  ukHeavyFlexible90,
} from '../../src/catalogue/electrical/conductor-sources.ts';
import {
  automotiveCables,
  automotiveCitation,
  automotiveStrandDiameterMm,
  type ConductorBuild,
  type ConductorFinish,
  conductorFor,
} from '../../src/catalogue/electrical/conductors.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

const ohmPerM20 = (size: number, build: ConductorBuild, finish: ConductorFinish): number => {
  const row = conductorFor('mm²', `${size}`, build, finish);
  expect(row?.resistanceAtC).toBe(20);
  return row?.resistanceOhmPerM ?? Number.NaN;
};

/** mV per ampere and metre of route: out and back, warm. */
const millivolts = (size: number, build: ConductorBuild, finish: ConductorFinish, atC: number): number =>
  1000 * loopResistance(1, ohmPerM20(size, build, finish) * copperTemperatureFactor(atC));

describe('copper', () => {
  test('0.15328 Ω·g/m² over 8.89 g/cm³ is 1/58 Ω·mm²/m', () => {
    const within = 0.000005;
    const because = 'the mass resistivity and the density are rounded';
    expectPublished(idealResistancePerM(1), { value: 0.15328 / 8.89, within, because }, annealedCopper);
  });

  test('a flexible conductor has 10 to 16 % more than its nominal area would', () => {
    const ratios = [
      1.131, 1.131, 1.131, 1.1571, 1.1571, 1.1484, 1.1484, 1.1078, 1.1229, 1.131, 1.1246, 1.1194, 1.1043,
      1.1351, 1.1206,
    ];
    const sizes = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120];
    for (const [index, size] of sizes.entries())
      expectPublished(
        ohmPerM20(size, 'flexible', 'plain') / idealResistancePerM(size),
        { value: ratios[index] ?? 0, within: 0.0001, because: 'printed to four places, from ρ = 0.017241' },
        conductorStandard,
      );
  });

  test('flexible 1.5 mm² is 1.296 mm² of copper', () => {
    expectPublished(
      equivalentCopperMm2(ohmPerM20(1.5, 'flexible', 'plain')),
      printed(1.296, 0.001),
      conductorStandard,
    );
  });

  test('stranded and flexible cross at 50 mm²', () => {
    expect(ohmPerM20(50, 'flexible', 'plain')).toBeLessThan(ohmPerM20(50, 'stranded', 'plain'));
    expect(ohmPerM20(35, 'flexible', 'plain')).toBeGreaterThan(ohmPerM20(35, 'stranded', 'plain'));
  });
});

describe('temperature factors', () => {
  const column = [
    [5, 1.064],
    [10, 1.042],
    [15, 1.02],
    [20, 1],
    [25, 0.98],
    [30, 0.962],
    [35, 0.943],
    [40, 0.926],
    [45, 0.909],
    [50, 0.893],
    [55, 0.877],
    [60, 0.862],
    [65, 0.847],
    [70, 0.833],
    [75, 0.82],
    [80, 0.806],
    [85, 0.794],
    [90, 0.781],
    [95, 0.769],
    [100, 0.758],
  ] as const;

  test.each(column)('%d °C: %d, with the 0.004 per kelvin of that column', (atC, kt) => {
    expectPublished(1 / (1 + 0.004 * (atC - 20)), printed(kt, 0.001), conductorTemperatureTable);
  });

  test.each(column)('%d °C: %d, within 0.45 % with the 0.00393 of copper', (atC, kt) => {
    expectPublished(
      1 / copperTemperatureFactor(atC),
      { value: kt, within: 0.0045 * kt, because: 'the column rounds 0.00393 per kelvin to 0.004' },
      conductorTemperatureTable,
    );
  });

  test('at 90 °C the two coefficients can be told apart', () => {
    expect(1 / copperTemperatureFactor(90)).toBeGreaterThan(0.7835);
  });

  test('0.00393 per kelvin', () => {
    const value = 1 + 0.00393 * 50;
    expectPublished(
      copperTemperatureFactor(70),
      { value, within: 0.0001, because: '1/254.5 is 0.003929' },
      annealedCopper,
    );
  });

  test('from 75 °C by 0.00323 per kelvin, as the US code has it', () => {
    expectPublished(
      copperTemperatureFactor(20, 75),
      { value: 1 - 0.00323 * 55, within: 0.0003, because: 'the coefficient is rounded to three digits' },
      { title: 'US National Electrical Code, chapter 9, table 8, note', provenance: 'read' },
    );
  });
});

describe('heavy rubber flexible cable at 60 °C, mV/A/m: from the standard’s tinned flexible conductors alone', () => {
  const source: Citation = {
    title: 'BS 7671:2008, table 4F1B, in a cable maker’s handbook',
    readAt: 'https://www.scribd.com/document/331909248/CurrentRatings-pdf',
    provenance: 'read',
  };
  test.each([
    [4, 12, 1],
    [6, 7.8, 0.1],
    [16, 2.9, 0.1],
    [25, 1.8, 0.1],
    [35, 1.31, 0.01],
    [50, 0.91, 0.01],
    [70, 0.64, 0.01],
    [95, 0.49, 0.01],
    [120, 0.38, 0.01],
  ] as const)('%d mm²: %d', (size, value, lastPlace) => {
    expectPublished(millivolts(size, 'flexible', 'tinned', 60), printed(value, lastPlace), source);
  });

  test('10 mm²: 4.6', () => {
    const because = 'this one row is 2 % above what the standard gives (4.51)';
    expectPublished(millivolts(10, 'flexible', 'tinned', 60), { value: 4.6, within: 0.1, because }, source);
  });
});

describe('single-core 90 °C cable, mV/A/m: from stranded plain conductors', () => {
  const source: Citation = {
    title: 'BS 7671, table 4E1B, column 2, as reproduced by a distributor',
    provenance: 'read',
  };
  test.each([
    [1, 46, 1],
    [1.5, 31, 1],
    [2.5, 19, 1],
    [4, 12, 1],
    [6, 7.9, 0.1],
    [10, 4.7, 0.1],
    [16, 2.9, 0.1],
    [25, 1.85, 0.01],
    [50, 0.99, 0.01],
    [70, 0.68, 0.01],
    [95, 0.49, 0.01],
    [120, 0.39, 0.01],
    [150, 0.32, 0.01],
  ] as const)('%d mm²: %d', (size, value, lastPlace) => {
    expectPublished(millivolts(size, 'stranded', 'plain', 90), printed(value, lastPlace), source);
  });

  test('35 mm²: 1.35', () => {
    const because = 'both tables of the book have this row 1 % above what the standard gives (1.336)';
    expectPublished(millivolts(35, 'stranded', 'plain', 90), { value: 1.35, within: 0.015, because }, source);
  });

  test.each([
    [50, 0.98],
    [70, 0.67],
    [150, 0.31],
  ])('%d mm², two-core: %d', (size, value) => {
    expectPublished(
      millivolts(size, 'stranded', 'plain', 90),
      { value, within: 0.015, because: 'the two tables of the book differ by 0.01 in this row' },
      { title: 'BS 7671, table 4E4B, as reproduced by a distributor', provenance: 'read' },
    );
  });
});

describe('flexible 90 °C cable, mV/A/m', () => {
  const source: Citation = {
    ...ukHeavyFlexible90,
    title: 'BS 7671, table 4F2B, as reproduced by a distributor',
  };
  test.each([
    [4, 13.2],
    [6, 8.5],
    [10, 5.1],
    [16, 3.2],
    [25, 2.03],
    [35, 1.42],
    [50, 1.0],
    [70, 0.71],
    [95, 0.54],
    [120, 0.42],
    [150, 0.34],
  ])('%d mm²: %d', (size, value) => {
    const because = 'up to 2.6 % either way: this table does not follow the greatest resistances row by row';
    expectPublished(
      millivolts(size, 'flexible', 'tinned', 90),
      { value, within: 0.026 * value, because },
      source,
    );
  });

  test('the 1.80 of another copy for 25 mm² is a misprint', () => {
    expect(millivolts(25, 'flexible', 'tinned', 90) / 1.8).toBeGreaterThan(1.1);
  });
});

describe('flexible cords at 60 °C, mV/A/m', () => {
  test.each([
    [0.5, 93],
    [0.75, 62],
    [1, 46],
    [1.5, 32],
    [2.5, 19],
    [4, 12],
  ])('%d mm²: %d', (size, value) => {
    expectPublished(millivolts(size, 'flexible', 'tinned', 60), printed(value, 1), ukFlexibleCords);
  });

  test('it is built on tinned wire: plain would be 2.7 below at 0.5 mm²', () => {
    expect(93 - millivolts(0.5, 'flexible', 'plain', 60)).toBeGreaterThan(2.5);
  });

  test.each([
    [90, 1.09, 0.013, 'printed 1 % below either coefficient'],
    [150, 1.31, 0.005, 'half a unit in the last printed place'],
    [185, 1.43, 0.007, 'the printed factor uses 0.004 per kelvin'],
  ])('multiplier to %d °C: %d', (atC, value, within, because) => {
    expectPublished(copperTemperatureFactor(atC, 60), { value, within, because }, ukFlexibleCords);
  });
});

test.each([
  [1, 44],
  [1.5, 29],
  [2.5, 18],
  [4, 11],
  [6, 7.3],
  [10, 4.4],
  [16, 2.8],
  [25, 1.75],
])('single-core 70 °C cable, %d mm²: %d mV/A/m', (size, value) => {
  expectPublished(
    millivolts(size, 'stranded', 'plain', 70),
    { value, within: 0.02 * value, because: 'two digits, remembered; the largest rounding is 2 %' },
    { title: 'BS 7671, table 4D1B', provenance: 'memory' },
  );
});

test.each(automotiveCables.map((cable) => [cable.strands, cable] as const))(
  'automotive cable of %d strands: area from its strands, resistance from that area',
  (strands, cable) => {
    const copperMm2 = (strands * Math.PI * automotiveStrandDiameterMm ** 2) / 4;
    expectPublished(
      copperMm2,
      { value: cable.areaMm2, within: 0.04 * cable.areaMm2, because: 'sold by a rounded area' },
      automotiveCitation,
    );
    expectPublished(
      idealResistancePerM(copperMm2),
      {
        value: cable.resistanceOhmPerM,
        within: 0.09 * cable.resistanceOhmPerM,
        because: 'strands are twisted and the table rounds to 0.1 mΩ/m',
      },
      automotiveCitation,
    );
  },
);

test.each([
  [9, 0.845],
  [14, 0.827],
  [28, 0.823],
  [44, 0.765],
])('automotive cable of %d strands: %d V over 5 m of one conductor', (strands, dropV) => {
  const cable = automotiveCables.find((row) => row.strands === strands);
  const actual = 5 * (cable?.resistanceOhmPerM ?? Number.NaN) * (cable?.continuousA ?? Number.NaN);
  expectPublished(actual, printed(dropV, 0.001), automotiveCitation);
});

test('equal legs are twice one', () => {
  expectPublished(loopResistance(7, 0.004), exactly(0.056), conductorStandard);
});
