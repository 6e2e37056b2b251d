import type { PlaceInVan } from '../calc/space/route.ts';
import type { Material } from '../catalogue/materials.ts';
import type { PlanPath } from '../engine/finding.ts';
import type {
  fittingKinds,
  heaterKinds,
  heatSources,
  outletUses,
  valveKinds,
  waterPipeMaterials,
} from '../plan/schema-water.ts';
import type { Box3, Whereabouts } from './layout.ts';
import type { RoutedRun } from './routes.ts';

/*
 * The water of the plan, resolved and in SI: m, m³, m³/s, Pa, W; temperatures in °C. Heights are above the finished
 * floor, in the load bay's own axes.
 */

export interface Wrap {
  readonly material: Material;
  readonly thicknessM: number;
}

export interface WaterTank {
  readonly name: string;
  readonly path: PlanPath;
  readonly contents: 'fresh' | 'waste';
  readonly holdsM3: number;
  /** The part of what it holds that comes out, or goes in before it must be emptied; 1 where the plan does not say. */
  readonly usableShare: number;
  readonly usableGiven: boolean;
  /** Undefined where its room is not known. */
  readonly whereabouts?: Whereabouts;
  readonly box?: Box3;
  readonly emptyKg: number;
  readonly ventBoreM?: number;
  readonly inspectionM?: number;
  readonly baffles?: number;
  readonly drinkingWater?: boolean;
  readonly insulation?: Wrap;
  readonly heated: boolean;
  readonly filledFrom?: 'outside' | 'inside';
  readonly overflowsTo?: 'outside' | 'inside';
  readonly fillM3PerS?: number;
  /** It belongs to a toilet: nothing flows into it but from there. */
  readonly inToilet: boolean;
}

export interface Pump {
  readonly path: PlanPath;
  readonly thing?: string;
  readonly place?: PlaceInVan;
  readonly openFlowM3PerS?: number;
  readonly cutOutPa?: number;
  readonly cutInPa?: number;
  /** By rising flow. */
  readonly curve?: readonly { readonly flowM3PerS: number; readonly pressurePa: number }[];
  readonly circuit?: string;
}

export interface WaterHeater {
  readonly path: PlanPath;
  readonly thing?: string;
  readonly place?: PlaceInVan;
  readonly whereabouts?: Whereabouts;
  readonly kind: (typeof heaterKinds)[number];
  readonly holdsM3?: number;
  readonly powerW?: number;
  readonly temperatureC?: number;
  readonly heatedBy?: (typeof heatSources)[number];
  readonly efficiency?: number;
  readonly circuit?: string;
  readonly reliefValve?: boolean;
  readonly mixingValve?: boolean;
}

/** What a pipe carries, from what it joins. `apart`: no pump, heater, tank or outlet makes sense of it. */
export type PipeRole = 'suction' | 'cold' | 'hot' | 'drain' | 'fill' | 'vent' | 'apart';

export interface WaterPipe {
  readonly name: string;
  readonly path: PlanPath;
  readonly from: string;
  readonly to: string;
  readonly role: PipeRole;
  readonly material?: (typeof waterPipeMaterials)[number];
  /** As it is sold: the outer diameter, of a hose the inner one. */
  readonly sizeM?: number;
  /** Typed. */
  readonly boreM?: number;
  readonly lengthM?: number;
  readonly lengthFrom?: 'typed' | 'route';
  readonly fittings: readonly { readonly kind: (typeof fittingKinds)[number]; readonly count: number }[];
  /** A loss coefficient of its own, on top of the fittings. */
  readonly extraLoss: number;
  /** Typed: how much higher it ends than it begins. */
  readonly riseM?: number;
  /** Where it begins and ends, where the plan says. */
  readonly fromPlace?: PlaceInVan;
  readonly toPlace?: PlaceInVan;
  readonly insulation?: Wrap;
  readonly heated: boolean;
  readonly drinkingWater?: boolean;
  readonly run?: RoutedRun;
  /** How much of it lies where frost comes: in chases under the floor or outside. Undefined where nobody can tell. */
  readonly exposedM?: number;
  /** The chases that lie there. */
  readonly exposedIn: readonly string[];
}

export interface Outlet {
  readonly name: string;
  readonly path: PlanPath;
  readonly thing?: string;
  readonly use: (typeof outletUses)[number];
  readonly useGiven: boolean;
  readonly flowM3PerS?: number;
  readonly pressurePa?: number;
  readonly place?: PlaceInVan;
  /** Where its water comes out. */
  readonly zM?: number;
  /** Where its waste begins. */
  readonly wasteZM?: number;
  readonly trapM?: number;
  /** Its water goes down a waste pipe. */
  readonly drains: boolean;
  /** A pipe that carries hot water leads to it. */
  readonly hot: boolean;
}

export interface WaterValve {
  readonly name: string;
  readonly path: PlanPath;
  readonly kind: (typeof valveKinds)[number];
  readonly pipe?: string;
  readonly thing?: string;
}

export interface Water {
  readonly path: PlanPath;
  /** Of water as it comes from the tank. */
  readonly coldC: number;
  readonly tanks: readonly WaterTank[];
  readonly pump?: Pump;
  readonly accumulator?: { readonly path: PlanPath; readonly holdsM3: number; readonly chargedToPa?: number };
  readonly heater?: WaterHeater;
  readonly pipes: readonly WaterPipe[];
  readonly outlets: readonly Outlet[];
  readonly valves: readonly WaterValve[];
}
