// The widest way against a flood fill on a grid, on random plans.
//
// The flood knows nothing of gaps: every grid point has its distance to the nearest edge, measured to the outlines as
// they are given. With a grid of h:
// - `may` lets a disc stand a point's reach (h / √2, the farthest a place can be from a grid point) deeper in things, and
//   step to all eight neighbours: if there is a way, it finds it.
// - `must` lets it stand on grid points that are clear by h / 2 more, and step to four neighbours: every place between
//   two of those is free too, so if it finds a way, there is one.
// The computed width must lie between the two, which agree to within the grid's resolution: 2 · (h / √2 + h / 2).
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { disc } from '../../../src/calc/space/disc.ts';
import { type WalkingPlan, widestPassages } from '../../../src/calc/space/passage.ts';
import { type Outline, type Point, rectangle } from '../../../src/calc/space/plane.ts';

const GRID_M = 0.01;
/** Touching within 0.5 mm, widths in 0.1 mm, and round corners by chords. */
const STATED_M = 0.001;

/** Distance to the edge of an outline, negative inside. */
function signedDistance({ xM, yM }: Point, outline: Outline): number {
  let squared = Number.POSITIVE_INFINITY;
  let inside = false;
  let from = outline.at(-1);
  for (const to of outline) {
    if (from !== undefined) {
      const [ex, ey, px, py] = [to.xM - from.xM, to.yM - from.yM, xM - from.xM, yM - from.yM];
      const along = Math.min(1, Math.max(0, (px * ex + py * ey) / (ex * ex + ey * ey)));
      squared = Math.min(squared, (px - along * ex) ** 2 + (py - along * ey) ** 2);
      if (to.yM > yM !== from.yM > yM && px < (ex * py) / ey) inside = !inside;
    }
    from = to;
  }
  return inside ? -Math.sqrt(squared) : Math.sqrt(squared);
}

/** Measures the distance to the nearest obstacle or edge of the floor; negative in one or outside the other. */
function clearanceOf({ floor, obstacles }: WalkingPlan): (point: Point) => number {
  const boxed = obstacles.map((outline) => {
    const xs = outline.map(({ xM }) => xM);
    const ys = outline.map(({ yM }) => yM);
    return {
      outline,
      left: Math.min(...xs),
      right: Math.max(...xs),
      low: Math.min(...ys),
      high: Math.max(...ys),
    };
  });
  return (point) => {
    let leastM = -signedDistance(point, floor);
    for (const { outline, left, right, low, high } of boxed) {
      if (leastM < 0) break;
      const apart = Math.max(left - point.xM, point.xM - right, low - point.yM, point.yM - high);
      if (apart < leastM) leastM = Math.min(leastM, signedDistance(point, outline));
    }
    return leastM;
  };
}

interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly clearM: Float64Array;
  readonly toStartM: Float64Array;
  readonly toGoalM: Float64Array;
}

function gridOf(plan: WalkingPlan, goal: Outline): Grid {
  const columns = Math.round(LENGTH_M / GRID_M) + 1;
  const rows = Math.round(WIDTH_M / GRID_M) + 1;
  const of = (measure: (point: Point) => number) =>
    Float64Array.from({ length: columns * rows }, (_, index) =>
      measure({ xM: Math.floor(index / rows) * GRID_M, yM: (index % rows) * GRID_M }),
    );
  return {
    columns,
    rows,
    clearM: of(clearanceOf(plan)),
    toStartM: of((point) => Math.max(0, signedDistance(point, plan.start))),
    toGoalM: of((point) => Math.max(0, signedDistance(point, goal))),
  };
}

function flood(
  { columns, rows, clearM, toStartM, toGoalM }: Grid,
  needM: number,
  touchM: number,
  neighbours: readonly (readonly [number, number])[],
): boolean {
  const seen = new Uint8Array(columns * rows);
  const open: number[] = [];
  const visit = (index: number) => {
    if (seen[index] === 1 || (clearM[index] ?? -1) < needM) return;
    seen[index] = 1;
    open.push(index);
  };
  toStartM.forEach((distanceM, index) => {
    if (distanceM <= touchM) visit(index);
  });
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if ((toGoalM[at] ?? Number.POSITIVE_INFINITY) <= touchM) return true;
    const [column, row] = [Math.floor(at / rows), at % rows];
    for (const [dx, dy] of neighbours) {
      if (column + dx < 0 || column + dx >= columns || row + dy < 0 || row + dy >= rows) continue;
      visit(at + dx * rows + dy);
    }
  }
  return false;
}

