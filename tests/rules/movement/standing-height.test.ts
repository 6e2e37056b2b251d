import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'movement.standing-height';

const people = (...statures: readonly string[]) =>
  `people: {sleepers: [${statures.map((stature) => `{stature: ${stature}}`).join(', ')}]}\n`;
const of = (...fixtures: readonly string[]) => `fixtures: {${fixtures.join(', ')}}`;

/** 1 m long and 0.6 m deep at the left wall, from 1 m on. */
const kitchen = (more = '') =>
  `kitchen: {mass: 30 kg, size: {length: 1 m, width: 0.6 m, height: 0.87 m}, at: {from_front: 1 m, from_left: 0 m}${more}}`;
const cooker = (from = '0.1 m', more = '') =>
  `cooker: {mass: 5 kg, is: cooker, size: {length: 0.4 m, width: 0.4 m, height: 60 mm}, on: kitchen, at: {from_front: ${from}, from_left: 0.1 m}${more}}`;
const sink =
  'sink: {mass: 5 kg, is: sink, size: {length: 0.4 m, width: 0.4 m, height: 150 mm}, in: kitchen, at: {from_front: 0.55 m, from_left: 0.1 m, above_floor: 0.7 m}}';

/** Hangs from the roof at 2 m over a piece of floor. */
const hanging = (
  above: string,
  x: string,
  length: string,
  fromLeft: string,
  width: string,
  name = 'locker',
) =>
  `${name}: {mass: 5 kg, size: {length: ${length}, width: ${width}, height: 0.2 m}, at: {from_front: ${x}, from_left: ${fromLeft}, above_floor: ${above}}}`;

const ownFindings = async (text: string) =>
  (await reportOf(text)).findings.filter((each) => each.rule === rule);

// The roof is at 2 m, and 50 mm beyond stature are asked for.
describe('under the roof', () => {
  test.each([
    { stature: '1.9 m', verdict: 'pass' },
    { stature: '1.95 m', verdict: 'pass' },
    { stature: '1.951 m', verdict: 'warn' },
  ])('$stature: $verdict', async ({ stature, verdict }) => {
    const finding = await findingOf(plan(people('1.6 m', stature) + of(kitchen(), cooker())), rule);
    expect(finding).toMatchObject({ verdict, subject: 'cooker' });
    expect(measured(finding)).toBeCloseTo(2, 12);
  });

  test('places that are too low under one roof are one finding, the lowest first', async () => {
    const sloping = {
      load_bay:
        '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, heights: [{from_front: 0 m, height: 2 m}, {from_front: 4 m, height: 1.6 m}]}',
    };
    const [finding, ...more] = await ownFindings(
      plan(people('1.9 m') + of(kitchen(', needs_space: {right: 600 mm}'), cooker(), sink), sloping),
    );
    expect(more).toEqual([]);
    // Before the cooker the foremost spot, 300 mm along the van, begins at 1.1 m: 2 − 0.14 = 1.86 m; before the sink at
    // 1.55 m: 1.815 m.
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'cooker and sink' });
    expect(finding?.measured?.value).toBeCloseTo(1.815, 12);
    expect(words(finding?.reason)).toBe(
      'Too low to stand up under the roof: sink 1815 mm, cooker 1860 mm. The tallest sleeper, 1900 mm, needs 1950 mm with shoes on and a little air.',
    );
    expect(words(finding?.remedy)).toContain('Find 135 mm more there');
    expect(finding?.path).toEqual(['fixtures', 'kitchen', 'needs_space', 'right']);
  });

  test('one low place and one high one: a warning and a pass', async () => {
    const over = hanging('1.8 m', '1 m', '0.5 m', '0.6 m', '1.4 m');
    const own = await ownFindings(
      plan(people('1.8 m') + of(kitchen(', needs_space: {right: 600 mm}'), cooker('0 m'), sink, over)),
    );
    expect(own).toMatchObject([
      { verdict: 'warn', subject: 'cooker' },
      { verdict: 'pass', subject: 'sink' },
    ]);
    expect(words(own[0]?.reason)).toContain('under locker: cooker 1800 mm');
    expect(words(own[0]?.remedy)).toBe(
      'Raise locker by 50 mm, or make it so much shallower that a spot of 400 mm by 300 mm is free of it.',
    );
  });
});

describe('under what hangs there', () => {
  const before = (depth: string) =>
    plan(
      people('1.8 m') +
        of(
          kitchen(', needs_space: {right: 600 mm}'),
          cooker(),
          hanging('1.5 m', '0 m', '4 m', '0.6 m', depth),
        ),
    );

  // The strip is 600 mm deep; a locker of 300 mm leaves a spot of 300 mm, one of 310 mm does not.
  test.each([
    { depth: '300 mm', verdict: 'pass' },
    { depth: '310 mm', verdict: 'warn' },
  ])('a locker that reaches $depth into the strip: $verdict', async ({ depth, verdict }) => {
    expect((await findingOf(before(depth), rule)).verdict).toBe(verdict);
  });

  test('what is lower than 1.2 m stands in the way and is no ceiling', async () => {
    const text = plan(
      people('1.8 m') +
        of(
          kitchen(', needs_space: {right: 600 mm}'),
          cooker(),
          hanging('1.1 m', '0 m', '4 m', '0.6 m', '0.6 m'),
        ),
    );
    expect((await findingOf(text, rule)).verdict).toBe('pass');
  });

  // Only before the cooker, not before the rest of the kitchen.
  test('a high place elsewhere in the strip does not help', async () => {
    const text = plan(
      people('1.8 m') +
        of(
          kitchen(', needs_space: {right: 600 mm}'),
          cooker('0 m'),
          hanging('1.5 m', '1 m', '0.4 m', '0.6 m', '0.6 m'),
        ),
    );
    expect(await findingOf(text, rule)).toMatchObject({ verdict: 'warn', subject: 'cooker' });
  });
});

