import type { Finding } from '../../src/engine/finding.ts';
import { withWorking } from '../../src/engine/working.ts';
import { rules } from '../../src/rules/index.ts';
import { buildOf, reportOf } from './check.ts';

/** Gives what a plan's checks measured, of those that are asked for, with its working; a plan is checked only once. */
export function workedBy(
  isAsked: (finding: Finding) => boolean,
): (text: string) => Promise<readonly Finding[]> {
  const known = new Map<string, Promise<readonly Finding[]>>();
  const workOut = async (text: string): Promise<readonly Finding[]> => {
    const build = await buildOf(text);
    const { findings } = await reportOf(text);
    return findings
      .filter((finding) => finding.measured && isAsked(finding))
      .map((finding) => withWorking(rules, build, finding));
  };
  return (text) => {
    const found = known.get(text) ?? workOut(text);
    known.set(text, found);
    return found;
  };
}
