import { describe, expect, test } from 'vitest';
import type { Box3, Sweep } from '../../src/build/layout.ts';
import { hingedOtherwise, sweepsOf, withReach } from '../../src/build/sweeps.ts';
import { boundsOf, outlineArea } from '../../src/calc/space/plane.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** A unit 1 m long, 0.5 m wide and 0.9 m high against the left wall, 1 m from the front; the bay is 2 m wide. */
const unitWith = async (opens: string): Promise<readonly Sweep[]> => {
  const { layout } = await buildOf(
    plan(
      `fixtures: {unit: {mass: 10 kg, size: {length: 1 m, width: 0.5 m, height: 0.9 m}, at: {from_front: 1 m, from_left: 0 m, above_floor: 0 m}, opens: {it: ${opens}}}}`,
    ),
  );
  return layout?.sweeps ?? [];
};
const swept = async (opens: string): Promise<Sweep> => {
  const [sweep, ...more] = await unitWith(opens);
  if (!sweep || more.length > 0) throw new Error('not one sweep');
  return sweep;
};
/** Least x, most x, least y, most y, bottom and top. */
const extent = ({ prism: { outline, bottomM, topM } }: Sweep): readonly number[] => {
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(outline);
  return [leastXM, mostXM, leastYM, mostYM, bottomM, topM];
};
const expectExtent = (sweep: Sweep, expected: readonly number[]) =>
  expected.forEach((value, index) => {
    expect(extent(sweep)[index], `extent ${index}`).toBeCloseTo(value, 3);
  });

describe('a door', () => {
  // Someone who looks at the right face of the unit, that is to the left, has the rear on their left hand.
  test.each([
    ['left', 2],
    ['right', 1],
  ])('in the right face, hinged at its %s end: a quarter disc about x = %s', async (hinge, hingeXM) => {
    const sweep = await swept(`{kind: door, side: right, hinge: ${hinge}, width: 1 m}`);
    expectExtent(sweep, [1, 2, -0.5, 0.5, 0, 0.9]);
    expect(sweep.prism.outline[0]).toEqual({ xM: hingeXM, yM: -0.5 });
    // Drawn about the arc: at most 0.25 mm out.
    expect(outlineArea(sweep.prism.outline)).toBeGreaterThanOrEqual(Math.PI / 4 - 1e-9);
    expect(outlineArea(sweep.prism.outline)).toBeLessThan(Math.PI / 4 + 0.0004);
  });

  test.each([
    // 200 mm from the left as one looks at it; 500 mm wide, from 100 mm to 700 mm above the foot.
    ['right', [1.3, 1.8, -0.5, 0, 0.1, 0.7]],
    ['left', [1.2, 1.7, -1.5, -1, 0.1, 0.7]],
  ] as const)('in a part of the %s face', async (side, expected) => {
    const sweep = await swept(
      `{kind: door, side: ${side}, width: 0.5 m, from_left: 0.2 m, above_floor: 0.1 m, height: 0.6 m}`,
    );
    expectExtent(sweep, expected);
  });

  test('narrower, it keeps its hinge', async () => {
    const sweep = withReach(await swept('{kind: door, side: right, hinge: left, width: 1 m}'), 0.4);
    expectExtent(sweep, [1.6, 2, -0.5, -0.1, 0, 0.9]);
    expect(sweep.prism.outline[0]).toEqual({ xM: 2, yM: -0.5 });
  });

  test('hinged otherwise, it sweeps the mirror image, and back again the same', async () => {
    const sweep = await swept('{kind: door, side: right, hinge: left, width: 0.6 m, from_left: 0.1 m}');
    const other = hingedOtherwise(sweep);
    expect(other?.prism.outline[0]?.xM).toBeCloseTo(1.3, 9);
    expect(sweep.prism.outline[0]?.xM).toBeCloseTo(1.9, 9);
    expect(other && hingedOtherwise(other)).toEqual(sweep);
  });
});

