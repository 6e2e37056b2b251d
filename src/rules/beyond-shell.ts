import type { FixedPart, Layout, ShellOpening } from '../build/layout.ts';
import { overlap } from '../calc/space/clip.ts';
import { boundsOf, rectangle, TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import type { Prism } from '../calc/space/prism.ts';
import { outOfShell, type Shell, type ShellFace, widthAt } from '../calc/space/shell.ts';

/** What reaches out of the load bay on one side. */
export interface Beyond {
  readonly face: ShellFace;
  readonly byM: number;
  /** The door of the van through whose opening all of it passes. */
  readonly door?: ShellOpening;
}

const surfaceAt: Readonly<Record<ShellFace, ShellOpening['surface']>> = {
  front: 'bulkhead',
  rear: 'rear doors',
  left: 'left wall',
  right: 'right wall',
  top: 'ceiling',
};

/** As the builder calls what is there. */
export const shellInWords: Readonly<Record<ShellFace, string>> = {
  front: 'the front of the load bay',
  rear: 'the rear doors',
  left: 'the left wall',
  right: 'the right wall',
  top: 'the roof',
};

const isDoorThickness = ({ path }: FixedPart): boolean => path.at(-1) === 'rear_door_thickness';

/** The inside of the load bay with its rear doors shut: what they take of its length is not in it. */
export function closedShell({ shell, fixedParts }: Layout): Shell {
  const doors = fixedParts.find(isDoorThickness);
  return doors ? { ...shell, lengthM: boundsOf(doors.prism.outline).leastXM } : shell;
}

/** Parts of the van that nothing may reach into; the rear doors are part of `closedShell`. */
export const solidParts = ({ fixedParts }: Layout): readonly FixedPart[] =>
  fixedParts.filter((part) => !part.walkable && !isDoorThickness(part));

/**
 * On which sides some room reaches out of the load bay, the farthest first. A floor that people stand on outside a
 * door is there for all of its heights: `anyHeight` looks only where the opening is along its wall.
 */
export function beyondShell(
  prism: Prism,
  layout: Layout,
  { leans = false, anyHeight = false }: { readonly leans?: boolean; readonly anyHeight?: boolean } = {},
): Beyond[] {
  const shell = closedShell(layout);
  return outOfShell(prism, shell, { leans }).map(({ face, byM, atHeightM = 0 }) => {
    const door = layout.openings.find(
      (opening) =>
        opening.kind === 'door' &&
        opening.surface === surfaceAt[face] &&
        passesThrough(prism, face, opening, shell, atHeightM, anyHeight),
    );
    return { face, byM, ...(door && { door }) };
  });
}

/** Farther than anything in a plan. */
const farM = 15;

function passesThrough(
  { outline, bottomM, topM }: Prism,
  face: ShellFace,
  { box }: ShellOpening,
  shell: Shell,
  atHeightM: number,
  anyHeight: boolean,
): boolean {
  const wallYM = widthAt(shell.profile, atHeightM) / 2;
  const outside = {
    front: rectangle(-farM, -farM, farM, 2 * farM),
    rear: rectangle(shell.lengthM, -farM, farM, 2 * farM),
    left: rectangle(-farM, -farM, 2 * farM, farM - wallYM),
    right: rectangle(-farM, wallYM, 2 * farM, farM - wallYM),
    top: undefined,
  }[face];
  if (!outside) return false;
  const inHeight =
    anyHeight || (bottomM >= box.bottomM - TOUCH_TOLERANCE_M && topM <= box.topM + TOUCH_TOLERANCE_M);
  const alongWall = face === 'left' || face === 'right';
  return (
    inHeight &&
    overlap(outline, outside).every((piece) => {
      const { leastXM, mostXM, leastYM, mostYM } = boundsOf(piece);
      return alongWall
        ? leastXM >= box.leastXM - TOUCH_TOLERANCE_M && mostXM <= box.mostXM + TOUCH_TOLERANCE_M
        : leastYM >= box.leastYM - TOUCH_TOLERANCE_M && mostYM <= box.mostYM + TOUCH_TOLERANCE_M;
    })
  );
}
