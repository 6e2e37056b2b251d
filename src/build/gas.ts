import type { PlaceInVan } from '../calc/space/route.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { applianceUses, flues, gasPipeMaterials, gasStores, heatingValues } from '../plan/schema-gas.ts';
import type { Box3, Whereabouts } from './layout.ts';
import type { RoutedRun } from './routes.ts';

/*
 * The gas installation of the plan, resolved and in SI: m, m², Pa, W, kg/s. Places are in the load bay's own axes.
 */

/** A cylinder or tank of the plan. */
export interface GasStore {
  readonly name: string;
  readonly path: PlanPath;
  readonly gas: 'propane' | 'butane';
  /** Full; of a tank given in litres that to which it may be filled. */
  readonly holdsKg: number;
  readonly heldAs: 'mass' | 'volume';
  /** The whole inside of what is given in litres, m³. */
  readonly insideM3?: number;
  readonly emptyKg: number;
  readonly whereabouts?: Whereabouts;
  readonly box?: Box3;
  /** What it stands in or on, from the nearest on. */
  readonly hosts: readonly string[];
  readonly fixed: boolean;
  readonly filledFrom?: 'outside' | 'inside';
}

export interface Locker {
  readonly path: PlanPath;
  readonly thing?: string;
  readonly box?: Box3;
  /** What it stands in. */
  readonly hosts: readonly string[];
  /** The area of its own floor, m². */
  readonly floorM2?: number;
  readonly sealed?: boolean;
  readonly opens?: 'outside' | 'inside';
  readonly lowVentM2?: number;
  readonly highVentM2?: number;
  readonly ventPlace?: PlaceInVan;
  readonly sourceOfIgnition?: boolean;
}

export interface Appliance {
  readonly name: string;
  readonly path: PlanPath;
  readonly thing?: string;
  readonly place?: PlaceInVan;
  readonly box?: Box3;
  /** What it stands in, from the nearest on: the spaces that gas would gather in. */
  readonly hosts: readonly string[];
  readonly whereabouts?: Whereabouts;
  readonly use?: (typeof applianceUses)[number];
  /** As typed: heat, with the heating value that it is counted in, or gas by mass. */
  readonly input?:
    | { readonly powerW: number; readonly heatingValue?: (typeof heatingValues)[number] }
    | { readonly gasKgPerS: number };
  readonly flue?: (typeof flues)[number];
  readonly flameFailure?: boolean;
  readonly isolatingValve?: boolean;
  readonly pressurePa?: number;
  readonly exhaust?: PlaceInVan;
}

export interface GasPipe {
  readonly name: string;
  readonly path: PlanPath;
  /** `regulator`, `manifold`, a tee or an appliance. */
  readonly from: string;
  readonly to: string;
  readonly material?: (typeof gasPipeMaterials)[number];
  readonly sizeM?: number;
  readonly wallM?: number;
  readonly boreM?: number;
  readonly lengthM?: number;
  readonly lengthFrom?: 'typed' | 'route';
  readonly bends: number;
  readonly tees: number;
  readonly hiddenJoints?: number;
  readonly run?: RoutedRun;
}

export interface DropOut {
  readonly name: string;
  readonly path: PlanPath;
  /** The thing that it drains. */
  readonly in?: string;
  readonly areaM2?: number;
  readonly place?: PlaceInVan;
}

export interface Gas {
  readonly path: PlanPath;
  readonly stores: readonly GasStore[];
  readonly storedIn?: (typeof gasStores)[number];
  /** How many cylinders feed the regulator at once. */
  readonly inUse: number;
  readonly upright?: boolean;
  readonly locker?: Locker;
  readonly regulator?: {
    readonly path: PlanPath;
    readonly pressurePa: number;
    readonly capacityKgPerS?: number;
    /** The day on it, as the plan writes it. */
    readonly dated?: string;
  };
  readonly hoses: readonly {
    readonly name: string;
    readonly path: PlanPath;
    readonly lengthM?: number;
    readonly dated?: string;
  }[];
  readonly manifold?: {
    readonly path: PlanPath;
    readonly thing?: string;
    readonly hosts: readonly string[];
    readonly whereabouts?: Whereabouts;
  };
  readonly tees: readonly string[];
  readonly pipes: readonly GasPipe[];
  readonly appliances: readonly Appliance[];
  readonly dropOuts: readonly DropOut[];
  /** The plan has the key, if only to say that there are none. */
  readonly saysDropOuts: boolean;
  readonly tightnessTest?: boolean;
}

/** What warns of gas, carbon monoxide and fire, and what puts a fire out. */
export interface Protection {
  readonly path: PlanPath;
  readonly alarms: readonly {
    readonly name: string;
    readonly path: PlanPath;
    readonly kind: 'gas alarm' | 'carbon monoxide alarm' | 'smoke alarm';
    readonly place?: PlaceInVan;
    readonly replaceBy?: string;
  }[];
  readonly extinguisher?: {
    readonly path: PlanPath;
    readonly kind?: string;
    readonly holdsKg?: number;
    readonly thing?: string;
    readonly place?: PlaceInVan;
  };
  readonly fireBlanket?: { readonly path: PlanPath; readonly place?: PlaceInVan };
}
