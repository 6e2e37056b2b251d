// Edges of the sums on conductors: exact limits, what is refused, and cases done by hand.
import { describe, expect, test } from 'vitest';
import {
  ambientFactor,
  conductorTemperature,
  deratedAmpacity,
  neededTabulatedCurrent,
} from '../../../src/calc/electrical/ampacity.ts';
import { type ConductorDemand, smallestConductor } from '../../../src/calc/electrical/choose-conductor.ts';
import { type Segment, solveDropTree } from '../../../src/calc/electrical/drop-tree.ts';
import { copperK, leastAreaForFault } from '../../../src/calc/electrical/fault-heating.ts';
import { listedAtLeast, listedAtMost } from '../../../src/calc/electrical/listed.ts';
import {
  discriminationRatio,
  fuseShareOfAmpacity,
  greatestFuse,
  smallestFuse,
} from '../../../src/calc/electrical/protection.ts';
import {
  copperTemperatureFactor,
  equivalentCopperMm2,
  idealResistancePerM,
  loopResistance,
  seriesResistance,
} from '../../../src/calc/electrical/resistance.ts';
import {
  bank,
  inParallel,
  internalResistanceFromLoad,
  prospectiveShortCircuit,
} from '../../../src/calc/electrical/short-circuit.ts';
import { dropOfCurrent, dropOfPower, greatestOneWayM } from '../../../src/calc/electrical/voltage-drop.ts';
import { awgDiameterMm, awgNumber, circularMilsForDrop } from '../../../src/calc/electrical/wire-gauge.ts';

describe('a load that holds its power', () => {
  test('12 V, 0.1 Ω, 200 W: 2 V are lost and 20 A flow', () => {
    expect(dropOfPower(12, 200, 0.1)).toEqual({ delivers: true, currentA: 20, dropV: 2, loadV: 10 });
  });

  test('dividing by the nominal voltage would say 1.67 V', () => {
    expect(dropOfCurrent(200 / 12, 0.1)).toBeCloseTo(1.667, 3);
  });

  test('just the most that can be brought: half the voltage; a little more: nothing', () => {
    expect(dropOfPower(12, 360, 0.1)).toEqual({ delivers: true, currentA: 60, dropV: 6, loadV: 6 });
    expect(dropOfPower(12, 360.001, 0.1)).toEqual({ delivers: false, mostPowerW: 360 });
  });

  test('no power, no resistance', () => {
    expect(dropOfPower(12, 0, 0.1)).toEqual({ delivers: true, currentA: 0, dropV: 0, loadV: 12 });
    expect(dropOfPower(12, 1e6, 0)).toMatchObject({ delivers: true, dropV: 0, loadV: 12 });
  });
});

describe('legs', () => {
  test('out by one way, back by another, in another size', () => {
    const legs = [
      { lengthM: 3, ohmPerM: 0.008 },
      { lengthM: 5, ohmPerM: 0.005 },
    ];
    expect(seriesResistance(legs, 0.001)).toBeCloseTo(0.05, 12);
    expect(seriesResistance([])).toBe(0);
    expect(loopResistance(0, 1)).toBe(0);
  });
});

