// Worked examples and charts of voltage drop, printed mistakes among them.
import { describe, expect, test } from 'vitest';
import {
  copperTemperatureFactor,
  idealResistancePerM,
  loopResistance,
  seriesResistance,
} from '../../src/calc/electrical/resistance.ts';
import { dropOfCurrent, dropOfPower, greatestOneWayM } from '../../src/calc/electrical/voltage-drop.ts';
import {
  awgAreaMm2,
  awgNumber,
  circularMilMm2,
  circularMilsForDrop,
} from '../../src/calc/electrical/wire-gauge.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  buildingDropLimits,
  hookUpLeadSize,
  leisureVehicleDrop,
  ukFlexibleCords,
} from '../../src/catalogue/electrical/conductor-sources.ts';
import { conductorFor } from '../../src/catalogue/electrical/conductors.ts';
import { dropLimitFor, dropLimits, permittedDropV } from '../../src/catalogue/electrical/drop-limits.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

const metric = (size: number, finish: 'plain' | 'tinned' = 'plain'): number =>
  conductorFor('mm²', `${size}`, 'flexible', finish)?.resistanceOhmPerM ?? Number.NaN;

/** Gauges on offer in the charts, by rising area; 3 AWG and 5 AWG are not. */
const ladder = ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1', '1/0', '2/0', '3/0', '4/0'];
const milsOf = (size: string): number => awgAreaMm2(awgNumber(size) ?? Number.NaN) / circularMilMm2;
const smallestGauge = (circularMils: number): string | undefined =>
  ladder.find((size) => milsOf(size) >= circularMils);

describe('worked examples', () => {
  const aircraftChart: Citation = {
    title: 'FAA AC 43.13-1B CHG 1, table 11-7, page 11-22: drop checked from the resistance per foot',
    readAt: 'https://www.landseaskyspace.com/ac4313/p11-22.html',
    provenance: 'read',
    caution: 'One way only: the return is the airframe.',
  };
  test('20 A over 107 ft of 6 AWG: 0.942 V', () => {
    const loopOhm = seriesResistance([{ lengthM: 107, ohmPerM: 0.00044 }]);
    expectPublished(dropOfCurrent(20, loopOhm), printed(0.942, 0.001), aircraftChart);
  });

  test('20 A over 90 ft of 4 AWG: 0.504 V, which breaks the 0.5 V it was picked for', () => {
    const loopOhm = seriesResistance([{ lengthM: 90, ohmPerM: 0.00028 }]);
    expectPublished(dropOfCurrent(20, loopOhm), printed(0.504, 0.001), aircraftChart);
    expect(dropOfCurrent(20, loopOhm)).toBeGreaterThan(0.5);
  });

  test('a length at 20 °C shrinks by 254.5 / (234.5 + T) when hot', () => {
    const cold = greatestOneWayM(1, 0.004, 10);
    const hot = greatestOneWayM(1, 0.004 * copperTemperatureFactor(105), 10);
    expectPublished(hot / cold, exactly(254.5 / (234.5 + 105)), aircraftChart);
  });

  test('1 A, 20 m one way, 1.3 mm²: 0.549 V, 4.58 % of 12 V', () => {
    const source: Citation = {
      title: 'a builder’s page on calculating the drop in a 12 V cable, ρ = 0.01785',
      readAt:
        'http://doityourselfsolarenergyprojects.blogspot.com/2010/11/calculating-voltage-drop-on-12-volt.html',
      provenance: 'read',
    };
    const dropV = dropOfCurrent(1, loopResistance(20, 0.01785 / 1.3));
    expectPublished(dropV, printed(0.549, 0.001), source);
    expectPublished((100 * dropV) / 12, printed(4.58, 0.01), source);
  });

  test('100 A over 150 m at 1.1 mV/A/m: 16.5 V; 0.7 mV/A/m would keep 10.5 V', () => {
    const source: Citation = { title: 'a cable distributor’s page on voltage drop', provenance: 'read' };
    // mV/A/m is of the route, the return included: one leg.
    const route = (millivolts: number) => seriesResistance([{ lengthM: 150, ohmPerM: millivolts / 1000 }]);
    expectPublished(dropOfCurrent(100, route(1.1)), exactly(16.5), source);
    expectPublished(dropOfCurrent(100, route(0.7)), exactly(10.5), source);
  });

  test('5 kW heater at 230 V, 18 m at 4.4 mV/A/m: 21.73 A and 1.72 V', () => {
    const source: Citation = {
      title: 'student exercise on a 5 kW water heater, in an electricians’ forum',
      readAt: 'https://electriciansforums.net/threads/determining-the-cas-of-the-cpc.30878',
      provenance: 'read',
      caution: 'It cuts the current off after two places.',
    };
    const result = dropOfPower(230, 5000, 0);
    const currentA = result.delivers ? result.currentA : Number.NaN;
    expectPublished(currentA, { value: 21.73, within: 0.01, because: 'cut off, not rounded' }, source);
    expectPublished(
      dropOfCurrent(21.73, seriesResistance([{ lengthM: 18, ohmPerM: 0.0044 }])),
      printed(1.72, 0.01),
      source,
    );
  });

  test('hook-up lead, 25 m of 2.5 mm² at 16 A and 19 mV/A/m: 7.6 V, 3.3 % of 230 V', () => {
    const table = dropOfCurrent(16, seriesResistance([{ lengthM: 25, ohmPerM: 0.019 }]));
    expectPublished(table, exactly(7.6), hookUpLeadSize);
    const ours = dropOfCurrent(16, loopResistance(25, metric(2.5, 'tinned') * copperTemperatureFactor(60)));
    expectPublished(ours, { value: 7.6, within: 0.2, because: '19 mV/A/m has two digits' }, ukFlexibleCords);
    // A loop length would count the return a second time.
    expect(dropOfCurrent(16, seriesResistance([{ lengthM: 50, ohmPerM: 0.019 }]))).toBeGreaterThan(15);
  });

  test.each([
    [10, 1, 25],
    [10, 2.5, 60],
    [15, 1.5, 25],
    [15, 4, 65],
  ])('caravan supply lead for %d A, %d mm², at most %d m: 4.2 to 4.3 % of 230 V', (currentA, size, mostM) => {
    const dropV = dropOfCurrent(currentA, loopResistance(mostM, metric(size)));
    expectPublished(
      (100 * dropV) / 230,
      { value: 4.25, within: 0.1, because: 'the lengths are rounded to 5 m' },
      {
        title: 'AS/NZS 3001:2008, table 5.1, extract',
        readAt: 'https://rvbooks.com.au/supply-cables-for-caravans-2/',
        provenance: 'read',
        caution: 'The share is worked out from the lengths; the table does not print it.',
      },
    );
  });

  test.each([
    [70, 3, 25, 0.328],
    [70, 5, 35, 0.388],
  ])('charger of %d A over %d m of %d mm²: %d V, about 3 % of 12 V', (currentA, lengthM, size, dropV) => {
    const source: Citation = {
      title: 'a charger maker’s manual, 4.3.2 and 4.3.3: cables by current and length',
      provenance: 'read',
      caution: 'The drop is worked out; the table prints areas.',
    };
    const actual = dropOfCurrent(currentA, loopResistance(lengthM, metric(size)));
    expectPublished(actual, printed(dropV, 0.001), source);
    expect(actual / 12).toBeLessThan(0.033);
  });

  test('4 AWG, 4 ft, 100 A: 0.199 V, within the 2 % of the maker', () => {
    const gauge = idealResistancePerM(awgAreaMm2(4));
    const dropV = dropOfCurrent(100, loopResistance(4 * 0.3048, gauge));
    expectPublished(dropV, printed(0.199, 0.001), {
      title: 'an inverter maker’s manual, table 4.1',
      provenance: 'read',
    });
    expect(dropV / 12).toBeLessThan(0.02);
  });

  test('6 mm² over 5 m carries 24 A at 0.8 V of 50 °C copper', () => {
    expectPublished(
      greatestOneWayM(0.8, 0.01989 / 6, 24),
      { value: 5, within: 0.03, because: '24 A is 24.13 A rounded down' },
      leisureVehicleDrop,
    );
  });
});

