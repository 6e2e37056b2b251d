import { describe, expect, test } from 'vitest';
import { isDictionary } from '../../../src/engine/compare/dictionaries.ts';
import { pairEntries } from '../../../src/engine/compare/entries.ts';
import { planJsonSchema } from '../../../src/plan/json-schema.ts';

const bed = { mass: '24 kg', on: 'floor', size: { length: '1900 mm', width: '1200 mm' } };
const hob = { mass: '3 kg', on: 'worktop', size: { length: '380 mm', width: '300 mm' } };

describe('entries are found again', () => {
  test('by their names, whatever else changed', () => {
    expect(pairEntries({ bed, hob }, { hob: bed, bed: hob })).toEqual({
      pairs: new Map([
        ['bed', 'bed'],
        ['hob', 'hob'],
      ]),
      removed: [],
      added: [],
    });
  });

  test('by what they are, where only the name changed', () => {
    expect(pairEntries({ bed }, { berth: bed }).pairs).toEqual(new Map([['bed', 'berth']]));
  });

  test('by a name that is alike, where one of their values changed too', () => {
    const wider = { ...bed, mass: '29 kg' };
    expect(pairEntries({ 'bed frame': bed }, { 'bed frame 2': wider }).pairs).toEqual(
      new Map([['bed frame', 'bed frame 2']]),
    );
  });

  test('each once, the most alike first', () => {
    const { pairs, added } = pairEntries({ bed }, { other: { ...bed, mass: '30 kg' }, berth: bed });
    expect(pairs).toEqual(new Map([['bed', 'berth']]));
    expect(added).toEqual(['other']);
  });

  test('not where they are something else', () => {
    expect(pairEntries({ bed }, { hob })).toEqual({ pairs: new Map(), removed: ['bed'], added: ['hob'] });
  });

  test('not by a single value that happens to be the same', () => {
    const one = { full: '10 kg' };
    expect(pairEntries({ clothes: one }, { bicycles: one }).pairs.size).toBe(0);
    expect(pairEntries({ clothes: one }, { 'the clothes': one }).pairs.size).toBe(1);
  });

  test('the same from either side, also where two are as much alike', () => {
    const one = { a1: bed, a2: bed };
    const other = { b1: bed, b2: bed };
    const there = pairEntries(one, other).pairs;
    const back = pairEntries(other, one).pairs;
    expect(new Map([...back].map(([from, to]) => [to, from]))).toEqual(there);
  });
});

// A section of named entries that is missing from the list would be compared key by key, and nothing in it be found again.
test('every section of the format that has names of the user is known', () => {
  const found: string[] = [];
  const walk = (schema: unknown, path: readonly string[]): void => {
    if (typeof schema !== 'object' || schema === null) return;
    if ('anyOf' in schema && Array.isArray(schema.anyOf)) for (const each of schema.anyOf) walk(each, path);
    if ('properties' in schema && typeof schema.properties === 'object' && schema.properties !== null)
      for (const [key, value] of Object.entries(schema.properties)) walk(value, [...path, key]);
    if ('additionalProperties' in schema && typeof schema.additionalProperties === 'object') {
      found.push(path.join('.'));
      walk(schema.additionalProperties, [...path, '*']);
    }
  };
  walk(planJsonSchema(), []);
  const named = found.filter((path) => isDictionary(path.split('.')));
  // The keys of these are names of other entries, of fittings or of checks: they are what they are.
  const references = ['water.pipes.*.fittings', 'heat.panes', 'load_states.*', 'weighed.*.state', 'rules'];
  expect(found.filter((path) => !named.includes(path))).toEqual(references);
});
