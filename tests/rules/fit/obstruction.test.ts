import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const obstruction = (text: string, subject = '') => findingOf(text, 'fit.obstruction', subject);

type Three = readonly [number, number, number];

const box = ([length, width, height]: Three, [x, y, z]: Three, more = ''): string =>
  `{mass: 1 kg, size: {length: ${length} mm, width: ${width} mm, height: ${height} mm}, at: {from_front: ${x} mm, from_left: ${y} mm, above_floor: ${z} mm}${more}}`;

/** Arches from 2 m to 3 m, 200 mm wide and 300 mm high, at both sides of the bay of 4 × 2 × 2 m. */
const arches = { wheel_arches: '{from_front: 2 m, length: 1 m, width: 200 mm, height: 300 mm}' };

const withArches = (fixtures: string) => plan(`fixtures: {${fixtures}}`, arches);

test('pass: in front of the arch, beside it and above it', async () => {
  const finding = await obstruction(
    withArches(
      `a: ${box([2000, 500, 500], [0, 0, 0])}, b: ${box([900, 500, 500], [2000, 200, 0])}, c: ${box([900, 200, 500], [2000, 0, 300])}`,
    ),
  );
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe('3 things looked at: none stands in left wheel arch, right wheel arch.');
});

test('fail: how much, and the shortest way out', async () => {
  const finding = await obstruction(withArches(`chest: ${box([800, 500, 500], [1260, 0, 0])}`));
  expect(finding).toMatchObject({ verdict: 'fail', subject: 'chest', path: ['fixtures', 'chest'] });
  expect(measured(finding)).toBeCloseTo(0.06, 9);
  expect(words(finding.reason)).toBe(
    'Part of chest is where the van has something already: in left wheel arch (a piece 60 mm long, 200 mm wide and 300 mm high).',
  );
  expect(words(finding.remedy)).toBe('Move chest 60 mm forward.');
});

test.each([
  { x: 1200.4, verdict: 'pass' },
  { x: 1200.6, verdict: 'fail' },
])('half a millimetre touches: at $x mm $verdict', async ({ x, verdict }) => {
  expect((await obstruction(withArches(`chest: ${box([800, 500, 500], [x, 0, 0])}`))).verdict).toBe(verdict);
});

test('lifted onto the arch where that is the shortest', async () => {
  const finding = await obstruction(withArches(`chest: ${box([1400, 800, 500], [1800, 0, 280])}`));
  expect(words(finding.remedy)).toBe('Lift chest by 20 mm.');
});

