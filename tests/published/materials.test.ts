import { describe, expect, test } from 'vitest';
import { materialNamed, materials } from '../../src/catalogue/materials.ts';
import { birchPlywoodSheetSize, birchPlywoodSheets, nominalThicknesses } from '../../src/catalogue/sheets.ts';

/**
 * Every density the tool uses, against the figures of its sources in kg/m³: [name, low, value, high, source].
 * The figures are copied, so the tolerance is only that of binary fractions.
 */
const published: readonly (readonly [string, number, number, number, string])[] = [
  ['birch plywood', 660, 695, 710, 'importer datasheet: 660 (4 mm), 695 (12 mm), 710 (9 mm)'],
  ['poplar plywood', 426, 450, 550, 'memory 450; seller 426; maker 450 to 550'],
  ['plywood', 450, 500, 600, 'DIN EN 12524: 500; CTE classes 450-500 and 500-600; ASHRAE panels: 450'],
  ['softwood plywood', 450, 460, 460, 'ASHRAE 2013: panels 450, Douglas fir plywood 460'],
  ['hardwood plywood', 600, 700, 750, 'DIN EN 12524: 700; CTE class 600-750'],
  ['MDF', 650, 800, 875, 'DIN EN 12524 fibreboard: 800; CTE classes 550-750 (650) and 750-1000 (875)'],
  ['light MDF', 550, 650, 750, 'CTE class 550-750 (650); DIN EN 12524 fibreboard 600 lies inside'],
  ['hardboard', 800, 880, 1010, 'ASHRAE 2013: medium 800, high 880 and 1010'],
  ['OSB', 600, 650, 650, 'DIN EN 12524 and ASHRAE: 650; CTE: 600'],
  ['particleboard', 600, 730, 820, 'DIN EN 12524: 600; CTE class 640-820 (730)'],
  ['oak', 590, 760, 930, 'seasoned timber table: 590 to 930, middle 760'],
  ['ash', 486, 670, 737, 'seasoned timber table: white 670 + 10 %, black 540 - 10 %'],
  ['birch', 510, 670, 737, 'seasoned timber table: 670 + 10 %; dry to wet table: from 510'],
  ['maple', 679.5, 755, 830.5, 'seasoned timber table: 755 ± 10 %'],
  ['larch', 531, 590, 649, 'seasoned timber table: 590 ± 10 %'],
  ['Douglas fir', 477, 530, 583, 'seasoned timber table: 530 ± 10 %'],
  ['pine', 350, 510, 660, 'seasoned timber table: redwood 510, Canadian from 350, red to 660'],
  ['spruce', 350, 450, 495, 'seasoned timber table: 450 + 10 %; dry to wet table: from 350'],
  ['poplar', 390, 455, 520, 'dry to wet table: 390 to 520, middle 455'],
  ['aspen', 378, 420, 462, 'seasoned timber table: 420 ± 10 %'],
  ['cedar', 342, 380, 418, 'seasoned timber table: 380 ± 10 %'],
  ['balsa', 153, 170, 187, 'seasoned timber table: 170 ± 10 %'],
  ['softwood', 430, 500, 570, 'DIN EN 12524 timber: 500; CTE classes 430 to 570'],
  ['hardwood', 565, 700, 750, 'DIN EN 12524 timber: 700; CTE class 565-750'],
  ['XPS', 32.5, 40, 40, 'ASHRAE 2013: 32.5; Modelica record: 40'],
  ['EPS', 20, 26, 26, 'ASHRAE 2013: 20; Modelica record: 26'],
  ['PIR', 30, 45, 45, 'ASHRAE 2013 unfaced and Modelica record: 30; CIBSE Guide A: 45'],
  ['faced PIR', 65, 65, 65, 'ASHRAE 2013, with facers: 65'],
  ['PUR', 30, 30, 30, 'Modelica record and CIBSE Guide A: 30'],
  ['spray foam', 30, 40, 55, 'ASHRAE 2013, spray polyurethane: 40; aged 30 and 55'],
  ['light spray foam', 7, 7, 7, 'ASHRAE 2013, spray polyurethane: 7'],
  ['sheep wool', 9.6, 20, 25.9, 'Int. J. Energy Research 30(1): 9.6 to 25.9; 20 is the project’s choice'],
  ['glass wool', 10.5, 12, 12, 'ASHRAE 2013 batts: 10.5 (50 mm), 12 (90 mm)'],
  ['glass wool slab', 80, 80, 160, 'Modelica record: 80; ASHRAE 2013 glass fibre board: 160'],
  ['mineral wool', 30, 32, 32, 'ASHRAE 2013: mineral fibre 30, felted 32'],
  ['rock wool', 97.5, 110, 110, 'ASHRAE 2013 felted 100: 97.5; Modelica record: 110'],
  ['cellulose', 42.5, 42.5, 42.5, 'ASHRAE 2013, loose fill: 42.5'],
  ['expanded cork', 125, 125, 125, 'CTE: 125'],
  ['elastomeric foam', 70, 70, 70, 'DIN EN 12524, ASHRAE and CIBSE: 70'],
  ['foam core 45', 45, 45, 45, 'core maker chart'],
  ['foam core 60', 60, 60, 60, 'core maker chart'],
  ['foam core 80', 80, 80, 80, 'core maker chart'],
  ['foam core 100', 100, 100, 100, 'core maker chart'],
  ['foam core 130', 130, 130, 130, 'core maker chart'],
  ['foam core 160', 160, 160, 160, 'core maker chart'],
  ['foam core 200', 200, 200, 200, 'core maker chart'],
  ['PET foam core', 100, 100, 100, 'slides on foam grades: 100'],
  ['vinyl', 1200, 1700, 1700, 'DIN EN 12524 plastic floor covering: 1700; CIBSE PVC tile: 1200'],
  ['linoleum', 1200, 1200, 1200, 'DIN EN 12524 and CIBSE: 1200'],
  ['rubber floor', 1200, 1900, 1900, 'DIN EN 12524: 1200; ASHRAE 2013 rubber tile: 1900'],
  ['cork tile', 400, 400, 400, 'DIN EN 12524: 400'],
  ['carpet', 160, 200, 200, 'DIN EN 12524: 200; CIBSE synthetic carpet: 160'],
  ['carpet on rubber underlay', 290, 400, 400, 'CIBSE: 400; ASHRAE 2013 pile carpet with rubber pad: 290'],
  ['felt underlay', 120, 120, 120, 'DIN EN 12524: 120'],
  ['wool underlay', 200, 200, 200, 'DIN EN 12524: 200'],
  ['cork underlay', 200, 200, 200, 'DIN EN 12524: 200'],
  ['foam underlay', 270, 270, 270, 'DIN EN 12524, cellular rubber or plastic: 270'],
  ['aluminium', 2700, 2800, 2800, 'DIN EN 12524 alloys: 2800; CTE pure: 2700'],
  ['steel', 7800, 7800, 7800, 'DIN EN 12524 and CTE: 7800'],
  ['stainless steel', 7900, 7900, 7900, 'DIN EN 12524 and CTE: 7900'],
  ['copper', 8900, 8900, 8900, 'DIN EN 12524: 8900'],
  ['brass', 8400, 8400, 8400, 'DIN EN 12524: 8400'],
  ['glass', 2500, 2500, 2500, 'DIN EN 12524 soda lime and ASHRAE float: 2500'],
  ['acrylic', 1050, 1180, 1180, 'DIN EN 12524: acrylic 1050, PMMA 1180'],
  ['polycarbonate', 1200, 1200, 1200, 'DIN EN 12524: 1200'],
  ['PVC', 1390, 1390, 1390, 'DIN EN 12524: 1390'],
  ['flexible PVC', 1200, 1200, 1200, 'DIN EN 12524, 40 % softener: 1200'],
  ['HDPE', 980, 980, 980, 'DIN EN 12524: 980'],
  ['LDPE', 920, 920, 920, 'DIN EN 12524: 920'],
  ['polypropylene', 910, 910, 910, 'DIN EN 12524: 910'],
  ['epoxy resin', 1200, 1200, 1200, 'DIN EN 12524: 1200'],
  ['polyester resin', 1400, 1400, 1400, 'DIN EN 12524: 1400'],
  ['EPDM', 1150, 1150, 1150, 'DIN EN 12524: 1150'],
  ['GRP', 1700, 1900, 1900, 'prEN ISO 10077-2:2000 and prEN 12524:1998: 1900; memory 1700'],
  ['mattress foam', 25, 35, 40, 'memory 35; foam guide, standard mattress: 25 to 40'],
  ['memory foam', 50, 65, 80, 'foam guide: 50 to 80, middle 65'],
  ['foam rubber', 70, 70, 70, 'DIN EN 12524: 70'],
];

