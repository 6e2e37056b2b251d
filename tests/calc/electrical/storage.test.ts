// Edges and refusals of batteries and charging.
import { describe, expect, test } from 'vitest';
import { bankResistanceOhm, batteryBank, layoutFor } from '../../../src/calc/electrical/battery-bank.ts';
import {
  allowedRatePerHour,
  chargeHours,
  compensatedVoltageV,
  currentOfRateA,
  ratePerHour,
} from '../../../src/calc/electrical/charging.ts';
import {
  boreM,
  hydrogenM3PerH,
  openingM2,
  ventilationFlowM3PerS,
} from '../../../src/calc/electrical/lead-ventilation.ts';
import {
  capacityAtCurrentAh,
  dischargeHours,
  exponentOfTests,
  ratedCurrentA,
} from '../../../src/calc/electrical/peukert.ts';
import {
  layUpDays,
  selfDischargeAh,
  selfDischargePerMonth,
  standingLossAh,
} from '../../../src/calc/electrical/standing-loss.ts';
import {
  bankCapacityAh,
  runningCurrentA,
  runtimeHours,
  usablePart,
  usableShare,
  wholeForUsable,
} from '../../../src/calc/electrical/usable-energy.ts';

const block = { voltageV: 12.8, capacityAh: 100 };
const one = { inSeries: 1, inParallel: 1 };
const rated = { capacityAh: 100, ratingHours: 20, exponent: 1.2 };
const charge = { capacityAh: 100, fromShare: 0.2, toShare: 0.9, currentA: 10, efficiency: 1 };
const need = { dailyEnergyWh: 1000, days: 2, voltageV: 12, usableShare: 0.5 };
const layUp = { spareAh: 50, capacityAh: 100, standingA: 0.02, selfDischargePerMonth: 0.03 };
const gassing = { cells: 6, capacityAh: 100, gassingPerHour: 0.005 };

describe('refusals', () => {
  const refused: readonly (readonly [string, () => unknown, RegExp])[] = [
    ['half a block', () => batteryBank(block, { inSeries: 1.5, inParallel: 1 }), /in series.*whole/],
    ['no string', () => batteryBank(block, { inSeries: 1, inParallel: 0 }), /in parallel.*whole/],
    ['no voltage', () => batteryBank({ ...block, voltageV: 0 }, one), /voltage of a block/],
    ['no capacity', () => batteryBank({ ...block, capacityAh: -1 }, one), /capacity of a block/],
    ['24 V of 12.8 V', () => layoutFor(24, 100, block), /whole multiple/],
    ['6 V of 12.8 V', () => layoutFor(6.4, 100, block), /whole multiple/],
    ['negative resistance', () => bankResistanceOhm(-1e-3, one), /resistance/],
    ['exponent under 1', () => capacityAtCurrentAh({ ...rated, exponent: 0.99 }, 10), /at least 1/],
    ['exponent under 1 at rest', () => capacityAtCurrentAh({ ...rated, exponent: 0.99 }, 0), /at least 1/],
    ['exponent NaN', () => capacityAtCurrentAh({ ...rated, exponent: Number.NaN }, 10), /finite/],
    ['no rating hours', () => ratedCurrentA({ capacityAh: 100, ratingHours: 0 }), /hours of the rating/],
    ['current below 0', () => capacityAtCurrentAh(rated, -1), /current/],
    ['time at rest', () => dischargeHours(rated, 0), /current/],
    [
      'two tests at one current',
      () => exponentOfTests({ currentA: 5, hours: 20 }, { currentA: 5, hours: 10 }),
      /differ/,
    ],
    [
      'tests that contradict each other',
      () => exponentOfTests({ currentA: 25, hours: 5 }, { currentA: 5, hours: 20 }),
      /at least 1/,
    ],
    ['empty window', () => usableShare({ lowest: 0.5, highest: 0.5 }), /less than the highest/],
    ['window over 1', () => usableShare({ lowest: 0.5, highest: 1.1 }), /share from 0 to 1/],
    ['window under 0', () => usableShare({ lowest: -0.1, highest: 1 }), /share from 0 to 1/],
    ['nothing usable', () => wholeForUsable(10, 0), /usable share/],
    ['more than all usable', () => usablePart(10, 1.2), /not be more than 1/],
    ['efficiency over 1', () => bankCapacityAh({ ...need, efficiency: 1.01 }), /efficiency/],
    ['cold that helps', () => bankCapacityAh({ ...need, coldMultiplier: 0.9 }), /multiplier for cold/],
    ['no days', () => bankCapacityAh({ ...need, days: 0 }), /days/],
    ['no power', () => runtimeHours(1000, 0), /power/],
    ['no voltage share', () => runningCurrentA(100, 12, 0), /share of the voltage/],
    ['discharge called a charge', () => chargeHours({ ...charge, toShare: 0.1 }), /not be less/],
    ['charge without current', () => chargeHours({ ...charge, currentA: 0 }), /charge current/],
    ['rate of no battery', () => ratePerHour(10, 0), /capacity/],
    ['rate below 0', () => currentOfRateA(-0.1, 100), /rate/],
    ['load below 0', () => currentOfRateA(0.1, 100, -1), /standing load/],
    ['coldest above warmest', () => allowedRatePerHour([], 10, 5), /above the warmest/],
    ['colder than cold', () => allowedRatePerHour([], -300), /absolute zero/],
    [
      'a band upside down',
      () => allowedRatePerHour([{ fromC: 5, toC: 0, ratePerHour: 1 }], 3),
      /must go upwards/,
    ],
    [
      'a band below 0',
      () => allowedRatePerHour([{ fromC: 0, toC: 5, ratePerHour: -1 }], 3),
      /rate of a band/,
    ],
    ['compensation upwards', () => compensatedVoltageV(6, 2.3, 0.003, 20), /not be positive/],
    ['no cells', () => compensatedVoltageV(0, 2.3, -0.003, 20), /cells/],
    ['drain below 0', () => standingLossAh(-0.1, 10), /standing current/],
    ['hotter than the law', () => selfDischargePerMonth(0.03, 51), /50 °C/],
    ['colder than the law', () => selfDischargePerMonth(0.03, -21), /−20/],
    ['per cent for a share', () => selfDischargePerMonth(3, 20), /share from 0 to 1/],
    ['days below 0', () => selfDischargeAh(100, 0.03, -1), /days/],
    ['more to spare than there is', () => layUpDays({ ...layUp, spareAh: 101 }), /more than the capacity/],
    ['gassing below 0', () => ventilationFlowM3PerS({ ...gassing, gassingPerHour: -1 }), /gassing/],
    ['no cell', () => ventilationFlowM3PerS({ ...gassing, cells: 0 }), /cells/],
    ['no capacity to gas', () => ventilationFlowM3PerS({ ...gassing, capacityAh: 0 }), /capacity/],
    ['flow below 0', () => openingM2(-1), /flow/],
    ['area below 0', () => boreM(-1), /area/],
    ['no hydrogen', () => hydrogenM3PerH(6, 1, 0), /hydrogen/],
  ];
  test.each(refused)('%s', (_what, attempt, message) => {
    expect(attempt).toThrow(RangeError);
    expect(attempt).toThrow(message);
  });
});

