import type { Build } from '../build/build.ts';
import type { Citation } from '../catalogue/citation.ts';
import type { LengthLimitId } from '../catalogue/fit-limits.ts';
import type { LimitId } from '../catalogue/limits.ts';
import type { WaterLimitId } from '../catalogue/water/limits.ts';
import type { DimensionName } from '../plan/units.ts';
import type { Finding, Note, PlanPath, Topic } from './finding.ts';

/** Something a rule needs from the build, or the keys that are missing from the plan. */
export type Need<T> = (build: Build) => Given<T>;
export type Given<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly missing: readonly string[] };

export const given = <T>(value: T): Given<T> => ({ ok: true, value });
export const missing = (...keys: readonly string[]): Given<never> => ({ ok: false, missing: keys });

/** A row of the tables of limits: a region's, one of lengths that bodies and movement need, or one of water. */
export type AnyLimitId = LimitId | LengthLimitId | WaterLimitId;

/** A limit in force for this plan: of its region, or its own. */
export interface EffectiveLimit {
  readonly value: number;
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
  /** Breaking it fails; otherwise it warns. */
  readonly failing: boolean;
}

export interface RuleText {
  /** Stable and dotted; never reused. It names the defect's subject, e.g. "balance.rear-axle". */
  readonly id: string;
  readonly topic: Topic;
  /** A few words for a table row. */
  readonly title: string;
  /** Why it matters, for someone who is no engineer. */
  readonly why: string;
  /** How it is worked out, with symbols and units. */
  readonly formula: string;
  /** Where the method comes from; limits bring their own citations. */
  readonly sources: readonly Citation[];
  /** Shown with every finding of this rule. */
  readonly cautions: readonly string[];
  /** Where a plan that lacks what the rule needs is pointed at. */
  readonly place: PlanPath;
  /** It gives no verdict, only a table; where the plan lacks what it needs, it says nothing. */
  readonly informationOnly?: true;
}

export interface Output {
  readonly findings: readonly Finding[];
  readonly notes?: readonly Note[];
}

export interface Setting<Facts> {
  readonly build: Build;
  readonly facts: Facts;
  readonly limit: (id: AnyLimitId) => EffectiveLimit;
}

/** A rule with the types of its facts forgotten, as the engine runs it. */
export interface Rule extends RuleText {
  /** The kind of limit that a plan may set for itself under `rules`; without it the limit is not the plan's to move. */
  readonly override?: { readonly limit: AnyLimitId; readonly kinds: readonly DimensionName[] };
  readonly run: (
    build: Build,
    limit: (id: AnyLimitId) => EffectiveLimit,
  ) => Output | { readonly missing: readonly string[] };
}

interface Definition<Facts> extends RuleText {
  readonly override?: NonNullable<Rule['override']>;
  readonly needs: { readonly [Key in keyof Facts]: Need<Facts[Key]> };
  readonly check: (setting: Setting<Facts>) => Output;
}

/** Makes a rule from its text, what it needs, and a pure function from those facts to findings. */
export function defineRule<Facts extends object>({ needs, check, ...text }: Definition<Facts>): Rule {
  return {
    ...text,
    run: (build, limit) => {
      const absent: string[] = [];
      const facts: Partial<Facts> = {};
      for (const key of keysOf(needs)) {
        const found = needs[key](build);
        if (found.ok) facts[key] = found.value;
        else absent.push(...found.missing);
      }
      return isComplete(facts, needs) ? check({ build, facts, limit }) : { missing: [...new Set(absent)] };
    },
  };
}

function keysOf<T extends object>(record: T): (keyof T)[] {
  const keys: (keyof T)[] = [];
  for (const key in record) keys.push(key);
  return keys;
}

const isComplete = <Facts extends object>(
  facts: Partial<Facts>,
  needs: { readonly [Key in keyof Facts]: unknown },
): facts is Facts => keysOf(needs).every((key) => key in facts);
