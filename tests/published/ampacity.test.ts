// Ampacity rows, ambient and grouping factors, and chains of derating against what is printed elsewhere.
import { describe, expect, test } from 'vitest';
import {
  ambientFactor,
  conductorTemperature,
  deratedAmpacity,
  neededTabulatedCurrent,
} from '../../src/calc/electrical/ampacity.ts';
import { equivalentCopperMm2 } from '../../src/calc/electrical/resistance.ts';
import { awgAreaMm2, awgNumber } from '../../src/calc/electrical/wire-gauge.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { ampacityOf, ampacityTables } from '../../src/catalogue/electrical/ampacity.ts';
import {
  boatCableTable,
  smallCraftAmpacity,
  ukAmbient,
  ukFlexibleCords,
  ukGrouping,
  ukInThermalInsulation,
  usCodeAmbient,
  usCodeAmpacity,
} from '../../src/catalogue/electrical/conductor-sources.ts';
import { conductorFor } from '../../src/catalogue/electrical/conductors.ts';
import {
  ambientLists,
  groupingFactor,
  groupingLists,
  listedAmbientFactor,
  thermalInsulationFactor,
} from '../../src/catalogue/electrical/derating.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const gaugeMm2 = (size: string): number => awgAreaMm2(awgNumber(size) ?? Number.NaN);
const boat = (size: string, insulationC: number): number =>
  ampacityOf('boat law, single in free air', gaugeMm2(size), insulationC)?.currentA ?? Number.NaN;

describe('105 °C boat cable: US boat law × engine space × bundle, as a cable maker prints it', () => {
  const sizes = ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1', '1/0', '2/0', '3/0', '4/0'];
  const columns = [
    { ambientC: 30, wires: 2, printed: [20, 25, 35, 45, 60, 80, 120, 160, 210, 245, 285, 330, 385, 445] },
    {
      ambientC: 50,
      wires: 2,
      printed: [17, 21.3, 29.8, 38.3, 51, 68, 102, 136, 178.5, 208.3, 242.3, 280.5, 327.3, 378.3],
    },
    {
      ambientC: 30,
      wires: 3,
      printed: [14, 17.5, 24.5, 31.5, 42, 56, 84, 112, 147, 171.5, 199.5, 231, 269.5, 311.5],
    },
    { ambientC: 30, wires: 5, printed: [12, 15, 21, 27, 36, 48, 72, 96, 126, 147, 171, 198, 231, 267] },
    {
      ambientC: 50,
      wires: 5,
      printed: [10.2, 12.8, 17.9, 23, 30.6, 40.8, 61.2, 81.6, 107.1, 125, 145.4, 168.3, 196.4, 227],
    },
  ];
  test.each(columns)('$wires wires at $ambientC °C', ({ ambientC, wires, printed }) => {
    for (const [index, size] of sizes.entries()) {
      const derated = deratedAmpacity(boat(size, 105), {
        ambient: listedAmbientFactor('boat engine space', 105, ambientC) ?? Number.NaN,
        grouping: groupingFactor('boats', wires) ?? Number.NaN,
      });
      const within = 0.07;
      const because = 'printed to 0.1 A, rounded from the rounded figure before it';
      expectPublished(derated, { value: printed[index] ?? 0, within, because }, boatCableTable);
    }
  });

  test.each([
    ['18', 17],
    ['16', 21],
    ['14', 30],
    ['12', 38],
    ['10', 51],
    ['6', 102],
    ['4', 136],
    ['2', 178],
    ['1', 208],
    ['1/0', 242],
    ['3/0', 327],
    ['4/0', 378],
  ])('%s AWG in an engine space: %d A', (size, printed) => {
    const because = 'printed in whole amperes, 178.5 as 178';
    expectPublished(
      deratedAmpacity(boat(size, 105), { ambient: 0.85 }),
      { value: printed, within: 0.5, because },
      { title: 'ABYC E-11 table reprinted by a cable supplier', provenance: 'read' },
    );
  });
});

