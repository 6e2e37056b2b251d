import { type Comparison, isSame, turns, type VerdictChange } from '../../engine/compare/comparison.ts';
import { type Topic, topics } from '../../engine/finding.ts';
import { folded, type MarkdownColumn, markdownCode, markdownTable, markdownText } from '../markdown-text.ts';
import { placeText } from '../place.ts';
import { resultText as findingText } from '../said.ts';
import { distinct } from '../summary.ts';
import { verdictText } from '../waiver-text.ts';
import { byEntry, editText, entryLine, keysText } from './edit-text.ts';
import { movedText } from './moved-text.ts';
import { resultText, sideCounts, turnHeadings } from './summary-text.ts';

type Paragraph = readonly string[];

/** Writes a comparison as GitHub-flavoured Markdown, for a pull request. Ends with a line break. */
export function renderMarkdownDiff(comparison: Comparison): string {
  const paragraphs = [
    ...headParagraphs(comparison),
    ...turns.map((turn) => verdictTable(comparison, turn)),
    ...movedParagraphs(comparison),
    editLines(comparison),
    cautionLines(comparison),
  ].filter((lines) => lines.length > 0);
  return `${paragraphs.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function headParagraphs(comparison: Comparison): Paragraph[] {
  const { before, after } = comparison;
  const row = (when: string, side: Comparison['before']) => [
    when,
    markdownText(side.label),
    markdownText(side.name),
    sideCounts(side),
  ];
  return [
    [`## ${markdownText(after.name)}: what changed`],
    [`**${isSame(comparison) ? 'There is no difference: both read the same.' : resultText(comparison)}**`],
    markdownTable(
      [left(''), left('plan'), left('name'), left('verdicts')],
      [row('before', before), row('after', after)],
    ),
  ];
}

const left = (heading: string): MarkdownColumn => ({ heading, align: 'left' });
const right = (heading: string): MarkdownColumn => ({ heading, align: 'right' });

function verdictTable({ before, after, verdicts }: Comparison, turn: VerdictChange['turn']): Paragraph {
  const changes = verdicts.filter((change) => change.turn === turn);
  if (changes.length === 0) return [];
  const side = turn === 'gone' ? before : after;
  const columns = [left('verdict'), left('what'), left('check'), left('where')];
  const rows = changes.map((change) => {
    const { shown } = change;
    return [
      verdictCell(change),
      `**${markdownText(shown.subject)}**: ${markdownText(findingText(shown, side.units))}`,
      markdownCode(shown.rule),
      markdownText(placeText(side, shown.path)),
    ];
  });
  const title = `${turnHeadings[turn]} (${changes.length})`;
  // What is good news, or no news, need not be read.
  const isQuiet = changes.every(({ shown }) => shown.verdict === 'pass') || turn === 'gone';
  return isQuiet
    ? folded(title, markdownTable(columns, rows))
    : [`### ${title}`, '', ...markdownTable(columns, rows)];
}

function verdictCell(change: VerdictChange): string {
  if (change.turn === 'new') return `new: **${verdictText(change.after)}**`;
  if (change.turn === 'gone') return `was ${verdictText(change.before)}`;
  return `${verdictText(change.before)} → **${verdictText(change.after)}**`;
}

function movedParagraphs({ moved, after }: Comparison): Paragraph[] {
  if (moved.length === 0) return [];
  const columns = [left('value'), right('before'), right('after'), right('change'), right('margin')];
  const rowsOf = (topic: Topic) =>
    moved
      .filter((each) => each.topic === topic)
      .map((each) => {
        const { what, ...numbers } = movedText(each, after.units);
        const { before, after: now, change, margin } = numbers;
        return [what, before, now, change, margin].map(markdownText);
      });
  return [
    [`### Values that moved (${moved.length})`],
    ...topics.map((topic) => {
      const rows = rowsOf(topic);
      return rows.length === 0 ? [] : folded(`${topic} (${rows.length})`, markdownTable(columns, rows));
    }),
  ];
}

function editLines(comparison: Comparison): Paragraph {
  const { edits, after } = comparison;
  if (edits.length === 0) return [];
  return [
    `### Edited in the plan (${edits.length})`,
    '',
    ...byEntry(edits).map((group) => {
      const line = entryLine(comparison, group);
      const said = group.edits.map((edit) => markdownText(editText(edit, after.units))).join('; ');
      return `- **${markdownText(keysText(group.entry))}**${line === '' ? '' : ` (${line})`}: ${said}`;
    }),
  ];
}

/** Every caution of what is shown, once, and never folded away. */
function cautionLines({ verdicts, moved }: Comparison): Paragraph {
  const shown = [...verdicts.map((change) => change.shown), ...moved.map(({ after }) => after)];
  const cautions = distinct(shown.flatMap((finding) => finding.cautions).map(markdownText));
  return cautions.length === 0 ? [] : ['### Caution', '', ...cautions.map((text) => `- ${text}`)];
}
