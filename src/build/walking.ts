import { union } from '../calc/space/clip.ts';
import { pointToEdge } from '../calc/space/distance.ts';
import { letsThrough, type Passage, type WalkingPlan, widestPassages } from '../calc/space/passage.ts';
import { edgesOf, type Outline, type Point } from '../calc/space/plane.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Layout, Solid } from './layout.ts';
import {
  beyond,
  type Doorway,
  doorwaysOf,
  isBlocked,
  reachedAt,
  type WalkingFloor,
  walkingFloor,
} from './walking-floor.ts';

export interface WaySide {
  readonly at: Point;
  /** The thing, or the part of the van; undefined for a wall. */
  readonly of?: string;
}

export interface NarrowSpot {
  readonly at: Point;
  readonly between: readonly [WaySide, WaySide];
}

export interface Way {
  /** The thing that it leads to. */
  readonly to: string;
  readonly path: PlanPath;
  /** The door that it begins at. */
  readonly from: string;
  /** 0 if there is none. */
  readonly widthM: number;
  readonly narrowest?: NarrowSpot;
}

export interface Ways {
  /** The door with the better ways. */
  readonly from: string;
  /** To each thing by the better door, in the order of the plan. */
  readonly ways: readonly Way[];
}

/** A layout does not change, and several checks and the drawing ask for its ways. */
const known = new WeakMap<Layout, readonly Ways[]>();

/** The clear ways from each door to every thing with a use. */
export function waysByDoor(layout: Layout): readonly Ways[] {
  const before = known.get(layout);
  if (before) return before;
  const floor = walkingFloor(layout);
  const goals = goalsOf(layout);
  const targets = goals.map((solid) => reachedAt(targetOf(solid), floor));
  const found = doorwaysOf(layout, floor).map((doorway): Ways => {
    const passages = passagesFrom(floor, doorway, targets);
    return {
      from: doorway.name,
      ways: goals.map(({ name, path }, index) => ({
        to: name,
        path,
        from: doorway.name,
        ...(passages[index] ?? { widthM: 0 }),
      })),
    };
  });
  known.set(layout, found);
  return found;
}

/** Things that someone goes to. */
export const goalsOf = ({ solids }: Layout): Solid[] =>
  solids.filter(({ use, whereabouts }) => use !== undefined && whereabouts === 'inside');

export const targetOf = ({ name, prism, box, hosts }: Solid) => ({
  name,
  outline: prism.outline,
  box,
  hosts,
});

/**
 * The clear ways from the door to every bed, seat, cooker, sink, toilet, shower, worktop, table, wardrobe of the
 * layout, each by the door from which it is widest; undefined without a placed door.
 */
export function waysFromDoor(layout: Layout): Ways | undefined {
  const [first, ...others] = waysByDoor(layout);
  if (!first) return undefined;
  const ways = first.ways.map((way, index) =>
    others.reduce((best, { ways: more }) => {
      const other = more[index];
      return other && other.widthM > best.widthM ? other : best;
    }, way),
  );
  const used = (door: string): number => ways.filter(({ from }) => from === door).length;
  const best = others.reduce((better, door) => (used(door.from) > used(better.from) ? door : better), first);
  return { from: best.from, ways };
}

export interface NamedPassage {
  readonly widthM: number;
  readonly narrowest?: NarrowSpot;
}

/** A plan to walk on, in at one door or within the walls, and the names of its obstacles in their order. */
export function walkingPlanOf(
  { outline, obstacles }: WalkingFloor,
  doorway?: Doorway,
): Pick<WalkingPlan, 'floor' | 'obstacles'> & { readonly names: readonly string[] } {
  const [joined = outline] = doorway ? union([outline, doorway.passage]).outlines : [];
  return {
    floor: joined,
    obstacles: obstacles.map((obstacle) => obstacle.outline),
    names: obstacles.map(({ name }) => name),
  };
}

