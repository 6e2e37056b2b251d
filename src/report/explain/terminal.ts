import type { ExplainedLimit, Explanation } from '../../engine/explanation.ts';
import { type Finding, type Step, topics } from '../../engine/finding.ts';
import { figuresOf } from '../figures.ts';
import { findingBlock } from '../finding-block.ts';
import { formatMeasure, formatNonZero, renderPhrase, type Units } from '../format-measure.ts';
import { type Pen, penOf } from '../pen.ts';
import { sourceText } from '../source-text.ts';
import { distinct } from '../summary.ts';
import { type Column, fittedToWords, renderTable } from '../table.ts';
import { visible } from '../visible.ts';
import { fieldList, hanging, indented, outdented, underlined, wrapped } from '../wrap.ts';
import type { Explained, ExplainedFinding } from './explained.ts';
import { limitText, settableText, waiverWords, withoutRow } from './words.ts';

export interface Looks {
  readonly width: number;
  readonly colour: boolean;
}

type Paragraph = readonly string[];
type InPlan = NonNullable<Explained['inPlan']>;

const joined = (paragraphs: readonly Paragraph[]): string =>
  `${paragraphs
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;

/** Every check in a line, by topic. Ends with a line break. */
export function renderCheckList(checks: readonly Explanation[], { width, colour }: Looks): string {
  const pen = penOf(colour);
  const idWidth = Math.max(...checks.map(({ id }) => id.length)) + 2;
  return joined([
    ...topics.map((topic) => {
      const those = checks.filter((check) => check.topic === topic);
      if (those.length === 0) return [];
      return [
        ...heading(topic, pen, width),
        ...those.flatMap(({ id, title }) =>
          idWidth > width / 2
            ? outdented(`${id}: ${title}`, 2, width)
            : hanging(id.padEnd(idWidth) + title, idWidth, width),
        ),
      ];
    }),
    wrapped(
      '`storystick explain CHECK` says what one is about; with a plan after it, how it comes out there.',
      width,
    ),
  ]);
}

/** One check: what it is, and with a plan how its numbers came about. Ends with a line break. */
export function renderExplained({ checks, inPlan }: Explained, { width, colour }: Looks): string {
  const pen = penOf(colour);
  const units = inPlan?.report.units ?? 'metric';
  const found = inPlan?.findings.map(({ finding }) => finding) ?? [];
  const cautions = [...checks, ...found].flatMap((each) => each.cautions);
  return joined([
    ...checks.map((check) => checkLines(check, units, pen, width)),
    ...(inPlan ? planParagraphs(inPlan, checks, pen, width) : []),
    [
      pen.caution('Caution'),
      ...distinct(cautions.map(visible)).flatMap((text) => hanging(`- ${text}`, 2, width)),
    ],
  ]);
}

function heading(text: string, pen: Pen, width: number): string[] {
  const { title, rule } = underlined(text, '═', width);
  return [...title.map(pen.strong), pen.faint(rule)];
}

const labelWidth = 'formula: '.length;

function labelled(label: string, texts: readonly string[], pen: Pen, width: number): string[] {
  return texts.flatMap((text, at) => {
    const shown = at === 0 && label !== '' ? `${label}:` : '';
    const [first = '', ...rest] = hanging(shown.padEnd(labelWidth) + visible(text), labelWidth, width);
    return [first.replace(shown, pen.faint(shown)), ...rest];
  });
}

function checkLines(check: Explanation, units: Units, pen: Pen, width: number): Paragraph {
  const { id, title, why, formula, fix, limits, informationOnly, waivable, sources } = check;
  const settable = settableText(check);
  return [
    ...heading(`${id}: ${title}`, pen, width),
    ...labelled('why', [why], pen, width),
    ...labelled('formula', [formula], pen, width),
    ...labelled(
      'limit',
      informationOnly ? ['none: it gives a table, and no verdict'] : limitTexts(limits, units),
      pen,
      width,
    ),
    ...labelled('', settable === undefined ? [] : [settable], pen, width),
    ...labelled('fix', fix === undefined ? [] : [fix], pen, width),
    ...labelled('waiver', [waiverWords[waivable]], pen, width),
    ...labelled(
      'source',
      distinct([...sources, ...limits.flatMap((limit) => limit.sources)].map(sourceText)),
      pen,
      width,
    ),
    ...labelled('note', distinct(limits.flatMap(({ caution }) => caution ?? [])), pen, width),
  ];
}

const limitTexts = (limits: readonly ExplainedLimit[], units: Units): readonly string[] =>
  limits.length === 0 ? [withoutRow] : limits.map((limit) => limitText(limit, units));

function planParagraphs(
  inPlan: InPlan,
  checks: readonly Explanation[],
  pen: Pen,
  width: number,
): Paragraph[] {
  const { report, findings } = inPlan;
  const notes = report.notes.filter(({ rule }) => checks.some(({ id }) => id === rule));
  const title = heading(visible(`In ${report.file}: ${report.name}`), pen, width);
  if (findings.length === 0)
    return [
      [
        ...title,
        ...wrapped(
          notes.length > 0
            ? 'It gives no verdict, only a table: `storystick check --detail` shows it.'
            : 'It finds nothing to say of this plan.',
          width,
        ),
      ],
    ];
  return [title, ...findings.flatMap((each) => findingParagraphs(inPlan, each, pen, width))];
}

function findingParagraphs(
  inPlan: InPlan,
  explained: ExplainedFinding,
  pen: Pen,
  width: number,
): Paragraph[] {
  const { report } = inPlan;
  const { finding, typed } = explained;
  const { working = [] } = finding;
  return [
    findingBlock(report, finding, pen, { width, detail: true }),
    typed.length === 0
      ? []
      : [
          'The plan says',
          ...typed.flatMap(({ of, values }) => indented(visible(saidText(inPlan, of, values)), 2, width)),
        ],
    ...working.map((step, at) => stepLines(inPlan, step, at + 1, pen, width)),
    verdictLines(finding, report.units, working.length > 0, width),
  ];
}

/** "electrical.circuits.fridge (line 266): load 48 W, conductor 4 mm2" */
function saidText(
  { report, isWritten }: InPlan,
  of: Finding['path'],
  values: ExplainedFinding['typed'][number]['values'],
): string {
  const lineOf = (path: Finding['path']) => (isWritten(path) ? report.spot(path)?.line : undefined);
  const lines = new Set(values.map(({ path }) => lineOf(path)));
  const told = (line: number | undefined) => (line === undefined ? '' : ` (line ${line})`);
  const [only] = lines;
  const here = lines.size === 1 ? told(only) : '';
  const [single] = values;
  if (single && single.path.length === of.length) return `${of.join('.')}${here}: ${single.text}`;
  const said = values.map(({ path, text }) => {
    const key = path.slice(of.length).join('.');
    return `${key} ${text}${lines.size === 1 ? '' : told(lineOf(path))}`;
  });
  return `${of.join('.')}${here}: ${said.join(', ')}`;
}

function stepLines(inPlan: InPlan, step: Step, number: number, pen: Pen, width: number): Paragraph {
  const { units } = inPlan.report;
  const { what, sum, result, paths = [], parts } = step;
  const written = paths.filter(inPlan.isWritten).flatMap((path) => inPlan.report.spot(path)?.line ?? []);
  const lines = [...new Set(written)].sort((a, b) => a - b);
  const where = lines.length === 0 ? '' : ` (${lines.length === 1 ? 'line' : 'lines'} ${lines.join(', ')})`;
  return [
    ...hanging(visible(`${`${number}.`.padEnd(4)}${what}${where}`), 4, width),
    ...(sum ? indented(visible(renderPhrase(sum, units)), 4, width) : []),
    ...(parts ? partLines(inPlan, parts, pen, width) : []),
    ...(result ? indented(`= ${formatMeasure(result, units)}`, 4, width) : []),
  ];
}

function partLines(
  inPlan: InPlan,
  { columns, rows }: NonNullable<Step['parts']>,
  pen: Pen,
  width: number,
): readonly string[] {
  const { units } = inPlan.report;
  const { isWritten, report } = inPlan;
  const texts = rows.map(({ name, values, adds, origin, path }) => [
    visible(name),
    ...[...values, adds].map((measure) => formatMeasure(measure, units)),
    origin,
    isWritten(path) ? `${report.spot(path)?.line ?? ''}` : '',
  ]);
  const heads: readonly Column[] = [
    { heading: 'what', align: 'left' },
    ...columns.map((each): Column => ({ heading: each, align: 'right' })),
    { heading: 'from', align: 'left' },
    { heading: 'line', align: 'right' },
  ];
  const cells = texts.map((row) => row.map((text) => ({ text })));
  const widths = fittedToWords(heads, cells, width);
  if (widths) return renderTable(heads, cells, widths, pen.faint);
  return texts.flatMap(([name = '', ...rest]) => [
    ...outdented(name, 2, width),
    ...indented(fieldList(rest.map((text, at) => [heads[at + 1]?.heading ?? '', text] as const)), 2, width),
  ]);
}

/** How the number stands to its limit, and in which state of the tanks, stores and seats. */
function verdictLines(finding: Finding, units: Units, isWorked: boolean, width: number): Paragraph {
  const { measured, limit, margin } = figuresOf(finding, units);
  const { utilisation, worstState, tolerance, missing = [] } = finding;
  const used =
    utilisation === undefined || !Number.isFinite(utilisation)
      ? ''
      : formatMeasure({ kind: 'share', value: utilisation }, units);
  const fields = fieldList([
    ['measured', measured],
    ['limit', limit],
    ['margin', margin],
    ['used', used],
    ['verdict', finding.verdict],
  ]);
  return [
    ...wrapped(fields, width),
    ...(tolerance
      ? wrapped(
          `± ${formatNonZero(tolerance, units)}: two standard uncertainties of what the plan gives with ±, and of places that it leaves open.`,
          width,
        )
      : []),
    ...(worstState && worstState.fills.length > 0
      ? wrapped(
          `In this state: ${worstState.fills.map(({ name, massKg }) => `${visible(name)} ${formatMeasure({ kind: 'mass', value: massKg }, units)}`).join(', ')}.`,
          width,
        )
      : []),
    ...(isWorked || finding.measured !== undefined || missing.length > 0
      ? []
      : wrapped('Nothing is worked out here: the check looks at what the plan says.', width)),
  ];
}
