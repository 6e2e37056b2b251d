import type { Build } from '../build/build.ts';
import type { AirLimitId } from '../catalogue/air/limits.ts';
import type { Citation } from '../catalogue/citation.ts';
import type { LengthLimitId } from '../catalogue/fit-limits.ts';
import type { GasLimitId } from '../catalogue/gas/limits.ts';
import type { LimitId } from '../catalogue/limits.ts';
import type { WaterLimitId } from '../catalogue/water/limits.ts';
import type { DimensionName } from '../plan/units.ts';
import type { Finding, Note, PlanPath, Step, Topic } from './finding.ts';
import type { Review } from './waiver.ts';

/** Something a rule needs from the build, or the keys that are missing from the plan. */
export type Need<T> = (build: Build) => Given<T>;
export type Given<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly missing: readonly string[] };

export const given = <T>(value: T): Given<T> => ({ ok: true, value });
export const missing = (...keys: readonly string[]): Given<never> => ({ ok: false, missing: keys });

/** A row of the tables of limits: a region's, one of lengths that bodies and movement need, or one of water. */
export type AnyLimitId = LimitId | LengthLimitId | WaterLimitId;

/** Any row of limits that a rule may name; those of air and gas it takes by itself. */
export type NamedLimitId = AnyLimitId | AirLimitId | GasLimitId;

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
  /** What to do where it is broken, in general; a finding says it with numbers. */
  readonly fix?: string;
  /** Rows of the catalogue that it takes its limits from; limits of the plan's own are no such rows. */
  readonly limits?: readonly NamedLimitId[];
  /** What breaks it can kill or maim: a waiver may acknowledge a failure, and never makes it pass. */
  readonly lifeSafety?: true;
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
  /** What it says of what the others found, after the waivers were applied. */
  readonly review?: (review: Review) => Output;
  /** The steps that led to one of its findings; undefined where it has none of its own for this one. */
  readonly work?: (
    build: Build,
    limit: (id: AnyLimitId) => EffectiveLimit,
    finding: Finding,
  ) => readonly Step[] | undefined;
}

interface Definition<Facts> extends RuleText {
  readonly override?: NonNullable<Rule['override']>;
  readonly needs: { readonly [Key in keyof Facts]: Need<Facts[Key]> };
  readonly check: (setting: Setting<Facts>) => Output;
  /** Worked out only where somebody asks for it; its last result is what the finding has measured. */
  readonly work?: (setting: Setting<Facts>, finding: Finding) => readonly Step[] | undefined;
}

/** Makes a rule from its text, what it needs, and a pure function from those facts to findings. */
export function defineRule<Facts extends object>({ needs, check, work, ...text }: Definition<Facts>): Rule {
  const factsOf = (build: Build): Facts | { readonly missing: readonly string[] } => {
    const absent: string[] = [];
    const facts: Partial<Facts> = {};
    for (const key of keysOf(needs)) {
      const found = needs[key](build);
      if (found.ok) facts[key] = found.value;
      else absent.push(...found.missing);
    }
    return isComplete(facts, needs) ? facts : { missing: [...new Set(absent)] };
  };
  return {
    ...text,
    run: (build, limit) => {
      const facts = factsOf(build);
      return isLacking(facts) ? facts : check({ build, facts, limit });
    },
    ...(work && {
      work: (build, limit, finding) => {
        const facts = factsOf(build);
        return isLacking(facts) ? undefined : work({ build, facts, limit }, finding);
      },
    }),
  };
}

/** Makes a rule that looks at the findings of the others and at the waivers that cover them. */
export const defineReview = ({
  review,
  ...text
}: RuleText & { readonly review: NonNullable<Rule['review']> }): Rule => ({
  ...text,
  run: () => ({ findings: [] }),
  review,
});

const isLacking = (
  facts: object | { readonly missing: readonly string[] },
): facts is { readonly missing: readonly string[] } => 'missing' in facts;

function keysOf<T extends object>(record: T): (keyof T)[] {
  const keys: (keyof T)[] = [];
  for (const key in record) keys.push(key);
  return keys;
}

const isComplete = <Facts extends object>(
  facts: Partial<Facts>,
  needs: { readonly [Key in keyof Facts]: unknown },
): facts is Facts => keysOf(needs).every((key) => key in facts);
