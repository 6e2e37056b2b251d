import fc from 'fast-check';
import { distance } from 'fastest-levenshtein';
import { describe, expect, test } from 'vitest';
import { nearest, nearestOf } from '../../src/plan/nearest.ts';

const keys = ['mass', 'material', 'count', 'each', 'size', 'at', 'in', 'on', 'from_front', 'front_left'];

describe('a slip of the finger finds the name that was meant', () => {
  test.each([
    ['mas', 'mass'],
    ['masss', 'mass'],
    ['mess', 'mass'],
    ['amss', 'mass'],
    ['Mass', 'mass'],
    ['materiel', 'material'],
    ['matreial', 'material'],
    ['sise', 'size'],
    ['from front', 'from_front'],
    ['from-frnt', 'from_front'],
    ['FROM_FRONT', 'from_front'],
    // Of two names as near, the one that is as long.
    ['im', 'in'],
    // The whole of what was written is the beginning or the end of a name.
    ['front', 'from_front'],
    ['left', 'front_left'],
  ])('%s → %s', (written, meant) => {
    expect(nearest(written, keys)).toBe(meant);
  });
});

test.each(['wardrobe', 'x', '', 'a', 'zzzz', '日本'])('%s is like none of them', (written) => {
  expect(nearest(written, keys)).toBeUndefined();
});

test('one letter is no likeness, but its own capital is', () => {
  expect(nearest('k', ['g', 'm'])).toBeUndefined();
  expect(nearest('M', ['g', 'm'])).toBe('m');
});

test('a unit is not shortened where one as long will do', () => {
  expect(nearest('mn', ['m', 'mm', 'in'])).toBe('mm');
});

test('a thing is never told that it meant itself', () => {
  const among = nearestOf(['bed', 'bin']);
  expect(among('bed', 'bed')).toBeUndefined();
  expect(among('bex', 'bed')).toBeUndefined();
  expect(among('bex', 'bin')).toBe('bed');
});

const name = fc.string({ unit: fc.constantFrom(...'abcdef '), minLength: 1, maxLength: 12 });

test('what is found is a known name, none is nearer, and names further off change nothing', () => {
  fc.assert(
    fc.property(name, fc.array(name, { maxLength: 8 }), (written, known) => {
      const found = nearest(written, known);
      if (found === undefined) return;
      expect(known).toContain(found);
      const fold = (text: string) => text.toLowerCase().replace(/[\s_-]+/g, '_');
      const least = Math.min(...known.map((each) => distance(fold(written), fold(each))));
      const allowed = Math.max(1, Math.floor(written.length / 3));
      const slips = distance(fold(written), fold(found));
      const swapped = [...fold(written)].sort().join('') === [...fold(found)].sort().join('');
      const part = fold(found).startsWith(fold(written)) || fold(found).endsWith(fold(written));
      expect(slips === least || swapped || part).toBe(true);
      expect(slips <= allowed || swapped || part).toBe(true);
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('a name that is known finds itself', () => {
  fc.assert(
    fc.property(fc.array(name, { minLength: 1, maxLength: 8 }), fc.nat(), (known, index) => {
      const written = known[index % known.length] ?? '';
      const fold = (text: string) => text.toLowerCase().replace(/[\s_-]+/g, '_');
      expect(fold(nearest(written, known) ?? '')).toBe(fold(written));
    }),
    { seed: 7 },
  );
});
