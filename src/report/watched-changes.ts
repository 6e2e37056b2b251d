import type { Moved, VerdictChange } from '../engine/compare/comparison.ts';
import type { Report } from '../engine/report.ts';
import { inPoints } from './diff/change-text.ts';
import { limitStep } from './diff/moved-text.ts';
import { formatStep } from './format-measure.ts';
import type { Pen } from './pen.ts';
import { quietLines } from './quiet.ts';
import { visible } from './visible.ts';
import { verdictText } from './waiver-text.ts';
import { hanging } from './wrap.ts';

/** "fail, was pass  mass.total  whole van: ..." */
export function verdictLines(report: Report, change: VerdictChange, pen: Pen, width: number): string[] {
  const { shown, turn } = change;
  if (turn === 'gone') {
    return hanging(visible(`gone, was ${verdictText(shown)}  ${shown.rule}  ${shown.subject}`), 6, width);
  }
  const history = turn === 'new' ? ', new' : `, was ${verdictText(change.before)}`;
  return quietLines(report, shown, pen, width, history);
}

/** "mass.total  whole van: 3,120 kg, was 3,100 kg; margin 80 kg, 20 kg less" */
export function movedLines({ units }: Pick<Report, 'units'>, moved: Moved, width: number): string[] {
  const { after, from, to, change, margin } = moved;
  const texts = formatStep(from, to, change, units);
  // Where only the limit moved, the value is what it was.
  const value = change.value === 0 ? texts.to : `${texts.to}, was ${texts.from}`;
  const limit = limitStep(moved, units);
  const limits = limit ? `; limit ${limit.to}, was ${limit.from}` : '';
  const text = visible(`${after.rule}  ${after.subject}: ${value}${limits}${marginText(margin, units)}`);
  return hanging(text, 6, width);
}

function marginText(margin: Moved['margin'], units: Report['units']): string {
  if (!margin || margin.turn === 'the same') return '';
  const by = { ...margin.change, value: Math.abs(margin.change.value) };
  const { to, change } = formatStep(margin.from, margin.to, by, units);
  return `; margin ${to}, ${inPoints(by, change)} ${margin.turn}`;
}
