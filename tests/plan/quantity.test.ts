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

/** The kinds that a text is refused or taken as. */
const readAs = (text: string, ...kinds: DimensionName[]): Reading<{ kind: DimensionName }> => {
  const measured = readMeasured(text, literals);
  return measured.ok ? ofKind(measured.value, text, kinds) : measured;
};

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
