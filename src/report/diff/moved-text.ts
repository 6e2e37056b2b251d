import type { Moved } from '../../engine/compare/comparison.ts';
import type { Finding } from '../../engine/finding.ts';
import type { Measure } from '../../engine/measure.ts';
import { formatMeasure, formatPair, type Units } from '../format-measure.ts';
import { changeText } from './change-text.ts';

/** A value that moved, as it is printed. */
export interface MovedText {
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly change: string;
  /** "287 kg → -51 kg"; empty where there is no limit. */
  readonly margin: string;
}

export function movedText({ from, to, change, margin, after }: Moved, units: Units): MovedText {
  const [before, now] = sideBySide(from, to, units);
  const margins = margin && sideBySide(margin.from, margin.to, units);
  return {
    what: whatText(after),
    before,
    after: now,
    change: change.value === 0 ? 'limit moved' : changeText(change, units),
    margin: !margin || !margins ? '' : margin.turn === 'the same' ? margins[1] : margins.join(' → '),
  };
}

/** "Axle load: rear axle", or the title alone where it names the subject already. */
export const whatText = ({ title, subject }: Pick<Finding, 'title' | 'subject'>): string =>
  title.toLowerCase().includes(subject.toLowerCase()) ? title : `${title}: ${subject}`;

/** With enough digits that two that differ do not look the same. */
function sideBySide(one: Measure, other: Measure, units: Units): readonly [string, string] {
  const { measured, limit } = formatPair(one, other, units);
  return [measured, limit];
}

/** Whether a reader who sees the usual digits sees no change at all. */
export function isTooSmallToSee({ from, to, margin }: Moved, units: Units): boolean {
  const looksTheSame = (one: Measure, other: Measure) =>
    formatMeasure(one, units) === formatMeasure(other, units);
  return looksTheSame(from, to) && (!margin || looksTheSame(margin.from, margin.to));
}
