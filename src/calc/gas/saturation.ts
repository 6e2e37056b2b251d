import { finite, notNegative, positive } from '../argument.ts';
import { rootBetween } from '../root.ts';

export const pureGases = ['propane', 'butane'] as const;
export type PureGas = (typeof pureGases)[number];

/** One standard atmosphere, Pa (by definition). */
export const atmospherePa = 101_325;

const kelvinAtZeroC = 273.15;

/** No van meets less or more; the fits reach further. */
const coldestC = -60;
const warmestC = 60;

/** Coefficient and power of a term. */
type Term = readonly [number, number];

interface Fit {
  readonly criticalK: number;
  readonly criticalPa: number;
  readonly molarMassKg: number;
  readonly reducingMolM3: number;
  readonly pressure: readonly Term[];
  readonly liquid: readonly Term[];
}

const fits: Readonly<Record<PureGas, Fit>> = {
  propane: {
    criticalK: 369.89,
    criticalPa: 4_251_200,
    molarMassKg: 0.04409562,
    reducingMolM3: 5000,
    pressure: [
      [-23.998635747391152, 1.05],
      [18.313017605233238, 1.084],
      [-0.42240851966839504, 2.259],
      [-2.7378298813798962, 4.287],
      [0.257888414168987, 7.66],
      [-1.3113462226130785, 18.584],
    ],
    liquid: [
      [2.104068052280433, 0.368],
      [0.3371892411622086, 0.875],
      [0.4401223810964251, 3.009],
      [-3.5679018989260567, 9.51],
      [59.93889697061387, 15.381],
      [-70.9402469085883, 17.001],
    ],
  },
  butane: {
    criticalK: 425.125,
    criticalPa: 3_796_000,
    molarMassKg: 0.0581222,
    reducingMolM3: 3922.7696129878086,
    pressure: [
      [0.06986482880463143, 0.743],
      [-6.689091326409199, 0.984],
      [4.774874567188075, 1.886],
      [-5.7054710938841655, 2.16],
      [1.8437119133933968, 3.286],
      [-3.735372218319482, 4.231],
    ],
    liquid: [
      [7.6544950329552, 0.501],
      [-16.928503641708495, 0.742],
      [14.176327512939299, 0.917],
      [-2.3511736019127136, 1.387],
      [5.431931351600508, 9.328],
      [-13.286388570143172, 12.623],
    ],
  },
};

const sumOf = (terms: readonly Term[], theta: number): number =>
  terms.reduce((sum, [coefficient, power]) => sum + coefficient * theta ** power, 0);

function kelvin(temperatureC: number): number {
  finite(temperatureC, 'The temperature of the gas');
  if (temperatureC < coldestC || temperatureC > warmestC)
    throw new RangeError(
      `The temperature of the gas must lie between ${coldestC} and ${warmestC} °C, not ${temperatureC}.`,
    );
  return temperatureC + kelvinAtZeroC;
}

/**
 * Pressure of the vapour over its liquid, Pa absolute. Propane is pure propane, butane is n-butane.
 *
 *     p = p_c · exp((T_c / T) · Σ n_i · θ^t_i)        θ = 1 − T / T_c
 *
 * T: K; p_c, T_c: critical pressure, Pa, and temperature, K; n_i, t_i: coefficients of the fit. From −60 to 60 °C.
 * What is sold is a mixture: commercial propane stands 8 to 30 % higher above the atmosphere than pure propane.
 *
 * Throws RangeError outside −60 to 60 °C.
 *
 * Source: an open fluid-property library, ancillary equations of the reference equations of state of Lemmon, McLinden
 * and Wagner (2009) and of Bücker and Wagner (2006); fit errors 0.016 and 0.024 % (coefficients read).
 */
export function saturationPressurePa(gas: PureGas, temperatureC: number): number {
  const { criticalK, criticalPa, pressure } = fits[gas];
  const temperatureK = kelvin(temperatureC);
  return criticalPa * Math.exp((criticalK / temperatureK) * sumOf(pressure, 1 - temperatureK / criticalK));
}

/**
 * Density of the liquid under its own vapour, kg/m³.
 *
 *     ρ = ρ_r · M · (1 + Σ n_i · θ^t_i)
 *
 * Range, errors and source as for {@link saturationPressurePa}; fit errors 0.42 and 0.21 %.
 */
export function saturatedLiquidKgM3(gas: PureGas, temperatureC: number): number {
  const { criticalK, molarMassKg, reducingMolM3, liquid } = fits[gas];
  return reducingMolM3 * molarMassKg * (1 + sumOf(liquid, 1 - kelvin(temperatureC) / criticalK));
}

/**
 * The temperature at which the vapour just reaches a pressure, °C: the boiling point under that pressure. Liquid below it
 * gives no gas at that pressure.
 *
 * absolutePa: Pa absolute, within the pressures of −60 to 60 °C. To 1e-6 K.
 *
 * Throws RangeError outside.
 */
export function boilingPointC(gas: PureGas, absolutePa: number): number {
  positive(absolutePa, 'The pressure');
  const least = saturationPressurePa(gas, coldestC);
  const most = saturationPressurePa(gas, warmestC);
  if (absolutePa < least || absolutePa > most)
    throw new RangeError(
      `The pressure must lie between ${Math.ceil(least)} and ${Math.floor(most)} Pa for ${gas}, not ${absolutePa}.`,
    );
  return rootBetween((at) => saturationPressurePa(gas, at) - absolutePa, coldestC, warmestC, 1e-6);
}

const share = (value: number, what: string): number => {
  if (notNegative(value, what) > 1) throw new RangeError(`${what} must not be above 1, not ${value}.`);
  return value;
};

/**
 * Share of the molecules that are propane, from the share of the mass.
 *
 *     x = (w / M_p) / (w / M_p + (1 − w) / M_b)
 *
 * Throws RangeError if the share is not from 0 to 1.
 */
export function propaneMoleShare(propaneMassShare: number): number {
  const propane = share(propaneMassShare, 'The share of propane') / fits.propane.molarMassKg;
  return propane / (propane + (1 - propaneMassShare) / fits.butane.molarMassKg);
}

/**
 * Pressure over a liquid mixture of propane and n-butane, Pa absolute.
 *
 *     p = x · p_propane + (1 − x) · p_butane
 *
 * x: share of the molecules in the *liquid* that are propane, 0 to 1. Propane leaves first: what is left in a cylinder
 * grows richer in butane and its pressure falls while it empties.
 *
 * Throws RangeError outside −60 to 60 °C or if the share is not from 0 to 1.
 *
 * Source: Raoult's law (computed); agrees with a table of mixtures to 4 %.
 */
export function mixturePressurePa(moleShare: number, temperatureC: number): number {
  const propane = share(moleShare, 'The share of propane');
  return (
    propane * saturationPressurePa('propane', temperatureC) +
    (1 - propane) * saturationPressurePa('butane', temperatureC)
  );
}
