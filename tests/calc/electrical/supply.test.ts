// Edges and refusals of solar strings, inverters, alternators and leads.
import { describe, expect, test } from 'vitest';
import { alternatorShare, converterInputA, hotAlternatorA } from '../../../src/calc/electrical/alternator.ts';
import { dropShare, leadDropByTableV, leadDropV } from '../../../src/calc/electrical/hook-up-lead.ts';
import { inverterCurrents, inverterInputA, startingPowerW } from '../../../src/calc/electrical/inverter.ts';
import {
  arrayCurrents,
  arrayOverControllerShare,
  controllerOutputs,
  controllersFor,
} from '../../../src/calc/electrical/solar-current.ts';
import {
  coldFactor,
  moduleVoltageByShareV,
  moduleVoltageByTableV,
  moduleVoltageByVoltsV,
  mostInSeries,
  stringVoltageV,
} from '../../../src/calc/electrical/solar-voltage.ts';

const supply = { lowestVoltageV: 10.5, efficiency: 0.85 };
const loads = { continuousW: 1000, surgeW: 2000, idleW: 8 };
const volts = { nominalV: 12, lowestV: 10.5, chargeV: 14.4 };
const converter = { outputA: 30, outputV: 14.4, inputV: 12.5, efficiency: 0.9 };
const rows = [
  { fromC: -10, factor: 1.14 },
  { fromC: 25, factor: 1 },
  { fromC: -5, factor: 1.12 },
];

describe('refusals', () => {
  const refused: readonly (readonly [string, () => unknown, RegExp])[] = [
    ['power below 0', () => inverterInputA(-1, supply), /power delivered/],
    ['no voltage', () => inverterInputA(1000, { ...supply, lowestVoltageV: 0 }), /lowest battery voltage/],
    ['per cent for a share', () => inverterInputA(1000, { ...supply, efficiency: 85 }), /efficiency/],
    ['surge below continuous', () => inverterCurrents({ ...loads, surgeW: 999 }, supply), /surge/],
    ['idle below 0', () => inverterCurrents({ ...loads, idleW: -1 }, supply), /idle/],
    ['start factor under 1', () => startingPowerW([{ runningW: 10, startFactor: 0.5 }]), /start factor/],
    ['running below 0', () => startingPowerW([{ runningW: -10, startFactor: 1 }]), /running power/],
    ['coefficient without its minus', () => moduleVoltageByShareV(49.5, 0.0028, -5), /minus sign/],
    ['the same in volts', () => moduleVoltageByVoltsV(33.2, 0.12, -29), /minus sign/],
    [
      'per cent for a share, hot',
      () => moduleVoltageByShareV(49.5, -0.28, 45),
      /voltage at this temperature/,
    ],
    ['millivolts for volts, hot', () => moduleVoltageByVoltsV(33.2, -120, 45), /voltage at this temperature/],
    ['no rated voltage', () => moduleVoltageByTableV(0, rows, 20), /rated voltage/],
    ['colder than the table', () => coldFactor(rows, -10.01), /does not reach/],
    ['an empty table', () => coldFactor([], 20), /does not reach/],
    ['colder than cold', () => coldFactor(rows, -274), /absolute zero/],
    ['no module', () => stringVoltageV(40, 0), /whole/],
    ['no limit', () => mostInSeries(0, 40), /limit/],
    ['no current', () => arrayCurrents(0, 1), /short-circuit current/],
    ['half a string', () => arrayCurrents(9, 0.5), /whole/],
    ['margin under 1', () => controllerOutputs(400, volts, 0.8), /margin/],
    ['array below 0', () => controllerOutputs(-400, volts, 1.25), /power of the array/],
    ['no nominal voltage', () => controllerOutputs(400, { ...volts, nominalV: 0 }, 1.25), /nominal/],
    ['no lowest voltage', () => controllerOutputs(400, { ...volts, lowestV: 0 }, 1.25), /lowest/],
    ['no charge voltage', () => controllerOutputs(400, { ...volts, chargeV: 0 }, 1.25), /charge voltage/],
    ['no rating', () => controllersFor(40, 0), /rating/],
    ['no controller', () => arrayOverControllerShare(400, 0, 14.4), /rating/],
    ['output below 0', () => converterInputA({ ...converter, outputA: -1 }), /output current/],
    ['efficiency over 1', () => converterInputA({ ...converter, efficiency: 1.1 }), /efficiency/],
    ['all lost', () => hotAlternatorA(100, 1), /less than 1/],
    ['no alternator', () => alternatorShare(30, 0), /alternator/],
    ['length below 0', () => leadDropV(16, { lengthM: -1, conductorOhmPerM: 0.008 }), /length/],
    ['no resistance', () => leadDropV(16, { lengthM: 25, conductorOhmPerM: 0 }), /resistance/],
    ['current below 0', () => leadDropByTableV(-16, 25, 0.019), /current/],
    ['no voltage to share', () => dropShare(5, 0), /nominal voltage/],
  ];
  test.each(refused)('%s', (_what, attempt, message) => {
    expect(attempt).toThrow(RangeError);
    expect(attempt).toThrow(message);
  });
});

