import type { Layout, ShellOpening, Solid } from '../build/layout.ts';
import {
  isWayBetween,
  type NarrowSpot,
  passageBetween,
  targetOf,
  waysAtLeast,
  waysByDoor,
} from '../build/walking.ts';
import {
  type Doorway,
  doorwaysOf,
  reachedAt,
  type WalkingFloor,
  walkingFloor,
} from '../build/walking-floor.ts';
import { offsetRoughly } from '../calc/space/clip.ts';
import { boundsApartM, distanceBetween } from '../calc/space/distance.ts';
import { boundsOf, type Outline, outlineArea, rectangle } from '../calc/space/plane.ts';
import { escapeOpeningLeast, opensAsWideAs } from '../catalogue/fit-limits.ts';
import { areaOf, coversOf, inPlane, isLying } from './covering.ts';

/* What leads out from a bed. The lengths here are own choices. */

/** From a bed one gets to an opening that is this near to it. */
export const besideBedM = 0.3;

/** An opening may be covered by this part of it. */
export const coveredShare = 0.1;

/** Openings of one wall closer together than this are one way out: one fire closes both. */
export const apartM = 1;

/** A way this near to a cooker is past it. */
export const pastCookerM = 0.5;

/** A way out that the plan shows. */
export interface Exit {
  readonly opening: ShellOpening;
  /** Undefined where it is over or beside the bed. */
  readonly wayM?: number;
  /** Where the way is as narrow as that. */
  readonly narrowest?: NarrowSpot | undefined;
  readonly pastCooker: boolean;
}

/** An opening that is no way out from this bed, and why. */
export interface NoExit {
  readonly opening: ShellOpening;
  readonly wayM?: number;
  readonly narrowest?: NarrowSpot | undefined;
  readonly coveredBy?: string;
  /** How much of it is covered; unknown of one behind the bed itself. */
  readonly covered?: Covered;
}

interface Covered {
  readonly areaM2: number;
  readonly ofM2: number;
}

/** Something stands in front of it. */
interface Hidden {
  readonly coveredBy: string;
  readonly covered?: Covered;
}

export interface Exits {
  readonly open: readonly Exit[];
  readonly closed: readonly NoExit[];
}

/** Where the ways out begin. */
interface Bedside {
  readonly layout: Layout;
  readonly floor: WalkingFloor;
  readonly bed: Solid;
  /** What one touches who stands beside the bed. */
  readonly bedside: readonly Outline[];
  /** Cookers with the room about them that a fire takes. */
  readonly grown: readonly Outline[];
  readonly leastWayM: number;
  /** Whether something is reached from a door by a way wide enough while the cookers burn. */
  readonly isReachedBesides: (doorway: Doorway, target: readonly Outline[]) => boolean;
}

/** Finds what leads out from one bed and another by ways of at least this width. */
export function exitsIn(layout: Layout, leastWayM: number): (bed: Solid) => Exits {
  const floor = walkingFloor(layout);
  const grown = aboutCookers(layout);
  const besidesFrom = new Map<string, ReturnType<typeof waysAtLeast>>();
  const isReachedBesides = (doorway: Doorway, target: readonly Outline[]): boolean => {
    const ways = besidesFrom.get(doorway.name) ?? waysAtLeast(besides(floor, grown), doorway, leastWayM);
    besidesFrom.set(doorway.name, ways);
    return ways(target);
  };
  return (bed) => {
    const bedside = reachedAt(targetOf(bed), floor);
    return exitsFrom({ layout, floor, bed, bedside, grown, leastWayM, isReachedBesides });
  };
}

function exitsFrom(from: Bedside): Exits {
  const { layout, leastWayM } = from;
  const open: Exit[] = [];
  const closed: NoExit[] = [];
  for (const opening of layout.openings) {
    if (opening.kind !== 'door' && !opening.escape) continue;
    const exit = throughDoor(from, opening);
    const other = opening.escape ? throughOpening(from, opening) : undefined;
    if (exit && (exit.wayM ?? 0) >= leastWayM) open.push(exit);
    else if (other && !('coveredBy' in other) && (other.wayM ?? leastWayM) >= leastWayM) open.push(other);
    else closed.push({ opening, ...(other ?? exit) });
  }
  return { open, closed };
}

const aboutCookers = ({ solids }: Layout): readonly Outline[] => {
  const cookers = solids.filter(({ use, whereabouts }) => use === 'cooker' && whereabouts === 'inside');
  return cookers.length === 0
    ? []
    : // Half a metre is no measure for tenths of millimetres, and each edge of an arc would cost its part.
      offsetRoughly(
        cookers.map(({ prism }) => prism.outline),
        pastCookerM,
      ).outlines;
};

/** The floor that is left while the cookers burn. */
const besides = (floor: WalkingFloor, grown: readonly Outline[]): WalkingFloor => ({
  ...floor,
  obstacles: [
    ...floor.obstacles,
    ...grown.map((outline) => ({
      name: 'cooker',
      outline,
      bounds: floor.bounds,
      bottomM: 0,
      root: '',
    })),
  ],
});

function throughDoor(
  { layout, floor, bed, bedside, grown, leastWayM, isReachedBesides }: Bedside,
  opening: ShellOpening,
): Exit | undefined {
  const ways = waysByDoor(layout).find(({ from }) => from === opening.name)?.ways;
  const way = ways?.find(({ to }) => to === bed.name);
  const doorway = doorwaysOf(layout, floor).find(({ name }) => name === opening.name);
  if (!way || !doorway) return undefined;
  const { widthM: wayM, narrowest } = way;
  const pastCooker = () => !isReachedBesides(doorway, bedside);
  const isPast = grown.length > 0 && wayM >= leastWayM && pastCooker();
  return { opening, wayM, narrowest, pastCooker: isPast };
}

