import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from '../../src/plan/document.ts';
import { planIn, problemsIn } from './load.ts';

const shown = (text: string, path: readonly PropertyKey[]) => {
  const { document } = parseDocument(text);
  const cut = ({ start, end }: { start: number; end: number }) => text.slice(start, end);
  return { value: cut(document.spanOf(path)), key: cut(document.keySpanOf(path)) };
};

const text = [
  'storystick: 1',
  'van: {max_mass: 3500 kg, wheelbase: }',
  'fixtures:',
  '  bed: &bed',
  '    mass: 3 kg',
  '    size: {length: 1 m}',
  '  bunk: *bed',
  '  "two words": {mass: 4 kg}',
  'people:',
  '  sleepers:',
  '    - {stature: 1.78 m}',
  '    - stature: 1.66 m',
  '',
].join('\n');

describe('a path leads to the place in the text', () => {
  test.each([
    ['van', 'max_mass', '3500 kg'],
    ['fixtures', 'bed', 'bed'],
    ['fixtures', 'two words', '"two words"'],
    ['fixtures', 'bed', 'mass', '3 kg'],
    ['people', 'sleepers', 0, 'stature', '1.78 m'],
    ['people', 'sleepers', 1, 'stature', '1.66 m'],
    ['people', 'sleepers', 0, '{stature: 1.78 m}'],
    // A value that is not there is shown by its key.
    ['van', 'wheelbase', 'wheelbase'],
    // What does not exist is shown by the nearest thing above it that does.
    ['van', 'track', 'van'],
    ['fixtures', 'bed', 'at', 'from_front', 'bed'],
    ['people', 'sleepers', 7, '- {stature: 1.78 m}\n    - stature: 1.66 m'],
    // An alias is shown itself, and what lies beyond it where it is written.
    ['fixtures', 'bunk', '*bed'],
    ['fixtures', 'bunk', 'mass', '3 kg'],
    ['fixtures', 'bunk', 'size', 'length', '1 m'],
    ['nowhere', ''],
  ])('%s', (...pathAndText) => {
    const expected = pathAndText.at(-1);
    expect(shown(text, pathAndText.slice(0, -1)).value.trimEnd()).toBe(expected);
  });

  test('and to the key itself', () => {
    expect(shown(text, ['van', 'max_mass']).key).toBe('max_mass');
    expect(shown(text, ['fixtures', 'two words']).key).toBe('"two words"');
    expect(shown(text, ['fixtures', 'bunk', 'mass']).key).toBe('mass');
  });

  test('every character has its line and column, in text with either sort of line break', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', '\n', '\r\n', '日', ': ', '\t')), (pieces) => {
        const written = pieces.join('');
        const { document } = parseDocument(written);
        let [line, column] = [1, 1];
        for (let offset = 0; offset <= written.length; offset += 1) {
          expect(document.positionOf(offset)).toEqual({ line, column });
          if (written[offset] === '\n') [line, column] = [line + 1, 1];
          else column += 1;
        }
      }),
      { seed: 3 },
    );
  });
});

describe('marks (`&name`) and repetitions (`*name`) that are used properly', () => {
  test('repeat what is marked', async () => {
    const plan = await planIn(`${text.replace(', wheelbase: ', '')}`);
    expect(plan.fixtures?.bunk).toEqual(plan.fixtures?.bed);
    expect(plan.fixtures?.bunk?.mass?.value).toBe(3);
  });

  test('a mark that is set again means the later value from there on', async () => {
    const plan = await planIn(
      'storystick: 1\nvan: {}\nfixtures:\n  a: {mass: &m 1 kg}\n  b: {mass: *m}\n  c: {mass: &m 2 kg}\n  d: {mass: *m}\n',
    );
    expect(Object.values(plan.fixtures ?? {}).map(({ mass }) => mass?.value)).toEqual([1, 1, 2, 2]);
  });

  test('a repetition within a repetition', async () => {
    const plan = await planIn(
      'storystick: 1\nvan: {}\nfixtures:\n  a: &a {mass: &m 1 kg, size: &s {length: 1 m}}\n  b: &b {mass: *m, size: *s}\n  c: *a\n  d: *b\n',
    );
    expect(plan.fixtures?.d).toEqual(plan.fixtures?.a);
    expect(plan.fixtures?.c?.size?.length?.value).toBe(1);
  });

  test('one size for thousands of things is no attack', async () => {
    const things = Array.from({ length: 3000 }, (_, index) => `  box ${index}: {mass: 1 kg, size: *box}`);
    const plan = await planIn(
      `storystick: 1\nvan: {}\nfixtures:\n  box: {mass: 1 kg, size: &box {length: 1 m, width: 1 m, height: 1 m}}\n${things.join('\n')}\n`,
    );
    expect(Object.keys(plan.fixtures ?? {})).toHaveLength(3001);
    expect(plan.fixtures?.['box 2999']?.size?.height?.value).toBe(1);
  });

  test('a fault beyond a repetition that only one of two readers minds does not spoil the other', async () => {
    expect(
      await problemsIn(
        'storystick: 1\nvan: {}\nfixtures:\n  bed: &bed {mass: 3 kg, in: cupboard}\npeople:\n  seats: {driver: *bed}\n',
      ),
    ).toEqual([
      '4:26 `in` is not a key of people.seats.driver',
      '4:30 `bed` is in `cupboard`, which is not in the plan',
    ]);
  });
});

describe('what stands in the text is what is read', () => {
  test('numbers are left as they were written', () => {
    const { document } = parseDocument(
      'a: 1.50\nb: 1_000\nc: 0x10\nd: .nan\ne: 12345678901234567890\nf: 1e400\n',
    );
    expect(document.data).toEqual({
      a: '1.50',
      b: '1_000',
      c: '0x10',
      d: '.nan',
      e: '12345678901234567890',
      f: '1e400',
    });
  });

  test('true, false and null are what they are; yes, no, on and off are words', () => {
    const { document } = parseDocument('[true, false, null, ~, yes, no, on, off]');
    expect(document.data).toEqual([true, false, null, null, 'yes', 'no', 'on', 'off']);
  });

  test('keys are names, whatever they look like', () => {
    const { document } = parseDocument('1: a\n1.50: b\ntrue: c\nnull: d\n~: e\n"": f\nconstructor: g\n');
    expect(document.data).toEqual({
      1: 'a',
      '1.50': 'b',
      true: 'c',
      null: 'd',
      '~': 'e',
      '': 'f',
      constructor: 'g',
    });
  });
});
