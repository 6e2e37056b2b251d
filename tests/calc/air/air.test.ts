// Edges of the calculations of air, and what they refuse.
import { describe, expect, test } from 'vitest';
import { burnt, flameFlows, propaneMolecule } from '../../../src/calc/air/burning.ts';
import {
  breathedOutM3S,
  flowForPpmAfterM3S,
  flowForSteadyPpm,
  generationAtRoomM3S,
  ppmAfter,
  ppmThrough,
  secondsUntilPpm,
  steadyPpm,
} from '../../../src/calc/air/carbon-dioxide.ts';
import {
  areaForDepressionM2,
  fanCurve,
  fanFlowM3S,
  fanPressurePa,
  flowOfFans,
  straightFanCurve,
} from '../../../src/calc/air/fans.ts';
import * as moist from '../../../src/calc/air/moist-air.ts';
import * as moisture from '../../../src/calc/air/moisture.ts';
import { furtherAreaM2, parallelAreaM2, seriesAreaM2 } from '../../../src/calc/air/openings.ts';
import * as orifice from '../../../src/calc/air/orifice.ts';
import * as rates from '../../../src/calc/air/rates.ts';
import * as saturation from '../../../src/calc/air/saturation.ts';
import * as stack from '../../../src/calc/air/stack.ts';
import { breathedOutAtZeroM3S } from '../../../src/catalogue/air/carbon-dioxide.ts';
import {
  dwellingCookerRowFor,
  highShare,
  leisureRowFor,
  leisureSealedRow,
  leisureVentilation,
} from '../../../src/catalogue/air/fixed-ventilation.ts';
import { heatOfPerson } from '../../../src/catalogue/air/people-heat.ts';

const room = { outsidePpm: 425, generationM3S: 8e-6, flowM3S: 0.004, volumeM3: 9, startPpm: 425 };
const openings = { lowAreaM2: 0.002, highAreaM2: 0.012, heightM: 1.7, insideC: 18, outsideC: 2 };
const air = { insideC: 20, outsideC: 0, outsideHumidity: 0.8, releaseKgS: 3e-5, flowM3S: 0.005 };
const fan = straightFanCurve(0.17, 60);

