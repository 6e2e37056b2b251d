import type { Moved } from '../../engine/compare/comparison.ts';
import { isSameNumber } from '../../engine/compare/values.ts';
import type { Finding } from '../../engine/finding.ts';
import { formatStep, looksAlike, type Units } from '../format-measure.ts';
import { signedChange } from './change-text.ts';
import { stepText } from './step-text.ts';

/** A value that moved, as it is printed. */
export interface MovedText {
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly change: string;
  /** "287 kg → -51 kg"; empty where there is no limit. */
  readonly margin: string;
}

export function movedText(moved: Moved, units: Units): MovedText {
  const { from, to, change, margin, after } = moved;
  const limit = limitStep(moved, units);
  const values = stepText(from, to, change, units);
  const margins = margin && formatStep(margin.from, margin.to, margin.change, units);
  return {
    what: whatText(after),
    before: values.from,
    after: values.to,
    change:
      change.value === 0
        ? 'limit moved'
        : `${signedChange(change, values.change)}${limit ? `, limit ${limit.by}` : ''}`,
    margin:
      !margin || !margins ? '' : margin.turn === 'the same' ? margins.to : `${margins.from} → ${margins.to}`,
  };
}

/** How a limit moved, as it is printed. */
export interface LimitStep {
  readonly from: string;
  readonly to: string;
  /** "+450 kg" */
  readonly by: string;
}

/**
 * What became of the limit, where it is another one than before. Where a check tells of the limit that is closest, that
 * may be the one of something else now: then the values before and after are not of the same thing, and their limits
 * tell so.
 */
export function limitStep({ before, after }: Moved, units: Units): LimitStep | undefined {
  const [one, other] = [before.limit?.measure, after.limit?.measure];
  if (!one || !other || one.kind !== other.kind || isSameNumber(one.value, other.value)) return undefined;
  const by = { kind: other.kind, value: other.value - one.value };
  const { from, to, change } = formatStep(one, other, by, units);
  return { from, to, by: signedChange(by, change) };
}

/** "Axle load: rear axle", or the title alone where it names the subject already. */
export const whatText = ({ title, subject }: Pick<Finding, 'title' | 'subject'>): string =>
  title.toLowerCase().includes(subject.toLowerCase()) ? title : `${title}: ${subject}`;

/** Whether a reader who sees the usual digits sees no change at all. */
export function isTooSmallToSee({ from, to, margin }: Moved, units: Units): boolean {
  return looksAlike(from, to, units) && (!margin || looksAlike(margin.from, margin.to, units));
}
