// Upright bodies, the shell they stand in, and what opens.
import { describe, expect, test } from 'vitest';
import { overlapArea } from '../../../src/calc/space/clip.ts';
import { boundsOf, outlineArea, rectangle } from '../../../src/calc/space/plane.ts';
import {
  type Prism,
  pairsThatOverlap,
  prismOverlap,
  verticalClearingMove,
} from '../../../src/calc/space/prism.ts';
import { heightAt, outOfShell, type Shell, widthAt } from '../../../src/calc/space/shell.ts';
import { doorSweep, drawerTravel, lidSwing, swivelSweep } from '../../../src/calc/space/swing.ts';

const box = (
  [xM, yM, bottomM]: readonly [number, number, number],
  [lengthM, widthM, heightM]: readonly [number, number, number],
): Prism => ({ outline: rectangle(xM, yM, lengthM, widthM), bottomM, topM: bottomM + heightM });

describe('overlap of bodies', () => {
  const bed = box([1.37, 0, 0.82], [1.9, 1.2, 0.08]);
  test('a fridge that is too tall for the bed above it', () => {
    const fridge = box([1.5, 0.1, 0], [0.5, 0.5, 0.85]);
    const shared = prismOverlap(bed, fridge);
    expect(shared?.areaM2).toBeCloseTo(0.25, 9);
    expect(shared?.heightM).toBeCloseTo(0.03, 9);
    expect(shared?.volumeM3).toBeCloseTo(0.0075, 9);
    expect(verticalClearingMove(fridge, bed)).toEqual({
      direction: 'down',
      distanceM: expect.closeTo(0.03, 9),
    });
    expect(verticalClearingMove(bed, fridge)).toEqual({
      direction: 'up',
      distanceM: expect.closeTo(0.03, 9),
    });
  });
  test('under the bed, touching it, is no overlap; nor is 0.4 mm', () => {
    expect(prismOverlap(bed, box([1.5, 0.1, 0], [0.5, 0.5, 0.82]))).toBeUndefined();
    expect(prismOverlap(bed, box([1.5, 0.1, 0], [0.5, 0.5, 0.8204]))).toBeUndefined();
    expect(prismOverlap(bed, box([1.5, 0.1, 0], [0.5, 0.5, 0.8206]))).toBeDefined();
    expect(verticalClearingMove(bed, box([1.5, 0.1, 0], [0.5, 0.5, 0.82]))).toBeUndefined();
  });
  test('side by side: a sliver of 0.4 mm is no overlap however long, 0.6 mm is one', () => {
    expect(prismOverlap(bed, box([0.9, 0, 0.8], [0.4704, 1.2, 0.2]))).toBeUndefined();
    expect(prismOverlap(bed, box([0.9, 0, 0.8], [0.4706, 1.2, 0.2]))?.areaM2).toBeCloseTo(0.00072, 9);
  });
  test('a box in the hollow of an L-shaped bench is free, and may touch it', () => {
    const bench: Prism = {
      outline: [
        { xM: 0, yM: 0 },
        { xM: 1.5, yM: 0 },
        { xM: 1.5, yM: 0.5 },
        { xM: 0.5, yM: 0.5 },
        { xM: 0.5, yM: 1.5 },
        { xM: 0, yM: 1.5 },
      ],
      bottomM: 0,
      topM: 0.45,
    };
    expect(prismOverlap(bench, box([0.6, 0.6, 0], [0.5, 0.5, 0.7]))).toBeUndefined();
    expect(prismOverlap(bench, box([0.4996, 0.4996, 0], [0.9, 0.9, 0.7]))).toBeUndefined();
    expect(prismOverlap(bench, box([0.4994, 0.5, 0], [0.9, 0.9, 0.7]))?.areaM2).toBeCloseTo(0.00054, 9);
    expect(prismOverlap(bench, box([0.4, 0.4, 0], [0.5, 0.5, 0.7]))?.areaM2).toBeCloseTo(0.09, 9);
  });
  test('pairs in a list, by place', () => {
    const pairs = pairsThatOverlap([
      box([2, 0, 0], [1, 1, 1]),
      box([0, 0, 0], [1, 1, 1]),
      box([0.9, 0.9, 0.9], [1.2, 0.5, 0.5]),
      box([0, 0, 1], [1, 1, 1]),
    ]);
    expect(pairs.map(({ first, second }) => [first, second])).toEqual([
      [0, 2],
      [1, 2],
      [2, 3],
    ]);
    expect(pairs[1]?.overlap.volumeM3).toBeCloseTo(0.001, 9);
  });
  test('impossible bodies', () => {
    expect(() => prismOverlap(bed, { ...bed, topM: 0.82 })).toThrow(/top of a body must be above its bottom/);
    expect(() => pairsThatOverlap([{ ...bed, bottomM: Number.NaN }])).toThrow(RangeError);
    expect(() => pairsThatOverlap([{ ...bed, outline: [] }])).toThrow(/at least three corners/);
  });
});

