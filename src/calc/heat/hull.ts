/** A place along the way of vapour and the pressure there. */
export interface Point {
  /** Sum of equivalent air layers from outside, m. */
  readonly airM: number;
  readonly pressurePa: number;
}

/**
 * The tightest thread below the points: indexes of those that it touches, first and last always among them. Points in
 * rising `airM`. This is the lower convex hull; between its corners the thread is straight and no point lies below it.
 * A point on a straight run is not a corner.
 *
 * Source: A. M. Andrew's chain (1979; memory).
 */
export function tautBelow(points: readonly Point[]): number[] {
  const corners: number[] = [];
  points.forEach((point, index) => {
    while (corners.length >= 2) {
      const last = points[corners[corners.length - 1] ?? 0];
      const before = points[corners[corners.length - 2] ?? 0];
      if (last === undefined || before === undefined || turnsUp(before, last, point)) break;
      corners.pop();
    }
    corners.push(index);
  });
  return corners;
}

const turnsUp = (a: Point, b: Point, c: Point): boolean =>
  (b.airM - a.airM) * (c.pressurePa - a.pressurePa) - (c.airM - a.airM) * (b.pressurePa - a.pressurePa) > 0;

/** Pressure of the thread through those corners at a place between them. */
export function pressureAlong(points: readonly Point[], corners: readonly number[], airM: number): number {
  for (let index = 1; index < corners.length; index += 1) {
    const from = points[corners[index - 1] ?? 0];
    const to = points[corners[index] ?? 0];
    if (from === undefined || to === undefined || airM > to.airM) continue;
    return from.pressurePa + ((to.pressurePa - from.pressurePa) * (airM - from.airM)) / (to.airM - from.airM);
  }
  return points[points.length - 1]?.pressurePa ?? Number.NaN;
}
