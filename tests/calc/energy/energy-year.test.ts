import { describe, expect, test } from 'vitest';
import { spreadDays, spreadOverSpan } from '../../../src/calc/energy/hours.ts';
import {
  chargeShare,
  type EnergyYearInput,
  energyYear,
  type MonthSummary,
  type YearBattery,
} from '../../../src/calc/energy/year.ts';
import { array, battery, energyInput, twelve } from '../../support/energy-year.ts';

const month = (number: number, changes: Partial<EnergyYearInput> = {}): MonthSummary => {
  const found = energyYear(energyInput(changes)).months[number];
  if (!found) throw new Error(`No month ${number}.`);
  return found;
};
const steady = (powerW: number) => [{ hourlyW: Array.from({ length: 24 }, () => powerW) }];
const lossless: YearBattery = { ...battery, roundTripEfficiency: 1, selfDischargeAMonth: 0 };

describe('days without a source', () => {
  // 1000 Wh at 50 W: 20 h.
  test('by hand', () => {
    expect(
      month(0, { loads: steady(50), battery: { ...lossless, windowWh: 1000 } }).autonomyDays,
    ).toBeCloseTo(20 / 24, 12);
  });
  // Half of a loss of 19 % in discharging: √0.81 = 0.9 of 1000 Wh.
  test('with the loss of discharging', () => {
    const lossy = { ...lossless, windowWh: 1000, roundTripEfficiency: 0.81 };
    expect(month(0, { loads: steady(50), battery: lossy }).autonomyDays).toBeCloseTo(18 / 24, 12);
  });
  test('with an idle inverter of 10 W', () => {
    const idle = { ...lossless, windowWh: 1200, standingW: 10 };
    expect(month(0, { loads: steady(50), battery: idle }).autonomyDays).toBeCloseTo(20 / 24, 12);
  });
  // 400 W from 18 to 22 h; 1000 Wh last until half past eight.
  test('from the stated hour', () => {
    const evening = [{ hourlyW: spreadOverSpan(1600, { startHour: 18, hours: 4 }) }];
    const changes = { loads: evening, battery: { ...lossless, windowWh: 1000 } };
    expect(month(0, changes).autonomyDays).toBeCloseTo(2.5 / 24, 12);
    expect(month(0, { ...changes, autonomyFromHour: 0 }).autonomyDays).toBeCloseTo(20.5 / 24, 12);
  });
  test('a load that the battery is too weak for ends it at once', () => {
    expect(month(0, { loads: steady(2000), battery: lossless }).autonomyDays).toBeCloseTo(
      1500 / 2000 / 24,
      12,
    );
  });
  test('no battery, no day; no load, no end', () => {
    expect(month(0, { battery: { ...battery, windowWh: 0 } }).autonomyDays).toBe(0);
    expect(month(0, { loads: [] }).autonomyDays).toBe(Number.POSITIVE_INFINITY);
    expect(month(0, { loads: steady(1e-9), battery: lossless }).autonomyDays).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('sources', () => {
  const dark: Partial<EnergyYearInput> = { arrays: [], battery: lossless };

  // 300 W for 2 h feed the 600 Wh of a day. On the first, begun full, only what 12 h have used.
  test('driving carries what it charges', () => {
    const driving = { powerW: 300, startHour: 10, hours: twelve(2), daysPerWeek: 7 };
    const each = month(0, { ...dark, loads: steady(25), driving });
    expect(each.unmetWh).toBe(0);
    expect(each.shares).toEqual({ solar: 0, driving: 1, shore: 0 });
    expect(each.drivingWh).toBeCloseTo(30 * 600 + 12 * 25, 6);
  });
  test('a longer drive than there is room for is not drawn', () => {
    const driving = { powerW: 300, startHour: 10, hours: twelve(10), daysPerWeek: 7 };
    expect(month(0, { ...dark, loads: steady(25), driving }).drivingWh).toBeLessThan(31 * 700);
  });
  // 4 nights of 10 h at 500 W; what is drawn is what was used since.
  test('shore nights', () => {
    const shore = { powerW: 500, nights: twelve(4), span: { startHour: 20, hours: 10 } };
    const each = month(0, { ...dark, loads: steady(5), shore });
    expect(each.unmetWh).toBe(0);
    expect(each.shares.shore).toBe(1);
    expect(each.shoreWh + each.windowWh).toBeGreaterThan(31 * 24 * 5);
  });
  test('the sun comes first, then driving, then shore', () => {
    const changes = {
      loads: steady(25),
      driving: { powerW: 300, startHour: 0, hours: twelve(24), daysPerWeek: 7 },
      shore: { powerW: 300, nights: twelve(28), span: { startHour: 0, hours: 24 } },
    };
    const june = month(5, changes);
    expect(june.curtailedWh).toBeGreaterThan(0);
    expect(june.shoreWh).toBe(0);
    expect(june.drivingWh).toBeGreaterThan(0);
    expect(june.shares.solar + june.shares.driving).toBeCloseTo(1, 12);
  });
  test('a controller gives no more than its limit', () => {
    const capped = month(5, { arrays: [{ ...array, controllerMostW: 50 }] });
    expect(capped.typicalDayWh).toBeLessThan(50 * 17);
    expect(capped.typicalDayWh).toBeGreaterThan(50 * 10);
    expect(month(5, { arrays: [{ ...array, controllerMostW: 0 }] }).producedWh).toBe(0);
  });
  test('two arrays add up', () => {
    expect(month(3, { arrays: [array, array] }).producedWh).toBeCloseTo(2 * month(3).producedWh, 6);
    expect(month(3, { arrays: [array, { ...array, tiltDeg: 30 }] }).planeWhM2).toHaveLength(2);
  });
  test('a shaded horizon takes direct light only, a hidden sky the rest', () => {
    const open = month(5).typicalDayWh;
    const shaded = month(5, { arrays: [{ ...array, shadedShare: 1 }] }).typicalDayWh;
    expect(shaded).toBeGreaterThan(0.3 * open);
    expect(shaded).toBeLessThan(0.7 * open);
    expect(month(5, { arrays: [{ ...array, shadedShare: 1, skyHiddenShare: 1 }] }).typicalDayWh).toBe(0);
  });
  test('a hotter panel and a duller glass give less', () => {
    const plain = month(5).typicalDayWh;
    expect(month(5, { arrays: [{ ...array, hotterK: 20 }] }).typicalDayWh).toBeLessThan(plain);
    expect(month(5, { arrays: [{ ...array, glass: 0 }] }).typicalDayWh).toBeGreaterThan(plain);
  });
});

describe('dull days', () => {
  test('have their share of the mean on a flat panel', () => {
    const flat = { ...array, temperatureCoefficient: 0, glass: 0 };
    const each = month(3, { arrays: [flat] });
    expect(each.dullDayWh).toBeCloseTo(0.3 * each.typicalDayWh, 9);
  });
  test('give a tilted panel less than their share: they are diffuse', () => {
    const each = month(11, { arrays: [{ ...array, tiltDeg: 60 }] });
    expect(each.dullDayWh).toBeLessThan(0.25 * each.typicalDayWh);
  });
  test('end the month', () => {
    const { ledger } = energyYear(energyInput({ dullDays: 2 }));
    const noon = (day: number) => ledger.producedWh[day * 24 + 12] ?? Number.NaN;
    expect(noon(28)).toBe(noon(0));
    expect(noon(29)).toBeLessThan(0.35 * noon(28));
    expect(noon(30)).toBe(noon(29));
  });
  test('none, or nearly all', () => {
    expect(month(1, { dullDays: 0 }).producedWh).toBeCloseTo(28 * month(1).typicalDayWh, 6);
    expect(month(1, { dullDays: 28 }).producedWh).toBeCloseTo(28 * month(1).dullDayWh, 6);
  });
});

describe('a cold battery', () => {
  const steps = [
    { fromC: -10, share: 0.1 },
    { fromC: 0, share: 0.3 },
    { fromC: 10, share: 1 },
  ];
  test.each([
    [-11, 0],
    [-10, 0.1],
    [-0.1, 0.1],
    [0, 0.3],
    [10, 1],
    [40, 1],
  ])('at %d °C it takes %d of its greatest power', (cellC, expected) => {
    expect(chargeShare(cellC, steps)).toBe(expected);
  });
  test('without steps there is no limit', () => {
    expect(chargeShare(-40, [])).toBe(1);
  });
  test('does not charge below its first step, sun or not; the loads still get the sun', () => {
    const frozen = month(5, { battery: { ...battery, cellC: twelve(-1) } });
    expect(frozen.unmetWh).toBeGreaterThan(0);
    expect(frozen.usedWh).toBeGreaterThan(1000);
    expect(frozen.producedWh - frozen.curtailedWh).toBeLessThanOrEqual(frozen.usedWh + 1e-6);
  });
  test('has less of itself', () => {
    const shares = twelve(1).map((_, number) => (number === 0 ? 0.8 : 1));
    expect(month(0, { battery: { ...battery, capacityShares: shares } }).windowWh).toBeCloseTo(1600, 9);
    expect(month(6, { battery: { ...battery, capacityShares: shares } }).windowWh).toBe(2000);
  });
});

describe('the summary of a month', () => {
  test('an empty start is the lowest state', () => {
    const each = month(6, { startShare: 0, loads: [] });
    expect(each.lowestWh).toBe(0);
    expect(each.lowestShare).toBe(0);
  });
  test('a month with factor 0 wants nothing', () => {
    const factors = twelve(1).map((_, number) => (number === 7 ? 0 : 1));
    const loads = [{ hourlyW: steady(40)[0]?.hourlyW ?? [], monthFactors: factors }];
    expect(month(7, { loads }).wantedWh).toBe(0);
    expect(month(6, { loads }).wantedWh).toBeCloseTo(31 * 960, 6);
  });
  test('an idle inverter is a loss, never a shortage', () => {
    const each = month(11, { arrays: [], loads: [], battery: { ...lossless, standingW: 20 } });
    expect(each.unmetWh).toBe(0);
    expect(each.lostWh).toBeCloseTo(2000, 6);
  });
  test('within the polar night there is no sun whatever was typed in', () => {
    const site = { latitudeDeg: 78, longitudeDeg: 15, clockAheadOfUtcHours: 1 };
    const each = month(11, { site });
    expect(each.globalWhM2).toBe(0);
    expect(each.producedWh).toBe(0);
  });
  test('in the polar day the sun shines at midnight', () => {
    const site = { latitudeDeg: 78, longitudeDeg: 15, clockAheadOfUtcHours: 1 };
    const { ledger } = energyYear(energyInput({ site }));
    const june = 24 * (31 + 28 + 31 + 30 + 31);
    expect(ledger.producedWh[june]).toBeGreaterThan(0);
  });
  test('on the southern half the seasons turn over', () => {
    const site = { latitudeDeg: -40, longitudeDeg: 175, clockAheadOfUtcHours: 12 };
    const facing = { ...array, tiltDeg: 40 };
    const climate = { globalWhM2: twelve(2000), airC: twelve(12) };
    const north = month(5, { site, climate, arrays: [{ ...facing, azimuthDeg: 0 }] });
    const south = month(5, { site, climate, arrays: [{ ...facing, azimuthDeg: 180 }] });
    expect(north.typicalDayWh).toBeGreaterThan(2 * south.typicalDayWh);
  });
  test('an array to the east has its noon earlier', () => {
    const best = (azimuthDeg: number) => {
      const { ledger } = energyYear(energyInput({ arrays: [{ ...array, tiltDeg: 60, azimuthDeg }] }));
      const april = ledger.producedWh.slice(24 * 90, 24 * 91);
      return april.indexOf(Math.max(...april));
    };
    expect(best(90)).toBeLessThan(11);
    expect(best(180)).toBe(12);
    expect(best(270)).toBeGreaterThan(12);
  });
});

describe('spans and days', () => {
  test('an energy over midnight', () => {
    const hourly = spreadOverSpan(100, { startHour: 22.5, hours: 4 });
    expect(hourly.reduce((sum, each) => sum + each, 0)).toBeCloseTo(100, 12);
    expect([hourly[21], hourly[22], hourly[23], hourly[0], hourly[1], hourly[2], hourly[3]]).toEqual([
      0, 12.5, 25, 25, 25, 12.5, 0,
    ]);
  });
  test('no energy needs no hours', () => {
    expect(spreadOverSpan(0, { startHour: 3, hours: 0 })).toEqual(Array.from({ length: 24 }, () => 0));
    expect(() => spreadOverSpan(1, { startHour: 3, hours: 0 })).toThrow(RangeError);
  });
  test.each([0, 1, 2, 3, 5, 10, 29, 30])('%d of 30 days', (count) => {
    expect(spreadDays(count, 30).filter(Boolean)).toHaveLength(count);
  });
  test('one day is the middle one', () => {
    expect(spreadDays(1, 31).indexOf(true)).toBe(15);
  });
});

describe('what is refused', () => {
  const bad: readonly (readonly [string, Partial<EnergyYearInput>, RegExp])[] = [
    ['eleven months', { climate: { globalWhM2: twelve(1).slice(1), airC: twelve(1) } }, /12 values, not 11/],
    ['negative radiation', { climate: { globalWhM2: twelve(-1), airC: twelve(1) } }, /radiation/],
    [
      'more diffuse than global',
      { climate: { globalWhM2: twelve(1000), diffuseWhM2: twelve(1001), airC: twelve(1) } },
      /diffuse/,
    ],
    ['a latitude', { site: { latitudeDeg: 91, longitudeDeg: 0, clockAheadOfUtcHours: 0 } }, /latitude/],
    ['a longitude', { site: { latitudeDeg: 50, longitudeDeg: 181, clockAheadOfUtcHours: 0 } }, /longitude/],
    [
      'a clock',
      { site: { latitudeDeg: 50, longitudeDeg: 0, clockAheadOfUtcHours: 15 } },
      /lead of the clock/,
    ],
    ['a tilt', { arrays: [{ ...array, tiltDeg: 91 }] }, /tilt/],
    [
      'a coefficient of the wrong sign',
      { arrays: [{ ...array, temperatureCoefficient: 0.004 }] },
      /coefficient/,
    ],
    ['a loss in per cent', { arrays: [{ ...array, losses: [14] }] }, /loss/],
    ['a shade', { arrays: [{ ...array, shadedShare: 1.1 }] }, /shaded/],
    ['an efficiency of 0', { battery: { ...battery, roundTripEfficiency: 0 } }, /efficiency/],
    [
      'an exponent below 1',
      { battery: { ...battery, peukert: { exponent: 0.9, ratedPowerW: 60 } } },
      /Peukert/,
    ],
    [
      'steps that fall',
      {
        battery: {
          ...battery,
          chargeSteps: [
            { fromC: 5, share: 1 },
            { fromC: 0, share: 1 },
          ],
        },
      },
      /rise/,
    ],
    ['23 hours', { loads: [{ hourlyW: Array.from({ length: 23 }, () => 1) }] }, /24 hourly/],
    ['a negative load', { loads: steady(-1) }, /load/],
    ['half a dull day', { dullDays: 1.5 }, /whole/],
    ['29 dull days', { dullDays: 29 }, /dull days/],
    ['a dull share', { dullShare: 1.2 }, /dull day/],
    ['an hour of 24', { autonomyFromHour: 24 }, /autonomy/],
    [
      '31 nights in February',
      { shore: { powerW: 1, nights: twelve(31), span: { startHour: 0, hours: 1 } } },
      /nights/,
    ],
    ['8 days a week', { driving: { powerW: 1, startHour: 0, hours: twelve(1), daysPerWeek: 8 } }, /days/],
  ];
  test.each(bad)('%s', (_name, changes, says) => {
    expect(() => energyYear(energyInput(changes))).toThrow(RangeError);
    expect(() => energyYear(energyInput(changes))).toThrow(says);
  });
});
