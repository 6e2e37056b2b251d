import { describe, expect, test } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';
import { readMeasured, withoutCalculator } from '../../src/plan/quantity.ts';
import { bare, dimensionCalled, dimensions, parseUnit, unitHints, units } from '../../src/plan/units.ts';
import { exactly, expectPublished, type Published } from '../published/agreement.ts';

const act: Citation = {
  title:
    'Weights and Measures Act 1985, schedule 1, parts IV and V (as in force in 1991 for pound and ounce)',
  readAt: 'https://www.legislation.gov.uk/ukpga/1985/72/schedule/1',
  provenance: 'read',
};
const rule: Citation = {
  title: '16 CFR 500.19, conversion of inch/pound quantities',
  readAt: 'https://www.law.cornell.edu/cfr/text/16/500.19',
  provenance: 'read',
};
const ukTable: Citation = {
  title: 'A table of the UK system of weights and measures, with the exact metric equivalents',
  readAt: 'http://www.mce-software.com/Tables/UK%20System.htm',
  provenance: 'read',
};
const nistValues: Citation = {
  title: 'Exact values for capacity and mass, worked out from NIST Handbook 44, appendix C',
  readAt: 'http://angelfire.com/whittenwords/measure/capacity01.htm',
  provenance: 'read',
};
const si: Citation = { title: 'The International System of Units: the prefixes', provenance: 'memory' };
const siUnits: Citation = {
  title: 'The International System of Units: derived units with names of their own, and hour, minute and day',
  provenance: 'memory',
};

const poundsPerSquareInch: Citation = {
  title: 'Conversion of units of pressure: 1 psi is 6894.757 Pa',
  provenance: 'memory',
};

const printed = (value: number, within: number): Published => ({
  value,
  within,
  because: 'half a unit in the last printed digit',
});

/** Each unit as a multiple of the unit that is made of kilograms, metres, seconds, amperes and kelvins. */
const published: readonly (readonly [symbol: string, Published, Citation])[] = [
  ['kg', exactly(1), si],
  ['g', exactly(1e-3), si],
  ['t', exactly(1000), act],
  ['lb', exactly(0.45359237), act],
  ['oz', exactly(0.45359237 / 16), act],
  ['oz', printed(28.3495e-3, 5e-8), rule],
  ['st', exactly(14 * 0.45359237), ukTable],
  ['m', exactly(1), si],
  ['mm', exactly(1e-3), act],
  ['cm', exactly(1e-2), act],
  ['in', exactly(2.54e-2), rule],
  ['inch', exactly(2.54e-2), rule],
  ['ft', exactly(30.48e-2), rule],
  ['yd', exactly(0.9144), rule],
  ['L', exactly(1e-3), act],
  ['l', exactly(1e-3), act],
  ['ml', exactly(1e-6), act],
  ['mL', exactly(1e-6), act],
  ['cl', exactly(1e-5), act],
  ['gal_imp', exactly(4.54609e-3), ukTable],
  ['pt_imp', exactly(4.54609e-3 / 8), ukTable],
  ['gal_us', printed(3.78541e-3, 5e-9), rule],
  ['gal_us', exactly(8 * 473.176473e-6), nistValues],
  ['pt_us', exactly(473.176473e-6), nistValues],
  ['s', exactly(1), siUnits],
  ['min', exactly(60), siUnits],
  ['h', exactly(60 * 60), siUnits],
  ['d', exactly(24 * 60 * 60), siUnits],
  ['A', exactly(1), siUnits],
  ['mA', exactly(1e-3), si],
  ['V', exactly(1), siUnits],
  ['mV', exactly(1e-3), si],
  ['W', exactly(1), siUnits],
  ['kW', exactly(1e3), si],
  // A joule is a watt for a second, a coulomb an ampere for a second; an hour has 3600 of them.
  ['Wh', exactly(3600), siUnits],
  ['kWh', exactly(3.6e6), siUnits],
  ['Ah', exactly(3600), siUnits],
  ['mAh', exactly(3.6), siUnits],
  ['ohm', exactly(1), siUnits],
  ['mohm', exactly(1e-3), si],
  ['K', exactly(1), siUnits],
  ['Pa', exactly(1), siUnits],
  ['kPa', exactly(1e3), si],
  // The bar is 100 kPa.
  ['mbar', exactly(100), siUnits],
  ['bar', exactly(1e5), siUnits],
  ['psi', printed(6894.757, 5e-4), poundsPerSquareInch],
];

test.each(published)('1 %s', (symbol, value, source) => {
  const unit = units.get(symbol);
  expect(unit).toBeDefined();
  expectPublished(unit?.factor ?? Number.NaN, value, source);
});

