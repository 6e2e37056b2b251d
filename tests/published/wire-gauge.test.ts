// The American gauge by its definition, what the US code and UL print for it, and how SAE wire differs.
import { describe, expect, test } from 'vitest';
import { copperTemperatureFactor, idealResistancePerM } from '../../src/calc/electrical/resistance.ts';
import {
  awgAreaMm2,
  awgDiameterMm,
  awgNumber,
  circularMilMm2,
} from '../../src/calc/electrical/wire-gauge.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { ampacityTables } from '../../src/catalogue/electrical/ampacity.ts';
import {
  americanGauge,
  saeAreas,
  usCodeResistance,
} from '../../src/catalogue/electrical/conductor-sources.ts';
import { conductorFor, conductorsOf } from '../../src/catalogue/electrical/conductors.ts';
import { exactly, expectPublished } from './agreement.ts';

const numberOf = (size: string): number => awgNumber(size) ?? Number.NaN;
const feetPerKilometre = 3280.84;

describe('definition', () => {
  const publicTable: Citation = {
    title: 'public table of conductors: diameters in inches and circular mils',
    readAt: 'http://electronikmade.blogspot.com/2008/08/conductor-and-insulator-tables.html',
    provenance: 'read',
  };
  test.each([
    ['4/0', 0.46, 0.0001, 211600, 100],
    ['1/0', 0.3249, 0.0001, 105500, 100],
    ['4', 0.2043, 0.0001, 41740, 10],
    ['10', 0.1019, 0.0001, 10380, 10],
    ['12', 0.08081, 0.00001, 6530, 10],
    ['14', 0.06408, 0.00001, 4107, 1],
    ['18', 0.0403, 0.00001, 1624, 1],
  ])('%s AWG: %d in, %d cmil', (size, inches, inchPlace, circularMils, milPlace) => {
    const because = 'half a unit in the last printed place';
    expectPublished(
      awgDiameterMm(numberOf(size)) / 25.4,
      { value: inches, within: inchPlace / 2, because },
      publicTable,
    );
    expectPublished(
      awgAreaMm2(numberOf(size)) / circularMilMm2,
      { value: circularMils, within: milPlace / 2, because },
      publicTable,
    );
  });

  test('both ends are exact: 36 is 0.005 in, 4/0 is 0.46 in', () => {
    expectPublished(awgDiameterMm(36), exactly(0.127), americanGauge);
    expectPublished(awgDiameterMm(-3), exactly(11.684), americanGauge);
  });

  test('a circular mil', () => {
    expectPublished(
      circularMilMm2,
      { value: 5.067075e-4, within: 5e-11, because: 'half a unit in the last printed place' },
      americanGauge,
    );
  });

  test.each([
    ['1/0', 0.000314],
    ['2', 0.000499],
    ['4', 0.000793],
  ])('%s AWG of pure copper: %d Ω/m', (size, ohmPerM) => {
    expectPublished(
      0.01678 / awgAreaMm2(numberOf(size)),
      { value: ohmPerM, within: 0.5e-6, because: 'half a unit in the last printed place' },
      {
        title: 'CRC Handbook, wire table, section 15',
        readAt: 'https://www.coursehero.com/file/6669542/15-12-86/',
        provenance: 'read',
        caution: 'Pure copper, 2.7 % below the copper of cables.',
      },
    );
  });

  test('the catalogue has the defined areas, and the ampacity tables have them too', () => {
    for (const { size, areaMm2 } of [
      ...conductorsOf('AWG', 'stranded', 'plain'),
      ...ampacityTables.filter(({ system }) => system === 'AWG').flatMap(({ rows }) => rows),
    ])
      expect(Math.abs(areaMm2 / awgAreaMm2(numberOf(size)) - 1), size).toBeLessThan(2e-5);
  });
});

