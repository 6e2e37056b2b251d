import type { Box3, Layout, Solid, Use } from '../build/layout.ts';
import { faceWidthM, footprintOf, stripBefore } from '../build/sweeps.ts';
import { type Bounds, boundsOf, type Outline, rectangle, TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import type { Face } from '../calc/space/swing.ts';
import type { PlanPath } from '../engine/finding.ts';

/** Where one stands to use a thing. */
export interface StandingPlace {
  readonly thing: Solid;
  readonly path: PlanPath;
  readonly outline: Outline;
  /** What one stands on, above the floor. */
  readonly floorM: number;
}

/** The spot that a standing person needs, across and into the strip before a thing, m: own choice. */
export const standingSpot = { widthM: 0.4, depthM: 0.3 } as const;

/** How deep one stands before a thing whose plan says nothing: common practice, no source. */
const usualDepthM = 0.5;

/** More free floor than this before a thing does not make it more likely that one stands there: own choice. */
const enoughDepthM = 0.6;

/** What hangs no lower than this is overhead; what reaches lower stands in the way. */
export const overheadFromM = 1.2;

const stoodAt: readonly Use[] = ['cooker', 'sink', 'shower', 'wardrobe', 'worktop'];

/**
 * The standing places of things that one cooks, washes or dresses at: the strips that the thing needs, or else those of
 * what it stands in or on, or else a usual strip on the side with the most free floor; for a shower its own footprint.
 * Of a strip, only the part before the thing itself counts. Where it lies outside the van, one stands outdoors.
 */
export function standingPlaces(layout: Layout): readonly StandingPlace[] {
  return layout.solids
    .filter(({ use, whereabouts }) => use !== undefined && stoodAt.includes(use) && whereabouts === 'inside')
    .flatMap((thing) => (thing.use === 'shower' ? [inShower(thing)] : beforeThing(thing, layout)));
}

const inShower = (thing: Solid): StandingPlace => ({
  thing,
  path: thing.path,
  outline: thing.prism.outline,
  floorM: Math.max(0, thing.box.bottomM),
});

function beforeThing(thing: Solid, layout: Layout): StandingPlace[] {
  const family = [thing.name, ...thing.hosts];
  const owner = family.find((name) => layout.useSpaces.some(({ of }) => of === name));
  const strips =
    owner === undefined ? [usualStrip(thing, layout)] : layout.useSpaces.filter(({ of }) => of === owner);
  return strips.flatMap(({ side, outline, path }) => {
    const inside = clipped(stretchBefore(boundsOf(outline), thing.box, side), bayOf(layout));
    return inside && standsIn(inside, boundsOf(outline), side)
      ? [{ thing, path, outline: outlineOf(inside), floorM: 0 }]
      : [];
  });
}

const bayOf = ({ shell, widthM }: Layout): Bounds => ({
  leastXM: 0,
  mostXM: shell.lengthM,
  leastYM: -widthM / 2,
  mostYM: widthM / 2,
});

function clipped(a: Bounds, b: Bounds): Bounds | undefined {
  const both = {
    leastXM: Math.max(a.leastXM, b.leastXM),
    mostXM: Math.min(a.mostXM, b.mostXM),
    leastYM: Math.max(a.leastYM, b.leastYM),
    mostYM: Math.min(a.mostYM, b.mostYM),
  };
  const isThick = (from: number, to: number) => to - from > TOUCH_TOLERANCE_M;
  return isThick(both.leastXM, both.mostXM) && isThick(both.leastYM, both.mostYM) ? both : undefined;
}

const outlineOf = ({ leastXM, leastYM, mostXM, mostYM }: Bounds): Outline =>
  rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM);

const looksAlong = (side: Face): boolean => side === 'front' || side === 'rear';

/** How deep something is as one comes up to a face, m. */
const depthOf = ({ leastXM, leastYM, mostXM, mostYM }: Bounds, side: Face): number =>
  looksAlong(side) ? mostXM - leastXM : mostYM - leastYM;

/** Whether enough of a strip is inside to stand in. A plan that asks for less depth than a person takes gets that. */
const standsIn = (inside: Bounds, strip: Bounds, side: Face): boolean =>
  depthOf(inside, side) >= Math.min(standingSpot.depthM, depthOf(strip, side)) - TOUCH_TOLERANCE_M;

/** The part of a strip that is before a thing, and at least as wide as a person; all of it if the thing is elsewhere. */
function stretchBefore(strip: Bounds, box: Box3, side: Face): Bounds {
  const [from, to] = looksAlong(side) ? [box.leastYM, box.mostYM] : [box.leastXM, box.mostXM];
  const spareM = Math.max(0, standingSpot.widthM - (to - from)) / 2;
  const [start, end] = [from - spareM, to + spareM];
  const part = looksAlong(side)
    ? { ...strip, leastYM: start, mostYM: end }
    : { ...strip, leastXM: start, mostXM: end };
  return clipped(part, strip) ?? strip;
}

interface Strip {
  readonly side: Face;
  readonly outline: Outline;
  readonly path: PlanPath;
}

const faces: readonly Face[] = ['front', 'rear', 'left', 'right'];

/** Before the face of the outermost host that looks at the most free floor; of equal ones the longest. */
function usualStrip(thing: Solid, layout: Layout): Strip {
  const outermost = layout.solids.find(({ name }) => name === thing.hosts.at(-1)) ?? thing;
  const footprint = footprintOf(outermost.box);
  const rated = faces.map((side) => ({
    side,
    usefulM: Math.min(enoughDepthM, freeDepthM(thing, outermost, side, layout)),
    lengthM: faceWidthM(footprint, side),
  }));
  const [best] = rated.sort((a, b) => b.usefulM - a.usefulM || b.lengthM - a.lengthM);
  const side = best?.side ?? 'front';
  return { side, outline: stripBefore(outermost.box, side, usualDepthM), path: thing.path };
}

/** Bounds as one sees them who looks at a face: how far out of it they begin and end, and from where to where along it. */
function seenFrom(side: Face, { leastXM, leastYM, mostXM, mostYM }: Bounds) {
  if (side === 'rear') return { nearM: leastXM, farM: mostXM, fromM: leastYM, toM: mostYM };
  if (side === 'front') return { nearM: -mostXM, farM: -leastXM, fromM: leastYM, toM: mostYM };
  if (side === 'right') return { nearM: leastYM, farM: mostYM, fromM: leastXM, toM: mostXM };
  return { nearM: -mostYM, farM: -leastYM, fromM: leastXM, toM: mostXM };
}

/** How far the floor is free before a face of the host, over the width of the thing. */
function freeDepthM(thing: Solid, host: Solid, side: Face, layout: Layout): number {
  const faceM = seenFrom(side, host.box).farM;
  const { fromM, toM } = seenFrom(side, thing.box);
  const others = layout.solids.filter(({ name, hosts }) => name !== host.name && !hosts.includes(host.name));
  const inTheWay = [...others, ...layout.fixedParts.filter(({ walkable }) => !walkable)]
    .filter(({ prism }) => prism.bottomM < overheadFromM && prism.topM > TOUCH_TOLERANCE_M)
    .map(({ prism }) => seenFrom(side, boundsOf(prism.outline)))
    .filter(
      (seen) =>
        seen.farM > faceM + TOUCH_TOLERANCE_M &&
        seen.fromM < toM - TOUCH_TOLERANCE_M &&
        seen.toM > fromM + TOUCH_TOLERANCE_M,
    )
    .map(({ nearM }) => nearM - faceM);
  return Math.max(0, Math.min(seenFrom(side, bayOf(layout)).farM - faceM, ...inTheWay));
}