describe('openings', () => {
  test('none side by side is 0; a closed one closes the row', () => {
    expect(parallelAreaM2([])).toBe(0);
    expect(seriesAreaM2([0.01, 0])).toBe(0);
    expect(seriesAreaM2([0.01])).toBe(0.01);
  });

  test('tiny areas do not vanish when squared', () => {
    expect(seriesAreaM2([1e-200, 1e-200]) / 1e-200).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test('no further opening helps where the others are too small', () => {
    expect(furtherAreaM2(0.01, 0.01)).toBe(Number.POSITIVE_INFINITY);
    expect(furtherAreaM2(0.01, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  test('a closed opening lets nothing through and takes any pressure', () => {
    expect(orifice.orificeFlowM3S({ areaM2: 0 }, 50)).toBe(0);
    expect(orifice.orificePressurePa({ areaM2: 0 }, 0.1)).toBe(Number.POSITIVE_INFINITY);
    expect(orifice.orificePressurePa({ areaM2: 0 }, 0)).toBe(0);
  });
});

describe('stack', () => {
  test.each([
    ['equally warm', { insideC: 10, outsideC: 10 }],
    ['level', { heightM: 0 }],
    ['closed below', { lowAreaM2: 0 }],
    ['closed above', { highAreaM2: 0 }],
    ['closed', { lowAreaM2: 0, highAreaM2: 0 }],
  ])('%s: nothing moves', (_name, change) => {
    const { flowM3S, comesIn } = stack.stackFlow({ ...openings, ...change });
    expect(flowM3S).toBe(0);
    expect(comesIn).toBe('nowhere');
  });

  test('a small low opening pulls the neutral level up and starves the large high one', () => {
    const { flowM3S, neutralM, comesIn } = stack.stackFlow(openings);
    expect(comesIn).toBe('low');
    expect(neutralM).toBeGreaterThan(1.6);
    const ten = stack.stackFlow({ ...openings, highAreaM2: 0.12 });
    expect(ten.flowM3S).toBeLessThan(1.05 * flowM3S);
  });

  test('a room colder than outside takes air in above', () => {
    expect(stack.stackFlow({ ...openings, insideC: 20, outsideC: 35 }).comesIn).toBe('high');
  });
});

describe('fans', () => {
  test('a closed room stalls the fan at its stall pressure', () => {
    const { freshM3S, depressionPa } = flowOfFans({ exhausts: [fan], intakes: [], opening: { areaM2: 0 } });
    expect(freshM3S).toBe(0);
    expect(depressionPa).toBeCloseTo(60, 6);
  });

  test('no fan moves nothing', () => {
    const { freshM3S, depressionPa } = flowOfFans({ exhausts: [], intakes: [], opening: { areaM2: 0.01 } });
    expect(freshM3S).toBe(0);
    expect(depressionPa).toBe(0);
  });

  test('a like pair leaves the room at the pressure outside and moves what one moves in the open', () => {
    const { freshM3S, depressionPa } = flowOfFans({
      exhausts: [fan],
      intakes: [fan],
      opening: { areaM2: 0.001 },
    });
    expect(depressionPa).toBeCloseTo(0, 9);
    expect(freshM3S).toBeCloseTo(0.17, 6);
  });

  test('small openings let a fan move a part of what it says in the open', () => {
    const { freshM3S } = flowOfFans({ exhausts: [fan], intakes: [], opening: { areaM2: 0.0035 } });
    expect(freshM3S).toBeLessThan(0.14 * 0.17);
  });

  test('beyond the ends of the curve', () => {
    expect(fanFlowM3S(fan, 61)).toBe(0);
    expect(fanFlowM3S(fan, -5)).toBe(0.17);
    expect(fanPressurePa(fan, 0.2)).toBe(0);
    expect(areaForDepressionM2(fan, 70)).toBe(0);
  });
});

describe('carbon dioxide', () => {
  test('without fresh air it rises on a straight line', () => {
    const closed = { ...room, flowM3S: 0 };
    expect(steadyPpm(closed)).toBe(Number.POSITIVE_INFINITY);
    expect(ppmAfter(closed, 3600)).toBeCloseTo(425 + (8e-6 * 3600 * 1e6) / 9, 9);
    expect(secondsUntilPpm(closed, 3625)).toBeCloseTo(3600, 6);
  });

  test('an empty room stays as it is', () => {
    const empty = { ...room, generationM3S: 0, flowM3S: 0 };
    expect(steadyPpm(empty)).toBe(425);
    expect(secondsUntilPpm(empty, 1000)).toBe(Number.POSITIVE_INFINITY);
    expect(flowForSteadyPpm(0, 425, 1000)).toBe(0);
    expect(ppmThrough(room, [])).toEqual([]);
  });

  test('at the limit already, and outside air at the limit', () => {
    expect(secondsUntilPpm(room, 425)).toBe(0);
    expect(flowForSteadyPpm(8e-6, 1000, 1000)).toBe(Number.POSITIVE_INFINITY);
    expect(flowForPpmAfterM3S({ ...room, startPpm: 1200 }, 1000, 3600)).toBe(Number.POSITIVE_INFINITY);
    const held = flowForPpmAfterM3S({ ...room, startPpm: 1000 }, 1000, 3600);
    expect(held).toBe(flowForSteadyPpm(8e-6, 425, 1000));
    expect(flowForPpmAfterM3S(room, 1000, 60)).toBe(0);
  });

  test('the airing of an evening is in the night', () => {
    const spells = ppmThrough(room, [
      { seconds: 3600, generationM3S: 3e-5, flowM3S: 0.002 },
      { seconds: 600, generationM3S: 8e-6, flowM3S: 0.1 },
      { seconds: 8 * 3600, generationM3S: 8e-6, flowM3S: 0.004 },
    ]);
    const [evening, airing, night] = spells;
    expect(airing?.greatestPpm).toBe(evening?.endPpm);
    expect(airing?.endPpm).toBeLessThan(evening?.endPpm ?? 0);
    expect(night?.greatestPpm).toBe(night?.endPpm);
  });
});

describe('damp', () => {
  test('without fresh air it never settles, and dry it stays like outside', () => {
    expect(moisture.steadyDamp({ ...air, flowM3S: 0 }).relativeHumidity).toBe(Number.POSITIVE_INFINITY);
    const dry = moisture.steadyDamp({ ...air, releaseKgS: 0, flowM3S: 0 });
    expect(dry.vapourPressurePa).toBe(moisture.vapourPressurePa(0, 0.8));
  });

  test('warm wet air outside cannot dry a cool room', () => {
    const muggy = { insideC: 18, outsideC: 25, outsideHumidity: 0.9, releaseKgS: 1e-5 };
    expect(moisture.flowForHumidityM3S(muggy, 0.6)).toBe(Number.POSITIVE_INFINITY);
    expect(moisture.flowForHumidityM3S({ ...air, releaseKgS: 0 }, 0.6)).toBe(0);
    expect(moisture.waterRemovedKgS(0.01, 1000, 2000, 18)).toBeLessThan(0);
  });

  test('the class counts in full in frost and not at all in summer', () => {
    expect(moisture.vapourExcessPa(1080, -10)).toBe(1080);
    expect(moisture.vapourExcessPa(1080, 0)).toBe(1080);
    expect(moisture.vapourExcessPa(1080, 10)).toBe(540);
    expect(moisture.vapourExcessPa(1080, 30)).toBe(0);
  });
});

describe('saturation', () => {
  test('ice and water meet at 0.01 °C', () => {
    const ice = saturation.saturationPressurePa(saturation.triplePointC);
    const water = saturation.saturationPressurePa(saturation.triplePointC + 1e-9);
    expect(water / ice).toBeCloseTo(1, 4);
  });

  test('saturated air is at its dew point', () => {
    expect(saturation.magnusDewPointC(17, 1)).toBeCloseTo(17, 9);
    expect(saturation.dewPointC(saturation.saturationPressurePa(17))).toBeCloseTo(17, 7);
  });
});

test('heat: no gain needs no air and no air takes no heat', () => {
  expect(rates.flowForHeatM3S(0, 3)).toBe(0);
  expect(rates.riseOfHeatK(0, 0)).toBe(0);
  expect(rates.riseOfHeatK(500, 0)).toBe(Number.POSITIVE_INFINITY);
});

describe('tables', () => {
  test('a large room-sealed vehicle has no row that was read, so the open one stands in', () => {
    const found = leisureVentilation({ outsidePlanM2: 12.3, burnsRoomAir: false });
    expect(found.rowNotRead).toBe(true);
    expect(found.row.id).toBe('open-10-to-15');
    expect(leisureVentilation({ outsidePlanM2: 9, burnsRoomAir: false }).rowNotRead).toBe(false);
  });

  test('the floor decides where it is larger, and is silent where it says the same', () => {
    const found = leisureVentilation({ outsidePlanM2: 9, floorM2: 11, burnsRoomAir: true });
    expect(found.basis).toBe('floor');
    expect(found.byFloor).toBeUndefined();
  });

  test('roof and wall vents share the high opening', () => {
    expect(highShare(leisureSealedRow, 0.00075, 0.0015)).toBeCloseTo(1, 12);
  });

  test('a flueless cooker in 5 to 10 m³ with a door to the outside', () => {
    expect(dwellingCookerRowFor(8).withOutsideDoorM2).toBe(0);
    expect(dwellingCookerRowFor(4).withOutsideDoorM2).toBeGreaterThan(0);
  });

  test('a person of unknown age or sex breathes out most; between columns on a line; below 1 met in proportion', () => {
    expect(breathedOutAtZeroM3S({ met: 1 })).toBe(3.9e-6);
    expect(breathedOutAtZeroM3S({ sex: 'female', met: 1 })).toBe(3.1e-6);
    expect(breathedOutAtZeroM3S({ ageYears: 85, met: 1 })).toBe(3e-6);
    expect(breathedOutAtZeroM3S({ sex: 'male', ageYears: 25, met: 2.5 })).toBeCloseTo(1e-5, 12);
    expect(breathedOutAtZeroM3S({ sex: 'male', ageYears: 25, met: 4 })).toBe(1.6e-5);
    expect(breathedOutAtZeroM3S({ sex: 'male', ageYears: 29.9, met: 1 })).toBe(3.9e-6);
    expect(breathedOutAtZeroM3S({ sex: 'male', ageYears: 30, met: 1 })).toBe(3.7e-6);
  });

  test('heat of people between and beyond the columns', () => {
    expect(heatOfPerson('seated at rest', 21).sensibleW).toBe(85);
    expect(heatOfPerson('seated at rest', 5)).toEqual(heatOfPerson('seated at rest', 20));
    expect(heatOfPerson('seated at rest', 40)).toEqual(heatOfPerson('seated at rest', 26));
  });
});

describe('impossible input', () => {
  const nan = Number.NaN;
  test.each<readonly [string, () => unknown, RegExp]>([
    ['negative opening', () => parallelAreaM2([-1]), /free area must not/],
    ['no openings in a row', () => seriesAreaM2([]), /number of openings/],
    ['nothing wanted', () => furtherAreaM2(0, 1), /wanted free area/],
    ['no discharge', () => orifice.orificeFlowM3S({ areaM2: 1, discharge: 0 }, 1), /discharge/],
    ['weightless air', () => orifice.orificeFlowM3S({ areaM2: 1, airKgM3: 0 }, 1), /density/],
    ['pressure NaN', () => orifice.orificeFlowM3S({ areaM2: 1 }, nan), /pressure/],
    ['flow NaN', () => orifice.orificePressurePa({ areaM2: 1 }, nan), /flow must be a finite/],
    ['no pressure for an area', () => orifice.orificeAreaM2(1, 0), /pressure must be greater/],
    ['below absolute zero', () => stack.stackFlow({ ...openings, insideC: -300 }), /absolute/],
    ['negative height', () => stack.stackFlow({ ...openings, heightM: -1 }), /height/],
    ['colder inside', () => stack.flowFromNeutralLevelM3S(1, 1, 0, 5), /warmer/],
    ['wind NaN', () => stack.windFlowM3S(1, nan), /wind/],
    ['negative stack', () => stack.naturalFlowM3S(-1, 0), /stack/],
    ['fan without pressure', () => straightFanCurve(0.1, 0), /stall/],
    ['fan that does not move', () => straightFanCurve(0, 10), /flow of the fan/],
    ['one point', () => fanCurve([{ flowM3S: 0, pressurePa: 0 }]), /from flow 0/],
    [
      'curve that ends under pressure',
      () =>
        fanFlowM3S(
          [
            { flowM3S: 0, pressurePa: 9 },
            { flowM3S: 1, pressurePa: 1 },
          ],
          1,
        ),
      /to pressure 0/,
    ],
    [
      'curve that dips',
      () =>
        fanCurve([
          { flowM3S: 0, pressurePa: 9 },
          { flowM3S: 1, pressurePa: 9 },
          { flowM3S: 2, pressurePa: 0 },
        ]),
      /pressure fall/,
    ],
    ['pressure at the fan NaN', () => fanFlowM3S(fan, nan), /pressure at the fan/],
    ['negative generation', () => steadyPpm({ ...room, generationM3S: -1 }), /set free/],
    ['no volume', () => ppmAfter({ ...room, volumeM3: 0 }, 1), /volume/],
    ['time backwards', () => ppmAfter(room, -1), /time/],
    ['limit NaN', () => secondsUntilPpm(room, nan), /limit/],
    ['no time', () => flowForPpmAfterM3S(room, 1000, 0), /time/],
    ['no metabolism', () => breathedOutM3S(0, 1), /metabolism/],
    ['negative volume', () => generationAtRoomM3S(-1, 20), /volume/],
    ['humidity in per cent', () => moisture.vapourPressurePa(20, 60), /share of at most 1/],
    ['negative water', () => moisture.steadyDamp({ ...air, releaseKgS: -1 }), /water/],
    ['class negative', () => moisture.vapourExcessPa(-1, 0), /class/],
    ['too cold', () => saturation.saturationPressurePa(-101), /−100 to 200/],
    ['no vapour', () => saturation.dewPointC(0), /vapour pressure/],
    ['too much vapour', () => saturation.dewPointC(1e9), /vapour pressure/],
    ['magnus humidity 2', () => saturation.magnusDewPointC(20, 2), /at most 1/],
    ['below the pole', () => saturation.magnusPressurePa(-250), /pole/],
    ['above the air', () => moist.pressureAtAltitudePa(20_000), /altitude/],
    ['all vapour', () => moist.humidityRatio(2000, 2000), /dry air/],
    ['more vapour than air', () => moist.airDensityKgM3(20, 2e5), /dry air/],
    ['negative floor', () => rates.dwellingFanFlowM3S(-1, 1), /floor/],
    ['no rise', () => rates.flowForHeatM3S(100, 0), /rise/],
    ['no volume to change', () => rates.airChangesPerHour(1, 0), /volume/],
    ['no carbon', () => burnt({ carbonAtoms: 0, hydrogenAtoms: 2 }), /carbon/],
    ['choked flame', () => flameFlows(propaneMolecule, 1e-5, 20, 0.5), /own air/],
    ['no area', () => leisureRowFor(0, true), /area/],
    ['no room', () => dwellingCookerRowFor(0), /volume/],
    ['running', () => breathedOutAtZeroM3S({ met: 9 }), /at most 4/],
    ['unborn', () => breathedOutAtZeroM3S({ met: 1, ageYears: -1 }), /age/],
  ])('%s', (_name, run, says) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(says);
  });
});
