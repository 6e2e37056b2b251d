import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const shell = (text: string, subject = '') => findingOf(text, 'fit.shell', subject);

/** The test van's load bay is 4 m long, 2 m wide and 2 m high. Sizes and places in millimetres. */
const thing = (size: readonly [number, number, number], at: string, more = ''): string =>
  `{mass: 1 kg, size: {length: ${size[0]} mm, width: ${size[1]} mm, height: ${size[2]} mm}, at: {${at}}${more}}`;

const one = (size: readonly [number, number, number], at: string, more = '', van = {}) =>
  plan(`fixtures: {bed: ${thing(size, at, more)}}`, van);

test('pass: exactly as large as the load bay', async () => {
  const finding = await shell(one([4000, 2000, 2000], 'from_front: 0 mm, from_left: 0 mm'));
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe('1 thing looked at: it does not stick out of the load bay.');
});

describe('sticking out', () => {
  test.each([
    { at: 'from_front: -60 mm, from_left: 0 mm', says: '60 mm past the front', mends: '60 mm rearward' },
    { at: 'from_rear: -60 mm, from_left: 0 mm', says: '60 mm past the rear doors', mends: '60 mm forward' },
    {
      at: 'from_front: 0 mm, from_left: -60 mm',
      says: '60 mm out of the left wall, most at 0 mm',
      mends: '60 mm to the right',
    },
    {
      at: 'from_front: 0 mm, from_right: -60 mm',
      says: '60 mm out of the right wall',
      mends: '60 mm to the left',
    },
    {
      at: 'from_front: 100 mm, from_left: 0 mm, above_floor: 1060 mm',
      says: '60 mm out of the roof, most at 100 mm from the front',
      mends: '60 mm down',
    },
    {
      at: 'from_front: 0 mm, from_left: 0 mm, above_floor: -60 mm',
      says: '60 mm below the floor',
      mends: '60 mm up',
    },
  ])('$says', async ({ at, says, mends }) => {
    const finding = await shell(one([1000, 1000, 1000], at));
    expect(finding).toMatchObject({ verdict: 'fail', subject: 'bed', path: ['fixtures', 'bed'] });
    expect(measured(finding)).toBeCloseTo(0.06, 9);
    expect(words(finding.reason)).toContain(says);
    expect(words(finding.remedy)).toBe(`Move bed ${mends}.`);
  });

  test.each([
    { by: 0.4, verdict: 'pass' },
    { by: 0.6, verdict: 'fail' },
  ])('$by mm: $verdict', async ({ by, verdict }) => {
    expect((await shell(one([1000, 1000, 1000], `from_front: -${by} mm, from_left: 0 mm`))).verdict).toBe(
      verdict,
    );
  });

  test('at a corner is one finding, the worst first', async () => {
    const finding = await shell(one([1000, 1000, 1000], 'from_front: -20 mm, from_left: -50 mm'));
    expect(measured(finding)).toBeCloseTo(0.05, 9);
    expect(words(finding.reason)).toContain(
      '50 mm out of the left wall, most at 0 mm above the floor and 20 mm past the front',
    );
    expect(words(finding.remedy)).toBe('Move bed 20 mm rearward and 50 mm to the right.');
  });

  test('what is too large is to be made smaller', async () => {
    const finding = await shell(one([1000, 2100, 2050], 'from_front: 0 mm, from_left: 0 mm'));
    expect(words(finding.remedy)).toBe('Make bed at most 2000 mm wide and 2000 mm high.');
  });

  test('what stands on something cannot be lowered into it', async () => {
    const text = plan(
      `fixtures: {bench: ${thing([1000, 1000, 1500], 'from_front: 0 mm, from_left: 0 mm')}, bed: ${thing([1000, 1000, 550], 'from_front: 0 mm, from_left: 0 mm', ', on: bench')}}`,
    );
    expect(words((await shell(text)).remedy)).toBe('Make bed at most 500 mm high.');
  });

  // Out of the lining, not only of the shell: 60 mm and 40 mm.
  test('the lining of the rear doors counts', async () => {
    const bay = '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, rear_door_thickness: 40 mm}';
    const text = one([1000, 1000, 1000], 'from_rear: -60 mm, from_left: 0 mm', '', { load_bay: bay });
    expect(words((await shell(text)).remedy)).toBe('Move bed 100 mm forward.');
    const { findings } = await reportOf(text);
    expect(findings.filter(({ topic, verdict }) => topic === 'fit' && verdict === 'fail')).toHaveLength(1);
  });
});