describe('tree of segments', () => {
  const segment = (from: string, to: string, loopOhm: number): Segment => ({
    id: `${from}-${to}`,
    from,
    to,
    loopOhm,
  });
  const tree = [
    segment('battery', 'panel', 0.01),
    segment('panel', 'pump', 0.1),
    segment('panel', 'light', 0.2),
  ];

  test('a segment carries what is downstream; drops add up from the battery', () => {
    const result = solveDropTree('battery', 12, tree, [
      { at: 'pump', currentA: 5 },
      { at: 'light', currentA: 1 },
      { at: 'light', currentA: 1 },
      { at: 'panel', currentA: 3 },
    ]);
    if (!result.delivers) throw new Error('It should deliver.');
    expect(result.segments.get('battery-panel')?.currentA).toBeCloseTo(10, 12);
    expect(result.segments.get('battery-panel')?.lossW).toBeCloseTo(1, 12);
    expect(result.points.get('pump')?.dropV).toBeCloseTo(0.6, 12);
    expect(result.points.get('light')?.dropV).toBeCloseTo(0.5, 12);
    expect(result.points.get('battery')).toEqual({ voltageV: 12, dropV: 0 });
  });

  test('two loads of power on one feed share its drop: by hand, as one of both', () => {
    // Behind a busbar of no resistance two loads are one of their sum: 120 + 80 W at 10 V over 0.1 Ω from 12 V.
    const shared = [
      segment('battery', 'panel', 0.1),
      segment('panel', 'fridge', 0),
      segment('panel', 'inverter', 0),
    ];
    const result = solveDropTree('battery', 12, shared, [
      { at: 'fridge', powerW: 120 },
      { at: 'inverter', powerW: 80 },
    ]);
    if (!result.delivers) throw new Error('It should deliver.');
    expect(result.points.get('inverter')?.voltageV).toBeCloseTo(10, 9);
    expect(result.segments.get('panel-fridge')?.currentA).toBeCloseTo(12, 9);
  });

  test('what one load alone could have, both together cannot', () => {
    const loads = [
      { at: 'pump', powerW: 250 },
      { at: 'light', powerW: 100 },
    ];
    for (const load of loads) expect(solveDropTree('battery', 12, tree, [load]).delivers).toBe(true);
    const feed = [
      segment('battery', 'panel', 0.11),
      segment('panel', 'pump', 0),
      segment('panel', 'light', 0),
    ];
    for (const load of loads) expect(solveDropTree('battery', 12, feed, [load]).delivers).toBe(true);
    expect(solveDropTree('battery', 12, feed, loads)).toEqual({
      delivers: false,
      atSegment: 'battery-panel',
    });
  });

  test('a current that no voltage is left for', () => {
    expect(solveDropTree('battery', 12, tree, [{ at: 'light', currentA: 58 }])).toEqual({
      delivers: false,
      atSegment: 'panel-light',
    });
  });

  test('the very limit of what can be brought', () => {
    const one = [segment('battery', 'load', 0.1)];
    expect(solveDropTree('battery', 12, one, [{ at: 'load', powerW: 359.999999 }]).delivers).toBe(true);
    expect(solveDropTree('battery', 12, one, [{ at: 'load', powerW: 360.000001 }]).delivers).toBe(false);
  });

  test('nothing drawn, nothing there', () => {
    expect(solveDropTree('battery', 12, [], [{ at: 'battery', powerW: 50 }])).toEqual({
      delivers: true,
      points: new Map([['battery', { voltageV: 12, dropV: 0 }]]),
      segments: new Map(),
    });
  });

  test.each<{ name: string; segments: Segment[]; at: string; says: RegExp }>([
    {
      name: 'a ring',
      segments: [segment('b', 'a', 1), segment('a', 'b', 1)],
      at: 'battery',
      says: /not connected/,
    },
    {
      name: 'two ways to one point',
      segments: [segment('battery', 'a', 1), segment('battery', 'b', 1), segment('a', 'b', 1)],
      at: 'a',
      says: /“b” is fed twice/,
    },
    {
      name: 'back to the battery',
      segments: [segment('a', 'battery', 1)],
      at: 'a',
      says: /“battery” is fed twice/,
    },
    {
      name: 'one name for two',
      segments: [segment('battery', 'a', 1), { ...segment('battery', 'b', 1), id: 'battery-a' }],
      at: 'a',
      says: /Two segments are called “battery-a”/,
    },
    { name: 'a load elsewhere', segments: tree, at: 'roof', says: /load at “roof” is not connected/ },
    {
      name: 'negative resistance',
      segments: [segment('battery', 'a', -1)],
      at: 'a',
      says: /“battery-a” must not/,
    },
  ])('$name is refused', ({ segments, at, says }) => {
    expect(() => solveDropTree('battery', 12, segments, [{ at, currentA: 1 }])).toThrow(says);
  });

  test('a negative load is refused', () => {
    expect(() => solveDropTree('battery', 12, tree, [{ at: 'pump', powerW: -1 }])).toThrow(/power at “pump”/);
    expect(() => solveDropTree('battery', 12, tree, [{ at: 'pump', currentA: -1 }])).toThrow(
      /current at “pump”/,
    );
  });
});

