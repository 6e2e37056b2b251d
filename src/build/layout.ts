import type { BoxSize } from '../calc/space/fit-in.ts';
import type { Bounds, Outline } from '../calc/space/plane.ts';
import type { Prism } from '../calc/space/prism.ts';
import type { Shell } from '../calc/space/shell.ts';
import type { Face, Footprint } from '../calc/space/swing.ts';
import type { PlanPath } from '../engine/finding.ts';
import type {
  carried,
  drilled,
  openingKinds,
  openingSurfaces,
  ribbedSurfaces,
  uses,
} from '../plan/schema.ts';

/*
 * The room that everything takes. All places are in the load bay's own axes: x rearward from its front, y to the right
 * of its centre line, z up from its floor. Metres.
 */

/** The smallest upright box about something; a side may have no extent. */
export interface Box3 extends Bounds {
  readonly bottomM: number;
  readonly topM: number;
}

export type Use = (typeof uses)[number];

/** Where a thing is, as a whole: what lies across the edge of the load bay counts as inside. */
export type Whereabouts = 'inside' | 'in the cab' | 'under the floor' | 'on the roof' | 'behind the doors';

/** A thing of the plan whose room is known. */
export interface Solid {
  readonly name: string;
  readonly path: PlanPath;
  readonly prism: Prism;
  readonly box: Box3;
  /** What it stands in or on, and what that stands in or on, from the nearest on; empty on the floor. */
  readonly hosts: readonly string[];
  /** The nearest of `hosts` is around it, not under it. */
  readonly isInside: boolean;
  readonly whereabouts: Whereabouts;
  /** It follows the slope of the wall. */
  readonly leans: boolean;
  readonly use?: Use;
  /** Undefined where the plan does not say. */
  readonly combustible?: boolean;
  /** The name of the material it is made of, where the plan says. */
  readonly material?: string;
}

/** A part of the van that stands in the load bay. */
export interface FixedPart {
  readonly name: string;
  readonly path: PlanPath;
  readonly prism: Prism;
  /** People may walk there, but nothing may stand: a step well. */
  readonly walkable: boolean;
}

/** A thing whose room is not known, and the keys that would say it. */
export interface Unplaced {
  readonly name: string;
  readonly path: PlanPath;
  readonly missing: readonly string[];
  /** The thing that it lies in, where the plan puts it into one. */
  readonly inside?: string;
  /** The thing that it stands on, if it stands on one. */
  readonly on?: string;
}

/** A hole in the shell. */
export interface ShellOpening {
  readonly name: string;
  readonly path: PlanPath;
  readonly surface: (typeof openingSurfaces)[number];
  readonly kind?: (typeof openingKinds)[number];
  readonly escape: boolean;
  /** Flat: without extent across its surface. */
  readonly box: Box3;
  /** Its two clear sides, the greater first. */
  readonly sidesM: readonly [number, number];
}

export interface Rib {
  readonly path: PlanPath;
  readonly surface: (typeof ribbedSurfaces)[number];
  readonly fromM: number;
  readonly toM: number;
}

/** What opens: a door's leaf, a drawer or a lid. */
export interface Leaf {
  /** The part of the thing's box that is behind it or under it. */
  readonly part: Footprint;
  /** The face it is in; of a lid, the edge it is hinged at. */
  readonly side: Face;
  /** Of a door only, as someone sees it who stands before it. */
  readonly hinge?: 'left' | 'right';
  /** How wide a door is, how far a drawer comes out, how deep a lid is. */
  readonly reachM: number;
}

/** Room that something takes while it opens, slides out or turns. */
export interface Sweep {
  /** "door of wardrobe", "drawer of kitchen unit", "passenger seat". */
  readonly name: string;
  readonly path: PlanPath;
  /** The thing that it belongs to; a seat of the cab is a thing of its own. */
  readonly of: string;
  readonly kind: 'door' | 'drawer' | 'lid' | 'seat';
  readonly prism: Prism;
  /** A seat of the cab has none. */
  readonly leaf?: Leaf;
}

/** Room on the floor that is needed to use a thing. */
export interface UseSpace {
  readonly of: string;
  readonly path: PlanPath;
  readonly side: Face;
  readonly depthM: number;
  readonly outline: Outline;
}

/** Something that must fit inside or underneath a thing. */
export interface Stowed {
  readonly name: string;
  readonly path: PlanPath;
  readonly of: string;
  readonly place: 'inside' | 'underneath';
  readonly size: BoxSize;
  readonly upright: boolean;
}

/** What holds a thing down. */
export interface Fixings {
  readonly of: string;
  readonly path: PlanPath;
  readonly count: number;
  /** What one of them holds, as the mass that would hang on it, kg. */
  readonly eachHoldsKg: number;
}

/** Room about a hot thing in which nothing may stand that burns. */
export interface HeatClearance {
  readonly of: string;
  readonly path: PlanPath;
  readonly side: Face | 'above';
  readonly depthM: number;
  readonly prism: Prism;
}

/** A thing that is emptied or serviced from a stated side. */
export interface Service {
  readonly of: string;
  readonly path: PlanPath;
  /** The name of an opening, or `inside` or `underneath`. */
  readonly from: string;
}

export interface Layout {
  readonly shell: Shell;
  /** The width at the floor, from which `from_left` and `from_right` count. */
  readonly widthM: number;
  readonly heightM: number;
  readonly solids: readonly Solid[];
  /** Things without a known room; those that take none (`solid: false`) are not among them. */
  readonly unplaced: readonly Unplaced[];
  readonly fixedParts: readonly FixedPart[];
  /** Parts of the van whose room is not known. */
  readonly unplacedParts: readonly Unplaced[];
  readonly openings: readonly ShellOpening[];
  readonly unplacedOpenings: readonly Unplaced[];
  readonly ribs: readonly Rib[];
  readonly sweeps: readonly Sweep[];
  readonly useSpaces: readonly UseSpace[];
  readonly stowed: readonly Stowed[];
  readonly fixings: readonly Fixings[];
  readonly heatClearances: readonly HeatClearance[];
  readonly services: readonly Service[];
  /** Statures of those who sleep here, m, where the plan gives them. */
  readonly staturesM: readonly number[];
  readonly sleepers: number;
}

export type Carried = (typeof carried)[number];
export type Drilled = (typeof drilled)[number];
