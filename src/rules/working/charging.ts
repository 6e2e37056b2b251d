import type { Bank } from '../../build/electrical.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { chargeAh, count, current, factor } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import type { Charger } from '../chargers.ts';

/*
 * What chargers bring together, and what a bank may take or bring by its data sheet or by guidance for its kind.
 */

/** The rated currents of chargers, added up. */
export function chargersStep(chargers: readonly Charger[]): Step {
  return {
    what: chargers.length === 1 ? 'What the charger brings' : 'What the chargers bring together: Σ I_k',
    result: current(chargers.reduce((sum, { currentA }) => sum + currentA, 0)),
    parts: {
      columns: ['brings'],
      rows: chargers.map(
        ({ name, path, currentA }): Part => ({
          name,
          path,
          origin: 'typed',
          values: [],
          adds: current(currentA),
        }),
      ),
    },
    paths: chargers.map(({ path }) => path),
  };
}

export interface BankLimit {
  readonly what: string;
  readonly limitA: number;
  /** The key under the battery that says it of one battery. */
  readonly key: string;
  readonly from: 'typed' | 'catalogue';
}

/** A limit of the whole bank: of one battery times those side by side, or by guidance for its capacity. */
export function bankLimitStep(
  { path, inParallel, capacityAh, chemistry }: Bank,
  { what, limitA, key, from }: BankLimit,
): Step {
  const result = current(limitA);
  if (from === 'typed')
    return {
      what,
      sum: say`${current(limitA / inParallel)} for one battery${sideBySide(inParallel)}`,
      result,
      paths: [
        [...path, key],
        [...path, 'in_parallel'],
      ],
    };
  return {
    what: `${what}, by guidance for its kind`,
    sum: say`${factor(limitA / capacityAh)} A for each Ah of ${chemistry.name} · ${chargeAh(capacityAh)}`,
    result,
    paths: [
      [...path, 'chemistry'],
      [...path, 'capacity'],
      [...path, 'in_parallel'],
    ],
  };
}

const sideBySide = (inParallel: number): Phrase =>
  inParallel > 1 ? say` · ${count(inParallel)} in parallel` : [];
