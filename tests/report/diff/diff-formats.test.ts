import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { compare } from '../../../src/engine/compare/compare.ts';
import type { Comparison } from '../../../src/engine/compare/comparison.ts';
import { besideEachOther, type Variants } from '../../../src/engine/compare/variants.ts';
import type { Finding } from '../../../src/engine/finding.ts';
import { mass, share } from '../../../src/engine/measure.ts';
import { signedChange } from '../../../src/report/diff/change-text.ts';
import { editText } from '../../../src/report/diff/edit-text.ts';
import { renderJsonDiff } from '../../../src/report/diff/json.ts';
import { jsonDiffSchema } from '../../../src/report/diff/json-schema.ts';
import { renderMarkdownDiff } from '../../../src/report/diff/markdown.ts';
import { renderDiff } from '../../../src/report/diff/terminal.ts';
import { renderJsonVariants } from '../../../src/report/variants/json.ts';
import { jsonVariantsSchema } from '../../../src/report/variants/json-schema.ts';
import { shortNames } from '../../../src/report/variants/names.ts';
import { renderVariants } from '../../../src/report/variants/terminal.ts';
import { movedLines } from '../../../src/report/watched-changes.ts';
import { comparedText, comparisonOf, storystick } from '../../support/compared.ts';

const example = (name: string) =>
  comparedText(readFileSync(`examples/curlew/${name}.yaml`, 'utf8'), `examples/curlew/${name}.yaml`);

let comparisons: readonly Comparison[];
let variants: Variants;

beforeAll(async () => {
  const [curlew, oak, crowded, tangled, thin] = [
    await example('curlew'),
    await example('oak'),
    await example('crowded'),
    await example('tangled'),
    await example('thin-cables'),
  ];
  comparisons = [oak, crowded, tangled, thin].map((other) => compare(curlew, other));
  variants = besideEachOther([curlew, oak, crowded, tangled, thin]);
}, 60_000);

const linesOf = (text: string): readonly string[] => text.split('\n');
const flat = (text: string): string => text.replace(/\s+/g, ' ');

test.each([60, 72, 80, 100, 160])('no line is longer than %i columns', (width) => {
  for (const comparison of comparisons) {
    for (const detail of [false, true]) {
      const text = renderDiff(comparison, { width, colour: false, detail });
      expect(linesOf(text).filter((line) => line.length > width)).toEqual([]);
    }
  }
  const text = renderVariants(variants, { width, colour: false, all: true });
  expect(linesOf(text).filter((line) => line.length > width)).toEqual([]);
});

test('colour says nothing that the words do not', () => {
  const escapes = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');
  for (const comparison of comparisons) {
    const coloured = renderDiff(comparison, { width: 80, colour: true, detail: false });
    expect(coloured).toMatch(escapes);
    expect(coloured.replace(escapes, '')).toBe(
      renderDiff(comparison, { width: 80, colour: false, detail: false }),
    );
  }
  const coloured = renderVariants(variants, { width: 80, colour: true, all: false });
  expect(coloured.replace(escapes, '')).toBe(
    renderVariants(variants, { width: 80, colour: false, all: false }),
  );
});

