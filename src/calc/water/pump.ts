import { notNegative, positive } from '../argument.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../space/restraint.ts';

/** A point of a pump's curve: the gauge pressure it keeps up at a flow. */
export interface PumpPoint {
  readonly flowM3S: number;
  readonly pressurePa: number;
}

/** Points by rising flow and falling pressure, two at least. */
export type PumpCurve = readonly PumpPoint[];

/**
 * The curve of a pump of which only the duty is known: a straight line from the cut-out pressure without flow to the
 * open flow without pressure.
 *
 * Q_open: flow against no pressure, m³/s (> 0); p_off: the pressure at which it switches off, Pa (> 0).
 *
 * Throws RangeError if a value is not greater than 0.
 *
 * Source: own choice. The curve of a small diaphragm pump sags below or bulges above the line; a list of points from
 * its maker comes first.
 */
export const straightPumpCurve = (openFlowM3S: number, cutOutPressurePa: number): PumpCurve => [
  { flowM3S: 0, pressurePa: positive(cutOutPressurePa, 'The cut-out pressure') },
  { flowM3S: positive(openFlowM3S, 'The open flow'), pressurePa: 0 },
];

/** The pressure of a pump by its flow. */
export type PumpPressure = (flowM3S: number) => number;

/**
 * A pump's pressure at any flow, Pa: through the given points, without bumps between them, falling throughout.
 *
 * Monotone cubic interpolation (slopes: the weighted harmonic mean of the neighbouring secants). Below the first point
 * the pressure is that of the first, above the last it goes on straight, even below 0 (water that gravity drives faster
 * than the pump would): neither is measured, see {@link beyondPumpCurve}.
 *
 * Throws RangeError if there are fewer than two points, a value is not finite, a flow is below 0 or not above the one
 * before, or a pressure not below the one before.
 *
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) (memory).
 */
export function pumpPressure(curve: PumpCurve): PumpPressure {
  const spans = spansOf(curve);
  const first = spans[0];
  const last = spans.at(-1);
  if (!first || !last) throw new RangeError('A pump curve has at least two points.');
  return (flowM3S) => {
    const flow = notNegative(flowM3S, 'The flow');
    if (flow <= first.from.flowM3S) return first.from.pressurePa;
    if (flow >= last.to.flowM3S) return last.to.pressurePa + last.secant * (flow - last.to.flowM3S);
    return within(spans.find(({ to }) => flow <= to.flowM3S) ?? last, flow);
  };
}

/** Whether a flow lies outside the points of the curve, where its pressure is a guess. */
export function beyondPumpCurve(curve: PumpCurve, flowM3S: number): boolean {
  const flows = curve.map((point) => point.flowM3S);
  return flowM3S < Math.min(...flows) || flowM3S > Math.max(...flows);
}

interface Span {
  readonly from: PumpPoint;
  readonly to: PumpPoint;
  readonly secant: number;
  readonly slopeFrom: number;
  readonly slopeTo: number;
}

function spansOf(curve: PumpCurve): Span[] {
  const plain = curve.slice(1).map((to, index) => {
    const from = curve[index] ?? to;
    notNegative(from.flowM3S, 'The flow of a pump point');
    const rise = positive(to.flowM3S - from.flowM3S, 'The step to the next flow of a pump curve');
    const fall = positive(from.pressurePa - to.pressurePa, 'The fall to the next pressure of a pump curve');
    return { from, to, width: rise, secant: -fall / rise };
  });
  return plain.map(({ from, to, width, secant }, index) => {
    const slope = (neighbour: { readonly width: number; readonly secant: number } | undefined) =>
      neighbour ? blended(width, secant, neighbour.width, neighbour.secant) : secant;
    return { from, to, secant, slopeFrom: slope(plain[index - 1]), slopeTo: slope(plain[index + 1]) };
  });
}

function blended(width: number, secant: number, otherWidth: number, otherSecant: number): number {
  const weight = 2 * otherWidth + width;
  const otherWeight = 2 * width + otherWidth;
  return (weight + otherWeight) / (weight / secant + otherWeight / otherSecant);
}

function within({ from, to, slopeFrom, slopeTo }: Span, flow: number): number {
  const width = to.flowM3S - from.flowM3S;
  const s = (flow - from.flowM3S) / width;
  const back = 1 - s;
  return (
    from.pressurePa * (1 + 2 * s) * back ** 2 +
    to.pressurePa * (3 - 2 * s) * s ** 2 +
    width * s * back * (slopeFrom * back - slopeTo * s)
  );
}

/** What a pump does to the water that goes through it. */
export interface PumpDuty {
  readonly flowM3S: number;
  /** Pressure added. */
  readonly pressurePa: number;
  /** Speed given to water that stood still. */
  readonly velocityMS?: number;
  readonly riseM?: number;
  readonly densityKgM3?: number;
}

/**
 * Power given to the water, W.
 *
 *     P = (p + ρ v²/2 + ρ g h) Q
 *
 * p: pressure added, Pa (≥ 0); v: speed given, m/s (≥ 0; 0 where left out); h: rise, m (≥ 0; 0 where left out); Q:
 * flow, m³/s (≥ 0); ρ: density, kg/m³ (> 0; 1000 where left out).
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: Bernoulli, as in an open college textbook, section 12.3 (read).
 */
export function hydraulicPowerW(duty: PumpDuty): number {
  const density = positive(duty.densityKgM3 ?? 1000, 'The density');
  const perVolume =
    notNegative(duty.pressurePa, 'The pressure') +
    (density * notNegative(duty.velocityMS ?? 0, 'The speed') ** 2) / 2 +
    density * STANDARD_GRAVITY_M_PER_S2 * notNegative(duty.riseM ?? 0, 'The rise');
  return perVolume * notNegative(duty.flowM3S, 'The flow');
}

/**
 * Electrical power of a pump, W: P_el = P_hyd / η.
 *
 * η: efficiency of pump and motor together (above 0, up to 1). Throws RangeError if a value is out of its range.
 */
export function pumpElectricalPowerW(hydraulicW: number, efficiency: number): number {
  if (positive(efficiency, 'The efficiency') > 1) {
    throw new RangeError(`The efficiency must not be more than 1, not ${efficiency}.`);
  }
  return notNegative(hydraulicW, 'The hydraulic power') / efficiency;
}
