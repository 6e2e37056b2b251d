import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/engine/finding.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const overlap = (text: string, subject = '') => findingOf(text, 'fit.overlap', subject);

const failing = async (text: string): Promise<readonly Finding[]> =>
  (await reportOf(text)).findings.filter(({ rule, verdict }) => rule === 'fit.overlap' && verdict === 'fail');

type Three = readonly [number, number, number];

/** A box by its size and its place, in millimetres, from the front, the left and the floor. */
const box = ([length, width, height]: Three, [x, y, z]: Three, more = ''): string =>
  `{mass: 1 kg, size: {length: ${length} mm, width: ${width} mm, height: ${height} mm}, at: {from_front: ${x} mm, from_left: ${y} mm, above_floor: ${z} mm}${more}}`;

const fixtures = (things: Readonly<Record<string, string>>): string =>
  `fixtures: {${Object.entries(things)
    .map(([name, thing]) => `${name}: ${thing}`)
    .join(', ')}}`;

/** A fridge behind a wardrobe that ends at 1000 mm, both at the left wall. */
const fridgeAt = (x: number, more: Readonly<Record<string, string>> = {}, size: Three = [500, 500, 800]) =>
  plan(fixtures({ wardrobe: box([1000, 600, 1800], [0, 0, 0]), fridge: box(size, [x, 0, 0]), ...more }));

test('pass: one behind the other', async () => {
  const finding = await overlap(fridgeAt(1000));
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe('2 things looked at: none stands in another.');
});

test('fail: what they share, where, and which way out', async () => {
  const finding = await overlap(fridgeAt(960));
  expect(finding).toMatchObject({
    verdict: 'fail',
    subject: 'fridge and wardrobe',
    path: ['fixtures', 'fridge'],
  });
  expect(measured(finding)).toBeCloseTo(0.04, 9);
  expect(words(finding.reason)).toBe(
    'wardrobe and fridge stand in each other: they share a piece 40 mm long, 500 mm wide and 800 mm high, from 960 mm behind the front of the load bay and 0 mm above the floor.',
  );
  expect(words(finding.remedy)).toBe('Move fridge 40 mm rearward.');
});

test.each([
  { x: 999.6, verdict: 'pass' },
  { x: 999.4, verdict: 'fail' },
])('half a millimetre touches: at $x mm $verdict', async ({ x, verdict }) => {
  expect((await overlap(fridgeAt(x))).verdict).toBe(verdict);
});

test('above one another they share nothing', async () => {
  const text = plan(
    fixtures({ low: box([500, 500, 500], [0, 0, 0]), high: box([500, 500, 500], [0, 0, 500]) }),
  );
  expect((await overlap(text)).verdict).toBe('pass');
});

