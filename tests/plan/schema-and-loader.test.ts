import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { planJsonSchema } from '../../src/plan/json-schema.ts';
import { loadPlan } from '../../src/plan/load.ts';
import type { Problem } from '../../src/plan/problem.ts';
import { readScenarios } from '../bad-input/scenario.ts';
import { asAnEditorReads, spansOf, textOf, validatorOf } from '../support/plan-schema.ts';

/*
 * Where the schema and the loader meet: of each thing that is wrong with a plan, both say it or only the loader does,
 * and which of the two is decided here, by what the loader says. Both must mean the same place in the text.
 */

type Reads = (raw: string) => boolean;

/** A bare number, to an editor; text that only works out to one is for the loader. */
const isNumber: Reads = (raw) => /^[-+.\w]+$/.test(raw) && typeof parse(raw) === 'number';
const always: Reads = () => true;

/** What the schema says too, some of it only of some values. */
const both: readonly (readonly [says: RegExp, of: Reads])[] = [
  [
    /^`.*` (?:is not a key of|has no space after the colon|does not merge sections|has a character that)/s,
    always,
  ],
  [/^(?:this|the) format version is |^there is no plan in the file/, always],
  [/ is missing$| has no value$| has nothing in it$| is not one value$/, always],
  [/ should be (?:a section with|a list|text|one value)/, always],
  [/ is not a word that is known here$| is neither true nor false$/, always],
  [/ has no (?:layers|width|height)$| carries nothing$| does not lie between two points$/, always],
  // Of blanks alone, the loader finds that they are no quantity.
  [/ is empty$/, (raw) => !/^"\s+"$/.test(raw)],
  [/ has fewer than three corners$| does not have one value for each month$/, always],
  [/ runs over several lines$| has \d+ characters$/, always],
  [/ has a name that cannot be used in an expression$|^this name (?!has a char)/, always],
  [/ has no unit$| has no per cent sign$| is (?:zero|negative)$| is too large a number$/, isNumber],
  [/ cannot be read as a quantity$/, isNumber],
  [
    / is no size of a conductor$| may be square millimetres, AWG or SAE/,
    (raw) => isNumber(raw) || raw === '""',
  ],
  [/ is not a day of the calendar$/, (raw) => !/^["']?\d{4}-\d{2}-\d{2}["']?$/.test(raw)],
];

/** What a schema cannot say. Everything else that only the loader says is about several keys, or about names. */
const onlyTheLoader: Readonly<Record<string, RegExp>> = {
  'the arithmetic and the unit of a quantity':
    /: (?:the tolerance )?`.*` (?:is|has|works|may|cannot)|tolerance| is an expression of | too large a number$| is empty$| nested too deeply|circle/s,
  'characters that cannot be seen': /has a character that cannot be seen/,
  'names with a meaning of their own':
    /has the name of a unit|is a word with a meaning here|cannot be used as a name/,
  'the calendar': / is not a day of the calendar$/,
  'YAML itself': /is written twice|repeats|meaning of its own in YAML/,
};

const validate = validatorOf(planJsonSchema());
const loadCalculator = () => import('../../src/plan/calculator.ts');

const schemaSays = ({ message }: Problem, raw: string): boolean =>
  both.some(([says, of]) => says.test(message) && of(raw));

/** What the two do not agree on, in words; undefined where an editor reads no data. */
async function differences(text: string) {
  const read = asAnEditorReads(text);
  const { problems, document } = await loadPlan(text, loadCalculator);
  if (!read) return undefined;
  validate(read.data);
  const errors = spansOf(validate.errors ?? [], document);
  const rawOf = ({ span }: Problem) => text.slice(span?.start, span?.end);
  const silent = problems.filter(
    (problem) => schemaSays(problem, rawOf(problem)) !== errors.has(textOf(problem.span)),
  );
  const said = new Set(problems.map(({ span }) => textOf(span)));
  // A key that is missing because it is misspelt is one trouble to the loader.
  const meant = new Set(problems.flatMap(({ meant: name }) => (name === undefined ? [] : [name])));
  const alone = [...errors].filter(
    ([span, { params }]) => !said.has(span) && !meant.has(String(params.missingProperty)),
  );
  return {
    problems,
    found: [
      ...silent.map(
        (problem) =>
          `${schemaSays(problem, rawOf(problem)) ? 'only the loader' : 'the schema too'} says: ${problem.message}`,
      ),
      ...alone.map(([, { instancePath, message }]) => `only the schema says: ${instancePath} ${message}`),
    ],
  };
}

const folder = new URL('../bad-input/', import.meta.url);
const scenarios = readdirSync(folder)
  .filter((name) => name.endsWith('.scenario'))
  .flatMap((file) => readScenarios(readFileSync(new URL(file, folder), 'utf8')).cases);

/** Plans that an editor reads as something else than a plan reader: no YAML of ours. */
const readOtherwise = [
  // The reader stops at the mark, an editor goes round.
  'a section that repeats itself',
  'a few lines that grow to millions',
  // A name that the reader drops.
  'the one name that would vanish',
  // A tag that is a mistake to the reader.
  'words with an exclamation mark',
];

describe('malformed plans', () => {
  test.each(scenarios.filter(({ name }) => !readOtherwise.includes(name)))('$name', async ({ plan }) => {
    expect((await differences(plan))?.found ?? []).toEqual([]);
  });

  test('those that are read otherwise are among them, and are read otherwise', async () => {
    for (const name of readOtherwise) {
      const scenario = scenarios.find((each) => each.name === name);
      expect((await differences(scenario?.plan ?? ''))?.found, name).not.toEqual([]);
    }
  });

  test('each kind of trouble that only the loader tells is among them, and so is each that both tell', async () => {
    const all = [];
    for (const { plan } of scenarios.filter((each) => asAnEditorReads(each.plan))) {
      const { problems } = await loadPlan(plan, loadCalculator);
      all.push(
        ...problems.map((problem) => ({ problem, raw: plan.slice(problem.span?.start, problem.span?.end) })),
      );
    }
    const alone = all.filter(({ problem, raw }) => !schemaSays(problem, raw));
    for (const [kind, words] of Object.entries(onlyTheLoader))
      expect(
        alone.some(({ problem }) => words.test(problem.message)),
        kind,
      ).toBe(true);
    for (const [says, of] of both)
      expect(
        all.some(({ problem, raw }) => says.test(problem.message) && of(raw)),
        String(says),
      ).toBe(true);
    // The rest speaks of things by name, or of several keys: never of what one key takes.
    for (const { problem } of alone)
      if (!Object.values(onlyTheLoader).some((words) => words.test(problem.message)))
        expect(problem.message).not.toMatch(/is missing|should be|is not a key|is not a word/);
  });
});

type Tree = string | number | boolean | null | readonly Tree[] | { readonly [key: string]: Tree };

const examples = ['examples/first-lines.yaml', 'examples/curlew/curlew.yaml'].map((file): unknown =>
  parse(readFileSync(file, 'utf8')),
);

/** The paths to everything in a plan. */
function* pathsIn(
  data: unknown,
  path: readonly (string | number)[] = [],
): Generator<readonly (string | number)[]> {
  yield path;
  if (Array.isArray(data)) for (const [index, each] of data.entries()) yield* pathsIn(each, [...path, index]);
  else if (typeof data === 'object' && data !== null)
    for (const [key, each] of Object.entries(data)) yield* pathsIn(each, [...path, key]);
}

/** The data with something else at a path; `undefined` takes it out. */
function withChange(
  data: unknown,
  [key, ...rest]: readonly (string | number)[],
  change: Tree | undefined,
): unknown {
  if (key === undefined) return change;
  if (Array.isArray(data))
    return data.flatMap((each, index) => {
      if (index !== key) return [each];
      const changed = withChange(each, rest, change);
      return changed === undefined ? [] : [changed];
    });
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(
    Object.entries(data).flatMap(([name, each]) => {
      if (name !== String(key)) return [[name, each]];
      const changed = withChange(each, rest, change);
      return changed === undefined ? [] : [[name, changed]];
    }),
  );
}

describe('an example with one thing changed in its structure', () => {
  const targets = examples.flatMap((data) =>
    [...pathsIn(data)].filter(({ length }) => length > 0).map((path) => ({ data, path })),
  );
  const change: fc.Arbitrary<Tree | undefined> = fc.constantFrom(
    undefined,
    null,
    true,
    5,
    0,
    -2.5,
    '',
    'words',
    '5 kg',
    [],
    ['words', 5],
    {},
    { mass: '5 kg' },
    { form: 'words' },
  );
  const wrong = { both: 0, loader: 0, neither: 0 };

  test('is refused by both for the same, or by the loader alone for what only it can know', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...targets), change, async ({ data, path }, value) => {
        const text = stringify(withChange(data, path, value), { lineWidth: 0 });
        const compared = await differences(text);
        expect(compared?.found ?? ['no YAML'], text).toEqual([]);
        const count = compared?.problems.length ?? 0;
        if (count === 0) wrong.neither += 1;
        else if ((validate.errors ?? []).length > 0) wrong.both += 1;
        else wrong.loader += 1;
      }),
      { numRuns: 250 },
    );
    // All three were visited, or this proves nothing.
    expect(Math.min(wrong.both, wrong.loader, wrong.neither)).toBeGreaterThan(5);
  });
});
