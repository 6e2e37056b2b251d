import { notNegative, positive } from '../argument.ts';
import { rootBetween } from '../root.ts';

/*
 * Loss of pressure of gas at low pressure (some tens of mbar) in smooth tube. Lengths are equivalent lengths: the tube
 * and what its fittings add.
 */

/** One inch of water, Pa (conventional). */
const inchOfWaterPa = 249.08891;
const inchM = 0.0254;
const footM = 0.3048;
const cubicFootPerHour = footM ** 3 / 3600;

export interface GasTube {
  /** Inside diameter, m (> 0). */
  readonly boreM: number;
  /** With what fittings add, m (> 0). */
  readonly lengthM: number;
}

/** The vapour as a pipe sees it. */
export interface Vapour {
  /** Density against that of air. */
  readonly gravity: number;
  /** Pa·s. */
  readonly viscosityPaS: number;
}

/**
 * The constant C_r of the low-pressure equation for a gas.
 *
 *     C_r = 0.00354 · s · T · (µ / s)^0.152
 *
 * s: density against air (> 0); µ: viscosity in centipoise; T: 520 °R, 15.7 °C. Gives the tabulated 1.2462 for propane
 * (1.5; 0.008 cP) and 0.6094 for natural gas (0.6; 0.012 cP).
 *
 * Throws RangeError if a value is not finite or not above 0.
 *
 * Source: International Fuel Gas Code / NFPA 54, appendix A.4 (from memory; the two constants confirm it).
 */
export function dropConstantOf({ gravity, viscosityPaS }: Vapour): number {
  const centipoise = 1000 * positive(viscosityPaS, 'The viscosity');
  return 0.00354 * positive(gravity, 'The density against air') * 520 * (centipoise / gravity) ** 0.152;
}

const sound = ({ boreM, lengthM }: GasTube): GasTube => ({
  boreM: positive(boreM, 'The bore'),
  lengthM: positive(lengthM, 'The length'),
});

/**
 * Flow that a drop of pressure drives, m³/s, by the low-pressure equation of the US fuel gas codes.
 *
 *     Q = (19.17 · D · (ΔH / (C_r · L))^0.206)^(1 / 0.381)
 *
 * Q: ft³/h; D: inside diameter, in; ΔH: in of water; L: ft; converted here from m, Pa and m³/s. C_r: 1.2462 for undiluted
 * propane, see {@link dropConstantOf}. For supply below 0.1 bar. The equation gives 1 to 2.5 % more than the tables of
 * the same code.
 *
 * Throws RangeError if a value is not finite, a size is not above 0 or the drop is negative.
 *
 * Source: International Fuel Gas Code / NFPA 54, appendix A.4 (constants from memory, confirmed against tables that were
 * read).
 */
export function codeFlowM3S(tube: GasTube, dropPa: number, dropConstant: number): number {
  const { boreM, lengthM } = sound(tube);
  const slope =
    notNegative(dropPa, 'The drop of pressure') /
    inchOfWaterPa /
    (positive(dropConstant, 'The constant of the gas') * (lengthM / footM));
  return cubicFootPerHour * (19.17 * (boreM / inchM) * slope ** codePowers.drop) ** (1 / codePowers.flow);
}

/** Drop of pressure for a flow, Pa: the inverse of {@link codeFlowM3S}, with its errors and source. */
export function codeDropPa(tube: GasTube, flowM3S: number, dropConstant: number): number {
  const { boreM, lengthM } = sound(tube);
  const cubicFeetPerHour = notNegative(flowM3S, 'The flow') / cubicFootPerHour;
  return (
    inchOfWaterPa *
    positive(dropConstant, 'The constant of the gas') *
    (lengthM / footM) *
    (cubicFeetPerHour ** codePowers.flow / (19.17 * (boreM / inchM))) ** (1 / codePowers.drop)
  );
}

/** The powers of the equation, for the flow by which it is written out: Q^0.381 and ΔH^0.206. */
const codePowers = { flow: 0.381, drop: 0.206 } as const;

const poleFactor = 1350;

/**
 * Flow by the old formula of Pole, m³/s. It has one friction factor for every bore and over-predicts the flow of small
 * tubes (13 % at 15.8 mm, more below): it must never pass a tube alone. {@link gasDropPa} takes it only where it is the
 * stricter.
 *
 *     Q = 1350 · √(d⁵ · h / (L · s))
 *
 * Q: ft³/h; d: in; h: in of water; L: yards; s: density against air; converted here from m, Pa and m³/s.
 *
 * Throws RangeError as {@link codeFlowM3S} does.
 *
 * Source: a page of unit conversions (read); the metric form of UK practice, 0.0071 · √(d⁵ · h / (s · L)) with mm, mbar, m
 * and m³/h, is from memory and agrees.
 */
export function poleFlowM3S(tube: GasTube, dropPa: number, gravity: number): number {
  const { boreM, lengthM } = sound(tube);
  const inches = notNegative(dropPa, 'The drop of pressure') / inchOfWaterPa;
  const yards = lengthM / (3 * footM);
  return (
    cubicFootPerHour *
    poleFactor *
    Math.sqrt(((boreM / inchM) ** 5 * inches) / (yards * positive(gravity, 'The density against air')))
  );
}

