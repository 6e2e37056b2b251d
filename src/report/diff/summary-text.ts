import type { Comparison, Side, Turn, VerdictChange } from '../../engine/compare/comparison.ts';
import { isStepBack } from '../../engine/compare/standing.ts';
import { tallyText, verdictText } from '../waiver-text.ts';

/** "1 fail, 3 warn, 2 not checked, 12 pass" */
export const sideCounts = (side: Side): string => tallyText(side);

/** What is said behind a verdict: ", was pass". */
export function historyText(change: VerdictChange): string {
  if (change.turn === 'new') return ', new';
  if (change.turn === 'gone') return ', gone';
  return `, was ${verdictText(change.before)}`;
}

export const turnHeadings: Readonly<Record<Turn, string>> = {
  worse: 'Worse',
  new: 'New',
  better: 'Better',
  gone: 'Gone',
};

/** The result in one sentence. */
export function resultText({ verdicts: changes }: Comparison): string {
  if (changes.length === 0) return 'No verdict changed.';
  const worse = changes.filter(isStepBack).length;
  const count = (turn: Turn) => changes.filter((change) => change.turn === turn).length;
  const parts = [
    `${count('worse')} worse`,
    `${count('new')} new`,
    `${count('better')} better`,
    `${count('gone')} gone`,
  ];
  const judgement =
    worse > 0
      ? `The second is worse: ${worse} ${worse === 1 ? 'verdict is' : 'verdicts are'} a step back.`
      : 'The second is not worse.';
  return `${judgement} Verdicts: ${parts.join(', ')}.`;
}
