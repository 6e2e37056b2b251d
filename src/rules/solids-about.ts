import type { Box3, Solid } from '../build/layout.ts';
import { boundsNear } from '../calc/space/plane.ts';

/** Squares of the floor in which things are looked up: about as large as most of them. Own choice. */
const squareM = 0.25;

/** Enough squares across anything that is laid out. */
const rows = 10_000;

export const boxesMeet = (a: Box3, b: Box3): boolean =>
  a.topM > b.bottomM && b.topM > a.bottomM && boundsNear(a, b, 0);

/** Finds the things whose boxes meet a box, in the order of the plan, without going through all of them. */
export function solidsAbout(solids: readonly Solid[]): (box: Box3) => readonly Solid[] {
  const squares = new Map<number, number[]>();
  solids.forEach(({ box }, index) => {
    for (const square of squaresOf(box)) {
      const others = squares.get(square);
      if (others) others.push(index);
      else squares.set(square, [index]);
    }
  });
  return (box) => {
    const found = new Set<number>();
    for (const square of squaresOf(box)) {
      for (const index of squares.get(square) ?? []) {
        const solid = solids[index];
        if (solid && boxesMeet(box, solid.box)) found.add(index);
      }
    }
    return [...found].sort((a, b) => a - b).flatMap((index) => solids[index] ?? []);
  };
}

function squaresOf({ leastXM, mostXM, leastYM, mostYM }: Box3): number[] {
  const found: number[] = [];
  const lastColumn = Math.floor(mostXM / squareM);
  const lastRow = Math.floor(mostYM / squareM);
  for (let column = Math.floor(leastXM / squareM); column <= lastColumn; column++) {
    for (let row = Math.floor(leastYM / squareM); row <= lastRow; row++) found.push(column * rows + row);
  }
  return found;
}
