import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rootBetween } from '../../src/calc/root.ts';

describe('root of a function', () => {
  test.each<{ name: string; f: (x: number) => number; low: number; high: number; root: number }>([
    { name: 'a line', f: (x) => 3 * x - 1, low: 0, high: 1, root: 1 / 3 },
    { name: 'a falling line', f: (x) => 1 - 3 * x, low: -5, high: 1, root: 1 / 3 },
    { name: 'a square', f: (x) => x * x - 2, low: 0, high: 2, root: Math.SQRT2 },
    { name: 'cosine and line', f: (x) => Math.cos(x) - x, low: 0, high: 1, root: 0.7390851332151607 },
    { name: 'flat at the root', f: (x) => (x - 0.25) ** 3, low: -1, high: 1, root: 0.25 },
    { name: 'steep', f: (x) => Math.exp(40 * x) - 1e9, low: 0, high: 1, root: Math.log(1e9) / 40 },
    { name: 'a jump', f: (x) => (x < 0.3 ? -1 : 1), low: 0, high: 1, root: 0.3 },
    { name: 'far out', f: (x) => x - 1e12, low: -1e13, high: 1e13, root: 1e12 },
    { name: 'infinite at one end', f: (x) => 1 / x - 4, low: 0, high: 1, root: 0.25 },
  ])('$name', ({ f, low, high, root }) => {
    // Flat roots are found no nearer than the function can tell.
    expect(Math.abs(rootBetween(f, low, high, 1e-12) - root)).toBeLessThan(
      1e-11 * Math.max(1, Math.abs(root)),
    );
  });

  test('an end that is the root, and one that is both ends', () => {
    expect(rootBetween((x) => x, 0, 4, 1e-9)).toBe(0);
    expect(rootBetween((x) => x - 4, 0, 4, 1e-9)).toBe(4);
    expect(rootBetween((x) => x - 4, 4, 4, 1e-9)).toBe(4);
  });

  test('is quicker than halving', () => {
    let calls = 0;
    rootBetween(
      (x) => {
        calls += 1;
        return x ** 3 - x - 1;
      },
      1,
      2,
      1e-13,
    );
    expect(calls).toBeLessThan(15);
  });

  test.each<{ name: string; run: () => unknown; says: RegExp }>([
    { name: 'no change of sign', run: () => rootBetween((x) => x * x + 1, -1, 1, 1e-9), says: /same sign/ },
    { name: 'backwards', run: () => rootBetween((x) => x, 1, -1, 1e-9), says: /lower to a higher/ },
    { name: 'endless', run: () => rootBetween((x) => x, -1, Number.POSITIVE_INFINITY, 1e-9), says: /finite/ },
    { name: 'no tolerance', run: () => rootBetween((x) => x, -1, 1, 0), says: /tolerance must be greater/ },
    {
      name: 'no value',
      run: () => rootBetween((x) => Math.sqrt(x), -1, 1, 1e-9),
      says: /no value at -1/,
    },
  ])('refuses: $name', ({ run, says }) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(says);
  });

  test('stays in the bracket, at a change of sign', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (root, below, above, power) => {
          const f = (x: number): number => (x - root) * (1 + (x - root) ** (2 * power));
          const found = rootBetween(f, root - below, root + above, 1e-9);
          expect(found).toBeGreaterThanOrEqual(root - below);
          expect(found).toBeLessThanOrEqual(root + above);
          expect(Math.abs(found - root)).toBeLessThan(2e-9);
        },
      ),
    );
  });
});
