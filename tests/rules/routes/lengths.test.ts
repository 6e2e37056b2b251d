import { describe, expect, test } from 'vitest';
import { findingOf, noteOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const at = (fromFront: string) => `{at: {from_front: ${fromFront}, from_left: 0 m, above_floor: 0.1 m}}`;
const things =
  'fixtures: {fridge: {mass: 9 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 3 m, from_left: 0 m}}, lamp: {mass: 1 kg}}';
const net = `points: {a: ${at('1 m')}, b: ${at('3 m')}}, chases: {left: {between: [a, b], carries: [cable, water]}}, `;
const text = (runs: string, network = net) => plan(`${things}\nroutes: {${network}runs: {${runs}}}`);
const tableOf = async (plan: string) => {
  const note = await noteOf(plan, 'routes.lengths');
  return { text: words(note?.text), rows: note?.rows.map((row) => row.map((cell) => words(cell))) };
};
const light = 'light: {carries: cable, from: a, to: b, count: 2, linear_mass: 0.5 kg/m}';

test('every run with its way, its length and its mass, and the sums', async () => {
  const runs = `${light}, feed: {carries: water, from: a, to: fridge, linear_mass: 1 kg/m}, drain: {carries: gas, from: a, to: b, linear_mass: 1 kg/m}`;
  // 2 m and 10 %; the spur is 100 mm along and 100 mm across.
  expect(await tableOf(text(runs))).toEqual({
    text: 'In all: cables 4400 mm, 2.2 kg; water 2420 mm, 2.4 kg. 10 % slack is in the lengths.',
    rows: [
      ['light', 'cable', '2', 'left', '2200 mm', '2.2 kg'],
      ['feed', 'water', '1', 'left; spurs 200 mm', '2420 mm', '2.4 kg'],
      ['drain', 'gas', '1', 'no way', 'not known', 'not known'],
    ],
  });
  expect((await reportOf(text(runs))).findings.filter(({ rule }) => rule === 'routes.lengths')).toEqual([]);
});

test('without chases the allowance is named', async () => {
  const run = 'light: {carries: cable, from: fridge, to: heater, linear_mass: 1 kg/m}';
  const heater = things.replace(
    'lamp:',
    'heater: {mass: 9 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 1 m, from_left: 0 m}}, lamp:',
  );
  const table = await tableOf(plan(`${heater}\nroutes: {runs: {${run}}}`));
  expect(table.rows).toEqual([
    ['light', 'cable', '1', 'no chases: along, across, up or down', '2600 mm', '2.6 kg'],
  ]);
  expect(table.text).toContain('Without chases the ways are assumed: the least along edges and 30 % more.');
  expect(table.text).not.toContain('slack is');
});

test('a typed length is called so', async () => {
  const runs =
    'light: {carries: cable, from: a, to: b, length: 5 m, linear_mass: 1 kg/m}, dark: {carries: cable, from: lamp, to: b, length: 5 m, linear_mass: 1 kg/m}';
  const { rows, text: sums } = await tableOf(text(runs));
  expect(rows?.map((row) => row[3])).toEqual(['left (length as typed)', 'length as typed']);
  expect(sums).toBe('In all: cables 10.00 m, 10 kg.');
});

describe('what the sums lack is not checked', () => {
  test('what a metre weighs', async () => {
    const runs = `${light}, bare: {carries: cable, from: a, to: b}`;
    expect(await findingOf(text(runs), 'routes.lengths')).toMatchObject({
      verdict: 'not checked',
      subject: 'bare',
      path: ['routes', 'runs', 'bare'],
      missing: ['routes.runs.bare.linear_mass'],
    });
    expect((await tableOf(text(runs))).text).toContain('cables 6600 mm, at least 2.2 kg');
    const nothing = await tableOf(text('bare: {carries: cable, from: a, to: b}'));
    expect(nothing.text).toContain('mass not known');
  });

  test('where it begins or ends, if the check of ways does not say so', async () => {
    const vague = 'light: {carries: cable, from: a, to: lamp, linear_mass: 1 kg/m}';
    const missing = ['from_front', 'from_left', 'above_floor'].map((key) => `fixtures.lamp.at.${key}`);
    expect(
      await findingOf(text(vague.replace('from: a', 'from: fridge'), ''), 'routes.lengths'),
    ).toMatchObject({
      verdict: 'not checked',
      subject: 'light',
      missing,
    });
    expect(
      await findingOf(text(vague.replace('to: lamp', 'to: lamp, to_point: b')), 'routes.lengths'),
    ).toMatchObject({ missing });
    const { findings } = await reportOf(text(vague));
    expect(
      findings
        .filter(({ missing: keys }) => keys?.some((key) => key.startsWith('fixtures.lamp.at.from_front')))
        .filter(({ topic }) => topic === 'routes')
        .map(({ rule }) => rule),
    ).toEqual(['routes.path']);
  });

  test('both, in one finding', async () => {
    const runs =
      'light: {carries: cable, from: a, to: lamp, to_point: b}, bare: {carries: cable, from: a, to: b}';
    const finding = await findingOf(text(runs), 'routes.lengths');
    expect(finding.subject).toBe('2 runs');
    expect(words(finding.reason)).toBe(
      'It is not known where light begins or ends. It is not known what a metre of bare weighs. The mass of the van is without them.',
    );
  });
});

test('is silent without runs', async () => {
  expect(await noteOf(plan(), 'routes.lengths')).toBeUndefined();
  expect(await noteOf(plan('routes: {}'), 'routes.lengths')).toBeUndefined();
  expect((await reportOf(plan())).findings.filter(({ rule }) => rule === 'routes.lengths')).toEqual([]);
});
