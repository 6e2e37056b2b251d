import { expect, test } from 'vitest';
import { fieldList, indented, wrapped } from '../../src/report/wrap.ts';

test.each([
  '1,980 kg',
  '22 m³/h',
  '0.68 mbar',
  '1845 g/m²',
  '15 s',
  '2.5 mm²',
  '1,678 ppm',
  '10.1 K',
  '0.3 points',
])('never tears %s', (measure) => {
  for (let width = 12; width < 40; width += 1) {
    const lines = wrapped(`it comes to ${measure} of what was asked for, and ${measure} more`, width);
    expect(lines.filter((line) => line.includes(measure)).length).toBeGreaterThan(0);
    expect(lines.join(' ').split(measure)).toHaveLength(3);
    expect(lines.some((line) => line.endsWith(measure.split(' ')[0] ?? ''))).toBe(false);
  }
});

test('a field longer than a line breaks between words, and leaves no space at its end', () => {
  const fields = fieldList(
    [
      ['carries', 'water'],
      ['way', 'pipes at the bed foot, pipes behind the kitchen'],
    ],
    '; ',
  );
  for (let width = 14; width < 60; width += 1) {
    const lines = indented(fields, 2, width);
    expect(lines.filter((line) => /\s$/.test(line) || line.length > width)).toEqual([]);
    expect(lines.map((line) => line.trim()).join(' ')).toBe(
      'carries water; way pipes at the bed foot, pipes behind the kitchen',
    );
  }
});