describe('the cautions of all that is shown survive', () => {
  const cautionsOf = (findings: readonly (Finding | undefined)[]): readonly string[] =>
    findings.flatMap((finding) => finding?.cautions ?? []);

  test('on a terminal, in Markdown and in JSON', () => {
    for (const comparison of comparisons) {
      const cautions = cautionsOf([
        ...comparison.verdicts.map(({ shown }) => shown),
        ...comparison.moved.map(({ after }) => after),
      ]);
      expect(cautions.length).toBeGreaterThan(0);
      const terminal = flat(renderDiff(comparison, { width: 100, colour: false, detail: true }));
      const markdown = renderMarkdownDiff(comparison);
      const json = JSON.parse(renderJsonDiff(comparison, { version: 'test', failOn: 'worse', exitCode: 1 }));
      const said = [
        ...json.verdicts.flatMap((each: { before: Finding | null; after: Finding | null }) => [
          each.before,
          each.after,
        ]),
        ...json.moved,
      ].flatMap((each: { cautions: string[] } | null) => each?.cautions ?? []);
      for (const caution of cautions) {
        expect(terminal).toContain(caution);
        expect(markdown.replace(/\\(?=[[\]_*`|~$])/g, '')).toContain(caution);
        expect(said).toContain(caution);
      }
    }
  });

  test('beside variants', () => {
    const text = flat(renderVariants(variants, { width: 100, colour: false, all: true }));
    const json = JSON.parse(renderJsonVariants(variants, { version: 'test' }));
    const said: readonly string[] = json.rows.flatMap((row: { cautions: readonly string[] }) => row.cautions);
    for (const caution of cautionsOf(variants.rows.flatMap(({ findings }) => findings))) {
      expect(text).toContain(caution);
      expect(said).toContain(caution);
    }
  });
});

describe('JSON', () => {
  test('is as its schema says, and with every key', () => {
    for (const comparison of comparisons) {
      const read = jsonDiffSchema.parse(
        JSON.parse(renderJsonDiff(comparison, { version: 'test', failOn: 'changed', exitCode: 1 })),
      );
      expect(read.verdicts).toHaveLength(comparison.verdicts.length);
      expect(read.moved).toHaveLength(comparison.moved.length);
      expect(read.edits).toHaveLength(comparison.edits.length);
      expect(read.summary).toMatchObject({ same: false, worse: true, failOn: 'changed', exitCode: 1 });
    }
    const read = jsonVariantsSchema.parse(JSON.parse(renderJsonVariants(variants, { version: 'test' })));
    expect(read.rows).toHaveLength(variants.rows.length);
    expect(read.rows.every(({ cells }) => cells.length === 5)).toBe(true);
  });

  // Version 1 is frozen: a name that changes here is a new version.
  test('has these fields', () => {
    const fields = (schema: { readonly shape: object }) => Object.keys(schema.shape);
    expect(fields(jsonDiffSchema)).toEqual([
      'schemaVersion',
      'kind',
      'tool',
      'before',
      'after',
      'summary',
      'verdicts',
      'moved',
      'edits',
    ]);
    expect(fields(jsonDiffSchema.shape.verdicts.element)).toEqual([
      'identity',
      'turn',
      'stepBack',
      'rule',
      'topic',
      'subject',
      'from',
      'to',
      'before',
      'after',
    ]);
    expect(fields(jsonDiffSchema.shape.moved.element)).toEqual([
      'identity',
      'rule',
      'topic',
      'title',
      'subject',
      'verdict',
      'from',
      'to',
      'change',
      'margin',
      'cautions',
    ]);
    expect(fields(jsonDiffSchema.shape.edits.element)).toEqual([
      'kind',
      'entry',
      'key',
      'was',
      'before',
      'after',
      'change',
      'moves',
      'lineBefore',
      'lineAfter',
    ]);
    expect(fields(jsonVariantsSchema)).toEqual([
      'schemaVersion',
      'kind',
      'tool',
      'units',
      'variants',
      'rows',
    ]);
    expect(fields(jsonVariantsSchema.shape.rows.element)).toEqual([
      'identity',
      'rule',
      'topic',
      'title',
      'subject',
      'same',
      'cells',
      'cautions',
    ]);
  });
});

test('a change has its sign, and no meaning but its own', () => {
  expect(signedChange(mass(14), '14 kg')).toBe('+14 kg');
  expect(signedChange(mass(-0.04), '-0.04 kg')).toBe('-0.04 kg');
  expect(signedChange(share(0.05), '5.0 %')).toBe('+5.0 points');
});

test('what was edited says by how much, in the unit that a reader knows it in', async () => {
  const curlew = readFileSync('examples/curlew/curlew.yaml', 'utf8');
  const edits = [
    ['cut_out: 2.4 bar', 'cut_out: 2.35 bar', 'pump.cut_out 2.4 bar → 2.35 bar (-0.05 bar)'],
    ['flow: 10 L/min', 'flow: 11.5 L/min', 'pump.flow 10 L/min → 11.5 L/min (+1.5 L/min)'],
    ['flow: 900 m3/h', 'flow: 800 m3/h', 'flow 900 m3/h → 800 m3/h (-100 m³/h)'],
    ['low_vent: 110 cm2', 'low_vent: 99 cm2', 'locker.low_vent 110 cm2 → 99 cm2 (-11 cm²)'],
    ['bore: 50 mm', 'bore: 52.5 mm', 'bore 50 mm → 52.5 mm (+2.5 mm)'],
  ] as const;
  const changed = edits.reduce((text, [from, to]) => text.replace(from, to), curlew);
  const { edits: made } = await comparisonOf(curlew, changed);
  expect(made.map((edit) => editText(edit, 'metric')).toSorted()).toEqual(
    edits.map(([, , said]) => said).toSorted(),
  );
});

test('a change has the unit of the values that it lies between', async () => {
  const curlew = readFileSync('examples/curlew/curlew.yaml', 'utf8');
  const comparison = await comparisonOf(curlew, curlew.replace('contents: propane', 'contents: butane'));
  // By itself the change would be told in pascals.
  const step = /^gas pressure at each appliance: hob +[\d.]+ mbar +[\d.]+ mbar +-[\d.]+ mbar /m;
  expect(renderDiff(comparison, { width: 160, colour: false, detail: false })).toMatch(step);
  const moved = comparison.moved.filter(({ after }) => after.rule === 'gas.pipe-drop');
  expect(moved.flatMap((each) => movedLines(comparison.after, each, 160))).toContainEqual(
    expect.stringMatching(/: [\d.]+ mbar, was [\d.]+ mbar; margin [\d.]+ mbar, [\d.]+ mbar more$/),
  );
  const json = jsonDiffSchema.parse(
    JSON.parse(renderJsonDiff(comparison, { version: 'test', failOn: 'worse', exitCode: 0 })),
  );
  const [drop] = json.moved.filter(({ rule }) => rule === 'gas.pipe-drop');
  for (const each of [drop, drop?.margin])
    for (const text of [each?.from.text, each?.to.text, each?.change.text]) expect(text).toMatch(/\d mbar$/);
});

test('a limit that moved too is told, since the value may be of something else now', async () => {
  // The load state is closest to the limit of an axle at first, and then to that of the whole van.
  const curlew = readFileSync('examples/curlew/curlew.yaml', 'utf8').replace(
    'max_mass: 3500 kg',
    'max_mass: 9000 kg',
  );
  const comparison = await comparisonOf(curlew, curlew.replace('max_mass: 9000 kg', 'max_mass: 3000 kg'));
  const state = comparison.moved.filter(({ after }) => after.rule === 'balance.load-states');
  const text = renderDiff({ ...comparison, moved: state }, { width: 160, colour: false, detail: false });
  expect(text).toMatch(/load states: setting out +1,\d{3} kg +3,\d{3} kg +\+[\d,]+ kg, limit \+[\d,]+ kg /);
  expect(state.flatMap((each) => movedLines(comparison.after, each, 200))).toContainEqual(
    expect.stringMatching(
      /setting out: 3,\d{3} kg, was 1,\d{3} kg; limit 3,000 kg, was \d,\d{3} kg; margin /,
    ),
  );
});

test('a margin in per cent gets less by points', async () => {
  const { moved, after } = comparisons[0] ?? { moved: [], after: undefined };
  const lines = moved.flatMap((each) => (after ? movedLines(after, each, 200) : []));
  expect(lines.filter((line) => /margin .* %, .*(?:less|more)$/.test(line))).not.toEqual([]);
  expect(lines.join('\n')).not.toMatch(/margin [^\n]* % (?:less|more)/);
});

test('no field of a stacked value is empty', () => {
  const text = comparisons
    .map((each) => renderDiff(each, { width: 60, colour: false, detail: false }))
    .join('');
  expect(text).toMatch(/, limit moved,/);
  expect(text).not.toMatch(/\S {2,}(?:limit moved|change)/);
});

describe('variants', () => {
  test('the best says so, and what fails says so', () => {
    const text = renderVariants(variants, { width: 160, colour: false, all: false });
    const row = linesOf(text).find((line) => line.startsWith('total mass')) ?? '';
    expect(row).toMatch(/3,216 kg +3,553 kg fail +3,215 kg best +3,215 kg best/);
  });

  test('two that are the same', async () => {
    const curlew = 'examples/curlew/curlew.yaml';
    const { code, out } = await storystick(['compare', curlew, curlew]);
    expect(code).toBe(0);
    expect(out).toContain('No difference can be seen.');
  });

  test('are called by their files, or by letters where those would not do', () => {
    const [side] = variants.sides;
    if (!side) throw new Error('no side');
    const named = (...files: readonly string[]) => shortNames(files.map((file) => ({ ...side, file })));
    expect(named('a/van.yaml', 'b/oak.yml')).toEqual(['van', 'oak']);
    expect(named('a/van.yaml', 'b/van.yaml')).toEqual(['A', 'B']);
    expect(named('a/van.yaml', 'a name of many words.yaml')).toEqual(['A', 'B']);
  });

  test('need two plans, that can be read', async () => {
    const alone = await storystick(['compare', 'examples/curlew/curlew.yaml']);
    expect(alone.code).toBe(2);
    const { code, out, err } = await storystick([
      'compare',
      'examples/curlew/curlew.yaml',
      'nowhere.yaml',
      'README.md',
    ]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('nowhere.yaml: there is no such file');
    expect(err).toContain('README.md:');
  });
});