const four = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;
const eight = [...four, [1, 1], [1, -1], [-1, 1], [-1, -1]] as const;
const farthestM = GRID_M / Math.SQRT2;

const mayPass = (grid: Grid, widthM: number) =>
  flood(grid, widthM / 2 - farthestM, widthM / 2 + farthestM, eight);
const mustPass = (grid: Grid, widthM: number) => flood(grid, widthM / 2 + GRID_M / 2, widthM / 2, four);

const LENGTH_M = 1.8;
const WIDTH_M = 1.2;
const millimetres = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => value / 1000);

const boxes = fc
  .tuple(millimetres(0, 1700), millimetres(-50, 1150), millimetres(30, 700), millimetres(30, 600))
  .map(([xM, yM, lengthM, widthM]) => rectangle(xM, yM, lengthM, widthM));
const posts = fc
  .tuple(millimetres(0, 1800), millimetres(0, 1200), millimetres(20, 150))
  .map(([xM, yM, radiusM]) => disc({ xM, yM }, radiusM));
const triangles = fc
  .tuple(millimetres(0, 1500), millimetres(0, 900), millimetres(50, 500), millimetres(50, 500), fc.boolean())
  .map(([xM, yM, lengthM, widthM, mirrored]): Outline => {
    const corner = mirrored ? { xM: xM + lengthM, yM: yM + widthM } : { xM, yM: yM + widthM / 3 };
    return [{ xM, yM }, { xM: xM + lengthM, yM: yM + widthM / 2 }, corner];
  });
const hooks = fc
  .tuple(millimetres(100, 1200), millimetres(0, 700), millimetres(200, 500), millimetres(30, 150))
  .map(
    ([xM, yM, sizeM, thickM]): Outline => [
      { xM, yM },
      { xM: xM + sizeM, yM },
      { xM: xM + sizeM, yM: yM + thickM },
      { xM: xM + thickM, yM: yM + thickM },
      { xM: xM + thickM, yM: yM + sizeM },
      { xM, yM: yM + sizeM },
    ],
  );

const floors: fc.Arbitrary<Outline> = fc.oneof(
  fc.constant(rectangle(0, 0, LENGTH_M, WIDTH_M)),
  fc.tuple(millimetres(300, 1500), millimetres(200, 1000)).map(
    ([xM, yM]): Outline => [
      { xM: 0, yM: 0 },
      { xM: LENGTH_M, yM: 0 },
      { xM: LENGTH_M, yM: WIDTH_M },
      { xM, yM: WIDTH_M },
      { xM, yM },
      { xM: 0, yM },
    ],
  ),
  fc.tuple(millimetres(0, 500), millimetres(0, 500)).map(
    ([a, b]): Outline => [
      { xM: 0, yM: a },
      { xM: LENGTH_M, yM: 0 },
      { xM: LENGTH_M, yM: WIDTH_M - b },
      { xM: 0, yM: WIDTH_M },
    ],
  ),
);

const plans: fc.Arbitrary<WalkingPlan> = fc
  .record({
    floor: floors,
    obstacles: fc.array(fc.oneof(boxes, boxes, posts, triangles, hooks), { minLength: 0, maxLength: 9 }),
    start: fc.oneof(fc.constant(rectangle(0, 0, 0.05, WIDTH_M)), boxes),
    goal: boxes,
    isObstacle: fc.boolean(),
  })
  .map(({ floor, obstacles, start, goal, isObstacle }) => ({
    floor,
    obstacles: isObstacle ? [...obstacles, goal] : obstacles,
    start,
    goals: [goal],
    reachM: 0,
  }));

