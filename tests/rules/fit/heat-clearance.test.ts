import { describe, expect, test } from 'vitest';
import { burns } from '../../../src/catalogue/burning.ts';
import { materialNamed, materials } from '../../../src/catalogue/materials.ts';
import { heatCaution } from '../../../src/rules/cautions.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const heat = (text: string, subject = '') => findingOf(text, 'fit.heat-clearance', subject);
const allOf = async (text: string) =>
  (await reportOf(text)).findings.filter(({ rule }) => rule === 'fit.heat-clearance');

/** A stove of 0.4 m a side, its front 2 m behind the front of the load bay, its left side 1 m from the left wall. */
const stove = (clearance: string, ...things: readonly string[]) =>
  plan(
    `fixtures:
  stove: {mass: 9 kg, size: {length: 0.4 m, width: 0.4 m, height: 0.4 m}, at: {from_front: 2 m, from_left: 1 m}, heat_clearance: ${clearance}}
${things.map((each) => `  ${each}`).join('\n')}`,
  );

/** A cube of 0.4 m. */
const cube = (at: string, more = '', name = 'box') =>
  `${name}: {mass: 1 kg, size: {length: 0.4 m, width: 0.4 m, height: 0.4 m}, at: {${at}}${more}}`;

/** 100 mm from the stove on each side. */
const beside = {
  front: 'from_front: 1.5 m, from_left: 1 m',
  rear: 'from_front: 2.5 m, from_left: 1 m',
  left: 'from_front: 2 m, from_left: 0.5 m',
  right: 'from_front: 2 m, from_left: 1.5 m',
  above: 'from_front: 2 m, from_left: 1 m, above_floor: 0.5 m',
};

describe.each([
  { side: 'front', move: 'forward' },
  { side: 'rear', move: 'rearward' },
  { side: 'left', move: 'to the left' },
  { side: 'right', move: 'to the right' },
  { side: 'above', move: 'up' },
] as const)('$side', ({ side, move }) => {
  const text = (clearance: string, more: string) =>
    stove(`{${side}: ${clearance}}`, cube(beside[side], more));

  test('what burns within it fails', async () => {
    const finding = await heat(text('150 mm', ', combustible: true'));
    expect(finding).toMatchObject({
      verdict: 'fail',
      subject: 'stove and box',
      path: ['fixtures', 'stove', 'heat_clearance', side],
    });
    expect(measured(finding)).toBeCloseTo(0.1, 9);
    expect(finding.limit?.measure.value).toBe(0.15);
    expect(words(finding.remedy)).toContain(`move box 50 mm ${move}.`);
    expect(finding.cautions).toContain(heatCaution);
  });
  test('exactly as far as it must be', async () => {
    expect((await heat(text('100 mm', ', combustible: true'))).verdict).toBe('pass');
  });
  test('what does not burn is fine', async () => {
    expect((await heat(text('150 mm', ', combustible: false'))).verdict).toBe('pass');
  });
  test('what the plan is silent about warns and says what to add', async () => {
    const finding = await heat(text('150 mm', ''));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('add `combustible: false` to box');
  });
});

describe('the material says it too', () => {
  const made = (material: string, more = '') =>
    stove(
      '{left: 150 mm}',
      cube(beside.left).replace('mass: 1 kg', `material: ${material}`).replace(/\}$/, `${more}}`),
    );
  test.each([
    ['birch plywood', 'fail'],
    ['mattress foam', 'fail'],
    ['carpet', 'fail'],
    ['steel', 'pass'],
    ['rock wool', 'pass'],
  ])('%s: %s', async (material, verdict) => {
    expect((await heat(made(material))).verdict).toBe(verdict);
  });
  test('the plan comes first', async () => {
    expect((await heat(made('birch plywood', ', combustible: false'))).verdict).toBe('pass');
    expect((await heat(made('steel', ', combustible: true'))).verdict).toBe('fail');
  });
  test('of all materials, only metal, glass and mineral wools do not burn', () => {
    expect(materials.filter((row) => !burns(row)).map(({ name }) => name)).toEqual([
      'glass wool',
      'glass wool slab',
      'mineral wool',
      'rock wool',
      'aluminium',
      'steel',
      'stainless steel',
      'copper',
      'brass',
      'glass',
    ]);
    expect(materialNamed('oak')).toBeDefined();
  });
});

