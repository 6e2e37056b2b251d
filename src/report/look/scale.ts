import type { Picture, View } from '../../build/picture/model.ts';
import type { Point } from '../../calc/space/plane.ts';
import type { Spot } from './canvas.ts';
import type { Size } from './trace.ts';

/** How many times as high as wide a character of a terminal is: common practice, no source. */
export const cellHeight = 2;

/** A view is at most so many rows high for each column of its width, whatever a plan says. Own choice. */
const mostRowsPerColumn = 1;

/** Columns for a metre, so that every view fits; all views of a picture have one scale. */
export function columnsPerM({ views }: Pick<Picture, 'views'>, width: number): number {
  return Math.min(
    ...views.flatMap(({ across, down }) => [
      (width - 1) / (across.mostM - across.leastM),
      (cellHeight * mostRowsPerColumn * width) / (down.mostM - down.leastM),
    ]),
  );
}

export const sizeOf = ({ across, down }: View, perM: number): Size => ({
  columns: Math.round((across.mostM - across.leastM) * perM) + 1,
  rows: Math.round(((down.mostM - down.leastM) * perM) / cellHeight) + 1,
});

/** Where a point of a view lies on its canvas. */
export const spotOf =
  ({ across, down }: View, perM: number) =>
  ({ xM, yM }: Point): Spot => ({
    column: (xM - across.leastM) * perM,
    row: ((yM - down.leastM) * perM) / cellHeight,
  });
