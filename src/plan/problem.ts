/** Something in a plan that cannot be understood: what is wrong, where, and what would be right. */
export interface Problem {
  readonly message: string;
  /** Where in the text; both offsets count characters from 0. Absent when the file itself is the trouble. */
  readonly span?: Span;
  /** What was expected, with an example that would be right. */
  readonly expected?: string;
  /** A known name that was probably meant. */
  readonly meant?: string;
}

export interface Span {
  readonly start: number;
  readonly end: number;
}
