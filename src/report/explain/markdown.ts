import type { Explanation } from '../../engine/explanation.ts';
import { topics } from '../../engine/finding.ts';
import { markdownText } from '../markdown-text.ts';
import { sourceText } from '../source-text.ts';
import { distinct } from '../summary.ts';
import { limitText, settableText, waiverWords, withoutRow } from './words.ts';

/**
 * What all checks say of themselves, as GitHub-flavoured Markdown: `src/rules/README.md` is this text. Ends with a line
 * break.
 */
export function renderChecksMarkdown(checks: readonly Explanation[]): string {
  const shown = topics.filter((topic) => checks.some((check) => check.topic === topic));
  return `${[
    '# All checks',
    'Written by `npm run docs` from what the rules say of themselves: change it there. `storystick explain CHECK` prints the same of one check, and with a plan after it the working with the numbers of that plan.',
    'Limits that come from a table are shown in metric units, with what stands behind them: only law can fail a check. What a plan leaves out is not checked, and never passes by silence.',
    ...shown.flatMap((topic) => [
      `## ${topic.charAt(0).toUpperCase()}${topic.slice(1)}`,
      ...checks.filter((check) => check.topic === topic).flatMap(checkParagraphs),
    ]),
  ].join('\n\n')}\n`;
}

function checkParagraphs(check: Explanation): string[] {
  const { id, title, why, formula, fix, limits, informationOnly, waivable, sources, cautions } = check;
  const settable = settableText(check);
  const limit = informationOnly
    ? ['none: it gives a table, and no verdict']
    : limits.length === 0
      ? [withoutRow]
      : limits.map((each) => limitText(each, 'metric'));
  const entries: readonly (readonly [label: string, text: string])[] = [
    ['Formula', formula],
    ...limit.map((text) => ['Limit', text] as const),
    ...(fix === undefined ? [] : [['Fix', fix] as const]),
    ['Waiver', waiverWords[waivable]],
    ...distinct([...sources, ...limits.flatMap((each) => each.sources)].map(sourceText)).map(
      (text) => ['Source', text] as const,
    ),
    ...distinct(limits.flatMap(({ caution }) => caution ?? [])).map((text) => ['Note', text] as const),
    ...distinct(cautions).map((text) => ['Caution', text] as const),
  ];
  return [
    `### \`${id}\`: ${markdownText(title)}`,
    markdownText(why),
    [
      ...entries.map(([label, text]) => `- ${label}: ${markdownText(text)}`),
      // Its code is ours, and stays code.
      ...(settable === undefined ? [] : [`- Own limit: ${settable}`]),
    ].join('\n'),
  ];
}
