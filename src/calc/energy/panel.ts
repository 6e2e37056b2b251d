import { finite, notNegative } from '../argument.ts';
import { share, within } from './angle.ts';

/**
 * Temperature of a solar cell.
 *
 *     T_c = T_a + (NOCT − 20)/800 · G
 *
 * T_a: air, °C; NOCT: nominal operating cell temperature, °C (20 to 100); G: irradiance on the plane, W/m² (≥ 0). NOCT is
 * measured with air behind the module; a panel glued flat to a roof runs hotter by some 10 to 20 K (memory), which the
 * caller adds.
 *
 * Throws RangeError if a value is not finite or out of range.
 *
 * Source: Ross model, as in the test suite of a public solar library (read).
 */
export function cellTemperatureC(airC: number, noctC: number, irradianceWM2: number): number {
  notNegative(irradianceWM2, 'The irradiance');
  return (
    finite(airC, 'The air temperature') +
    ((within(noctC, 20, 100, 'The nominal operating cell temperature') - 20) / 800) * irradianceWM2
  );
}

/**
 * Direct current power of a panel.
 *
 *     P = P_0 · G/1000 · [1 + γ · (T_c − 25)], not below 0
 *
 * P_0: rated power, W (≥ 0); G: irradiance, W/m² (≥ 0); γ: temperature coefficient, 1/K (−0.01 to 0); T_c: cell, °C.
 *
 * Throws RangeError if a value is not finite or out of range.
 *
 * Source: Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641 (2014) (read in a public solar library).
 */
export function panelPowerW(
  peakW: number,
  irradianceWM2: number,
  cellC: number,
  temperatureCoefficient: number,
): number {
  within(temperatureCoefficient, -0.01, 0, 'The temperature coefficient');
  const warm = 1 + temperatureCoefficient * (finite(cellC, 'The cell temperature') - 25);
  return Math.max(
    0,
    (notNegative(peakW, 'The rated power') * notNegative(irradianceWM2, 'The irradiance') * warm) / 1000,
  );
}

/**
 * Losses that follow each other: L = 1 − Π (1 − L_i), shares of 0 to 1. None: 0.
 *
 * Throws RangeError if a share is out of range.
 *
 * Source: Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641 (2014) (read in a public solar library).
 */
export function combinedLoss(losses: readonly number[]): number {
  return 1 - losses.reduce((left, loss) => left * (1 - share(loss, 'A loss')), 1);
}

/**
 * Share of direct light that enters a glazed panel, against square incidence.
 *
 *     τ = 1 − b · (1/cos θ − 1), held within 0 and 1
 *
 * cos θ: cosine of the incidence (0 or less: 0); b: 0.05 for glass (0 turns it off). It is what a flat panel loses to a low
 * winter sun: an eighth at 74°.
 *
 * Throws RangeError for b out of 0 to 0.5.
 *
 * Source: ASHRAE incidence angle modifier, as in the test suite of a public solar library (read).
 */
export function enteringShare(cosTheta: number, glass: number): number {
  within(glass, 0, 0.5, 'The coefficient of the glass');
  if (cosTheta <= 0) return 0;
  return Math.min(1, Math.max(0, 1 - glass * (1 / cosTheta - 1)));
}
