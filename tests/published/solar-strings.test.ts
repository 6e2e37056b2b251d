// Cold voltages of strings, currents of arrays and sizes of controllers against published examples.
import { describe, expect, test } from 'vitest';
import {
  arrayCurrents,
  arrayOverControllerShare,
  controllerOutputs,
  controllersFor,
} from '../../src/calc/electrical/solar-current.ts';
import {
  coldFactor,
  moduleVoltageByShareV,
  moduleVoltageByTableV,
  moduleVoltageByVoltsV,
  mostInSeries,
  stringVoltageV,
} from '../../src/calc/electrical/solar-voltage.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  arrayOverController,
  chargeVoltages,
  controllerPractices,
  controllerSizesA,
  solarCurrentFactors,
} from '../../src/catalogue/electrical/charging-practice.ts';
import { coldVoltageRows } from '../../src/catalogue/electrical/cold-voltage.ts';
import {
  coldTable,
  controllerBuyersGuide,
  controllerChargeVoltage,
  controllerShopArticle,
  solarCurrentCourse,
} from '../../src/catalogue/electrical/supply-sources.ts';
import { exactly, expectPublished } from './agreement.ts';

const cents = (value: number) => ({ value, within: 0.005, because: 'printed to 0.01 V' });

describe('cold factors of the code', () => {
  test.each([
    [25, 1],
    [24, 1.02],
    [20, 1.02],
    [19, 1.04],
    [15, 1.04],
    [14, 1.06],
    [10, 1.06],
    [9, 1.08],
    [5, 1.08],
    [4, 1.1],
    [0, 1.1],
    [-1, 1.12],
    [-5, 1.12],
    [-6, 1.14],
    [-10, 1.14],
    [-11, 1.16],
    [-15, 1.16],
    [-16, 1.18],
    [-20, 1.18],
    [-21, 1.2],
    [-25, 1.2],
    [-26, 1.21],
    [-30, 1.21],
    [-31, 1.23],
    [-35, 1.23],
    [-36, 1.25],
    [-40, 1.25],
  ])('at exactly %d °C: %d', (temperatureC, factor) => {
    expectPublished(coldFactor(coldVoltageRows, temperatureC), exactly(factor), coldTable);
  });

  test('between two whole degrees the colder row holds', () => {
    expect(coldFactor(coldVoltageRows, -5.1)).toBe(1.14);
    expect(coldFactor(coldVoltageRows, -10.1)).toBe(1.16);
    expect(coldFactor(coldVoltageRows, -15.1)).toBe(1.18);
    expect(coldFactor(coldVoltageRows, 24.9)).toBe(1.02);
  });

  test('rows are whole degrees that follow each other, and the factor grows with the cold', () => {
    for (const [index, row] of coldVoltageRows.entries()) {
      const colder = coldVoltageRows[index + 1];
      if (colder === undefined) continue;
      expect(colder.toC).toBe(row.fromC - 1);
      expect(colder.factor).toBeGreaterThan(row.factor);
    }
  });

  // An off-grid guide prints the rows below 0 °C as 0 to −4, −5 to −9, … instead of −1 to −5, −6 to −10, …: it agrees
  // only at multiples of 5 K and gives too low a voltage at all degrees between them.
  const shiftedCopy = (temperatureC: number): number => {
    const factors = [1.1, 1.12, 1.14, 1.16, 1.18, 1.2, 1.21, 1.23, 1.25];
    return factors[Math.floor(-temperatureC / 5)] ?? Number.NaN;
  };
  test.each([-5, -10, -15])('the shifted copy agrees at %d °C', (temperatureC) => {
    expect(shiftedCopy(temperatureC)).toBe(coldFactor(coldVoltageRows, temperatureC));
  });
  test.each([-1, -4, -6, -9, -11, -14, -36])('the shifted copy is too low at %d °C', (temperatureC) => {
    expect(shiftedCopy(temperatureC)).toBeLessThan(coldFactor(coldVoltageRows, temperatureC));
  });
});

describe('a string of 49.5 V modules at −10 °C under 600 V', () => {
  test('by the table: 1.14, 56.43 V, 10 modules', () => {
    const moduleV = moduleVoltageByTableV(49.5, coldVoltageRows, -10);
    expectPublished(moduleV, exactly(56.43), coldTable);
    expectPublished(mostInSeries(600, moduleV), exactly(10), coldTable);
  });

  test('by −0.27 %/K: 54.18 V, 11 modules, 596 V', () => {
    const moduleV = moduleVoltageByShareV(49.5, -0.0027, -10);
    expectPublished(moduleV, cents(54.18), coldTable);
    expectPublished(mostInSeries(600, moduleV), exactly(11), coldTable);
    const whole = { value: 596, within: 0.5, because: 'printed in whole volts' };
    expectPublished(stringVoltageV(moduleV, 11), whole, coldTable);
  });
});

test('33.2 V and −0.12 V/K at −29 °C under 150 V: 39.68 V, three in series', () => {
  const moduleV = moduleVoltageByVoltsV(33.2, -0.12, -29);
  expectPublished(moduleV, exactly(39.68), controllerBuyersGuide);
  expectPublished(stringVoltageV(moduleV, 2), exactly(79.36), controllerBuyersGuide);
  expectPublished(stringVoltageV(moduleV, 3), exactly(119.04), controllerBuyersGuide);
  expectPublished(stringVoltageV(moduleV, 4), exactly(158.72), controllerBuyersGuide);
  expectPublished(mostInSeries(150, moduleV), exactly(3), controllerBuyersGuide);
});

