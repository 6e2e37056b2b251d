import { edgesOf, type Outline, type Point } from '../../calc/space/plane.ts';
import type { Spot } from './canvas.ts';

/** Where a point of a view lies on the canvas, between the cells. */
export type Scale = (point: Point) => Spot;

export const nearestCell = ({ column, row }: Spot): Spot => ({
  column: Math.round(column),
  row: Math.round(row),
});

/** A step from one cell to its neighbour. */
export type Step = readonly [from: Spot, to: Spot];

/** An outline on the canvas: its corners in the middles of cells. What lies far outside is drawn in to its edge. */
export function cornersOn(outline: Outline, scale: Scale, { columns, rows }: Size): Spot[] {
  const corners: Spot[] = [];
  for (const point of outline) {
    const { column, row } = nearestCell(scale(point));
    const corner = { column: clamp(column, columns), row: clamp(row, rows) };
    const before = corners.at(-1);
    if (before?.column !== corner.column || before.row !== corner.row) corners.push(corner);
  }
  return corners;
}

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

/** Two cells outside, so that what leaves the canvas is not closed at its edge. */
const clamp = (value: number, most: number): number => Math.min(most + 1, Math.max(-2, value));

/** The steps round an outline, from cell to cell. What only goes out and back again is left out. */
export function stepsRound(corners: readonly Spot[]): Step[] {
  const points = corners.map(({ column, row }) => ({ xM: column, yM: row }));
  const all = edgesOf(points).flatMap(([from, to]) =>
    stepsAlong({ column: from.xM, row: from.yM }, { column: to.xM, row: to.yM }),
  );
  const steps: Step[] = [];
  for (const step of all) {
    const before = steps.at(-1);
    if (before && isBack(before, step)) steps.pop();
    else steps.push(step);
  }
  // The round may begin in the middle of such a stroke.
  for (let [first, last] = [steps[0], steps.at(-1)]; first && last && isBack(last, first); ) {
    steps.shift();
    steps.pop();
    [first, last] = [steps[0], steps.at(-1)];
  }
  // Something too thin for an inside goes out and back, and no farther.
  return steps.length === 0 ? all : steps;
}

/** Whether a step takes back another. */
const isBack = ([one]: Step, [, other]: Step): boolean =>
  one.column === other.column && one.row === other.row;

/** The steps along a straight line: a stair where it is neither level nor upright. */
export function stepsAlong(from: Spot, to: Spot): Step[] {
  const wide = Math.abs(to.column - from.column);
  const high = Math.abs(to.row - from.row);
  const right = Math.sign(to.column - from.column);
  const down = Math.sign(to.row - from.row);
  const steps: Step[] = [];
  let at = from;
  for (let across = 0, along = 0; across + along < wide + high; ) {
    // The one of the two directions in which the line is farther behind.
    const level = along >= high || (across < wide && (across + 0.5) * high < (along + 0.5) * wide);
    const next = level
      ? { column: at.column + right, row: at.row }
      : { column: at.column, row: at.row + down };
    if (level) across += 1;
    else along += 1;
    steps.push([at, next]);
    at = next;
  }
  return steps;
}

/** Whether a place lies within corners on the canvas, by the even-odd rule. */
export function liesWithin({ column, row }: Spot, corners: readonly Spot[]): boolean {
  let inside = false;
  let from = corners.at(-1);
  for (const to of corners) {
    if (
      from &&
      from.column > column !== to.column > column &&
      row < from.row + ((to.row - from.row) * (column - from.column)) / (to.column - from.column)
    )
      inside = !inside;
    from = to;
  }
  return inside;
}
