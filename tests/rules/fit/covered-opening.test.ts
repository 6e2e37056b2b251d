import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'fit.covered-opening';
const of = (text: string, subject = '') => findingOf(text, rule, subject);

/** The load bay is 4 m long, 2 m wide and 2 m high. */
const window =
  '{window: {in: left wall, kind: window, length: 1 m, height: 0.5 m, at: {from_front: 1 m, above_floor: 1 m}}}';
const door = '{side door: {in: right wall, kind: door, length: 1 m, height: 1.6 m, at: {from_front: 1 m}}}';
const hatch =
  '{hatch: {in: ceiling, kind: hatch, length: 0.5 m, width: 0.5 m, at: {from_front: 1 m, centred: true}}}';

const fixture = (name: string, [length, width, height]: readonly number[], at: string, more = '') =>
  `  ${name}: {mass: 10 kg, size: {length: ${length} m, width: ${width} m, height: ${height} m}, at: {${at}}${more}}`;
const withThings = (openings: string, ...things: readonly string[]) =>
  plan(`fixtures:\n${things.join('\n')}`, { openings });
const tall = (fromFront: number, length: number, more = '') =>
  fixture(
    'cupboard',
    [length, 0.5, 1.8],
    `from_front: ${fromFront} m, from_left: 0 m, above_floor: 0 m`,
    more,
  );

describe('a window', () => {
  test('with nothing before it: pass', async () => {
    const finding = await of(withThings(window, tall(2.5, 0.5)));
    expect(finding).toMatchObject({
      verdict: 'pass',
      subject: 'window',
      path: ['van', 'openings', 'window'],
    });
  });

  test('half of which is behind a cupboard fails: 500 mm of its 1 m', async () => {
    const finding = await of(withThings(window, tall(0.5, 1)));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.5, 9);
    expect(words(finding.reason)).toBe('window is behind cupboard, with 50 % of it covered.');
    expect(words(finding.remedy)).toContain('Move cupboard 500 mm forward');
  });

  test('just less than half of which is covered warns', async () => {
    const finding = await of(withThings(window, tall(0.49, 1)));
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(0.49, 9);
    expect(words(finding.reason)).toBe(
      'cupboard runs across window and covers 49 % of it: a strip 490 mm wide and 500 mm high.',
    );
  });

  test('the cupboard moved as the remedy says: pass', async () => {
    expect((await of(withThings(window, tall(0, 1)))).verdict).toBe('pass');
  });

  // A unit 0.5 m high ends below the sill at 1 m, one 1.05 m high stands 50 mm above it.
  test.each([
    { height: 1, verdict: 'pass', covered: 0 },
    { height: 1.05, verdict: 'warn', covered: 0.1 },
  ])('over a unit $height m high: $verdict', async ({ height, verdict, covered }) => {
    const unit = fixture('unit', [1, 0.5, height], 'from_front: 1 m, from_left: 0 m, above_floor: 0 m');
    const finding = await of(withThings(window, unit));
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBeCloseTo(covered, 9);
    if (covered > 0) expect(words(finding.remedy)).toContain('Make unit 50 mm lower.');
  });

  test.each([
    { gap: 0.1, verdict: 'pass' },
    { gap: 0.099, verdict: 'fail' },
  ])('with a board $gap m from it: $verdict', async ({ gap, verdict }) => {
    const board = fixture('board', [1, 0.3, 0.5], `from_front: 1 m, from_left: ${gap} m, above_floor: 1 m`);
    expect((await of(withThings(window, board))).verdict).toBe(verdict);
  });

  test('two that overlap cover what they cover together', async () => {
    const board = (name: string, from: number) =>
      fixture(name, [0.3, 0.2, 0.5], `from_front: ${from} m, from_left: 0 m, above_floor: 1 m`);
    const finding = await of(withThings(window, board('one', 1), board('two', 1.1)));
    // 1.0 to 1.3 and 1.1 to 1.4: 400 mm of 1 m.
    expect(measured(finding)).toBeCloseTo(0.4, 9);
    expect(words(finding.reason)).toContain('one and two run across window and cover 40 %');
  });

  test('what is in a cupboard is not named beside it', async () => {
    const shelf =
      '  shelf: {mass: 1 kg, in: cupboard, size: {length: 0.4 m, width: 0.4 m, height: 1.6 m}, at: {from_front: 0 m, from_left: 0 m}}';
    const finding = await of(withThings(window, tall(0.5, 1), shelf));
    expect(words(finding.reason)).toContain('behind cupboard, with');
  });
});