describe('short circuits', () => {
  test('series units do not add current, parallel strings do; cable and joints take some away', () => {
    const unit = { emfV: 12.8, internalOhm: 0.008 };
    expect(prospectiveShortCircuit(bank(unit, 4, 1), 0)).toBeCloseTo(1600, 9);
    expect(prospectiveShortCircuit(bank(unit, 1, 4), 0)).toBeCloseTo(6400, 9);
    expect(prospectiveShortCircuit(unit, 0.008)).toBeCloseTo(800, 9);
  });

  test('unequal batteries side by side', () => {
    const both = inParallel([
      { emfV: 12, internalOhm: 0.01 },
      { emfV: 13, internalOhm: 0.01 },
    ]);
    expect(both.emfV).toBeCloseTo(12.5, 12);
    expect(both.internalOhm).toBeCloseTo(0.005, 12);
  });
});

describe('ampacity', () => {
  test('an ambient as hot as the insulation bears leaves nothing, hotter too', () => {
    expect(ambientFactor(70, 70, 30)).toBe(0);
    expect(ambientFactor(70, 90, 30)).toBe(0);
    expect(ambientFactor(70, 30, 30)).toBe(1);
    expect(neededTabulatedCurrent(10, { ambient: 0 })).toBe(Number.POSITIVE_INFINITY);
  });

  test('all factors at once, none above 1', () => {
    expect(
      deratedAmpacity(100, { ambient: 1.2, grouping: 0.8, thermalInsulation: 0.5, other: 0.75 }),
    ).toBeCloseTo(30, 12);
    expect(deratedAmpacity(100, {})).toBe(100);
  });

  const loading = {
    insulationC: 90,
    tableAmbientC: 30,
    tabulatedA: 100,
    currentA: 50,
    ambientFactor: 1,
    groupingFactor: 1,
  };
  test('a quarter of the rise at half the current; the limit at full current', () => {
    expect(conductorTemperature(loading)).toBeCloseTo(45, 12);
    expect(conductorTemperature({ ...loading, currentA: 0 })).toBeCloseTo(30, 12);
    expect(conductorTemperature({ ...loading, currentA: 100 })).toBeCloseTo(90, 12);
  });

  test('idle in a hot place it is as hot as the place; loaded to its derated current it is at its limit', () => {
    const hot = ambientFactor(90, 60, 30);
    expect(conductorTemperature({ ...loading, ambientFactor: hot, currentA: 0 })).toBeCloseTo(60, 9);
    expect(
      conductorTemperature({ ...loading, ambientFactor: hot, groupingFactor: 0.8, currentA: 80 * hot }),
    ).toBeCloseTo(90, 9);
  });

  test('overloaded it is above its limit, and cold makes it no colder than the table', () => {
    expect(conductorTemperature({ ...loading, currentA: 120 })).toBeGreaterThan(90);
    expect(conductorTemperature({ ...loading, ambientFactor: 1.2 })).toBe(conductorTemperature(loading));
  });
});

describe('listed conditions', () => {
  const rows = [5, 20, 10];
  const self = (value: number) => value;
  test('never between two rows', () => {
    expect(listedAtLeast(rows, self, 10)).toBe(10);
    expect(listedAtLeast(rows, self, 10.01)).toBe(20);
    expect(listedAtLeast(rows, self, 20.01)).toBeUndefined();
    expect(listedAtMost(rows, self, 10)).toBe(10);
    expect(listedAtMost(rows, self, 9.99)).toBe(5);
    expect(listedAtMost(rows, self, 4.99)).toBeUndefined();
  });

  test('1.1 × 100 A finds 110 A, though the product is a little more', () => {
    expect(1.1 * 100).toBeGreaterThan(110);
    expect(smallestFuse([100, 110, 125], 100, 1.1)).toBe(110);
  });
});