describe('printed ampacities as they stand', () => {
  test.each([
    ['boat law, single in free air', gaugeMm2('10'), 60, 40],
    ['boat law, single in free air', gaugeMm2('6'), 125, 125],
    ['boat law, single in free air', gaugeMm2('4/0'), 200, 510],
    ['in conduit in an insulated wall', 1.5, 70, 14.5],
    ['in conduit in an insulated wall', 16, 90, 81],
    ['in conduit on a wall or in trunking', 35, 70, 125],
    ['in conduit on a wall or in trunking', 70, 90, 253],
    ['clipped to a surface', 10, 70, 65],
    ['clipped to a surface', 2.5, 90, 34],
    ['heavy flexible cable', 16, 60, 73],
    ['heavy flexible cable', 50, 90, 250],
    ['flexible cord', 1.25, 60, 13],
    ['US raceway or cable', gaugeMm2('12'), 75, 25],
    ['US raceway or cable', gaugeMm2('2/0'), 90, 195],
    ['aircraft bundle', gaugeMm2('14'), 105, 10],
  ] as const)('%s, %d mm², %d °C: %d A', (id, areaMm2, insulationC, printed) => {
    const found = ampacityOf(id, areaMm2, insulationC);
    expect(found?.insulationC).toBe(insulationC);
    expect(found?.currentA).toBe(printed);
    expect(found?.citations.length).toBeGreaterThan(0);
  });

  test('flexible cords: the stricter of two lists at 1.5 and 2.5 mm²', () => {
    for (const [size, book] of [
      [0.5, 3],
      [0.75, 6],
      [1, 10],
      [1.5, 16],
      [2.5, 25],
      [4, 32],
    ] as const)
      expect(ampacityOf('flexible cord', size, 60)?.currentA, `${size} mm²`).toBeLessThanOrEqual(book);
  });

  test('what is remembered does not pretend to be read', () => {
    expect(ampacityOf('small craft, single in free air', 10, 105)?.citations).toEqual([smallCraftAmpacity]);
    expect(smallCraftAmpacity.provenance).toBe('memory');
    expect(ampacityOf('clipped to a surface', 4, 70)?.citations[0]?.provenance).toBe('memory');
    expect(ampacityOf('US raceway or cable', gaugeMm2('6'), 60)?.citations[0]?.provenance).toBe('memory');
  });

  test('an insulated wall leaves about 0.73 of clipped', () => {
    for (const size of [1, 1.5, 2.5, 6, 10, 16, 35]) {
      const wall = ampacityOf('in conduit in an insulated wall', size, 70)?.currentA ?? Number.NaN;
      const clipped = ampacityOf('clipped to a surface', size, 70)?.currentA ?? Number.NaN;
      expect(Math.abs(wall / clipped - 0.72)).toBeLessThan(0.03);
    }
  });
});

/** One formula for every printed table. */
const nearEnough = (value: number): Published => ({
  value,
  within: 0.01,
  because: 'one unit in the last printed place: some tables round, some cut off',
});