describe('what fills the opening itself', () => {
  test.each([
    ['glass of the same name', 'window', 0.08, 'pass'],
    ['a blind, 60 mm deep', 'blind', 0.06, 'pass'],
    ['a rack, 61 mm deep', 'rack', 0.061, 'fail'],
  ])('%s: %s %s', async (_, name, depth, verdict) => {
    const pane = fixture(name, [1, depth, 0.5], 'from_front: 1 m, from_left: 0 m, above_floor: 1 m');
    expect((await of(withThings(window, pane))).verdict).toBe(verdict);
  });

  test('a flat thing that goes beyond the opening is none', async () => {
    const panel = fixture('panel', [1.1, 0.02, 0.5], 'from_front: 1 m, from_left: 0 m, above_floor: 1 m');
    expect((await of(withThings(window, panel))).verdict).toBe('fail');
  });
});

describe('a wall that leans in', () => {
  // 2 m wide at the floor, 1.6 m at 2 m: it leans in by 100 mm each metre.
  const bay =
    '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m, profile: [{above_floor: 0 m, width: 2 m}, {above_floor: 2 m, width: 1.6 m}]}';
  const board = (from: number, more = '') =>
    plan(
      `fixtures:\n${fixture('board', [1, 0.2, 0.5], `from_front: 1 m, from_left: ${from} m, above_floor: 1 m`, more)}`,
      { openings: window, load_bay: bay },
    );

  // At a height z the wall is 0.1 · z from where it is at the floor: a face at 225 mm is 100 mm from it at 1.25 m.
  test('counts at each height', async () => {
    const finding = await of(board(0.225));
    expect(measured(finding)).toBeCloseTo(0.5, 6);
    expect(finding.verdict).toBe('fail');
  });

  test.each([
    { from: 0.25, verdict: 'pass' },
    { from: 0.24, verdict: 'warn' },
    { from: 0.2, verdict: 'fail' },
  ])('a board $from m from the foot of the wall: $verdict', async ({ from, verdict }) => {
    expect((await of(board(from))).verdict).toBe(verdict);
  });

  test('a thing that leans with it keeps its distance', async () => {
    // Held at its own foot, 1 m up: 150 mm from the wall there.
    expect((await of(board(0.25, ', leans: true'))).verdict).toBe('pass');
    expect((await of(board(0.19, ', leans: true'))).verdict).toBe('fail');
  });

  test('and so on the right', async () => {
    const right = board(0.225)
      .replace('left wall', 'right wall')
      .replace('from_left: 0.225', 'from_right: 0.225');
    expect(measured(await of(right))).toBeCloseTo(0.5, 6);
  });
});

