import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/build/layout.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

async function layoutOf(rest: string, van = {}): Promise<Layout> {
  const { layout } = await buildOf(plan(rest, van));
  if (!layout) throw new Error('there is no layout');
  return layout;
}

const cupboard = 'size: {length: 0.6 m, width: 0.5 m, height: 0.9 m}';

/** The bay is 4 × 2 × 2 m. */
describe('the room of a thing', () => {
  test('is counted from the front, the centre line and the floor', async () => {
    const { solids } = await layoutOf(
      `fixtures: {unit: {mass: 9 kg, ${cupboard}, at: {from_rear: 0.4 m, from_right: 0.1 m}}}`,
    );
    const [box] = solids.map((solid) => solid.box);
    for (const [edge, valueM] of Object.entries({
      leastXM: 3,
      mostXM: 3.6,
      leastYM: 0.4,
      mostYM: 0.9,
      bottomM: 0,
      topM: 0.9,
    }))
      expect(box).toHaveProperty(edge, expect.closeTo(valueM, 9));
  });

  test('of a thing in or on another is counted from there, and the chain of hosts is known', async () => {
    const { solids } = await layoutOf(`fixtures:
  unit: {mass: 9 kg, ${cupboard}, at: {from_front: 1 m, from_left: 0 m}}
  top: {mass: 9 kg, size: {length: 0.6 m, width: 0.5 m, height: 0.03 m}, on: unit, at: {from_front: 0 m, from_left: 0 m}}
  hob: {mass: 3 kg, size: {length: 0.3 m, width: 0.3 m, height: 0.1 m}, on: top, at: {from_front: 0.1 m, from_left: 0.1 m, above_floor: -0.08 m}}
  fridge: {mass: 20 kg, size: {length: 0.5 m, width: 0.4 m, height: 0.6 m}, in: unit, at: {from_front: 0.05 m, from_left: 0 m, above_floor: 0.1 m}}`);
    const hob = solids.find(({ name }) => name === 'hob');
    expect(hob).toMatchObject({ hosts: ['top', 'unit'], isInside: false });
    expect(hob?.box.bottomM).toBeCloseTo(0.85, 9);
    const fridge = solids.find(({ name }) => name === 'fridge');
    expect(fridge).toMatchObject({ hosts: ['unit'], isInside: true });
    expect(fridge?.box.leastXM).toBeCloseTo(1.05, 9);
    expect(fridge?.box.topM).toBeCloseTo(0.7, 9);
  });

  test.each([
    ['at: {from_front: 0 m, from_left: 0 m}', 'inside'],
    ['at: {from_front: -0.3 m, from_left: 0 m}', 'inside'],
    ['at: {from_front: -0.6 m, from_left: 0 m}', 'in the cab'],
    ['at: {from_front: 0 m, from_left: 0 m, above_floor: -0.9 m}', 'under the floor'],
    ['at: {from_front: 0 m, from_left: 0 m, above_floor: 2 m}', 'on the roof'],
    ['at: {from_front: 4 m, from_left: 0 m}', 'behind the doors'],
  ])('%s is %s', async (at, whereabouts) => {
    const { solids } = await layoutOf(`fixtures: {unit: {mass: 9 kg, ${cupboard}, ${at}}}`);
    expect(solids[0]?.whereabouts).toBe(whereabouts);
  });
});

describe('a thing without a known room', () => {
  test.each([
    ['mass: 9 kg', ['size.length', 'size.width', 'size.height', 'at.from_front', 'at.from_left']],
    [`mass: 9 kg, ${cupboard}, at: {from_front: 0 m}`, ['at.from_left']],
    ['mass: 9 kg, size: {length: 1 m, width: 1 m}, at: {from_front: 0 m, centred: true}', ['size.height']],
  ])('%s lacks %s', async (keys, missing) => {
    const { solids, unplaced } = await layoutOf(`fixtures: {unit: {${keys}}}`);
    expect(solids).toEqual([]);
    expect(unplaced).toEqual([{ name: 'unit', path: ['fixtures', 'unit'], missing }]);
  });

  test('takes its contents with it', async () => {
    const { unplaced } = await layoutOf(`fixtures:
  unit: {mass: 9 kg, ${cupboard}}
  box: {mass: 1 kg, in: unit, size: {length: 0.1 m, width: 0.1 m, height: 0.1 m}, at: {from_front: 0 m, from_left: 0 m}}`);
    expect(unplaced.map(({ name, missing }) => [name, missing])).toEqual([
      ['unit', ['at.from_front', 'at.from_left']],
      ['box', ['unit.at']],
    ]);
  });

  test('is one that a chain of hosts leads out of sight', async () => {
    const far = 'size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 25 m, from_left: 0 m}';
    const { unplaced } = await layoutOf(
      `fixtures: {a: {mass: 1 kg, ${far}}, b: {mass: 1 kg, in: a, ${far}}}`,
    );
    expect(unplaced).toMatchObject([{ name: 'b', missing: ['at'] }]);
  });

  test('is not one that takes no room', async () => {
    const { solids, unplaced } = await layoutOf(
      `fixtures: {wires: {mass: 9 kg, solid: false}, curtain: {mass: 1 kg, solid: false, ${cupboard}, at: {from_front: 0 m, centred: true}}}`,
    );
    expect([solids, unplaced]).toEqual([[], []]);
  });
});

