import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/engine/finding.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'fit.swing';
const of = (text: string, subject = '') => findingOf(text, rule, subject);
const allOf = async (text: string): Promise<readonly Finding[]> =>
  (await reportOf(text)).findings.filter((each) => each.rule === rule);

/** The load bay is 4 m long, 2 m wide and 2 m high. Sizes and places in metres: from front, from left, above floor. */
const thing = (
  name: string,
  [length, width, height]: readonly [number, number, number],
  [front, left, above]: readonly [number, number, number],
  more = '',
) =>
  `  ${name}: {mass: 10 kg, size: {length: ${length} m, width: ${width} m, height: ${height} m}, at: {from_front: ${front} m, from_left: ${left} m, above_floor: ${above} m}${more}}`;
const things = (...all: readonly string[]) => `fixtures:\n${all.join('\n')}`;
const withThings = (...all: readonly string[]) => plan(things(...all));

/** Against the left wall; looked at from the middle of the van its front end is on the right. */
const cupboard = (opens: string, height = 1) =>
  thing('cupboard', [0.5, 0.5, height], [0, 0, 0], `, opens: {door: {${opens}}}`);

describe('a door leaf of 500 mm about the corner of its cupboard', () => {
  const door = cupboard('kind: door, side: right, hinge: right');
  const post = (x: number, y: number) => thing('post', [0.4, 0.4, 1], [x, 0.5 + y, 0]);

  test('touches a corner at 300 mm and 400 mm and no more: 3, 4, 5', async () => {
    const finding = await of(withThings(door, post(0.3, 0.4)));
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'door of cupboard' });
    expect(measured(finding)).toBe(1);
  });

  test('and one at 400 mm and 300 mm', async () => {
    expect((await of(withThings(door, post(0.4, 0.3)))).verdict).toBe('pass');
  });

  test('goes into one that is 2 mm nearer on both sides', async () => {
    const finding = await of(withThings(door, post(0.298, 0.398)));
    expect(finding).toMatchObject({
      verdict: 'fail',
      path: ['fixtures', 'cupboard', 'opens', 'door'],
    });
    // 500² = 298² + y²: y = 401.5 mm, 3.5 mm beyond 398; along the van x = 302.6 mm, 4.6 mm beyond 298.
    expect(measured(finding)).toBeCloseTo(Math.sqrt(0.5 ** 2 - 0.298 ** 2) - 0.398, 3);
    expect(words(finding.reason)).toBe('door of cupboard cannot open fully: it hits post (by 4 mm).');
  });

  test('passes over what is lower, and under what is higher', async () => {
    const raised = cupboard('kind: door, side: right, hinge: right, above_floor: 0.3 m, height: 0.4 m');
    expect((await of(withThings(raised, thing('low', [0.4, 0.4, 0.3], [0, 0.5, 0])))).verdict).toBe('pass');
    expect((await of(withThings(raised, thing('high', [0.4, 0.4, 0.3], [0, 0.5, 0.7])))).verdict).toBe(
      'pass',
    );
    expect((await of(withThings(raised, thing('level', [0.4, 0.4, 0.31], [0, 0.5, 0])))).verdict).toBe(
      'fail',
    );
  });
});

describe('what to do about a door', () => {
  test('hinges it on the other side where that is free, and then it is', async () => {
    // 400 mm before the right hinge, and 560 mm or more from the left one.
    const post = thing('post', [0.1, 0.1, 1], [0.02, 0.9, 0]);
    const on = (hinge: string) => withThings(cupboard(`kind: door, side: right, hinge: ${hinge}`), post);
    const finding = await of(on('right'));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toBe(
      'Hinge door of cupboard on its left side, as you look at it: with its 500 mm it is free there.',
    );
    expect((await of(on('left'))).verdict).toBe('pass');
  });

  test('else says how wide a leaf is free, and it is, and no wider one', async () => {
    // A wall of a thing 350 mm before the face.
    const board = thing('board', [0.5, 0.05, 1], [0, 0.85, 0]);
    const wide = (width: number) =>
      withThings(cupboard(`kind: door, side: right, hinge: right, width: ${width} m`), board);
    const finding = await of(wide(0.5));
    expect(words(finding.reason)).toContain('board (by 150 mm)');
    expect(words(finding.remedy)).toMatch(
      /^A leaf of at most 350 mm is free of it\. Or: Move board 150 mm to the right\.$/,
    );
    expect((await of(wide(0.35))).verdict).toBe('pass');
    expect((await of(wide(0.352))).verdict).toBe('fail');
  });
});

