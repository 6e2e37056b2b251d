/** A subject of two things: the same whichever the plan has first. */
export const pairOf = (one: string, other: string): string =>
  (one < other ? [one, other] : [other, one]).join(' and ');
