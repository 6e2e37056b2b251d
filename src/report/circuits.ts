import type { Phrase } from '../engine/phrase.ts';
import type { Schedule, ScheduleRow, ScheduleTable } from '../engine/schedule.ts';
import { verdictColumn } from './finding-table.ts';
import { formatMeasure, renderPhrase } from './format-measure.ts';
import { type Pen, penOf } from './pen.ts';
import { distinct } from './summary.ts';
import {
  type Cell,
  type Column,
  columnWidths,
  fitted,
  fittedToWords,
  naturalWidth,
  renderTable,
} from './table.ts';
import { visible } from './visible.ts';
import { verdictText } from './waiver-text.ts';
import { fieldList, hanging, indented, outdented, underlined, wrapped } from './wrap.ts';

export interface CircuitsOptions {
  /** The terminal's columns; no line is longer. */
  readonly width: number;
  readonly colour: boolean;
}

/** The narrowest terminal that gets a table of circuits; below it each circuit is a block of its own, as it is where words are too long. */
const narrowestSchedule = 100;

/** Where a short table does not fit, its columns may shrink to this on average before it becomes a list. */
const narrowestColumn = 14;

/** A cell for what is not known: an empty one could be an oversight of the printer. */
const blank = '–';

const headings = {
  circuit: 'circuit',
  way: 'from → to',
  load: 'load',
  design: 'design current',
  conductor: 'conductor',
  length: 'length',
  fuse: 'fuse',
  drop: 'drop',
  ampacity: 'ampacity',
  verdict: 'verdict',
  notes: 'notes',
} as const;

type Key = keyof typeof headings;
const keys = [
  'circuit',
  'way',
  'load',
  'design',
  'conductor',
  'length',
  'fuse',
  'drop',
  'ampacity',
  'verdict',
  'notes',
] as const satisfies readonly Key[];

/** As a table of findings has it: "fail, waived". */
const standingOf = ({ verdict, waived }: ScheduleRow): string =>
  verdict ? verdictText({ verdict, waived }) : '';

type Row = Readonly<Record<Key, string>>;

const numbers: readonly Key[] = ['load', 'design', 'ampacity'];

