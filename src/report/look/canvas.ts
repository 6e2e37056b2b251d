import { type Arm, type Arms, arm, glyphOf } from './glyphs.ts';

/** What a character of a picture is, for the pen. */
export type Ink = 'line' | 'faint' | 'sign';

/** A place on the canvas: columns to the right, rows down. Whole numbers are the middles of its cells. */
export interface Spot {
  readonly column: number;
  readonly row: number;
}

const up = 0;
const right = 1;
const down = 2;
const left = 3;

const weights: readonly Arm[] = Object.values(arm).sort();

/** Cells in which lines meet, and the characters that stand over or under the lines. */
export interface Canvas {
  readonly columns: number;
  readonly rows: number;
  /** Joins two neighbouring cells with a line. */
  readonly join: (from: Spot, to: Spot, weight: Arm) => void;
  /** Takes away the line between two neighbouring cells. */
  readonly part: (from: Spot, to: Spot) => void;
  /** A heavy stroke out of a cell that does not reach its neighbour. */
  readonly stroke: (at: Spot, towards: 'up' | 'down') => void;
  readonly armsAt: (at: Spot) => Arms;
  /** A character over all lines. The first one stays. */
  readonly put: (at: Spot, character: string) => void;
  /** A character that only shows where there is no line. The first one stays. */
  readonly putBelow: (at: Spot, character: string) => void;
  readonly isTaken: (at: Spot) => boolean;
  /** Whether something is put below at this place. */
  readonly isToned: (at: Spot) => boolean;
  readonly lines: (paint: (text: string, ink: Ink) => string) => string[];
}

export function blankCanvas(columns: number, rows: number): Canvas {
  const arms = new Uint8Array(columns * rows * 4);
  const above = new Map<number, string>();
  const below = new Map<number, string>();
  const indexOf = ({ column, row }: Spot): number | undefined =>
    column >= 0 && column < columns && row >= 0 && row < rows ? row * columns + column : undefined;
  const weightOf = (index: number, direction: number): Arm => {
    return weights[arms[index * 4 + direction] ?? arm.none] ?? arm.none;
  };
  const armsOf = (index: number): Arms => [
    weightOf(index, up),
    weightOf(index, right),
    weightOf(index, down),
    weightOf(index, left),
  ];
  const directionOf = (from: Spot, to: Spot): number => {
    if (to.row !== from.row) return to.row < from.row ? up : down;
    return to.column < from.column ? left : right;
  };
  const between = (from: Spot, to: Spot, change: (before: number) => number) => {
    for (const [one, other] of [
      [from, to],
      [to, from],
    ] as const) {
      const index = indexOf(one);
      if (index === undefined) continue;
      const at = index * 4 + directionOf(one, other);
      arms[at] = change(arms[at] ?? 0);
    }
  };
  const characterAt = (index: number): { readonly text: string; readonly ink: Ink } => {
    const over = above.get(index);
    if (over !== undefined) return { text: over, ink: 'sign' };
    const met = armsOf(index);
    if (met.some((each) => each !== arm.none))
      return { text: glyphOf(met), ink: met.every((each) => each <= arm.dashed) ? 'faint' : 'line' };
    return { text: below.get(index) ?? ' ', ink: 'faint' };
  };
  return {
    columns,
    rows,
    join: (from, to, weight) => between(from, to, (before) => Math.max(before, weight)),
    part: (from, to) => between(from, to, () => arm.none),
    stroke: (at, towards) => {
      const index = indexOf(at);
      if (index === undefined) return;
      const place = index * 4 + (towards === 'up' ? up : down);
      arms[place] = arm.heavy;
    },
    armsAt: (at) => {
      const index = indexOf(at);
      return index === undefined ? [arm.none, arm.none, arm.none, arm.none] : armsOf(index);
    },
    put: (at, character) => {
      const index = indexOf(at);
      if (index !== undefined && !above.has(index)) above.set(index, character);
    },
    putBelow: (at, character) => {
      const index = indexOf(at);
      if (index !== undefined && !below.has(index)) below.set(index, character);
    },
    isTaken: (at) => {
      const index = indexOf(at);
      return index === undefined || above.has(index);
    },
    isToned: (at) => {
      const index = indexOf(at);
      return index !== undefined && below.has(index);
    },
    lines: (paint) =>
      Array.from({ length: rows }, (_, row) => {
        const cells = Array.from({ length: columns }, (__, column) => characterAt(row * columns + column));
        const ending = cells.findLastIndex(({ text }) => text !== ' ') + 1;
        let line = '';
        let run = '';
        let ink: Ink = 'line';
        for (const cell of cells.slice(0, ending)) {
          if (cell.ink !== ink && run !== '') {
            line += paint(run, ink);
            run = '';
          }
          ink = cell.ink;
          run += cell.text;
        }
        return run === '' ? line : line + paint(run, ink);
      }),
  };
}
