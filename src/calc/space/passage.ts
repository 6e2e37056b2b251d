import { notNegative } from '../argument.ts';
import { difference, intersection, offset, union } from './clip.ts';
import { coveringPlaces, type FreeFloor, freeFloor, isWithin, touchingPlaces } from './contact.ts';
import { distanceBetween } from './distance.ts';
import { type Gap, type GapNet, gapFinder, loopsAround, type Part, partsOf } from './gaps.ts';
import { type NarrowestSpot, spotInGap, spotTouching } from './passage-spot.ts';
import { boundsOf, checked, type Outline, type Point, TOUCH_TOLERANCE_M } from './plane.ts';

/** The plan on which a way is looked for. All outlines are at the height of the person who walks. */
export interface WalkingPlan {
  /** Where there is floor to walk on, inside the walls. */
  readonly floor: Outline;
  /** What stands in the way. They may overlap each other and the edge of the floor. */
  readonly obstacles: readonly Outline[];
  /** What a way begins at, such as the strip inside the door. */
  readonly start: Outline;
  /** What a way is to lead to, each: normally the footprint of a bed, a seat, a sink, itself one of the obstacles. */
  readonly goals: readonly Outline[];
  /** How far from a goal the edge of the disc may stay, ≥ 0; 0 asks it to touch. */
  readonly reachM: number;
}

export interface Passage {
  /** The greatest diameter of a disc that gets through; 0 if not even one of 10 mm does. */
  readonly widthM: number;
  /** Where a wider one is stuck; missing if there is no way. */
  readonly narrowest?: NarrowestSpot;
}

/** A way narrower than this is none. */
const LEAST_WIDTH_M = 0.01;

/** Widths closer together than this are not told apart. */
const RESOLUTION_M = 0.0001;

/** Up to so many parts all gaps are found at once; among more, first the narrow ones, which mostly decide. */
const FEW_PARTS = 150;

/** The first guess at a width that is too great, among many parts; trebled until it is. */
const FIRST_GUESS_M = 0.2;

/** A place where a disc of some width can begin, and the loops of gaps that go round it. */
interface Beginning {
  readonly place: Point;
  readonly loops: readonly boolean[];
}

/** How a disc of some width gets from the start to a goal. */
interface Arrival {
  readonly widthM: number;
  /** Where it touches the start, and where the goal. */
  readonly from: Point;
  readonly to: Point;
  /** The narrowest gap between those two places; none if no gap of the net parts them. */
  readonly gap: Gap | undefined;
}

/** What is the same for every goal, for widths below that of the net. */
interface Scene {
  readonly floor: FreeFloor;
  readonly net: GapNet;
  readonly beginnings: (widthM: number) => readonly Beginning[];
}

interface Goal {
  readonly outline: Outline;
  /** The goal and the free floor within reach of it, as far as they hang together. */
  readonly zones: readonly Outline[];
}

function withReach(outline: Outline, { floor, obstacles, reachM }: Omit<WalkingPlan, 'goals'>): Goal {
  checked(outline, 'A goal');
  if (reachM === 0) return { outline, zones: [outline] };
  const near = difference(intersection(offset([outline], reachM).outlines, [floor]).outlines, obstacles);
  // A hole in it is something that stands within reach; filling it lets nobody stand there.
  const joined = union([outline, ...near.outlines]).outlines;
  return { outline, zones: joined.filter((zone) => distanceBetween(zone, outline).distanceM === 0) };
}

/** How a disc of this width gets to the goal by the widest way, or undefined if it does not get there. */
function arrival(scene: Scene, goal: Goal, widthM: number): Arrival | undefined {
  const beginnings = scene.beginnings(widthM);
  if (beginnings.length === 0) return undefined;
  const there = beginnings.find(({ place }) => isWithin(place, goal.zones, widthM / 2 + TOUCH_TOLERANCE_M));
  if (there !== undefined) return { widthM, from: there.place, to: there.place, gap: undefined };
  let best: Arrival | undefined;
  for (const to of touchingPlaces(scene.floor, goal.zones, widthM / 2)) {
    const loops = loopsAround(scene.net, to);
    for (const { place: from, loops: before } of beginnings) {
      const gap = scene.net.closing.find((_, index) => loops[index] !== before[index]);
      if (gap === undefined) return { widthM, from, to, gap };
      if (gap.widthM >= widthM && gap.widthM > (best?.gap?.widthM ?? 0)) best = { widthM, from, to, gap };
    }
  }
  return best;
}

