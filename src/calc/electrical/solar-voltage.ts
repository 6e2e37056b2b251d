import { finite, positive } from '../argument.ts';
import { celsius, count } from './storage-argument.ts';

/** The temperature at which a module is rated, °C (standard test conditions). */
const ratedAtC = 25;

const falling = (coefficient: number): number => {
  if (finite(coefficient, 'The temperature coefficient') > 0) {
    throw new RangeError(
      `The temperature coefficient of a voltage must not be positive (${coefficient}): a cold module gives more. Write the minus sign.`,
    );
  }
  return coefficient;
};

/**
 * A module's voltage at a cell temperature, from a coefficient per kelvin of the rated voltage.
 *
 *     U(T) = U_25 · (1 + β · (T − 25 °C))
 *
 * U_25: rated voltage, V (> 0), open circuit or at maximum power, with the coefficient that belongs to it; β: share per
 * kelvin (≤ 0; −0.28 %/K is −0.0028); T: cell temperature, °C: for the highest open-circuit voltage the lowest
 * temperature of the air at dawn.
 *
 * Throws RangeError if a value is outside of these ranges or the result would not be positive.
 *
 * Source: electrical training page; textbook on module voltages (both read).
 */
export function moduleVoltageByShareV(ratedV: number, sharePerKelvin: number, temperatureC: number): number {
  const factor = 1 + falling(sharePerKelvin) * (celsius(temperatureC, 'The temperature') - ratedAtC);
  return positive(
    positive(ratedV, 'The rated voltage of the module') * factor,
    'The voltage at this temperature',
  );
}

/**
 * A module's voltage at a cell temperature, from a coefficient in volts per kelvin.
 *
 *     U(T) = U_25 + b · (T − 25 °C)
 *
 * U_25: rated voltage, V (> 0); b: V/K for the whole module (≤ 0; −120 mV/K is −0.12), not for one cell; T: as above.
 *
 * Throws RangeError if a value is outside of these ranges or the result would not be positive.
 *
 * Source: charge-controller guide of an off-grid magazine; textbook on module voltages (both read).
 */
export function moduleVoltageByVoltsV(ratedV: number, voltsPerKelvin: number, temperatureC: number): number {
  const changeV = falling(voltsPerKelvin) * (celsius(temperatureC, 'The temperature') - ratedAtC);
  return positive(
    positive(ratedV, 'The rated voltage of the module') + changeV,
    'The voltage at this temperature',
  );
}

/** One row of a code's table: the factor holds from this temperature upwards, to the next row. */
export interface ColdFactorRow {
  readonly fromC: number;
  readonly factor: number;
}

/**
 * The factor of a code's table for the open-circuit voltage at the lowest temperature of the air.
 *
 * rows: in any order. The row with the highest `fromC` that is not above T holds, so a temperature between two whole
 * degrees takes the colder row (−5.5 °C that of −6 to −10 °C), exactly −5, −10 and −15 °C still their own.
 *
 * Throws RangeError if T does not exist, the table is empty, or T is colder than the table goes.
 *
 * Source: NEC 690.7(A) as an open voltage library of a US national laboratory codes it (read).
 */
export function coldFactor(rows: readonly ColdFactorRow[], temperatureC: number): number {
  celsius(temperatureC, 'The lowest temperature');
  const row = rows
    .filter(({ fromC }) => fromC <= temperatureC)
    .reduce<ColdFactorRow | undefined>(
      (best, next) => (best === undefined || next.fromC > best.fromC ? next : best),
      undefined,
    );
  if (row === undefined)
    throw new RangeError(
      `The table of cold factors does not reach ${temperatureC} °C: use the module's coefficient.`,
    );
  return row.factor;
}

/**
 * A module's open-circuit voltage at the lowest temperature, by a code's table.
 *
 *     U(T) = U_25 · f(T)
 *
 * U_25: rated open-circuit voltage, V (> 0); f: `coldFactor`. For crystalline silicon, and only where the module's own
 * coefficient is not known: the coefficient comes first.
 *
 * Throws RangeError if U_25 is not greater than 0 or as `coldFactor` does.
 *
 * Source: NEC 690.7(A) (read).
 */
export function moduleVoltageByTableV(
  ratedV: number,
  rows: readonly ColdFactorRow[],
  temperatureC: number,
): number {
  return positive(ratedV, 'The rated voltage of the module') * coldFactor(rows, temperatureC);
}

/**
 * Voltage of a string of equal modules.
 *
 *     U = n · U1
 *
 * Throws RangeError if n is not a whole number of at least 1 or U1 is not greater than 0.
 *
 * Source: follows from the circuit (computed).
 */
export function stringVoltageV(moduleVoltageV: number, inSeries: number): number {
  return (
    positive(moduleVoltageV, 'The voltage of a module') * count(inSeries, 'The number of modules in series')
  );
}

/**
 * How many modules in series stay at or below a limit of voltage.
 *
 *     n = ⌊U_max / U1⌋
 *
 * U_max: limit of the controller, V; U1: cold open-circuit voltage of a module, V (both > 0). 0: not even one. A string
 * that meets the limit within rounding of decimals is at the limit.
 *
 * Throws RangeError if a value is not finite or not greater than 0.
 *
 * Source: charge-controller guide of an off-grid magazine (read).
 */
export function mostInSeries(limitV: number, moduleVoltageV: number): number {
  const ratio = positive(limitV, 'The limit') / positive(moduleVoltageV, 'The voltage of a module');
  return Math.floor(ratio * (1 + 1e-9));
}
