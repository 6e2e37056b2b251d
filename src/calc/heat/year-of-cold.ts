import { finite } from '../argument.ts';

const monthsAYear = 12;

/**
 * Monthly mean temperatures where no table serves: a wave with its trough in January and its crest in July.
 *
 *     T_m = (T_Jan + T_Jul) / 2 + (T_Jan − T_Jul) / 2 · cos(2π · m / 12),   m = 0 for January
 *     T_Jan = low + a,   T_Jul = high − a
 *
 * low, high: extremes of a plan, °C; a: how far a month's mean stays from them, K (10 in the catalogue: own choice,
 * because the coldest night is not the mean of January). Where that would make July colder than January, both are the
 * middle. Twelve values, January first. Only the north: turn it by six for the south.
 *
 * Throws RangeError if a value is not finite or low > high.
 *
 * Source: own choice.
 */
export function yearBetween(lowC: number, highC: number, meanFromExtremeK: number): number[] {
  if (finite(lowC, 'The winter low') > finite(highC, 'The summer high')) {
    throw new RangeError(`The winter low (${lowC} °C) must not be above the summer high (${highC} °C).`);
  }
  const from = finite(meanFromExtremeK, 'The distance of a mean from the extreme');
  const middle = (lowC + highC) / 2;
  const swing = Math.max(0, (highC - lowC) / 2 - from);
  return Array.from(
    { length: monthsAYear },
    (_, month) => middle - swing * Math.cos((2 * Math.PI * month) / monthsAYear),
  );
}

/** A value that is one thing in January and another in July, along the same wave: humidity outside, 0 to 1. */
export function alongYear(january: number, july: number): number[] {
  const middle = (finite(january, 'The value of January') + finite(july, 'The value of July')) / 2;
  return Array.from(
    { length: monthsAYear },
    (_, month) => middle + ((january - july) / 2) * Math.cos((2 * Math.PI * month) / monthsAYear),
  );
}