describe('the shell', () => {
  const shell: Shell = {
    lengthM: 3.27,
    centreYM: 0.88,
    profile: [
      { heightM: 1.8, widthM: 1.4 },
      { heightM: 0, widthM: 1.76 },
      { heightM: 1.0, widthM: 1.76 },
    ],
    heights: [
      { fromFrontM: 0, heightM: 1.95 },
      { fromFrontM: 2, heightM: 1.89 },
      { fromFrontM: 3.27, heightM: 1.7 },
    ],
  };
  test('width at a height', () => {
    expect(widthAt(shell.profile, -0.2)).toBe(1.76);
    expect(widthAt(shell.profile, 0.5)).toBe(1.76);
    expect(widthAt(shell.profile, 1.4)).toBeCloseTo(1.58, 12);
    expect(widthAt(shell.profile, 1.8)).toBe(1.4);
    expect(widthAt(shell.profile, 2.5)).toBe(1.4);
    expect(widthAt([{ heightM: 0.3, widthM: 1.7 }], 1.9)).toBe(1.7);
  });
  test('height along the bay', () => {
    expect(heightAt(shell.heights, -1)).toBe(1.95);
    expect(heightAt(shell.heights, 1)).toBeCloseTo(1.92, 12);
    expect(heightAt(shell.heights, 3.27)).toBe(1.7);
    expect(heightAt(shell.heights, 9)).toBe(1.7);
  });

  const upright = { leans: false };
  test('a low bench against the wall is within', () => {
    expect(outOfShell(box([0, 0, 0], [1.8, 0.5, 0.45]), shell, upright)).toEqual([]);
  });
  test('a tall cupboard against the left wall sticks out where the wall leans in most', () => {
    const [first, ...rest] = outOfShell(box([0.2, 0, 0], [0.5, 0.5, 1.6]), shell, upright);
    expect(first?.face).toBe('left');
    // At 1.6 m the bay is 1.49 m wide: each wall is 0.135 m in.
    expect(first?.byM).toBeCloseTo(0.135, 12);
    expect(first?.atHeightM).toBeCloseTo(1.6, 12);
    expect(rest).toEqual([]);
  });
  test('unless it leans with the wall, and then its foot counts', () => {
    expect(outOfShell(box([0.2, 0, 0], [0.5, 0.5, 1.6]), shell, { leans: true })).toEqual([]);
    const hung = outOfShell(box([0.2, 1.36, 1.4], [0.5, 0.4, 0.4]), shell, { leans: true });
    expect(hung.map(({ face }) => face)).toEqual(['right']);
    expect(hung[0]?.byM).toBeCloseTo(0.09, 12);
    expect(hung[0]?.atHeightM).toBeCloseTo(1.4, 12);
  });
  test('a narrow waist between bottom and top is found', () => {
    const waisted: Shell = {
      ...shell,
      profile: [
        { heightM: 0, widthM: 1.7 },
        { heightM: 0.9, widthM: 1.5 },
        { heightM: 1.2, widthM: 1.7 },
      ],
    };
    const out = outOfShell(box([0.2, 0.03, 0], [0.5, 1.7, 1.2]), waisted, upright);
    expect(out.map(({ face }) => face).sort()).toEqual(['left', 'right']);
    for (const { byM, atHeightM } of out) {
      expect(byM).toBeCloseTo(0.1, 12);
      expect(atHeightM).toBe(0.9);
    }
  });
  test('front, rear and the sloping roof, worst first', () => {
    const out = outOfShell(box([-0.02, 0.5, 1], [3.3, 0.5, 0.9]), shell, upright);
    expect(out.map(({ face }) => face)).toEqual(['top', 'front', 'rear']);
    expect(out.map(({ byM }) => byM)).toEqual([
      expect.closeTo(0.2, 9),
      expect.closeTo(0.02, 9),
      expect.closeTo(0.01, 9),
    ]);
    expect(out[0]?.fromFrontM).toBe(3.27);
  });
  test('0.4 mm is within', () => {
    expect(outOfShell(box([-0.0004, 0.5, 0], [1, 0.5, 0.5]), shell, upright)).toEqual([]);
  });
  test('impossible shells', () => {
    expect(() => widthAt([], 1)).toThrow(/width of the load bay must be given at one place at least/);
    expect(() => widthAt([{ heightM: 0, widthM: 0 }], 1)).toThrow(/greater than 0, not 0/);
    expect(() => widthAt([...shell.profile, { heightM: 1, widthM: 1.2 }], 1)).toThrow(/not twice at 1 m/);
    expect(() => heightAt(shell.heights, Number.NaN)).toThrow(/distance from the front/);
    expect(() => outOfShell(box([0, 0, 0], [1, 1, 1]), { ...shell, lengthM: 0 }, upright)).toThrow(
      /length of the load bay/,
    );
  });
});

