import { describe, expect, test } from 'vitest';
import { restraintCaution, restraintOwnLawCaution } from '../../../src/catalogue/restraint.ts';
import { holdCaution } from '../../../src/rules/cautions.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const restraint = (text: string, subject = '') => findingOf(text, 'fit.restraint', subject);
const allOf = async (text: string) =>
  (await reportOf(text)).findings.filter(({ rule }) => rule === 'fit.restraint');

const held = (mass: string, fixings: string, rest = '') =>
  plan(`fixtures:\n  kitchen: {mass: ${mass}, fixings: ${fixings}}\n${rest}`);

/** Forward 1.0 is the strictest, whatever the van weighs: 40 kg want a hold of 40 kg. */
describe('with fixings', () => {
  test('pass', async () => {
    const finding = await restraint(held('40 kg', '{count: 5, each: 10 kg}'));
    expect(finding).toMatchObject({
      verdict: 'pass',
      subject: 'kitchen',
      path: ['fixtures', 'kitchen', 'fixings'],
    });
    expect(measured(finding)).toBe(50);
    expect(finding.limit?.measure.value).toBe(40);
    expect(words(finding.reason)).toContain('It pulls hardest forward');
  });

  test('broken, as a guide can be: warn, with what is enough', async () => {
    const finding = await restraint(held('55 kg', '{count: 4, each: 10 kg}'));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('2 more of them, or with fixings that hold 14 kg each');
    expect((await restraint(held('55 kg', '{count: 6, each: 10 kg}'))).verdict).toBe('pass');
    expect((await restraint(held('55 kg', '{count: 4, each: 14 kg}'))).verdict).toBe('pass');
    expect((await restraint(held('55 kg', '{count: 4, each: 13 kg}'))).verdict).toBe('warn');
  });

  test('exactly enough is enough', async () => {
    expect((await restraint(held('40 kg', '{count: 4, each: 10 kg}'))).verdict).toBe('pass');
  });

  // u = 5 / √3 = 2.89 kg, U = 5.77 kg; 4 kg to spare are within it.
  test('within the tolerance of the mass: warn', async () => {
    const finding = await restraint(held('36 kg ± 5 kg', '{count: 4, each: 10 kg}'));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo(10 / Math.sqrt(3), 12);
  });

  test('it carries what stands in and on it, at its fullest', async () => {
    const rest = `  hob: {mass: 5 kg, on: kitchen}
tanks: {fresh tank: {contents: fresh, holds: 20 kg, mass: 2 kg, in: kitchen}}
stores: {pots: {full: 8 kg, in: kitchen}, lids: {full: 1 kg, in: pots}}`;
    const finding = await restraint(held('14 kg', '{count: 5, each: 10 kg}', rest));
    expect(finding.limit?.measure.value).toBeCloseTo(14 + 5 + 20 + 2 + 8 + 1, 12);
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('kitchen with all it holds');
    expect(finding.worstState?.text).toContain('fresh full');
    expect(finding.cautions).toEqual(expect.arrayContaining([restraintOwnLawCaution]));
  });

  test('a light thing with fixings is checked too', async () => {
    expect((await restraint(held('2 kg', '{count: 1, each: 1 kg}'))).verdict).toBe('warn');
  });
});

describe('without fixings', () => {
  const many = `fixtures:\n${Array.from({ length: 10 }, (_, index) => `  f${index}: {mass: ${20 + index} kg}`).join('\n')}
  light: {mass: 9.9 kg}
  heavy enough: {mass: 10 kg}`;

  test('one finding, the heaviest eight named with what they pull', async () => {
    const finding = await restraint(plan(many, { max_mass: '3500 kg' }));
    expect(finding).toMatchObject({ verdict: 'not checked', path: ['fixtures', 'f9'] });
    expect(finding.missing).toEqual([9, 8, 7, 6, 5, 4, 3, 2].map((index) => `fixtures.f${index}.fixings`));
    // Sideways 0.6 up to 3500 kg: 17.4 kg, rounded up.
    expect(words(finding.reason)).toContain('f9 29 kg forward and 18 kg sideways');
    expect(words(finding.reason)).toContain('and 3 more of up to 21 kg');
    expect(words(finding.reason)).not.toContain('light');
  });

  test.each([
    ['1900 kg', '14 kg sideways'],
    ['3500 kg', '12 kg sideways'],
    ['4000 kg', '10 kg sideways'],
    [undefined, '14 kg sideways'],
  ])('a van of %s: %s', async (max_mass, said) => {
    const finding = await restraint(plan('fixtures: {bed: {mass: 20 kg}}', { max_mass }));
    expect(words(finding.reason)).toContain(said);
  });

  test('what lies in something is held by it; what stands on it is held by nothing', async () => {
    const box = 'size: {length: 0.3 m, width: 0.3 m, height: 0.3 m}, at: {from_front: 0 m, from_left: 0 m}';
    const kitchen =
      'kitchen: {mass: 4 kg, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 1 m, from_left: 0 m}, fixings: {count: 4, each: 20 kg}}';
    const inside = plan(`fixtures: {${kitchen}, battery: {mass: 12 kg, in: kitchen, ${box}}}`);
    expect((await allOf(inside)).map(({ subject }) => subject)).toEqual(['kitchen']);
    const on = plan(`fixtures: {${kitchen}, battery: {mass: 12 kg, on: kitchen, ${box}}}`);
    expect((await restraint(on, 'heavy things')).missing).toEqual(['fixtures.battery.fixings']);
  });

  test('not people, not linings, not the allowance for belongings; on the roof it counts', async () => {
    const text = plan(`people: {seats: {passenger: {mass: 90 kg}}}
build_ups: {floor: {of: floor, layers: [{material: birch plywood, thickness: 12 mm}]}}
fixtures: {panel: {mass: 22 kg, size: {length: 1 m, width: 1 m, height: 0.05 m}, at: {from_front: 1 m, from_left: 0 m, above_floor: 2.1 m}}}`).replace(
      'stores: {}\n',
      '',
    );
    expect((await restraint(text)).missing).toEqual(['fixtures.panel.fixings']);
  });

  test('a full tank is heavy', async () => {
    const finding = await restraint(plan('tanks: {fresh tank: {contents: fresh, holds: 40 kg}}'));
    expect(finding.missing).toEqual(['tanks.fresh tank.fixings']);
    expect(finding.cautions).toEqual([holdCaution, restraintCaution, restraintOwnLawCaution]);
  });
});

test('a seat has laws of its own', async () => {
  const seat = plan(
    'fixtures: {bench: {mass: 12 kg, is: seat, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 1 m, from_left: 0 m}, fixings: {count: 4, each: 20 kg}}}',
  );
  expect((await restraint(seat)).cautions).toContain(restraintOwnLawCaution);
  expect((await restraint(held('12 kg', '{count: 4, each: 20 kg}'))).cautions).toEqual([
    holdCaution,
    restraintCaution,
  ]);
});

test('nothing heavy: not checked', async () => {
  expect(await restraint(plan('fixtures: {light: {mass: 9 kg}}'))).toMatchObject({
    verdict: 'not checked',
    missing: ['fixtures.NAME.fixings'],
  });
});
