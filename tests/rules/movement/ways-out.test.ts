import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { floorPlan, rearDoors, type Standing, sideDoor } from '../../support/floor-plan.ts';

const rule = 'movement.ways-out';
const door = { 'side door': sideDoor };
/** Across the rear. */
const bed: Standing = { at: [2500, 0], size: [1500, 2000, 500], more: 'is: bed' };
const windowAt = (front: number, above = 800, wall = 'right wall') =>
  `in: ${wall}, kind: window, escape: true, length: 700 mm, height: 500 mm, at: {from_front: ${front} mm, above_floor: ${above} mm}`;
const hatchAt = (front: number, left: number) =>
  `in: ceiling, kind: hatch, escape: true, length: 700 mm, width: 500 mm, at: {from_front: ${front} mm, from_left: ${left} mm}`;

const finding = (openings: Record<string, string>, boxes: Record<string, Standing>, rest = '') =>
  findingOf(floorPlan(openings, boxes, {}, rest), rule);

describe('ways out', () => {
  test('the door and a window beside the bed are two', async () => {
    const found = await finding({ ...door, window: windowAt(3000) }, { bed });
    expect(found).toMatchObject({ verdict: 'pass', subject: 'ways out from bed' });
    expect(measured(found)).toBe(2);
    expect(words(found.reason)).toBe(
      'The plan shows two ways out from bed: side door by a way 1000 mm wide and window beside the bed.',
    );
    expect(found.cautions.join(' ')).toContain('Nothing here shows that people will get out of a fire');
  });

  test('the door alone is one', async () => {
    const found = await finding(door, { bed });
    expect(found.verdict).toBe('warn');
    expect(words(found.reason)).toBe(
      'The plan shows only one way out from bed: side door by a way 1000 mm wide.',
    );
    expect(words(found.remedy)).toBe(
      'Give the bed a window, hatch or door within 300 mm that opens from inside, 1000 mm or more from side door, and mark it `escape: true`.',
    );
  });

  test('none at all fails', async () => {
    const wall: Standing = { at: [1600, 0], size: [50, 2000, 1800] };
    const found = await finding(door, { bed, wall });
    expect(found.verdict).toBe('fail');
    expect(words(found.reason)).toBe('The plan shows no way out from bed. No way leads to side door.');
  });

  test.each([
    { gap: 450, verdict: 'pass' },
    { gap: 449, verdict: 'warn' },
  ])('by a way of $gap mm: $verdict', async ({ gap, verdict }) => {
    const cupboard: Standing = { at: [1700, 0], size: [400, 2000 - gap, 1800] };
    const found = await finding({ ...door, window: windowAt(3000) }, { bed, cupboard });
    expect(found.verdict).toBe(verdict);
    if (verdict === 'warn') {
      expect(words(found.reason)).toContain('The way to side door is only 449 mm wide.');
      expect(words(found.remedy)).toContain('Clear the way to side door to 450 mm');
    }
  });

  test('a limit of the plan for the width of the way', async () => {
    const cupboard: Standing = { at: [1700, 0], size: [400, 1600, 1800] };
    const rest = `rules: {${rule}: {limit: 380 mm, reason: "tried it in the dark"}}`;
    expect((await finding({ ...door, window: windowAt(3000) }, { bed, cupboard }, rest)).verdict).toBe(
      'pass',
    );
  });

  test('a door at the foot of the bed counts where it is marked as a way out', async () => {
    expect((await finding({ ...door, 'rear doors': rearDoors }, { bed })).verdict).toBe('warn');
    expect((await finding({ ...door, 'rear doors': `${rearDoors}, escape: true` }, { bed })).verdict).toBe(
      'pass',
    );
  });
});

describe('an opening that is no door', () => {
  test('counts only where it is marked as a way out', async () => {
    const unmarked = windowAt(3000).replace('escape: true', 'escape: false');
    expect((await finding({ ...door, window: unmarked }, { bed })).verdict).toBe('warn');
  });

  // 700 mm long: from 1500 to 2200, 300 mm before the bed.
  test.each([
    { front: 1500, by: 'window beside the bed' },
    { front: 1499, by: 'window by a way' },
  ])('near the bed or by a way, at $front mm', async ({ front, by }) => {
    const found = await finding({ ...door, window: windowAt(front) }, { bed });
    expect(found.verdict).toBe('pass');
    expect(words(found.reason)).toContain(by);
  });

  test('that no way leads to is none', async () => {
    const wall: Standing = { at: [1200, 0], size: [50, 2000, 1800] };
    const found = await finding({ hatch: hatchAt(3000, 700), window: windowAt(200) }, { bed, wall });
    expect(found.verdict).toBe('warn');
    expect(words(found.reason)).toContain('No way leads to window.');
  });

  // A cupboard 550 mm deep under the window of 700 mm: someone leans over it.
  test('is reached over what stands under it', async () => {
    const kitchen: Standing = { at: [0, 1450], size: [2000, 550, 800] };
    const found = await finding({ hatch: hatchAt(3000, 700), window: windowAt(500) }, { bed, kitchen });
    expect(found.verdict).toBe('pass');
  });

  // 700 × 500 mm: 35 mm of a cupboard beside it cover 5 %, 84 mm cover 12 %.
  test.each([
    { covers: 35, depth: 300, verdict: 'pass' },
    { covers: 84, depth: 300, verdict: 'warn' },
    // A blind within the opening.
    { covers: 400, depth: 60, verdict: 'pass' },
  ])('covered for $covers mm, $depth mm deep: $verdict', async ({ covers, depth, verdict }) => {
    const locker: Standing = {
      at: [3000, 2000 - depth, 800],
      size: [covers, depth, 500],
    };
    const found = await finding({ ...door, window: windowAt(3000) }, { bed, locker });
    expect(found.verdict).toBe(verdict);
    if (verdict === 'warn') {
      expect(words(found.reason)).toContain('Window is covered by locker, over more than 10 % of it.');
      expect(words(found.remedy)).toBe('Take locker away from in front of window.');
    }
  });

  // The bed hides the window up to 500 mm: of 500 mm from 450 mm on, 450 mm are left, of 400 mm less than needed.
  test.each([
    { above: 450, verdict: 'pass' },
    { above: 400, verdict: 'warn' },
  ])('behind the bed from $above mm on: $verdict', async ({ above, verdict }) => {
    expect((await finding({ ...door, window: windowAt(3000, above) }, { bed })).verdict).toBe(verdict);
  });
});

