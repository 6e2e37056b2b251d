import type { PlanPath, Verdict, Waived } from './finding.ts';
import type { Measure } from './measure.ts';
import type { Phrase } from './phrase.ts';

/** One circuit as an installer reads it. What is not known is left out, never guessed. */
export interface ScheduleRow {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly load?: Phrase;
  readonly designCurrent?: Measure;
  readonly conductor?: Phrase;
  /** One way. */
  readonly length?: Phrase;
  readonly fuse?: Phrase;
  /** From the battery to its end. */
  readonly drop?: { readonly voltage: Measure; readonly share: Measure };
  /** As derated for its place. */
  readonly ampacity?: Measure;
  /** The worst of what the checks say about it; undefined where none says anything. */
  readonly verdict?: Verdict;
  /** What a waiver of the plan makes of it. */
  readonly waived?: Pick<Waived, 'as'>;
  readonly notes: readonly Phrase[];
}

/** A short table beside the circuits. A cell without parts is not known. */
export interface ScheduleTable {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Phrase[])[];
}

/** The electrical part of a plan as one document. */
export interface Schedule {
  readonly file: string;
  readonly name: string;
  readonly units: 'metric' | 'imperial';
  readonly cautions: readonly string[];
  readonly circuits: readonly ScheduleRow[];
  /** How to read the columns. */
  readonly legend: Phrase;
  readonly tables: readonly ScheduleTable[];
  /** What the plan does not say: keys, under the section that they belong to. */
  readonly missing: readonly { readonly path: PlanPath; readonly keys: readonly string[] }[];
  /** How many values were assumed. */
  readonly assumed: number;
}
