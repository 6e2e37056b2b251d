import type { Measure } from '../../engine/measure.ts';

/** A difference as it was written, with a sign where it is more: "+14 kg", "-0.4 points". */
export const signedChange = (change: Measure, written: string): string =>
  `${change.value > 0 ? '+' : ''}${inPoints(change, written)}`;

/** "+5 %" could be taken for a twentieth of the value before. */
export const inPoints = ({ kind }: Measure, written: string): string =>
  kind === 'share' ? written.replace(/ %$/, ' points') : written;
