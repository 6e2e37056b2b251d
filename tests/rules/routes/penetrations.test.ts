import { expect, test } from 'vitest';
import { structureCaution } from '../../../src/rules/cautions.ts';
import { noteOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const at = (fromFront: string) => `{at: {from_front: ${fromFront}, from_left: 0 m, above_floor: 0.1 m}}`;
const text = (
  through: string,
  runs = ', runs: {drain: {carries: water, from: a, to: b, diameter: 19 mm}, feed: {carries: water, from: a, to: b, diameter: 12 mm}, lights: {carries: cable, from: a, to: b}}',
) =>
  plan(
    `routes: {points: {a: ${at('1 m')}, b: ${at('2 m')}}, chases: {low: {between: [a, b], carries: [water]${through}}, vent: {between: [a, b], carries: [gas], through: [roof]}}${runs}}`,
  );
const rowsOf = async (plan: string) =>
  (await noteOf(plan, 'routes.penetrations'))?.rows.map((row) => row.map((cell) => words(cell)));

test('lists every hole through the floor or the roof, with what runs there', async () => {
  const note = await noteOf(text(', through: [rib, floor, floor]'), 'routes.penetrations');
  expect(note?.columns).toEqual(['chase', 'through', 'what runs there', 'thickest']);
  expect(await rowsOf(text(', through: [rib, floor, floor]'))).toEqual([
    ['low', 'floor', 'drain (water) and feed (water)', '19 mm'],
    ['low', 'floor', 'drain (water) and feed (water)', '19 mm'],
    ['vent', 'roof', 'nothing yet', 'not given'],
  ]);
  expect(words(note?.text)).toMatch(/^3 holes: /);
  expect(note?.cautions).toContain(structureCaution);
});

test('also where nothing runs yet, and without a load bay', async () => {
  expect(await rowsOf(text('', ''))).toEqual([['vent', 'roof', 'nothing yet', 'not given']]);
});

test('says so where there is none', async () => {
  const note = await noteOf(text('').replace('through: [roof]', 'through: [rib]'), 'routes.penetrations');
  expect(note).toMatchObject({ rows: [], detailOnly: true });
  expect(words(note?.text)).toContain('No chase');
});

test('is silent without chases, and gives no verdict', async () => {
  expect(await noteOf(plan(), 'routes.penetrations')).toBeUndefined();
  for (const plan of [text(''), text(', through: [floor]')])
    expect((await reportOf(plan)).findings.filter(({ rule }) => rule === 'routes.penetrations')).toEqual([]);
});
