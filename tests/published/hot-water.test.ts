// Heating and mixing water: worked examples, and a slip in one of them.
import { describe, expect, test } from 'vitest';
import {
  flowHeatedM3S,
  flowRiseK,
  heatingEnergyJ,
  heatingSeconds,
  hotShare,
  mixedFromLayered,
  mixedFromStirred,
  sensibleHeatJ,
} from '../../src/calc/water/heating.ts';
import { waterLimits } from '../../src/catalogue/water/limits.ts';
import {
  hotColdSystems,
  kettleArticle,
  mixingBalance,
  panExample,
} from '../../src/catalogue/water/sources.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

describe('heating', () => {
  test('a quarter litre in an aluminium pan, 60 K: 62.8 + 27.0 = 89.8 kJ', () => {
    const waterJ = sensibleHeatJ(0.25, 4186, 60);
    const panJ = sensibleHeatJ(0.5, 900, 60);
    expectPublished(waterJ / 1000, printed(62.8, 0.1), panExample);
    expectPublished(panJ / 1000, exactly(27), panExample);
    expectPublished((waterJ + panJ) / 1000, printed(89.8, 0.1), panExample);
  });

  test('20 l by 80 K with 3.6 kW: 1.867 kWh in 0.52 h', () => {
    const energyJ = sensibleHeatJ(20, 4200, 80);
    expectPublished(energyJ / 3.6e6, printed(1.867, 0.001), kettleArticle);
    expectPublished(heatingSeconds(energyJ, 3600) / 3600, printed(0.52, 0.01), kettleArticle);
    expectPublished(
      heatingEnergyJ({ volumeM3: 0.02, fromC: 20, toC: 100 }) / 3.6e6,
      { value: 1.867, within: 0.012, because: 'water is lighter and takes a little less than 4.2 kJ/(kg K)' },
      kettleArticle,
    );
  });

  test('10 l by 60 K: 0.698 kWh', () => {
    expectPublished(
      heatingEnergyJ({ volumeM3: 0.01, fromC: 10, toC: 70 }) / 3.6e6,
      { value: 0.698, within: 0.002, because: 'from 4.186 kJ/(kg K) and a kilogram a litre' },
      mixingBalance,
    );
  });

  test('an instant heater warms its own flow', () => {
    const flow = flowHeatedM3S(10_000, 28, 10);
    expect(flowRiseK(10_000, flow, 10)).toBeCloseTo(28, 9);
    // 10 kW over 4.19 kJ/(kg K) and 28 K.
    expect(flow * 60_000).toBeCloseTo(5.11, 2);
  });
});

describe('mixing', () => {
  const store = { storeM3: 0.01, hotC: 70, coldC: 10, mixedC: 38 };

  test('10 l at 70 °C: 21.43 l at 38 °C, 4.29 min at 5 l/min', () => {
    const { mixedM3, hotM3, coldM3 } = mixedFromLayered(store);
    expectPublished(mixedM3 * 1000, printed(21.43, 0.01), mixingBalance);
    expectPublished((mixedM3 * 1000) / 5, printed(4.29, 0.01), mixingBalance);
    expectPublished(coldM3 * 1000, printed(11.43, 0.01), mixingBalance);
    expect(hotM3 + coldM3).toBeCloseTo(mixedM3, 12);
    expectPublished(hotShare(70, 10, 38), printed(0.4667, 0.0001), mixingBalance);
  });

  test('stirred: 7.62 l of the store at or above 38 °C', () => {
    expectPublished(mixedFromStirred(store).hotM3 * 1000, printed(7.62, 0.01), mixingBalance);
  });

  test('the 11.43 l that go with them are the mix, not the cold added to it', () => {
    const { mixedM3, hotM3, coldM3 } = mixedFromStirred(store);
    expectPublished(mixedM3 * 1000, printed(11.43, 0.01), mixingBalance);
    expect(coldM3 * 1000).toBeCloseTo(3.81, 2);
    expect(coldM3).toBeCloseTo(mixedM3 - hotM3, 12);
    // Drawn in small steps with the store refilled and stirred, it comes to the same.
    let storeC = 70;
    let drawn = 0;
    const step = 1e-6;
    while (storeC > 38) {
      drawn += (step * (storeC - 10)) / 28;
      storeC += (step / 0.01) * (10 - storeC);
    }
    expect(drawn * 1000).toBeCloseTo(11.43, 2);
  });
});

describe('temperatures against legionella', () => {
  test.each([
    ['cold-water-temperature', 20],
    ['hot-store-temperature', 60],
    ['hot-outlet-temperature', 50],
    ['hot-water-wait-longest', 60],
    ['legionella-growth-from', 20],
    ['legionella-growth-to', 45],
  ] as const)('%s', (id, value) => {
    expectPublished(waterLimits[id].value, exactly(value), hotColdSystems);
  });
});
