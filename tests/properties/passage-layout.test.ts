// Ways through whole plans against a flood fill on a grid: from the plan's text over the build to `waysFromDoor`. The
// flood knows the plan's boxes only as the numbers they were written with, and nothing of outlines and gaps.
//
// With a grid of h, as in tests/properties/space/passage.test.ts: `may` lets a disc stand h / √2 deeper in things (the
// farthest a place can be from a grid point) and step to eight neighbours, so that it finds a way if there is one;
// `must` asks for h / 2 more room and lets it step to four, so that there is one if it finds it. The width must lie
// between the two, which agree to within the grid's resolution.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { waysFromDoor } from '../../src/build/walking.ts';
import { buildOf } from '../support/check.ts';
import { floorPlan } from '../support/floor-plan.ts';

const gridM = 0.01;
const farthestM = gridM / Math.SQRT2;
/** Touching within 0.5 mm, widths in 0.1 mm. */
const statedM = 0.001;

/** The load bay, m, with the corner of its floor at the origin, and how far outside it the flood begins. */
const bay = { lengthM: 2, widthM: 1.4, outsideM: 0.6 };

/** On the plan, m: from the front and from the left. */
interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

interface Scene {
  readonly door: { readonly x0: number; readonly x1: number };
  readonly boxes: readonly Box[];
  readonly goal: Box;
}

const steps = (least: number, most: number) => fc.integer({ min: least, max: most }).map((n) => n * 0.02);
const box = (longest: number): fc.Arbitrary<Box> =>
  fc
    .tuple(steps(0, 90), steps(0, 60), steps(2, longest), steps(2, longest))
    .map(([x0, y0, lengthM, widthM]) => ({
      x0,
      y0,
      x1: Math.min(bay.lengthM, x0 + lengthM),
      y1: Math.min(bay.widthM, y0 + widthM),
    }));
const overlap = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

const scenes: fc.Arbitrary<Scene> = fc
  .record({
    door: fc.tuple(steps(0, 60), steps(10, 40)).map(([x0, lengthM]) => ({ x0, x1: x0 + lengthM })),
    boxes: fc.array(box(30), { minLength: 1, maxLength: 5 }),
    // Out of the doorway's reach, where arriving means something else.
    goal: box(20).map((found) => ({ ...found, y0: Math.max(0.2, found.y0), y1: Math.max(0.3, found.y1) })),
  })
  // What stands around the goal is reached over, which is another matter.
  .map((scene) => ({ ...scene, boxes: scene.boxes.filter((each) => !overlap(each, scene.goal)) }));

const millimetres = (m: number) => Math.round(m * 1000);

function textOf({ door, boxes, goal }: Scene): string {
  const standing = ({ x0, x1, y0, y1 }: Box, more?: string) => ({
    at: [millimetres(x0), millimetres(y0)] as const,
    size: [millimetres(x1 - x0), millimetres(y1 - y0), 900] as const,
    ...(more !== undefined && { more }),
  });
  const things = Object.fromEntries(boxes.map((each, index) => [`thing ${index}`, standing(each)]));
  const opening = `in: left wall, kind: door, length: ${millimetres(door.x1 - door.x0)} mm, height: 1.8 m, at: {from_front: ${millimetres(door.x0)} mm}`;
  return floorPlan(
    { door: opening },
    { ...things, goal: standing(goal, 'is: seat') },
    { load_bay: '{behind_front_axle: 1 m, length: 2 m, width: 1.4 m, height: 2 m}' },
  );
}

/** Not Math.hypot, which is slow. */
function apart(x: number, y: number, { x0, x1, y0, y1 }: Box): number {
  const dx = Math.max(0, x0 - x, x - x1);
  const dy = Math.max(0, y0 - y, y - y1);
  return Math.sqrt(dx * dx + dy * dy);
}

/** How deep a place is in a box; 0 outside. */
const depth = (x: number, y: number, { x0, x1, y0, y1 }: Box): number =>
  Math.max(0, Math.min(x - x0, x1 - x, y - y0, y1 - y));

/** The walls as boxes about the floor; the left one in two pieces with the door between. */
function solidsOf({ door, boxes, goal }: Scene): Box[] {
  const farM = 9;
  return [
    ...boxes,
    goal,
    { x0: -farM, x1: farM, y0: bay.widthM, y1: farM },
    { x0: -farM, x1: 0, y0: 0, y1: farM },
    { x0: bay.lengthM, x1: farM, y0: 0, y1: farM },
    { x0: -farM, x1: door.x0, y0: -farM, y1: 0 },
    { x0: door.x1, x1: farM, y0: -farM, y1: 0 },
  ];
}

const columns = Math.round(bay.lengthM / gridM) + 1;
const rows = Math.round((bay.widthM + bay.outsideM) / gridM) + 1;

/** Room about each grid point, and how far it is to the goal. */
function gridOf(scene: Scene) {
  const solids = solidsOf(scene);
  const clearM = new Float64Array(columns * rows);
  const toGoalM = new Float64Array(columns * rows);
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < rows; row++) {
      const [x, y] = [column * gridM, row * gridM - bay.outsideM];
      let leastM = Number.POSITIVE_INFINITY;
      for (const solid of solids) leastM = Math.min(leastM, apart(x, y, solid) || -depth(x, y, solid));
      clearM[column * rows + row] = leastM;
      toGoalM[column * rows + row] = apart(x, y, scene.goal);
    }
  }
  return { clearM, toGoalM };
}

const four = [rows, -rows, 1, -1];
const eight = [...four, rows + 1, rows - 1, 1 - rows, -rows - 1];

function flood(
  { clearM, toGoalM }: ReturnType<typeof gridOf>,
  needM: number,
  touchM: number,
  neighbours: readonly number[],
): boolean {
  const seen = new Uint8Array(columns * rows);
  const open: number[] = [];
  const visit = (at: number) => {
    if (at < 0 || at >= seen.length || seen[at] === 1 || (clearM[at] ?? -1) < needM) return;
    seen[at] = 1;
    open.push(at);
  };
  // The first row lies outside the door.
  for (let column = 0; column < columns; column++) visit(column * rows);
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if ((toGoalM[at] ?? Number.POSITIVE_INFINITY) <= touchM) return true;
    const row = at % rows;
    for (const step of neighbours) if (Math.abs(((at + step) % rows) - row) <= 1) visit(at + step);
  }
  return false;
}

test('the way from the door of a plan is as wide as a flood fill finds it', async () => {
  let found = 0;
  await fc.assert(
    fc.asyncProperty(scenes, async (scene) => {
      const { layout } = await buildOf(textOf(scene));
      const [way] = (layout && waysFromDoor(layout)?.ways) ?? [];
      if (!way) throw new Error('one goal, one way');
      const { widthM } = way;
      const grid = gridOf(scene);
      const thinM = widthM - statedM;
      if (widthM > 0)
        expect(
          flood(grid, thinM / 2 - farthestM, thinM / 2 + farthestM, eight),
          `${widthM} m is too wide`,
        ).toBe(true);
      const wideM = Math.max(widthM, 0.01) + statedM;
      expect(flood(grid, wideM / 2 + gridM / 2, wideM / 2, four), `wider than ${widthM} m gets through`).toBe(
        false,
      );
      if (widthM > 0.05) found += 1;
    }),
    { numRuns: 50 },
  );
  // Not mostly walled off.
  expect(found).toBeGreaterThan(20);
});