test('across both arches is one finding, with one way out of both', async () => {
  const finding = await obstruction(withArches(`platform: ${box([1000, 2000, 100], [2000, 0, 0])}`));
  expect(words(finding.reason)).toMatch(/in left wheel arch \(.*\) and right wheel arch \(/);
  expect(words(finding.remedy)).toBe('Lift platform by 300 mm.');
});

describe('open inside', () => {
  const frame = (more: string, others = '') =>
    withArches(`frame: ${box([1900, 2000, 700], [2000, 0, 0], more)}${others}`);

  test('a bed may stand over the arches, but they take its room', async () => {
    const finding = await obstruction(frame(', is: bed'));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain(
      'left wheel arch takes a piece 1000 mm long, 200 mm wide and 300 mm high',
    );
    expect(words(finding.remedy)).toBe(
      'Build frame round them, and keep what goes into it 200 mm off the left wall and 200 mm off the right wall there.',
    );
  });

  test.each([
    { holds: 'a thing with a place', other: `, box: ${box([300, 300, 300], [0, 500, 0], ', in: frame')}` },
    { holds: 'loose things', other: ', gear: {mass: 1 kg, in: frame}' },
  ])('so may what holds $holds', async ({ other }) => {
    expect((await obstruction(frame('', other))).verdict).toBe('warn');
  });

  test.each(['', ', lamp: {mass: 1 kg, on: frame}'])('but nothing else%s', async (other) => {
    expect((await obstruction(frame('', other))).verdict).toBe('fail');
  });

  test('what is in it must not stand in the arch', async () => {
    const text = frame('', `, box: ${box([300, 300, 300], [0, 150, 0], ', in: frame')}`);
    expect((await obstruction(text, 'frame')).verdict).toBe('warn');
    const finding = await obstruction(text, 'box');
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toBe('Move box 50 mm to the right.');
  });

  test('a pillar is no wheel arch', async () => {
    const text = plan(`fixtures: {frame: ${box([1900, 2000, 700], [2000, 0, 0], ', is: bed')}}`, {
      obstructions:
        '{pillar: {size: {length: 100 mm, width: 80 mm, height: 1 m}, at: {from_front: 2500 mm, from_left: 0 mm}}}',
    });
    expect((await obstruction(text)).verdict).toBe('fail');
  });
});

test('what is in or on a thing that has to move is not named again', async () => {
  const { findings } = await reportOf(
    withArches(
      `lamp: ${box([300, 100, 250], [0, 0, -100], ', on: crate')}, crate: ${box([800, 500, 200], [2100, 0, 0])}`,
    ),
  );
  const found = findings.filter(({ rule, verdict }) => rule === 'fit.obstruction' && verdict === 'fail');
  expect(found.map(({ subject }) => subject)).toEqual(['crate']);
});

test('a step well: people may walk there, nothing may stand there', async () => {
  const van = {
    obstructions:
      '{step well: {size: {length: 700 mm, width: 300 mm, height: 10 mm}, at: {from_front: 0 mm, from_right: 0 mm}, walkable: true}}',
  };
  const finding = await obstruction(plan(`fixtures: {crate: ${box([500, 400, 400], [0, 1350, 0])}}`, van));
  expect(finding.verdict).toBe('fail');
  expect(words(finding.reason)).toContain('step well, where people may walk but nothing may stand');
  expect(words(finding.remedy)).toBe('Lift crate by 10 mm.');
});

describe('the lining of the rear doors', () => {
  const bay = '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, rear_door_thickness: 40 mm}';
  const bedTo = (endMm: number, van = {}) =>
    plan(`fixtures: {bed: ${box([1900, 1900, 500], [endMm - 1900, 0, 0])}}`, { load_bay: bay, ...van });

  test('is part of the van', async () => {
    const finding = await obstruction(bedTo(4000));
    expect(finding).toMatchObject({ verdict: 'fail', subject: 'bed' });
    expect(words(finding.remedy)).toBe('Move bed 40 mm forward.');
    expect((await obstruction(bedTo(3960))).verdict).toBe('pass');
  });

  test('past the doors is said of the shell alone', async () => {
    expect((await obstruction(bedTo(4050))).verdict).toBe('pass');
  });

  test('through an opening in them is meant', async () => {
    const openings =
      '{vent: {in: rear doors, kind: vent, width: 1900 mm, height: 500 mm, at: {from_left: 0 mm, above_floor: 0 mm}}}';
    expect((await obstruction(bedTo(4000, { openings }))).verdict).toBe('pass');
  });
});

test('a part without its place is not checked, the others are', async () => {
  const text = plan(`fixtures: {chest: ${box([800, 500, 500], [0, 0, 0])}}`, {
    ...arches,
    obstructions: '{pillar: {size: {length: 100 mm, width: 80 mm, height: 1 m}, at: {from_front: 0 mm}}}',
  });
  const { findings } = await reportOf(text);
  const found = findings.filter(({ rule }) => rule === 'fit.obstruction');
  expect(found.map(({ verdict }) => verdict)).toEqual(['not checked', 'pass']);
  expect(found[0]).toMatchObject({
    subject: 'pillar',
    missing: ['van.obstructions.pillar.at.from_left'],
  });
});

test('only parts without a place: nothing passes', async () => {
  const text = plan(`fixtures: {chest: ${box([800, 500, 500], [0, 0, 0])}}`, {
    wheel_arches: '{from_front: 2 m, length: 1 m, width: 200 mm}',
  });
  expect(await obstruction(text)).toMatchObject({
    verdict: 'not checked',
    missing: ['van.wheel_arches.height'],
  });
});

test.each([
  { lacks: 'a load bay', text: plan('', { load_bay: undefined }), missing: 'van.load_bay' },
  { lacks: 'things', text: plan('', arches), missing: 'fixtures.NAME.size' },
  {
    lacks: 'parts of the van',
    text: plan(`fixtures: {a: ${box([1, 1, 1], [0, 0, 0])}}`),
    missing: 'van.wheel_arches',
  },
])('without $lacks it is not checked', async ({ text, missing }) => {
  expect(await obstruction(text)).toMatchObject({ verdict: 'not checked', missing: [missing] });
});