describe('what opens', () => {
  const cupboard = { xM: 1, yM: 0, lengthM: 0.6, widthM: 0.4 };
  test.each([
    ['right', 'left', { leastXM: 1, leastYM: 0.4, mostXM: 1.5, mostYM: 0.9 }, { xM: 1.6, yM: 0.4 }],
    ['right', 'right', { leastXM: 1, leastYM: 0.4, mostXM: 1.5, mostYM: 0.9 }, { xM: 1, yM: 0.4 }],
  ] as const)('a door on the %s, hinged on the %s as one looks at it', (face, hinge, _, corner) => {
    const sweep = doorSweep(cupboard, face, hinge, 0.5);
    expect(sweep[0]).toEqual(corner);
    const bounds = boundsOf(sweep);
    const leastXM = hinge === 'left' ? 1.1 : 1;
    expect(bounds.leastXM).toBeCloseTo(leastXM, 3);
    expect(bounds.mostXM).toBeCloseTo(leastXM + 0.5, 3);
    expect(bounds.leastYM).toBeCloseTo(0.4, 12);
    expect(bounds.mostYM).toBeCloseTo(0.9, 3);
    expect(outlineArea(sweep)).toBeCloseTo((Math.PI * 0.25) / 4, 3);
  });
  test.each([
    ['front', 'left', { xM: 1, yM: 0.4 }],
    ['front', 'right', { xM: 1, yM: 0 }],
    ['rear', 'left', { xM: 1.6, yM: 0 }],
    ['rear', 'right', { xM: 1.6, yM: 0.4 }],
    ['left', 'left', { xM: 1, yM: 0 }],
    ['left', 'right', { xM: 1.6, yM: 0 }],
  ] as const)('the hinge of a door on the %s hinged on the %s', (face, hinge, corner) => {
    const sweep = doorSweep(cupboard, face, hinge, 0.4);
    expect(sweep[0]).toEqual(corner);
    // It sweeps in front of its face, not over the cupboard.
    expect(overlapArea(sweep, drawerTravel(cupboard, face, 0.4))).toBeCloseTo((Math.PI * 0.16) / 4, 3);
    expect(overlapArea(sweep, rectangle(1, 0, 0.6, 0.4))).toBeCloseTo(0, 9);
  });
  test('a drawer', () => {
    const bounds = (face: 'front' | 'rear' | 'left' | 'right') =>
      boundsOf(drawerTravel(cupboard, face, 0.35));
    expect(bounds('front')).toEqual({ leastXM: 0.65, leastYM: 0, mostXM: 1, mostYM: 0.4 });
    expect(bounds('rear')).toEqual({ leastXM: 1.6, leastYM: 0, mostXM: 1.9500000000000002, mostYM: 0.4 });
    expect(bounds('left')).toEqual({ leastXM: 1, leastYM: -0.35, mostXM: 1.6, mostYM: 0 });
    expect(bounds('right')).toEqual({ leastXM: 1, leastYM: 0.4, mostXM: 1.6, mostYM: 0.75 });
  });
  test('a lid', () => {
    const swing = lidSwing(cupboard, 0.45, 'left', 0.4);
    expect(boundsOf(swing.outline)).toEqual({ leastXM: 1, leastYM: 0, mostXM: 1.6, mostYM: 0.4 });
    expect(swing.bottomM).toBe(0.45);
    expect(swing.topM).toBeCloseTo(0.85, 12);
    const half = lidSwing(cupboard, 0.45, 'rear', 0.3);
    expect(boundsOf(half.outline).leastXM).toBeCloseTo(1.3, 12);
    expect(boundsOf(half.outline).mostXM).toBeCloseTo(1.6, 12);
    expect(half.topM).toBeCloseTo(0.75, 12);
    expect(boundsOf(lidSwing(cupboard, 0, 'front', 0.3).outline).mostXM).toBeCloseTo(1.3, 12);
    expect(boundsOf(lidSwing(cupboard, 0, 'right', 0.3).outline).leastYM).toBeCloseTo(0.1, 12);
  });
  test('a seat that swivels reaches as far as its farthest corner', () => {
    const seat = rectangle(-1, 1, 0.5, 0.48);
    const bounds = boundsOf(swivelSweep(seat, { xM: -0.7, yM: 1.24 }));
    const radiusM = Math.hypot(0.3, 0.24);
    expect(bounds.leastXM).toBeCloseTo(-0.7 - radiusM, 3);
    expect(bounds.mostYM).toBeCloseTo(1.24 + radiusM, 3);
  });
  test('impossible openings', () => {
    expect(() => doorSweep(cupboard, 'right', 'left', 0.7)).toThrow(
      /leaf of a door must not be more than the 0.6 m/,
    );
    expect(() => doorSweep(cupboard, 'rear', 'left', 0.5)).toThrow(/0.4 m of the box, not 0.5 m/);
    expect(() => doorSweep({ ...cupboard, widthM: 0 }, 'rear', 'left', 0.5)).toThrow(RangeError);
    expect(() => drawerTravel(cupboard, 'rear', 0)).toThrow(/travel of a drawer/);
    expect(() => lidSwing(cupboard, 0.4, 'front', 0.61)).toThrow(/depth of a lid/);
    expect(() => lidSwing(cupboard, Number.NaN, 'front', 0.6)).toThrow(/top of the box/);
    expect(() => swivelSweep([], { xM: 0, yM: 0 })).toThrow(RangeError);
  });
});
