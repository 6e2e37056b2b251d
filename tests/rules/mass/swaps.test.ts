import { expect, test } from 'vitest';
import { noteOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

/** The table's rows as text; an error where the rule says nothing. */
async function rows(text: string): Promise<readonly (readonly string[])[]> {
  const note = await noteOf(text, 'mass.swaps');
  if (!note) throw new Error('there is no table of swaps');
  return note.rows.map((row) => row.map(words));
}

const walls = (layers: string) => plan(`build_ups: {walls: {area: 10 m2, layers: [${layers}]}}`);

// 10 m² · 12 mm = 0.12 m³. Birch at 695 kg/m³ is 83.4 kg, poplar at 450 kg/m³ 54 kg: 29.4 kg saved.
test('a lighter board of the same thickness', async () => {
  const found = await rows(walls('{material: birch plywood, thickness: 12 mm}'));
  const poplar = found.find((row) => row[2] === 'poplar plywood');
  expect(poplar).toEqual(['walls', 'birch plywood', 'poplar plywood', '450 kg/m³', '29 kg']);
});

// Half the area, half the saving: 14.7 kg.
test('a layer over a part of the area saves that part', async () => {
  const found = await rows(walls('{material: birch plywood, thickness: 12 mm, share: 50 %}'));
  expect(found.find((row) => row[2] === 'poplar plywood')?.[4]).toBe('15 kg');
});

test('the greatest saving comes first, and none is below half a kilogram', async () => {
  const note = await noteOf(walls('{material: MDF, thickness: 6 mm}'), 'mass.swaps');
  const saved = (note?.rows ?? []).map((row) =>
    row[4]?.map((part) => (typeof part === 'string' ? 0 : part.value)).reduce((a, b) => a + b),
  );
  expect(saved.length).toBeGreaterThan(1);
  expect(saved).toEqual([...saved].sort((a, b) => (b ?? 0) - (a ?? 0)));
  expect(Math.min(...saved.map((kg) => kg ?? 0))).toBeGreaterThanOrEqual(0.5);
});

test('a board is not swapped for what is no board', async () => {
  const found = await rows(walls('{material: birch plywood, thickness: 12 mm}'));
  expect(found.map((row) => row[2])).not.toContain('XPS');
  expect(found.map((row) => row[2])).not.toContain('balsa');
});

test('a layer given by its mass per area has nothing to be compared with', async () => {
  const note = await noteOf(walls('{name: carpet, areal_mass: 1.2 kg/m2}'), 'mass.swaps');
  expect(note?.rows).toEqual([]);
  expect(words(note?.text ?? [])).toContain('nothing lighter');
});

test('it is information: no verdict, and silence where there are no build-ups', async () => {
  const report = await reportOf(walls('{material: birch plywood, thickness: 12 mm}'));
  expect(report.findings.filter(({ rule }) => rule === 'mass.swaps')).toEqual([]);
  const silent = await reportOf(plan());
  expect(silent.findings.filter(({ rule }) => rule === 'mass.swaps')).toEqual([]);
  expect(silent.notes.filter(({ rule }) => rule === 'mass.swaps')).toEqual([]);
});

test('the table carries its caution', async () => {
  const note = await noteOf(walls('{material: birch plywood, thickness: 12 mm}'), 'mass.swaps');
  expect(note?.cautions.join()).toContain('before a load-bearing board is changed');
});