describe('a drawer', () => {
  const drawer = (more = '') => cupboard(`kind: drawer, side: right${more}`);

  test('that has just the room it needs: pass', async () => {
    expect((await of(withThings(drawer(), thing('bed', [1, 0.5, 1], [0, 1, 0])))).verdict).toBe('pass');
  });

  test('that has 100 mm too little fails, and a shorter travel is free', async () => {
    const bed = thing('bed', [1, 0.6, 1], [0, 0.9, 0]);
    const finding = await of(withThings(drawer(), bed));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.1, 9);
    expect(words(finding.remedy)).toContain(
      'A travel of at most 400 mm is free of it. Or: Move bed 100 mm to the right.',
    );
    expect((await of(withThings(drawer(', travel: 0.4 m'), bed))).verdict).toBe('pass');
  });

  test('into luggage warns', async () => {
    const bags =
      'stores: {bags: {full: 5 kg, size: {length: 0.4 m, width: 0.4 m, height: 0.4 m}, at: {from_front: 0 m, from_left: 0.8 m, above_floor: 0 m}}}';
    const finding = await of(plan(`${things(drawer())}\n${bags}`));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('only with bags out of its way');
  });

  test('into the wheel arch fails, over a step does not', async () => {
    const van = (walkable: boolean) => ({
      obstructions: `{step: {size: {length: 0.3 m, width: 0.3 m, height: 0.3 m}, at: {from_front: 0 m, from_left: 0.6 m}, walkable: ${walkable}}}`,
    });
    expect((await of(plan(things(drawer()), van(false)))).verdict).toBe('fail');
    expect((await of(plan(things(drawer()), van(true)))).verdict).toBe('pass');
  });
});

describe('things of one piece of furniture', () => {
  test('what is in it, on it and around it is not in its way', async () => {
    const finding = await of(
      withThings(
        thing('unit', [1, 0.5, 1], [0, 0, 0]),
        '  worktop: {mass: 5 kg, size: {length: 1 m, width: 0.6 m, height: 0.03 m}, on: unit, at: {from_front: 0 m, from_left: 0 m}}',
        '  fridge: {mass: 5 kg, in: unit, size: {length: 0.4 m, width: 0.4 m, height: 0.8 m}, at: {from_front: 0 m, from_left: 0 m}, opens: {door: {kind: door, side: right}}}',
      ),
    );
    expect(finding.verdict).toBe('pass');
  });

  test('what stands beside it in the same host is', async () => {
    const finding = await of(
      withThings(
        thing('unit', [1, 1, 1], [0, 0, 0]),
        '  pot: {mass: 5 kg, in: unit, size: {length: 0.2 m, width: 0.2 m, height: 0.2 m}, at: {from_front: 0.1 m, from_left: 0.5 m}}',
        '  box: {mass: 5 kg, in: unit, size: {length: 0.4 m, width: 0.4 m, height: 0.4 m}, at: {from_front: 0 m, from_left: 0 m}, opens: {drawer: {kind: drawer, side: right}}}',
      ),
    );
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('pot');
  });
});

