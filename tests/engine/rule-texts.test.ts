import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { explanationOf } from '../../src/engine/explanation.ts';
import { renderChecksMarkdown } from '../../src/report/explain/markdown.ts';
import { rules } from '../../src/rules/index.ts';

const sourceOf = (id: string): string =>
  readFileSync(new URL(`../../src/rules/${id.replace('.', '/')}.ts`, import.meta.url), 'utf8');

test('src/rules/README.md is what the rules say: `npm run docs` writes it', () => {
  const written = readFileSync(new URL('../../src/rules/README.md', import.meta.url), 'utf8');
  expect(written).toBe(renderChecksMarkdown(rules.map(explanationOf)));
});

test.each(rules)(
  '$id says how to mend it, and names every row of limits that it takes',
  ({ id, fix, limits }) => {
    expect(fix).toMatch(/^[A-Z].*\.$/);
    expect(fix).not.toMatch(/\bis safe\b/);
    const taken = [...sourceOf(id).matchAll(/\blimit\('([a-z-]+)'\)/g)].map(([, row = '']) => row);
    expect([...(limits ?? [])].sort()).toEqual([...new Set(taken)].sort());
  },
);

test('every row that is named is in the catalogue', () => {
  for (const rule of rules)
    for (const id of rule.limits ?? [])
      expect(explanationOf(rule).limits.map((limit) => limit.id)).toContain(id);
});