describe('densities of the sources', () => {
  test.each(published)('%s: %d, %d, %d', (name, low, value, high) => {
    const row = materialNamed(name);
    expect(row?.name).toBe(name);
    expect(row?.lowKgM3).toBeCloseTo(low, 9);
    expect(row?.densityKgM3).toBeCloseTo(value, 9);
    expect(row?.highKgM3).toBeCloseTo(high, 9);
  });

  test('no row of the catalogue is left out of the comparison', () => {
    expect(materials.map((row) => row.name).sort()).toEqual(published.map(([name]) => name).sort());
  });
});

/**
 * Areal mass = thickness x density. The expected figures were computed from the definition with the densities named,
 * so they hold to the last printed digit. A slip between millimetres and metres would be a factor of 1000.
 */
describe('areal masses computed from the definition', () => {
  test.each([
    ['vinyl', 'densityKgM3', 2, 3.4, '2 mm at 1700'],
    ['linoleum', 'densityKgM3', 2.5, 3.0, '2.5 mm at 1200'],
    ['PVC board', 'densityKgM3', 5, 6.95, '5 mm at 1390'],
    ['birch plywood', 'densityKgM3', 12, 8.34, '12 mm at 695'],
    ['poplar plywood', 'densityKgM3', 12, 5.4, '12 mm at 450'],
    ['XPS', 'lowKgM3', 30, 0.975, '30 mm at 32.5, the lighter source'],
    ['GRP', 'lowKgM3', 1.5, 2.55, '1.5 mm at 1700, the remembered value'],
    ['float glass', 'densityKgM3', 4, 10.0, '4 mm at 2500'],
    ['acrylic', 'densityKgM3', 4, 4.72, '4 mm at 1180'],
    ['mattress foam', 'densityKgM3', 120, 4.2, '120 mm at 35'],
    ['sheep wool', 'densityKgM3', 100, 2, '100 mm at 20'],
  ] as const)('%s, %s, %d mm: %d kg/m²', (name, end, thicknessMm, kgM2, _from) => {
    const row = materialNamed(name);
    expect(row).toBeDefined();
    if (row !== undefined) expect((thicknessMm / 1000) * row[end]).toBeCloseTo(kgM2, 9);
  });
});

