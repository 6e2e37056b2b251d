import type { Finding } from '../engine/finding.ts';
import { tallyOf } from '../engine/tally.ts';
import { tallyText } from './waiver-text.ts';

/** "1 fail, 3 warn, 2 not checked, 12 pass" */
export const countsText = (findings: readonly Finding[]): string => tallyText(tallyOf(findings));

/** A finding that has a utilisation. */
export type Utilised = Finding & { readonly utilisation: number };

const isUtilised = (finding: Finding): finding is Utilised =>
  finding.utilisation !== undefined && !Number.isNaN(finding.utilisation);

/** The finding that uses most of what its limit allows, the first of several equal ones. */
export function closestToLimit(findings: readonly Finding[]): Utilised | undefined {
  let closest: Utilised | undefined;
  for (const finding of findings) {
    if (isUtilised(finding) && finding.utilisation > (closest?.utilisation ?? -Infinity)) closest = finding;
  }
  return closest;
}

/** Every distinct text once, in the order of first use. */
export const distinct = (texts: readonly string[]): string[] => [...new Set(texts)];
