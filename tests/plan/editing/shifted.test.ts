import { describe, expect, test } from 'vitest';
import { shifted } from '../../../src/plan/editing/shifted.ts';

const by = (written: string, lengthM: number) => ({ written, lengthM });

describe('a distance is added in the unit that the plan uses', () => {
  test.each([
    ['1200 mm', 1, by('40cm', 0.4), '1600 mm'],
    ['1.20 m', 1, by('40cm', 0.4), '1.60 m'],
    ['1.2 m', 1, by('3 mm', 0.003), '1.203 m'],
    ['0 mm', -1, by('25 mm', 0.025), '-25 mm'],
    ['25 mm', -1, by('25 mm', 0.025), '0 mm'],
    ['-700 mm', 1, by('1 m', 1), '300 mm'],
    ['−700 mm', 1, by('1 m', 1), '300 mm'],
    ['47 in', 1, by('2.54 cm', 0.0254), '48 in'],
    ['47.5in', -1, by('1 in', 0.0254), '46.5in'],
    ['0.1 m', 1, by('20 cm', 0.2), '0.3 m'],
    ['1200 mm ± 5 mm', 1, by('1 cm', 0.01), '1210 mm ± 5 mm'],
    ['1200 ± 5 mm', 1, by('1 cm', 0.01), '1210 ± 5 mm'],
    ['1200 mm +- 2 %', 1, by('1 cm', 0.01), '1210 mm +- 2 %'],
    ['2 * depth', 1, by('40cm', 0.4), '2 * depth + 40 cm'],
    ['depth', -1, by('1.5 in', 0.0381), 'depth - 1.5 in'],
    ['depth + 3 mm ± 5 mm', 1, by('40 cm', 0.4), 'depth + 3 mm + 40 cm ± 5 mm'],
    ['(1 m)', 1, by('40cm', 0.4), '(1 m) + 40 cm'],
    ['3 depth', 1, by('40cm', 0.4), '3 depth + 40 cm'],
  ] as const)('%s, %i, %o', (text, sign, distance, result) => {
    expect(shifted(text, sign, distance)).toBe(result);
  });
});
