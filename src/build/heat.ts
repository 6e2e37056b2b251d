import type { PlaceInVan } from '../calc/space/route.ts';
import type { Material } from '../catalogue/materials.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { flues } from '../plan/schema-gas.ts';
import type { cabKinds, paneKinds } from '../plan/schema-heat.ts';
import type { heatSources } from '../plan/schema-water.ts';
import type { Whereabouts } from './layout.ts';
import type { RoutedRun } from './routes.ts';
import type { Wrap } from './water.ts';

/* What keeps the living space warm, in SI: m, m², W, W/(m²·K); temperatures in °C. */

export type EnvelopeSurface = 'floor' | 'ceiling' | 'left wall' | 'right wall' | 'bulkhead' | 'rear doors';

/** A layer of a build-up as heat and vapour see it, in the plan's order: from the van's skin inwards. */
export interface HeatLayer {
  readonly path: PlanPath;
  readonly name: string;
  readonly material?: Material;
  readonly thicknessM?: number;
  /** The part of the area that it covers. */
  readonly share: number;
  readonly arealMassKgM2: number;
  /** Typed, where the plan says it. */
  readonly conductivity?: number;
  /** Against air of the same thickness. */
  readonly vapourFactor?: number;
  /** As metres of air. */
  readonly vapourAirM?: number;
}

/** One surface of the load bay, less its panes and open doors. */
export interface EnvelopePart {
  readonly surface: EnvelopeSurface;
  /** The first build-up that covers it, or the surface's own place in the plan. */
  readonly path: PlanPath;
  readonly areaM2: number;
  /** The build-ups that cover it, one upon the other. Empty: bare skin. */
  readonly buildUps: readonly string[];
  readonly layers: readonly HeatLayer[];
  /** Covered by metal ribs. */
  readonly ribShare: number;
}

export interface Pane {
  readonly name: string;
  readonly path: PlanPath;
  readonly surface: EnvelopeSurface;
  readonly areaM2: number;
  readonly kind?: (typeof paneKinds)[number];
  readonly uValue?: number;
  /** It has an insulated cover for the night. */
  readonly cover: boolean;
}

export interface Heater {
  readonly path: PlanPath;
  readonly thing?: string;
  readonly place?: PlaceInVan;
  readonly whereabouts?: Whereabouts;
  readonly outputW?: number;
  readonly heatedBy?: (typeof heatSources)[number];
  readonly efficiency?: number;
  readonly flue?: (typeof flues)[number];
  readonly exhaust?: PlaceInVan;
  readonly combustionAir?: PlaceInVan;
  readonly circuit?: string;
  readonly ductLimitM?: number;
  readonly ductOutletsLimit?: number;
}

export interface Duct {
  readonly name: string;
  readonly path: PlanPath;
  readonly lengthM?: number;
  readonly lengthFrom?: 'typed' | 'route';
  readonly boreM?: number;
  readonly outlets?: number;
  readonly run?: RoutedRun;
}

export interface Heat {
  readonly path: PlanPath;
  readonly insideC: number;
  readonly asleepC: number;
  /** Of the outside skin. */
  readonly skin: { readonly material: Material; readonly thicknessM: number };
  readonly ribs?: {
    readonly path: PlanPath;
    readonly depthM?: number;
    readonly metalM?: number;
    readonly coveredBy?: Wrap;
  };
  readonly airChangesPerHour?: number;
  readonly envelope: readonly EnvelopePart[];
  readonly panes: readonly Pane[];
  readonly cab?: {
    readonly path: PlanPath;
    readonly closedBy: (typeof cabKinds)[number];
    readonly areaM2?: number;
    readonly uValue?: number;
  };
  readonly heater?: Heater;
  readonly ducts: readonly Duct[];
  readonly warmsUpInS?: number;
}
