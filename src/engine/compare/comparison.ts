import type { Finding, PlanPath, Topic } from '../finding.ts';
import type { Measure } from '../measure.ts';
import type { Report } from '../report.ts';
import type { Tally } from '../tally.ts';

/** One of the two plans, as far as a reader of the comparison needs it. */
export interface Side extends Pick<Report, 'file' | 'name' | 'codes' | 'units' | 'spot'>, Tally {
  /** What the side is called: "plan.yaml", "plan.yaml at HEAD~2". */
  readonly label: string;
}

/** What became of one verdict, in the order in which a reader wants to know. */
export const turns = ['worse', 'new', 'better', 'gone'] as const;
export type Turn = (typeof turns)[number];

/** A finding whose verdict, or whose waiver, is another one than before, or that only one of the two plans has. */
export type VerdictChange = {
  /** What it is known by in the second plan, or in the first where it is gone. */
  readonly identity: string;
  /** The finding that a reader wants to hear of: of the second plan, under the subject that it had where it cannot begin any more, or the one that is gone. */
  readonly shown: Finding;
} & (
  | { readonly turn: 'worse' | 'better'; readonly before: Finding; readonly after: Finding }
  | { readonly turn: 'new'; readonly after: Finding }
  | { readonly turn: 'gone'; readonly before: Finding }
);

/** What a change does to the distance that is left to a limit. */
export type MarginTurn = 'less' | 'more' | 'the same';

/** A measured value that is another one than before, or whose limit is. */
export interface Moved {
  readonly identity: string;
  readonly topic: Topic;
  readonly before: Finding;
  readonly after: Finding;
  readonly from: Measure;
  readonly to: Measure;
  /** `to` less `from`, of the same kind; nothing where only the limit moved. */
  readonly change: Measure;
  /** Left out where one of the two has no limit. */
  readonly margin?: {
    readonly from: Measure;
    readonly to: Measure;
    readonly change: Measure;
    readonly turn: MarginTurn;
  };
}

export const directions = ['rearward', 'forward', 'to the right', 'to the left', 'up', 'down'] as const;
export type Direction = (typeof directions)[number];

/** How far something was moved along one of the load bay's axes. */
export interface Move {
  readonly direction: Direction;
  /** Never negative. */
  readonly by: Measure;
}

/** One thing that was edited in the plan, whatever comments, order and layout of the text did. */
export interface Edit {
  readonly kind: 'added' | 'removed' | 'renamed' | 'moved' | 'changed';
  /** The entry that it is about, such as ['fixtures', 'bed'], or a section, such as ['van']: as the second plan calls it. */
  readonly entry: PlanPath;
  /** The keys below the entry; empty where it is about the whole of it. */
  readonly key: PlanPath;
  /** What something that was renamed was called. */
  readonly was?: string;
  /** As written; left out where it was not there. */
  readonly before?: string;
  readonly after?: string;
  /** Where both are quantities: what it was, what it is, and the second less the first. */
  readonly from?: Measure;
  readonly to?: Measure;
  readonly change?: Measure;
  readonly moves?: readonly Move[];
  /** Where it stands in the first plan, if it does. */
  readonly pathBefore?: PlanPath;
  readonly pathAfter?: PlanPath;
}

/** What differs between two plans. Renderers know nothing else. */
export interface Comparison {
  readonly before: Side;
  readonly after: Side;
  /** The worse first, then new, better and gone, each with the worst verdict first. */
  readonly verdicts: readonly VerdictChange[];
  /** By topic, in the order of the second report. */
  readonly moved: readonly Moved[];
  /** In the order of the second plan. */
  readonly edits: readonly Edit[];
}

/** Whether anything a reader could want to know differs. */
export const isSame = ({ verdicts, moved, edits }: Comparison): boolean =>
  verdicts.length + moved.length + edits.length === 0;
