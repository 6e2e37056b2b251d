import { standardUncertainty } from '../calc/uncertainty.ts';
import type { Quantity } from '../plan/quantity.ts';
import type { Coordinate, ErrorTerm } from './body.ts';

/** A stated tolerance as error terms; `source` names the place it was typed at. */
export function errorsOf(quantity: Quantity, source: string, scale = 1): ErrorTerm[] {
  const terms: ErrorTerm[] = [];
  if (quantity.halfWidth > 0)
    terms.push({ source, standard: scale * standardUncertainty(quantity.halfWidth) });
  for (const shared of quantity.shared) {
    const size = standardUncertainty(Math.abs(shared.halfWidth));
    terms.push({ source: shared.source, standard: scale * Math.sign(shared.halfWidth) * size });
  }
  return terms;
}

/** Anything between the two ends, with no place more likely than another. */
export function anywhere(fromM: number, toM: number, source: string): Coordinate {
  const halfWidthM = Math.max(0, toM - fromM) / 2;
  const errors = halfWidthM > 0 ? [{ source, standard: standardUncertainty(halfWidthM) }] : [];
  return { valueM: (fromM + toM) / 2, errors };
}
