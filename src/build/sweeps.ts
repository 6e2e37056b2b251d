import { disc } from '../calc/space/disc.ts';
import { type Outline, rectangle } from '../calc/space/plane.ts';
import type { Prism } from '../calc/space/prism.ts';
import { doorSweep, drawerTravel, type Face, type Footprint, lidSwing } from '../calc/space/swing.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Plan } from '../plan/schema.ts';
import type { Box3, Leaf, Sweep, UseSpace } from './layout.ts';

type Fixture = NonNullable<Plan['fixtures']>[string];
type Opening = NonNullable<Fixture['opens']>[string];
type Seats = NonNullable<NonNullable<Plan['people']>['seats']>;

export const footprintOf = ({ leastXM, leastYM, mostXM, mostYM }: Box3): Footprint => ({
  xM: leastXM,
  yM: leastYM,
  lengthM: mostXM - leastXM,
  widthM: mostYM - leastYM,
});

/** How wide a face of a box is, as one looks at it. */
export const faceWidthM = ({ lengthM, widthM }: Footprint, face: Face): number =>
  face === 'front' || face === 'rear' ? widthM : lengthM;

/** What the doors, drawers and lids of a thing sweep. */
export function sweepsOf(name: string, opens: Fixture['opens'], box: Box3, path: PlanPath): Sweep[] {
  return Object.entries(opens ?? {}).map(([opening, given]) => {
    const leaf = leafOf(given, box);
    return {
      name: `${opening} of ${name}`,
      path: [...path, 'opens', opening],
      of: name,
      kind: given.kind,
      prism: sweptBy(given.kind, leaf, heightsOf(given, box)),
      leaf,
    };
  });
}

function leafOf({ kind, side, width, from_left, travel, depth, hinge }: Opening, box: Box3): Leaf {
  const whole = footprintOf(box);
  const widthM = width?.value ?? faceWidthM(whole, side);
  const part = partOfFace(whole, side, from_left?.value ?? 0, widthM);
  if (kind === 'door') return { part, side, hinge: hinge ?? 'left', reachM: widthM };
  const behindM = depthBehind(whole, side);
  // An outline may take less than the size that the plan gives, and a lid ends where its thing does.
  if (kind === 'lid') return { part, side, reachM: Math.min(depth?.value ?? behindM, behindM) };
  return { part, side, reachM: withinRange(box, side, travel?.value ?? behindM) };
}

function heightsOf({ kind, above_floor: above, height }: Opening, box: Box3): Heights {
  if (kind === 'lid') return { bottomM: box.topM, topM: box.topM };
  const bottomM = box.bottomM + (above?.value ?? 0);
  return { bottomM, topM: height ? bottomM + height.value : box.topM };
}

type Heights = Pick<Prism, 'bottomM' | 'topM'>;

/** The top of a lid's room follows from its depth. */
function sweptBy(kind: Opening['kind'], leaf: Leaf, { bottomM, topM }: Heights): Prism {
  const { part, side, hinge, reachM } = leaf;
  if (kind === 'lid') return lidSwing(part, bottomM, side, reachM);
  const outline =
    kind === 'drawer' ? drawerTravel(part, side, reachM) : doorSweep(part, side, hinge ?? 'left', reachM);
  return { outline, bottomM, topM };
}

/** The same door with a narrower leaf, the same drawer pulled out less far, the same lid less deep. */
export const withReach = (sweep: Sweep, reachM: number): Sweep => withLeaf(sweep, { reachM });

/** The same door hinged on its other side; undefined for what is no door. */
export function hingedOtherwise(sweep: Sweep): Sweep | undefined {
  const hinge = sweep.leaf?.hinge;
  return hinge && withLeaf(sweep, { hinge: hinge === 'left' ? 'right' : 'left' });
}

function withLeaf(sweep: Sweep, change: Partial<Leaf>): Sweep {
  if (!sweep.leaf || sweep.kind === 'seat') return sweep;
  const leaf = { ...sweep.leaf, ...change };
  return { ...sweep, leaf, prism: sweptBy(sweep.kind, leaf, sweep.prism) };
}

/** The part of a box behind a stretch of one of its faces; from the left as someone sees it who looks at the face. */
function partOfFace(box: Footprint, face: Face, fromLeftM: number, widthM: number): Footprint {
  const { xM, yM } = box;
  const restM = faceWidthM(box, face) - fromLeftM - widthM;
  if (face === 'rear') return { ...box, yM: yM + fromLeftM, widthM };
  if (face === 'front') return { ...box, yM: yM + restM, widthM };
  if (face === 'left') return { ...box, xM: xM + fromLeftM, lengthM: widthM };
  return { ...box, xM: xM + restM, lengthM: widthM };
}

/** How far a drawer comes out and how deep a lid is where the plan does not say: as far as the thing is deep. */
const depthBehind = ({ lengthM, widthM }: Footprint, face: Face): number =>
  face === 'front' || face === 'rear' ? lengthM : widthM;

/** Geometry is exact up to 40 m from the load bay's front; nothing is needed as far as that. */
const rangeM = 39;

function withinRange({ leastXM, leastYM, mostXM, mostYM }: Box3, side: Face, depthM: number): number {
  const faceM = { front: -leastXM, rear: mostXM, left: -leastYM, right: mostYM }[side];
  return Math.min(depthM, rangeM - faceM);
}

/** A strip in front of a face. */
export const stripBefore = (box: Box3, side: Face, depthM: number): Outline =>
  drawerTravel(footprintOf(box), side, withinRange(box, side, depthM));

const allSides: readonly Face[] = ['front', 'rear', 'left', 'right'];

export function useSpacesOf(
  name: string,
  needs: Fixture['needs_space'],
  box: Box3,
  path: PlanPath,
): UseSpace[] {
  return allSides.flatMap((side) => {
    const depthM = needs?.[side]?.value;
    if (depthM === undefined) return [];
    return {
      of: name,
      path: [...path, 'needs_space', side],
      side,
      depthM,
      outline: stripBefore(box, side, depthM),
    };
  });
}

/** A swivelling seat turns between its cushion and its headrest: common practice, no source. */
const turning = { bottomM: 0.4, topM: 1.2 };

export function swivelsOf(
  seats: Seats,
  placeOf: (at: NonNullable<Seats[string]['at']>) => { readonly xM: number; readonly yM: number },
): Sweep[] {
  return Object.entries(seats).flatMap(([name, { at, swivel_radius: radius }]): Sweep[] => {
    if (!at || !radius) return [];
    const pivot = placeOf(at);
    const farthestM = rangeM - Math.max(Math.abs(pivot.xM), Math.abs(pivot.yM));
    if (farthestM <= 0) return [];
    const prism = { outline: disc(pivot, Math.min(radius.value, farthestM)), ...turning };
    return [{ name: `${name} seat`, path: ['people', 'seats', name], of: name, kind: 'seat', prism }];
  });
}

/** Both arches, alike on both sides. */
export const archOutlines = (
  fromFrontM: number,
  lengthM: number,
  archWidthM: number,
  bayWidthM: number,
): readonly [Outline, Outline] => [
  rectangle(fromFrontM, -bayWidthM / 2, lengthM, archWidthM),
  rectangle(fromFrontM, bayWidthM / 2 - archWidthM, lengthM, archWidthM),
];