describe('a drawer', () => {
  test.each([
    ['right', [1, 2, -0.5, 0, 0, 0.9]],
    ['rear', [2, 3, -1, -0.5, 0, 0.9]],
  ] as const)('to the %s comes out as far as its unit is deep', async (side, expected) => {
    expectExtent(await swept(`{kind: drawer, side: ${side}}`), expected);
  });

  test('comes out less far where the plan says so', async () => {
    const sweep = await swept('{kind: drawer, side: right, travel: 0.3 m, width: 0.4 m}');
    expectExtent(sweep, [1.6, 2, -0.5, -0.2, 0, 0.9]);
    expectExtent(withReach(sweep, 0.1), [1.6, 2, -0.5, -0.4, 0, 0.9]);
  });

  test('has no hinge', async () => {
    expect(hingedOtherwise(await swept('{kind: drawer, side: right}'))).toBeUndefined();
  });
});

describe('a lid', () => {
  test.each([
    ['left', [1, 2, -1, -0.6, 0.9, 1.3]],
    ['right', [1, 2, -0.9, -0.5, 0.9, 1.3]],
    ['front', [1, 1.4, -1, -0.5, 0.9, 1.3]],
    ['rear', [1.6, 2, -1, -0.5, 0.9, 1.3]],
  ] as const)('hinged at the %s edge stands on its strip', async (side, expected) => {
    expectExtent(await swept(`{kind: lid, side: ${side}, depth: 0.4 m}`), expected);
  });

  test('less deep, it is less high', async () => {
    const sweep = await swept('{kind: lid, side: left}');
    expectExtent(sweep, [1, 2, -1, -0.5, 0.9, 1.4]);
    expectExtent(withReach(sweep, 0.2), [1, 2, -1, -0.8, 0.9, 1.1]);
  });
});

test('what opens nothing sweeps nothing, and a seat keeps its room', () => {
  const box: Box3 = { leastXM: 0, mostXM: 1, leastYM: 0, mostYM: 1, bottomM: 0, topM: 1 };
  expect(sweepsOf('unit', undefined, box, ['fixtures', 'unit'])).toEqual([]);
  const [door] = sweepsOf('unit', { it: { kind: 'door', side: 'rear' } }, box, ['fixtures', 'unit']);
  if (!door) throw new Error('no door');
  const { leaf, ...bare } = door;
  expect(leaf).toMatchObject({ side: 'rear', hinge: 'left', reachM: 1 });
  expect(withReach(bare, 0.1)).toEqual(bare);
});

describe('what a plan makes larger than can be', () => {
  const sweepIn = async (text: string): Promise<Sweep> => {
    const { layout } = await buildOf(plan(text));
    const [sweep] = layout?.sweeps ?? [];
    if (!sweep) throw new Error('no sweep');
    return sweep;
  };

  test('a lid ends where the outline of its thing does', async () => {
    const sweep = await sweepIn(
      'fixtures: {unit: {mass: 10 kg, size: {length: 1 m, width: 1 m, height: 0.5 m}, outline: [{from_front: 0 m, from_left: 0 m}, {from_front: 0.6 m, from_left: 0 m}, {from_front: 0.6 m, from_left: 1 m}, {from_front: 0 m, from_left: 1 m}], at: {from_front: 1 m, from_left: 0 m}, opens: {it: {kind: lid, side: front, depth: 0.9 m}}}}',
    );
    expectExtent(sweep, [1, 1.6, -1, 0, 0.5, 1.1]);
  });

  test.each([
    'fixtures: {unit: {mass: 10 kg, size: {length: 1 m, width: 1 m, height: 0.5 m}, at: {from_front: 22 m, from_left: 0 m}, opens: {it: {kind: drawer, side: rear, travel: 30 m}}}}',
    'people: {seats: {driver: {at: {from_front: 29 m, from_left: 1 m}, swivel_radius: 30 m}}}',
  ])('what reaches too far ends where geometry does: %s', async (text) => {
    const [, mostXM = 0] = extent(await sweepIn(text));
    expect(mostXM).toBeCloseTo(39, 6);
  });
});