/** Drop of pressure for a flow by the formula of Pole, Pa: the inverse of {@link poleFlowM3S}. */
export function poleDropPa(tube: GasTube, flowM3S: number, gravity: number): number {
  const { boreM, lengthM } = sound(tube);
  const share = notNegative(flowM3S, 'The flow') / cubicFootPerHour / poleFactor;
  return (
    (inchOfWaterPa * share ** 2 * (lengthM / (3 * footM)) * positive(gravity, 'The density against air')) /
    (boreM / inchM) ** 5
  );
}

/**
 * Drop of pressure if the flow is laminar, Pa: a floor under the true drop, which the equation of the code would
 * undercut at very small flows.
 *
 *     Δp = 128 · µ · L · Q / (π · d⁴)
 *
 * Throws RangeError if a value is not finite, a size is not above 0 or the flow is negative.
 *
 * Source: Hagen–Poiseuille (computed).
 */
export function laminarDropPa(tube: GasTube, flowM3S: number, viscosityPaS: number): number {
  const { boreM, lengthM } = sound(tube);
  return (
    (128 * positive(viscosityPaS, 'The viscosity') * lengthM * notNegative(flowM3S, 'The flow')) /
    (Math.PI * boreM ** 4)
  );
}

export interface GasDrop {
  /** The greatest of the three. */
  readonly dropPa: number;
  readonly codePa: number;
  readonly polePa: number;
  readonly laminarPa: number;
}

/**
 * Drop of pressure to judge a tube by, Pa: the greatest of the equation of the code, the formula of Pole and laminar flow,
 * so that none passes a tube alone.
 *
 * flowM3S: m³/s (≥ 0). Throws RangeError as the three do.
 */
export function gasDropPa(tube: GasTube, flowM3S: number, vapour: Vapour): GasDrop {
  const codePa = codeDropPa(tube, flowM3S, dropConstantOf(vapour));
  const polePa = poleDropPa(tube, flowM3S, vapour.gravity);
  const laminarPa = laminarDropPa(tube, flowM3S, vapour.viscosityPaS);
  return { dropPa: Math.max(codePa, polePa, laminarPa), codePa, polePa, laminarPa };
}

const unitTube: GasTube = { boreM: 1e-3, lengthM: 1e-3 };
const litreAMinuteM3S = 1e-3 / 60;

/** A drop as k·L·Q^a/D^b, Pa, with L and D in mm and Q in litres a minute: what a pocket calculator takes. */
export interface DropLaw {
  readonly by: 'low-pressure equation' | 'formula of Pole' | 'laminar flow';
  readonly factor: number;
  readonly flowPower: number;
  readonly borePower: number;
}

/**
 * The law that {@link gasDropPa} takes at a flow, the one that gives the greatest drop, with its numbers put together into one
 * factor: the drop of a tube of 1 mm by 1 mm at a litre a minute.
 *
 * Throws RangeError as {@link gasDropPa} does.
 */
export function dropLawAt(tube: GasTube, flowM3S: number, vapour: Vapour): DropLaw {
  const { dropPa, codePa, polePa } = gasDropPa(tube, flowM3S, vapour);
  const unit = gasDropPa(unitTube, litreAMinuteM3S, vapour);
  if (dropPa === codePa)
    return {
      by: 'low-pressure equation',
      factor: unit.codePa,
      flowPower: codePowers.flow / codePowers.drop,
      borePower: 1 / codePowers.drop,
    };
  return dropPa === polePa
    ? { by: 'formula of Pole', factor: unit.polePa, flowPower: 2, borePower: 5 }
    : { by: 'laminar flow', factor: unit.laminarPa, flowPower: 1, borePower: 4 };
}

/** No tube of a van is narrower or wider, m. */
const narrowestM = 1e-3;
const widestM = 0.3;

/**
 * The least bore that keeps a drop by {@link gasDropPa}, m, to 1 µm; undefined if not even 300 mm does, 1 mm where that is
 * wide enough.
 *
 * Throws RangeError if a value is not finite, the length or the drop is not above 0, or the flow is negative.
 */
export function leastBoreM(input: {
  readonly lengthM: number;
  readonly flowM3S: number;
  readonly dropPa: number;
  readonly vapour: Vapour;
}): number | undefined {
  const { lengthM, flowM3S, vapour } = input;
  const allowedPa = positive(input.dropPa, 'The drop of pressure');
  const over = (boreM: number): number => gasDropPa({ boreM, lengthM }, flowM3S, vapour).dropPa - allowedPa;
  if (over(narrowestM) <= 0) return narrowestM;
  if (over(widestM) > 0) return undefined;
  return rootBetween(over, narrowestM, widestM, 1e-6);
}

/**
 * Inside diameter of a tube, m, from outside diameter and wall, m. Throws RangeError if the wall leaves no bore.
 */
export const boreOf = (outsideM: number, wallM: number): number =>
  positive(positive(outsideM, 'The outside diameter') - 2 * notNegative(wallM, 'The wall'), 'The bore');
