import type { PlaceInVan } from '../calc/space/route.ts';
import type { Codes } from '../catalogue/codes.ts';
import type { Material } from '../catalogue/materials.ts';
import type { Assumption, PlanPath } from '../engine/finding.ts';
import type { Quantity } from '../plan/quantity.ts';
import type { Plan } from '../plan/schema.ts';
import type { Air, LivingSpace } from './air.ts';
import type { Body } from './body.ts';
import type { Electrical } from './electrical.ts';
import type { Energy } from './energy.ts';
import type { Gas, Protection } from './gas.ts';
import type { Habits } from './habits.ts';
import type { Heat } from './heat.ts';
import type { Layout } from './layout.ts';
import type { LoadBay, Space } from './placing.ts';
import type { Routes } from './routes.ts';
import type { Water } from './water.ts';

/** How much of each variable mass is aboard, by name. Masses that are not named are at their least. */
export type Filling = ReadonlyMap<string, number>;

/** The base vehicle, as the plan gives it. */
export interface Vehicle {
  readonly maxMass?: Quantity;
  readonly frontLimit?: Quantity;
  readonly rearLimit?: Quantity;
  readonly wheelbaseM?: number;
  readonly frontTrackM?: number;
  readonly rearTrackM?: number;
  readonly overallLengthM?: number;
  readonly energy?: NonNullable<Plan['van']['energy']>;
  readonly bay?: LoadBay;
  readonly floorAboveGround?: Quantity;
  readonly centreHeightLimitM?: number;
  readonly centreSidewaysLimitM?: number;
  /** Where the unladen mass comes from and what was aboard when it was taken. */
  readonly unladen?: {
    readonly from?: 'weighbridge' | 'brochure';
    readonly driverIncluded?: boolean;
    readonly fuelIncluded?: number;
    readonly centreHeightGiven: boolean;
    readonly sidesGiven: boolean;
  };
}

export interface BuiltLayer {
  readonly name: string;
  readonly material?: Material;
  readonly thicknessM?: number;
  readonly share: number;
  readonly arealMassKgM2: number;
  readonly massKg: number;
}

/** Layers over an area, as built; the swaps need them apart. */
export interface BuiltBuildUp {
  readonly name: string;
  readonly path: PlanPath;
  /** Undefined where the plan gives an area alone. */
  readonly surface?: NonNullable<NonNullable<Plan['build_ups']>[string]['of']>;
  readonly areaM2: number;
  readonly layers: readonly BuiltLayer[];
}

export interface NamedState {
  readonly name: string;
  readonly path: PlanPath;
  readonly filling: Filling;
}

/** A weighbridge ticket with the state the van was weighed in. */
export interface Ticket {
  readonly name: string;
  readonly path: PlanPath;
  readonly date: string;
  readonly front?: Quantity;
  readonly rear?: Quantity;
  readonly total: Quantity;
  readonly filling: Filling;
  /** Labels of bodies that were not aboard. */
  readonly absent: ReadonlySet<string>;
  readonly assumed: readonly string[];
}

/** A limit of the plan's own, with the reason for it. */
export interface Override {
  readonly rule: string;
  readonly path: PlanPath;
  readonly limit: Quantity & { readonly kind: string };
  readonly reason: string;
}

/** A failure or warning that its people accept until a day, with the reason for it. */
export interface Waiver {
  /** The id of a rule. */
  readonly check: string;
  /** As the report names it; without one all that the check finds is meant. */
  readonly subject?: string;
  readonly reason?: string;
  readonly by: string;
  /** Year-month-day. */
  readonly until: string;
  readonly path: PlanPath;
}

/** Everything that follows from a plan, resolved and in SI. Rules read it; nothing changes it. */
export interface Build {
  readonly name: string;
  readonly codes?: Codes;
  readonly units: 'metric' | 'imperial';
  readonly vehicle: Vehicle;
  readonly bodies: readonly Body[];
  /** The room that everything takes; without a load bay nothing has a place. */
  readonly layout?: Layout;
  /** Cables, pipes and ducts on their ways. */
  readonly routes?: Routes;
  readonly electrical?: Electrical;
  readonly water?: Water;
  readonly gas?: Gas;
  readonly air?: Air;
  readonly heat?: Heat;
  readonly protection?: Protection;
  readonly habits: Habits;
  /** The air that people live in; unknown without a load bay. */
  readonly livingSpace?: LivingSpace;
  /** Where the engine's exhaust ends, in the load bay's own axes. */
  readonly engineExhaust?: PlaceInVan;
  /** The electrical year; without a simulation that was loaded for it, it is not worked out. */
  readonly energy?: Energy;
  /** Spaces by name, for things that hold others. */
  readonly spaces: ReadonlyMap<string, Space>;
  /** Fresh and waste water together cannot be more than this. */
  readonly supplyKg: number;
  /** Seats in use at the most, the driver's included. */
  readonly persons: number;
  readonly licence: { readonly category?: string; readonly testPassed?: string };
  /** The plan says what people bring along. */
  readonly storesGiven: boolean;
  readonly buildUps: readonly BuiltBuildUp[];
  readonly states: readonly NamedState[];
  readonly tickets: readonly Ticket[];
  readonly overrides: readonly Override[];
  readonly waivers: readonly Waiver[];
  readonly assumptions: readonly Assumption[];
}
