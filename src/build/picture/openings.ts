import type { ShellOpening } from '../layout.ts';
import type { Line } from './model.ts';

/** How an opening is drawn where one looks at it. */
export const lineOf = ({ kind }: ShellOpening): Line => (kind === 'window' ? 'window' : 'cover');

/** What stands in the line of the wall; nothing in that of a door. */
export const openLineOf = (opening: ShellOpening): Line | undefined =>
  opening.kind === 'door' ? undefined : lineOf(opening);
