import type { Citation } from '../catalogue/citation.ts';
import { type OutletKind, outletFlowsByKind, usualOutletPressure } from '../catalogue/water/use.ts';
import type { Outlet } from './water.ts';

/** What an outlet should give, and at what pressure it does. */
export interface WantedFlow {
  readonly flowM3PerS: number;
  readonly flowGiven: boolean;
  readonly pressurePa: number;
  readonly pressureGiven: boolean;
  /** Of what the plan does not say. */
  readonly citations: readonly Citation[];
}

const m3PerSOfLMin = (litresPerMinute: number): number => litresPerMinute / 60_000;

/** A van carries its water: its shower is one that saves it, its tap the larger of the two that the table has. */
const usualKinds: Readonly<Partial<Record<Outlet['use'], OutletKind>>> = {
  shower: 'low-flow shower',
  tap: 'kitchen tap',
};

/** The flow that an outlet should give: of the plan, else what is usual; undefined where nothing is. */
export function wantedFlowOf({ use, flowM3PerS, pressurePa }: Outlet): WantedFlow | undefined {
  const kind = usualKinds[use];
  const usual = kind && outletFlowsByKind[kind];
  const wanted = flowM3PerS ?? (usual && m3PerSOfLMin(usual.usualLMin));
  if (wanted === undefined) return undefined;
  return {
    flowM3PerS: wanted,
    flowGiven: flowM3PerS !== undefined,
    pressurePa: pressurePa ?? usualOutletPressure.pressurePa,
    pressureGiven: pressurePa !== undefined,
    citations: [
      ...(flowM3PerS === undefined && usual ? usual.citations : []),
      ...(pressurePa === undefined ? usualOutletPressure.citations : []),
    ],
  };
}
