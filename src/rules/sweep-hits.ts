import type { FixedPart, Layout, Leaf, ShellOpening, Solid, Sweep } from '../build/layout.ts';
import { shortestClearingMove } from '../calc/space/clearing-move.ts';
import { overlap } from '../calc/space/clip.ts';
import { boundsNear, boundsOf, TOUCH_TOLERANCE_M } from '../calc/space/plane.ts';
import { type Prism, pairsThatOverlap, prismOverlap, verticalClearingMove } from '../calc/space/prism.ts';
import { heightAt, outOfShell, type ShellFace, widthAt } from '../calc/space/shell.ts';
import { type Beyond, beyondShell, closedShell, solidParts } from './beyond-shell.ts';

/** What something hits as it opens, and how far it goes in. */
export interface Hit {
  readonly byM: number;
  /** What is hit: a thing, a part of the van, or a side of the load bay. */
  readonly solid?: Solid;
  readonly part?: FixedPart;
  readonly face?: ShellFace;
  /** It passes out through this door of the van, if that is open. */
  readonly door?: ShellOpening;
  /** The thing stands on the lid. */
  readonly onLid?: true;
}

/** Something in the way that cannot simply be taken or opened first. */
export const isFixed = ({ solid, door, onLid }: Hit): boolean =>
  !door && !onLid && solid?.path[0] !== 'stores';

/** Everything that one opening, drawer, lid or seat hits: things, then parts of the van, then its shell. */
export function hitsOf(sweep: Sweep, layout: Layout): Hit[] {
  const known = new Map(layout.solids.map((solid) => [solid.name, solid]));
  const own = sweep.kind === 'seat' ? undefined : known.get(sweep.of);
  const byThings = layout.solids.flatMap((solid): Hit[] => {
    const standing = standingOf(solid, sweep, own, known);
    if (standing === 'none') return [];
    const byM = depthInto(sweep, solid.prism);
    return byM === undefined ? [] : [{ solid, byM, ...(standing === 'on the lid' && { onLid: true }) }];
  });
  const byParts = solidParts(layout).flatMap((part): Hit[] => {
    const byM = depthInto(sweep, part.prism);
    return byM === undefined ? [] : [{ part, byM }];
  });
  return [...byThings, ...byParts, ...(own ? beyond(sweep, own, layout) : [])];
}

/** What a thing is to something that opens: in its way, on its lid, or part of the same piece of furniture. */
function standingOf(
  solid: Solid,
  { of, kind }: Sweep,
  own: Solid | undefined,
  known: ReadonlyMap<string, Solid>,
): 'in the way' | 'on the lid' | 'none' {
  const { name, hosts, whereabouts } = solid;
  if (whereabouts === 'on the roof' || whereabouts === 'under the floor') return 'none';
  if (!own) return 'in the way';
  if (name === of || own.hosts.includes(name)) return 'none';
  const at = hosts.indexOf(of);
  if (at < 0) return 'in the way';
  const next = at === 0 ? solid : known.get(hosts[at - 1] ?? '');
  // What stands on that goes with it; it is enough to name the thing at the bottom.
  return kind === 'lid' && at === 0 && next?.isInside === false ? 'on the lid' : 'none';
}

/** How far the swept room goes into a body: the least that the body would have to give way. Undefined: not at all. */
function depthInto(sweep: Sweep, prism: Prism): number | undefined {
  const areNear = boundsNear(boundsOf(sweep.prism.outline), boundsOf(prism.outline), 0);
  if (!areNear || !prismOverlap(sweep.prism, prism)) return undefined;
  const byM = Math.min(...waysOut(sweep, prism).map(({ distanceM }) => distanceM));
  return byM > TOUCH_TOLERANCE_M ? byM : undefined;
}

/** A way in which a body could come free of swept room. */
export interface WayOut {
  readonly direction: 'forward' | 'rearward' | 'left' | 'right' | 'up' | 'down' | 'clear of the arc';
  readonly distanceM: number;
  /** Where the body begins as seen from a lid's hinge. */
  readonly fromHinge?: FromHinge;
}

/** The shortest way along the floor, the shorter of up and down, and for a lid what its arc leaves. They overlap. */
export function waysOut(sweep: Sweep, prism: Prism): readonly WayOut[] {
  const level = shortestClearingMove(prism.outline, sweep.prism.outline);
  const upright = verticalClearingMove(prism, sweep.prism);
  const arc = sweep.kind === 'lid' && sweep.leaf ? [outOfArc(sweep, sweep.leaf, prism)] : [];
  return [...(level ? [level] : []), ...(upright ? [upright] : []), ...arc];
}

/** How far out from a lid's hinge, and how high above it, the nearest of a body is. */
export interface FromHinge {
  readonly reachM: number;
  readonly outM: number;
  readonly upM: number;
}

/**
 * How far the free edge of a lid, which runs on an arc about its hinge, goes into a body; below 0 it passes it. The
 * swept room has a corner that the lid never enters.
 */
