import { finite, notNegative, positive } from '../argument.ts';

/**
 * What is left of a tabulated current in another ambient temperature.
 *
 *     C_a = √((T_c − T_a) / (T_c − T_ref))
 *
 * T_c: temperature the insulation bears, °C; T_a: ambient, °C; T_ref: ambient *of the table used*, °C (< T_c): 30 in
 * most, 40 or 45 in some for ships, 70 in one for aircraft. 0 where the ambient reaches T_c. Below T_ref the result is
 * above 1; printed tables are more cautious there (1.03 for 1.06), so the checks give no credit for the cold.
 *
 * Throws RangeError if a value is not finite or T_ref is not below T_c.
 *
 * Source: follows from heat given off in proportion to the difference of temperatures (computed); reproduces the
 * factors of BS 7671, the US code, US boat law and a table for ships to 0.01.
 */
export function ambientFactor(insulationC: number, ambientC: number, tableAmbientC: number): number {
  const span =
    finite(insulationC, 'The temperature of the insulation') - finite(tableAmbientC, "The table's ambient");
  positive(span, "What the insulation bears above the table's ambient");
  return Math.sqrt(Math.max(0, insulationC - finite(ambientC, 'The ambient temperature')) / span);
}

/** Shares of a tabulated current, all of which apply at once. */
export interface Derating {
  readonly ambient?: number;
  readonly grouping?: number;
  readonly thermalInsulation?: number;
  /** Anything else, as for a lead left coiled. */
  readonly other?: number;
}

/**
 * The current that a conductor may carry where it lies.
 *
 *     I_z = I_t · C_a · C_g · C_i · C
 *
 * I_t: tabulated current, A (> 0); the factors as in {@link Derating}, 1 where left out; each from 0 up. A factor
 * above 1 counts as 1: no credit for the cold.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: BS 7671, appendix 4, as summarised for students (I_z = I_t · C_a · C_g · C_i) (read); no credit for the
 * cold: own choice, on the safe side.
 */
export function deratedAmpacity(tabulatedA: number, derating: Derating): number {
  return positive(tabulatedA, 'The tabulated current') * deratingShare(derating);
}

function deratingShare({ ambient = 1, grouping = 1, thermalInsulation = 1, other = 1 }: Derating): number {
  const share = (factor: number, what: string) => Math.min(1, notNegative(factor, what));
  return (
    share(ambient, 'The ambient factor') *
    share(grouping, 'The grouping factor') *
    share(thermalInsulation, 'The factor for thermal insulation') *
    share(other, 'The further factor')
  );
}

/**
 * The tabulated current that a conductor needs behind a fuse: all factors divide the *rating of the fuse*, not the
 * current of the load.
 *
 *     I_t = I_n / (C_a · C_g · C_i · C)
 *
 * I_n: rating, A (> 0). Infinite if a factor is 0.
 *
 * Throws RangeError as {@link deratedAmpacity} does.
 *
 * Source: BS 7671, appendix 4, as above (read).
 */
export function neededTabulatedCurrent(fuseA: number, derating: Derating): number {
  return positive(fuseA, 'The rating of the fuse') / deratingShare(derating);
}

/** How warm a conductor gets. */
export interface ConductorLoading {
  /** What the insulation bears in steady use, °C. */
  readonly insulationC: number;
  /** The ambient of the table that the tabulated current is from, °C. */
  readonly tableAmbientC: number;
  readonly tabulatedA: number;
  readonly currentA: number;
  readonly ambientFactor: number;
  readonly groupingFactor: number;
}

/**
 * The temperature of a conductor by its share of load.
 *
 *     T = T_c − (C_a² · C_g² − I² / I_t²) · (T_c − T_ref)
 *
 * T_c: what the insulation bears, °C; T_ref: ambient of the table, °C (< T_c); I: current, A (≥ 0); I_t: tabulated
 * current, A (> 0); C_a, C_g: factors, 0 to 1 (above 1 counts as 1, so that the result is never too cold). Fully loaded
 * I = I_t · C_a · C_g gives T_c; with C_g = 1 and no load it gives the ambient; grouped and idle it is as warm as its
 * neighbours make it. Above I_t · C_a · C_g the result exceeds T_c: the conductor is overloaded. Use it where all of
 * that is known, and T_c otherwise.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: BS 7671, appendix 4, 6.1, whose factor for the drop, (230 + T) / (230 + T_c), was read in a forum of its
 * publisher.
 */
export function conductorTemperature(loading: ConductorLoading): number {
  const { insulationC, tableAmbientC, tabulatedA, currentA } = loading;
  const span = positive(
    finite(insulationC, 'The temperature of the insulation') - finite(tableAmbientC, "The table's ambient"),
    "What the insulation bears above the table's ambient",
  );
  const factors =
    Math.min(1, notNegative(loading.ambientFactor, 'The ambient factor')) *
    Math.min(1, notNegative(loading.groupingFactor, 'The grouping factor'));
  const share = notNegative(currentA, 'The current') / positive(tabulatedA, 'The tabulated current');
  return insulationC - (factors ** 2 - share ** 2) * span;
}