/** The widest ways in at a door to each of several things, which are reached at any of their outlines. */
export function passagesFrom(
  floor: WalkingFloor,
  doorway: Doorway,
  targets: readonly (readonly Outline[])[],
): NamedPassage[] {
  if (isBlocked(doorway, floor)) return targets.map(() => ({ widthM: 0 }));
  const inside = targets.map((outlines) => beyond(doorway, outlines));
  return widestOf(walkingPlanOf(floor, doorway), doorway.start, inside);
}

/** Tells whether a way at least this wide leads in at a door to one thing and another. */
export function waysAtLeast(
  floor: WalkingFloor,
  doorway: Doorway,
  widthM: number,
): (target: readonly Outline[]) => boolean {
  if (isBlocked(doorway, floor)) return () => false;
  const { start } = doorway;
  const leadsTo = letsThrough({ ...walkingPlanOf(floor, doorway), start, reachM: 0 }, widthM);
  return (target) => leadsTo(beyond(doorway, target));
}

/** The widest way inside the van between two things. */
export function passageBetween(
  floor: WalkingFloor,
  starts: readonly Outline[],
  target: readonly Outline[],
): NamedPassage {
  const plan = walkingPlanOf(floor);
  return widest(starts.flatMap((start) => widestOf(plan, start, [target])));
}

/** Whether a way at least this wide leads from one thing to another inside the van. */
export function isWayBetween(
  floor: WalkingFloor,
  starts: readonly Outline[],
  target: readonly Outline[],
  widthM: number,
): boolean {
  const plan = walkingPlanOf(floor);
  return starts.some((start) => letsThrough({ ...plan, start, reachM: 0 }, widthM)(target));
}

function widestOf(
  plan: ReturnType<typeof walkingPlanOf>,
  start: Outline,
  targets: readonly (readonly Outline[])[],
): NamedPassage[] {
  const { floor, obstacles } = plan;
  const passages = widestPassages({ floor, obstacles, start, goals: targets.flat(), reachM: 0 });
  let from = 0;
  return targets.map(({ length }) => {
    const best = widest(passages.slice(from, from + length).map((passage) => withNames(passage, plan)));
    from += length;
    return best;
  });
}

const widest = (passages: readonly NamedPassage[]): NamedPassage =>
  passages.reduce((best, next) => (next.widthM > best.widthM ? next : best), { widthM: 0 });

function withNames({ widthM, narrowest }: Passage, plan: ReturnType<typeof walkingPlanOf>): NamedPassage {
  if (!narrowest) return { widthM };
  const { at } = narrowest;
  const [one, other] = narrowest.between.map(({ at: point, obstacle }): WaySide => {
    const of = obstacle === undefined ? undefined : plan.names[obstacle];
    return { at: point, ...(of !== undefined && { of }) };
  });
  if (!one || !other) return { widthM };
  // A thing that is reached over part of a cupboard's face has the rest of that face beside it.
  const facing = one.of === other.of ? opposite(one, at, widthM / 2, plan) : other;
  return { widthM, narrowest: { at, between: [one, facing] } };
}

/** Lengths from outlines that were cut and from ones that were not. */
const sameWithinM = 0.002;

/** Of what a disc at `at` touches, that which is the most opposite to one side. */
function opposite(
  { at: side }: WaySide,
  at: Point,
  radiusM: number,
  { floor, obstacles, names }: ReturnType<typeof walkingPlanOf>,
): WaySide {
  let best: WaySide = { at: side };
  let leastDot = Number.POSITIVE_INFINITY;
  [floor, ...obstacles].forEach((outline, index) => {
    for (const edge of edgesOf(outline)) {
      const { distanceM, to } = pointToEdge(at, edge);
      const dot = (to.xM - at.xM) * (side.xM - at.xM) + (to.yM - at.yM) * (side.yM - at.yM);
      if (Math.abs(distanceM - radiusM) > sameWithinM || dot >= leastDot) continue;
      leastDot = dot;
      const of = index === 0 ? undefined : names[index - 1];
      best = { at: to, ...(of !== undefined && { of }) };
    }
  });
  return best;
}
