import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calculatorOver, namesIn } from '../../src/plan/calculator.ts';
import { exact, type Measured, type Quantity, readMeasured } from '../../src/plan/quantity.ts';
import { dimensions } from '../../src/plan/units.ts';

type Parameters = ReadonlyMap<string, Measured>;
const none: Parameters = new Map();
const unspoilt: ReadonlySet<string> = new Set();

function read(text: string, parameters: Parameters = none): Measured {
  const reading = readMeasured(text, calculatorOver(parameters, unspoilt));
  if (!reading.ok) throw new Error(`${text}: ${reading.refusal.message}`);
  return reading.value;
}

const withTolerance = (kind: keyof typeof dimensions, value: number, halfWidth: number): Measured => ({
  ...exact(value, dimensions[kind].dimension),
  halfWidth,
});

const parameters: Parameters = new Map([
  ['shelf', withTolerance('mass', 4, 0.5)],
  ['rail', withTolerance('mass', 2, 0.1)],
  ['width', withTolerance('length', 0.6, 0.01)],
  ['depth', withTolerance('length', 0.4, 0)],
  ['half', withTolerance('number', 0.5, 0.1)],
  ['ünd_2', withTolerance('mass', 3, 0)],
  ['полка', withTolerance('mass', 5, 0)],
]);

describe('arithmetic with units', () => {
  test.each([
    ['2 * 4 kg + 3 kg', 11, 'mass'],
    ['2 shelf + 3 kg', 11, 'mass'],
    ['shelf', 4, 'mass'],
    ['(2 + 3) * 1 kg', 5, 'mass'],
    ['-(1 kg) + shelf', 3, 'mass'],
    ['shelf - 500 g', 3.5, 'mass'],
    ['1/2 in', 0.0127, 'length'],
    ['10 - 2 * 3', 4, 'number'],
    ['6 ft + 2 in', 1.8796, 'length'],
    ['600 mm * 400 mm', 0.24, 'area'],
    ['width * depth', 0.24, 'area'],
    ['width · depth', 0.24, 'area'],
    ['14.2 m2 * 3.4 kg/m2', 48.28, 'mass'],
    ['14.2 m² * 3.4 kg/m²', 48.28, 'mass'],
    ['600 mm * 400 mm * 18 mm * 680 kg/m3', 2.9376, 'mass'],
    ['shelf / (width * depth)', 4 / 0.24, 'arealMass'],
    ['sqrt(4 m2)', 2, 'length'],
    ['(2 m) ^ 2', 4, 'area'],
    ['2 ^ 0.5', Math.SQRT2, 'number'],
    ['2 ^ 3 ^ 2', 512, 'number'],
    ['-3 ^ 2', -9, 'number'],
    ['min(shelf, 3 kg, 9 kg)', 3, 'mass'],
    ['max(shelf, 3 kg)', 4, 'mass'],
    ['round(2.6) * 1 kg', 3, 'mass'],
    ['shelf / rail', 2, 'number'],
    ['ünd_2 * 2', 6, 'mass'],
    ['полка + полка', 10, 'mass'],
    ['1e3 * 1 g', 1, 'mass'],
  ] as const)('%s', (text, value, kind) => {
    const measured = read(text, parameters);
    expect(measured.value).toBeCloseTo(value, 12);
    expect(measured.dimension).toEqual(dimensions[kind].dimension);
  });

  test('`in` is the inch, also next to a number, and never a conversion', () => {
    expect(read('2 * 12in').value).toBeCloseTo(0.6096, 12);
    expect(read('3 in + 1 inch').value).toBeCloseTo(0.1016, 12);
  });

  test('a tolerance of its own on either side of an expression', () => {
    expect(read('2 * 4 kg ± 2 * 1 kg')).toMatchObject({ value: 8, halfWidth: 2 });
    expect(read('2 * 4 kg ± 10 %')).toMatchObject({ value: 8, halfWidth: 0.8 });
  });
});

describe('the tolerance of a parameter', () => {
  const errorsOf = (text: string, of: Parameters = parameters): Record<string, number> =>
    Object.fromEntries(read(text, of).shared.map(({ source, halfWidth }) => [source, halfWidth]));

  test.each([
    ['shelf', { 'params.shelf': 0.5 }],
    ['3 * shelf', { 'params.shelf': 1.5 }],
    ['10 kg - shelf', { 'params.shelf': -0.5 }],
    ['shelf + rail', { 'params.shelf': 0.5, 'params.rail': 0.1 }],
    ['shelf + shelf', { 'params.shelf': 1 }],
    ['shelf - shelf', { 'params.shelf': 0 }],
    ['shelf * half', { 'params.shelf': 0.25, 'params.half': 0.4 }],
    ['depth * 2', {}],
    // Central difference: ((0.61)² − (0.59)²) / 2.
    ['width ^ 2', { 'params.width': 0.012 }],
    ['min(shelf, 1 kg)', { 'params.shelf': 0 }],
  ])('%s moves by %j', (text, errors) => {
    const found = errorsOf(text);
    expect(Object.keys(found).sort()).toEqual(Object.keys(errors).sort());
    for (const [source, halfWidth] of Object.entries(errors))
      expect(found[source], source).toBeCloseTo(halfWidth, 12);
  });

  test('it is handed on by parameters that use it, under its own name', () => {
    const pair = read('2 * shelf', parameters);
    const later = new Map(parameters).set('pair', pair).set('single', parameters.get('shelf') ?? pair);
    expect(pair.halfWidth).toBe(0);
    expect(errorsOf('pair + rail', later)).toEqual({
      'params.shelf': expect.closeTo(1, 12),
      'params.rail': expect.closeTo(0.1, 12),
    });
  });

  test('a diamond adds up: what two parameters owe to a third comes out as if it were used directly', () => {
    const left = read('2 * shelf', parameters);
    const right = read('shelf / 4', parameters);
    const later = new Map(parameters).set('left', left).set('right', right);
    const total = ({ shared }: Quantity) => shared.reduce((sum, { halfWidth }) => sum + halfWidth, 0);
    expect(total(read('left - right', later))).toBeCloseTo(total(read('1.75 * shelf', parameters)), 12);
  });

  test('a tolerance of its own comes on top', () => {
    const measured = read('2 * shelf ± 1 kg', parameters);
    expect(measured.halfWidth).toBe(1);
    expect(measured.shared).toEqual([{ source: 'params.shelf', halfWidth: expect.closeTo(1, 12) }]);
  });
});

