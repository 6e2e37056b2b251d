import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { topics } from '../../src/engine/finding.ts';
import { balanceCaution, vehicleLawCaution } from '../../src/rules/cautions.ts';
import { rules } from '../../src/rules/index.ts';
import registry from '../../src/rules/registry.generated.ts';
import { noteOf, reportOf } from '../support/check.ts';

const rulesFolder = new URL('../../src/rules/', import.meta.url);
const testsFolder = new URL('../rules/', import.meta.url);

const filesIn = (folder: URL): string[] =>
  readdirSync(folder, { recursive: true })
    .map((file) => String(file).replaceAll('\\', '/'))
    .filter((file) => file.includes('/') && !file.startsWith('working/'))
    .sort();

/** The rules that vehicle law has a say in: what a van weighs, and on which axle. */
const lawful = [
  'mass.total',
  'mass.payload',
  'mass.personal-effects',
  'mass.base',
  'mass.weighbridge',
  'balance.front-axle',
  'balance.rear-axle',
  'balance.steered-share',
  'balance.load-states',
];

test('ids are unique, in order, and each is topic and name with a dot between', () => {
  const ids = rules.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids).toEqual([...ids].sort());
  for (const { id, topic } of rules) expect(id).toMatch(new RegExp(`^${topic}\\.[a-z]+(-[a-z]+)*$`));
});

test('one file a rule, in the folder of its topic and named after it, and every file is registered', () => {
  const files = rules.map(({ id }) => `${id.replace('.', '/')}.ts`).sort();
  expect(filesIn(rulesFolder)).toEqual(files);
  expect(registry).toHaveLength(files.length);
});

test('every rule has a test file of its own, and there is none for a rule that is gone', () => {
  expect(filesIn(testsFolder)).toEqual(rules.map(({ id }) => `${id.replace('.', '/')}.test.ts`).sort());
});

test('every topic has a rule', () => {
  for (const topic of topics) expect(rules.some((rule) => rule.topic === topic)).toBe(true);
});

describe.each(rules)('$id', (rule) => {
  test('explains itself', () => {
    for (const text of [rule.title, rule.why, rule.formula]) expect(text.trim()).not.toBe('');
    expect(rule.title.length).toBeLessThanOrEqual(40);
    expect(rule.why).toMatch(/[.!]$/);
    expect(rule.place.length).toBeGreaterThan(0);
    expect(rule.cautions.length).toBeGreaterThan(0);
    for (const caution of rule.cautions) expect(caution).toMatch(/\.$/);
  });

  test('is where its id says', () => {
    const source = readFileSync(new URL(`${rule.id.replace('.', '/')}.ts`, rulesFolder), 'utf8');
    expect(source).toContain(`id: '${rule.id}'`);
  });

  test('carries the cautions of its subject', () => {
    if (lawful.includes(rule.id)) expect(rule.cautions).toContain(vehicleLawCaution);
    if (rule.topic === 'balance' && rule.id !== 'balance.stability')
      expect(rule.cautions).toContain(balanceCaution);
  });

  test('never calls anything safe', () => {
    expect([rule.title, rule.why, rule.formula, ...rule.cautions].join(' ')).not.toMatch(
      /\b(?:is|are) safe\b/,
    );
  });
});

test('what is lawful is a rule', () => {
  for (const id of lawful) expect(rules.map((rule) => rule.id)).toContain(id);
});

/** Two lines of a plan, and then one with everything: all rules speak, and none of them without cautions. */
describe('every finding', () => {
  const everything = readFileSync('examples/curlew/curlew.yaml', 'utf8');

  test('of a bare plan is "not checked", says what to add, and keeps its cautions', async () => {
    const { findings } = await reportOf('storystick: 1\nvan: {}');
    const silent = [
      'balance.load-states',
      'balance.overhang',
      'mass.swaps',
      'routes.lengths',
      'routes.penetrations',
      // Without waivers there is nothing to say of them.
      'plan.waivers',
      'water.tank-swing',
    ];
    expect(findings.map(({ rule }) => rule).sort()).toEqual(
      rules.map(({ id }) => id).filter((id) => !silent.includes(id) || id === 'balance.load-states'),
    );
    for (const { verdict, missing, cautions } of findings) {
      expect(verdict).toBe('not checked');
      expect(missing?.length).toBeGreaterThan(0);
      expect(cautions.length).toBeGreaterThan(0);
    }
  });

  test('of a whole plan has a verdict, a reason, cautions and a source', async () => {
    const { findings } = await reportOf(everything);
    const speaking = new Set(findings.map(({ rule }) => rule));
    for (const { id, informationOnly } of rules)
      if (informationOnly) expect(await noteOf(everything, id)).toBeDefined();
      else if (id !== 'plan.waivers') expect([...speaking]).toContain(id);
    for (const finding of findings) {
      // The example has no shower.
      if (finding.rule !== 'electrical.wet-zone') expect(finding.verdict).not.toBe('not checked');
      expect(finding.reason.length).toBeGreaterThan(0);
      expect(finding.cautions.length).toBeGreaterThan(0);
      expect(finding.sources.length).toBeGreaterThan(0);
      const rule = rules.find(({ id }) => id === finding.rule);
      for (const caution of rule?.cautions ?? []) expect(finding.cautions).toContain(caution);
    }
  });
});