describe('fuses', () => {
  test('smallest that carries, greatest that protects', () => {
    expect(smallestFuse([5, 10, 15], 8)).toBe(10);
    expect(smallestFuse([5, 10, 15], 13)).toBeUndefined();
    expect(smallestFuse([5, 10, 15], 15, 1)).toBe(15);
    expect(greatestFuse([5, 10, 15], 14)).toBe(10);
    expect(greatestFuse([5, 10, 15], 4)).toBeUndefined();
    expect(fuseShareOfAmpacity(30, 20)).toBe(1.5);
    expect(discriminationRatio(80, 50)).toBe(1.6);
  });
});

describe('smallest conductor', () => {
  const size = (areaMm2: number, ohmPerM: number, ampacityA: number | undefined) => ({
    areaMm2,
    ohmPerM,
    ampacityA,
  });
  const offered = [size(10, 0.002, 60), size(2.5, 0.008, 25), size(4, 0.005, undefined), size(6, 0.0033, 40)];
  const demand: ConductorDemand = {
    load: { currentA: 10 },
    sourceV: 12,
    outM: 2,
    backM: 3,
    connectionsOhm: 0.002,
    permittedDropV: 0.42,
    neededAmpacityA: 25,
    leastAreaMm2: 1,
  };

  test('drop just met', () => {
    const found = smallestConductor(offered, demand);
    expect(found?.fits.choice.areaMm2).toBe(2.5);
    expect(found?.fits.dropV).toBeCloseTo(0.42, 12);
    expect(found?.nextDown).toBeUndefined();
  });

  test('what the next size down lacks; a size without an ampacity never passes', () => {
    const found = smallestConductor(offered, { ...demand, permittedDropV: 0.3 });
    expect(found?.fits.choice.areaMm2).toBe(6);
    expect(found?.nextDown?.choice.areaMm2).toBe(4);
    expect(found?.nextDown?.shortfalls).toEqual(['ampacity']);
  });

  test('each alone would be too small', () => {
    const byDrop = smallestConductor(offered, { ...demand, neededAmpacityA: 0 });
    const byAmpacity = smallestConductor(offered, { ...demand, permittedDropV: 9, neededAmpacityA: 41 });
    expect(byDrop?.fits.choice.areaMm2).toBe(2.5);
    expect(byAmpacity?.fits.choice.areaMm2).toBe(10);
    expect(byAmpacity?.nextDown?.shortfalls).toEqual(['ampacity']);
    const byRule = smallestConductor(offered, { ...demand, leastAreaMm2: 10 });
    expect(byRule?.nextDown?.shortfalls).toEqual(['least area']);
  });

  test('a power that thin wire cannot bring', () => {
    const found = smallestConductor(offered, {
      ...demand,
      load: { powerW: 2000 },
      sourceV: 12,
      permittedDropV: 6,
    });
    expect(found?.fits.choice.areaMm2).toBe(10);
    expect(found?.nextDown).toMatchObject({ choice: { areaMm2: 6 }, dropV: undefined, shortfalls: ['drop'] });
  });

  test('nothing will do', () => {
    expect(smallestConductor(offered, { ...demand, permittedDropV: 0.01 })).toBeUndefined();
    expect(smallestConductor([], demand)).toBeUndefined();
  });
});

test.each([
  ['10', 10],
  ['1', 1],
  ['1/0', 0],
  ['4/0', -3],
  ['36', 36],
  ['37', undefined],
  ['0', undefined],
  ['5/0', undefined],
  ['0000', undefined],
  ['10 AWG', undefined],
  ['2.5', undefined],
])('gauge “%s” is %s', (name, number) => {
  expect(awgNumber(name)).toBe(number);
});

