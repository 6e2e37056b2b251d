import type { Layout, Solid } from '../build/layout.ts';
import { longestLying } from '../calc/space/fit-in.ts';
import { TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import { bodyCorrections, measureFor } from '../catalogue/body-measures.ts';
import { exceeds } from '../engine/judge.ts';
import { narrowestBetween } from './clear-height.ts';
import { longAndShortM, type Surface, surfaceOf } from './lying-surface.ts';

/*
 * Which beds there are, how long and wide they are, and who sleeps in them.
 */

/** Above the bottom of a mattress, the height within which a lying body touches a wall that leans in: own choice. */
const bodyAboveM = 0.3;

/** A mattress on a bed is not one more bed. */
export function bedsOf({ solids }: Layout): readonly Solid[] {
  const all = solids.filter(({ use, whereabouts }) => use === 'bed' && whereabouts !== 'under the floor');
  const names = new Set(all.map(({ name }) => name));
  return all.filter(({ hosts }) => !hosts.some((host) => names.has(host)));
}

export interface Bed {
  readonly bed: Solid;
  /** What one lies on. */
  readonly surface: Surface;
  readonly lengthM: number;
  readonly widthM: number;
  /** What the walls, which lean in over its ends, take of its length. */
  readonly lostM: number;
  /** Clear between the walls at the height of the body, where the bed lies across the van. */
  readonly acrossM?: number;
  /** The heights between which the body lies. */
  readonly body?: { readonly fromM: number; readonly toM: number };
}

function measuredBed(bed: Solid, room: Layout): Bed {
  const surface = surfaceOf(bed, room);
  const { box, cushions } = surface;
  const [longM, widthM] = longAndShortM(box);
  const isAcross = box.mostYM - box.leastYM > box.mostXM - box.leastXM;
  if (!isAcross || bed.whereabouts !== 'inside') return { bed, surface, lengthM: longM, widthM, lostM: 0 };
  // Without a mattress in the plan, the body lies on the bed's top or a mattress does.
  const fromM = cushions.length > 0 ? box.bottomM : box.topM;
  const toM = fromM + bodyAboveM;
  const halfM = narrowestBetween(room.shell, fromM, toM) / 2;
  const { centreYM } = room.shell;
  const clearM = Math.min(box.mostYM, centreYM + halfM) - Math.max(box.leastYM, centreYM - halfM);
  const isCut = longM - clearM > TOUCH_TOLERANCE_M;
  return {
    bed,
    surface,
    lengthM: isCut ? Math.max(clearM, widthM) : longM,
    widthM,
    lostM: isCut ? longM - clearM : 0,
    acrossM: 2 * halfM,
    body: { fromM, toM },
  };
}

export interface Peopled extends Bed {
  readonly sleepers: number;
  /** Of those whose stature is known; undefined where nobody of them sleeps here. */
  readonly tallestM: number | undefined;
}

/** Puts the sleepers in the beds: one in each, the others with them where it is widest; the tallest where it is longest. */
export function peopled(
  all: readonly Solid[],
  room: Layout,
  staturesM: readonly number[],
): readonly Peopled[] {
  const { sleepers } = room;
  const beds = all.map((bed) => measuredBed(bed, room));
  const places = new Map(beds.map((each) => [each, 1]));
  for (let more = beds.length; more < sleepers; more += 1) {
    const roomEach = (each: Bed) => each.widthM / ((places.get(each) ?? 0) + 1);
    const [widest] = [...beds].sort((a, b) => roomEach(b) - roomEach(a));
    if (widest) places.set(widest, (places.get(widest) ?? 0) + 1);
  }
  const waiting = [...staturesM].sort((a, b) => b - a);
  const tallest = new Map(
    [...beds]
      .sort((a, b) => b.lengthM - a.lengthM)
      .map((each) => [each, waiting.splice(0, places.get(each) ?? 1)[0]] as const),
  );
  return beds.map((each) => ({
    ...each,
    sleepers: places.get(each) ?? 1,
    tallestM: tallest.get(each),
  }));
}

/** Shoulders of a broad man, clothed. */
export const shouldersM =
  measureFor('shoulder breadth').p95M + bodyCorrections.indoorClothingOnShoulders.valueM;

/** How someone lies in a bed, and what it takes. */
export interface Lying {
  readonly how: 'straight' | 'across the corners' | 'not stretched out';
  /** The length of the body. */
  readonly lyingM: number;
  readonly wantedM: number;
  /** The longest body on the diagonal, where anybody as broad lies there at all. */
  readonly diagonalM?: number;
  /** The same, where it is longer than straight. */
  readonly crossM?: number;
}

export function lyingIn({ lengthM, widthM }: Bed, statureM: number, clearanceM: number): Lying {
  const lyingM = statureM + bodyCorrections.supine.valueM;
  const body = { lyingM, wantedM: lyingM + clearanceM };
  if (!exceeds(lyingM, lengthM)) return { how: 'straight', ...body };
  const diagonalM = longestLying(shouldersM, { lengthM, widthM });
  if (diagonalM === undefined) return { how: 'not stretched out', ...body };
  return {
    how: exceeds(lyingM, diagonalM) ? 'not stretched out' : 'across the corners',
    ...body,
    diagonalM,
    ...(diagonalM - lengthM > TOUCH_TOLERANCE_M && { crossM: diagonalM }),
  };
}
