import { expect, test } from 'vitest';
import { findingOf, words } from '../../support/check.ts';
import { waterPlan } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

const found = (cold: string) =>
  findingOf(
    waterPlan({
      pipes: `{suction: {from: fresh tank, to: pump, material: hose, size: 13 mm}, cold: {from: pump, to: sink, ${cold}}}`,
    }),
    'water.pipe-size',
  );

test.each([
  // 15 mm of plastic have walls of 2.5 mm, of copper 1 mm at the most.
  { cold: 'material: PEX, size: 15 mm', says: 'cold, with 10 mm inside' },
  { cold: 'material: copper, size: 15 mm', says: 'cold, with 13 mm inside' },
  { cold: 'material: copper, size: 22 mm', says: 'suction, with 13 mm inside' },
  { cold: 'material: copper, size: 12 mm', says: 'cold, with 11 mm inside' },
  { cold: 'bore: 9 mm', says: 'cold, with 9 mm inside' },
])('$cold: $says', async ({ cold, says }) => {
  const finding = await found(cold);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain(says);
});

test.each([
  { cold: 'length: 1 m', missing: ['water.pipes.cold.material', 'water.pipes.cold.size'] },
  { cold: 'material: PEX', missing: ['water.pipes.cold.size'] },
  { cold: 'size: 15 mm', missing: ['water.pipes.cold.material'] },
  { cold: 'material: PEX, size: 17 mm', missing: ['water.pipes.cold.bore'] },
])('$cold: not checked', async ({ cold, missing }) => {
  const finding = await found(cold);
  expect(finding).toMatchObject({ verdict: 'not checked', subject: 'cold', missing });
  expect(finding.path).toEqual(['water', 'pipes', 'cold']);
});

test('a size that its material is not sold in says so', async () => {
  expect(words((await found('material: PEX, size: 17 mm')).reason)).toContain('measure the bore');
});

test('waste pipes are not under pressure', async () => {
  const text = waterPlan({ pipes: '{waste: {from: sink, to: fresh tank}}' });
  expect(await findingOf(text, 'water.pipe-size')).toMatchObject({ missing: ['water.pipes'] });
  expect(await findingOf(plan(''), 'water.pipe-size')).toMatchObject({ missing: ['water'] });
});
