import { describe, expect, test } from 'vitest';
import type { Codes } from '../../src/catalogue/codes.ts';
import {
  type LicenceEnergy,
  type LicenceQuestion,
  licenceCautions,
  licenceClassesFor,
  lowestClassFor,
} from '../../src/catalogue/licences.ts';

const ask = (
  codes: Codes,
  massKg: number,
  energy: LicenceEnergy = 'any',
  more: Partial<LicenceQuestion> = {},
) => lowestClassFor({ codes, massKg, energy, ...more });

/**
 * The boundaries are inclusive in the law ("not exceeding 3.5 tonnes", "exceeding 3.5 tonnes but not exceeding 7.5
 * tonnes"), so one kilogram either side must change the class. No tolerance.
 */
describe('Great Britain: SI 1999/2864 schedule 2 and SI 2025/608', () => {
  test.each([
    [3500, 'any', 'B', false],
    [3500.1, 'any', 'C1', true],
    [3501, 'any', 'C1', true],
    [7500, 'any', 'C1', true],
    [7501, 'any', 'C', true],
    [3501, 'zero emission', 'B', false],
    [4250, 'zero emission', 'B', false],
    [4251, 'zero emission', 'C1', true],
    [7501, 'zero emission', 'C', true],
  ] as const)('%d kg, %s: category %s', (massKg, energy, category, needsTraining) => {
    expect(ask('uk', massKg, energy)).toMatchObject({ category, needsTraining });
  });

  // A car test passed before 1 January 1997 includes C1; the day itself does not.
  test.each([
    ['1996-12-31', false],
    ['1997-01-01', true],
    ['1997-01-02', true],
    [undefined, true],
  ])('4000 kg, test passed %s: C1 needs a further test: %s', (testPassed, needsTraining) => {
    const more = testPassed === undefined ? {} : { testPassed };
    expect(ask('uk', 4000, 'any', more)).toMatchObject({ category: 'C1', needsTraining });
  });

  test('an old test does not reach above 7500 kg', () => {
    expect(ask('uk', 7500, 'any', { testPassed: '1990-06-01' })?.needsTraining).toBe(false);
    expect(ask('uk', 7501, 'any', { testPassed: '1990-06-01' })).toMatchObject({
      category: 'C',
      needsTraining: true,
    });
  });

  // In force on 10 June 2025.
  test.each([
    ['2025-06-09', 'C1'],
    ['2025-06-10', 'B'],
    ['2025-06-11', 'B'],
  ])('a battery van of 4250 kg on %s: category %s', (onDate, category) => {
    expect(ask('uk', 4250, 'zero emission', { onDate })?.category).toBe(category);
  });

  test('the zero-emission rule is no help to a diesel van', () => {
    expect(licenceClassesFor('uk', 'any').some((row) => row.maxMassKg === 4250)).toBe(false);
    expect(licenceClassesFor('uk', 'zero emission').some((row) => row.maxMassKg === 4250)).toBe(true);
  });
});

describe('European Union: Directive 2006/126/EC', () => {
  test.each([
    [3500, 'any', 'B'],
    [3501, 'any', 'C1'],
    [7500, 'any', 'C1'],
    [7501, 'any', 'C'],
    // Directive (EU) 2025/2205 is not transposed: 4250 kg is a caution, not an allowance.
    [4250, 'zero emission', 'C1'],
  ] as const)('%d kg, %s: category %s', (massKg, energy, category) => {
    expect(ask('eu', massKg, energy)?.category).toBe(category);
  });

  test('the coming directive is a caution', () => {
    expect(licenceCautions.eu.join(' ')).toContain('4250 kg');
  });

  test('a British test date gives nothing here', () => {
    expect(ask('eu', 4000, 'any', { testPassed: '1990-01-01' })?.needsTraining).toBe(true);
  });
});

describe('Australia: state tables of licence classes', () => {
  test.each([
    [4500, 'C'],
    [4501, 'LR'],
    [8000, 'LR'],
    [8001, 'MR'],
  ])('%d kg: class %s', (massKg, category) => {
    expect(ask('au', massKg)?.category).toBe(category);
  });
});

// 49 CFR 383.91: group B from 26,001 lb, printed there as 11,794 kg. 26,000 lb is 11,793.4 kg.
describe('United States: 49 CFR 383.91', () => {
  test.each([
    [4536, false],
    [11793, false],
    [11794, true],
  ])('%d kg: needs a further class: %s', (massKg, needsTraining) => {
    expect(ask('us', massKg)?.needsTraining).toBe(needsTraining);
  });

  test('the limit is 26,000 lb in whole kilograms', () => {
    expect(Math.floor(26_000 * 0.45359237)).toBe(
      licenceClassesFor('us', 'any').find((row) => !row.needsTraining)?.maxMassKg,
    );
  });
});

test.each(['1996-13-01', '1996-02-30', '01/01/1997', '1997', '1997-1-1', ''])('%j is no date', (text) => {
  expect(() => licenceClassesFor('uk', 'any', text)).toThrow(/year-month-day/);
  expect(() => ask('uk', 3500, 'any', { onDate: text })).toThrow(RangeError);
});

test.each([0, -1, Number.NaN])('a plate of %d kg is refused', (massKg) => {
  expect(() => ask('uk', massKg)).toThrow(RangeError);
});
