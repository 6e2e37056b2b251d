// Banks, usable energy and standing losses against published worked examples.
import { describe, expect, test } from 'vitest';
import { bankResistanceOhm, batteryBank, layoutFor } from '../../src/calc/electrical/battery-bank.ts';
import { selfDischargePerMonth, standingLossAh } from '../../src/calc/electrical/standing-loss.ts';
import {
  bankCapacityAh,
  runningCurrentA,
  runtimeHours,
  usablePart,
  usableShare,
  wholeForUsable,
} from '../../src/calc/electrical/usable-energy.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { batteryChemistries, chemistryNames } from '../../src/catalogue/electrical/batteries.ts';
import { runningVoltageShare } from '../../src/catalogue/electrical/inverter-guidance.ts';
import {
  batteryFaq,
  lfpVoltageCharts,
  offGridBankGuide,
  offGridSeller,
  selfDischargeAgmNote,
  selfDischargeBook,
} from '../../src/catalogue/electrical/storage-sources.ts';
import { inverterIdleSheets, standAloneLoads } from '../../src/catalogue/electrical/supply-sources.ts';
import { exactly, expectPublished } from './agreement.ts';

const wholeAh = (value: number) => ({ value, within: 0.5, because: 'printed in whole Ah' });

describe('blocks in series and in parallel', () => {
  const block = { voltageV: 12, capacityAh: 100 };
  test.each([
    { inSeries: 2, inParallel: 1, voltageV: 24, capacityAh: 100 },
    { inSeries: 1, inParallel: 2, voltageV: 12, capacityAh: 200 },
    { inSeries: 2, inParallel: 2, voltageV: 24, capacityAh: 200 },
  ])('$inSeries in series, $inParallel in parallel: $voltageV V, $capacityAh Ah', (row) => {
    const bank = batteryBank(block, row);
    expectPublished(bank.voltageV, exactly(row.voltageV), offGridBankGuide);
    expectPublished(bank.capacityAh, exactly(row.capacityAh), offGridBankGuide);
  });

  test('48 V 400 Ah are 16 batteries: 4 in series, 4 strings', () => {
    const layout = layoutFor(48, 400, block);
    expectPublished(layout.inSeries, exactly(4), offGridBankGuide);
    expectPublished(layout.inParallel, exactly(4), offGridBankGuide);
    expectPublished(batteryBank(block, layout).blocks, exactly(16), offGridBankGuide);
  });

  test.each([
    { cells: 4, voltageV: 12.8 },
    { cells: 8, voltageV: 25.6 },
    { cells: 16, voltageV: 51.2 },
  ])('$cells cells of lithium iron phosphate: $voltageV V', ({ cells, voltageV }) => {
    const { nominalCellV } = batteryChemistries['lithium iron phosphate'];
    const bank = batteryBank({ voltageV: nominalCellV, capacityAh: 100 }, { inSeries: cells, inParallel: 1 });
    expectPublished(bank.voltageV, exactly(voltageV), lfpVoltageCharts);
  });

  test.each(chemistryNames)('a block of %s is its cells', (name) => {
    const { nominalCellV, cellsPerBlock, nominalBlockV } = batteryChemistries[name];
    expect(nominalCellV * cellsPerBlock).toBeCloseTo(nominalBlockV, 9);
  });

  test('resistances add in series and share in parallel', () => {
    const note: Citation = {
      title: 'telecom battery note: R_cell × series / parallel',
      readAt: 'http://electrical-riddles.com/topic.php?lang=en&cat=24&topic=385',
      provenance: 'read',
    };
    expectPublished(bankResistanceOhm(0.005, { inSeries: 4, inParallel: 2 }), exactly(0.01), note);
  });
});