describe('a door', () => {
  const unit = (length: number, more = '') =>
    fixture('unit', [length, 0.5, 0.9], 'from_front: 0 m, from_right: 0 m, above_floor: 0 m', more);

  test('with a unit across a part of it fails, with its strip and a move', async () => {
    const finding = await of(withThings(door, unit(1.2)));
    expect(finding.verdict).toBe('fail');
    // 0.2 · 0.9 of 1 · 1.6.
    expect(measured(finding)).toBeCloseTo(0.18 / 1.6, 9);
    expect(words(finding.reason)).toContain('unit stands before side door');
    expect(words(finding.reason)).toContain(
      'nobody gets through a strip of it 200 mm wide and 900 mm high (11 %)',
    );
    expect(words(finding.remedy)).toBe(
      'Make unit 200 mm shorter at its rear end. If it stands there to be reached through side door, give it `service_from: side door`.',
    );
  });

  test('that the unit ends at: pass', async () => {
    expect((await of(withThings(door, unit(1)))).verdict).toBe('pass');
  });

  test('is not kept shut by what hangs higher than people walk', async () => {
    const high = '{side door: {in: right wall, kind: door, length: 1 m, height: 2 m, at: {from_front: 1 m}}}';
    const locker = (bottom: number) =>
      fixture('locker', [1, 0.3, 0.1], `from_front: 1 m, from_right: 0 m, above_floor: ${bottom} m`);
    expect((await of(withThings(high, locker(1.9)))).verdict).toBe('pass');
    expect((await of(withThings(high, locker(1.89)))).verdict).toBe('fail');
  });

  test('before which only luggage stands warns', async () => {
    const text = plan(
      'stores:\n  bags: {full: 10 kg, size: {length: 0.5 m, width: 0.5 m, height: 0.5 m}, at: {from_front: 1 m, from_right: 0 m, above_floor: 0 m}}',
      { openings: door },
    );
    expect((await of(text)).verdict).toBe('warn');
  });

  test('with a thing that is reached through it: pass, and what stands beside it still counts', async () => {
    const text = withThings(door, unit(2, ', service_from: side door'));
    const finding = await of(text);
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('Only what is reached through side door stands behind it: unit.');
    const other = fixture('shelf', [0.2, 0.3, 0.3], 'from_front: 1 m, from_right: 0 m, above_floor: 1 m');
    expect(words((await of(`${text}\n${other}`)).reason)).toContain('shelf stands before');
  });

  test('at the rear: what reaches to within 100 mm of it, or of its own thickness', async () => {
    const rear = '{rear door: {in: rear doors, kind: door, width: 1 m, height: 1.6 m, at: {from_left: 0 m}}}';
    const bed = fixture('bed', [1, 2, 0.5], 'from_rear: 0.12 m, from_left: 0 m, above_floor: 0 m');
    expect((await of(withThings(rear, bed))).verdict).toBe('pass');
    const thick = plan(`fixtures:\n${bed}`, {
      openings: rear,
      load_bay:
        '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m, rear_door_thickness: 50 mm}',
    });
    const finding = await of(thick);
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.5 / 1.6, 9);
  });
});

describe('a way out', () => {
  const wayOut = window.replace('kind: window', 'kind: window, escape: true');

  test('covered in any part fails, and what is reached through it is no excuse', async () => {
    const finding = await of(withThings(wayOut, tall(0.1, 1, ', service_from: window')));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.1, 9);
    expect(finding.cautions.join(' ')).toContain('ways out free');
  });

  test('says so when it is free too, with its caution', async () => {
    const finding = await of(withThings(wayOut, tall(0, 1)));
    expect(finding.verdict).toBe('pass');
    expect(finding.cautions.join(' ')).toContain('ways out free');
  });
});

describe('in the roof and in the floor', () => {
  const wardrobe = (height: number) =>
    fixture('wardrobe', [0.5, 0.5, height], 'from_front: 1 m, centred: true, above_floor: 0 m');

  test.each([
    { height: 1.9, verdict: 'pass' },
    { height: 1.91, verdict: 'fail' },
  ])('a wardrobe $height m high under a hatch at 2 m: $verdict', async ({ height, verdict }) => {
    expect((await of(withThings(hatch, wardrobe(height)))).verdict).toBe(verdict);
  });

  test('what is on the roof covers nothing from inside', async () => {
    const modules = fixture(
      'modules',
      [2, 1.5, 0.05],
      'from_front: 0.5 m, centred: true, above_floor: 2.05 m',
    );
    expect((await of(withThings(hatch, modules))).verdict).toBe('pass');
  });

  test('under a roof that falls, it is near only where the roof is low', async () => {
    // From 2 m in front to 1.8 m at 4 m: 50 mm a metre. Less than 1.8 + 0.1 from 2 m on.
    const bay =
      '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m, heights: [{from_front: 0 m, height: 2 m}, {from_front: 4 m, height: 1.8 m}]}';
    const long =
      '{hatch: {in: ceiling, kind: hatch, length: 2 m, width: 0.5 m, at: {from_front: 1 m, centred: true}}}';
    const box = fixture('box', [2, 0.5, 1.8], 'from_front: 1 m, centred: true, above_floor: 0 m');
    expect(measured(await of(plan(`fixtures:\n${box}`, { openings: long, load_bay: bay })))).toBeCloseTo(
      0.5,
      6,
    );
  });

  test('a hatch in the floor under a box, and clear of it', async () => {
    const floor = hatch.replace('ceiling', 'floor');
    const box = (above: number) =>
      fixture('box', [0.25, 0.5, 0.5], `from_front: 1 m, centred: true, above_floor: ${above} m`);
    const finding = await of(withThings(floor, box(0)));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.5, 9);
    expect((await of(withThings(floor, box(0.1)))).verdict).toBe('pass');
  });

  test('the corner cut out of a thing leaves a hatch free', async () => {
    const floor = hatch.replace('ceiling', 'floor');
    const bench = (cut: string) =>
      fixture('bench', [2, 2, 0.4], 'from_front: 0 m, from_left: 0 m, above_floor: 0 m', cut);
    expect((await of(withThings(floor, bench('')))).verdict).toBe('fail');
    const cut = ', cut_out: {corner: rear left, length: 1 m, width: 1.25 m}';
    expect((await of(withThings(floor, bench(cut)))).verdict).toBe('pass');
  });
});

