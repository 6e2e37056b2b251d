// What the calculations refuse, and that they say which value is wrong.
import { describe, expect, test } from 'vitest';
import * as axle from '../../src/calc/axle-loads.ts';
import * as height from '../../src/calc/centre-height.ts';
import { minimumPayMass } from '../../src/calc/pay-mass.ts';
import { arealMassOf, layerMass } from '../../src/calc/sheet-mass.ts';
import { staticStabilityFactor } from '../../src/calc/stability.ts';
import * as uncertainty from '../../src/calc/uncertainty.ts';
import * as wheel from '../../src/calc/wheel-loads.ts';

const reading = {
  wheelbaseM: 3.6,
  raiseM: 0.6,
  wheelRadiusM: 0.34,
  totalKg: 3200,
  raisedAxleKg: 1300,
  centreToStandingAxleM: 1.5,
};
const gain = { wheelbaseM: 3.6, raiseM: 0.6, totalKg: 3200, gainKg: 70 };
const weighing = {
  wheelbaseM: 3.6,
  raiseM: 0.6,
  frontLevelKg: 1400,
  rearLevelKg: 1800,
  frontRaisedKg: 1330,
  rearRaisedKg: 1870,
};

describe('impossible input', () => {
  test.each<{ name: string; run: () => unknown; says: RegExp }>([
    { name: 'wheelbase 0', run: () => axle.rearShare(1, 0), says: /wheelbase must be greater than 0/ },
    { name: 'position NaN', run: () => axle.rearShare(Number.NaN, 3), says: /front axle must be a finite/ },
    {
      name: 'no items, wheelbase −1',
      run: () => axle.axleLoads([], -1),
      says: /wheelbase must be greater than 0/,
    },
    {
      name: 'mass NaN',
      run: () => axle.axleLoads([{ massKg: Number.NaN, behindFrontAxleM: 1 }], 3),
      says: /mass must be a finite/,
    },
    {
      name: 'place infinite',
      run: () => axle.axleLoads([{ massKg: 1, behindFrontAxleM: Number.POSITIVE_INFINITY }], 3),
      says: /front axle must be a finite/,
    },
    {
      name: 'weightless axles',
      run: () => axle.centreBehindFrontAxle(0, 0, 3),
      says: /sum of the axle loads/,
    },
    {
      name: 'negative mass moved',
      run: () => axle.axleChangeOfShift(-1, 1, 3),
      says: /mass must not be less than 0/,
    },
    {
      name: 'nothing to move',
      run: () => axle.shiftForAxleChange(10, 0, 3),
      says: /mass to move must be greater/,
    },
    { name: 'no distance', run: () => axle.massToShift(3000, 0.1, 0), says: /distance moved must not be 0/ },
    { name: 'the wrong way', run: () => axle.massToShift(3000, 0.1, -1), says: /same way/ },
    { name: 'no mass at all', run: () => axle.massToShift(0, 0.1, 1), says: /mass of the whole/ },
    { name: 'track 0', run: () => wheel.rightShare(0, 0), says: /track must be greater than 0/ },
    {
      name: 'axle load NaN',
      run: () => wheel.wheelLoads(Number.NaN, 0, 1.7),
      says: /axle load must be a finite/,
    },
    { name: 'weightless wheels', run: () => wheel.heavierWheelShare(0, 0), says: /sum of the wheel loads/ },
    { name: 'weightless sides', run: () => wheel.sideDifference(0, 0), says: /sum of the two sides/ },
    {
      name: 'raised by the wheelbase',
      run: () => height.centreHeightByRaisedAxle({ ...reading, raiseM: 3.6 }),
      says: /cannot be raised/,
    },
    {
      name: 'negative wheel radius',
      run: () => height.centreHeightByRaisedAxle({ ...reading, wheelRadiusM: -0.1 }),
      says: /wheel radius must not/,
    },
    {
      name: 'not raised at all',
      run: () => height.centreAboveAxlesByGain({ ...gain, raiseM: 0 }),
      says: /raise must be greater than 0/,
    },
    {
      name: 'total 0',
      run: () => height.centreAboveAxlesByGainShort({ ...gain, totalKg: 0 }),
      says: /total mass must be greater/,
    },
    {
      name: 'level readings that add up to nothing',
      run: () => height.centreAboveAxlesFrontRaised({ ...weighing, frontLevelKg: 1400, rearLevelKg: -1400 }),
      says: /sum of the level axle loads/,
    },
    { name: 'no parts', run: () => height.ladenCentreHeight([]), says: /sum of the masses/ },
    {
      name: 'height NaN',
      run: () => height.ladenCentreHeight([{ massKg: 1, heightM: Number.NaN }]),
      says: /height must be a finite/,
    },
    {
      name: 'centre on the road',
      run: () => staticStabilityFactor(1.7, 0),
      says: /height of the centre of gravity/,
    },
    {
      name: 'track negative',
      run: () => staticStabilityFactor(-1.7, 0.8),
      says: /track must be greater than 0/,
    },
    { name: 'half-width negative', run: () => uncertainty.standardUncertainty(-1), says: /half-width/ },
    { name: 'contribution NaN', run: () => uncertainty.rootSumSquare([1, Number.NaN]), says: /contribution/ },
    {
      name: 'grouped contribution NaN',
      run: () => uncertainty.combineCorrelated([[1, Number.NaN]]),
      says: /contribution/,
    },
    {
      name: 'negative uncertainty',
      run: () => uncertainty.expandedUncertainty(-1),
      says: /standard uncertainty/,
    },
    { name: 'limit NaN', run: () => uncertainty.probabilityAbove(Number.NaN, 1, 1), says: /limit must be/ },
    { name: 'value NaN', run: () => uncertainty.probabilityAbove(1, Number.NaN, 0), says: /value must be/ },
    {
      name: 'spread negative',
      run: () => uncertainty.probabilityAbove(1, 1, -1),
      says: /standard uncertainty/,
    },
    { name: 'thickness negative', run: () => arealMassOf(-0.001, 600), says: /thickness/ },
    { name: 'density NaN', run: () => arealMassOf(0.001, Number.NaN), says: /density/ },
    { name: 'area negative', run: () => layerMass(-1, 0.001, 600), says: /area must not/ },
    { name: 'share above 1', run: () => layerMass(1, 0.001, 600, 1.5), says: /between 0 and 1/ },
    { name: 'share NaN', run: () => layerMass(1, 0.001, 600, Number.NaN), says: /share of the area/ },
    { name: 'half a person', run: () => minimumPayMass(1.5, 6), says: /whole number/ },
    { name: 'nobody', run: () => minimumPayMass(0, 6), says: /whole number/ },
    { name: 'length 0', run: () => minimumPayMass(2, 0), says: /overall length/ },
  ])('$name', ({ run, says }) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(says);
  });
});

test('nothing to add up is 0, not an error', () => {
  expect(axle.axleLoads([], 3)).toEqual({ frontKg: 0, rearKg: 0 });
  expect(uncertainty.rootSumSquare([])).toBe(0);
  expect(uncertainty.combineCorrelated([])).toBe(0);
});
