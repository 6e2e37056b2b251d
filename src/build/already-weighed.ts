import type { Body } from './body.ts';

/**
 * What was in the van when it was weighed empty, as a mass to take off again, so that it counts once and only in the
 * states that have it aboard. It stands where the thing itself stands, and its errors are the same errors.
 */
export function alreadyWeighed(body: Body, part: number, key: 'driver' | 'fuel'): Body {
  const { variable: _, ...always } = body;
  return {
    ...always,
    label: `${body.label} already in the unladen mass`,
    path: ['van', 'unladen', 'includes', key],
    massKg: -part * body.massKg,
    massErrors: body.massErrors.map((term) => ({ ...term, standard: -part * term.standard })),
  };
}
