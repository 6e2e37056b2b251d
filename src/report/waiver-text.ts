import { type Verdict, verdicts, type Waived } from '../engine/finding.ts';
import { sumOf, type Tally } from '../engine/tally.ts';

export { verdictText } from '../engine/waive.ts';

/** "until 2027-03-01 by Robin: the spare wheel moves in spring" */
export function waiverText({ as, reason, by, until }: Waived): string {
  const stays =
    as === 'acknowledged' ? ' It counts as before: a check about life and limb is never waived.' : '';
  return `${as} until ${until} by ${by}: ${reason}${stays === '' || /[.!?]$/.test(reason) ? '' : '.'}${stays}`;
}

/** "1 fail, 3 warn, 2 not checked, 12 pass"; what is waived is counted apart from what stands. */
export function tallyText({ counts, waived, acknowledged }: Tally): string {
  const text = (verdict: Verdict): string => {
    const known = acknowledged[verdict] > 0 ? ` (${acknowledged[verdict]} acknowledged)` : '';
    return `${counts[verdict] - waived[verdict]} ${verdict}${known}`;
  };
  const aside = sumOf(waived);
  return verdicts
    .map(text)
    .flatMap((each, at) => (at === 2 && aside > 0 ? [`${aside} waived`, each] : [each]))
    .join(', ');
}
