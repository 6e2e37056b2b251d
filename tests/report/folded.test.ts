import fc from 'fast-check';
import stringWidth from 'fast-string-width';
import { describe, expect, test } from 'vitest';
import { folded } from '../../src/report/folded.ts';
import { renderPlaces } from '../../src/report/problems.ts';

const longLine = (before: number, marked: string, after: number): string =>
  `${'a '.repeat(before)}${marked}${' b'.repeat(after)}`;

/** The line of a plan and its marks, as they are complained of. */
function complaint(line: string, marked: string): string {
  const start = line.indexOf(marked);
  return renderPlaces(
    'plan.yaml',
    line,
    [
      {
        message: 'this is what nobody can understand, whatever they try, since it says nothing at all',
        span: { start, end: start + marked.length },
        expected:
          'a sentence that says what stands there in its stead, such as `storystick set plan.yaml x y`',
      },
    ],
    (offset) => ({ line: 1, column: offset + 1 }),
  );
}

/** What stands above the marks. */
function markedIn(text: string): string {
  const lines = text.split('\n');
  const at = lines.findIndex((line) => /^ *\| *\^+$/.test(line));
  const [above = '', marks = ''] = lines.slice(at - 1);
  return above.slice(marks.indexOf('^'), marks.lastIndexOf('^') + 1);
}

describe('a complaint on a terminal', () => {
  test('is folded between its words, and what goes on is set in', () => {
    expect(folded('plan.yaml: nothing of it can be read\n  expected: one, two and three\n', 24)).toBe(
      'plan.yaml: nothing of\n  it can be read\n  expected: one, two\n    and three\n',
    );
  });

  test.each([
    ['in front of', 0, 90],
    ['in the middle of', 40, 40],
    ['at the end of', 90, 0],
    ['in a short', 3, 3],
  ])('shows the marks under what they mark, %s line', (_, before, after) => {
    for (const width of [60, 72, 80, 100, 140]) {
      const text = folded(complaint(longLine(before, 'XYZ', after), 'XYZ'), width);
      expect(Math.max(...text.split('\n').map((line) => stringWidth(line)))).toBeLessThanOrEqual(width);
      expect(markedIn(text)).toBe('XYZ');
    }
  });

  test('shows the beginning of what is marked where all of it is too long', () => {
    const marked = `X${'Y'.repeat(200)}`;
    expect(markedIn(folded(complaint(longLine(30, marked, 10), marked), 60))).toMatch(/^XYYYYY/);
  });

  test('whatever it says is no wider than the terminal, and no word is lost', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 150 }),
        fc.string({ unit: 'grapheme', maxLength: 150 }),
        fc.integer({ min: 60, max: 120 }),
        (before, after, width) => {
          const text = complaint(`${before}?!?${after}`.replace(/[\r\n]/g, ' '), '?!?');
          const shown = folded(text, width);
          for (const line of shown.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
          const words = (whole: string) =>
            whole
              .split('\n')
              .filter((line) => !/^ *\d* \| /.test(line))
              .join(' ')
              .replace(/\s+/g, '');
          expect(words(shown)).toBe(words(text));
        },
      ),
    );
  });

  test('that is short enough stays as it is', () => {
    const text = `${complaint('short: XYZ', 'XYZ')}\n`;
    expect(folded(text, 200)).toBe(text);
  });
});
