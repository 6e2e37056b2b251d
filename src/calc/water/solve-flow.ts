import { finite, positive } from '../argument.ts';
import { rootBetween } from '../root.ts';
import { columnPa, type Liquid, type PipeSegment, seriesLossPa, velocityMS } from './pipe-loss.ts';
import { beyondPumpCurve, type PumpCurve, pumpPressure } from './pump.ts';

/** A tap or shower head, wide open. */
export interface Outlet {
  /** What it lets through at its nominal pressure. */
  readonly nominalFlowM3S: number;
  readonly nominalPressurePa: number;
}

/** The pipes from the end of the trunk to one open outlet. */
export interface Branch {
  readonly segments: readonly PipeSegment[];
  /** Of the outlet above the water level in the tank; below 0 where it lies lower. */
  readonly riseM: number;
  readonly outlet: Outlet;
}

/** A tank, a pump, a trunk that all open outlets share and a branch to each of them. */
export interface OpenOutlets {
  readonly liquid: Liquid;
  /** Left out where gravity alone drives the water. */
  readonly pump?: PumpCurve;
  /** Everything that the whole flow goes through, the suction side too. */
  readonly trunk: readonly PipeSegment[];
  /** One for each open outlet. */
  readonly branches: readonly Branch[];
}

export interface BranchFlow {
  readonly flowM3S: number;
  /** Lost in the pipes of the branch. */
  readonly lossPa: number;
  /** Of the column from the water level up to the outlet. */
  readonly columnPa: number;
  /** Left before the outlet. */
  readonly outletPa: number;
  /** What flows over the outlet's nominal flow. */
  readonly nominalShare: number;
  /** The greatest in the branch; 0 if it has no pipes. */
  readonly fastestMS: number;
}

export interface SolvedFlow {
  readonly totalM3S: number;
  /** Gauge pressure that the pump adds at this flow; 0 without a pump. */
  readonly pumpPa: number;
  /** Whether the flow lies outside the points of the pump's curve. */
  readonly beyondPumpCurve: boolean;
  readonly trunkLossPa: number;
  /** At the end of the trunk, referred to the water level. */
  readonly junctionPa: number;
  readonly fastestInTrunkMS: number;
  /** In the order of the branches given. */
  readonly branches: readonly BranchFlow[];
}

/** So near that what is left of the balance is far below a millionth of the pump's pressure. */
const relativeTolerance = 1e-13;

/**
 * The flow through every open outlet at once.
 *
 *     p_pump(ΣQ) = Δp_trunk(ΣQ) + p_j
 *     p_j = Δp_i(Q_i) + ρ g h_i + p_n,i (Q_i / Q_n,i)²   for each branch i, or Q_i = 0 where p_j ≤ ρ g h_i
 *
 * p_pump: {@link pumpPressure}, 0 without a pump; Δp: friction and fittings by {@link seriesLossPa}; p_j: pressure at the
 * end of the trunk; h_i: rise, m; Q_n, p_n: nominal flow, m³/s, and pressure, Pa, of the outlet (> 0). Both sides rise or
 * fall throughout, so that there is one solution; both equations hold to better than 1e-6 of the greatest pressure. An
 * outlet that the pressure does not reach gives nothing (a tap lets no water in). Steady flow: whether a pump with a
 * pressure switch runs on or starts and stops follows from `pumpPa` against its cut-in pressure.
 *
 * Throws RangeError if there is no branch or a value is not finite or out of its range.
 *
 * Source: continuity and Bernoulli, with Darcy–Weisbach for the losses (definition).
 */
export function solveFlow({ liquid, pump, trunk, branches }: OpenOutlets): SolvedFlow {
  if (branches.length === 0) throw new RangeError('A flow is solved for at least one open outlet.');
  const pressureOf = pump ? pumpPressure(pump) : () => 0;
  const columns = branches.map(({ riseM }) => columnPa(finite(riseM, 'The rise'), liquid.densityKgM3));
  const flowsAt = (junctionPa: number): number[] =>
    branches.map((branch, index) => branchFlowM3S(branch, junctionPa - (columns[index] ?? 0), liquid));
  const excess = (junctionPa: number): number => {
    const total = sum(flowsAt(junctionPa));
    return pressureOf(total) - seriesLossPa(total, trunk, liquid) - junctionPa;
  };
  const shutOffPa = pressureOf(0);
  const lowestColumn = Math.min(...columns);
  const span = Math.max(shutOffPa, lowestColumn) - lowestColumn;
  const junctionPa =
    span === 0 ? shutOffPa : rootBetween(excess, lowestColumn, shutOffPa, relativeTolerance * span);
  const flows = flowsAt(junctionPa);
  const totalM3S = sum(flows);
  return {
    totalM3S,
    pumpPa: pressureOf(totalM3S),
    beyondPumpCurve: pump !== undefined && beyondPumpCurve(pump, totalM3S),
    trunkLossPa: seriesLossPa(totalM3S, trunk, liquid),
    junctionPa,
    fastestInTrunkMS: fastest(totalM3S, trunk),
    branches: branches.map(({ segments, outlet }, index) => {
      const flowM3S = flows[index] ?? 0;
      return {
        flowM3S,
        lossPa: seriesLossPa(flowM3S, segments, liquid),
        columnPa: columns[index] ?? 0,
        outletPa: outletPressurePa(outlet, flowM3S),
        nominalShare: flowM3S / outlet.nominalFlowM3S,
        fastestMS: fastest(flowM3S, segments),
      };
    }),
  };
}

/**
 * Pressure before a wide open outlet, Pa: p = p_n (Q / Q_n)². It behaves as a nozzle of a fixed opening.
 *
 * Throws RangeError if the nominal flow or pressure is not greater than 0.
 */
export const outletPressurePa = ({ nominalFlowM3S, nominalPressurePa }: Outlet, flowM3S: number): number =>
  positive(nominalPressurePa, 'The nominal pressure of the outlet') *
  (flowM3S / positive(nominalFlowM3S, 'The nominal flow of the outlet')) ** 2;

function branchFlowM3S({ segments, outlet }: Branch, drivingPa: number, liquid: Liquid): number {
  // What it would be without pipes bounds what it is.
  outletPressurePa(outlet, 0);
  if (drivingPa <= 0) return 0;
  const most = outlet.nominalFlowM3S * Math.sqrt(drivingPa / outlet.nominalPressurePa);
  const excess = (flowM3S: number): number =>
    drivingPa - seriesLossPa(flowM3S, segments, liquid) - outletPressurePa(outlet, flowM3S);
  // Rounding may leave a hair of pressure over where the pipes take next to nothing.
  return excess(most) >= 0 ? most : rootBetween(excess, 0, most, relativeTolerance * most);
}

const sum = (flows: readonly number[]): number => flows.reduce((total, flow) => total + flow, 0);

const fastest = (flowM3S: number, segments: readonly PipeSegment[]): number =>
  Math.max(0, ...segments.map(({ innerDiameterM }) => velocityMS(flowM3S, innerDiameterM)));
