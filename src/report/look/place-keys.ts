import type { Spot } from './canvas.ts';
import { arm } from './glyphs.ts';
import { cellHeight } from './scale.ts';
import { boxOf, type Drawn, type Sheet, spotsWithin } from './sheet.ts';

/** How much worse than the middle a place for a key is, in columns. Own choice. */
const worse = {
  /** Inside something smaller, where it would seem to be the key of that. */
  inAnother: 1000,
  onOwnEdge: 100,
  onJoint: 200,
  onForeignLine: 400,
  onWall: 400,
  /** Two keys side by side read like one. */
  besideKey: 600,
  overTone: 1,
} as const;

/**
 * Finds a place for the key of each thing in a view: in its middle, or beside that where something else stands; on its
 * edge where it is too small to have an inside. Small things choose first, for they have the fewest places. Things for
 * which there is none are missing from what it returns.
 */
export function placeKeys(sheet: Sheet, lengthOf: (thing: string) => number): Map<string, Spot> {
  const { canvas, drawn } = sheet;
  const places = new Map<string, Spot>();
  const taken = new Set<string>();
  /** How many smaller things a cell belongs to. */
  const owners = new Map<string, number>();
  const bySize = [...drawn].sort((a, b) => areaOf(a) - areaOf(b));
  for (const each of bySize) {
    const inside = each.isGap ? [] : spotsWithin(each.corners, canvas);
    const edge = new Set(each.edge.map(nameOf));
    const length = lengthOf(each.thing);
    const middle = middleOf(each);
    let best: { readonly spot: Spot; readonly cost: number } | undefined;
    for (const spot of [...inside, ...each.edge]) {
      let cost =
        Math.hypot(spot.column + (length - 1) / 2 - middle.column, cellHeight * (spot.row - middle.row)) +
        worse.inAnother * (owners.get(nameOf(spot)) ?? 0);
      const neighbours = [-1, length].map((by) => nameOf({ column: spot.column + by, row: spot.row }));
      if (neighbours.some((name) => taken.has(name))) cost += worse.besideKey;
      for (let at = 0; at < length; at += 1) {
        const cell = { column: spot.column + at, row: spot.row };
        if (canvas.isTaken(cell) || taken.has(nameOf(cell))) cost = Infinity;
        const met = canvas.armsAt(cell).filter((weight) => weight !== arm.none);
        if (canvas.isToned(cell)) cost += worse.overTone;
        if (met.length === 0) continue;
        if (!edge.has(nameOf(cell))) cost += worse.onForeignLine;
        else if (!each.isGap && met.includes(arm.heavy)) cost += worse.onWall;
        else cost += met.length === 2 ? worse.onOwnEdge : worse.onJoint;
      }
      if (cost < (best?.cost ?? Infinity)) best = { spot, cost };
    }
    for (const spot of [...inside, ...each.edge])
      owners.set(nameOf(spot), (owners.get(nameOf(spot)) ?? 0) + 1);
    if (!best) continue;
    if (!places.has(each.thing)) places.set(each.thing, best.spot);
    for (let at = 0; at < length; at += 1)
      taken.add(nameOf({ column: best.spot.column + at, row: best.spot.row }));
  }
  return places;
}

const nameOf = ({ column, row }: Spot): string => `${column} ${row}`;

function areaOf({ corners }: Drawn): number {
  const { left, right, top, bottom } = boxOf(corners);
  return (right - left + 1) * (bottom - top + 1);
}

function middleOf({ corners }: Drawn): Spot {
  const { left, right, top, bottom } = boxOf(corners);
  return { column: (left + right) / 2, row: (top + bottom) / 2 };
}