describe('formulas of print that say too little', () => {
  const metricShortcut: Citation = {
    title: 'E = 0.0164 · I · L / S on a battery supplier’s page; the same constant in ISO 10133 (memory)',
    readAt: 'http://www.energy-solutions.co.uk/voltdrop-calc.html',
    provenance: 'read',
  };
  const legs = (ohmPerM: number) =>
    seriesResistance([
      { lengthM: 5, ohmPerM },
      { lengthM: 5, ohmPerM },
    ]);

  test('10 A, 10 m out and back, 2.5 mm²: 0.656 V printed, 0.798 V cold, 0.923 V at 60 °C', () => {
    expectPublished(dropOfCurrent(10, legs(0.0164 / 2.5)), exactly(0.656), metricShortcut);
    const cold = dropOfCurrent(10, legs(metric(2.5)));
    const warm = dropOfCurrent(10, legs(metric(2.5) * copperTemperatureFactor(60)));
    expectPublished(cold, exactly(0.798), metricShortcut);
    expectPublished(warm, printed(0.923, 0.001), metricShortcut);
    expect(cold / 0.656).toBeGreaterThan(1.2);
    expect(warm / 0.656).toBeGreaterThan(1.4);
  });

  test('K = 10.75 is copper at 29.3 °C, K at 20 °C is 10.371', () => {
    const source: Citation = { title: 'ABYC E-11 formula CM = K · I · L / E', provenance: 'read' };
    const k20 = idealResistancePerM(circularMilMm2) * 0.3048;
    expectPublished(k20, printed(10.371, 0.001), source);
    expectPublished(k20 * copperTemperatureFactor(29.3), printed(10.75, 0.01), source);
  });
});