describe('edges', () => {
  test('no loads, no power', () => expect(startingPowerW([])).toBe(0));
  test('the start that adds most counts, not the largest load', () => {
    const heater = { runningW: 1000, startFactor: 1 };
    const pump = { runningW: 100, startFactor: 7 };
    const fan = { runningW: 200, startFactor: 3 };
    expect(startingPowerW([heater, pump, fan])).toBe(1900);
  });
  test('surge equal to continuous is no error', () => {
    const { continuousA, surgeA } = inverterCurrents({ ...loads, surgeW: 1000 }, supply);
    expect(surgeA).toBe(continuousA);
  });
  test('idle power is at the battery already', () => {
    expect(inverterCurrents(loads, supply).idleA).toBeCloseTo(8 / 10.5, 12);
  });

  test('rows of the table may stand in any order', () => {
    expect(coldFactor(rows, 30)).toBe(1);
    expect(coldFactor(rows, -5)).toBe(1.12);
    expect(coldFactor(rows, -7)).toBe(1.14);
    expect(coldFactor(rows, -10)).toBe(1.14);
  });
  test('at 25 °C a module is as rated', () => {
    expect(moduleVoltageByShareV(49.5, -0.0028, 25)).toBe(49.5);
    expect(moduleVoltageByVoltsV(49.5, -0.14, 25)).toBe(49.5);
    expect(moduleVoltageByTableV(49.5, rows, 25)).toBe(49.5);
  });
  test('a string at exactly the limit may be, one module more may not', () => {
    expect(mostInSeries(150, 50)).toBe(3);
    expect(mostInSeries(0.3, 0.1)).toBe(3);
    expect(mostInSeries(149.9, 50)).toBe(2);
    expect(mostInSeries(40, 50)).toBe(0);
  });
  test('a current at exactly the rating needs one controller, none needs none', () => {
    expect(controllersFor(60, 60)).toBe(1);
    expect(controllersFor(0.1 * 3, 0.1)).toBe(3);
    expect(controllersFor(60.1, 60)).toBe(2);
    expect(controllersFor(0, 60)).toBe(0);
  });
  test('strings side by side add their currents', () => expect(arrayCurrents(10, 3).ratedA).toBe(30));

  test('a converter takes the power it gives and its loss', () => {
    const takenA = converterInputA(converter);
    expect(takenA * converter.inputV * converter.efficiency).toBeCloseTo(30 * 14.4, 9);
  });
  test('a lead of no length drops nothing', () => {
    expect(leadDropV(16, { lengthM: 0, conductorOhmPerM: 0.008 })).toBe(0);
  });
});