describe('where one stands', () => {
  test("the thing's own strips come before its host's, and the lowest of them counts", async () => {
    const over = hanging('1.5 m', '2 m', '1 m', '0 m', '0.6 m');
    const text = plan(
      people('1.8 m') + of(kitchen(), cooker('0.6 m', ', needs_space: {right: 600 mm, rear: 500 mm}'), over),
    );
    const finding = await findingOf(text, rule);
    expect(finding.path).toEqual(['fixtures', 'cooker', 'needs_space', 'rear']);
    expect(measured(finding)).toBeCloseTo(1.5, 12);
  });

  // Without any: 500 mm on the side with the most free floor. The kitchen at the left wall has 1.4 m on its right, 1 m
  // in front and 2 m behind, all enough; its long side is taken.
  test('else before the long side that looks at free floor', async () => {
    const over = hanging('1.5 m', '1 m', '1 m', '0.6 m', '0.5 m');
    expect(await findingOf(plan(people('1.8 m') + of(kitchen(), cooker(), over)), rule)).toMatchObject({
      verdict: 'warn',
      path: ['fixtures', 'cooker'],
    });
  });

  test('or where something blocks that, before another side', async () => {
    const over = hanging('1.5 m', '1 m', '1 m', '0.6 m', '0.5 m');
    const bench =
      'bench: {mass: 9 kg, size: {length: 1 m, width: 1.3 m, height: 0.4 m}, at: {from_front: 1 m, from_right: 0 m}}';
    const text = plan(people('1.8 m') + of(kitchen(), cooker(), over, bench));
    expect((await findingOf(text, rule)).verdict).toBe('pass');
  });

  test('in a shower, from its bottom', async () => {
    const shower =
      'shower: {mass: 9 kg, is: shower, size: {length: 0.7 m, width: 0.7 m, height: 1.9 m}, at: {from_front: 0 m, from_left: 0 m, above_floor: 0.1 m}}';
    const finding = await findingOf(plan(people('1.8 m') + of(shower)), rule);
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'shower' });
    expect(measured(finding)).toBeCloseTo(1.9, 12);
  });

  test('outdoors there is no ceiling', async () => {
    const rear =
      'galley: {mass: 9 kg, is: cooker, size: {length: 0.5 m, width: 0.6 m, height: 0.8 m}, at: {from_rear: 0 m, from_left: 0 m}, needs_space: {rear: 600 mm}}';
    expect(await findingOf(plan(people('2.1 m') + of(rear)), rule)).toMatchObject({
      verdict: 'not checked',
      missing: ['fixtures.NAME.is'],
    });
  });

  test('a toilet is no place to stand', async () => {
    const toilet =
      'toilet: {mass: 9 kg, is: toilet, size: {length: 0.5 m, width: 0.5 m, height: 0.4 m}, at: {from_front: 0 m, from_left: 0 m}}';
    expect((await findingOf(plan(people('2.1 m') + of(toilet)), rule)).verdict).toBe('not checked');
  });
});

test.each([
  {
    lacks: 'a stature',
    text: `people: {sleepers: [{}]}\n${of(kitchen(), cooker())}`,
    missing: ['people.sleepers'],
  },
  { lacks: 'a use', text: people('1.8 m') + of(kitchen()), missing: ['fixtures.NAME.is'] },
])('without $lacks it is not checked', async ({ text, missing }) => {
  expect(await findingOf(plan(text), rule)).toMatchObject({ verdict: 'not checked', missing });
});

test('an unknown stature is said, and the plan may ask for less', async () => {
  const text = `people: {sleepers: [{stature: 1.97 m}, {}, {}]}\n${of(kitchen(), cooker())}\nrules: {movement.standing-height: {limit: 30 mm, reason: "barefoot inside"}}`;
  const finding = await findingOf(plan(text), rule);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain('How tall 2 sleepers are is not known.');
});

test.each([
  { tray: 'shape: cylinder, size: {length: 450 mm, width: 450 mm, height: 60 mm}' },
  {
    tray: 'outline: [{from_front: 0 mm, from_left: 0 mm}, {from_front: 700 mm, from_left: 0 mm}, {from_front: 0 mm, from_left: 500 mm}], size: {length: 700 mm, width: 500 mm, height: 60 mm}',
  },
])('a shower tray that holds no whole spot is stood on all over: $tray', async ({ tray }) => {
  const shower = `shower: {mass: 5 kg, is: shower, ${tray}, at: {from_front: 1 m, from_left: 0.5 m}}`;
  const under = (...more: readonly string[]) => findingOf(plan(people('1.9 m') + of(shower, ...more)), rule);
  expect(measured(await under())).toBeCloseTo(2, 12);
  expect(measured(await under(hanging('1.7 m', '1 m', '0.1 m', '0.5 m', '0.1 m')))).toBeCloseTo(1.7, 12);
});