describe('edges', () => {
  test('a wanted capacity that is met exactly needs no further string', () => {
    expect(layoutFor(12.8, 300, block)).toEqual({ inSeries: 1, inParallel: 3 });
    expect(layoutFor(12.8, 300.1, block)).toEqual({ inSeries: 1, inParallel: 4 });
    expect(layoutFor(51.2, 1, block)).toEqual({ inSeries: 4, inParallel: 1 });
    // 0.1 · 3 is a little more than 0.3, which must not cost a fourth string.
    expect(layoutFor(38.4, 0.1 * 3, { ...block, capacityAh: 0.1 })).toEqual({ inSeries: 3, inParallel: 3 });
  });

  test('energy of a bank', () => {
    expect(batteryBank(block, { inSeries: 2, inParallel: 3 })).toEqual({
      blocks: 6,
      voltageV: 25.6,
      capacityAh: 300,
      energyWh: 7680,
    });
  });

  test('at the rated current and below, the whole capacity', () => {
    for (const currentA of [0, 1, 5]) expect(capacityAtCurrentAh(rated, currentA)).toBe(100);
    expect(capacityAtCurrentAh(rated, 5.01)).toBeLessThan(100);
  });

  test('an exponent of 1 loses nothing at any current', () => {
    expect(capacityAtCurrentAh({ ...rated, exponent: 1 }, 500)).toBe(100);
  });

  test('a table with a gap or an end gives 0 there', () => {
    const bands = [
      { fromC: 0, toC: 10, ratePerHour: 0.1 },
      { fromC: 20, toC: 30, ratePerHour: 0.3 },
    ];
    expect(allowedRatePerHour(bands, 5)).toBe(0.1);
    expect(allowedRatePerHour(bands, 10)).toBe(0.1);
    expect(allowedRatePerHour(bands, 15)).toBe(0);
    expect(allowedRatePerHour(bands, 5, 25)).toBe(0);
    expect(allowedRatePerHour(bands, 25, 31)).toBe(0);
    expect(allowedRatePerHour(bands, -1, 5)).toBe(0);
    expect(allowedRatePerHour(bands, 31)).toBe(0);
    expect(allowedRatePerHour([], 20)).toBe(0);
  });

  test('a span of temperatures takes the lowest rate within it', () => {
    const bands = [
      { fromC: 20, toC: 30, ratePerHour: 0.3 },
      { fromC: 0, toC: 10, ratePerHour: 0.2 },
      { fromC: 10, toC: 20, ratePerHour: 0.1 },
    ];
    expect(allowedRatePerHour(bands, 5, 25)).toBe(0.1);
    expect(allowedRatePerHour(bands, 21, 29)).toBe(0.3);
  });

  test('a standing load makes the charger larger', () => expect(currentOfRateA(0.1, 100, 4)).toBe(14));
  test('a part of a charge takes a part of the time', () => expect(chargeHours(charge)).toBeCloseTo(7, 9));

  test('a lay-up ends when what can be spared is gone', () => {
    const days = layUpDays(layUp);
    const lostAh = standingLossAh(0.02, days) + selfDischargeAh(100, 0.03, days);
    expect(lostAh).toBeCloseTo(50, 9);
  });
  test('nothing that drains, no end', () => {
    expect(layUpDays({ ...layUp, standingA: 0, selfDischargePerMonth: 0 })).toBe(Number.POSITIVE_INFINITY);
  });
  test('20 mA empty half of 100 Ah in 104 days without self-discharge', () => {
    expect(layUpDays({ ...layUp, selfDischargePerMonth: 0 })).toBeCloseTo(104.1667, 4);
  });
  test('a battery loses at most what it has', () => expect(selfDischargeAh(100, 0.5, 1000)).toBe(100));
  test('a twelfth of a year is a month', () => {
    expect(selfDischargeAh(100, 0.03, 365.2425 / 12)).toBeCloseTo(3, 9);
  });
});
