import { notNegative, positive } from '../argument.ts';
import { rootBetween } from '../root.ts';
import { flowAtOnePascal, type Opening, orificeAreaM2 } from './orifice.ts';

/** A fan works at one of these, or on a straight line between two neighbours. */
export interface FanPoint {
  readonly flowM3S: number;
  readonly pressurePa: number;
}

/** From the fan blowing against a closed wall (flow 0) to the fan in the open (pressure 0). */
export type FanCurve = readonly FanPoint[];

/**
 * The curve of a fan of which two figures are known: a straight line between them.
 *
 * Both above 0: m³/s in the open, Pa against a closed wall. Throws RangeError otherwise.
 *
 * Source: own choice; a real propeller fan sags below the line in the middle.
 */
export function straightFanCurve(openFlowM3S: number, stallPressurePa: number): FanCurve {
  return [
    { flowM3S: 0, pressurePa: positive(stallPressurePa, 'The stall pressure of the fan') },
    { flowM3S: positive(openFlowM3S, 'The flow of the fan in the open'), pressurePa: 0 },
  ];
}

/** `curve`, if it runs from flow 0 to pressure 0, flows rising and pressures falling. Throws RangeError otherwise. */
export function fanCurve(curve: FanCurve): FanCurve {
  const first = curve[0];
  const last = curve.at(-1);
  if (curve.length < 2 || first?.flowM3S !== 0 || last?.pressurePa !== 0)
    throw new RangeError('The curve of a fan must run from flow 0 to pressure 0.');
  curve.forEach(({ flowM3S, pressurePa }, index) => {
    notNegative(flowM3S, 'The flow of the fan');
    notNegative(pressurePa, 'The pressure of the fan');
    const next = curve[index + 1];
    if (next !== undefined && (next.flowM3S <= flowM3S || next.pressurePa >= pressurePa))
      throw new RangeError('Along the curve of a fan the flow must rise and the pressure fall.');
  });
  return curve;
}

/**
 * What a fan moves against a pressure, m³/s. 0 from its stall pressure up: the checks never let a fan run backwards.
 * With the pressure behind it (below 0) no more than in the open: no credit for being pushed.
 *
 * Throws RangeError if the curve is not one (see {@link fanCurve}) or the pressure is not a number.
 */
export function fanFlowM3S(curve: FanCurve, pressurePa: number): number {
  fanCurve(curve);
  if (Number.isNaN(pressurePa)) throw new RangeError('The pressure at the fan must be a number.');
  return flowOnCurve(curve, pressurePa);
}

function flowOnCurve(curve: FanCurve, pressurePa: number): number {
  for (const [index, low] of curve.entries()) {
    const high = curve[index + 1];
    if (high === undefined) return low.flowM3S;
    if (pressurePa >= low.pressurePa) return low.flowM3S;
    if (pressurePa >= high.pressurePa)
      return (
        low.flowM3S +
        ((low.pressurePa - pressurePa) / (low.pressurePa - high.pressurePa)) * (high.flowM3S - low.flowM3S)
      );
  }
  return 0;
}

/**
 * The pressure that a fan makes at a flow, Pa: on its curve, 0 from its flow in the open up.
 *
 * Throws RangeError if the curve is not one or the flow is not finite or negative.
 */
export function fanPressurePa(curve: FanCurve, flowM3S: number): number {
  fanCurve(curve);
  notNegative(flowM3S, 'The flow');
  for (const [index, low] of curve.entries()) {
    const high = curve[index + 1];
    if (high !== undefined && flowM3S <= high.flowM3S)
      return (
        low.pressurePa +
        ((flowM3S - low.flowM3S) / (high.flowM3S - low.flowM3S)) * (high.pressurePa - low.pressurePa)
      );
  }
  return 0;
}

/** The fans of a room and what else is open to the outside. */
export interface FannedRoom {
  /** Curves of the fans that blow out. */
  readonly exhausts: readonly FanCurve[];
  /** Curves of the fans that blow in. */
  readonly intakes: readonly FanCurve[];
  /** All other openings to the outside, as one; not those that the fans sit in. */
  readonly opening: Opening;
}

export interface FannedFlow {
  /** How far the room is below the pressure outside; negative where it is above. */
  readonly depressionPa: number;
  /** Fresh air into the room, through fans and openings together. */
  readonly freshM3S: number;
  /** Through the openings, inward; negative where it leaves there. */
  readonly openingM3S: number;
  /** Of each fan, as in {@link FannedRoom}. */
  readonly exhaustM3S: readonly number[];
  readonly intakeM3S: readonly number[];
}

/**
 * What fans really move through the openings that a room has: the pressure at which what goes out comes in.
 *
 *     Σ Q_exhaust(d) = Σ Q_intake(−d) + sgn(d) · C_d · A · √(2 · |d| / ρ)
 *
 * d: how far the room is below the outside, Pa. A fan that blows out of a room without any opening stalls and moves
 * nothing.
 *
 * Throws RangeError if a curve is not one or a value of the opening is out of its range.
 *
 * Source: fan curve against an orifice (computed).
 */
export function flowOfFans({ exhausts, intakes, opening }: FannedRoom): FannedFlow {
  for (const curve of [...exhausts, ...intakes]) fanCurve(curve);
  const unit = flowAtOnePascal(opening);
  const all = (curves: readonly FanCurve[], pressurePa: number) =>
    curves.map((curve) => flowOnCurve(curve, pressurePa));
  const total = (flows: readonly number[]) => flows.reduce((sum, flow) => sum + flow, 0);
  // In the signed root of the pressure the opening is a straight line, so that the search has no infinite slope at 0.
  const balance = (root: number): number => {
    const depressionPa = root * Math.abs(root);
    return total(all(exhausts, depressionPa)) - total(all(intakes, -depressionPa)) - unit * root;
  };
  const root = rootBetween(balance, 0 - beyondStall(intakes), beyondStall(exhausts), 1e-12);
  const depressionPa = root * Math.abs(root);
  const exhaustM3S = all(exhausts, depressionPa);
  const intakeM3S = all(intakes, -depressionPa);
  const openingM3S = unit * root;
  return {
    depressionPa,
    freshM3S: total(intakeM3S) + Math.max(0, openingM3S),
    openingM3S,
    exhaustM3S,
    intakeM3S,
  };
}

/** Root of a pressure at which every fan stalls, a hair beyond what rounding may leave. */
const beyondStall = (curves: readonly FanCurve[]): number =>
  Math.sqrt(Math.max(0, ...curves.map((curve) => curve[0]?.pressurePa ?? 0))) * (1 + 1e-12);

/**
 * The free area that a fan which blows out needs for the room to fall no further than `depressionPa` below the outside, m².
 * 0 where the fan cannot make that pressure.
 *
 * Throws RangeError if the curve is not one or the pressure is not above 0.
 *
 * Source: as {@link flowOfFans} (computed).
 */
export function areaForDepressionM2(
  curve: FanCurve,
  depressionPa: number,
  air: Omit<Opening, 'areaM2'> = {},
): number {
  return orificeAreaM2(fanFlowM3S(curve, depressionPa), depressionPa, air);
}