describe('capacity for so many days', () => {
  const worksheet: Citation = {
    title: 'off-grid battery worksheet, two reprints: 1000 Wh × 2.5 days / 0.5 × 1.3 (4.4 °C) = 6500 Wh',
    readAt: 'https://batteries-solar.blogspot.com',
    provenance: 'read',
  };
  const formulaPage: Citation = {
    title: 'public formula page: 1000 Wh × 2 days / (12 V × 0.5) = 333.33 Ah',
    readAt: 'https://calculatorlib.com/solar-battery-bank-calculator',
    provenance: 'read',
  };
  const sheet: Citation = {
    title: 'one-page sheet on stand-alone photovoltaic systems: 459 Wh, 5 days, 12 V: 191 Ah, at 75 % 255 Ah',
    readAt: 'https://studylib.net/doc/18034903/solar-pv-stand-alone-systems',
    provenance: 'read',
  };

  test('3000 Wh over 2 days at 24 V: 500 Ah of lead at 50 %, 278 Ah of lithium at 90 %', () => {
    const need = { dailyEnergyWh: 3000, days: 2, voltageV: 24 };
    expectPublished(bankCapacityAh({ ...need, usableShare: 0.5 }), exactly(500), offGridBankGuide);
    expectPublished(bankCapacityAh({ ...need, usableShare: 0.9 }), wholeAh(278), offGridBankGuide);
  });

  test('1000 Wh over 2.5 days, half used, at 4.4 °C: 6500 Wh', () => {
    const need = { dailyEnergyWh: 1000, days: 2.5, usableShare: 0.5, coldMultiplier: 1.3 };
    expectPublished(bankCapacityAh({ ...need, voltageV: 12 }) * 12, exactly(6500), worksheet);
  });

  test('1000 Wh over 2 days at 12 V, half used: 333.33 Ah', () => {
    const actual = bankCapacityAh({ dailyEnergyWh: 1000, days: 2, voltageV: 12, usableShare: 0.5 });
    expectPublished(actual, { value: 333.33, within: 0.005, because: 'printed to 0.01 Ah' }, formulaPage);
  });

  test('459 Wh over 5 days at 12 V: 191 Ah, at 75 % depth 255 Ah', () => {
    const need = { dailyEnergyWh: 459, days: 5, voltageV: 12 };
    expectPublished(bankCapacityAh({ ...need, usableShare: 1 }), wholeAh(191), sheet);
    expectPublished(bankCapacityAh({ ...need, usableShare: 0.75 }), wholeAh(255), sheet);
  });

  test('1092 Wh over 3 days, 85 % efficient, 60 % deep, at 12 V: 535 Ah', () => {
    const remembered: Citation = {
      title: 'lecture example of a house with three loads, battery part',
      provenance: 'memory',
      caution: 'Not looked up.',
    };
    const actual = bankCapacityAh({
      dailyEnergyWh: 1092,
      days: 3,
      voltageV: 12,
      usableShare: 0.6,
      efficiency: 0.85,
    });
    expectPublished(actual, { value: 535.3, within: 0.05, because: 'remembered to 0.1 Ah' }, remembered);
  });
});

describe('to use a part, divide', () => {
  const regional: Citation = {
    title: 'regional off-grid article: 45 kWh used are 56 kWh of lithium at 80 %, 90 kWh of lead at 50 %',
    provenance: 'read',
    caution: 'Read through a file index, which keeps no address.',
  };

  test('45 kWh: 56 kWh at 80 % and 90 kWh at 50 %', () => {
    const published = { value: 56, within: 0.5, because: 'printed in whole kWh' };
    expectPublished(wholeForUsable(45, 0.8), published, regional);
    expectPublished(wholeForUsable(45, 0.5), exactly(90), regional);
  });

  // Another page of the same site: 20 kWh × 3 × 1.2 = 72 kWh for 80 % depth. It is 75.
  test('60 kWh at 80 % are 75 kWh, not the 72 kWh of × 1.2', () => {
    expect(wholeForUsable(60, 0.8)).toBeCloseTo(75, 9);
    expect(usablePart(72, 0.8)).toBeLessThan(60);
  });

  test('80 % of 100 Ah at 98 %: 78 Ah, printed on as 982.8 Wh at 12.6 V', () => {
    const table: Citation = {
      title: 'solar seller’s comparison of batteries of 100 Ah',
      provenance: 'read',
      caution:
        'The address carries the seller’s name. It rounds to 78 Ah before it multiplies. Its 25 to 40 % efficiency of lead is far below every other source and not used.',
    };
    const usedAh = usablePart(100, 0.8) * 0.98;
    expectPublished(usedAh, wholeAh(78), table);
    const rounded = { value: 982.8, within: 0.5 * 12.6, because: 'computed from Ah rounded to one' };
    expectPublished(usedAh * 12.6, rounded, table);
    for (const name of chemistryNames)
      expect(batteryChemistries[name].energyEfficiency.low, name).toBeGreaterThan(0.6);
  });

  test('a window from 20 to 100 % is 80 %', () => expect(usableShare({ lowest: 0.2, highest: 1 })).toBe(0.8));
});

