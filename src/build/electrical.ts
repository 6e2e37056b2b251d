import type { BatteryChemistry } from '../catalogue/electrical/batteries.ts';
import type { Conductor } from '../catalogue/electrical/conductors.ts';
import type { DropClass, DropPractice } from '../catalogue/electrical/drop-limits.ts';
import type { FuseFamily } from '../catalogue/electrical/fuses.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { ConductorSize } from '../plan/conductor-field.ts';
import type {
  alarmKinds,
  changeovers,
  controllerKinds,
  distributionKinds,
  layings,
} from '../plan/schema-electrical.ts';

/*
 * The electrical installation, resolved and in SI: amperes, volts, watts, ohms, ampere-hours where a battery counts in
 * them; temperatures in °C, as the tables have them.
 */

/** What is drawn: a current whatever the voltage, or a power that takes more current the lower the voltage is. */
export type Draw = { readonly currentA: number } | { readonly powerW: number };

/** Two conductors, out and back, from one place to another. */
export interface Wire {
  /** As the plan writes it; undefined where it does not. */
  readonly size?: ConductorSize;
  /** Its row in the catalogue. */
  readonly conductor?: Conductor;
  /** What its insulation bears in steady use. */
  readonly insulationC: number;
  readonly lies: (typeof layings)[number];
  readonly ambientC: number;
  /** Circuits that lie together with it, itself included. */
  readonly bundled: number;
  /** One way; undefined where neither the plan nor a route says it. */
  readonly outM?: number;
  readonly backM?: number;
  readonly lengthFrom?: 'typed' | 'route';
  /** The routed run that it follows. */
  readonly run?: string;
}

export interface CircuitFuse {
  readonly path: PlanPath;
  readonly family: FuseFamily;
  readonly ratingA: number;
  /** Along the conductor from its source; undefined where the plan does not say. */
  readonly fromSourceM?: number;
  readonly sheathed: boolean;
}

export interface Circuit {
  readonly name: string;
  readonly path: PlanPath;
  /** `battery`, or the name of a distribution point. */
  readonly from: string;
  /** The name of a distribution point or of a thing. */
  readonly to: string;
  /** It feeds a distribution point: its load is what hangs on that. */
  readonly feeds: boolean;
  /** Current flows towards the battery: it belongs to a charger. */
  readonly charges: boolean;
  readonly load?: Draw;
  readonly surge?: Draw;
  /** The part of the time, or of the loads, that counts when loads are added up. */
  readonly atOnce: number;
  readonly wire: Wire;
  readonly fuse?: CircuitFuse;
  readonly dropClass: DropClass;
  /** Undefined where the plan does not say. */
  readonly switched?: boolean;
  readonly alarm?: (typeof alarmKinds)[number];
  /** What it draws while nobody uses it. */
  readonly standing?: Draw;
}

export interface DistributionPoint {
  readonly name: string;
  readonly path: PlanPath;
  readonly kind: (typeof distributionKinds)[number];
  readonly ratingA?: number;
  readonly thing?: string;
  /** The part of what hangs on it that is drawn at once. */
  readonly atOnce: number;
}

export type LimitSource = 'typed' | 'catalogue';

export interface Bank {
  readonly path: PlanPath;
  readonly chemistry: BatteryChemistry;
  readonly inSeries: number;
  readonly inParallel: number;
  readonly blockCapacityAh: number;
  readonly voltageV: number;
  readonly capacityAh: number;
  readonly ratingHours: number;
  /** The least that loads may meet, before any cable. */
  readonly lowestV: number;
  /** While charging, or full and without load: what fuses must break. */
  readonly highestV: number;
  readonly resistance?: {
    /** The lower end: for what a short circuit brings. */
    readonly leastOhm: number;
    readonly source: 'typed' | 'catalogue';
  };
  /** Of the whole bank; undefined where neither the plan nor the catalogue says it. */
  readonly chargeLimitA?: number;
  readonly dischargeLimitA?: number;
  readonly surgeLimitA?: number;
  readonly limitsFrom: { readonly charge: LimitSource; readonly discharge: LimitSource };
  readonly chargesFromC?: number;
  readonly usableShare: number;
  readonly thing?: string;
}

export interface SolarArray {
  readonly name: string;
  readonly path: PlanPath;
  readonly modules: number;
  readonly inSeries: number;
  readonly strings: number;
  readonly modulePowerW: number;
  readonly openCircuitV: number;
  readonly shortCircuitA: number;
  readonly voltagePerKelvin?: number;
  readonly controller?: {
    readonly kind: (typeof controllerKinds)[number];
    readonly currentLimitA: number;
    readonly voltageLimitV: number;
  };
  readonly circuit?: string;
}

export interface Inverter {
  readonly path: PlanPath;
  readonly powerW: number;
  readonly surgeW: number;
  readonly efficiency: number;
  readonly efficiencyAssumed: boolean;
  readonly idleW?: number;
  readonly circuit: string;
  readonly changeover?: (typeof changeovers)[number];
  readonly alwaysOn: boolean;
}

export interface DrivingCharger {
  readonly path: PlanPath;
  readonly currentA: number;
  readonly alternatorA?: number;
  readonly efficiency: number;
  readonly circuit?: string;
}

export interface Shore {
  readonly path: PlanPath;
  readonly voltageV: number;
  readonly currentA: number;
  readonly lead?: {
    readonly lengthM: number;
    readonly size: ConductorSize;
    readonly conductor?: Conductor;
    readonly coiled: boolean;
  };
  readonly residualCurrentA?: number;
  readonly breakerA?: number;
  readonly doublePole?: boolean;
  readonly bonding?: ConductorSize;
  readonly bondingMm2?: number;
  readonly charger?: { readonly currentA: number; readonly circuit?: string };
}

export interface MainsCircuit {
  readonly name: string;
  readonly path: PlanPath;
  readonly from: 'shore' | 'inverter' | 'both';
  readonly to: string;
  readonly loadW?: number;
  readonly size?: ConductorSize;
  readonly areaMm2?: number;
  readonly breakerA?: number;
  readonly residualCurrentA?: number;
  readonly lengthM?: number;
}

export interface Electrical {
  readonly path: PlanPath;
  readonly nominalV: number;
  readonly dropPractice: DropPractice;
  readonly coldestC?: number;
  readonly warmestC?: number;
  readonly layUpDays?: number;
  readonly bank?: Bank;
  readonly distribution: readonly DistributionPoint[];
  readonly circuits: readonly Circuit[];
  readonly solar: readonly SolarArray[];
  readonly drivingCharger?: DrivingCharger;
  readonly inverter?: Inverter;
  readonly shore?: Shore;
  readonly mains: readonly MainsCircuit[];
}
