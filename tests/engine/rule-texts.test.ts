import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { explanationOf } from '../../src/engine/explanation.ts';
import { renderChecksMarkdown } from '../../src/report/explain/markdown.ts';
import { limitText } from '../../src/report/explain/words.ts';
import { rules } from '../../src/rules/index.ts';

/** A row that a rule takes by its name. */
const takenRow =
  /\b(?:limit|(?:air|gas)Limit(?:For)?)\('([a-z-]+)'|\b(?:water|air)Limits(?:\.|\[')([a-z-]+)(?='\])/g;

/** Rows that a rule takes in place of what the plan leaves out, or in a remedy, and holds nothing against. */
const assumed: Readonly<Record<string, readonly string[]>> = {
  'water.hot-amount': ['hot-store-temperature'],
  'water.drain-fall': ['parking-lean'],
  'gas.off-take': ['locker-cylinders'],
};

/** The rows of locker vents are taken where they are put together. */
const lockerVents = readFileSync(new URL('../../src/catalogue/gas/locker-vents.ts', import.meta.url), 'utf8');

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
    const source = sourceOf(id);
    const named: readonly string[] = limits ?? [];
    const taken = [...source.matchAll(takenRow)].flatMap(([, called, indexed]) => {
      const row = called ?? indexed ?? '';
      return assumed[id]?.includes(row) ? [] : [row];
    });
    expect(taken.filter((row) => !named.includes(row))).toEqual([]);
    // A row that is named is taken here, be it by way of a helper that is told its name.
    const written =
      id === 'gas.locker-vents' ? lockerVents : source.replace(/^ {2}limits: \[[^\]]*\],$/m, '');
    expect(named.filter((row) => !written.includes(`'${row}'`))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
  },
);

test('a row says its number in a unit that a reader takes for what it is', () => {
  const limitsOf = (id: string): string =>
    rules
      .filter((rule) => rule.id === id)
      .flatMap((rule) => explanationOf(rule).limits.map((each) => limitText(each, 'metric')))
      .join('\n');
  expect(limitsOf('water.hot-wait')).toMatch(
    /^at most 30 s until .*\nat most 60 s until .*\nat most 1\.0 L of water/,
  );
  expect(limitsOf('water.surge')).toMatch(/^at most 20 % of a tank /);
  expect(limitsOf('gas.pipe-drop')).toMatch(/^at most 1\.25 mbar lost .* \(standard, us\)$/m);
  expect(limitsOf('gas.ages')).toMatch(/^at most \d+ years: age of a gas hose/m);
  expect(limitsOf('air.night')).toMatch(/^at most 2,000 ppm carbon dioxide/m);
  expect(limitsOf('air.still-night')).toMatch(/^at least 0\.50: changes of air in a bedroom, an hour/m);
  expect(limitsOf('gas.locker-vents')).toMatch(/^at least 2\.0 % of the floor of the cylinder locker/m);
});

test('every row that is named is in the catalogue', () => {
  for (const rule of rules)
    for (const id of rule.limits ?? [])
      expect(explanationOf(rule).limits.map((limit) => limit.id)).toContain(id);
});