describe('the van itself', () => {
  test('has two wheel arches, a lining on its doors, and what else stands in the way', async () => {
    const { fixedParts, unplacedParts } = await layoutOf('', {
      wheel_arches: '{from_front: 2 m, length: 0.8 m, width: 0.2 m, height: 0.3 m}',
      obstructions:
        '{pillar: {size: {length: 0.1 m, width: 0.1 m, height: 1.4 m}, at: {from_front: 0 m, from_right: 0 m}}, step: {size: {length: 1 m, width: 0.2 m, height: 0.2 m}, at: {from_front: 0 m}, walkable: true}}',
    });
    expect(fixedParts.map(({ name, walkable }) => [name, walkable])).toEqual([
      ['left wheel arch', false],
      ['right wheel arch', false],
      ['pillar', false],
    ]);
    expect(fixedParts[1]?.prism).toMatchObject({ bottomM: 0, topM: 0.3 });
    expect(fixedParts[1]?.prism.outline.map(({ yM }) => yM)).toEqual(
      [0.8, 0.8, 1, 1].map((yM) => expect.closeTo(yM, 9)),
    );
    expect(unplacedParts).toEqual([
      { name: 'step', path: ['van', 'obstructions', 'step'], missing: ['at.from_left'] },
    ]);
  });

  test('lies open where the plan says so, flat on its surface', async () => {
    const { openings, unplacedOpenings } = await layoutOf('', {
      openings: `{side door: {kind: door, in: left wall, length: 1 m, height: 1.6 m, at: {from_front: 0.2 m}},
    window: {kind: window, in: right wall, length: 0.7 m, height: 0.4 m, at: {from_front: 1 m}},
    fan: {kind: vent, in: ceiling, length: 0.4 m, width: 0.4 m, at: {from_front: 1 m, centred: true}},
    rear doors: {kind: door, in: rear doors, width: 1.6 m, height: 1.7 m, at: {centred: true}, escape: true},
    wrong sides: {kind: window, in: left wall, length: 1 m, width: 1 m, at: {from_front: 0 m, above_floor: 1 m}},
    old: {in: left wall, length: 1 m, height: 1 m}}`,
    });
    const boxes = Object.fromEntries(openings.map(({ name, box }) => [name, box]));
    expect(boxes['side door']).toMatchObject({
      leastXM: expect.closeTo(0.2, 9),
      leastYM: -1,
      mostYM: -1,
      bottomM: 0,
    });
    expect(boxes.fan).toMatchObject({ leastYM: expect.closeTo(-0.2, 9), bottomM: 2, topM: 2 });
    expect(boxes['rear doors']).toMatchObject({ leastXM: 4, mostXM: 4, mostYM: expect.closeTo(0.8, 9) });
    expect(openings.find(({ name }) => name === 'rear doors')).toMatchObject({
      escape: true,
      sidesM: [1.7, 1.6],
    });
    expect(unplacedOpenings.map(({ name, missing }) => [name, missing])).toEqual([
      ['window', ['at.above_floor']],
      ['wrong sides', ['height']],
      ['old', ['kind', 'at.from_front', 'at.above_floor']],
    ]);
  });
});

test('what lies too far away for the geometry is listed and not guessed into a place', async () => {
  const { fixedParts, unplacedParts, openings, unplacedOpenings } = await layoutOf('', {
    wheel_arches: '{from_front: 25 m, length: 30 m, width: 0.2 m, height: 0.3 m}',
    obstructions:
      '{beam: {size: {length: 30 m, width: 0.1 m, height: 1 m}, at: {from_front: 20 m, from_left: 0 m}}}',
    openings: '{gate: {kind: door, in: left wall, length: 30 m, height: 1 m, at: {from_front: 20 m}}}',
  });
  expect(fixedParts).toEqual([]);
  expect(unplacedParts.map(({ name, missing }) => [name, missing])).toEqual([
    ['wheel arches', ['from_front']],
    ['beam', ['at']],
  ]);
  expect(openings).toEqual([]);
  expect(unplacedOpenings.map(({ name, missing }) => [name, missing])).toEqual([['gate', ['at']]]);
});
