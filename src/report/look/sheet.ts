import type { Figure, View } from '../../build/picture/model.ts';
import { blankCanvas, type Canvas, type Spot } from './canvas.ts';
import { type Arm, arm } from './glyphs.ts';
import { sizeOf, spotOf } from './scale.ts';
import { cornersOn, liesWithin, nearestCell, type Size, type Step, stepsAlong, stepsRound } from './trace.ts';

export const signs = {
  centre: '⊕',
  narrowest: '×',
  passage: '·',
  sweep: '•',
  hatch: '░',
  guideDown: '╎',
  guideAcross: '╌',
} as const;

/** A thing as it lies on the canvas. */
export interface Drawn {
  readonly thing: string;
  readonly corners: readonly Spot[];
  /** The cells of its edge, or of the gap that it is in a wall. */
  readonly edge: readonly Spot[];
  readonly isGap: boolean;
}

/** A view with all its lines, before the keys. */
export interface Sheet {
  readonly view: View;
  readonly canvas: Canvas;
  readonly drawn: readonly Drawn[];
  readonly guides: readonly { readonly column: number; readonly label: string }[];
}

const weights: Record<Figure['line'], Arm> = {
  shell: arm.heavy,
  window: arm.double,
  cover: arm.heavyDashed,
  solid: arm.light,
  hidden: arm.dashed,
};

export function sheetOf(view: View, perM: number): Sheet {
  const size = sizeOf(view, perM);
  const canvas = blankCanvas(size.columns, size.rows);
  const scale = spotOf(view, perM);
  const traced = view.figures.map((figure) => {
    const corners = cornersOn(figure.outline, scale, size);
    return { figure, corners, steps: stepsRound(corners), box: boxOf(corners) };
  });
  const drawn: Drawn[] = [];
  const draw = ({ figure, corners, steps }: (typeof traced)[number]) => {
    const nearer = traced.filter((other) => other.figure.hides && other.figure.nearnessM > figure.nearnessM);
    for (const step of steps)
      canvas.join(...step, isHidden(step, nearer) ? arm.dashed : weights[figure.line]);
    if (figure.thing !== undefined)
      drawn.push({ thing: figure.thing, corners, edge: cellsOf(steps, corners), isGap: false });
  };
  const isOfVan = ({ figure }: (typeof traced)[number]) => figure.line === 'shell' || figure.hatched;
  // What is part of the van is open where the wall is.
  for (const each of traced.filter(isOfVan)) draw(each);
  for (const { thing, from, to, line } of view.gaps) {
    const [start, end] = [nearestCell(scale(from)), nearestCell(scale(to))];
    const steps = stepsAlong(start, end);
    for (const step of steps) {
      canvas.part(...step);
      if (line) canvas.join(...step, weights[line]);
    }
    drawn.push({ thing, corners: [start, end], edge: cellsOf(steps, [start]), isGap: true });
  }
  for (const { at, towards } of view.ticks) canvas.stroke(nearestCell(scale(at)), towards);
  for (const each of traced.filter((one) => !isOfVan(one))) draw(each);
  for (const { sign, at } of view.marks) canvas.put(nearestCell(scale(at)), signs[sign]);
  for (const sweep of view.sweeps)
    for (const [from] of stepsRound(cornersOn(sweep, scale, size))) canvas.putBelow(from, signs.sweep);
  for (const { figure, corners } of traced)
    if (figure.hatched) for (const spot of spotsWithin(corners, size)) canvas.putBelow(spot, signs.hatch);
  dotPassage(view, canvas, scale);
  return { view, canvas, drawn, guides: drawGuides(view, canvas, scale) };
}

/** Every second column of the passage; a cell counts by its middle. */
function dotPassage({ passage }: View, canvas: Canvas, scale: ReturnType<typeof spotOf>): void {
  const rings = passage.map((ring) => ring.map(scale));
  for (let row = 0; row < canvas.rows; row += 1)
    for (let column = row % 2; column < canvas.columns; column += 2) {
      const around = rings.filter((ring) => liesWithin({ column, row }, ring));
      if (around.length % 2 === 1) canvas.putBelow({ column, row }, signs.passage);
    }
}

function drawGuides(view: View, canvas: Canvas, scale: ReturnType<typeof spotOf>): Sheet['guides'] {
  return view.guides.flatMap(({ runs, atM, label }) => {
    const { column, row } = nearestCell(scale({ xM: atM, yM: atM }));
    if (runs === 'across') {
      for (let each = 0; each < canvas.columns; each += 1)
        canvas.putBelow({ column: each, row }, signs.guideAcross);
      return [];
    }
    for (let each = 0; each < canvas.rows; each += 1) canvas.putBelow({ column, row: each }, signs.guideDown);
    return [{ column, label }];
  });
}

interface Covering {
  readonly corners: readonly Spot[];
  readonly box: ReturnType<typeof boxOf>;
}

/** Where a step runs along the edge of what is nearer, that is drawn there itself, and it does not matter. */
const isHidden = ([from, to]: Step, nearer: readonly Covering[]): boolean => {
  const middle = { column: (from.column + to.column) / 2, row: (from.row + to.row) / 2 };
  return nearer.some(
    ({ corners, box }) =>
      middle.column >= box.left &&
      middle.column <= box.right &&
      middle.row >= box.top &&
      middle.row <= box.bottom &&
      liesWithin(middle, corners),
  );
};

export const boxOf = (corners: readonly Spot[]) => ({
  left: Math.min(...corners.map(({ column }) => column)),
  right: Math.max(...corners.map(({ column }) => column)),
  top: Math.min(...corners.map(({ row }) => row)),
  bottom: Math.max(...corners.map(({ row }) => row)),
});

/** The cells that steps go through, each once. */
function cellsOf(steps: readonly Step[], corners: readonly Spot[]): Spot[] {
  const seen = new Map<string, Spot>();
  for (const spot of [...steps.flat(), ...corners]) seen.set(`${spot.column} ${spot.row}`, spot);
  return [...seen.values()];
}

/** The cells inside an outline, without those of its edge. */
export function spotsWithin(corners: readonly Spot[], { columns, rows }: Size): Spot[] {
  const { left, right, top, bottom } = boxOf(corners);
  const spots: Spot[] = [];
  const nudge = 0.01;
  for (let row = Math.max(0, top); row <= Math.min(rows - 1, bottom); row += 1)
    for (let column = Math.max(0, left); column <= Math.min(columns - 1, right); column += 1) {
      const near = [
        { column: column - nudge, row: row - nudge },
        { column: column + nudge, row: row + nudge },
      ];
      if (near.every((spot) => liesWithin(spot, corners))) spots.push({ column, row });
    }
  return spots;
}
