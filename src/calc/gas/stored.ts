import { notNegative, positive } from '../argument.ts';

const filled = (fillShare: number): number => {
  if (positive(fillShare, 'The share filled') > 1)
    throw new RangeError(`The share filled must not be above 1, not ${fillShare}.`);
  return fillShare;
};

/**
 * Gas in a tank filled as far as it may be, kg.
 *
 *     m = V · φ · ρ
 *
 * V: the whole inside, m³ (≥ 0); φ: share that may be liquid (0 to 1, 0.8 by every source read); ρ: liquid, kg/m³ (> 0).
 * The vapour above it is left out: about 1 % of the mass.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export const gasWhenFilled = (insideM3: number, fillShare: number, liquidKgM3: number): number =>
  notNegative(insideM3, 'The inside of the tank') *
  filled(fillShare) *
  positive(liquidKgM3, 'The density of the liquid');

/** The inside that so much gas needs, m³: the inverse of {@link gasWhenFilled}, with its errors. */
export const insideForGas = (gasKg: number, fillShare: number, liquidKgM3: number): number =>
  notNegative(gasKg, 'The gas') / (filled(fillShare) * positive(liquidKgM3, 'The density of the liquid'));

/**
 * The share of the inside that the same liquid fills after warming.
 *
 *     φ₂ = φ₁ · ρ₁ / ρ₂
 *
 * Above 1 the liquid has no room and bursts the tank or blows its valve: why tanks are filled to 0.8. Densities in kg/m³
 * (> 0) when filled and when warm.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export const shareWhenWarm = (fillShare: number, filledKgM3: number, warmKgM3: number): number =>
  (filled(fillShare) * positive(filledKgM3, 'The density when filled')) /
  positive(warmKgM3, 'The density when warm');

/** Energy in stored gas, J: kg (≥ 0) times J/kg (> 0). Throws RangeError otherwise. */
export const storedEnergyJ = (gasKg: number, heatingValueJPerKg: number): number =>
  notNegative(gasKg, 'The gas') * positive(heatingValueJPerKg, 'The heating value');

/** What burns gas day by day: by time at an input (cooking), or by heat wanted (water, room). */
export type DailyUse =
  | { readonly gasKgPerS: number; readonly secondsPerDay: number; readonly shareOfInput?: number }
  | { readonly heatJPerDay: number; readonly efficiency: number; readonly heatingValueJPerKg: number };

/**
 * Gas of a day, kg.
 *
 *     m = ṁ · t · s        or        m = Q / (η · h)
 *
 * ṁ: full input, kg/s (≥ 0); t: s a day (≥ 0, at most 86 400); s: mean share of the input while it burns (0 to 1, 1 if
 * left out); Q: heat wanted in a day, J (≥ 0); η: efficiency on the basis of h (above 0, at most 1.1: condensing on the
 * net basis); h: heating value, J/kg (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function dailyGasKg(use: DailyUse): number {
  if ('heatJPerDay' in use) {
    if (positive(use.efficiency, 'The efficiency') > 1.1)
      throw new RangeError(`The efficiency must not be above 1.1, not ${use.efficiency}.`);
    return (
      notNegative(use.heatJPerDay, 'The heat of a day') /
      (use.efficiency * positive(use.heatingValueJPerKg, 'The heating value'))
    );
  }
  const { gasKgPerS, secondsPerDay, shareOfInput = 1 } = use;
  if (notNegative(secondsPerDay, 'The time of a day') > 86_400)
    throw new RangeError(`A day has no ${secondsPerDay} s.`);
  if (notNegative(shareOfInput, 'The share of the input') > 1)
    throw new RangeError(`The share of the input must not be above 1, not ${shareOfInput}.`);
  return notNegative(gasKgPerS, 'The flow of gas') * secondsPerDay * shareOfInput;
}

/**
 * Days that stored gas lasts; infinite where nothing is burnt. kg (≥ 0), and kg a day of each use (≥ 0).
 *
 * Throws RangeError if a value is not finite or is negative.
 */
export function daysOfGas(storedKg: number, dailyKg: readonly number[]): number {
  const kg = notNegative(storedKg, 'The gas');
  const daily = dailyKg.reduce((sum, each) => sum + notNegative(each, 'The gas of a day'), 0);
  return daily === 0 ? Infinity : kg / daily;
}
