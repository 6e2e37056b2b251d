import { finite, notNegative, positive } from '../argument.ts';
import { kelvin } from './kelvin.ts';

/** m/s². */
const gravity = 9.81;

/** Of two openings with the room between them (memory). */
export const stackDischarge = 0.65;

/** A low and a high opening in a room whose air is warmer or colder than outside. */
export interface StackOpenings {
  readonly lowAreaM2: number;
  readonly highAreaM2: number;
  /** From the middle of the low opening to the middle of the high one. */
  readonly heightM: number;
  readonly insideC: number;
  readonly outsideC: number;
  /** {@link stackDischarge} where left out. */
  readonly discharge?: number;
}

export interface StackFlow {
  /** Of outside air into the room. */
  readonly flowM3S: number;
  /** Where inside and outside have the same pressure, above the middle of the low opening. */
  readonly neutralM: number;
  readonly comesIn: 'low' | 'high' | 'nowhere';
}

/**
 * Flow through two openings on a still night: warm air leaves above and draws cold air in below; in a room colder than
 * outside it runs the other way.
 *
 *     Q = C_d · A_in · √(2 · g · h · |T_i − T_e| / max(T_i, T_e))
 *     h = H / (1 + (A_in / A_out)² · T_i / T_e)
 *
 * A_in, A_out: m² (≥ 0); H: m between their middles (≥ 0); h: m from the opening where air comes in to the neutral
 * level; T_i, T_e: K inside and outside; Q: m³/s. 0 where an opening is closed, they are level, or it is equally warm.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: ASHRAE Handbook of Fundamentals 1997, page 25.13, equations 37 and 38, quoted in an engineering answer and
 * coded in an open library (read); the neutral level from the balance of masses (computed; ASHRAE has it).
 */
export function stackFlow(openings: StackOpenings): StackFlow {
  const { lowAreaM2, highAreaM2, heightM, discharge = stackDischarge } = openings;
  notNegative(lowAreaM2, 'The free area of the low opening');
  notNegative(highAreaM2, 'The free area of the high opening');
  notNegative(heightM, 'The height between the openings');
  positive(discharge, 'The discharge coefficient');
  const inside = positive(
    kelvin(finite(openings.insideC, 'The inside temperature')),
    'The absolute temperature',
  );
  const outside = positive(
    kelvin(finite(openings.outsideC, 'The outside temperature')),
    'The absolute temperature',
  );
  const risesInside = inside >= outside;
  const inM2 = risesInside ? lowAreaM2 : highAreaM2;
  const outM2 = risesInside ? highAreaM2 : lowAreaM2;
  if (inM2 === 0 && outM2 === 0) return { flowM3S: 0, neutralM: heightM / 2, comesIn: 'nowhere' };
  const fromIn = heightM / (1 + ((inM2 / outM2) ** 2 * inside) / outside);
  const drive = Math.abs(inside - outside) / Math.max(inside, outside);
  const flowM3S = discharge * inM2 * Math.sqrt(2 * gravity * fromIn * drive);
  return {
    flowM3S,
    neutralM: risesInside ? fromIn : heightM - fromIn,
    comesIn: flowM3S === 0 ? 'nowhere' : risesInside ? 'low' : 'high',
  };
}

/**
 * Flow through one opening that lies `toNeutralM` from the neutral level: the equation as it is printed.
 *
 *     Q = C_d · A · √(2 · g · ΔH · (T_i − T_e) / T_i)
 *
 * A: m² (≥ 0); ΔH: m (≥ 0); T_i ≥ T_e, K; Q: m³/s.
 *
 * Throws RangeError if a value is not finite or out of its range, or it is colder inside than outside.
 *
 * Source: as {@link stackFlow}.
 */
export function flowFromNeutralLevelM3S(
  areaM2: number,
  toNeutralM: number,
  insideC: number,
  outsideC: number,
  discharge: number = stackDischarge,
): number {
  const warmer = notNegative(
    finite(insideC, 'The inside temperature') - finite(outsideC, 'The outside temperature'),
    'How much warmer it is inside',
  );
  return (
    positive(discharge, 'The discharge coefficient') *
    notNegative(areaM2, 'The free area') *
    Math.sqrt(
      (2 * gravity * notNegative(toNeutralM, 'The height to the neutral level') * warmer) / kelvin(insideC),
    )
  );
}

/**
 * The discharge coefficient of a single opening that air enters and leaves at once: 0.40 + 0.0045 · |T_i − T_e|.
 *
 * Source: ASHRAE Handbook of Fundamentals, as above (read).
 */
export function singleOpeningDischarge(insideC: number, outsideC: number): number {
  return (
    0.4 +
    0.0045 * Math.abs(finite(insideC, 'The inside temperature') - finite(outsideC, 'The outside temperature'))
  );
}

/**
 * Flow that wind drives through an opening.
 *
 *     Q = C_v · A · U
 *
 * A: m² of the inlet (≥ 0); U: m/s (≥ 0); C_v: 0.5 to 0.6 for wind square on, 0.25 to 0.35 aslant; 0.25 where left out.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: ASHRAE Handbook of Fundamentals, chapter on ventilation and infiltration (memory).
 */
export function windFlowM3S(areaM2: number, windMS: number, effectiveness = 0.25): number {
  return (
    notNegative(effectiveness, 'The effectiveness of the opening') *
    notNegative(areaM2, 'The free area') *
    notNegative(windMS, 'The wind')
  );
}

/**
 * What wind and warmth do together: no more than the stronger alone, m³/s. Two sources put the gain of equal heads at
 * 10 % and at 41 %, so none is counted.
 *
 * Throws RangeError if a flow is not finite or negative.
 *
 * Source: a handbook's text on ventilation and an open library (read); taking the larger is an own choice, on the safe side.
 */
export function naturalFlowM3S(stackM3S: number, windM3S: number): number {
  return Math.max(notNegative(stackM3S, 'The stack flow'), notNegative(windM3S, 'The flow by wind'));
}