describe('unequal legs: 10 A, 11 ft out and 10 ft back, 3 % of 12 V', () => {
  const source: Citation = {
    title: 'note of a marine supplier after ABYC E-11, and the question in a chandler’s catalogue',
    provenance: 'read',
  };
  const needed = circularMilsForDrop(10, 21, 0.36);

  test('needs 6270.8 circular mils', () => {
    expectPublished(needed, printed(6270.8, 0.1), source);
  });

  test('12 AWG will do, 12 SAE will not: 10 SAE', () => {
    const saeMils = (size: string) =>
      (conductorFor('SAE', size, 'stranded', 'plain')?.areaMm2 ?? Number.NaN) / circularMilMm2;
    expect(smallestGauge(needed)).toBe('12');
    expect(saeMils('12')).toBeLessThan(needed);
    expect(saeMils('10')).toBeGreaterThan(needed);
  });
});

describe('chart for 12 V and 3 %, K = 11.2, length out and back', () => {
  const currents = [5, 10, 15, 20, 25, 30, 40, 50];
  test.each([
    [15, ['16', '12', '10', '10', '8', '8', '6', '6']],
    [20, ['14', '12', '10', '8', '8', '6', '6', '4']],
    [30, ['12', '10', '8', '6', '6', '4', '4', '2']],
    [40, ['12', '8', '6', '6', '4', '4', '2', '2']],
    [50, ['10', '8', '6', '4', '4', '2', '2', '1']],
    [70, ['8', '6', '4', '2', '2', '2', '1/0', '2/0']],
    [90, ['8', '4', '2', '2', '1', '1/0', '2/0', '3/0']],
  ])('%d ft: every cell (Appropedia, Wire length tables, read)', (loopFeet, row) => {
    expect(
      currents.map((currentA) => smallestGauge(circularMilsForDrop(currentA, loopFeet, 0.36, 11.2))),
    ).toEqual(row);
  });
});

describe('chart of a boat chandler for 12 V and 3 %, with errors of print', () => {
  const currents = [5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100];
  const rows: readonly (readonly [number, readonly string[]])[] = [
    [10, ['18', '14', '12', '12', '10', '10', '8', '8', '6', '6', '6', '4', '4']],
    [15, ['16', '12', '10', '10', '8', '8', '6', '6', '4', '4', '4', '2', '2']],
    [30, ['12', '10', '8', '6', '6', '6', '4', '4', '2', '2', '2', '1', '1']],
    [40, ['10', '8', '6', '6', '4', '4', '2', '2', '1', '1/0', '1/0', '2/0', '2/0']],
  ];

  test.each(rows)(
    '%d ft: within one size (chandler’s catalogue 2022, after ABYC E-11 table IX, read)',
    (loopFeet, row) => {
      for (const [index, currentA] of currents.entries()) {
        const ours = ladder.indexOf(smallestGauge(circularMilsForDrop(currentA, loopFeet, 0.36)) ?? '');
        expect(
          Math.abs(ours - ladder.indexOf(row[index] ?? '')),
          `${loopFeet} ft, ${currentA} A`,
        ).toBeLessThanOrEqual(1);
      }
    },
  );

  test('at 30 ft four printed sizes lose more than the 3 % they promise', () => {
    for (const [currentA, wrong] of [
      [30, '6'],
      [50, '4'],
      [80, '2'],
      [100, '1'],
    ] as const)
      expect(milsOf(wrong), `${currentA} A`).toBeLessThan(circularMilsForDrop(currentA, 30, 0.36));
  });
});

describe('limits', () => {
  test('buildings, 230 V: 6.9 V for lighting, 11.5 V otherwise', () => {
    const volts = (dropClass: 'lighting' | 'ordinary') => {
      const row = dropLimitFor('buildings', dropClass);
      return row === undefined ? Number.NaN : permittedDropV(row, 230);
    };
    expectPublished(volts('lighting'), exactly(6.9), buildingDropLimits);
    expectPublished(volts('ordinary'), exactly(11.5), buildingDropLimits);
  });

  test('leisure vehicles, 12 V: 1.67 % for the charging line, 6.67 % otherwise', () => {
    const share = (dropClass: 'charging line' | 'ordinary') => {
      const row = dropLimitFor('leisure vehicles', dropClass);
      return row === undefined ? Number.NaN : (100 * permittedDropV(row, 12)) / 12;
    };
    expectPublished(share('charging line'), printed(1.67, 0.01), leisureVehicleDrop);
    expectPublished(share('ordinary'), printed(6.67, 0.01), leisureVehicleDrop);
  });

  test('boats: 3 and 10 % of the nominal voltage', () => {
    expect(dropLimitFor('boats', 'critical')?.limit).toEqual({ share: 0.03 });
    expect(dropLimitFor('boats', 'ordinary')?.limit).toEqual({ share: 0.1 });
  });

  test('every limit has a source, and no practice has a class twice', () => {
    const keys = dropLimits.map(({ practice, dropClass }) => `${practice}/${dropClass}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const row of dropLimits) expect(row.citations.length).toBeGreaterThan(0);
  });
});
