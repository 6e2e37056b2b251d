import { notNegative, positive } from '../argument.ts';

/**
 * The current at which a load gets its power through a resistance: the weaker the voltage that is left for it, the more it
 * takes.
 *
 *     I = P / (U − R·I), so I = (U − √(U² − 4·R·P)) / (2·R); P/U for R = 0
 *
 * P: power at the load, W (≥ 0); U: voltage of the source, V (> 0); R: out and back, Ω (≥ 0). Result in A; undefined where
 * the resistance lets less power through at any current, P > U²/(4·R).
 *
 * Throws RangeError if a value is out of range or not finite. Source: Ohm's law (computed); the smaller root is the one
 * that a load comes to from rest.
 */
export function currentForPower(powerW: number, voltageV: number, resistanceOhm: number): number | undefined {
  notNegative(powerW, 'The power');
  positive(voltageV, 'The voltage');
  notNegative(resistanceOhm, 'The resistance');
  const squared = voltageV ** 2 - 4 * resistanceOhm * powerW;
  if (squared < 0) return undefined;
  // In this form a small resistance does not cancel digits away.
  return (2 * powerW) / (voltageV + Math.sqrt(squared));
}