describe('its host', () => {
  const hob = (
    clearance: string,
    more: string,
    at = 'from_front: 0.3 m, from_left: 0.3 m, above_floor: 0.5 m',
  ) =>
    plan(`fixtures:
  kitchen: {mass: 40 kg, size: {length: 1 m, width: 1 m, height: 0.9 m}, at: {from_front: 1 m, from_left: 0.5 m}${more}}
  hob: {mass: 5 kg, in: kitchen, size: {length: 0.4 m, width: 0.4 m, height: 0.1 m}, at: {${at}}, heat_clearance: ${clearance}}`);
  test('a hob may stand in a worktop that burns', async () => {
    expect((await heat(hob('{left: 200 mm, above: 200 mm}', ', combustible: true'))).verdict).toBe('pass');
  });
  test('but not within its clearance of the wall of a cupboard that burns', async () => {
    const finding = await heat(hob('{left: 350 mm}', ', combustible: true'));
    expect(finding).toMatchObject({ verdict: 'fail', subject: 'hob and kitchen' });
    expect(measured(finding)).toBeCloseTo(0.3, 9);
    expect(words(finding.remedy)).toContain('move hob 50 mm to the right');
    expect((await heat(hob('{left: 350 mm}', ''))).verdict).toBe('pass');
  });
  test('above it the host is not let off', async () => {
    expect((await heat(hob('{above: 350 mm}', ''))).verdict).toBe('warn');
    expect((await heat(hob('{above: 350 mm}', ', combustible: false'))).verdict).toBe('pass');
  });
  test('what stands on the hot thing is in the room above it', async () => {
    const text = stove(
      '{above: 300 mm}',
      'kettle rack: {mass: 1 kg, on: stove, size: {length: 0.1 m, width: 0.1 m, height: 0.1 m}, at: {from_front: 0 m, from_left: 0 m}}',
    );
    expect(await heat(text)).toMatchObject({ verdict: 'warn', subject: 'stove and kettle rack' });
  });
});

describe('linings', () => {
  const lined = (clearance: string, buildUps: string) => `${stove(clearance)}\nbuild_ups: {${buildUps}}`;
  const ply = 'wall: {of: walls, layers: [{material: birch plywood, thickness: 6 mm}]}';
  test('a wall of plywood within the clearance warns', async () => {
    const finding = await heat(lined('{right: 700 mm}', ply));
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'stove and wall' });
    expect(measured(finding)).toBeCloseTo(0.6, 9);
    expect(words(finding.remedy)).toContain('100 mm away from the right wall');
  });
  test('at its edge it is kept; of metal it is fine; another surface does not matter', async () => {
    expect((await heat(lined('{right: 600 mm}', ply))).verdict).toBe('pass');
    const metal = 'wall: {of: walls, layers: [{material: aluminium, thickness: 1 mm}]}';
    expect((await heat(lined('{right: 700 mm}', metal))).verdict).toBe('pass');
    expect((await heat(lined('{right: 700 mm}', ply.replace('walls', 'left wall')))).verdict).toBe('pass');
    expect((await heat(stove('{right: 700 mm}'))).verdict).toBe('pass');
  });
  test('a layer of unknown make may burn, and the ceiling counts', async () => {
    const cloth = 'roof: {of: ceiling, layers: [{name: lining, areal_mass: 1 kg/m2}]}';
    expect(await heat(lined('{above: 1.7 m}', cloth))).toMatchObject({
      verdict: 'warn',
      subject: 'stove and roof',
    });
  });
});

test('each thing within it is named once, and a hot thing in the clear passes once', async () => {
  const found = await allOf(
    stove(
      '{left: 150 mm, right: 150 mm, above: 50 mm}',
      cube(beside.left),
      cube(beside.right, '', 'crate'),
      'lamp: {mass: 1 kg}',
    ),
  );
  expect(found.map(({ subject }) => subject).sort()).toEqual(['stove and box', 'stove and crate']);
  const [pass, ...more] = await allOf(stove('{left: 50 mm, above: 50 mm}', 'lamp: {mass: 1 kg}'));
  expect(pass).toMatchObject({ verdict: 'pass', subject: 'stove' });
  expect(words(pass?.reason)).toContain('50 mm to its left and 50 mm above it. 1 thing has no place');
  expect(more).toEqual([]);
});

test('no clearance: not checked', async () => {
  expect(await heat(plan())).toMatchObject({
    verdict: 'not checked',
    missing: ['fixtures.NAME.heat_clearance'],
  });
});
