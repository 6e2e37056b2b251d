import { describe, expect, test } from 'vitest';
import { assumptionsOf, bodyOf, buildOf, placeOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** Centres in metres: behind the front axle (bay from 1 to 5), right of the middle (−1 to 1), above the floor (0 to 2). */
const place = async (fixtures: string, name = 'box') =>
  placeOf(await buildOf(plan(`fixtures: {${fixtures}}`)), name);

const box = (at: string, rest = '') =>
  `box: {mass: 1 kg, size: {length: 0.4 m, width: 0.6 m, height: 0.8 m}, at: ${at}${rest}}`;

describe('a thing of 0.4 × 0.6 × 0.8 m in the load bay, by its nearest faces', () => {
  test.each([
    // 1 + 0.5 + 0.2; −1 + 0.1 + 0.3; 0.3 + 0.4
    { at: '{from_front: 0.5 m, from_left: 0.1 m, above_floor: 0.3 m}', expected: [1.7, -0.6, 0.7] },
    // 5 − 0.5 − 0.2; 1 − 0.1 − 0.3
    { at: '{from_rear: 0.5 m, from_right: 0.1 m, above_floor: 0 m}', expected: [4.3, 0.6, 0.4] },
    { at: '{from_front: 0 m, centred: true, above_floor: 0 m}', expected: [1.2, 0, 0.4] },
    // Into the cab, and under the floor.
    { at: '{from_front: -1 m, centred: true, above_floor: -0.9 m}', expected: [0.2, 0, -0.5] },
  ])('$at', async ({ at, expected }) => {
    const found = await place(box(at));
    expected.forEach((value, axis) => {
      expect(found[axis]).toBeCloseTo(value, 12);
    });
  });

  test('without a size it is a point at the place given', async () => {
    const at = '{from_front: 0.5 m, from_right: 0.1 m, above_floor: 0.3 m}';
    expect(await place(`box: {mass: 1 kg, at: ${at}}`)).toEqual([1.5, 0.9, 0.3]);
    const build = await buildOf(plan(`fixtures: {box: {mass: 1 kg, at: ${at}}}`));
    expect(assumptionsOf(build).join()).toContain('a point at the place given, since it has no size');
  });
});

describe('in something', () => {
  // The wardrobe: x from 2 to 3, y from −1 to −0.4, z from 0.1 to 1.9.
  const wardrobe =
    'wardrobe: {mass: 20 kg, size: {length: 1 m, width: 0.6 m, height: 1.8 m}, at: {from_front: 1 m, from_left: 0 m, above_floor: 0.1 m}}';
  const inside = (rest: string) =>
    place(
      `${wardrobe}, box: {mass: 1 kg, in: wardrobe, size: {length: 0.2 m, width: 0.2 m, height: 0.2 m}${rest}}`,
    );

  test.each([
    // 2 + 0.1 + 0.1; −1 + 0.05 + 0.1; 0.1 + 1 + 0.1
    { at: ', at: {from_front: 0.1 m, from_left: 0.05 m, above_floor: 1 m}', expected: [2.2, -0.85, 1.2] },
    // 3 − 0.1 − 0.1; −0.4 − 0.05 − 0.1; on its floor: 0.1 + 0.1
    { at: ', at: {from_rear: 0.1 m, from_right: 0.05 m}', expected: [2.8, -0.55, 0.2] },
    { at: ', at: {from_front: 0 m, centred: true}', expected: [2.1, -0.7, 0.2] },
    // Somewhere in it: its middle.
    { at: '', expected: [2.5, -0.7, 0.2] },
  ])('$at', async ({ at, expected }) => {
    const found = await inside(at);
    expected.forEach((value, axis) => {
      expect(found[axis]).toBeCloseTo(value, 12);
    });
  });

  // It can be up to (1 − 0.2) / 2 = 0.4 m from the middle either way: u = 0.4 / √3.
  test('somewhere in it is as uncertain as there is room', async () => {
    const build = await buildOf(
      plan(
        `fixtures: {${wardrobe}, box: {mass: 1 kg, in: wardrobe, size: {length: 0.2 m, width: 0.2 m, height: 0.2 m}}}`,
      ),
    );
    const { x, y } = bodyOf(build, 'box').position;
    expect(x.errors.map(({ standard }) => standard)).toEqual([0.4 / Math.sqrt(3)]);
    expect(y.errors[0]?.standard).toBeCloseTo(0.2 / Math.sqrt(3), 12);
    expect(assumptionsOf(build).join()).toContain('box: somewhere in wardrobe, taken at its middle');
  });
});

describe('on something', () => {
  // The unit is 0.9 m high and stands on the floor; its length runs from x = 1 to x = 2.
  const unit =
    'unit: {mass: 20 kg, size: {length: 1 m, width: 0.5 m, height: 0.9 m}, at: {from_front: 0 m, from_right: 0 m}, on: floor}';

  test('it stands on top', async () => {
    const found = await place(
      `${unit}, box: {mass: 1 kg, on: unit, size: {length: 0.4 m, width: 0.5 m, height: 0.1 m}, at: {from_front: 0 m, from_left: 0 m}}`,
    );
    [1.2, 0.75, 0.95].forEach((value, axis) => {
      expect(found[axis]).toBeCloseTo(value, 12);
    });
  });

  test('above_floor counts from the top', async () => {
    const found = await place(
      `${unit}, box: {mass: 1 kg, on: unit, at: {above_floor: 0.3 m, centred: true}}`,
    );
    expect(found[2]).toBeCloseTo(1.2, 12);
  });

  test('on the floor is no host', async () => {
    const build = await buildOf(plan(`fixtures: {${unit}}`));
    expect(bodyOf(build, 'unit').host).toBeUndefined();
    expect(placeOf(build, 'unit')[2]).toBeCloseTo(0.45, 12);
  });
});

// shelf unit x: 1 + 1 = 2 …; drawer in it at 0.1: 2.1 …; tray in that at 0.05: 2.15 …; knife in that, a point at 0.02: 2.17.
// y: −1 + 0.1 + 0.05 + 0.02 + 0.01 = −0.82. z: 0.2 + 0.3 + 0.04 + 0.01 = 0.55.
test('nested three deep, in any order of writing', async () => {
  const sized = (length: string) => `size: {length: ${length}, width: ${length}, height: ${length}}`;
  const entries = [
    'knife: {mass: 1 kg, in: tray, at: {from_front: 0.02 m, from_left: 0.01 m, above_floor: 0.01 m}}',
    `tray: {mass: 1 kg, in: drawer, ${sized('0.3 m')}, at: {from_front: 0.05 m, from_left: 0.02 m, above_floor: 0.04 m}}`,
    `drawer: {mass: 1 kg, in: shelf unit, ${sized('0.5 m')}, at: {from_front: 0.1 m, from_left: 0.05 m, above_floor: 0.3 m}}`,
    `shelf unit: {mass: 1 kg, ${sized('1 m')}, at: {from_front: 1 m, from_left: 0.1 m, above_floor: 0.2 m}}`,
  ];
  for (const order of [entries, [...entries].reverse()]) {
    const found = await place(order.join(', '), 'knife');
    [2.17, -0.82, 0.55].forEach((value, axis) => {
      expect(found[axis]).toBeCloseTo(value, 12);
    });
  }
});

describe('heights where nothing is said', () => {
  test('a thing with a height stands on the floor', async () => {
    const build = await buildOf(
      plan('fixtures: {box: {mass: 1 kg, size: {height: 0.8 m}, at: {from_front: 1 m, centred: true}}}'),
    );
    expect(placeOf(build, 'box')[2]).toBeCloseTo(0.4, 12);
    expect(assumptionsOf(build).join()).toContain('box: standing on the floor');
  });

  test('a thing without one is anywhere between floor and ceiling', async () => {
    const build = await buildOf(plan('fixtures: {box: {mass: 1 kg, at: {from_front: 1 m, centred: true}}}'));
    expect(placeOf(build, 'box')[2]).toBe(1);
    expect(bodyOf(build, 'box').position.z.errors[0]?.standard).toBeCloseTo(1 / Math.sqrt(3), 12);
    expect(assumptionsOf(build).join()).toContain('at any height, taken at the middle');
  });
});

describe('tolerances of a place', () => {
  const errors = async (at: string, size = '') => {
    const build = await buildOf(plan(`fixtures: {box: {mass: 1 kg${size}, at: ${at}}}`));
    const { x, y, z } = bodyOf(build, 'box').position;
    return { x: x.errors, y: y.errors, z: z.errors };
  };

  test('come from where it was measured, with the sign of the side it was measured from', async () => {
    const { x, y, z } = await errors(
      '{from_rear: 1 m ± 0.1 m, from_left: 0 m ± 0.2 m, above_floor: 0 m ± 0.3 m}',
    );
    expect(x).toEqual([{ source: 'fixtures.box.at.lengthways', standard: -0.1 / Math.sqrt(3) }]);
    expect(y).toEqual([{ source: 'fixtures.box.at.sideways', standard: 0.2 / Math.sqrt(3) }]);
    expect(z).toEqual([{ source: 'fixtures.box.at.upwards', standard: 0.3 / Math.sqrt(3) }]);
  });

  // A longer thing has its centre further from the face it was measured to: half the error of its length.
  test('and half of the size', async () => {
    const size = ', size: {length: 1 m ± 0.1 m}';
    const front = await errors('{from_front: 0 m, centred: true, above_floor: 0 m}', size);
    expect(front.x.map(({ standard }) => standard)).toEqual([0.05 / Math.sqrt(3)]);
    const rear = await errors('{from_rear: 0 m, centred: true, above_floor: 0 m}', size);
    expect(rear.x.map(({ standard }) => standard)).toEqual([-0.05 / Math.sqrt(3)]);
  });

  // Wherever the bay begins, everything in it is out by the same, and what is in a thing is out with the thing.
  test('are handed on to what stands inside', async () => {
    const build = await buildOf(
      plan(
        `fixtures:
  unit: {mass: 1 kg, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 1 m ± 0.1 m, centred: true}, on: floor}
  box: {mass: 1 kg, in: unit, at: {from_front: 0.5 m, centred: true, above_floor: 0 m}}`,
        { load_bay: '{behind_front_axle: 1 m ± 0.02 m, length: 4 m, width: 2 m, height: 2 m}' },
      ),
    );
    expect(bodyOf(build, 'box').position.x.errors).toEqual([
      { source: 'van.load_bay.behind_front_axle', standard: 0.02 / Math.sqrt(3) },
      { source: 'fixtures.unit.at.lengthways', standard: 0.1 / Math.sqrt(3) },
    ]);
  });
});