describe('the way out', () => {
  // The wall is at the left, so that 100 mm to the left is no way; 160 mm forward is out of the load bay.
  test('stays in the load bay', async () => {
    const text = plan(
      fixtures({ a: box([600, 600, 600], [0, 500, 0]), b: box([100, 500, 400], [60, 100, 0]) }),
    );
    expect(words((await overlap(text)).remedy)).toBe('Move b 100 mm to the left.');
    const atWall = plan(
      fixtures({ a: box([600, 2000, 600], [50, 0, 0]), b: box([100, 500, 400], [0, 0, 0]) }),
    );
    expect(words((await overlap(atWall)).remedy)).toBe('Move a 50 mm rearward.');
  });

  test('is that of the larger thing only where that more than halves the way', async () => {
    // The bin would have to move `x` mm to the right, the unit 200 mm.
    const text = (x: number) =>
      plan(
        fixtures({ unit: box([1000, x - 100, 2000], [0, 100, 0]), bin: box([1000, 300, 300], [0, 0, 0]) }),
      );
    expect(words((await overlap(text(400))).remedy)).toBe('Move bin 400 mm to the right.');
    expect(words((await overlap(text(410))).remedy)).toBe('Move unit 200 mm to the right.');
  });

  test('is up where that is shorter and free', async () => {
    const shelf = (more = {}) =>
      plan(
        fixtures({
          unit: box([600, 600, 900], [500, 0, 0]),
          shelf: box([600, 300, 100], [500, 0, 880]),
          ...more,
        }),
      );
    expect(words((await overlap(shelf())).remedy)).toBe('Lift shelf by 20 mm.');
    const under = shelf({ locker: box([600, 300, 300], [500, 0, 980]) });
    expect(words((await overlap(under, 'shelf and unit')).remedy)).toBe('Move shelf 600 mm rearward.');
  });

  test('is down where that is shorter and free', async () => {
    const text = plan(
      fixtures({ locker: box([600, 600, 300], [500, 0, 1500]), lamp: box([600, 300, 100], [500, 0, 1420]) }),
    );
    expect(words((await overlap(text)).remedy)).toBe('Lower lamp by 20 mm.');
  });

  test('goes round what stands beside it', async () => {
    // 40 mm rearward meets the bed; 500 mm to the right is free.
    const bed = box([2000, 600, 500], [1470, 0, 0]);
    const side = fridgeAt(960, { bed });
    expect(words((await overlap(side)).remedy)).toBe('Move fridge 600 mm to the right.');
  });

  test('names what has to give way where nothing is free', async () => {
    const bed = box([2540, 2000, 1900], [1460, 0, 0]);
    const text = plan(
      fixtures({
        wardrobe: box([1000, 2000, 1900], [0, 0, 0]),
        fridge: box([500, 2000, 1900], [960, 0, 0]),
        bed,
      }),
    );
    expect(words((await overlap(text, 'fridge and wardrobe')).remedy)).toBe(
      'Move fridge 40 mm rearward and make room for it at bed, or make fridge 40 mm smaller on its front side.',
    );
  });

  test('is another place where there is no room at all', async () => {
    const whole = box([4000, 2000, 2000], [0, 0, 0]);
    const text = plan(fixtures({ a: whole, b: box([100, 100, 2000], [0, 0, 0]) }));
    expect(words((await overlap(text)).remedy)).toBe(
      'It would have to move 100 mm forward, where there is no room for it: find another place for b.',
    );
    const long = plan(
      fixtures({ a: box([3900, 2000, 2000], [0, 0, 0]), b: box([200, 2000, 2000], [3800, 0, 0]) }),
    );
    expect(words((await overlap(long)).remedy)).toBe(
      'No straight move keeps it where it belongs: make b 100 mm smaller on its front side, or find another place for it.',
    );
  });

  test('takes along what stands on a thing', async () => {
    // The table could go 40 mm rearward, but the lamp on it would meet the locker.
    const text = plan(
      fixtures({
        wardrobe: box([1000, 2000, 1800], [0, 0, 0]),
        table: box([500, 600, 700], [960, 0, 0]),
        lamp: box([500, 600, 300], [0, 0, 0], ', on: table'),
        locker: box([500, 2000, 400], [1480, 0, 900]),
      }),
    );
    expect(words((await overlap(text, 'table and wardrobe')).remedy)).toContain('make room for it at locker');
  });

  test('is rounded up to whole millimetres', async () => {
    expect(words((await overlap(fridgeAt(959.4))).remedy)).toBe('Move fridge 41 mm rearward.');
  });
});

describe('things in and on each other', () => {
  const host = box([1000, 600, 900], [0, 0, 0]);

  test('do not overlap their hosts', async () => {
    const text = plan(
      fixtures({
        unit: host,
        drawer: box([800, 500, 500], [50, 50, 50], ', in: unit'),
        pan: box([300, 300, 100], [0, 0, 0], ', in: drawer'),
        worktop: box([1000, 600, 30], [0, 0, -10], ', on: unit'),
      }),
    );
    expect(await failing(text)).toEqual([]);
  });

  test('two in one host do overlap', async () => {
    const text = plan(
      fixtures({
        unit: host,
        hob: box([400, 400, 200], [100, 100, 600], ', in: unit'),
        fridge: box([400, 400, 650], [100, 100, 0], ', in: unit'),
      }),
    );
    const found = await failing(text);
    expect(found.map(({ subject }) => subject)).toEqual(['fridge and hob']);
    expect(words(found[0]?.remedy)).toBe('Lift hob by 50 mm.');
  });

  test('only the outermost pair is named', async () => {
    const text = plan(
      fixtures({
        pan: box([300, 300, 100], [50, 50, 50], ', in: drawer'),
        drawer: box([900, 500, 500], [50, 50, 50], ', in: unit'),
        unit: host,
        bottle: box([300, 300, 300], [0, 0, 0], ', in: bed'),
        bed: box([1900, 2000, 500], [700, 0, 0]),
      }),
    );
    expect((await failing(text)).map(({ subject }) => subject)).toEqual(['bed and unit']);
  });

  test('what sticks out of its host is left to the check of contents', async () => {
    const text = plan(
      fixtures({
        unit: host,
        pan: box([300, 300, 100], [800, 50, 50], ', in: unit'),
        bed: box([900, 2000, 500], [980, 0, 0]),
      }),
    );
    const found = await failing(text);
    expect(found.map(({ subject }) => subject)).toEqual(['bed and unit']);
    expect(words(found[0]?.remedy)).toBe('Move bed 20 mm rearward.');
  });

  test('what stands on a thing is mended with it', async () => {
    const withWorktop = (x: number) =>
      plan(
        fixtures({
          unit: box([1000, 2000, 900], [0, 0, 0]),
          worktop: box([1000, 2000, 30], [x, 0, 0], ', on: unit'),
          wardrobe: box([600, 2000, 1800], [980, 0, 0]),
        }),
      );
    const mended = async (x: number) =>
      (await failing(withWorktop(x))).map(({ subject, remedy }) => `${subject}: ${words(remedy)}`);
    expect(await mended(0)).toEqual(['unit and wardrobe: Move wardrobe 20 mm rearward.']);
    expect(await mended(40)).toEqual(['unit and wardrobe: Move wardrobe 60 mm rearward.']);
  });

  test('what sticks out of its host goes back into it', async () => {
    const text = plan(
      fixtures({
        unit: host,
        pan: box([300, 300, 100], [740, 50, 50], ', in: unit'),
        bed: box([900, 2000, 500], [1000, 0, 0]),
      }),
    );
    expect(words((await overlap(text)).remedy)).toBe('Move bed 40 mm rearward.');
  });
});