function outOfArc({ prism: { outline, bottomM } }: Sweep, leaf: Leaf, prism: Prism): WayOut {
  const corners = overlap(prism.outline, outline).flat();
  const outM = Math.min(...corners.map((corner) => fromHinge(leaf, corner)));
  const upM = Math.max(0, prism.bottomM - bottomM);
  const { reachM } = leaf;
  return {
    direction: 'clear of the arc',
    distanceM: reachM - Math.hypot(outM, upM),
    fromHinge: { reachM, outM, upM },
  };
}

/** How far from a lid's hinge a place is, on the plan. */
function fromHinge({ part, side }: Leaf, { xM, yM }: { readonly xM: number; readonly yM: number }): number {
  if (side === 'front') return xM - part.xM;
  if (side === 'rear') return part.xM + part.lengthM - xM;
  return side === 'left' ? yM - part.yM : part.yM + part.widthM - yM;
}

/** Where it leaves the load bay; not where its thing sticks out as far itself, which is another defect. */
function beyond(sweep: Sweep, own: Solid, layout: Layout): Hit[] {
  if (own.whereabouts !== 'inside') return [];
  const { leans } = own;
  const already = outOfShell(own.prism, closedShell(layout), { leans });
  return beyondShell(sweep.prism, layout, { leans })
    .map(
      (out): Beyond => ({
        ...out,
        byM: Math.min(out.byM, arcBeyond(sweep, out.face, layout)?.byM ?? out.byM),
      }),
    )
    .filter(({ byM }) => byM > TOUCH_TOLERANCE_M)
    .filter(({ face, byM }) =>
      already.every((its) => its.face !== face || byM > its.byM + TOUCH_TOLERANCE_M),
    );
}

const opposite = { front: 'rear', rear: 'front', left: 'right', right: 'left' } as const;

/** Where a lid's free edge is furthest beyond a side: how far open, and its place and that of the side. */
export interface ArcBeyond {
  readonly degrees: number;
  /** Towards that side, from the middle of the van, the front of the load bay or the floor. */
  readonly edgeM: number;
  readonly wallM: number;
  readonly byM: number;
}

/** Of a lid: how far its free edge truly goes beyond the wall before it, or the roof above it, on its arc. */
export function arcBeyond(
  { kind, leaf, prism }: Sweep,
  face: ShellFace,
  layout: Layout,
): ArcBeyond | undefined {
  if (kind !== 'lid' || !leaf || (face !== 'top' && face !== opposite[leaf.side])) return undefined;
  const shell = closedShell(layout);
  const { part, side, reachM } = leaf;
  const steps = 90;
  const stations = Array.from({ length: steps + 1 }, (_, step): ArcBeyond => {
    const angle = ((Math.PI / 2) * step) / steps;
    const outM = reachM * Math.cos(angle);
    const heightM = prism.bottomM + reachM * Math.sin(angle);
    const halfM = widthAt(shell.profile, heightM) / 2;
    const edges = { front: part.xM + outM, rear: part.xM + part.lengthM - outM };
    const station = (edgeM: number, wallM: number): ArcBeyond => ({
      degrees: (90 * step) / steps,
      edgeM,
      wallM,
      byM: edgeM - wallM,
    });
    if (face === 'front') return station(-edges.rear, 0);
    if (face === 'rear') return station(edges.front, shell.lengthM);
    if (face === 'left') return station(-(part.yM + part.widthM - outM), halfM);
    if (face === 'right') return station(part.yM + outM, halfM);
    const alongM = side === 'front' || side === 'rear' ? [edges[side]] : [part.xM, part.xM + part.lengthM];
    return station(heightM, Math.min(...alongM.map((xM) => heightAt(shell.heights, xM))));
  });
  return stations.reduce((most, each) => (each.byM > most.byM ? each : most));
}

/** Two that cannot be open at once; a drawer behind the door of its own cupboard waits for that anyway. */
export interface Clash {
  readonly first: Sweep;
  readonly second: Sweep;
  readonly byM: number;
}

/** All pairs that cannot be open at once, in the order of the plan. */
export function clashesOf(sweeps: readonly Sweep[], layout: Layout): Clash[] {
  return pairsThatOverlap(sweeps.map(({ prism }) => prism)).flatMap(({ first, second }): Clash[] => {
    const [one, other] = [sweeps[first], sweeps[second]];
    const byM = one && other && clashBy(one, other, layout);
    return one && other && byM !== undefined ? [{ first: one, second: other, byM }] : [];
  });
}

/** How far two go into each other's room; undefined where they can both be open. */
export function clashBy(one: Sweep, other: Sweep, { solids }: Layout): number | undefined {
  const isWithin = (a: Sweep, b: Sweep) =>
    solids.find(({ name }) => name === a.of)?.hosts.includes(b.of) === true;
  if (isWithin(one, other) || isWithin(other, one)) return undefined;
  const byM = depthInto(one, other.prism);
  const backM = byM === undefined ? undefined : depthInto(other, one.prism);
  return byM === undefined || backM === undefined ? undefined : Math.min(byM, backM);
}
