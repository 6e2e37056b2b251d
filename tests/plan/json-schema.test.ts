import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { describedAt, describedPaths, ownDescription } from '../../src/plan/descriptions.ts';
import { type JsonSchema, planJsonSchema, planSchemaText } from '../../src/plan/json-schema.ts';
import { asAnEditorReads, validatorOf } from '../support/plan-schema.ts';

const schema = planJsonSchema();

/** Every schema of the tree with its path, as the descriptions write it. */
function* within(node: JsonSchema | boolean, path = ''): Generator<readonly [string, JsonSchema]> {
  if (typeof node === 'boolean') return;
  if (path !== '') yield [path, node];
  for (const [key, each] of Object.entries(node.properties ?? {}))
    yield* within(each, path === '' ? key : `${path}.${key}`);
  if (node.additionalProperties !== undefined) yield* within(node.additionalProperties, `${path}.*`);
  if (node.items !== undefined && !Array.isArray(node.items)) yield* within(node.items, `${path}[]`);
  for (const branch of node.anyOf ?? [])
    for (const [at, each] of within(branch, path)) if (at !== path) yield [at, each];
}

const paths = [...within(schema)];

describe('descriptions', () => {
  test('every key of a plan is described in src/plan/descriptions.ts', () => {
    const lacking = paths.map(([path]) => path).filter((path) => ownDescription(path) === undefined);
    expect(lacking, 'these keys have no description').toEqual([]);
    expect(paths.length).toBeGreaterThan(400);
  });

  test('no description is kept for a key that is gone', () => {
    const used = (described: string) =>
      paths.some(([path]) => path === described || path.endsWith(`.${described}`));
    expect(describedPaths.filter((described) => !used(described))).toEqual([]);
  });

  test('each is a sentence', () => {
    for (const [path] of paths) expect(ownDescription(path), path).toMatch(/^[\p{Lu}`].*\.$/u);
  });

  test('a key that nobody has described yet is described by its own words', () => {
    expect(describedAt('gas.bottles.*.test_date')).toBe('Test date.');
    expect(describedAt('water.heated[]')).toBe('Heated.');
    expect(describedAt('gas.bottles.*')).toBeUndefined();
    expect(ownDescription('gas.bottles.*.test_date')).toBeUndefined();
    expect(ownDescription('toString')).toBeUndefined();
  });

  test('a place and a size mean the same wherever they stand', () => {
    expect(ownDescription('water.taps.*.at.from_front')).toBe(ownDescription('fixtures.*.at.from_front'));
  });
});

describe('what a field takes', () => {
  const at = (path: string) => paths.find(([each]) => each === path)?.[1];

  test('a quantity says its kind, its units and an example, and is never held against a pattern', () => {
    expect(at('van.max_mass')).toEqual({
      description:
        'The permissible maximum mass, from the plate. A mass (kg, g, t, lb, oz, st), more than zero. A tolerance (`38 kg ± 5 %`) and arithmetic over `params` will do.',
      type: 'string',
      minLength: 1,
      examples: ['3500 kg'],
    });
    expect(at('electrical.circuits.*.load')?.description).toContain(
      'A current (A, mA), or a power (W, kW), more than zero.',
    );
    expect(at('electrical.coldest')?.description).toContain(
      'A temperature (degC, degF). A tolerance (`-8 degC ± 2 K`)',
    );
    for (const [path, { description, pattern }] of paths)
      if (description?.includes('A tolerance (`')) expect(pattern, path).toBeUndefined();
  });

  test.each([
    ['van.unladen.includes.fuel', ['90 %', 0], [5, '', true, null]],
    ['fixtures.*.count', [4, '2 * pairs'], [0, -1, null]],
    ['load_states.*.*', ['aboard', '20 L', 0], [1, true, null]],
    ['electrical.circuits.*.conductor', ['2.5 mm2'], [2.5, null]],
    ['weighed.*.date', ['2026-03-14'], ['14.3.2026', 2026]],
    ['electrical.circuits.*.hours', ['5 h', { summer: '2 h', winter: '4 h' }], [5, { spring: '2 h' }]],
    ['routes.chases.*.between', [['a', 'b']], [['a'], ['a', 'b', 'c'], 'a']],
    ['params', [{ shelf_mass: '2 kg' }, { häng_2: 4 }], [{ 'shelf mass': '2 kg' }, { a: {} }, null]],
    ['name', ['Curlew', 2026], ['', ' ', 'a\nb', true, 'x'.repeat(501)]],
  ])('%s', (path, taken, refused) => {
    const validate = validatorOf(at(path) ?? {});
    for (const value of taken) expect(validate(value), JSON.stringify(value)).toBe(true);
    for (const value of refused) expect(validate(value), JSON.stringify(value)).toBe(false);
  });

  test('every example fits where it is shown', () => {
    for (const [path, node] of paths) {
      const validate = validatorOf(node);
      for (const example of node.examples ?? [])
        expect(validate(example), `${path}: ${JSON.stringify(example)}`).toBe(true);
    }
  });
});

const root = 'examples';
const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).map((name) => join(root, name));

test('the schema in the examples is the one that the sources say: `npm run schema` writes it', () => {
  expect(readFileSync(join(root, 'plan.schema.json'), 'utf8')).toBe(planSchemaText());
});

describe.each(files.filter((name) => name.endsWith('.yaml')))('%s', (file) => {
  const text = readFileSync(file, 'utf8');

  test('fits the schema', () => {
    const validate = validatorOf(schema);
    validate(asAnEditorReads(text)?.data);
    expect(validate.errors ?? []).toEqual([]);
  });

  test('leads an editor to the schema', () => {
    const [first] = text.split('\n');
    const path = relative(dirname(file), join(root, 'plan.schema.json'));
    expect(first).toBe(`# yaml-language-server: $schema=${path}`);
  });
});