describe('a lid', () => {
  const bench = (more = '', side = 'left') =>
    thing('bench', [1, 0.5, 0.4], [0, 0, 0], `, opens: {lid: {kind: lid, side: ${side}${more}}}`);

  test('under a cushion opens only without it', async () => {
    const finding = await of(
      withThings(
        bench(),
        '  cushion: {mass: 2 kg, on: bench, size: {length: 1 m, width: 0.5 m, height: 0.1 m}, at: {from_front: 0 m, from_left: 0 m}}',
      ),
    );
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toBe('lid of bench opens only with cushion taken off it.');
  });

  test('beside which the cushion lies is free', async () => {
    const finding = await of(
      withThings(
        bench(', width: 0.5 m, from_left: 0 m'),
        // Looked at from the left, the left end of the bench is its front end.
        '  cushion: {mass: 2 kg, on: bench, size: {length: 0.5 m, width: 0.5 m, height: 0.1 m}, at: {from_front: 0.5 m, from_left: 0 m}}',
      ),
    );
    expect(finding.verdict).toBe('pass');
  });

  // Hinged at the wall, 500 mm deep: its edge passes 400 mm out at 300 mm above the bench, 700 mm above the floor.
  test('runs on an arc: a locker at 400 mm out and 300 mm up is just touched', async () => {
    const locker = (left: number, above: number) => thing('locker', [1, 0.3, 0.3], [0, left, above]);
    expect((await of(withThings(bench(), locker(0.4, 0.7)))).verdict).toBe('pass');
    const finding = await of(withThings(bench(), locker(0.398, 0.698)));
    expect(finding.verdict).toBe('fail');
    // √(398² + 298²) = 497.2 mm.
    expect(measured(finding)).toBeCloseTo(0.5 - Math.hypot(0.398, 0.298), 9);
  });

  test('under the roof: as deep as there is height, and no deeper', async () => {
    const chest = (depth: number) =>
      withThings(
        thing(
          'chest',
          [1, 0.6, 1.6],
          [0, 0, 0],
          `, opens: {lid: {kind: lid, side: left, depth: ${depth} m}}`,
        ),
      );
    expect((await of(chest(0.4))).verdict).toBe('pass');
    const finding = await of(chest(0.5));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('the roof (by 100 mm)');
    expect(words(finding.remedy)).toContain('A lid no deeper than 400 mm is free of it.');
  });

  test('hinged away from a wall that leans in, it comes up clear of it', async () => {
    // The wall leans in by 100 mm a metre: at h above the bench by h / 10 + 40; the lid's edge is off it by
    // 500 − √(500² − h²) more than at its foot. Set 60 mm from the wall, it is always clear.
    const bay =
      '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m, profile: [{above_floor: 0 m, width: 2 m}, {above_floor: 2 m, width: 1.6 m}]}';
    const set = (left: number, side: string) =>
      plan(
        things(thing('bench', [1, 0.5, 0.4], [0, left, 0], `, opens: {lid: {kind: lid, side: ${side}}}`)),
        {
          load_bay: bay,
        },
      );
    expect((await of(set(0.06, 'right'))).verdict).toBe('pass');
    // Hinged at the wall it stands upright there and needs all of 90 mm at 900 mm.
    const finding = await of(set(0.06, 'left'));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.03, 9);
    expect((await of(set(0.09, 'left'))).verdict).toBe('pass');
  });
});

describe('the shell of the van', () => {
  const chest = thing(
    'chest',
    [0.5, 0.5, 0.5],
    [1, 1.2, 0],
    ', opens: {drawer: {kind: drawer, side: right}}',
  );

  test('lets nothing out through a wall', async () => {
    const finding = await of(withThings(chest));
    expect(finding.verdict).toBe('fail');
    // From 1.7 m to 2.2 m in a bay of 2 m.
    expect(measured(finding)).toBeCloseTo(0.2, 9);
    expect(words(finding.reason)).toContain('the right wall (by 200 mm)');
    expect(words(finding.remedy)).toContain('A travel of at most 300 mm');
  });

  test.each([
    ['a door as wide', 'door', 1, 0.5, 'warn'],
    ['a narrower door', 'door', 1, 0.45, 'fail'],
    ['a window', 'window', 1, 0.5, 'fail'],
  ])('but through %s', async (_, kind, from, wide, verdict) => {
    const openings = `{way: {in: right wall, kind: ${kind}, length: ${wide} m, height: 1 m, at: {from_front: ${from} m, above_floor: 0 m}}}`;
    const finding = await of(plan(things(chest), { openings }));
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'warn') expect(words(finding.reason)).toContain('only with way open');
  });

  test('counts its rear doors where the plan says how thick they are', async () => {
    const slide = thing(
      'slide',
      [0.5, 0.5, 0.3],
      [3, 0, 0],
      ', opens: {drawer: {kind: drawer, side: rear, travel: 0.45 m}}',
    );
    const bay =
      '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m, rear_door_thickness: 100 mm}';
    expect((await of(withThings(slide))).verdict).toBe('pass');
    const finding = await of(plan(things(slide), { load_bay: bay }));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('the rear doors (by 50 mm)');
    const openings = '{rear: {in: rear doors, kind: door, width: 2 m, height: 1.8 m, at: {from_left: 0 m}}}';
    expect((await of(plan(things(slide), { load_bay: bay, openings }))).verdict).toBe('warn');
  });
});

