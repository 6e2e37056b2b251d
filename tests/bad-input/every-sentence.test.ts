import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { saysIn } from './scenario.ts';
import { importedFrom, patternOf, sentencesOf } from './sentences.ts';

const plan = new URL('../../src/plan/', import.meta.url);
const files = [
  ...importedFrom(new URL('load.ts', plan), plan),
  new URL('calculator.ts', plan),
  new URL('source.ts', plan),
  new URL('../../src/engine/overrides.ts', import.meta.url),
  new URL('../../src/engine/waiver-troubles.ts', import.meta.url),
];
const sentences = files.flatMap(sentencesOf);

const folder = new URL('.', import.meta.url);
const said = readdirSync(folder)
  .filter((name) => name.endsWith('.scenario') || name.endsWith('.said.txt'))
  .map((name) => saysIn(readFileSync(new URL(name, folder), 'utf8')))
  .join('\n');

/** Words that are no message, each with the reason why nobody reads them. */
const notShown: Readonly<Record<string, string>> = {
  'in YAML stream': 'looked for in what the parser says',
  'min max round sqrt mod to in and or not xor true false null undefined Infinity NaN end':
    'names that a param cannot have',
  'uses a param that has a problem of its own': 'marks a consequence, which is left out of the report',
  'this is not valid YAML': 'for errors that a later parser may find and this one does not',
  'there is no permission to read the file': 'no file is unreadable for a superuser, who may run these tests',
  'a file that you may read': 'the same',
  'sections and lists are nested too deeply here': 'where depends on the stack: see files.test.ts',
  'a plan as in the examples: no section is more than five deep': 'the same',
  'the file cannot be read…': 'a failing disk cannot be had at will',
};

test('the reader of source files finds sentences where there are some', () => {
  expect(files.map((file) => file.pathname.replace(/^.*\//, ''))).toContain('cross-check.ts');
  expect(sentences.map(({ pieces }) => pieces.join('…'))).toEqual(
    expect.arrayContaining([
      'unladen has only one axle',
      '… has no unit',
      'this is a directory',
      'a layer cannot cover more than the whole area',
    ]),
  );
  expect(sentences.length).toBeGreaterThan(150);
});

test('every sentence that reading a plan may say is said in a scenario', () => {
  const silent = sentences.filter(
    (sentence) => notShown[sentence.pieces.join('…')] === undefined && !patternOf(sentence).test(said),
  );
  expect(silent.map(({ file, pieces }) => `${file}: ${pieces.join('…')}`)).toEqual([]);
});

test('the words that need not be said are still in the source', () => {
  const words = sentences.map(({ pieces }) => pieces.join('…'));
  for (const unsaid of Object.keys(notShown)) expect(words).toContain(unsaid);
});
