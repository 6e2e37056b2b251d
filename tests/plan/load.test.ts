import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Document, parseDocument } from 'yaml';
import { loadPlan } from '../../src/plan/load.ts';
import { unseenIn } from '../../src/plan/quote.ts';
import { load, planIn, problemsIn } from './load.ts';

const examples = fileURLToPath(new URL('../../examples/', import.meta.url));
const plans = readdirSync(examples, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.yaml'),
);

describe('a plan that is printed again is the same plan', () => {
  test.each(plans)('%s', async (name) => {
    const text = readFileSync(`${examples}${name}`, 'utf8');
    const original = await planIn(text);
    expect(await planIn(String(parseDocument(text)))).toEqual(original);
    expect(await planIn(text.replaceAll('\n', '\r\n'))).toEqual(original);
    expect(await planIn(JSON.stringify(parseDocument(text).toJS()))).toEqual(original);
  });

  const awkward = [
    'yes',
    'null',
    '~',
    'true',
    '1.50',
    '0x1F',
    '1e3',
    '# no comment',
    '- dash',
    'a: b',
    '{',
    '[a',
    "it's",
    '"quoted"',
    '!tag',
    '&mark',
    '*star',
    '%',
    '@home',
    '`',
    '|',
    '>',
    '?',
    ',',
    ':',
    '=',
    '<<',
    'toString',
    'constructor',
    '冷蔵庫',
    '2026-03-14',
  ];
  const nameOfThing = fc
    .oneof(fc.constantFrom(...awkward), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }))
    .map((name) => name.trim())
    .filter(
      (name) =>
        name !== '' &&
        unseenIn(name) === undefined &&
        !['__proto__', 'floor', 'ceiling', 'fuel'].includes(name),
    );
  const mass = fc
    .tuple(
      fc.integer({ min: 1, max: 999 }),
      fc.constantFrom('kg', 'lb', 'kg ± 2 kg', 'kg ± 5 %', 'g', '* 1 kg + 2 kg'),
    )
    .map(([number, unit]) => `${number} ${unit}`);
  const length = fc.integer({ min: 1, max: 5000 }).map((number) => `${number} mm`);
  const fixture = fc.record(
    {
      mass,
      size: fc.record({ length, width: length, height: length }),
      at: fc.record({ from_front: length, from_left: length, above_floor: length }),
    },
    { requiredKeys: ['mass'] },
  );
  const plan = fc
    .tuple(
      nameOfThing,
      fc.uniqueArray(fc.tuple(nameOfThing, fixture), { selector: ([name]) => name, maxLength: 6 }),
      fixture,
    )
    .map(([name, fixtures, shared]) => ({
      storystick: 1,
      name,
      van: { max_mass: '3500 kg' },
      fixtures: Object.fromEntries(fixtures),
      // The same object in several places is printed with a mark and repetitions.
      stores: Object.fromEntries(
        ['left', 'right', 'top'].map((store) => [
          `${store} store`,
          { full: shared.mass, ...(shared.size && { size: shared.size }) },
        ]),
      ),
    }));
  const style = fc.record({
    indent: fc.constantFrom(1, 2, 4, 8),
    lineWidth: fc.constantFrom(0, 20, 80),
    defaultKeyType: fc.constantFrom('PLAIN' as const, 'QUOTE_DOUBLE' as const, 'QUOTE_SINGLE' as const),
    defaultStringType: fc.constantFrom('PLAIN' as const, 'QUOTE_DOUBLE' as const, 'QUOTE_SINGLE' as const),
    collectionStyle: fc.constantFrom('any' as const, 'block' as const, 'flow' as const),
  });

  test('any plan, in any style', async () => {
    await fc.assert(
      fc.asyncProperty(plan, style, async (data, options) => {
        const viaJson = await planIn(JSON.stringify(data));
        const printed = new Document(data).toString(options);
        expect(await planIn(printed)).toEqual(viaJson);
        expect(await planIn(String(parseDocument(printed)))).toEqual(viaJson);
        expect(Object.keys(viaJson.fixtures ?? {})).toEqual(Object.keys(data.fixtures));
        expect(viaJson.name).toBe(data.name);
      }),
      { seed: 11, numRuns: 120 },
    );
  });
});

describe('the calculator', () => {
  const counted = async (text: string): Promise<{ asked: number; ok: boolean }> => {
    let asked = 0;
    const { plan } = await loadPlan(text, () => {
      asked += 1;
      return import('../../src/plan/calculator.ts');
    });
    return { asked, ok: plan !== undefined };
  };

  test.each([
    ['a plan without expressions', 'fixtures: {bed: {mass: 3 kg ± 5 %}}', true, 0],
    ['a plan with params, which are there for expressions', 'params: {a: 3 kg}', true, 1],
    ['an unknown unit', 'fixtures: {bed: {mass: 3 kk}}', false, 0],
    ['a comma', 'fixtures: {bed: {mass: "3,5 kg"}}', false, 0],
    ['an expression', 'fixtures: {bed: {mass: 2 * 3 kg}}', true, 1],
    ['an expression among params', 'params: {a: 2 * 3 kg}', true, 1],
    ['a product with a param', 'params: {a: 3 kg}\nfixtures: {bed: {mass: 2 a}}', true, 1],
    ['a filling that is one', 'load_states: {away: {driver: 2 * 40 kg}}', true, 1],
  ])('is loaded once or never for %s', async (_, lines, ok, asked) => {
    expect(await counted(`storystick: 1\nvan: {}\n${lines}\n`)).toEqual({ ok, asked });
  });
});