describe('ambient factors by the formula', () => {
  const lists = ambientLists.filter(({ id }) => id === 'UK fixed wiring' || id === 'US code');
  const above = lists.flatMap(({ id, baseC, rows, citations }) =>
    rows.flatMap(({ insulationC, factors }) =>
      factors
        .filter(([ambientC]) => ambientC >= baseC)
        .map((pair) => ({ id, baseC, insulationC, pair, citations })),
    ),
  );
  test.each(above.map((row) => [row.id, row.insulationC, row.pair[0], row.pair[1], row] as const))(
    '%s, %d °C insulation at %d °C: %d',
    (_id, insulationC, ambientC, printed, { baseC, citations: [source] }) => {
      if (source === undefined) throw new Error('A list of factors has no source.');
      expectPublished(ambientFactor(insulationC, ambientC, baseC), nearEnough(printed), source);
    },
  );

  test.each([
    [10, 1.29, 1.2, 1.15],
    [15, 1.22, 1.15, 1.12],
    [20, 1.15, 1.11, 1.08],
    [25, 1.08, 1.05, 1.04],
  ])('US code at %d °C: %d, %d, %d', (ambientC, at60, at75, at90) => {
    for (const [insulationC, printed] of [
      [60, at60],
      [75, at75],
      [90, at90],
    ] as const)
      expectPublished(ambientFactor(insulationC, ambientC, 30), nearEnough(printed), usCodeAmbient);
  });

  test('below its base the UK table is more cautious than the formula, and no credit is taken', () => {
    expect(ambientFactor(70, 25, 30)).toBeGreaterThan(1.05);
    expect(listedAmbientFactor('UK fixed wiring', 70, 25)).toBe(1.03);
    expect(deratedAmpacity(20, { ambient: 1.03 })).toBe(20);
  });

  test.each([
    [35, 0.96],
    [40, 0.92],
    [45, 0.88],
    [50, 0.84],
    [55, 0.8],
  ])('105 °C mineral cable at %d °C: %d', (ambientC, printed) => {
    const within = 0.02;
    const because = 'this column cuts off and falls up to 0.017 below the formula';
    expectPublished(ambientFactor(105, ambientC, 30), { value: printed, within, because }, ukAmbient);
  });

  const ships: Citation = {
    title: 'Ship cables, IEC 60092 type, ambient factors on 45 °C, on a cable maker’s page',
    provenance: 'read',
  };
  test.each([
    [85, 35, 1.12],
    [85, 40, 1.06],
    [85, 50, 0.94],
    [85, 55, 0.87],
    [85, 60, 0.79],
    [85, 65, 0.71],
    [85, 70, 0.61],
    [85, 75, 0.5],
    [60, 35, 1.29],
    [60, 50, 0.82],
    [70, 35, 1.18],
    [70, 55, 0.77],
    [70, 60, 0.63],
    [90, 65, 0.74],
    [90, 80, 0.47],
  ] as const)('on a base of 45 °C: %d °C insulation at %d °C: %d', (insulationC, ambientC, printed) => {
    expectPublished(ambientFactor(insulationC, ambientC, 45), nearEnough(printed), ships);
    // With the wrong base it would not agree.
    expect(Math.abs(ambientFactor(insulationC, ambientC, 30) - printed)).toBeGreaterThan(0.01);
  });

  test.each([
    [10, 1.26],
    [20, 1.18],
  ])('on a base of 40 °C: 90 °C insulation at %d °C: %d', (ambientC, printed) => {
    expectPublished(ambientFactor(90, ambientC, 40), nearEnough(printed), {
      title: 'ampacity correction factors, free-air table on 40 °C',
      readAt: 'https://www.electricalengineeringtoolbox.com/2015/12/ampacity-correction-factors-for-all.html',
      provenance: 'read',
    });
  });

  test.each([
    [75, 0.75],
    [80, 0.78],
    [90, 0.82],
    [105, 0.85],
    [125, 0.89],
    [60, 0.58],
  ])('engine space, %d °C: %d', (insulationC, remembered) => {
    expectPublished(ambientFactor(insulationC, 50, 30), nearEnough(remembered), {
      title: '33 CFR 183.425, table 5, note 1',
      provenance: 'memory',
    });
    expect(listedAmbientFactor('boat engine space', insulationC, 50)).toBe(remembered);
  });

  test.each([
    [40, 0.82],
    [45, 0.71],
    [50, 0.58],
    [55, 0.41],
  ])('60 °C cord at %d °C: %d', (ambientC, printed) => {
    expectPublished(ambientFactor(60, ambientC, 30), nearEnough(printed), ukFlexibleCords);
    expect(listedAmbientFactor('UK flexible cord', 60, ambientC)).toBe(printed);
  });

  test('90 °C cord: its list is not the formula on 30 °C', () => {
    expect(listedAmbientFactor('UK flexible cord', 90, 50)).toBe(1);
    expect(ambientFactor(90, 50, 30)).toBeLessThan(0.82);
  });
});

describe('grouping', () => {
  test.each([
    [5, 0.857],
    [24, 0.714],
    [25, 0.571],
  ])('%d conductors on a table that holds three: %d', (count, printed) => {
    expectPublished(
      (groupingFactor('boats', count) ?? Number.NaN) / (groupingFactor('boats', 3) ?? Number.NaN),
      { value: printed, within: 0.0005, because: 'half a unit in the last printed place' },
      { title: 'marine note on wire sizes, quoting ABYC table VI', provenance: 'read' },
    );
  });

  test.each([
    [1, 1],
    [2, 0.8],
    [6, 0.57],
    [9, 0.5],
    [12, 0.45],
    [16, 0.41],
    [20, 0.38],
  ])('%d circuits bunched: %d', (circuits, printed) => {
    expectPublished(groupingFactor('bunched', circuits) ?? Number.NaN, exactly(printed), ukGrouping);
  });

  test('three pairs: circuits in one standard, conductors in the other', () => {
    const lists = new Map(groupingLists.map(({ id, counts }) => [id, counts]));
    expect(lists.get('bunched')).toBe('circuits');
    expect(lists.get('boats')).toBe('loaded conductors');
    expect(groupingFactor('bunched', 3)).toBe(0.7);
    expect(groupingFactor('boats', 6)).toBe(0.6);
  });

  test('between two listed numbers the next one counts', () => {
    expect(groupingFactor('bunched', 10)).toBe(0.45);
    expect(groupingFactor('bunched', 21)).toBeUndefined();
    expect(groupingFactor('US code', 10)).toBe(0.5);
    expect(groupingFactor('single layer on a surface', 15)).toBe(0.7);
  });
});

