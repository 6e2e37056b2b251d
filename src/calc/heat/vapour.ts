import { positive } from '../argument.ts';

/**
 * The layer of still air that holds vapour back as well.
 *
 *     s_d = μ · d
 *
 * μ: how many times better than air (1 or more for every real layer); d: m (> 0). m.
 *
 * Throws RangeError if a value is not above 0.
 *
 * Source: ISO 13788 (memory of the clause); as in the printed example of an open program (read).
 */
export const equivalentAir = (thicknessM: number, vapourResistanceFactor: number): number =>
  positive(thicknessM, 'The thickness') * positive(vapourResistanceFactor, 'The vapour resistance factor');
