import { finite } from '../argument.ts';
import type { PureGas } from './saturation.ts';

const constants: Readonly<Record<PureGas, { readonly a: number; readonly b: number; readonly c: number }>> = {
  propane: { a: 3.98292, b: 819.296, c: -24.417 },
  butane: { a: 4.35576, b: 1175.581, c: -2.071 },
};

/** The ranges of the two fits overlap here, °C. */
const range: Readonly<Record<PureGas, readonly [number, number]>> = {
  propane: [-42.5, 47.5],
  butane: [-0.5, 60],
};

/**
 * Pressure of the vapour over its liquid by the Antoine equation, Pa absolute: a second opinion, for
 * propane 2 to 3 % above saturationPressurePa, which is the one to use.
 *
 *     lg(p / bar) = A − B / (C + T)
 *
 * T: K. The logarithm is to the base 10; a program that was read took exp() instead and is wrong by powers of ten.
 *
 * Throws RangeError outside −42.5 to 47.5 °C (propane) and −0.5 to 60 °C (butane): the ranges of the fits from memory.
 *
 * Source: NIST Chemistry WebBook, coefficients as quoted in three open programs (read).
 */
export function antoinePressurePa(gas: PureGas, temperatureC: number): number {
  const [least, most] = range[gas];
  if (finite(temperatureC, 'The temperature of the gas') < least || temperatureC > most)
    throw new RangeError(
      `The temperature of ${gas} must lie between ${least} and ${most} °C, not ${temperatureC}.`,
    );
  const { a, b, c } = constants[gas];
  return 1e5 * 10 ** (a - b / (c + temperatureC + 273.15));
}
