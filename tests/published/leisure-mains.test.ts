// Mains in leisure vehicles: hook-up leads and appliance powers against published tables.
import { describe, expect, test } from 'vitest';
import { dropShare, leadDropByTableV, leadDropV } from '../../src/calc/electrical/hook-up-lead.ts';
import { applianceLoads, microwaveOven } from '../../src/catalogue/electrical/appliance-loads.ts';
import {
  cordRows,
  drumShares,
  hookUpLength,
  hookUpSizeFor,
  hookUpSizes,
  leastMainsConductor,
  residualCurrentDevice,
  supplyCableRows,
} from '../../src/catalogue/electrical/leisure-mains.ts';
import {
  applianceTableMacKay,
  cordTable,
  drumReduction,
  leisureGuideUk,
  leisureHandbookCzech,
  leisureMotorMagazine,
  leisureTradeJournal,
  residualTripTime,
  supplyCablesAustralia,
} from '../../src/catalogue/electrical/supply-sources.ts';
import { exactly, expectPublished } from './agreement.ts';

/** Greatest resistance of a plain flexible copper conductor at 20 °C, IEC 60228 class 5, Ω/m by mm². */
const classFiveOhmPerM: ReadonlyMap<number, number> = new Map([
  [1, 0.0195],
  [1.5, 0.0133],
  [2.5, 0.00798],
  [4, 0.00495],
]);
const ohmPerM = (areaMm2: number): number => classFiveOhmPerM.get(areaMm2) ?? Number.NaN;

describe('a lead of 25 m, 2.5 mm², at 16 A', () => {
  const lead = hookUpSizeFor(16);

  test('drops 6.38 V cold, 2.8 % of 230 V', () => {
    const source = leisureMotorMagazine;
    const dropV = leadDropV(16, {
      lengthM: hookUpLength.lengthM,
      conductorOhmPerM: ohmPerM(lead?.areaMm2 ?? 0),
    });
    expectPublished(dropV, { value: 6.38, within: 0.005, because: 'recomputed to 0.01 V' }, source);
    expectPublished(dropShare(dropV, 230), { value: 0.028, within: 0.0005, because: 'to 0.1 %' }, source);
  });

  test('drops 7.6 V warm by the table of cords, 3.3 %', () => {
    const cord = cordRows.find(({ areaMm2 }) => areaMm2 === 2.5);
    const dropV = leadDropByTableV(16, 25, cord?.dropVPerAM ?? Number.NaN);
    expectPublished(dropV, exactly(7.6), cordTable);
    expectPublished(dropShare(dropV, 230), { value: 0.033, within: 0.0005, because: 'to 0.1 %' }, cordTable);
  });
});

// 2 × resistance of a tinned conductor at 60 °C; the table rounds to two figures.
test.each([
  [0.5, 92.8],
  [1, 46.3],
  [1.5, 31.7],
  [2.5, 19],
  [4, 11.8],
])('a cord of %d mm² is tabled as two conductors: %d mV/A/m', (areaMm2, recomputed) => {
  const row = cordRows.find((each) => each.areaMm2 === areaMm2);
  const published = { value: recomputed, within: 0.5, because: 'the table is in whole mV/A/m' };
  expectPublished(1000 * (row?.dropVPerAM ?? Number.NaN), published, cordTable);
});

test.each(cordRows)('$areaMm2 mm² carries more than thinner cords and drops less', ({ areaMm2 }) => {
  const index = cordRows.findIndex((row) => row.areaMm2 === areaMm2);
  const [row, thicker] = [cordRows[index], cordRows[index + 1]];
  if (row === undefined || thicker === undefined) return;
  expect(thicker.currentA).toBeGreaterThan(row.currentA);
  expect(thicker.dropVPerAM).toBeLessThan(row.dropVPerAM);
});

test.each([
  { ratingA: 10, areaMm2: 1, mostM: 25, dropV: 9.75 },
  { ratingA: 10, areaMm2: 2.5, mostM: 60, dropV: 9.58 },
  { ratingA: 15, areaMm2: 1.5, mostM: 25, dropV: 9.98 },
  { ratingA: 15, areaMm2: 4, mostM: 65, dropV: 9.65 },
])('$ratingA A, $areaMm2 mm²: $mostM m drop $dropV V cold', ({ ratingA, areaMm2, mostM, dropV }) => {
  const row = supplyCableRows.find((each) => each.ratingA === ratingA && each.areaMm2 === areaMm2);
  expectPublished(row?.mostM ?? Number.NaN, exactly(mostM), supplyCablesAustralia);
  const actual = leadDropV(ratingA, { lengthM: mostM, conductorOhmPerM: ohmPerM(areaMm2) });
  const recomputed = { value: dropV, within: 0.005, because: 'recomputed to 0.01 V' };
  expectPublished(actual, recomputed, supplyCablesAustralia);
});

test('rules of the standard for leisure vehicles', () => {
  expectPublished(residualCurrentDevice.tripA, exactly(0.03), leisureGuideUk);
  expectPublished(residualCurrentDevice.tripS, exactly(0.04), residualTripTime);
  expectPublished(leastMainsConductor.areaMm2, exactly(1.5), leisureHandbookCzech);
  expectPublished(hookUpSizeFor(16)?.areaMm2 ?? Number.NaN, exactly(2.5), leisureHandbookCzech);
  expectPublished(hookUpLength.lengthM, exactly(25), leisureTradeJournal);
  expectPublished(hookUpLength.toleranceM, exactly(2), leisureTradeJournal);
});

test('a plug between two ratings takes the larger lead, one above the table none', () => {
  expect(hookUpSizeFor(10)?.areaMm2).toBe(2.5);
  expect(hookUpSizeFor(17)?.areaMm2).toBe(4);
  expect(hookUpSizeFor(32)?.areaMm2).toBe(6);
  expect(hookUpSizeFor(101)).toBeUndefined();
  expect(() => hookUpSizeFor(0)).toThrow(RangeError);
  expect(hookUpSizes.map(({ ratingA }) => ratingA)).toEqual([16, 25, 32, 63, 100]);
});

test('a wound lead carries less with each layer', () => {
  expectPublished(drumShares[0]?.share ?? Number.NaN, exactly(0.85), drumReduction);
  expectPublished(drumShares[3]?.share ?? Number.NaN, exactly(0.35), drumReduction);
});

describe('appliances', () => {
  test('a microwave oven of 900 W takes 1400 W: 64 %', () => {
    const printed = { value: 0.643, within: 0.0005, because: 'recomputed to 0.001' };
    expectPublished(microwaveOven.efficiency, printed, applianceTableMacKay);
  });

  test('a kettle spans 1200 to 3000 W over the lists', () => {
    const kettle = applianceLoads.find(({ name }) => name === 'kettle');
    expect(kettle).toMatchObject({ leastW: 1200, mostW: 3000 });
  });

  test('names are unique and ranges go upwards', () => {
    expect(new Set(applianceLoads.map(({ name }) => name)).size).toBe(applianceLoads.length);
    for (const { name, leastW, mostW, citations } of applianceLoads) {
      expect(leastW, name).toBeLessThanOrEqual(mostW);
      expect(citations.length, name).toBeGreaterThan(0);
    }
  });
});