test.each([
  { ratedV: 35.4, perK: -0.16, temperatureC: 55, printedV: 30.6 },
  { ratedV: 36.4, perK: -0.17, temperatureC: 70, printedV: 28.75 },
  { ratedV: 45.8, perK: -0.13, temperatureC: 0, printedV: 49.05 },
])('$ratedV V, $perK V/K at $temperatureC °C: $printedV V', ({ ratedV, perK, temperatureC, printedV }) => {
  const textbook: Citation = {
    title: 'textbook page on calculating module voltages, 2011',
    readAt: 'https://www.scribd.com/document/700873953/Calculating-Module-Voltages-1',
    provenance: 'read',
  };
  expectPublished(moduleVoltageByVoltsV(ratedV, perK, temperatureC), exactly(printedV), textbook);
});

test('49.5 V and −0.28 %/K at −5 °C under 1000 V: 53.66 V, 18 modules; 41.2 V at 45 °C: 38.9 V', () => {
  const page: Citation = {
    title: 'electrical training page on a 550 W module',
    readAt: 'https://amozeshbargh.ir/post-69',
    provenance: 'read',
    caution:
      'For the hot voltage it takes the air’s temperature and the open-circuit coefficient, both too kind: arithmetic only.',
  };
  const coldV = moduleVoltageByShareV(49.5, -0.0028, -5);
  expectPublished(coldV, cents(53.66), page);
  expectPublished(mostInSeries(1000, coldV), exactly(18), page);
  const hotV = moduleVoltageByShareV(41.2, -0.0028, 45);
  expectPublished(hotV, { value: 38.9, within: 0.05, because: 'printed to 0.1 V' }, page);
  const stringV = { value: 700, within: 0.5, because: 'printed in whole volts' };
  expectPublished(stringVoltageV(hotV, 18), stringV, page);
});

describe('array current', () => {
  test('11.2 A: 14.0 A can flow, conductors for 17.5 A', () => {
    const { ratedA, mostA, conductorA } = arrayCurrents(11.2, 1);
    expectPublished(mostA, exactly(14), solarCurrentCourse);
    expectPublished(conductorA, exactly(17.5), solarCurrentCourse);
    const printed = { value: 1.56, within: 0.005, because: 'printed to 0.01' };
    expectPublished(conductorA / ratedA, printed, solarCurrentCourse);
  });

  test('the calculation and the catalogue hold the same factors', () => {
    const { ratedA, mostA, conductorA } = arrayCurrents(8, 2);
    expect(ratedA).toBe(16);
    expect(mostA / ratedA).toBe(solarCurrentFactors.brightness);
    expect(conductorA / mostA).toBe(solarCurrentFactors.continuous);
  });
});

describe('controller output, three practices', () => {
  const margin = controllerPractices.find(({ id }) => id === 'nominal voltage')?.margin ?? Number.NaN;
  const at24V = { nominalV: 24, lowestV: 21, chargeV: 28.8 };
  const nextSize = (currentA: number) => controllerSizesA.find((sizeA) => sizeA >= currentA) ?? Number.NaN;
  const tenth = (value: number) => ({ value, within: 0.05, because: 'printed to 0.1 A' });

  test('1000 W at 24 V: 41.7 A, with margin 52.1 A, the next size is 60 A', () => {
    const { byNominalA } = controllerOutputs(1000, at24V, margin);
    expectPublished(byNominalA / margin, tenth(41.7), controllerShopArticle);
    expectPublished(byNominalA, tenth(52.1), controllerShopArticle);
    expectPublished(nextSize(byNominalA), exactly(60), controllerShopArticle);
  });

  test('1200 W at 24 V: 62.5 A, the next size is 80 A', () => {
    const { byNominalA } = controllerOutputs(1200, at24V, margin);
    expectPublished(byNominalA, exactly(62.5), controllerShopArticle);
    expectPublished(nextSize(byNominalA), exactly(80), controllerShopArticle);
  });

  test('4920 W at 46 V: 107 A, two controllers of 60 A, 1.8 of one', () => {
    const { byLowestA } = controllerOutputs(4920, { nominalV: 48, lowestV: 46, chargeV: 57.6 }, margin);
    const whole = { value: 107, within: 0.5, because: 'printed in whole amperes' };
    expectPublished(byLowestA, whole, controllerBuyersGuide);
    expectPublished(controllersFor(byLowestA, 60), exactly(2), controllerBuyersGuide);
    const ratio = { value: 1.8, within: 0.05, because: 'printed to 0.1' };
    expectPublished(byLowestA / 60, ratio, controllerBuyersGuide);
  });

  test('the charge voltage gives the least current', () => {
    const { byNominalA, byLowestA, byChargeA } = controllerOutputs(1000, at24V, margin);
    expectPublished(byChargeA, exactly(1000 / 28.8), controllerChargeVoltage);
    expect(byChargeA).toBeLessThan(byLowestA);
    expect(byChargeA).toBeLessThan(byNominalA);
  });

  // Printed: 14.4, 28.8 and 58.8 V.
  test('the charge voltage of 48 V is four times that of 12 V, not the printed 58.8 V', () => {
    const at = (nominalV: number) =>
      chargeVoltages.find((row) => row.nominalV === nominalV)?.chargeV ?? Number.NaN;
    expectPublished(at(12), exactly(14.4), controllerChargeVoltage);
    expectPublished(at(24), exactly(28.8), controllerChargeVoltage);
    expect(at(48)).toBeCloseTo(4 * at(12), 9);
    expect(at(48)).toBeLessThan(58.8);
  });

  test('a controller of 30 A at 14.4 V takes 648 W at most by one manual', () => {
    expect(arrayOverControllerShare(648, 30, 14.4)).toBeCloseTo(arrayOverController.share, 9);
  });
});