/** Writes a schedule of circuits for a terminal. Ends with a line break. */
export function renderCircuits(schedule: Schedule, { width, colour }: CircuitsOptions): string {
  const pen = penOf(colour);
  const paragraphs = [
    headLines(schedule, pen, width),
    cautionLines(schedule, pen, width),
    ...circuitParagraphs(schedule, pen, width),
    ...schedule.tables.map((table) => tableLines(table, schedule, pen, width)),
    missingLines(schedule, width),
    assumedLines(schedule, pen, width),
  ].filter((lines) => lines.length > 0);
  return `${paragraphs.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const headLines = ({ name, file }: Schedule, pen: Pen, width: number): string[] => [
  ...wrapped(visible(`${name}: schedule of circuits`), width).map(pen.strong),
  ...wrapped(visible(file), width).map(pen.faint),
];

const cautionLines = ({ cautions }: Schedule, pen: Pen, width: number): string[] => [
  pen.caution('Caution'),
  ...distinct(cautions.map(visible)).flatMap((text) => hanging(`- ${text}`, 2, width)),
];

function heading(text: string, pen: Pen, width: number): string[] {
  const { title, rule } = underlined(text, '═', width);
  return [...title, rule].map(pen.strong);
}

function circuitParagraphs(schedule: Schedule, pen: Pen, width: number): string[][] {
  const { circuits, legend, units } = schedule;
  if (circuits.length === 0) return [];
  const written = circuits.map(({ notes }) => notes.map((note) => visible(renderPhrase(note, units))));
  const notes = distinct(written.flat());
  const rows = circuits.map((row, at) =>
    textsOf(
      row,
      units,
      (written[at] ?? []).map((note) => notes.indexOf(note) + 1).sort((a, b) => a - b),
    ),
  );
  const body = wide(rows, circuits, pen, width) ?? blocks(rows, circuits, pen, width);
  return [
    [...heading('Circuits of the battery', pen, width), ...body],
    noteLines(notes, width),
    wrapped(visible(renderPhrase(legend, units)), width).map(pen.faint),
  ];
}

/** What stands in each column; an empty text where it is not known. */
function textsOf(row: ScheduleRow, units: Schedule['units'], notes: readonly number[]): Row {
  const phrase = (given: Phrase | undefined) => (given ? visible(renderPhrase(given, units)) : '');
  const { designCurrent, drop, ampacity } = row;
  return {
    circuit: visible(row.name),
    way: visible(`${row.from} → ${row.to}`),
    load: phrase(row.load),
    design: designCurrent ? formatMeasure(designCurrent, units) : '',
    conductor: phrase(row.conductor),
    length: phrase(row.length),
    fuse: phrase(row.fuse),
    drop: drop ? `${formatMeasure(drop.voltage, units)} (${formatMeasure(drop.share, units)})` : '',
    ampacity: ampacity ? formatMeasure(ampacity, units) : '',
    verdict: standingOf(row),
    notes: notes.join(', '),
  };
}

/** A table, where the terminal is wide enough to tear no word in it. */
function wide(
  rows: readonly Row[],
  circuits: readonly ScheduleRow[],
  pen: Pen,
  width: number,
): string[] | undefined {
  if (width < narrowestSchedule) return undefined;
  const apart = keys.map((key) => ({ key, heading: headings[key], textOf: (row: Row) => row[key] }));
  // Where the two do not fit side by side, a circuit's way stands behind its name.
  const together = apart
    .filter(({ key }) => key !== 'way')
    .map((column) =>
      column.key === 'circuit'
        ? {
            ...column,
            heading: `${headings.circuit}: ${headings.way}`,
            textOf: (row: Row) => `${row.circuit}: ${row.way}`,
          }
        : column,
    );
  for (const chosen of [apart, together]) {
    const columns = chosen.map(
      ({ key, heading: text }): Column => ({
        heading: text,
        align: numbers.includes(key) ? 'right' : 'left',
      }),
    );
    const cells = rows.map((row, at) =>
      chosen.map(({ key, textOf }): Cell => {
        const verdict = circuits[at]?.verdict;
        const text = textOf(row) || blank;
        return key === 'verdict' && verdict ? { text, paint: pen.verdict[verdict] } : { text };
      }),
    );
    const widths = fittedToWords(columns, cells, width);
    if (widths) return renderTable(columns, cells, widths, pen.faint);
  }
  return undefined;
}

/** Verdict, name and way on the first line, the numbers below. */
function blocks(rows: readonly Row[], circuits: readonly ScheduleRow[], pen: Pen, width: number): string[] {
  return rows.flatMap((row, at) => {
    const verdict = circuits[at]?.verdict;
    const word = row.verdict || blank;
    const opening = `${word}  `.padEnd(verdictColumn);
    const lay = opening.length > verdictColumn ? outdented : hanging;
    const [first = '', ...rest] = lay(`${opening}${row.circuit}: ${row.way}`, verdictColumn, width);
    const fields = keys
      .filter((key) => key !== 'circuit' && key !== 'way' && key !== 'verdict')
      .map((key) => [headings[key], row[key] || blank] as const);
    return [
      verdict ? pen.verdict[verdict](verdict) + first.slice(verdict.length) : first,
      ...rest,
      ...indented(fieldList(fields, '; '), verdictColumn, width),
    ];
  });
}

function noteLines(notes: readonly string[], width: number): string[] {
  const indent = String(notes.length).length + 2;
  return notes.flatMap((note, at) => hanging(`${String(at + 1).padEnd(indent)}${note}`, indent, width));
}

function tableLines(table: ScheduleTable, { units }: Schedule, pen: Pen, width: number): string[] {
  const columns = table.columns.map((name): Column => ({ heading: visible(name), align: 'left' }));
  const rows = table.rows.map((row) =>
    columns.map((_, at): Cell => ({ text: visible(renderPhrase(row[at] ?? [], units)) || blank })),
  );
  const title = heading(table.title, pen, width);
  const widths = columnWidths(columns, rows);
  if (naturalWidth(widths) <= width || width / columns.length >= narrowestColumn)
    return [...title, ...renderTable(columns, rows, fitted(widths, width), pen.faint)];
  return [
    ...title,
    ...rows.flatMap(([first, ...others]) => [
      ...wrapped(`${columns[0]?.heading ?? ''} ${first?.text ?? ''}`, width),
      ...indented(
        fieldList(
          others.map(({ text }, at) => [columns[at + 1]?.heading ?? '', text]),
          '; ',
        ),
        2,
        width,
      ),
    ]),
  ];
}

function missingLines({ missing }: Schedule, width: number): string[] {
  if (missing.length === 0) return [];
  return [
    ...wrapped('Not in the plan yet; the keys to add:', width),
    ...missing.flatMap(({ path, keys: absent }) =>
      hanging(visible(`- ${path.join('.')}: ${absent.join(', ')}`), 2, width),
    ),
  ];
}

function assumedLines({ assumed, file }: Schedule, pen: Pen, width: number): string[] {
  if (assumed === 0) return [];
  const [values, them] = assumed === 1 ? ['1 value is', 'it'] : [`${assumed} values are`, 'them'];
  return wrapped(
    visible(`${values} assumed: run \`storystick check ${file} --assumptions\` to see ${them}`),
    width,
  ).map(pen.faint);
}
