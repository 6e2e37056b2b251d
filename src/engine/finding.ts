import type { Citation } from '../catalogue/citation.ts';
import type { Measure } from './measure.ts';
import type { Phrase } from './phrase.ts';

export const verdicts = ['fail', 'warn', 'not checked', 'pass'] as const;
export type Verdict = (typeof verdicts)[number];

export const topics = [
  'mass',
  'balance',
  'fit',
  'movement',
  'routes',
  'electrical',
  'water',
  'gas',
  'air',
  'heat',
  'plan',
] as const;
export type Topic = (typeof topics)[number];

/** The keys that lead to a place in the plan, e.g. ['fixtures', 'bed', 'mass']. */
export type PlanPath = readonly (string | number)[];

/** What a variable mass does in a load state. */
export interface Fill {
  /** The thing's name in the plan: a tank, a store, a seat, or the van's fuel. */
  readonly name: string;
  readonly massKg: number;
  /** 0 at its least, 1 at its most. */
  readonly share: number;
}

/** One way the van may be loaded, with a description such as "fresh full, waste empty, 2 aboard, stores full". */
export interface LoadState {
  readonly text: string;
  readonly fills: readonly Fill[];
}

export interface Limit {
  readonly measure: Measure;
  readonly sense: 'at most' | 'at least';
}

/**
 * A waiver of the plan that covers a finding. A life-safety check can be acknowledged, and never made to pass: it fails
 * as before.
 */
export interface Waived {
  readonly as: 'waived' | 'acknowledged';
  readonly reason: string;
  readonly by: string;
  /** The last day on which it holds: "2027-03-01". */
  readonly until: string;
  readonly path: PlanPath;
}

/** One line of a table of parts that are added up. */
export interface Part {
  readonly name: string;
  readonly path: PlanPath;
  /** Where its value comes from: "typed", "catalogue", "computed", "assumed". */
  readonly origin: string;
  /** In the order of the step's columns. */
  readonly values: readonly Measure[];
  /** What it adds to the step's result. */
  readonly adds: Measure;
}

/** One step of a working, from what the plan says towards the verdict. */
export interface Step {
  /** What is worked out, in a few words. */
  readonly what: string;
  /** The formula with its numbers in it. */
  readonly sum?: Phrase;
  readonly result?: Measure;
  /** Places of the plan whose quantities come in here. */
  readonly paths?: readonly PlanPath[];
  /** Parts whose last column adds up to the result. */
  readonly parts?: { readonly columns: readonly string[]; readonly rows: readonly Part[] };
}

/** The reason of a check that could not begin, since the plan lacks what it needs. */
export const saysTooLittle: Phrase = ['The plan does not say enough for this check.'];

/** What one rule says about one subject. Everything a report shows is in here; a report adds nothing. */
export interface Finding {
  /** Stable identifier, e.g. "balance.rear-axle". */
  readonly rule: string;
  readonly topic: Topic;
  readonly title: string;
  readonly verdict: Verdict;
  /** What the finding is about, in the plan's words: "rear axle", "fixture bed". */
  readonly subject: string;
  /** The place in the plan that decides it, or where a missing key would go. */
  readonly path: PlanPath;
  readonly measured?: Measure;
  readonly limit?: Limit;
  /** Signed distance to the limit; negative when it is broken. */
  readonly margin?: Measure;
  /** Measured over limit, turned round for an "at least" limit: the edge is at 1. */
  readonly utilisation?: number;
  /** Half-width of the band that holds the measured value with about 95 % (two standard uncertainties). */
  readonly tolerance?: Measure;
  /** Probability that the limit is broken, given the tolerance. */
  readonly probability?: number;
  readonly worstState?: LoadState;
  /** One sentence that a non-engineer understands. */
  readonly reason: Phrase;
  /** What to do about it, with a number in it. */
  readonly remedy?: Phrase;
  /** Keys to add to the plan, when verdict is "not checked". */
  readonly missing?: readonly string[];
  /** Assumed values that this finding rests on. */
  readonly assumptions?: readonly string[];
  /** The waiver that covers it, if one does; the verdict stays what it is. */
  readonly waived?: Waived;
  /** How it was worked out, step by step; filled where somebody asks for it, see `engine/working.ts`. */
  readonly working?: readonly Step[];
  readonly sources: readonly Citation[];
  /** Never empty where the result could hurt someone. */
  readonly cautions: readonly string[];
}

/** A table of information without a verdict, such as the material swaps. */
export interface Note {
  readonly rule: string;
  readonly topic: Topic;
  readonly title: string;
  /** Shown only with --detail. */
  readonly detailOnly: boolean;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Phrase[])[];
  readonly text?: Phrase;
  readonly sources: readonly Citation[];
  readonly cautions: readonly string[];
}

/** A value that the tool assumed because the plan does not say it. */
export interface Assumption {
  readonly path: PlanPath;
  readonly text: Phrase;
  readonly source?: Citation;
}