describe('US code, chapter 9, table 8, 75 °C', () => {
  test.each([
    ['18', 7.77, 0.01],
    ['16', 4.89, 0.01],
    ['14', 3.07, 0.005],
    ['12', 1.93, 0.005],
    ['10', 1.21, 0.005],
    ['8', 0.764, 0.0005],
  ])('%s AWG solid: %d Ω per 1000 ft, from the definition alone', (size, ohm, within) => {
    const solid = idealResistancePerM(awgAreaMm2(numberOf(size))) * copperTemperatureFactor(75);
    expectPublished(
      (solid * 1e6) / feetPerKilometre,
      {
        value: ohm,
        within,
        because:
          'printed to three digits; 18 and 16 AWG are off a little more, by their rounded areas of 1620 and 2580 cmil',
      },
      usCodeResistance,
    );
  });

  test.each([
    ['18', 7.95],
    ['16', 4.99],
    ['14', 3.14],
    ['12', 1.98],
    ['10', 1.24],
    ['8', 0.778],
    ['6', 0.491],
    ['4', 0.308],
    ['3', 0.245],
    ['2', 0.194],
    ['1', 0.154],
    ['1/0', 0.122],
    ['2/0', 0.0967],
    ['3/0', 0.0766],
    ['4/0', 0.0608],
  ] as const)('%s AWG stranded: %d, 2 % above the definition', (size, ohm) => {
    const solid = idealResistancePerM(awgAreaMm2(numberOf(size))) * copperTemperatureFactor(75);
    expectPublished(
      (ohm * feetPerKilometre) / 1e6 / solid,
      {
        value: 1.022,
        within: 0.006,
        because: 'stranding adds about 2 %; the table is printed to three digits',
      },
      usCodeResistance,
    );
  });

  test('what is used for plain gauges is never below it', () => {
    const printed = { '18': 7.95, '14': 3.14, '12': 1.98, '8': 0.778, '6': 0.491, '4/0': 0.0608 };
    for (const [size, ohm] of Object.entries(printed)) {
      const row = conductorFor('AWG', size, 'stranded', 'plain');
      const at75 = (row?.resistanceOhmPerM ?? 0) * copperTemperatureFactor(75, row?.resistanceAtC);
      expect(at75, size).toBeGreaterThanOrEqual(((ohm * feetPerKilometre) / 1e6) * (1 - 1e-6));
    }
  });

  test('solid values printed under the heading of stranded wire are a misprint', () => {
    for (const [size, wrong] of [
      ['14', 3.07],
      ['12', 1.93],
      ['10', 1.21],
    ] as const) {
      const row = conductorFor('AWG', size, 'stranded', 'plain');
      const at75 = (row?.resistanceOhmPerM ?? 0) * copperTemperatureFactor(75, row?.resistanceAtC);
      expect((at75 * 1e6) / feetPerKilometre).toBeGreaterThan(wrong * 1.02);
    }
  });
});

describe('greatest resistance of solid wire is 2 % above the definition', () => {
  test.each([
    ['14', 8.45],
    ['12', 5.31],
    ['10', 3.343],
    ['8', 2.102],
  ])('%s AWG: %d Ω/km', (size, ohmPerKm) => {
    expectPublished(
      idealResistancePerM(awgAreaMm2(numberOf(size))) * 1.02 * 1000,
      { value: ohmPerKm, within: 0.006, because: 'printed to three or four digits' },
      { title: 'UL 1581 values in a manual on cable rating', provenance: 'read' },
    );
  });
});

describe('SAE wire', () => {
  test.each([
    ['18', 0.961],
    ['16', 0.898],
    ['14', 0.903],
    ['12', 0.897],
    ['10', 0.89],
    ['8', 0.882],
    ['6', 0.922],
    ['4', 0.89],
    ['2', 0.939],
    ['1', 0.93],
    ['1/0', 0.937],
    ['2/0', 0.94],
    ['3/0', 0.945],
    ['4/0', 0.971],
  ] as const)('%s SAE has %d of the copper of boat cable', (size, share) => {
    const sae = conductorFor('SAE', size, 'stranded', 'plain')?.areaMm2 ?? Number.NaN;
    expectPublished(
      sae / awgAreaMm2(numberOf(size)),
      {
        value: share,
        within: 0.018,
        because: 'boat cable is made a little thicker than its gauge, up to 1.7 %',
      },
      saeAreas,
    );
  });

  test('12 SAE: 5833 against 6530 circular mils, 10.7 % less', () => {
    const sae = conductorFor('SAE', '12', 'stranded', 'plain')?.areaMm2 ?? Number.NaN;
    expectPublished(
      100 * (1 - sae / awgAreaMm2(12)),
      { value: 10.7, within: 0.05, because: 'half a unit in the last printed place' },
      saeAreas,
    );
  });

  test('less copper, more resistance', () => {
    for (const row of conductorsOf('SAE', 'stranded', 'plain')) {
      const gauge = conductorFor('AWG', row.size, 'stranded', 'plain');
      expect(row.areaMm2).toBeLessThan(gauge?.areaMm2 ?? 0);
      expect(row.resistanceOhmPerM).toBeGreaterThan(gauge?.resistanceOhmPerM ?? Number.POSITIVE_INFINITY);
    }
  });
});