test('the names that an expression uses, without the functions', () => {
  expect(namesIn('min(shelf, 2 * rail) + 3 kg')).toEqual(['shelf', 'rail', 'kg']);
  expect(namesIn('2 * (')).toBeUndefined();
  expect(namesIn(`${'('.repeat(100_000)}1`)).toBeUndefined();
});

// Random arithmetic: a tree is printed, read by the calculator, and worked out here by plain recursion.
interface Tree {
  readonly text: string;
  readonly value: number;
}

const binary = {
  '+': (a: number, b: number) => a + b,
  '-': (a: number, b: number) => a - b,
  '*': (a: number, b: number) => a * b,
  '/': (a: number, b: number) => a / b,
} as const;

const several = { min: Math.min, max: Math.max } as const;

const { tree } = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 5, withCrossShrink: true },
    fc.integer({ min: 0, max: 999 }).map((value): Tree => ({ text: String(value), value })),
    fc
      .integer({ min: 1, max: 9999 })
      .map((value): Tree => ({ text: (value / 100).toFixed(2), value: value / 100 })),
    fc.tuple(fc.constantFrom<keyof typeof binary>('+', '-', '*', '/'), tie('tree'), tie('tree')).map(
      ([sign, left, right]): Tree => ({
        text: `(${left.text}) ${sign} (${right.text})`,
        value: binary[sign](left.value, right.value),
      }),
    ),
    tie('tree').map((inner): Tree => ({ text: `-(${inner.text})`, value: -inner.value })),
    tie('tree').map((inner): Tree => ({ text: `(${inner.text}) ^ 2`, value: inner.value ** 2 })),
    tie('tree').map((inner): Tree => ({ text: `sqrt(${inner.text})`, value: Math.sqrt(inner.value) })),
    fc.tuple(fc.constantFrom<keyof typeof several>('min', 'max'), tie('tree'), tie('tree')).map(
      ([name, left, right]): Tree => ({
        text: `${name}(${left.text}, ${right.text})`,
        value: several[name](left.value, right.value),
      }),
    ),
  ),
}));

test('random arithmetic comes out as it does by plain recursion, and has no result where there is none', () => {
  let withResult = 0;
  fc.assert(
    fc.property(tree, ({ text, value }) => {
      fc.pre(text.length <= 190);
      const reading = readMeasured(`(${text}) * 1 kg`, calculatorOver(none, unspoilt));
      if (!Number.isFinite(value)) {
        expect(reading.ok).toBe(false);
      } else if (reading.ok) {
        withResult += 1;
        expect(reading.value.dimension).toEqual(dimensions.mass.dimension);
        // The order of operations is the same; only a division's rounding may be spelt otherwise.
        expect(Math.abs(reading.value.value - value)).toBeLessThanOrEqual(
          1e-12 * Math.max(1, Math.abs(value)),
        );
      } else {
        expect(reading.refusal.message).toMatch(/nested too deeply/);
      }
    }),
    { seed: 42, numRuns: 500 },
  );
  expect(withResult).toBeGreaterThan(200);
});

test('sums and products without brackets follow the usual order', () => {
  const term = fc.tuple(fc.constantFrom('+', '-', '*', '/'), fc.integer({ min: 1, max: 99 }));
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 99 }), fc.array(term, { maxLength: 20 }), (first, terms) => {
      // Worked out by hand: products first, then the sum, from left to right.
      const summands: number[] = [first];
      for (const [sign, number] of terms) {
        if (sign === '+' || sign === '-') summands.push(sign === '+' ? number : -number);
        else summands.push((summands.pop() ?? 0) * (sign === '*' ? number : 1 / number));
      }
      const expected = summands.reduce((sum, summand) => sum + summand, 0);
      const text = [String(first), ...terms.map(([sign, number]) => `${sign} ${number}`)].join(' ');
      const size = Math.max(1, ...summands.map(Math.abs));
      expect(Math.abs(read(`(${text}) * 1 kg`).value - expected)).toBeLessThanOrEqual(1e-10 * size);
    }),
    { seed: 42, numRuns: 300 },
  );
});

test('units in random sums count as their factor', () => {
  const lengths = { mm: 1e-3, cm: 1e-2, m: 1, in: 0.0254, ft: 0.3048, yd: 0.9144 } as const;
  const summand = fc.tuple(
    fc.integer({ min: 0, max: 500 }),
    fc.constantFrom<keyof typeof lengths>('mm', 'cm', 'm', 'in', 'ft', 'yd'),
  );
  fc.assert(
    fc.property(fc.array(summand, { minLength: 2, maxLength: 12 }), (summands) => {
      const text = summands.map(([number, unit]) => `${number} ${unit}`).join(' + ');
      const expected = summands.reduce((sum, [number, unit]) => sum + number * lengths[unit], 0);
      expect(read(text).value).toBeCloseTo(expected, 9);
    }),
    { seed: 42, numRuns: 200 },
  );
});