describe('what the plan leaves out', () => {
  test('openings without kind and place: one finding with all their keys', async () => {
    const vague =
      '{a: {in: left wall, length: 1 m, height: 0.5 m}, b: {in: ceiling, length: 0.4 m, width: 0.4 m, kind: vent}}';
    const finding = await of(plan('', { openings: vague }));
    expect(finding).toMatchObject({
      verdict: 'not checked',
      missing: [
        'van.openings.a.kind',
        'van.openings.a.at.from_front',
        'van.openings.a.at.above_floor',
        'van.openings.b.at.from_front',
        'van.openings.b.at.from_left',
      ],
    });
  });

  test('beside known ones', async () => {
    const both = `${window.slice(0, -1)}, b: {in: ceiling, length: 0.4 m, width: 0.4 m, kind: vent}}`;
    const found = (await reportOf(plan('', { openings: both }))).findings.filter(
      (each) => each.rule === rule,
    );
    expect(found.map(({ verdict }) => verdict).sort()).toEqual(['not checked', 'pass']);
  });

  test.each([
    { van: {}, missing: ['van.openings'] },
    { van: { load_bay: undefined }, missing: ['van.load_bay'] },
  ])('$missing', async ({ van, missing }) => {
    expect(await of(plan('', van))).toMatchObject({ verdict: 'not checked', missing });
  });
});

describe('a bed across the rear doors', () => {
  const rearDoors =
    '{side door: {in: right wall, kind: door, length: 1 m, height: 1.6 m, at: {from_front: 0 m}}, rear doors: {in: rear doors, kind: door, width: 1.6 m, height: 1.8 m, at: {centred: true}}}';
  const bed = fixture('bed', [1.4, 2, 0.1], 'from_rear: 0 m, from_left: 0 m, above_floor: 0.7 m');
  const locker = fixture('locker', [1.4, 0.3, 0.3], 'from_rear: 0 m, from_left: 0 m, above_floor: 1.5 m');

  test('and a locker over it cover no strip between them', async () => {
    const finding = await of(withThings(rearDoors, bed, locker), 'rear doors');
    // 0.1 · 1.6 and 0.3 · 0.1 of 1.6 · 1.8.
    expect(measured(finding)).toBeCloseTo(0.19 / 2.88, 9);
    expect(words(finding.reason)).toBe(
      'bed and locker stand before rear doors: nobody gets through 6.6 % of it.',
    );
    const alone = await of(withThings(rearDoors, bed), 'rear doors');
    expect(words(alone.reason)).toContain('a strip of it 1600 mm wide and 100 mm high (5.6 %)');
  });

  test('that has no room to move is not told to hang under the roof', async () => {
    const kitchen = fixture('kitchen', [2.6, 1.9, 0.9], 'from_front: 0 m, from_left: 0 m, above_floor: 0 m');
    const narrow = fixture('bed', [1.4, 1.4, 0.1], 'from_rear: 0 m, centred: true, above_floor: 0.2 m');
    const finding = await of(withThings(rearDoors, narrow, kitchen), 'rear doors');
    expect(words(finding.remedy)).not.toContain('Lift');
  });

  test('is not told to be 200 mm wide', async () => {
    const kitchen = fixture('kitchen', [2.5, 0.6, 0.9], 'from_front: 0 m, from_left: 0 m, above_floor: 0 m');
    const finding = await of(withThings(rearDoors, bed, kitchen), 'rear doors');
    expect(words(finding.remedy)).not.toContain('narrower');
    expect(words(finding.remedy)).toContain('Find another place for bed.');
  });
});
