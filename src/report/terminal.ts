import { type Finding, type Topic, topics, verdicts } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { closestText } from './closest-text.ts';
import { findingBlock } from './finding-block.ts';
import { findingTables } from './finding-table.ts';
import { couldNotBegin, notCheckedLines } from './not-checked.ts';
import { noteLines } from './note-table.ts';
import { type Pen, penOf } from './pen.ts';
import { quietLines } from './quiet.ts';
import { closestToLimit, countsText, distinct } from './summary.ts';
import { visible } from './visible.ts';
import { hanging, underlined, wrapped } from './wrap.ts';

export interface TerminalOptions {
  /** The terminal's columns; no line is longer. */
  readonly width: number;
  readonly colour: boolean;
  /** Explains passes too, and shows the tables that are for those who want to know more. */
  readonly detail: boolean;
  /** One line for each finding that is not a pass, the cautions and the counts. */
  readonly quiet: boolean;
  /** Shows these topics only, and says what it leaves out. */
  readonly only?: readonly Topic[];
}

/** Lines that stay together; an empty line divides them from the next. */
type Paragraph = readonly string[];

/** Writes a report for a terminal. Ends with a line break. */
export function renderTerminal(report: Report, options: TerminalOptions): string {
  const pen = penOf(options.colour);
  const shownTopics = topics.filter((topic) => options.only?.includes(topic) ?? true);
  const shown = report.findings.filter(({ topic }) => shownTopics.includes(topic));
  const paragraphs: Paragraph[] = options.quiet
    ? quietParagraphs(report, shown, pen, options.width)
    : [headLines(report, pen, options.width), ...topicParagraphs(report, shownTopics, pen, options)];
  paragraphs.push(
    cautionLines(report, shownTopics, pen, options.width),
    closingLines(report, shown, pen, options),
  );
  const filled = paragraphs.filter((lines) => lines.length > 0);
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function headLines({ name, file, codes, units }: Report, pen: Pen, width: number): Paragraph {
  return [
    ...wrapped(visible(name), width).map(pen.strong),
    ...wrapped(visible(`${file}, codes: ${codes}, units: ${units}`), width).map(pen.faint),
  ];
}

function topicParagraphs(
  report: Report,
  shownTopics: readonly Topic[],
  pen: Pen,
  { width, detail }: TerminalOptions,
): Paragraph[] {
  // With --detail a check that could not begin has a line and a block like any other.
  const isListed = (finding: Finding): boolean => !detail && couldNotBegin(finding);
  const inTopic = (topic: Topic) => report.findings.filter((finding) => finding.topic === topic);
  const groups = shownTopics.map((topic) =>
    worstFirst(inTopic(topic).filter((finding) => !isListed(finding))),
  );
  const tables = findingTables(report, groups, pen, width);
  return shownTopics.flatMap((topic, at) => {
    const findings = groups[at] ?? [];
    const notes = report.notes.filter((note) => note.topic === topic && (detail || !note.detailOnly));
    const body = [
      ...findings
        .filter(({ verdict }) => detail || verdict !== 'pass')
        .map((finding) => findingBlock(report, finding, pen, { width, detail })),
      notCheckedLines(inTopic(topic).filter(isListed), pen, width),
      ...notes.map((note) => noteLines(note, report, pen, { width, detail })),
    ].filter((lines) => lines.length > 0);
    const { title, rule } = underlined(topicHeading(topic), '═', width);
    const opening = [...[...title, rule].map(pen.strong), ...(tables[at] ?? [])];
    return findings.length + body.length === 0 ? [] : [opening, ...body];
  });
}

const topicHeading = (topic: Topic): string => topic.charAt(0).toUpperCase() + topic.slice(1);

const worstFirst = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => verdicts.indexOf(a.verdict) - verdicts.indexOf(b.verdict));

/**
 * Every caution of these topics once, whatever the verdict and also where the note that carries it is not shown: a
 * caution is about the subject, not about the line it was found in.
 */
function cautionLines(report: Report, shownTopics: readonly Topic[], pen: Pen, width: number): Paragraph {
  const cautions = [...report.findings, ...report.notes]
    .filter(({ topic }) => shownTopics.includes(topic))
    .flatMap((item) => item.cautions);
  if (cautions.length === 0) return [];
  return [
    pen.caution('Caution'),
    ...distinct(cautions.map(visible)).flatMap((text) => hanging(`- ${text}`, 2, width)),
  ];
}

function quietParagraphs(report: Report, shown: readonly Finding[], pen: Pen, width: number): Paragraph[] {
  const open = worstFirst(shown.filter(({ verdict }) => verdict !== 'pass'));
  return [open.flatMap((finding) => quietLines(report, finding, pen, width))];
}

function closingLines(
  report: Report,
  shown: readonly Finding[],
  pen: Pen,
  { width, quiet }: TerminalOptions,
): Paragraph {
  const lines = wrapped(shown.length === 0 ? 'Nothing was checked.' : countsText(shown), width).map(
    pen.strong,
  );
  const hidden = report.findings.filter((finding) => !shown.includes(finding));
  if (hidden.length > 0) lines.push(...wrapped(`in topics not shown: ${countsText(hidden)}`, width));
  if (quiet) return lines;
  const closest = closestToLimit(shown);
  if (closest) {
    lines.push(...hanging(visible(closestText(closest, report.units)), 2, width));
  }
  const assumed = report.assumptions.length;
  if (assumed > 0) {
    const values = assumed === 1 ? '1 value is' : `${assumed} values are`;
    const them = assumed === 1 ? 'it' : 'them';
    lines.push(...wrapped(`${values} assumed: run with --assumptions to see ${them}`, width).map(pen.faint));
  }
  return lines;
}
