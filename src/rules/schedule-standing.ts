import { verdicts } from '../engine/finding.ts';
import { type Judged, stands } from '../engine/waive.ts';

/**
 * The worst of some verdicts. What a waiver makes stand aside counts after all failures and warnings that stand, and
 * before what is not checked; a failure that is only acknowledged counts as before, and after one that nobody has seen.
 */
export function worstStanding(found: readonly Judged[]): Judged | undefined {
  const standing = found.filter(stands);
  const broken = standing.filter(({ verdict }) => verdict === 'fail' || verdict === 'warn');
  const aside = found.filter((each) => !stands(each));
  return worstOf(broken) ?? worstOf(aside) ?? worstOf(standing);
}

function worstOf(found: readonly Judged[]): Judged | undefined {
  const worst = verdicts.find((verdict) => found.some((each) => each.verdict === verdict));
  const those = found.filter(({ verdict }) => verdict === worst);
  return those.find(({ waived }) => !waived) ?? those[0];
}