function throughOpening(
  { layout, floor, bed, bedside, grown, leastWayM }: Bedside,
  opening: ShellOpening,
): Exit | Hidden {
  const outline = insideOf(opening, floor);
  const isBesideBed = fromBedM(outline, bed) <= besideBedM;
  const clear = isBesideBed ? aboveBed(opening, bed) : opening;
  if (!clear) return { coveredBy: bed.name };
  const isOfBed = ({ box }: Solid) => isBesideBed && box.topM <= bed.box.topM;
  const cover = coverOf(layout, clear, isOfBed);
  if (cover) return cover;
  if (isBesideBed) {
    const isPast = grown.some((zone) => distanceBetween(zone, outline).distanceM === 0);
    return { opening, pastCooker: isPast };
  }
  const box = { ...opening.box, ...boundsOf(outline) };
  const target = { name: opening.name, outline, box, hosts: [] };
  const { widthM: wayM, narrowest } = passageBetween(floor, bedside, reachedAt(target, floor));
  const pastCooker = () => !isWayBetween(besides(floor, grown), bedside, reachedAt(target, floor), leastWayM);
  const isPast = grown.length > 0 && wayM >= leastWayM && pastCooker();
  return { opening, wayM, narrowest, pastCooker: isPast };
}

const fromBedM = (outline: Outline, bed: Solid): number =>
  distanceBetween(outline, bed.prism.outline).distanceM;

/** How far an opening is from a bed on the plan. */
export const openingFromBedM = (opening: ShellOpening, bed: Solid, layout: Layout): number =>
  fromBedM(insideOf(opening, walkingFloor(layout)), bed);

/** Where on the plan one is at an opening: from its surface to a little inside the walls. */
function insideOf({ box, surface }: ShellOpening, { bounds }: WalkingFloor): Outline {
  const inM = 0.01;
  let { leastXM, mostXM, leastYM, mostYM } = box;
  if (surface === 'left wall') mostYM = bounds.leastYM + inM;
  if (surface === 'right wall') leastYM = bounds.mostYM - inM;
  if (surface === 'bulkhead') mostXM = inM;
  if (surface === 'rear doors') leastXM = bounds.mostXM - inM;
  return rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM);
}

/** What of an opening beside a bed is above it; undefined if too little is. */
function aboveBed(opening: ShellOpening, bed: Solid): ShellOpening | undefined {
  const { box, surface } = opening;
  const hiddenM = Math.max(0, bed.box.topM - box.bottomM);
  if (isLying(surface) || hiddenM === 0) return opening;
  const heightM = box.topM - box.bottomM;
  const widthM = Math.max(box.mostXM - box.leastXM, box.mostYM - box.leastYM);
  const leftM = heightM - hiddenM;
  const isEnough = leftM > 0 && opensAsWideAs(escapeOpeningLeast, widthM, leftM);
  if (!isEnough && hiddenM > coveredShare * heightM) return undefined;
  return { ...opening, box: { ...box, bottomM: box.bottomM + hiddenM } };
}

/** What stands in front of what is needed of an opening, if it covers more than a little of that. */
function coverOf(
  layout: Layout,
  opening: ShellOpening,
  isLeftOut: (solid: Solid) => boolean,
): Hidden | undefined {
  const hole = inPlane(opening);
  const covers = coversOf(opening, hole, layout).filter(({ solid }) => !isLeftOut(solid));
  const covered = {
    areaM2: areaOf(covers.flatMap(({ onOpening }) => onOpening)),
    ofM2: outlineArea(hole),
  };
  if (covered.areaM2 <= coveredShare * covered.ofM2) return undefined;
  const [first, ...others] = covers;
  const most = others.reduce(
    (best, next) => (areaOf(next.onOpening) > areaOf(best?.onOpening ?? []) ? next : best),
    first,
  );
  return most && { coveredBy: most.solid.name, covered };
}

/** Whether one fire closes both: side by side in one surface, or both past the cooker. */
export function isOneWay(one: Exit, other: Exit): boolean {
  return isSideBySide(one.opening, other.opening) || (one.pastCooker && other.pastCooker);
}

export function isSideBySide(one: ShellOpening, other: ShellOpening): boolean {
  if (one.surface !== other.surface) return false;
  const { alongM, upM } = betweenOpenings(one, other);
  return Math.hypot(alongM, upM) < apartM - 1e-6;
}

/** How far two openings of one wall are apart, along it and up or down. */
export const betweenOpenings = (one: ShellOpening, other: ShellOpening) => ({
  alongM: boundsApartM(one.box, other.box),
  upM: Math.max(0, one.box.bottomM - other.box.topM, other.box.bottomM - one.box.topM),
});

/** As many of the ways out as are independent of each other: from each in turn, what goes with it. */
export function independent(open: readonly Exit[]): readonly Exit[] {
  let best: readonly Exit[] = [];
  for (const first of open) {
    const chosen = [first];
    for (const next of open)
      if (next !== first && !chosen.some((each) => isOneWay(each, next))) chosen.push(next);
    if (chosen.length > best.length) best = chosen;
  }
  return best;
}