describe('walls that lean in and a roof that falls', () => {
  // 2 m wide up to 1 m, 1.8 m at 2 m: 50 mm a side at 1.5 m.
  const load_bay =
    '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, profile: [{above_floor: 1 m, width: 2 m}, {above_floor: 2 m, width: 1.8 m}], heights: [{from_front: 0 m, height: 2 m}, {from_front: 4 m, height: 1.8 m}]}';
  const tall = (more: string, left = 0) =>
    one([500, 500, 1500], `from_front: 0 mm, from_left: ${left} mm`, more, { load_bay });

  test('a tall thing at the wall sticks out at its top', async () => {
    const finding = await shell(tall(''));
    expect(words(finding.reason)).toContain('50 mm out of the left wall, most at 1500 mm above the floor');
    expect(words(finding.remedy)).toBe(
      'Move bed 50 mm to the right. If it follows the slope of the wall, write `leans: true`.',
    );
    expect((await shell(tall('', 50))).verdict).toBe('pass');
  });

  test('one that follows the wall does not', async () => {
    expect((await shell(tall(', leans: true'))).verdict).toBe('pass');
  });

  // 1.85 m high at 3 m, 1.8 m at 4 m.
  test('the roof is lowest at the rear', async () => {
    const finding = await shell(
      one([1000, 500, 1830], 'from_front: 3000 mm, from_left: 700 mm', '', { load_bay }),
    );
    expect(words(finding.reason)).toContain('30 mm out of the roof, most at 4000 mm from the front');
    expect(words(finding.remedy)).toBe('Make bed at most 1800 mm high.');
  });
});

describe('through an opening', () => {
  const fan = (width: number, opening: string) =>
    plan(
      `fixtures: {fan: ${thing([400, width, 200], 'from_front: 1000 mm, from_left: 800 mm, above_floor: 1900 mm')}}`,
      {
        openings: `{hole: {${opening}}}`,
      },
    );
  const hole =
    'in: ceiling, kind: vent, length: 400 mm, width: 400 mm, at: {from_front: 1000 mm, from_left: 800 mm}';

  test.each([
    { width: 400, verdict: 'pass' },
    { width: 410, verdict: 'pass' },
    { width: 411, verdict: 'fail' },
  ])('$width mm wide: $verdict', async ({ width, verdict }) => {
    const finding = await shell(fan(width, hole));
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'pass')
      expect(words(finding.reason)).toContain('1 thing goes out through an opening made for it.');
  });

  test.each([
    'in: floor, kind: vent, length: 400 mm, width: 400 mm, at: {from_front: 1000 mm, from_left: 800 mm}',
    'in: ceiling, kind: door, length: 400 mm, width: 400 mm, at: {from_front: 1000 mm, from_left: 800 mm}',
    'in: ceiling, kind: vent, length: 400 mm, width: 400 mm, at: {from_front: 1020 mm, from_left: 800 mm}',
  ])('not through: %s', async (opening) => {
    expect((await shell(fan(400, opening))).verdict).toBe('fail');
  });

  test.each([
    {
      at: 'from_front: 1000 mm, from_left: -50 mm, above_floor: 500 mm',
      opening:
        '{in: left wall, kind: window, length: 500 mm, height: 500 mm, at: {from_front: 1000 mm, above_floor: 500 mm}}',
    },
    {
      at: 'from_front: -50 mm, from_left: 500 mm, above_floor: 500 mm',
      opening:
        '{in: bulkhead, kind: hatch, width: 500 mm, height: 500 mm, at: {from_left: 500 mm, above_floor: 500 mm}}',
    },
    {
      at: 'from_front: 1000 mm, from_left: 500 mm, above_floor: -50 mm',
      opening:
        '{in: floor, kind: vent, length: 500 mm, width: 500 mm, at: {from_front: 1000 mm, from_left: 500 mm}}',
    },
  ])('$opening', async ({ at, opening }) => {
    const fixtures = `fixtures: {bed: ${thing([500, 500, 500], at)}}`;
    expect((await shell(plan(fixtures, { openings: `{hole: ${opening}}` }))).verdict).toBe('pass');
    expect((await shell(plan(fixtures))).verdict).toBe('fail');
  });

  test('an opening of its name without a place leaves it open', async () => {
    const finding = await shell(
      plan(
        `fixtures: {fan: ${thing([400, 400, 200], 'from_front: 1000 mm, from_left: 800 mm, above_floor: 1900 mm')}}`,
        {
          openings: '{fan: {in: ceiling, kind: vent, length: 400 mm, width: 400 mm}}',
        },
      ),
    );
    expect(finding).toMatchObject({
      verdict: 'not checked',
      path: ['van', 'openings', 'fan'],
      missing: ['van.openings.fan.at.from_front', 'van.openings.fan.at.from_left'],
    });
  });
});

