import type { Layout, Solid } from '../build/layout.ts';
import { type NarrowSpot, type Way, waysFromDoor } from '../build/walking.ts';
import type { Direction } from '../calc/space/clearing-move.ts';
import { boundsNear, boundsOf } from '../calc/space/plane.ts';
import { prismOverlap } from '../calc/space/prism.ts';
import { outOfShell } from '../calc/space/shell.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { moved } from './clearing.ts';

interface Shift {
  readonly solid: Solid;
  readonly direction: Direction;
  readonly distanceM: number;
}

/** Among more things than this nobody waits for moves to be tried. */
const mostThings = 150;

/** What to do so that a spot becomes as wide as `wantedM`: a move that was tried and is enough, or how much is short. */
export function widened(layout: Layout, spot: NarrowSpot, to: readonly Way[], wantedM: number): Phrase {
  const shifts = shiftsFor(layout, spot, wantedM);
  const tried = layout.solids.length > mostThings ? [] : shifts;
  const enough = tried.find((shift) => hasRoom(layout, shift) && isEnough(layout, shift, to, wantedM));
  if (enough) {
    const { solid, direction, distanceM } = enough;
    const way = direction === 'left' || direction === 'right' ? `to the ${direction}` : direction;
    return say`Move ${solid.name} ${length(distanceM)} ${way}, or make it as much smaller on that side.`;
  }
  const [shortest] = shifts;
  const names = [...new Set(shifts.map(({ solid }) => solid.name))];
  if (!shortest)
    return say`Find a way that is ${length(wantedM)} wide: nothing that stands there can be moved.`;
  return say`Make ${length(shortest.distanceM)} more room there, with a smaller ${names.join(' or ')} or another place for ${names.length > 1 ? 'one of them' : 'it'}.`;
}

const upToCentimetre = (lengthM: number): number => Math.ceil(lengthM * 100 - 1e-6) / 100;

/** The moves along or across the van that widen a spot, shortest first. */
function shiftsFor({ solids }: Layout, { between: [one, other] }: NarrowSpot, wantedM: number): Shift[] {
  const byName = new Map(solids.map((solid) => [solid.name, solid]));
  return [[one, other] as const, [other, one] as const]
    .flatMap(([side, against]) => {
      const named = side.of === undefined ? undefined : byName.get(side.of);
      const solid = byName.get(named?.hosts.at(-1) ?? '') ?? named;
      if (!solid || side.of === against.of) return [];
      const alongM = side.at.xM - against.at.xM;
      const acrossM = side.at.yM - against.at.yM;
      const shift = (apartM: number, besideM: number, towards: Direction, away: Direction): Shift[] => {
        // Past a corner that is level with it no move in that direction widens anything at first.
        if (Math.abs(apartM) < 0.001) return [];
        const neededM = Math.sqrt(wantedM ** 2 - besideM ** 2) - Math.abs(apartM);
        return [{ solid, direction: apartM < 0 ? towards : away, distanceM: upToCentimetre(neededM) }];
      };
      return [...shift(alongM, acrossM, 'forward', 'rearward'), ...shift(acrossM, alongM, 'left', 'right')];
    })
    .filter(({ distanceM }) => distanceM > 0)
    .sort((a, b) => a.distanceM - b.distanceM);
}

const goesAlong = ({ solid: { name } }: Shift, other: Solid): boolean =>
  other.name === name || other.hosts.includes(name);

/** It stays within the load bay, and comes to stand in nothing that it did not stand in before. */
function hasRoom(layout: Layout, shift: Shift): boolean {
  const carried = layout.solids.filter((solid) => goesAlong(shift, solid));
  const others = [...layout.solids.filter((solid) => !goesAlong(shift, solid)), ...layout.fixedParts];
  return carried.every(({ prism, leans }) => {
    const after = moved(prism, shift);
    const bounds = boundsOf(after.outline);
    const before = outOfShell(prism, layout.shell, { leans });
    const stays = outOfShell(after, layout.shell, { leans }).every(({ face, byM }) =>
      before.some((was) => was.face === face && was.byM >= byM - 1e-6),
    );
    return (
      stays &&
      others.every(
        (other) =>
          !boundsNear(boundsOf(other.prism.outline), bounds, 0) ||
          prismOverlap(after, other.prism) === undefined ||
          prismOverlap(prism, other.prism) !== undefined,
      )
    );
  });
}

/** Whether the ways are wide enough after a move, and no other has become too narrow. */
function isEnough(layout: Layout, shift: Shift, to: readonly Way[], wantedM: number): boolean {
  const before = waysFromDoor(layout)?.ways ?? [];
  const solids = layout.solids.map((solid) => {
    if (!goesAlong(shift, solid)) return solid;
    const prism = moved(solid.prism, shift);
    return { ...solid, prism, box: { ...solid.box, ...boundsOf(prism.outline) } };
  });
  const after = waysFromDoor({ ...layout, solids })?.ways ?? [];
  return after.every(({ to: name, widthM }, index) => {
    const isMeant = to.some((way) => way.to === name);
    const wasWide = (before[index]?.widthM ?? 0) >= wantedM;
    return widthM >= wantedM - 1e-9 || !(isMeant || wasWide);
  });
}