describe('outside the load bay', () => {
  test.each([
    { where: 'on the roof', z: 2000 },
    { where: 'under the floor', z: -400 },
  ])('things $where take part', async ({ z }) => {
    const text = plan(fixtures({ a: box([500, 500, 100], [0, 0, z]), b: box([500, 400, 100], [450, 0, z]) }));
    expect(words((await overlap(text)).remedy)).toBe('Move b 50 mm rearward.');
  });

  test('a tank under the floor does not rise through it', async () => {
    const text = plan(
      fixtures({ skid: box([2000, 2000, 100], [0, 0, -300]), tank: box([500, 500, 210], [0, 0, -210]) }),
    );
    expect(words((await overlap(text)).remedy)).toBe('Lower skid by 10 mm.');
  });
});

test('odd outlines: the box about what they share', async () => {
  // An L of 1 m with its rear left quarter cut out, and a box that reaches 100 mm into what is left.
  const corner =
    '{mass: 1 kg, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 0 mm, from_left: 0 mm}, cut_out: {corner: rear left, length: 500 mm, width: 500 mm}}';
  const at = (y: number) => plan(fixtures({ corner, chest: box([500, 500, 500], [500, y, 0]) }));
  expect((await overlap(at(0))).verdict).toBe('pass');
  const finding = await overlap(at(100));
  expect(words(finding.reason)).toContain('a piece 500 mm long, 100 mm wide and 500 mm high');
  expect(words(finding.remedy)).toBe('Move chest 100 mm to the left.');
});

test.each([
  { lacks: 'a load bay', text: plan('', { load_bay: undefined }), missing: ['van.load_bay'] },
  { lacks: 'things', text: plan(), missing: ['fixtures.NAME.size'] },
])('without $lacks it is not checked', async ({ text, missing }) => {
  expect(await overlap(text)).toMatchObject({ verdict: 'not checked', missing });
});

test('of many pairs the fifty that share most are told apart, and the rest are counted', async () => {
  // Twelve boxes that all stand in each other: 66 pairs.
  const crowd = Array.from(
    { length: 12 },
    (_, index) =>
      `b${index}: {mass: 1 kg, size: {length: ${1 + index / 100} m, width: 1 m, height: 1 m}, at: {from_front: 0 m, from_left: 0 m}}`,
  );
  const findings = (text: string) =>
    reportOf(text).then((report) => report.findings.filter(({ rule }) => rule === 'fit.overlap'));
  const found = await findings(plan(`fixtures: {${crowd.join(', ')}}`));
  expect(found).toHaveLength(51);
  const rest = found.find(({ subject }) => subject === 'further pairs');
  expect(words(rest?.reason)).toBe('16 more pairs of things stand in each other.');
  // The smallest two boxes share least of all.
  expect(found.map(({ subject }) => subject)).not.toContain('b0 and b1');
  expect(found.map(({ subject }) => subject)).toContain('b10 and b11');
  const turned = await findings(plan(`fixtures: {${crowd.toReversed().join(', ')}}`));
  expect(turned.map(({ subject }) => subject).sort()).toEqual(found.map(({ subject }) => subject).sort());
});