/**
 * Importer's birch plywood datasheet, ten thicknesses: printed sheet masses to 0.1 kg for sheets of 1220 x 2440 mm.
 * Each must come back from nominal thickness x density x area within half of the last printed digit.
 */
describe('birch plywood datasheet', () => {
  test.each([
    [4, 660, 7.9],
    [6.5, 670, 13.0],
    [9, 710, 19.0],
    [12, 695, 24.8],
    [15, 690, 30.8],
    [18, 685, 36.7],
    [21, 680, 42.5],
    [24, 680, 48.6],
    [27, 673, 54.1],
    [30, 672, 60.0],
  ])('%d mm at %d kg/m³: %d kg a sheet', (nominalMm, densityKgM3, sheetKg) => {
    const row = birchPlywoodSheets.find((sheet) => sheet.nominalMm === nominalMm);
    expect(row).toMatchObject({ densityKgM3, sheetKg });
    const areaM2 = birchPlywoodSheetSize.widthM * birchPlywoodSheetSize.lengthM;
    const massKg = ((row?.nominalMm ?? 0) / 1000) * (row?.densityKgM3 ?? 0) * areaM2;
    expect(Math.abs(massKg - sheetKg)).toBeLessThanOrEqual(0.05);
  });

  test('the table has these ten thicknesses and no more', () => {
    expect(birchPlywoodSheets).toHaveLength(10);
  });

  test('average thickness lies between the limits, plies are odd and rise by two', () => {
    birchPlywoodSheets.forEach((sheet, index) => {
      expect(sheet.minMm).toBeLessThan(sheet.averageMm);
      expect(sheet.averageMm).toBeLessThan(sheet.maxMm);
      expect(sheet.plies).toBe(3 + 2 * index);
    });
  });

  // The datasheet's own averages, to 0.1 mm: 14.9 of 15, 17.7 of 18, 20.5 of 21, 23.4 of 24, 26.5 of 27, 29.4 of 30.
  test('from 15 mm up an average sheet is 0.7 to 2.5 % thinner than its name, 9 mm is thicker', () => {
    const thinner = new Map(nominalThicknesses.map((row) => [row.nominalMm, row.thinnerThanNominal * 100]));
    expect(thinner.get(4)).toBeCloseTo(5, 9);
    expect(thinner.get(9)).toBeCloseTo(-2.2, 1);
    expect(thinner.get(12)).toBeCloseTo(0, 9);
    for (const nominalMm of [15, 18, 21, 24, 27, 30]) {
      expect(thinner.get(nominalMm)).toBeGreaterThan(0.66);
      expect(thinner.get(nominalMm)).toBeLessThanOrEqual(2.5 + 1e-9);
    }
  });

  // The two ends of the sheets' densities are the band of the general row, its value that of the 12 mm sheet.
  test('the general row spans the sheets', () => {
    const densities = birchPlywoodSheets.map((sheet) => sheet.densityKgM3);
    expect(materialNamed('birch plywood')).toMatchObject({
      lowKgM3: Math.min(...densities),
      highKgM3: Math.max(...densities),
      densityKgM3: birchPlywoodSheets.find((sheet) => sheet.nominalMm === 12)?.densityKgM3,
    });
  });
});