test('the widest way lies between what a flood fill may and must let through', () => {
  let found = 0;
  fc.assert(
    fc.property(plans, (plan) => {
      const [goal] = plan.goals;
      const [passage] = widestPassages(plan);
      if (goal === undefined || passage === undefined) throw new Error('one goal, one passage');
      const grid = gridOf(plan, goal);
      const { widthM } = passage;
      // Ways of less than 10 mm are none.
      if (widthM > 0) expect(mayPass(grid, widthM - STATED_M), `${widthM} m is too wide`).toBe(true);
      const nextM = Math.max(widthM, 0.01) + STATED_M;
      expect(mustPass(grid, nextM), `wider than ${widthM} m gets through`).toBe(false);
      if (widthM > 0.05) found += 1;
    }),
    { numRuns: 120 },
  );
  // Not mostly walled off.
  expect(found).toBeGreaterThan(40);
});

test('at its narrowest spot the disc fits, just, and touches what it is said to be stuck between', () => {
  fc.assert(
    fc.property(plans, (plan) => {
      const [{ widthM, narrowest } = { widthM: 0, narrowest: undefined }] = widestPassages(plan);
      if (narrowest === undefined) return;
      const { at, between } = narrowest;
      expect(Math.abs(clearanceOf(plan)(at) - widthM / 2)).toBeLessThan(STATED_M);
      for (const side of between) {
        const distanceM = Math.hypot(side.at.xM - at.xM, side.at.yM - at.yM);
        if (side.obstacle === undefined) continue;
        const outline = plan.obstacles[side.obstacle];
        expect(Math.abs(outline === undefined ? 1 : signedDistance(side.at, outline))).toBeLessThan(1e-5);
        expect(distanceM).toBeLessThan(widthM / 2 + 2 * STATED_M);
      }
    }),
    { numRuns: 100 },
  );
});

test('one more obstacle never widens a way, and many goals at once are as each alone', () => {
  fc.assert(
    fc.property(plans, boxes, fc.array(boxes, { minLength: 1, maxLength: 4 }), (plan, more, others) => {
      const width = (changed: Partial<WalkingPlan>) =>
        widestPassages({ ...plan, ...changed }).map(({ widthM }) => widthM);
      const [before = 0] = width({});
      const [after = 0] = width({ obstacles: [...plan.obstacles, more] });
      expect(after).toBeLessThanOrEqual(before + STATED_M);
      const goals = [...plan.goals, ...others];
      expect(width({ goals })).toEqual(goals.flatMap((goal) => width({ goals: [goal] })));
    }),
    { numRuns: 40 },
  );
});

test('longer reach never narrows a way', () => {
  fc.assert(
    fc.property(plans, millimetres(1, 400), (plan, reachM) => {
      const [before] = widestPassages(plan);
      const [after] = widestPassages({ ...plan, reachM });
      expect(after?.widthM ?? 0).toBeGreaterThanOrEqual((before?.widthM ?? 0) - STATED_M);
    }),
    { numRuns: 40 },
  );
});

test('with many parts, where gaps are found band by band, the widths lie between the floods too', () => {
  // 240 pegs in rows at the front, more than are looked at all at once; everything else stands behind them.
  const pegs = Array.from({ length: 240 }, (_, index) =>
    rectangle(0.06 + 0.02 * (index % 8), 0.3 + 0.02 * Math.floor(index / 8), 0.01, 0.01),
  );
  const behind = (arbitrary: fc.Arbitrary<Outline>) =>
    arbitrary.map((outline) => outline.map(({ xM, yM }) => ({ xM: 0.4 + 0.8 * xM, yM })));
  const things = behind(fc.oneof(boxes, posts, triangles));
  fc.assert(
    fc.property(fc.array(things, { minLength: 1, maxLength: 6 }), behind(boxes), (obstacles, goal) => {
      const plan: WalkingPlan = {
        floor: rectangle(0, 0, LENGTH_M, WIDTH_M),
        obstacles: [...obstacles, goal, ...pegs],
        start: rectangle(0, 0, 0.05, WIDTH_M),
        goals: [goal],
        reachM: 0,
      };
      const grid = gridOf(plan, goal);
      const [{ widthM } = { widthM: 0 }] = widestPassages(plan);
      if (widthM > 0) expect(mayPass(grid, widthM - STATED_M)).toBe(true);
      expect(mustPass(grid, Math.max(widthM, 0.01) + STATED_M)).toBe(false);
    }),
    { numRuns: 12 },
  );
});
