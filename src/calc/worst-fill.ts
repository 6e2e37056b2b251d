/** One mass that varies in use, between `leastKg` and `mostKg`. */
export interface VariableMass {
  readonly leastKg: number;
  readonly mostKg: number;
  /**
   * What one kilogram more of it does to the quantity in question (kg per kg, m/L, or any other unit: the result is
   * the vertex, not a value).
   */
  readonly effect: number;
  /** It draws on the shared supply: water that was carried aboard can be in one tank only. */
  readonly shares: boolean;
}

/**
 * The masses at which the sum of effect × mass is greatest, subject to least ≤ mass ≤ most for each, and to the
 * masses that share a supply adding up to at most `supplyKg`.
 *
 * It is a linear programme with one coupling constraint (a fractional knapsack whose items all weigh one kilogram
 * a kilogram): every mass outside the supply goes to the end that its effect's sign asks for, and the supply goes to
 * the greatest positive effects first. The vertex is exact. Time is linear in the number of masses (expected, by
 * selection about a middle element), not 2^n.
 *
 * A mass with effect 0 stays at its least. Where the least masses of the sharers already exceed the supply, they
 * stay at their least.
 *
 * @throws RangeError when a bound is not finite or `least > most`.
 *
 * Method: the greedy solution of the continuous knapsack problem (G. B. Dantzig, 1957, "Discrete-variable extremum
 * problems", Operations Research 5(2)). Provenance: memory; tests compare it with every corner.
 */
export function worstFill(masses: readonly VariableMass[], supplyKg: number): number[] {
  const chosen = masses.map(({ leastKg, mostKg, effect, shares }) => {
    if (!Number.isFinite(leastKg) || !Number.isFinite(mostKg) || leastKg > mostKg) {
      throw new RangeError(
        `a variable mass runs from ${leastKg} to ${mostKg} kg; it needs finite ends in order`,
      );
    }
    return !shares && effect > 0 ? mostKg : leastKg;
  });
  const wanting: number[] = [];
  let supply = supplyKg;
  masses.forEach((mass, index) => {
    if (!mass.shares) return;
    supply -= mass.leastKg;
    if (mass.effect > 0 && mass.mostKg > mass.leastKg) wanting.push(index);
  });
  if (supply <= 0) return chosen;
  pour(masses, wanting, supply, chosen);
  return chosen;
}

/** Pours the supply into the masses with the greatest effect, by selection rather than by sorting. */
function pour(
  masses: readonly VariableMass[],
  indices: readonly number[],
  supplyKg: number,
  chosen: number[],
): void {
  const effectOf = (index: number) => masses[index]?.effect ?? 0;
  const roomOf = (index: number) => (masses[index]?.mostKg ?? 0) - (masses[index]?.leastKg ?? 0);
  let open = indices;
  let supply = supplyKg;
  while (open.length > 0 && supply > 0) {
    const pivot = effectOf(open[open.length >> 1] ?? 0);
    const above = open.filter((index) => effectOf(index) > pivot);
    const level = open.filter((index) => effectOf(index) === pivot);
    const roomAbove = above.reduce((sum, index) => sum + roomOf(index), 0);
    if (roomAbove > supply) {
      open = above;
      continue;
    }
    for (const index of above) chosen[index] = masses[index]?.mostKg ?? 0;
    supply -= roomAbove;
    for (const index of level) {
      const poured = Math.min(supply, roomOf(index));
      chosen[index] = (masses[index]?.leastKg ?? 0) + poured;
      supply -= poured;
    }
    open = open.filter((index) => effectOf(index) < pivot);
  }
}

/** A mass in a ratio: its effect on the numerator and on the denominator, per kilogram. */
export interface RatioMass extends Omit<VariableMass, 'effect'> {
  readonly over: number;
  readonly under: number;
}

/**
 * The masses at which (over₀ + Σ over·m) / (under₀ + Σ under·m) is greatest, under the same constraints as
 * {@link worstFill}. The denominator must be positive for some filling and negative for none. A filling that makes
 * it nothing (all the equipment left at home) has no ratio and is passed over; its numerator must be nothing too.
 *
 * Dinkelbach's method: maximise over − r·under, take the ratio r reached there, and repeat until r no longer grows.
 * It starts where the denominator is greatest. Each round is one worst fill; the number of rounds is finite because
 * every round ends in another vertex, and in practice three to five.
 *
 * @throws RangeError when the denominator is negative, or nothing where the numerator is not or for every filling.
 *
 * Method: W. Dinkelbach, 1967, "On nonlinear fractional programming", Management Science 13(7). Provenance: memory;
 * tests compare it with every corner.
 */
export function worstRatio(
  masses: readonly RatioMass[],
  constant: { readonly over: number; readonly under: number },
  supplyKg: number,
): number[] {
  const at = (chosen: readonly number[]): number => {
    let over = constant.over;
    let under = constant.under;
    masses.forEach((mass, index) => {
      over += mass.over * (chosen[index] ?? 0);
      under += mass.under * (chosen[index] ?? 0);
    });
    if (!(under > 0) && !(under === 0 && over === 0))
      throw new RangeError(`the denominator of a ratio is ${under}; it must be positive`);
    return over / under;
  };
  let best = worstFill(
    masses.map(({ over: _, under, ...mass }) => ({ ...mass, effect: under })),
    supplyKg,
  );
  let ratio = at(best);
  if (Number.isNaN(ratio)) throw new RangeError('the denominator of a ratio is 0 for every filling');
  for (;;) {
    const next = worstFill(
      masses.map(({ over, under, ...mass }) => ({ ...mass, effect: over - ratio * under })),
      supplyKg,
    );
    const reached = at(next);
    if (!(reached > ratio)) return best;
    best = next;
    ratio = reached;
  }
}
