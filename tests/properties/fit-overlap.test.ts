import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Finding } from '../../src/engine/finding.ts';
import { runRules } from '../../src/engine/run.ts';
import overlap from '../../src/rules/fit/overlap.ts';
import { buildOf, words } from '../support/check.ts';

/** A box on a grid of 10 mm, in whole cells: where it begins and how far it goes. */
interface Cells {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

/** The load bay: 24 × 16 × 16 cells, small enough to count every cell. */
const [bayLength, bayWidth, bayHeight] = [24, 16, 16];

const unit: Cells = { x: 0, y: 0, z: 0, length: 1, width: 1, height: 1 };

const side = (most: number) => fc.integer({ min: 1, max: most });
const start = (most: number) => fc.integer({ min: 0, max: most });

/** Boxes within the load bay. */
const boxes = (least: number, most: number): fc.Arbitrary<readonly Cells[]> =>
  fc.array(
    fc
      .record({
        x: start(bayLength - 1),
        y: start(bayWidth - 1),
        z: start(bayHeight - 1),
        length: side(8),
        width: side(8),
        height: side(8),
      })
      .map((box) => ({
        ...box,
        length: Math.min(box.length, bayLength - box.x),
        width: Math.min(box.width, bayWidth - box.y),
        height: Math.min(box.height, bayHeight - box.z),
      })),
    { minLength: least, maxLength: most },
  );

/** A box, and one that begins in it. */
const overlappingPairs: fc.Arbitrary<readonly [Cells, Cells]> = boxes(2, 2).map(([a, b]) => {
  const [first, second] = [a ?? unit, b ?? unit];
  const within = (from: number, length: number, at: number) => from + (at % length);
  return [
    first,
    {
      x: within(first.x, first.length, second.x),
      y: within(first.y, first.width, second.y),
      z: within(first.z, first.height, second.z),
      length: Math.min(second.length, bayLength - first.x - first.length + 1),
      width: Math.min(second.width, bayWidth - first.y - first.width + 1),
      height: Math.min(second.height, bayHeight - first.z - first.height + 1),
    },
  ];
});

const mm = (cells: number): string => `${cells * 10} mm`;

/** Nothing of the test van is needed but its load bay. */
const planOf = (layout: readonly Cells[]): string =>
  [
    'storystick: 1',
    'van:',
    `  load_bay: {behind_front_axle: 1 m, length: ${mm(bayLength)}, width: ${mm(bayWidth)}, height: ${mm(bayHeight)}}`,
    'fixtures:',
    ...layout.map(
      ({ x, y, z, length, width, height }, index) =>
        `  b${index}: {mass: 1 kg, size: {length: ${mm(length)}, width: ${mm(width)}, height: ${mm(height)}}, at: {from_front: ${mm(x)}, from_left: ${mm(y)}, above_floor: ${mm(z)}}}`,
    ),
  ].join('\n');

async function clashesOf(layout: readonly Cells[]): Promise<readonly Finding[]> {
  const { findings, defects } = runRules([overlap], await buildOf(planOf(layout)));
  expect(defects).toEqual([]);
  return findings.filter(({ verdict }) => verdict === 'fail');
}

/** Every cell that a box fills, by its number. */
function* cellsOf({ x, y, z, length, width, height }: Cells): Generator<number> {
  for (let i = x; i < x + length; i += 1)
    for (let j = y; j < y + width; j += 1)
      for (let k = z; k < z + height; k += 1) yield (i * 1000 + j) * 1000 + k;
}

/** The pairs that fill a cell both, by counting cells. */
function pairsByCells(layout: readonly Cells[]): readonly string[] {
  const inCell = new Map<number, number[]>();
  const pairs = new Set<string>();
  layout.forEach((box, index) => {
    for (const cell of cellsOf(box)) {
      const others = inCell.get(cell) ?? [];
      for (const other of others) pairs.add([`b${other}`, `b${index}`].sort().join(' and '));
      inCell.set(cell, [...others, index]);
    }
  });
  return [...pairs].sort();
}

test('the pairs that are reported are those that fill a cell both', async () => {
  await fc.assert(
    fc.asyncProperty(boxes(1, 12), async (layout) => {
      const reported = (await clashesOf(layout)).map(({ subject }) => subject);
      expect([...reported].sort()).toEqual(pairsByCells(layout));
    }),
    { numRuns: 80 },
  );
});

/** "Move b1 40 mm rearward", "Lift b0 by 20 mm". */
const moves =
  /^(?:Move b(\d+) (\d+) mm (forward|rearward|to the left|to the right)|(Lift|Lower) b(\d+) by (\d+) mm)/;

const steps: Readonly<Record<string, readonly [axis: 'x' | 'y' | 'z', sign: 1 | -1]>> = {
  forward: ['x', -1],
  rearward: ['x', 1],
  'to the left': ['y', -1],
  'to the right': ['y', 1],
  Lift: ['z', 1],
  Lower: ['z', -1],
};

/** The layout after the move that a finding asks for; undefined where it asks for none. */
function afterMove(layout: readonly Cells[], remedy: string): readonly Cells[] | undefined {
  const [, level, levelMm, direction, lift, lifted, liftMm] = moves.exec(remedy) ?? [];
  const step = steps[direction ?? lift ?? ''];
  if (!step) return undefined;
  const [axis, sign] = step;
  const cells = Number(levelMm ?? liftMm) / 10;
  expect(Number.isInteger(cells)).toBe(true);
  return layout.map((box, index) =>
    index === Number(level ?? lifted) ? { ...box, [axis]: box[axis] + sign * cells } : box,
  );
}

const isInBay = ({ x, y, z, length, width, height }: Cells): boolean =>
  x >= 0 && y >= 0 && z >= 0 && x + length <= bayLength && y + width <= bayWidth && z + height <= bayHeight;

test('the move that is asked for parts a pair, stays in the load bay, and meets nothing else', async () => {
  let [clashes, mended] = [0, 0];
  await fc.assert(
    fc.asyncProperty(fc.tuple(overlappingPairs, boxes(0, 3)), async ([pair, others]) => {
      const layout = [...pair, ...others];
      fc.pre(pairsByCells(layout).length === 1);
      const [first] = await clashesOf(layout);
      clashes += 1;
      const remedy = words(first?.remedy);
      const after = afterMove(layout, remedy);
      if (!after) return;
      mended += 1;
      expect(after.every(isInBay)).toBe(true);
      const left = pairsByCells(after);
      expect(left).not.toContain(first?.subject);
      if (!remedy.includes('make room')) expect(left).toEqual([]);
      expect((await clashesOf(after)).map(({ subject }) => subject).sort()).toEqual(left);
    }),
    { numRuns: 60 },
  );
  // Some boxes are so large that nothing helps; most are not.
  expect(mended).toBeGreaterThan(clashes * 0.8);
});

/** Whether two boxes fill a cell both, without going through all of them. */
const meet = (a: Cells, b: Cells): boolean =>
  Math.max(a.x, b.x) < Math.min(a.x + a.length, b.x + b.length) &&
  Math.max(a.y, b.y) < Math.min(a.y + a.width, b.y + b.width) &&
  Math.max(a.z, b.z) < Math.min(a.z + a.height, b.z + b.height);

const volume = ({ length, width, height }: Cells): number => length * width * height;

/** The shortest move of a box within the load bay that parts it from another; infinite where there is none. */
function shortestMove(box: Cells, other: Cells): number {
  for (let cells = 1; cells < bayLength; cells += 1)
    for (const [axis, sign] of Object.values(steps)) {
      const after = { ...box, [axis]: box[axis] + sign * cells };
      if (isInBay(after) && !meet(after, other)) return cells;
    }
  return Number.POSITIVE_INFINITY;
}

test('the move is the shortest there is: of the smaller box, or of the larger where it more than halves the way', async () => {
  await fc.assert(
    fc.asyncProperty(overlappingPairs, async ([a, b]) => {
      fc.pre(volume(a) !== volume(b));
      const [small, large] = volume(a) < volume(b) ? [a, b] : [b, a];
      const [own, others] = [shortestMove(small, large), shortestMove(large, small)];
      const [clash] = await clashesOf([a, b]);
      const after = afterMove([a, b], words(clash?.remedy));
      const expected =
        Math.min(own, others) === Number.POSITIVE_INFINITY ? undefined : own <= 2 * others ? own : others;
      const [afterA = a, afterB = b] = after ?? [];
      const distance =
        Math.abs(afterA.x + afterB.x - a.x - b.x) +
        Math.abs(afterA.y + afterB.y - a.y - b.y) +
        Math.abs(afterA.z + afterB.z - a.z - b.z);
      expect(after && distance).toBe(expected);
    }),
    { numRuns: 40 },
  );
});
