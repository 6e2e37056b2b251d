import { type Finding, type Note, type Topic, topics } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { closestText } from './closest-text.ts';
import { figuresOf, sentenceOf } from './figures.ts';
import { renderPhrase } from './format-measure.ts';
import { folded, type MarkdownColumn, markdownCode, markdownTable, markdownText } from './markdown-text.ts';
import { couldNotBegin } from './not-checked.ts';
import { placeText } from './place.ts';
import { resultText } from './said.ts';
import { closestToLimit, countsText, distinct } from './summary.ts';
import { verdictText, waiverText } from './waiver-text.ts';

export interface MarkdownOptions {
  /** Shows these topics only, and says what it leaves out. */
  readonly only?: readonly Topic[];
}

/** Lines that stay together; an empty line divides them from the next. */
type Paragraph = readonly string[];

/**
 * Writes a report as GitHub-flavoured Markdown, for a pull request or a job's summary: the counts, what is not a pass,
 * the cautions; passes, tables and assumptions folded away. Ends with a line break.
 */
export function renderMarkdown(report: Report, { only }: MarkdownOptions = {}): string {
  const shownTopics = topics.filter((topic) => only?.includes(topic) ?? true);
  const shown = report.findings.filter(({ topic }) => shownTopics.includes(topic));
  const paragraphs = [
    ...headParagraphs(report, shown),
    ...shownTopics.flatMap((topic) => topicParagraphs(report, topic)),
    ...cautionParagraphs(report, shownTopics),
    assumptionLines(report),
  ].filter((lines) => lines.length > 0);
  return `${paragraphs.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function headParagraphs(report: Report, shown: readonly Finding[]): Paragraph[] {
  const { name, file, codes, units, findings } = report;
  const hidden = findings.filter((finding) => !shown.includes(finding));
  const closest = closestToLimit(shown);
  return [
    [`## ${markdownText(name)}`],
    [
      `**${shown.length === 0 ? 'Nothing was checked.' : countsText(shown)}** (${markdownText(file)}, codes: ${markdownText(codes)}, units: ${units})`,
    ],
    hidden.length > 0 ? [`In topics not shown: ${countsText(hidden)}.`] : [],
    closest ? [markdownText(capital(closestText(closest, units)))] : [],
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const left = (heading: string): MarkdownColumn => ({ heading, align: 'left' });
const right = (heading: string): MarkdownColumn => ({ heading, align: 'right' });

const openColumns = [
  left('verdict'),
  left('what'),
  right('measured'),
  right('limit'),
  left('check'),
  left('where'),
];

function topicParagraphs(report: Report, topic: Topic): Paragraph[] {
  const findings = report.findings.filter((finding) => finding.topic === topic);
  const notes = report.notes.filter((note) => note.topic === topic);
  if (findings.length + notes.length === 0) return [];
  const unbegun = findings.filter(couldNotBegin);
  const open = findings.filter((finding) => finding.verdict !== 'pass' && !couldNotBegin(finding));
  const passes = findings.filter(({ verdict }) => verdict === 'pass');
  return [
    [`### ${capital(topic)}`],
    findings.length > 0 ? [`${countsText(findings)}`] : [],
    tableOf(
      openColumns,
      open.map((finding) => [`**${verdictText(finding)}**`, ...cellsOf(report, finding, openDetails)]),
    ),
    foldedTable(
      `${counted(unbegun.length, 'check', 'checks')} not made: the plan does not say enough`,
      [left('check'), left('keys to add'), left('id')],
      unbegun.map(({ title, missing = [], rule }) => [
        markdownText(title),
        missing.map(markdownCode).join(', '),
        markdownCode(rule),
      ]),
    ),
    foldedTable(
      counted(passes.length, 'pass', 'passes'),
      openColumns.slice(1),
      passes.map((finding) => cellsOf(report, finding, () => [])),
    ),
    ...notes.map((note) => noteLines(note, report.units)),
  ];
}

const counted = (number: number, one: string, many: string): string =>
  `${number} ${number === 1 ? one : many}`;

const tableOf = (columns: readonly MarkdownColumn[], rows: readonly (readonly string[])[]): Paragraph =>
  rows.length === 0 ? [] : markdownTable(columns, rows);

const foldedTable = (
  heading: string,
  columns: readonly MarkdownColumn[],
  rows: readonly (readonly string[])[],
): Paragraph => (rows.length === 0 ? [] : folded(heading, markdownTable(columns, rows)));

/** What a finding that is no pass says besides its result. */
function openDetails(
  { units }: Report,
  finding: Finding,
): readonly (readonly [label: string, text: string])[] {
  const { remedy, worstState, waived, assumptions = [] } = finding;
  return [
    ...(worstState ? [['State', worstState.text] as const] : []),
    ...(remedy ? [['Do', sentenceOf(finding, remedy, units)] as const] : []),
    ...(waived ? [['Waiver', waiverText(waived)] as const] : []),
    ...assumptions.map((text) => ['Assumes', text] as const),
  ];
}

function cellsOf(report: Report, finding: Finding, details: typeof openDetails): string[] {
  const { measured, limit } = figuresOf(finding, report.units);
  const sentences = [
    `**${markdownText(finding.subject)}**: ${markdownText(resultText(finding, report.units))}`,
    ...details(report, finding).map(([label, text]) => `*${label}:* ${markdownText(text)}`),
  ];
  return [
    sentences.join('<br>'),
    markdownText(measured),
    markdownText(limit),
    markdownCode(finding.rule),
    markdownText(placeText(report, finding.path)),
  ];
}

function noteLines({ title, text, columns, rows }: Note, units: Report['units']): Paragraph {
  const table = tableOf(
    columns.map((heading) => left(markdownText(heading))),
    rows.map((row) => row.map((cell) => markdownText(renderPhrase(cell, units)))),
  );
  const said = text ? [markdownText(renderPhrase(text, units))] : [];
  return folded(title, [...said, ...(said.length > 0 && table.length > 0 ? [''] : []), ...table]);
}

/** Every caution of these topics once, whatever the verdict, and never folded away. */
function cautionParagraphs({ findings, notes }: Report, shownTopics: readonly Topic[]): Paragraph[] {
  const cautions = [...findings, ...notes]
    .filter(({ topic }) => shownTopics.includes(topic))
    .flatMap((item) => item.cautions);
  if (cautions.length === 0) return [];
  return [['### Caution'], distinct(cautions.map(markdownText)).map((text) => `- ${text}`)];
}

function assumptionLines(report: Report): Paragraph {
  const { assumptions, units } = report;
  if (assumptions.length === 0) return [];
  return folded(
    counted(assumptions.length, 'assumed value', 'assumed values'),
    assumptions.map(
      ({ text, path }) =>
        `- ${markdownText(renderPhrase(text, units))} (${markdownText(placeText(report, path))})`,
    ),
  );
}
