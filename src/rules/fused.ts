import type { Circuit, CircuitFuse, Electrical } from '../build/electrical.ts';
import type { Finding } from '../engine/finding.ts';
import { count } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { missing, type Need, type RuleText } from '../engine/rule.ts';
import { type CircuitFigures, electrical } from './circuits.ts';
import { observed } from './observed.ts';
import { namesOf } from './routed.ts';

/*
 * What the checks of fuses share: which fuse comes before which, and how many passes become one finding.
 */

/** An electrical part with circuits in it. */
export const withCircuits: Need<Electrical> = (build) => {
  const found = electrical(build);
  if (!found.ok || found.value.circuits.length > 0) return found;
  return missing('electrical.circuits');
};

/** An electrical part in which at least one circuit has a fuse. */
export const withFuses: Need<Electrical> = (build) => {
  const found = withCircuits(build);
  if (!found.ok || found.value.circuits.some(({ fuse }) => fuse)) return found;
  return missing('electrical.circuits.NAME.fuse');
};

export interface FusedCircuit {
  readonly circuit: Circuit;
  readonly fuse: CircuitFuse;
}

/** The fuses on the way from the battery to a circuit, without its own; the last is the nearest. */
export const fusesBefore = ({ chain = [], circuit }: CircuitFigures): readonly FusedCircuit[] =>
  chain.flatMap((each) =>
    each.name !== circuit.name && each.fuse ? [{ circuit: each, fuse: each.fuse }] : [],
  );

/** The greatest voltage that a fuse may meet: while the battery is charged, where there is one. */
export const greatestV = ({ bank, nominalV }: Electrical): number => bank?.highestV ?? nominalV;

/** The one that has used most of its limit. */
export const nearestLimit = (findings: readonly Finding[]): Finding | undefined =>
  findings.reduce<Finding | undefined>(
    (nearest, each) =>
      nearest === undefined || (each.utilisation ?? 0) > (nearest.utilisation ?? 0) ? each : nearest,
    undefined,
  );

/** All passes of a rule as the one nearest to its limit; `others` says how the rest stand to it. */
export function closestOf(
  passes: readonly Finding[],
  others: (howMany: Phrase) => Phrase,
): readonly Finding[] {
  const closest = nearestLimit(passes);
  if (!closest) return [];
  if (passes.length === 1) return [closest];
  return [{ ...closest, reason: say`${closest.reason} ${others([count(passes.length - 1)])}` }];
}

/** One finding for all circuits that a rule cannot look at. */
export function notKnown(
  rule: RuleText,
  circuits: readonly Circuit[],
  keys: readonly string[],
  reason: Phrase,
): readonly Finding[] {
  const [first] = circuits;
  if (!first) return [];
  return [
    observed(rule, {
      verdict: 'not checked',
      subject: namesOf(circuits.map(({ name }) => name)),
      path: first.path,
      reason,
      missing: [...new Set(keys)],
    }),
  ];
}
