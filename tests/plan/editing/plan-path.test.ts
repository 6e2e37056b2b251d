import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parsePlanPath, writtenPath } from '../../../src/plan/editing/plan-path.ts';

const keysOf = (written: string) => {
  const parsed = parsePlanPath(written);
  return 'steps' in parsed ? parsed.steps.map(({ key }) => key) : parsed.problem.message;
};

describe('a path as it is typed', () => {
  test.each([
    ['name', ['name']],
    ['fixtures.bed.mass', ['fixtures', 'bed', 'mass']],
    ['fixtures.kitchen unit.mass', ['fixtures', 'kitchen unit', 'mass']],
    ['fixtures."kitchen unit".mass', ['fixtures', 'kitchen unit', 'mass']],
    [`rules.'balance.sides'.limit`, ['rules', 'balance.sides', 'limit']],
    [`fixtures."cook's \\"shelf\\"".mass`, ['fixtures', `cook's "shelf"`, 'mass']],
    [`fixtures.'cook''s shelf'.mass`, ['fixtures', `cook's shelf`, 'mass']],
    ["fixtures.cook's shelf.mass", ['fixtures', "cook's shelf", 'mass']],
    ['people.sleepers[2].stature', ['people', 'sleepers', 1, 'stature']],
    ['routes.chases.a.between[1]', ['routes', 'chases', 'a', 'between', 0]],
    [' fixtures . bed . mass ', ['fixtures', 'bed', 'mass']],
    ['fixtures.寝台 🛏️.mass', ['fixtures', '寝台 🛏️', 'mass']],
  ])('%s', (written, keys) => {
    expect(keysOf(written)).toEqual(keys);
  });

  test.each([
    ['', '`` names nothing in the plan'],
    ['a..b', '`a..b` is no path of a plan'],
    ['.a', '`.a` is no path of a plan'],
    ['a.', '`a.` ends with a dot'],
    ['a[0]', '`a[0]` has an entry 0: the first one is `[1]`'],
    ['a["b"]', '`a["b"]` is no path of a plan'],
    ['a."b', '`a."b` is no path of a plan'],
    ['a[1', '`a[1` is no path of a plan'],
  ])('%s is refused', (written, message) => {
    expect(keysOf(written)).toBe(message);
  });

  test('what is written as a path is read as the same path', () => {
    const key = fc.oneof(fc.string({ minLength: 0, maxLength: 12 }), fc.nat(20));
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.array(key, { maxLength: 4 }), (first, rest) => {
        expect(keysOf(writtenPath([first, ...rest]))).toEqual([first, ...rest]);
      }),
    );
  });
});