describe('one thing in or on another', () => {
  const nested = (
    host: string,
    how: string,
    inner: string,
    size: readonly [number, number, number] = [500, 500, 500],
  ) =>
    reportOf(
      plan(
        `fixtures: {box: ${thing(size, inner, `, ${how}: host`)}, host: ${thing([1000, 1000, 1000], host)}}`,
      ),
    ).then(({ findings }) =>
      findings.filter(({ rule, verdict }) => rule === 'fit.shell' && verdict === 'fail'),
    );

  test.each(['in', 'on'])('what is %s a thing that sticks out is not named again', async (how) => {
    const found = await nested(
      'from_front: 0 mm, from_left: -60 mm',
      how,
      'from_front: 0 mm, from_left: 0 mm',
    );
    expect(found.map(({ subject }) => subject)).toEqual(['host']);
  });

  test('but another side of it is', async () => {
    const found = await nested(
      'from_front: 0 mm, from_left: -60 mm',
      'on',
      'from_front: -50 mm, from_left: 0 mm',
    );
    expect(found.map(({ subject }) => subject)).toEqual(['box', 'host']);
    expect(words(found[0]?.remedy)).toBe('Move box 50 mm rearward.');
  });

  test('what sticks out of its host is named there alone', async () => {
    const found = await nested(
      'from_front: 0 mm, from_left: 0 mm',
      'in',
      'from_front: 0 mm, from_left: -50 mm',
    );
    expect(found).toEqual([]);
  });
});

test.each([
  'from_front: -1500 mm, from_left: 0 mm',
  'from_front: 4000 mm, from_left: 0 mm',
  'from_front: 0 mm, from_left: -500 mm, above_floor: 2000 mm',
  'from_front: 0 mm, from_left: -500 mm, above_floor: -1000 mm',
])('what is wholly outside is not held to it: %s', async (at) => {
  expect((await shell(one([1000, 1000, 1000], at))).verdict).toBe('not checked');
});

test.each([
  { lacks: 'a load bay', text: plan('', { load_bay: undefined }), missing: ['van.load_bay'] },
  { lacks: 'things', text: plan(), missing: ['fixtures.NAME.size'] },
])('without $lacks it is not checked', async ({ text, missing }) => {
  expect(await shell(text)).toMatchObject({ verdict: 'not checked', missing });
});
