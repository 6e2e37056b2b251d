import { expect, test } from 'vitest';
import { combustionCaution, escapeCaution } from '../../../src/rules/cautions.ts';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.extinguisher';
const openings = '{door: {kind: door, in: left wall, length: 1 m, height: 1.8 m, at: {from_front: 500 mm}}}';
const things = (x: number, more = '') => `fixtures:
  bottle: {mass: 3 kg, size: {length: 100 mm, width: 100 mm, height: 400 mm}, at: {from_front: ${x - 50} mm, from_left: 0 mm, above_floor: 0 mm}}
  hob: {is: cooker, mass: 3 kg, size: {length: 400 mm, width: 400 mm, height: 100 mm}, at: {from_front: 2 m, from_right: 0 mm, above_floor: 800 mm}}
${more}`;
const bottle = (holds = '2 kg') => `extinguisher: {kind: dry powder, holds: ${holds}, thing: bottle}`;
const blanket = (x: number, right = 0, above = 1000) =>
  `fire_blanket: {at: {from_front: ${x} mm, from_right: ${right} mm, above_floor: ${above} mm}}`;
const text = (protection: string, x = 1000) => plan(`${things(x)}protection: {${protection}}`, { openings });
const verdicts = async (plain: string) =>
  (await reportOf(plain)).findings
    .filter(({ rule }) => rule === id)
    .map(({ verdict, subject }) => [verdict, subject]);

test('both in place', async () => {
  const finding = await findingOf(text(`${bottle()}, ${blanket(1500)}`), id);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe(
    'The plan shows a fire extinguisher of 2.0 kg dry powder 50 mm from a way out and a fire blanket 500 mm across from the cooker.',
  );
  expect(finding.cautions.slice(0, 2)).toEqual([combustionCaution, escapeCaution]);
});

test('neither: two findings with what to fit', async () => {
  expect(await verdicts(text(''))).toEqual([
    ['warn', 'fire blanket'],
    ['warn', 'fire extinguisher'],
  ]);
  const finding = await findingOf(text(''), id, 'fire extinguisher');
  expect(words(finding.remedy)).toContain('Fit 1 of dry powder with 1.0 kg or more');
});

test('a kilogram of dry powder is kept, less is not', async () => {
  expect(await verdicts(text(`${bottle('1 kg')}, ${blanket(1500)}`))).toEqual([
    ['pass', 'fire extinguisher and fire blanket'],
  ]);
  const finding = await findingOf(text(`${bottle('0.6 kg')}, ${blanket(1500)}`), id, 'fire extinguisher');
  expect(finding).toMatchObject({ verdict: 'warn', path: ['protection', 'extinguisher', 'holds'] });
  expect(words(finding.remedy)).toContain('0.4 kg more');
});

test('within a metre of a way out, or in the cab', async () => {
  // The door ends 1500 mm behind the front; the middle of the bottle is 50 mm from the wall.
  const edge = 1500 + Math.sqrt(1 - 0.05 ** 2) * 1000;
  expect((await findingOf(text(`${bottle()}, ${blanket(1500)}`, edge), id)).verdict).toBe('pass');
  const far = await findingOf(text(`${bottle()}, ${blanket(1500)}`, edge + 50), id, 'fire extinguisher');
  expect(far.verdict).toBe('warn');
  expect(words(far.remedy)).toContain('Put it 50 mm or more nearer');
  expect((await findingOf(text(`${bottle()}, ${blanket(1500)}`, -800), id)).verdict).toBe('pass');
});

test('the blanket within 1.5 m of the cooker, and not over it', async () => {
  expect((await findingOf(text(`${bottle()}, ${blanket(500)}`), id)).verdict).toBe('pass');
  expect(words((await findingOf(text(`${bottle()}, ${blanket(450)}`), id, 'fire blanket')).remedy)).toContain(
    'Hang it 50 mm or more nearer',
  );
  const over = await findingOf(text(`${bottle()}, ${blanket(2200, 200)}`), id, 'fire blanket');
  expect(words(over.reason)).toContain('hangs over the cooker');
});

test('where nothing is cooked on no blanket is missed', async () => {
  const cold = `${things(1000).replace('is: cooker, ', '')}protection: {${bottle()}}`;
  expect(await verdicts(plan(cold, { openings }))).toEqual([['pass', 'fire extinguisher']]);
});

test('not checked: nothing of it, no place, no way out', async () => {
  expect((await findingOf(plan(), id)).missing).toEqual([
    'protection.extinguisher',
    'protection.fire_blanket',
  ]);
  expect(
    (await findingOf(text(`extinguisher: {}, ${blanket(1500)}`), id, 'fire extinguisher')).missing,
  ).toEqual([
    'protection.extinguisher.kind',
    'protection.extinguisher.holds',
    'protection.extinguisher.thing',
  ]);
  const shut = plan(`${things(1000)}protection: {${bottle()}, fire_blanket: {}}`);
  expect((await findingOf(shut, id)).missing).toEqual(['van.openings', 'protection.fire_blanket.at']);
});