test('every unit is compared with a source', () => {
  expect([...new Set(published.map(([symbol]) => symbol))].sort()).toEqual([...units.keys()].sort());
});

describe('electrical units agree with each other as the laws of electricity say', () => {
  test.each([
    ['V', 'ohm*A'],
    ['W', 'V*A'],
    ['W', 'A^2*ohm'],
    ['Wh', 'V*Ah'],
    ['Wh', 'W*h'],
    ['Ah', 'A*h'],
    ['mAh', 'mA*h'],
    ['kWh', 'kW*h'],
    ['mV', 'mohm*A'],
    // 1 V = 1 kg·m²/(s³·A): a volt is a watt to the ampere, a watt a joule to the second.
    ['V', 'kg*m2/s3/A'],
  ])('%s = %s', (one, other) => {
    const [left, right] = [parseUnit(one), parseUnit(other)];
    if ('unknown' in left || 'unknown' in right) throw new Error('a unit is not known');
    expect(right.factor / left.factor).toBeCloseTo(1, 12);
    expect(right.dimension).toEqual(left.dimension);
  });
});

describe('units put together', () => {
  test.each([
    // 16 CFR 500.19 prints the first three as exact.
    ['in2', 6.4516e-4, 'area'],
    ['ft2', 929.0304e-4, 'area'],
    ['ft^2', 929.0304e-4, 'area'],
    ['cm2', 1e-4, 'area'],
    ['m²', 1, 'area'],
    ['m3', 1, 'volume'],
    ['m³', 1, 'volume'],
    ['cm^3', 1e-6, 'volume'],
    ['m2*m', 1, 'volume'],
    ['m · m', 1, 'area'],
    ['kg/m2', 1, 'arealMass'],
    ['g/m²', 1e-3, 'arealMass'],
    ['kg / m2', 1, 'arealMass'],
    ['lb/ft2', 0.45359237 / 0.09290304, 'arealMass'],
    ['kg/m3', 1, 'density'],
    ['g/cm3', 1000, 'density'],
    ['kg/L', 1000, 'density'],
    ['kg/m2/m', 1, 'density'],
    ['mV/K', 1e-3, 'voltagePerKelvin'],
    ['V/K', 1, 'voltagePerKelvin'],
  ] as const)('%s', (text, factor, kind) => {
    const unit = parseUnit(text);
    if ('unknown' in unit) throw new Error(`${unit.unknown} is not known`);
    expect(unit.factor / factor).toBeCloseTo(1, 12);
    expect(unit.dimension).toEqual(dimensions[kind].dimension);
  });

  test.each([
    ['kgs', 'kgs'],
    ['kg/sqm', 'sqm'],
    ['m5', 'm5'],
    ['kg//m', ''],
    ['', ''],
    ['toString', 'toString'],
    ['__proto__', '__proto__'],
  ])('%s is not known for %s', (text, unknown) => {
    expect(parseUnit(text)).toEqual({ unknown });
  });
});

/** The dimension of a unit, be it one with a factor or a scale of temperature. */
function dimensionOfUnit(symbol: string) {
  const reading = readMeasured(
    `1 ${symbol}`,
    withoutCalculator(() => false),
  );
  return reading.ok ? reading.value.dimension : undefined;
}

test.each(Object.entries(dimensions))('the units offered for %s are units of that kind', (_, kind) => {
  for (const symbol of kind.units.filter((each) => each !== '%')) {
    expect(dimensionOfUnit(symbol), symbol).toEqual(kind.dimension);
  }
});

test('what a hint is for is no unit, and every unit that a hint offers is one', () => {
  for (const [name, hint] of unitHints) {
    expect(units.has(name), name).toBe(false);
    for (const [, offered = ''] of hint.matchAll(/`(?:-?[\d.]+ )?([^`]+)`/g))
      expect(dimensionOfUnit(offered), `${name}: ${offered}`).toBeDefined();
  }
});

test.each([
  ['mass', 'a mass'],
  ['duration', 'a time'],
  ['current', 'a current'],
  ['voltage', 'a voltage'],
  ['power', 'a power'],
  ['energy', 'an energy'],
  ['charge', 'a charge'],
  ['resistance', 'a resistance'],
  ['voltagePerKelvin', 'a voltage per kelvin'],
  ['temperature', 'a temperature'],
  ['share', 'a bare number'],
  ['number', 'a bare number'],
] as const)('%s is called %s', (kind, words) => {
  expect(dimensionCalled(dimensions[kind].dimension)).toBe(words);
});

test('a dimension without a name is called none', () => {
  expect(dimensionCalled({ ...bare, kg: 2 })).toMatch(/^no kind /);
});
