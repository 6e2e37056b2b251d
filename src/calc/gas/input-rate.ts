import { notNegative, positive } from '../argument.ts';

/*
 * The input of an appliance as power, as mass and as volume. Net and gross differ by about 8 %, so that a heating value
 * is always handed in with its kind; the two functions never guess it.
 */

/**
 * Gas burnt for an input, kg/s.
 *
 *     ṁ = P / h
 *
 * P: input, W (≥ 0), counted with the same heating value (net or gross) as h, J/kg (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export const gasForInput = (inputW: number, heatingValueJPerKg: number): number =>
  notNegative(inputW, 'The input') / positive(heatingValueJPerKg, 'The heating value');

/**
 * Input of a flow of gas, W: the inverse of {@link gasForInput}, with its errors. kg/s (≥ 0), J/kg (> 0).
 */
export const inputOfGas = (gasKgPerS: number, heatingValueJPerKg: number): number =>
  notNegative(gasKgPerS, 'The flow of gas') * positive(heatingValueJPerKg, 'The heating value');

/**
 * The same input counted with the other heating value, W: `inputOnBasis(net, h_net, h_gross)` is the gross input.
 *
 *     P₂ = P₁ · h₂ / h₁
 *
 * Throws RangeError as {@link gasForInput} does.
 */
export const inputOnBasis = (inputW: number, fromJPerKg: number, toJPerKg: number): number =>
  inputOfGas(gasForInput(inputW, fromJPerKg), toJPerKg);

/**
 * Volume flow of a vapour, m³/s.
 *
 *     V̇ = ṁ · v
 *
 * kg/s (≥ 0); v: m³/kg (> 0) at about 15 °C and the pressure of the pipe, which is the atmosphere's within 5 %.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export const vapourFlow = (gasKgPerS: number, vapourM3PerKg: number): number =>
  notNegative(gasKgPerS, 'The flow of gas') * positive(vapourM3PerKg, 'The volume of the vapour');

/** Mass flow of a vapour, kg/s: the inverse of {@link vapourFlow}, with its errors. */
export const massOfVapourFlow = (vapourM3S: number, vapourM3PerKg: number): number =>
  notNegative(vapourM3S, 'The flow of vapour') / positive(vapourM3PerKg, 'The volume of the vapour');

/**
 * Heating value of a mixture, J/kg, by the share of its mass that is propane (0 to 1).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function mixedHeatingValue(
  propaneMassShare: number,
  propaneJPerKg: number,
  butaneJPerKg: number,
): number {
  if (notNegative(propaneMassShare, 'The share of propane') > 1)
    throw new RangeError(`The share of propane must not be above 1, not ${propaneMassShare}.`);
  return (
    propaneMassShare * positive(propaneJPerKg, 'The heating value of propane') +
    (1 - propaneMassShare) * positive(butaneJPerKg, 'The heating value of butane')
  );
}
