import { sumOf, type Tally } from '../engine/tally.ts';

/** A plan's counts as JSON: waived and acknowledged findings are among those of their verdicts. */
export const jsonTally = ({ counts, waived, acknowledged }: Tally) => ({
  fail: counts.fail,
  warn: counts.warn,
  notChecked: counts['not checked'],
  pass: counts.pass,
  waived: sumOf(waived),
  acknowledged: sumOf(acknowledged),
});
