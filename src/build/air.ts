import type { PlaceInVan } from '../calc/space/route.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { fanDirections, ventLevels, ventSurfaces } from '../plan/schema-air.ts';

/* How the air is changed, in SI: m², m³/s, Pa. */

export interface Vent {
  readonly name: string;
  readonly path: PlanPath;
  readonly surface?: (typeof ventSurfaces)[number];
  readonly freeAreaM2: number;
  /** As typed, or from where it is: undefined where nobody can tell. */
  readonly level?: (typeof ventLevels)[number];
  /** It can be shut; a fixed vent cannot. Undefined where the plan does not say. */
  readonly closes?: boolean;
  /** The thing that it ventilates, such as a locker or a wardrobe; else the living space. */
  readonly serves?: string;
  /** The opening of the van that it is in. */
  readonly opening?: string;
  /** As the plan writes it, also where the rest of the place lacks. */
  readonly aboveFloorM?: number;
  readonly place?: PlaceInVan;
}

export interface Fan {
  readonly name: string;
  readonly path: PlanPath;
  readonly thing?: string;
  readonly vent?: Vent;
  readonly blows?: (typeof fanDirections)[number];
  /** With nothing in its way. */
  readonly openFlowM3PerS?: number;
  /** At which it moves nothing more. */
  readonly stallPa?: number;
  readonly serves?: string;
}

export interface Air {
  readonly path: PlanPath;
  readonly vents: readonly Vent[];
  readonly fans: readonly Fan[];
}

/** The air that people live in: the load bay, less what stands in it. */
export interface LivingSpace {
  readonly floorM2: number;
  /** Of the whole load bay. */
  readonly grossM3: number;
  /** Less the furniture; the air in cupboards counts as not there. */
  readonly airM3: number;
  /** Overall length times overall width, where the plan gives both. */
  readonly outsidePlanM2?: number;
}