describe('in thermal insulation', () => {
  test.each([
    [0.05, 0.89],
    [0.1, 0.81],
    [0.2, 0.68],
    [0.4, 0.55],
  ])('%d m: the earlier edition’s %d is milder than what is used', (lengthM, printed) => {
    expect(ukInThermalInsulation.title).toContain(`${printed}`);
    expect(thermalInsulationFactor(lengthM)).toBeLessThan(printed);
  });

  test('0.4 m: 0.51, as the exercise on a heater has it; beyond it half', () => {
    expect(thermalInsulationFactor(0.4)).toBe(0.51);
    expect(thermalInsulationFactor(0.41)).toBe(0.5);
    expect(thermalInsulationFactor(0)).toBe(1);
    expect(thermalInsulationFactor(0.06)).toBe(0.78);
  });
});

describe('chains of derating', () => {
  test('32 A at 0.87 and 0.80: 46 A tabulated', () => {
    expectPublished(
      neededTabulatedCurrent(32, { ambient: 0.87, grouping: 0.8 }),
      { value: 46, within: 0.5, because: 'printed in whole amperes' },
      { title: 'explanation of the BS 7671 procedure, without an author', provenance: 'read' },
    );
  });

  test('25 A at 0.94, 0.80 and 0.51: 65.18 A; the factors divide the fuse, not the load of 21.7 A', () => {
    const source: Citation = {
      title: 'student exercise on a 5 kW water heater, in an electricians’ forum',
      readAt: 'https://electriciansforums.net/threads/determining-the-cas-of-the-cpc.30878',
      provenance: 'read',
    };
    const derating = { ambient: 0.94, grouping: 0.8, thermalInsulation: 0.51 };
    expectPublished(
      neededTabulatedCurrent(25, derating),
      { value: 65.18, within: 0.01, because: 'cut off, not rounded' },
      source,
    );
    expect(deratedAmpacity(64, derating)).toBeLessThan(25);
    expect(listedAmbientFactor('UK fixed wiring', 70, 35)).toBe(0.94);
    expect(groupingFactor('bunched', 2)).toBe(0.8);
  });

  test('12 AWG of 75 °C at 40 °C in a raceway: 22 A', () => {
    const listed = ampacityOf('US raceway or cable', gaugeMm2('12'), 75)?.currentA ?? Number.NaN;
    const factor = listedAmbientFactor('US code', 75, 40) ?? Number.NaN;
    expectPublished(deratedAmpacity(listed, { ambient: factor }), exactly(22), usCodeAmpacity);
  });
});

describe('temperature by share of load', () => {
  const base = {
    insulationC: 70,
    tableAmbientC: 30,
    tabulatedA: 42,
    currentA: 26,
    ambientFactor: 1,
    groupingFactor: 1,
  };
  const formula: Citation = {
    title: 'BS 7671, appendix 4, 6.1, quoted in a forum of its publisher',
    readAt: 'http://www.theiet.org/forums/forum/messageview.cfm?catid=205&threadid=47433',
    provenance: 'read',
  };
  const dropFactor = (atC: number) => (230 + atC) / (230 + 70);

  test('the factor for the drop', () => {
    const value = (230 + 70 - (1 - 26 ** 2 / 42 ** 2) * (70 - 30)) / (230 + 70);
    expectPublished(dropFactor(conductorTemperature(base)), exactly(value), formula);
  });

  test('a garbled copy takes 230 for volts, divides, and gets 0.9999', () => {
    // diynot.com, thread 406088 (read): … / (tp − at) in place of … × (tp − at).
    expect(dropFactor(conductorTemperature(base))).toBeLessThan(0.92);
  });
});

test('across systems by resistance: flexible 35 mm² is 3 AWG, not 2 AWG as its label says', () => {
  const ohmPerM = conductorFor('mm²', '35', 'flexible', 'plain')?.resistanceOhmPerM ?? Number.NaN;
  expect(ampacityOf('boat law, single in free air', 35, 105)?.row.size).toBe('2');
  expect(ampacityOf('boat law, single in free air', equivalentCopperMm2(ohmPerM), 105)?.row.size).toBe('3');
});

test('tables hold together', () => {
  for (const table of ampacityTables) {
    expect(table.citations.length).toBeGreaterThan(0);
    expect(table.insulationC).toEqual(table.insulationC.toSorted((one, other) => one - other));
    let before: readonly (number | undefined)[] = [];
    let beforeMm2 = 0;
    for (const row of table.rows) {
      expect(row.currentsA.length, `${table.id}, ${row.size}`).toBe(table.insulationC.length);
      expect(row.areaMm2).toBeGreaterThan(beforeMm2);
      for (const [column, currentA] of row.currentsA.entries())
        expect(currentA ?? 0, `${table.id}, ${row.size}`).toBeGreaterThan(before[column] ?? 0);
      before = row.currentsA;
      beforeMm2 = row.areaMm2;
    }
  }
});
