import { describe, expect, test } from 'vitest';
import { outlineArea } from '../../src/calc/space/plane.ts';
import { bodyOf, buildOf, placeOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

/** A cubic metre of it weighs this much; taken from the plan's own box, so that a mass is a volume. */
const densityOf = async (): Promise<number> => massOf('size: {length: 1 m, width: 1 m, height: 1 m}');

const thing = (keys: string) => plan(`fixtures: {block: {material: spruce, ${keys}}}`);

const massOf = async (keys: string): Promise<number> => bodyOf(await buildOf(thing(keys)), 'block').massKg;

const box = 'size: {length: 2 m, width: 1 m, height: 0.5 m}';
const at = 'at: {from_front: 0 m, from_left: 0 m, above_floor: 0 m}';

describe('what a thing of one material weighs', () => {
  test.each([
    ['a box', box, 1],
    [
      'a cylinder: π/4 of its box',
      'shape: cylinder, size: {length: 1 m, width: 1 m, height: 1 m}',
      Math.PI / 4,
    ],
    // 2 · 1 − 0.5 · 0.4, half a metre high
    ['an L', `${box}, cut_out: {corner: rear left, length: 0.5 m, width: 0.4 m}`, 0.9],
    [
      'a triangle: half of its box',
      `${box}, outline: [{from_front: 0 m, from_left: 0 m}, {from_front: 2 m, from_left: 0 m}, {from_front: 0 m, from_left: 1 m}]`,
      0.5,
    ],
  ])('%s', async (_, keys, volumeM3) => {
    expect(await massOf(keys)).toBeCloseTo(volumeM3 * (await densityOf()), 9);
  });
});

/** The bay begins 1 m behind the front axle and is 2 m wide, so its left wall is at −1 m. */
describe('where it acts', () => {
  test.each([
    ['a box: its middle', box, [2, -0.5]],
    // A third of the way from the right angle.
    [
      'a triangle: its centroid',
      `${box}, outline: [{from_front: 0 m, from_left: 0 m}, {from_front: 2 m, from_left: 0 m}, {from_front: 0 m, from_left: 1 m}]`,
      [1 + 2 / 3, -1 + 1 / 3],
    ],
    // (2 · 1 · (1, 0.5) − 0.5 · 0.4 · (1.75, 0.2)) / 1.8, from the front left corner
    [
      'an L without its rear left corner',
      `${box}, cut_out: {corner: rear left, length: 0.5 m, width: 0.4 m}`,
      [1 + (2 - 0.2 * 1.75) / 1.8, -1 + (1 - 0.2 * 0.2) / 1.8],
    ],
    [
      'an L without its front right corner',
      `${box}, cut_out: {corner: front right, length: 0.5 m, width: 0.4 m}`,
      [1 + (2 - 0.2 * 0.25) / 1.8, -1 + (1 - 0.2 * 0.8) / 1.8],
    ],
  ])('%s', async (_, keys, [x, y]) => {
    const [foundX, foundY] = placeOf(await buildOf(thing(`${keys}, ${at}`)), 'block');
    expect(foundX).toBeCloseTo(x ?? Number.NaN, 9);
    expect(foundY).toBeCloseTo(y ?? Number.NaN, 9);
  });
});

describe('the outline on the plan', () => {
  const outlineOf = async (keys: string) => {
    const solid = (await buildOf(thing(`${keys}, ${at}`))).layout?.solids[0];
    if (!solid) throw new Error('nothing was laid out');
    return solid;
  };

  test('of an L leaves out the corner that is cut, whichever it is', async () => {
    for (const corner of ['front left', 'front right', 'rear left', 'rear right']) {
      const { prism, box: bounds } = await outlineOf(
        `${box}, cut_out: {corner: ${corner}, length: 0.5 m, width: 0.4 m}`,
      );
      expect(outlineArea(prism.outline)).toBeCloseTo(1.8, 9);
      expect(bounds).toEqual({ leastXM: 0, mostXM: 2, leastYM: -1, mostYM: 0, bottomM: 0, topM: 0.5 });
      const cutAt = { xM: corner.startsWith('rear') ? 2 : 0, yM: corner.endsWith('right') ? 0 : -1 };
      expect(prism.outline).not.toContainEqual(cutAt);
      expect(prism.outline).toHaveLength(6);
    }
  });

  test('of a cylinder is as long and as wide as its box', async () => {
    const { prism, box: bounds } = await outlineOf(
      'shape: cylinder, size: {length: 0.4 m, width: 0.4 m, height: 0.3 m}',
    );
    expect(bounds.mostXM - bounds.leastXM).toBeCloseTo(0.4, 9);
    expect(bounds.mostYM - bounds.leastYM).toBeCloseTo(0.4, 9);
    expect(outlineArea(prism.outline)).toBeCloseTo(Math.PI * 0.04, 3);
  });
});
