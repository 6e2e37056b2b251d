import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Expressions,
  type Measured,
  ofKind,
  type Reading,
  readMeasured,
  withoutCalculator,
} from '../../src/plan/quantity.ts';
import { type DimensionName, dimensions, units } from '../../src/plan/units.ts';

const literals: Expressions = withoutCalculator(() => false);

const measure = (text: string): Measured => {
  const reading = readMeasured(text, literals);
  if (!reading.ok) throw new Error(`${text}: ${reading.refusal.message}`);
  return reading.value;
};

/** The kinds that a text is refused or taken as. */
const readAs = (text: string, ...kinds: DimensionName[]): Reading<{ kind: DimensionName }> => {
  const measured = readMeasured(text, literals);
  return measured.ok ? ofKind(measured.value, text, kinds) : measured;
};

describe('a number with a unit', () => {
  test.each([
    ['38 kg', 38, 'mass'],
    ['38kg', 38, 'mass'],
    ['  38   kg  ', 38, 'mass'],
    ['38\u00a0kg', 38, 'mass'],
    ['38\u202fkg', 38, 'mass'],
    ['+38 kg', 38, 'mass'],
    ['.5 kg', 0.5, 'mass'],
    ['5. kg', 5, 'mass'],
    ['1.5e3 g', 1.5, 'mass'],
    ['2E-3 t', 2, 'mass'],
    ['0 mm', 0, 'length'],
    ['-750 mm', -0.75, 'length'],
    ['−750 mm', -0.75, 'length'],
    ['6 ft', 1.8288, 'length'],
    ['12 in', 0.3048, 'length'],
    ['14.2 m2', 14.2, 'area'],
    ['14.2 m²', 14.2, 'area'],
    ['70 L', 0.07, 'volume'],
    ['1 gal_imp', 0.00454609, 'volume'],
    ['3.4 kg/m2', 3.4, 'arealMass'],
    ['680 kg/m³', 680, 'density'],
    ['50 %', 0.5, 'share'],
    ['50%', 0.5, 'share'],
    ['1.1', 1.1, 'number'],
  ] as const)('%s', (text, value, kind) => {
    const measured = measure(text);
    expect(measured.value).toBeCloseTo(value, 12);
    expect(measured.halfWidth).toBe(0);
    expect(measured.dimension).toEqual(dimensions[kind].dimension);
    expect(measured.percent === true).toBe(kind === 'share');
  });
});

describe('a temperature', () => {
  // Both scales are exact by definition: 0 °C is 273.15 K, and a degree Fahrenheit is 5/9 K with 32 °F at 0 °C.
  test.each([
    ['0 degC', 273.15],
    ['100 degC', 373.15],
    ['-273.15 degC', 0],
    ['-40 degC', 233.15],
    ['−10degC', 263.15],
    ['-40 degF', 233.15],
    ['32 degF', 273.15],
    ['212 degF', 373.15],
    ['-459.67 degF', 0],
    ['77 degF', 298.15],
  ])('%s is %d K', (text, kelvin) => {
    const measured = measure(text);
    expect(measured.value).toBeCloseTo(kelvin, 9);
    expect(measured.onScale).toBe(true);
    expect(readAs(text, 'temperature')).toMatchObject({ ok: true, value: { kind: 'temperature' } });
  });

  test('has a tolerance in kelvins, and none in per cent of it', () => {
    expect(measure('-8 degC ± 2 K')).toMatchObject({ value: 265.15, halfWidth: 2, onScale: true });
    expect(measure('20 degF ± 1 K').halfWidth).toBe(1);
    expect(readMeasured('20 degC ± 5 %', literals)).toMatchObject({
      ok: false,
      refusal: { message: 'has a tolerance in per cent of a temperature' },
    });
  });

  test.each(['-8 degC ± 2 degC', '-8 ± 2 degC', '20 degF ± 5 degF'])(
    '%s has a tolerance on a scale',
    (text) => {
      expect(readMeasured(text, literals)).toMatchObject({
        ok: false,
        refusal: { message: expect.stringMatching(/is a temperature, not a difference of two/) },
      });
    },
  );

  test.each(['8 K', '300 K'])('%s is no temperature, for it could be a difference', (text) => {
    expect(readAs(text, 'temperature')).toMatchObject({
      ok: false,
      refusal: { message: `\`${text}\` is so many kelvins, as a difference of two temperatures is` },
    });
  });

  test.each(['20 °C', '20 C', '68 °F', '20 celsius'])('%s is told how to be written', (text) => {
    const reading = readMeasured(text, literals);
    expect(reading.ok ? '' : reading.refusal.expected).toMatch(/^write `deg[CF]`/);
  });
});