describe('impossible input', () => {
  const nan = Number.NaN;
  test.each<{ name: string; run: () => unknown; says: RegExp }>([
    {
      name: 'colder than copper’s line',
      run: () => copperTemperatureFactor(-234.5),
      says: /conductor must be above/,
    },
    {
      name: 'table temperature NaN',
      run: () => copperTemperatureFactor(20, nan),
      says: /table must be a finite/,
    },
    { name: 'area 0', run: () => idealResistancePerM(0), says: /area of copper must be greater/ },
    {
      name: 'no resistance',
      run: () => equivalentCopperMm2(0),
      says: /resistance per metre must be greater/,
    },
    { name: 'length −1', run: () => loopResistance(-1, 1), says: /length must not be less/ },
    { name: 'connections −1', run: () => seriesResistance([], -1), says: /connections must not be less/ },
    { name: 'gauge 2.5', run: () => awgDiameterMm(2.5), says: /gauge number must be whole/ },
    { name: 'gauge −4', run: () => awgDiameterMm(-4), says: /gauge number must be whole/ },
    { name: 'drop 0', run: () => circularMilsForDrop(10, 10, 0), says: /permitted drop must be greater/ },
    { name: 'current NaN', run: () => dropOfCurrent(nan, 1), says: /current must be a finite/ },
    { name: 'source 0 V', run: () => dropOfPower(0, 1, 1), says: /source must be greater/ },
    { name: 'power −1', run: () => dropOfPower(12, -1, 1), says: /power must not be less/ },
    { name: 'no current', run: () => greatestOneWayM(1, 1, 0), says: /current must be greater/ },
    { name: 'tree at 0 V', run: () => solveDropTree('a', 0, [], []), says: /source must be greater/ },
    {
      name: 'half a string',
      run: () => bank({ emfV: 12, internalOhm: 1 }, 1, 0.5),
      says: /parallel must be a whole/,
    },
    { name: 'no unit', run: () => bank({ emfV: 12, internalOhm: 1 }, 0, 1), says: /series must be a whole/ },
    { name: 'no source', run: () => inParallel([]), says: /at least one source/ },
    {
      name: 'an ideal source',
      run: () => inParallel([{ emfV: 12, internalOhm: 0 }]),
      says: /internal resistance must/,
    },
    {
      name: 'rises under load',
      run: () => internalResistanceFromLoad(12, 13, 1),
      says: /falls by under load/,
    },
    {
      name: 'ideal short circuit',
      run: () => prospectiveShortCircuit({ emfV: 12, internalOhm: 0 }, 0),
      says: /internal resistance must/,
    },
    {
      name: 'insulation below its table',
      run: () => ambientFactor(30, 20, 30),
      says: /above the table's ambient must/,
    },
    {
      name: 'ambient NaN',
      run: () => ambientFactor(70, nan, 30),
      says: /ambient temperature must be a finite/,
    },
    { name: 'factor −1', run: () => deratedAmpacity(10, { grouping: -1 }), says: /grouping factor must not/ },
    { name: 'fuse 0', run: () => neededTabulatedCurrent(0, {}), says: /rating of the fuse must be greater/ },
    { name: 'margin 0.9', run: () => smallestFuse([10], 5, 0.9), says: /margin must be at least 1/ },
    { name: 'ampacity 0', run: () => greatestFuse([10], 0), says: /ampacity must be greater/ },
    {
      name: 'downstream 0',
      run: () => discriminationRatio(10, 0),
      says: /downstream rating must be greater/,
    },
    { name: 'cools in a fault', run: () => copperK(160, 70), says: /rise of temperature must/ },
    { name: 'fault of 6 s', run: () => leastAreaForFault(100, 6, 115), says: /time must be from 0.1 s/ },
    { name: 'fault of 10 ms', run: () => leastAreaForFault(100, 0.01, 115), says: /time must be from 0.1 s/ },
    { name: 'look up NaN', run: () => listedAtMost([1], (row) => row, nan), says: /value to look up/ },
  ])('$name', ({ run, says }) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(says);
  });
});