describe('currents and times', () => {
  test('constant power at 12 V is drawn at 11.4 V', () => {
    const { share } = runningVoltageShare;
    expectPublished(runningCurrentA(114, 12, share), exactly(10), standAloneLoads);
  });

  test('50 W from 1000 Wh: 20 h, through an inverter of 90 % 18 h', () => {
    expect(runtimeHours(1000, 50)).toBe(20);
    expect(runtimeHours(1000, 50, 0.9)).toBeCloseTo(18, 9);
  });

  test('10 W idle for a day at 12 V: 20 Ah, a fifth of 100 Ah', () => {
    const page: Citation = {
      title: 'page on the no-load draw of an inverter: 10 W over 24 h at 12 V are 20 Ah',
      readAt: 'https://qeeebo.com/questions/how/16/d6a/how-much-power-does-an-inverter-draw-with-no-load',
      provenance: 'read',
    };
    expectPublished(standingLossAh(10 / 12, 1), exactly(20), page);
  });

  // Printed: 12 V × 0.4 A = 3 W.
  test('0.4 A at 12 V for an hour are 4.8 Wh, not 3', () => {
    const actual = standingLossAh(0.4, 1 / 24) * 12;
    expect(actual, inverterIdleSheets.title).toBeCloseTo(4.8, 9);
    expect(Math.abs(actual - 3)).toBeGreaterThan(1);
  });
});

describe('self-discharge', () => {
  test.each([
    { type: 'starting', at20C: 0.06, at10C: 0.03 },
    { type: 'spiral', at20C: 0.04, at10C: 0.02 },
    { type: 'semi-traction', at20C: 0.06, at10C: 0.03 },
    { type: 'AGM', at20C: 0.03, at10C: 0.015 },
    { type: 'tubular traction', at20C: 0.12, at10C: 0.06 },
    { type: 'gel', at20C: 0.02, at10C: 0.01 },
  ])('$type: $at20C a month at 20 °C, $at10C at 10 °C', ({ at20C, at10C }) => {
    expectPublished(selfDischargePerMonth(at20C, 20), exactly(at20C), selfDischargeBook);
    expectPublished(selfDischargePerMonth(at20C, 10), exactly(at10C), selfDischargeBook);
  });

  // The maker's note has only half as much again for 10 K; the book, doubling, is the stricter and is what we compute.
  test('10 K warmer loses more than the other source says', () => {
    const more = selfDischargePerMonth(0.02, 35) / selfDischargePerMonth(0.02, 25);
    expect(more, selfDischargeAgmNote.title).toBeGreaterThan(1.5);
  });
});

describe('cycle life', () => {
  const flooded = batteryChemistries['flooded lead'].cycleLives;
  const at = (depth: number) => flooded.find((row) => row.depth === depth);

  test('rows hold what was read', () => {
    expectPublished(at(0.8)?.fewest ?? Number.NaN, exactly(225), batteryFaq);
    expectPublished(at(0.2)?.fewest ?? Number.NaN, exactly(3400), offGridSeller);
    expectPublished(at(0.5)?.most ?? Number.NaN, exactly(1500), offGridSeller);
    expectPublished(at(0.5)?.fewest ?? Number.NaN, exactly(300), offGridBankGuide);
  });

  // A printed rule says five times the cycles at 20 % depth as at 50 %. The seller's own pair has 2.3 times, which is less
  // energy over the life at 20 %: shallower is not always more.
  test('the factor of five is not in the figures', () => {
    expect(3400 / 1500).toBeLessThan(2.5);
    expect(3400 * 0.2).toBeLessThan(1500 * 0.5);
  });

  test.each(chemistryNames)('%s: deeper is never longer', (name) => {
    const rows = [...batteryChemistries[name].cycleLives].sort((a, b) => a.depth - b.depth);
    for (const [index, row] of rows.entries()) {
      expect(row.fewest).toBeLessThanOrEqual(row.most);
      const deeper = rows[index + 1];
      if (deeper !== undefined) expect(deeper.fewest).toBeLessThan(row.fewest);
    }
  });
});