/**
 * The widest arrival between one that is known and a width that does not arrive, and the least width found that does
 * not. The gap that is the narrowest on the way found so far is tried before halving: nearly always it decides.
 */
function widest(
  scene: Scene,
  goal: Goal,
  known: Arrival,
  stuckM: number,
): { readonly best: Arrival; readonly stuckM: number } {
  const { widthM, gap } = known;
  // A little more than the resolution, which cannot be added exactly.
  if (stuckM - widthM < 1.01 * RESOLUTION_M) return { best: known, stuckM };
  let nextM = (widthM + stuckM) / 2;
  if (gap?.widthM === widthM) nextM = widthM + RESOLUTION_M;
  else if (gap !== undefined && gap.widthM < stuckM) nextM = gap.widthM;
  const next = arrival(scene, goal, nextM);
  return next === undefined ? widest(scene, goal, known, nextM) : widest(scene, goal, next, stuckM);
}

/** A gap whose width is not told apart from `widthM`. */
function gapAbout({ closing, tree }: GapNet, widthM: number): Gap | undefined {
  const isAbout = (gap: Gap) => Math.abs(gap.widthM - widthM) < 2 * RESOLUTION_M;
  return closing.find(isAbout) ?? tree.find(isAbout);
}

function passageTo(
  scene: Scene,
  goal: Goal,
  known: Arrival,
  tooWideM: number,
  { start, obstacles }: WalkingPlan,
): Passage {
  const { best, stuckM } = widest(scene, goal, known, tooWideM);
  const { gap, from, to } = best;
  const inSteps = (valueM: number) => Math.round(valueM * 1e4) / 1e4;
  const { net, floor } = scene;
  if (gap !== undefined && gap.widthM <= stuckM) {
    const narrowest = spotInGap(gap, { net, grid: floor.grid, from, to }, obstacles);
    return { widthM: inSteps(gap.widthM), narrowest };
  }
  // Where it is the room beside the goal or the start that is too narrow, its width is known better from the walls.
  const widthM = gapAbout(net, best.widthM)?.widthM ?? best.widthM;
  const clearM = (place: Point) => floor.grid.distanceUpTo(place, best.widthM);
  const narrowest =
    clearM(from) < clearM(to)
      ? spotTouching(start, from, floor.rings, obstacles)
      : spotTouching(goal.outline, to, floor.rings, obstacles);
  return { widthM: inSteps(widthM), narrowest };
}

/**
 * The widest way on the plan from the start to each of several goals: the greatest diameter of a disc that gets there,
 * true clearance all along the way and not a bounding box, and the spot where a wider one is stuck.
 *
 * - The disc stands *free* where no point of an obstacle, nor of what lies outside the floor, is nearer to its centre
 *   than its radius. Touching is allowed: a way of exactly 600 mm lets 600 mm through.
 * - It *touches the start* where its edge comes within 0.5 mm of the start's outline or lies over it.
 * - It *has reached a goal* where its edge comes within `reachM` (and 0.5 mm) of the goal, measured over free floor: its
 *   centre is then within radius + reach. So someone who stands beside a bed has reached it, the bed's own body,
 *   which is an obstacle, notwithstanding; but nobody reaches through a partition, however thin, nor over a body in
 *   between. A goal in a niche narrower than the disc is reached if the disc goes so far into its mouth that it
 *   touches.
 * - The way's width is the greatest diameter for which free places that touch the start and ones that have reached the
 *   goal hang together. Every smaller disc then gets there too.
 *
 * The door's own clear width is part of it only if the floor is drawn out through the doorway and the start lies
 * outside; a goal may lie outside the floor, alongside it. Results come in the order of the goals, in steps of 0.1 mm and
 * right to 0.1 mm for outlines as they are given (for one that stands for a circle see `disc`), where coming within 0.4
 * mm of the start or a goal counts as touching it and staying 0.5 mm away does not. How far a disc goes into a shallow
 * niche is sensitive to that: there a width may differ by a few millimetres.
 *
 * Method. Instead of growing the obstacles and looking whether what is left hangs together, it looks at what parts two
 * places: a disc of diameter d is kept from one to the other exactly if there is a closed loop of convex parts of walls
 * and obstacles, each gap from one to the next narrower than d, that goes round one of the places and not the other.
 * (Where two grown convex parts overlap, their union has no hole, so that every way across from one to the other is as
 * good as the shortest.) Loops are made from a spanning tree of the narrowest gaps and one gap more each; the gap of
 * the first loop that parts the two places is the width of the way between them. Gaps that a third part reaches into
 * are left out, which leaves few per part. A width is then sought such that touching places exist and are not parted.
 * Own derivation from the planar duality of ways and walls; tests compare it with a flood fill.
 *
 * Throws RangeError if an outline has fewer than three corners or encloses nothing, or a value is not finite, farther
 * than 40 m from the origin, or, for the reach, negative.
 */
