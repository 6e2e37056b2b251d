import { describe, expect, test } from 'vitest';
import { conductors } from '../../src/catalogue/electrical/conductors.ts';
import { conductor } from '../../src/plan/conductor-field.ts';
import { unpackRefusal } from '../../src/plan/fields.ts';

const read = (raw: unknown) => conductor().safeParse(raw);

const refusalOf = (raw: unknown) => {
  const { error } = read(raw);
  const [issue, ...more] = error?.issues ?? [];
  if (!issue || more.length > 0) throw new Error(`not one issue about ${JSON.stringify(raw)}`);
  return unpackRefusal(issue.message);
};

describe('a size with its system', () => {
  test.each([
    ['2.5 mm2', 'mm²', '2.5'],
    ['2.5 mm²', 'mm²', '2.5'],
    ['2.5mm^2', 'mm²', '2.5'],
    ['  16   mm2 ', 'mm²', '16'],
    ['2.50 mm2', 'mm²', '2.5'],
    ['10.0 mm2', 'mm²', '10'],
    ['10 AWG', 'AWG', '10'],
    ['10awg', 'AWG', '10'],
    ['1/0 AWG', 'AWG', '1/0'],
    ['4/0 SAE', 'SAE', '4/0'],
    ['10 sae', 'SAE', '10'],
  ])('%s', (raw, system, size) => {
    expect(read(raw).data).toEqual({ system, size });
  });

  test('every size of the catalogue can be written, and no gauge reads as another system', () => {
    for (const { system, size } of conductors) {
      const unit = system === 'mm²' ? 'mm2' : system;
      expect(read(`${size} ${unit}`).data).toEqual({ system, size });
    }
  });
});

describe('a bare gauge is an error, whatever it might mean', () => {
  test.each(['10', '2.5', '1/0', ' 4 '])('%s', (raw) => {
    const { message, expected } = refusalOf(raw);
    expect(message).toBe(`\`${raw}\` may be square millimetres, AWG or SAE: three different sizes`);
    expect(expected).toContain('`10 AWG`');
  });
});

test.each(['6 mm', '6mm', '2.5 MM'])('%s is an outer size', (raw) => {
  expect(refusalOf(raw).message).toMatch(/is a diameter: cable sold by its outer size holds far less copper/);
});

describe('a size that is none', () => {
  test.each([
    ['3 mm2', /^one of 0\.14, .*2\.5, 4, .*150, in mm2$/],
    ['15 AWG', /^one of 18, 16, .*1\/0, .*4\/0, in AWG$/],
    ['3 SAE', /^one of 18, .* 4, 2, .*in SAE$/],
    ['0 mm2', /in mm2$/],
    ['5/0 AWG', /in AWG$/],
    ['2.5 AWG', /in AWG$/],
    // A gauge written with its system's zeros is another matter than a fraction of one.
    ['00 AWG', /in AWG$/],
  ])('%s', (raw, expected) => {
    const refusal = refusalOf(raw);
    expect(refusal.message).toBe(`\`${raw}\` is not a standard size`);
    expect(refusal.expected).toMatch(expected);
  });

  test.each([
    'thick',
    '',
    '-2.5 mm2',
    '2,5 mm2',
    '2.5 mm2 ± 1 mm2',
    '2 * 2.5 mm2',
    '2.5 mm3',
    'AWG 10',
    '10 BWG',
  ])('%s', (raw) => {
    expect(refusalOf(raw).message).toBe(`\`${raw}\` is no size of a conductor`);
  });
});

describe('what is no text', () => {
  test.each([
    [undefined, 'is missing'],
    [null, 'has no value'],
    [true, 'should be one value, not a section, a list or true/false'],
    [['4 mm2'], 'should be one value, not a section, a list or true/false'],
    [{ size: '4 mm2' }, 'should be one value, not a section, a list or true/false'],
  ])('%j', (raw, message) => {
    expect(refusalOf(raw).message).toBe(message);
  });
});