describe('params', () => {
  test('may stand in any order, and use each other', async () => {
    const plan = await planIn(
      'storystick: 1\nvan: {}\nparams: {pair: 2 * shelf, shelf: board + 1 kg, board: 3 kg ± 0.5 kg}\nfixtures: {bed: {mass: pair}}\n',
    );
    expect(plan.fixtures?.bed?.mass).toEqual({
      value: 8,
      halfWidth: 0,
      shared: [{ source: 'params.board', halfWidth: expect.closeTo(1, 12) }],
      kind: 'mass',
    });
  });

  test('a chain of thousands, forwards and backwards', async () => {
    const chain = (next: (index: number) => string) =>
      Array.from({ length: 3000 }, (_, index) => `  p${index}: ${next(index)}`).join('\n');
    const forwards = chain((index) => (index === 0 ? '1 kg' : `p${index - 1} + 1 kg`));
    const backwards = chain((index) => (index === 2999 ? '1 kg' : `p${index + 1} + 1 kg`));
    const last = await planIn(`storystick: 1\nvan: {max_mass: p2999}\nparams:\n${forwards}\n`);
    const first = await planIn(`storystick: 1\nvan: {max_mass: p0}\nparams:\n${backwards}\n`);
    expect(last.van.max_mass?.value).toBe(3000);
    expect(first.van.max_mass?.value).toBe(3000);
  });

  test('names that every object has are names like any other', async () => {
    const plan = await planIn(
      'storystick: 1\nvan: {}\nparams: {toString: 2 kg, constructor: toString * 2, valueOf: constructor}\nfixtures: {bed: {mass: valueOf}}\n',
    );
    expect(plan.fixtures?.bed?.mass?.value).toBe(4);
  });
});

test('things may have names that every object has', async () => {
  const plan = await planIn(
    'storystick: 1\nvan: {}\nfixtures: {constructor: {mass: 3 kg}, toString: {mass: 4 kg, on: constructor}}\ntanks: {valueOf: {contents: fresh, holds: 3 L}}\nload_states: {hasOwnProperty: {valueOf: 50 %}}\n',
  );
  expect(Object.keys(plan.fixtures ?? {})).toEqual(['constructor', 'toString']);
  expect(plan.load_states?.hasOwnProperty?.valueOf).toMatchObject({ value: 0.5 });
  // And nothing is found where the plan says nothing.
  expect(plan.fixtures?.valueOf).toBeUndefined();
  expect(plan.load_states?.hasOwnProperty?.toString).toBeUndefined();
});

test('faults of every sort are reported in one run, in the order of the text', async () => {
  expect(
    await problemsIn(
      [
        'storystick: 1',
        'van: {max_mass: 3500, unladen: {front: 1190 kg}}',
        'params: {a: b, b: a, c: 3 kk}',
        'fixtures:',
        '  bed: {mass: 24 kk, in: wardrobe}',
        '  bed: {mass: c, on: nowhere}',
        '  box: {}',
        'tanks: {fresh: {contents: water, holds: 70 L}}',
        'load_states: {away: {frsh: 50 %, fresh: 50 %}}',
        'colour: red',
      ].join('\n'),
    ),
  ).toEqual([
    '2:17 van.max_mass: `3500` has no unit',
    '2:23 unladen has only one axle',
    '3:13 params.a goes round in a circle: a → b → a',
    '3:25 params.c: `kk` is not a unit that is known here',
    '6:3 `bed` is written twice in the same section',
    '6:22 `bed` is on `nowhere`, which is not in the plan',
    '7:3 `box` has no mass',
    '8:27 tanks.fresh.contents: `water` is not a word that is known here',
    '9:22 `frsh` is neither a tank, a store nor a seat of this plan',
    '10:1 `colour` is not a key of the plan',
  ]);
});

describe('thousands of things, and what may be wrong with all of them', () => {
  const many = (line: (index: number) => string) =>
    `storystick: 1\nvan: {}\nfixtures:\n${Array.from({ length: 4000 }, (_, index) => `  thing ${index}: {${line(index)}}`).join('\n')}\n`;

  test.each([
    ['each on the next', (index: number) => `mass: 1 kg${index < 3999 ? `, on: thing ${index + 1}` : ''}`, 0],
    ['each on the last', (index: number) => `mass: 1 kg${index > 0 ? `, on: thing ${index - 1}` : ''}`, 0],
    ['in one circle', (index: number) => `mass: 1 kg, on: thing ${(index + 1) % 4000}`, 1],
    ['one on something unknown', (index: number) => `mass: 1 kg${index === 9 ? ', on: thung 7x' : ''}`, 1],
    ['all without a mass', () => '', 4000],
    ['all with a wrong unit', () => 'mass: 1 kk', 4000],
  ])(
    '%s',
    async (_, line, count) => {
      const { problems } = await load(many(line));
      expect(problems).toHaveLength(count);
    },
    15_000,
  );
});