describe('a tolerance', () => {
  test.each([
    ['38 kg ± 2 kg', 38, 2],
    ['38 kg±2kg', 38, 2],
    ['38 kg +- 2 kg', 38, 2],
    ['38 kg +/- 2 kg', 38, 2],
    ['38 kg ± 500 g', 38, 0.5],
    ['38 kg ± 5 %', 38, 1.9],
    ['38 kg ± 0 kg', 38, 0],
    ['38 ± 2 kg', 38, 2],
    ['38 ± 500 g', 0.038, 0.5],
    ['-750 mm ± 10 mm', -0.75, 0.01],
    ['-750 mm ± 10 %', -0.75, 0.075],
    ['-750 ± 10 mm', -0.75, 0.01],
    // Of a share, a tolerance in per cent is in points of that share.
    ['50 % ± 5 %', 0.5, 0.05],
    ['1.1 ± 0.1', 1.1, 0.1],
    ['1.1 ± 10 %', 1.1, 0.11],
  ])('%s is %d with a half-width of %d', (text, value, halfWidth) => {
    const measured = measure(text);
    expect(measured.value).toBeCloseTo(value, 12);
    expect(measured.halfWidth).toBeCloseTo(halfWidth, 12);
    expect(measured.shared).toEqual([]);
  });
});

describe('the unit that was perhaps meant', () => {
  test.each([
    ['12', 'voltage', '(perhaps `12 V`)'],
    ['100', 'charge', '(perhaps `100 Ah`)'],
    ['3', 'resistance', '(perhaps `3 mohm`)'],
    ['-10', 'temperature', '(perhaps `-10 degC`)'],
    ['−750', 'length', '(perhaps `−750 mm`)'],
    ['8', 'duration', '(perhaps `8 h`)'],
    ['30', 'duration', '(perhaps `30 h` or `30 d`)'],
  ] as const)('%s as %s', (text, kind, words) => {
    const reading = readAs(text, kind);
    expect(reading.ok ? '' : reading.refusal.expected).toContain(words);
  });
});

describe('what a key asks for', () => {
  test.each([
    ['5 %', ['share', 'number'], 'share'],
    ['5', ['share', 'number'], 'number'],
    ['5', ['number'], 'number'],
    ['0', ['share'], 'share'],
    ['0 %', ['share'], 'share'],
    ['70 L', ['volume', 'mass'], 'volume'],
    ['70 kg', ['volume', 'mass'], 'mass'],
    ['70 L', ['mass', 'volume'], 'volume'],
  ] as const)('%s among %j is taken as %s', (text, kinds, kind) => {
    expect(readAs(text, ...kinds)).toMatchObject({ ok: true, value: { kind } });
  });

  test.each([
    ['5', ['share']],
    ['5', ['mass']],
    ['0', ['mass']],
    ['5 %', ['number']],
    ['5 %', ['mass']],
    ['5 kg', ['share', 'number']],
  ] as const)('%s among %j is refused', (text, kinds) => {
    expect(readAs(text, ...kinds).ok).toBe(false);
  });
});

test('every unit reads as its factor, with or without a space', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...units),
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
      ([symbol, { factor }], number) => {
        const text = number.toFixed(6);
        for (const written of [`${text} ${symbol}`, `${text}${symbol}`])
          expect(measure(written).value).toBeCloseTo(Number(text) * factor, 9);
      },
    ),
    { seed: 1985 },
  );
});

test('a value and a tolerance in any units of one kind keep their ratio', () => {
  const masses = [...units].filter(([, { dimension }]) => dimension.kg === 1 && dimension.m === 0);
  fc.assert(
    fc.property(
      fc.constantFrom(...masses),
      fc.constantFrom(...masses),
      fc.integer({ min: 1, max: 10_000 }),
      fc.integer({ min: 0, max: 10_000 }),
      ([unit, { factor }], [other, { factor: otherFactor }], value, tolerance) => {
        const measured = measure(`${value} ${unit} ± ${tolerance} ${other}`);
        expect(measured.value / (value * factor)).toBeCloseTo(1, 12);
        expect(measured.halfWidth).toBeCloseTo(tolerance * otherFactor, 9);
      },
    ),
    { seed: 1985 },
  );
});

test('no text at all throws, and what is read is finite', () => {
  const pieces = fc.constantFrom(
    ...'0123456789.,+-±%*/^() eE',
    ' kg',
    ' mm',
    'm2',
    ' L',
    '±',
    ' to ',
    '½',
    '~',
    '"',
    "'",
    'µ',
  );
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: pieces }), fc.string({ unit: 'binary' })), (text) => {
      const reading = readMeasured(text, literals);
      if (reading.ok) {
        expect(Number.isFinite(reading.value.value)).toBe(true);
        expect(Number.isFinite(reading.value.halfWidth)).toBe(true);
        expect(reading.value.halfWidth).toBeGreaterThanOrEqual(0);
      } else {
        expect(reading.refusal.message.length).toBeGreaterThan(5);
      }
    }),
    { seed: 1985, numRuns: 2000 },
  );
});

test('the calculator is asked only for what is more than a number with a unit', () => {
  const asked: string[] = [];
  const expressions: Expressions = {
    isParameter: (name) => name === 'shelf',
    calculate: (text) => {
      asked.push(text);
      return { ok: false, refusal: { message: 'is not worked out in this test' } };
    },
  };
  for (const text of ['38 kg', '38 kg ± 5 %', '3 kk', '1,5 kg', '3-4 kg', 'kg', '38 ± 2 kg'])
    readMeasured(text, expressions);
  expect(asked).toEqual([]);
  for (const text of ['2 * 3 kg', 'shelf', '2 shelf', '3 kg ± 2 * 1 kg']) readMeasured(text, expressions);
  expect(asked).toEqual(['2 * 3 kg', 'shelf', '2 shelf', '2 * 1 kg']);
});
