import { expect, test } from 'vitest';
import { structureCaution } from '../../../src/rules/cautions.ts';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const at = (fromFront: string) => `{at: {from_front: ${fromFront}, from_left: 0 m, above_floor: 0.1 m}}`;
const runs =
  'lights: {carries: cable, from: a, to: c, diameter: 6 mm}, pump: {carries: cable, from: a, to: b, diameter: 9 mm}';
const text = (left: string, right = '') =>
  plan(`routes:
  points: {a: ${at('1 m')}, b: ${at('2 m')}, c: ${at('3 m')}}
  chases:
    left: {between: [a, b], carries: [cable]${left}}
    right: {between: [b, c], carries: [cable]${right}}
    spare: {between: [a, c], carries: [gas], through: [member]}
  runs: {${runs}}`);
const holes = (left: string, right?: string) => findingOf(text(left, right), 'routes.holes');

test.each(['rib', 'member', 'wall', 'bulkhead'])('through a %s: warn', async (part) => {
  const finding = await holes(`, through: [${part}]`);
  expect(finding).toMatchObject({
    verdict: 'warn',
    subject: 'left',
    path: ['routes', 'chases', 'left', 'through'],
  });
  expect(words(finding.reason)).toBe(`lights and pump go through 1 ${part}.`);
  expect(finding.cautions).toContain(structureCaution);
});

test('says how many and how wide: the bore, or the thickest that goes through', async () => {
  const finding = await holes(', through: [rib, rib, floor, member], bore: 25 mm');
  expect(words(finding.reason)).toBe('lights and pump go through 2 ribs and 1 member.');
  expect(words(finding.remedy)).toContain('Before 3 holes of 25 mm are drilled');
  expect(words((await holes(', through: [rib]')).remedy)).toContain('Before 1 hole of 9 mm is drilled');
});

test('one finding a chase in use', async () => {
  const { findings } = await reportOf(text(', through: [rib]', ', through: [wall]'));
  expect(findings.filter(({ rule }) => rule === 'routes.holes').map(({ subject }) => subject)).toEqual([
    'left',
    'right',
  ]);
});

test('pass where the plan says what chases go through, and none of it bears load', async () => {
  expect(await holes(', through: [floor, roof]')).toMatchObject({ verdict: 'pass', subject: 'chases' });
  expect(await holes(', through: []')).toMatchObject({ verdict: 'pass' });
});

test.each([
  { what: plan(), missing: ['routes'] },
  { what: text(''), missing: ['routes.chases.NAME.through'] },
  { what: text('').replaceAll('carries: cable', 'carries: duct'), missing: ['routes.chases'] },
])('not checked without $missing', async ({ what, missing }) => {
  expect(await findingOf(what, 'routes.holes')).toMatchObject({ verdict: 'not checked', missing });
});
