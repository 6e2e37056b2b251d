import { disc } from '../calc/space/disc.ts';
import { type Outline, rectangle } from '../calc/space/plane.ts';
import type { Prism } from '../calc/space/prism.ts';
import { doorSweep, drawerTravel, type Face, type Footprint, lidSwing } from '../calc/space/swing.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Plan } from '../plan/schema.ts';
import type { Box3, Sweep, UseSpace } from './layout.ts';

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
  return Object.entries(opens ?? {}).map(([opening, given]) => ({
    name: `${opening} of ${name}`,
    path: [...path, 'opens', opening],
    of: name,
    kind: given.kind,
    prism: sweepOf(given, box),
  }));
}

function sweepOf(opening: Opening, box: Box3): Prism {
  const { side } = opening;
  const whole = footprintOf(box);
  const widthM = opening.width?.value ?? faceWidthM(whole, side);
  const part = partOfFace(whole, side, opening.from_left?.value ?? 0, widthM);
  if (opening.kind === 'lid') {
    const alongVan = side === 'front' || side === 'rear';
    return lidSwing(part, box.topM, side, opening.depth?.value ?? (alongVan ? part.lengthM : part.widthM));
  }
  const bottomM = box.bottomM + (opening.above_floor?.value ?? 0);
  const topM = opening.height ? bottomM + opening.height.value : box.topM;
  const outline =
    opening.kind === 'drawer'
      ? drawerTravel(part, side, opening.travel?.value ?? depthBehind(whole, side))
      : doorSweep(part, side, opening.hinge ?? 'left', widthM);
  return { outline, bottomM, topM };
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

/** How far a drawer comes out where the plan does not say: as far as its cupboard is deep. */
const depthBehind = ({ lengthM, widthM }: Footprint, face: Face): number =>
  face === 'front' || face === 'rear' ? lengthM : widthM;

/** A strip in front of a face. */
export const stripBefore = (box: Box3, side: Face, depthM: number): Outline =>
  drawerTravel(footprintOf(box), side, depthM);

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
    const prism = { outline: disc(placeOf(at), radius.value), ...turning };
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