export function widestPassages(plan: WalkingPlan): Passage[] {
  const { hugeM, parts, sceneBelow } = scenesOf(plan);
  const passages: Passage[] = plan.goals.map(() => ({ widthM: 0 }));
  let open = plan.goals.map((outline, index) => ({ goal: withReach(outline, plan), index }));
  let arrivesM = LEAST_WIDTH_M;
  let guessM = parts.length <= FEW_PARTS ? hugeM : FIRST_GUESS_M;
  while (open.length > 0) {
    const scene = sceneBelow(guessM);
    open = open.filter(({ goal, index }) => {
      if (guessM < hugeM && arrival(scene, goal, guessM) !== undefined) return true;
      const known = arrival(scene, goal, arrivesM);
      if (known !== undefined) passages[index] = passageTo(scene, goal, known, guessM, plan);
      return false;
    });
    arrivesM = guessM;
    guessM = Math.min(hugeM, 3 * guessM);
  }
  return passages;
}

/**
 * Tells whether a way at least this wide leads to one of some goals at least: `widestPassages` where only that is asked,
 * to the same 0.1 mm. It needs no gap that is wider, and no search. Errors as there.
 */
export function letsThrough(
  plan: Omit<WalkingPlan, 'goals'>,
  widthM: number,
): (goals: readonly Outline[]) => boolean {
  const leastM = Math.max(LEAST_WIDTH_M, widthM - RESOLUTION_M / 2);
  const scene = scenesOf(plan).sceneBelow(leastM);
  return (goals) => goals.some((outline) => arrival(scene, withReach(outline, plan), leastM) !== undefined);
}

/** What is the same for all ways on a plan. The scenes must be asked for in the order of their widths. */
function scenesOf(plan: Omit<WalkingPlan, 'goals'>): {
  readonly parts: readonly Part[];
  /** Wider than anything on the plan. */
  readonly hugeM: number;
  readonly sceneBelow: (belowM: number) => Scene;
} {
  notNegative(plan.reachM, 'The reach');
  const { start, obstacles } = plan;
  checked(start, 'The start');
  const free = difference([plan.floor], obstacles);
  const floor = freeFloor(free);
  const parts = partsOf(free);
  const netBelow = gapFinder(parts, floor.grid);
  const { leastXM, leastYM, mostXM, mostYM } = boundsOf(plan.floor);
  const sceneBelow = (belowM: number): Scene => {
    const net = netBelow(belowM);
    const known = new Map<number, readonly Beginning[]>();
    const beginnings = (widthM: number) => {
      const before = known.get(widthM);
      if (before !== undefined) return before;
      const found = [
        ...touchingPlaces(floor, [start], widthM / 2),
        ...coveringPlaces(floor, start, widthM / 2),
      ].map((place) => ({ place, loops: loopsAround(net, place) }));
      known.set(widthM, found);
      return found;
    };
    return { floor, net, beginnings };
  };
  return { parts, hugeM: Math.hypot(mostXM - leastXM, mostYM - leastYM), sceneBelow };
}