describe('two that open', () => {
  const box = (name: string, front: number, left: number, opens: string) =>
    thing(name, [0.5, 0.5, 1], [front, left, 0], `, opens: {${opens}}`);

  test('into the same room warn once, and neither is called free', async () => {
    const found = await allOf(
      withThings(
        box('one', 0, 0, 'drawer: {kind: drawer, side: right}'),
        box('two', 0, 1.4, 'drawer: {kind: drawer, side: left}'),
        box('three', 2, 0, 'drawer: {kind: drawer, side: right}'),
      ),
    );
    expect(found.map(({ verdict, subject }) => [verdict, subject])).toEqual([
      ['warn', 'drawer of one and drawer of two'],
      ['pass', 'drawer of three'],
    ]);
    const [clash] = found;
    // 0.5 to 1.0 and 0.9 to 1.4.
    expect(clash && measured(clash)).toBeCloseTo(0.1, 9);
  });

  test('that only touch are both free, in one finding with their number', async () => {
    const found = await allOf(
      withThings(
        box('one', 0, 0, 'drawer: {kind: drawer, side: right}'),
        box('two', 0, 1.5, 'drawer: {kind: drawer, side: left}'),
      ),
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ verdict: 'pass', measured: { kind: 'count', value: 2 } });
  });

  // Two leaves of one unit, each half as wide as its face: hinged outside they meet in the middle, shut.
  test.each([
    ['left', 'right'],
    ['right', 'left'],
    ['left', 'left'],
  ])('in one face, hinged %s and %s, do not meet', async (first, second) => {
    const pair = thing(
      'unit',
      [1, 0.5, 1],
      [0, 0, 0],
      `, opens: {a: {kind: door, side: right, hinge: ${first}, width: 0.5 m, from_left: 0 m}, b: {kind: door, side: right, hinge: ${second}, width: 0.5 m, from_left: 0.5 m}}`,
    );
    expect((await of(withThings(pair))).verdict).toBe('pass');
  });

  test('round a corner of one thing meet nowhere', async () => {
    const corner = thing(
      'unit',
      [0.6, 0.6, 1],
      [1, 0, 0],
      ', opens: {a: {kind: door, side: right, hinge: left}, b: {kind: door, side: rear, hinge: right}}',
    );
    expect((await of(withThings(corner))).verdict).toBe('pass');
  });

  test('a drawer behind the door of its own cupboard is no clash', async () => {
    const found = await allOf(
      withThings(
        cupboard('kind: door, side: right'),
        '  tray: {mass: 1 kg, in: cupboard, size: {length: 0.4 m, width: 0.4 m, height: 0.1 m}, at: {from_front: 0.05 m, from_left: 0 m}, opens: {drawer: {kind: drawer, side: right}}}',
      ),
    );
    expect(found.map(({ verdict }) => verdict)).toEqual(['pass']);
  });
});

describe('a seat of the cab that turns', () => {
  // Its pivot is 0.3 m before the load bay: with 400 mm it reaches 100 mm into it.
  const seat = (more: string) =>
    plan(more).replace(
      'stores: {}',
      'stores: {}\npeople: {seats: {passenger: {mass: 70 kg, at: {from_front: -0.3 m, from_left: 0.5 m}, swivel_radius: 0.4 m}}}',
    );

  test('is not held to the shell', async () => {
    expect(await of(seat(''))).toMatchObject({ verdict: 'pass', subject: 'passenger seat' });
  });

  test('hits a unit at the front of the load bay, by how far it reaches in', async () => {
    const finding = await of(seat(things(thing('unit', [0.5, 1, 1], [0.05, 0, 0]))));
    expect(finding).toMatchObject({ verdict: 'fail', path: ['people', 'seats', 'passenger'] });
    expect(measured(finding)).toBeCloseTo(0.05, 6);
    expect(words(finding.reason)).toContain('passenger seat cannot turn fully');
    expect((await of(seat(things(thing('unit', [0.5, 1, 1], [0.1, 0, 0]))))).verdict).toBe('pass');
  });

  test('does not hit its own base', async () => {
    expect((await of(seat(things(thing('base', [0.4, 0.4, 0.1], [-0.5, 0.3, 0.3]))))).verdict).toBe('pass');
  });
});

test.each([
  { text: plan(''), missing: ['fixtures.NAME.opens'] },
  { text: plan('', { load_bay: undefined }), missing: ['van.load_bay'] },
])('without anything that opens it is not checked: $missing', async ({ text, missing }) => {
  expect(await of(text)).toMatchObject({ verdict: 'not checked', missing });
});