describe('one way out, not two', () => {
  // The second window begins where the first ends, and so much later.
  test.each([
    { apart: 999, verdict: 'warn' },
    { apart: 1000, verdict: 'pass' },
  ])('in one wall, $apart mm apart: $verdict', async ({ apart, verdict }) => {
    const short = (front: number) => windowAt(front).replace('length: 700 mm', 'length: 450 mm');
    const long: Standing = { at: [1500, 0], size: [2500, 2000, 500], more: 'is: bed' };
    const found = await finding({ one: short(1500), other: short(1950 + apart) }, { bed: long });
    expect(found.verdict).toBe(verdict);
    if (verdict === 'warn')
      expect(words(found.reason)).toBe(
        'One fire can close every way out from bed: one and other are less than 1000 mm apart.',
      );
  });

  test('in two walls, however near', async () => {
    const openings = { left: windowAt(3000, 800, 'left wall'), right: windowAt(3000) };
    expect((await finding(openings, { bed })).verdict).toBe('pass');
  });

  const cooker = (front: number, left: number): Standing => ({
    at: [front, left],
    size: [400, 400, 900],
    more: 'is: cooker',
  });

  // The door of 1 m is on the left; the cooker stands on the right, 1.1 m away from it, or at the door.
  test('both past the cooker', async () => {
    const doors = { ...door, hatch: hatchAt(800, 200) };
    expect((await finding(doors, { bed, cooker: cooker(300, 1600) })).verdict).toBe('pass');
    const found = await finding(doors, { bed, cooker: cooker(1700, 800) });
    expect(found.verdict).toBe('warn');
    expect(words(found.reason)).toBe(
      'One fire can close every way out from bed: side door and hatch both lead within 500 mm of a cooker.',
    );
  });

  test('one of two past the cooker', async () => {
    const found = await finding({ ...door, window: windowAt(3300) }, { bed, cooker: cooker(1700, 800) });
    expect(found.verdict).toBe('pass');
  });
});

describe('several beds', () => {
  const left: Standing = { at: [2000, 0], size: [2000, 600, 500], more: 'is: bed' };
  const right: Standing = { at: [2000, 1400], size: [2000, 600, 500], more: 'is: bed' };

  test('with the same ways out are one finding', async () => {
    const { findings } = await reportOf(floorPlan(door, { left, right }));
    const found = findings.filter((each) => each.rule === rule);
    expect(found.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['ways out from left and 1 more', 'warn'],
    ]);
  });

  test('with others are one each', async () => {
    const across: Standing = { at: [1800, 600], size: [50, 1400, 1800] };
    const wall: Standing = { at: [1800, 1000], size: [2200, 50, 1800] };
    const openings = { ...door, window: windowAt(3000) };
    const { findings } = await reportOf(floorPlan(openings, { left, right, across, wall }));
    const found = findings.filter((each) => each.rule === rule);
    expect(found.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['ways out from left', 'warn'],
      ['ways out from right', 'warn'],
    ]);
  });
});

describe('what the plan does not say', () => {
  test('without a bed or openings it is not checked', async () => {
    expect(await finding({}, {})).toMatchObject({
      verdict: 'not checked',
      missing: ['fixtures.NAME.is', 'van.openings.NAME.kind'],
    });
    expect(await finding(door, {})).toMatchObject({ verdict: 'not checked', missing: ['fixtures.NAME.is'] });
    expect(await finding({}, { bed })).toMatchObject({
      verdict: 'not checked',
      missing: ['van.openings.NAME.kind'],
    });
  });

  test('without any way out, but with an opening that is not placed, it is not checked', async () => {
    const openings = {
      vent: windowAt(500),
      hatch: 'in: ceiling, kind: hatch, length: 700 mm, width: 500 mm',
    };
    const wall: Standing = { at: [1600, 0], size: [50, 2000, 1800] };
    const found = await finding(openings, { bed, wall });
    expect(found).toMatchObject({
      verdict: 'not checked',
      missing: ['van.openings.hatch.at.from_front', 'van.openings.hatch.at.from_left'],
    });
  });
});
