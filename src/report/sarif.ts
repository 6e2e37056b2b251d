import type { Log, ReportingDescriptor, Result } from 'sarif';
import type { Finding, Note, PlanPath, Verdict } from '../engine/finding.ts';
import { identitiesOf } from '../engine/identity.ts';
import type { Report } from '../engine/report.ts';
import type { RuleText } from '../engine/rule.ts';
import { figuresOf, sentenceOf } from './figures.ts';
import { renderPhrase } from './format-measure.ts';
import { escaped } from './json.ts';
import { resultText } from './said.ts';
import { sourceText } from './source-text.ts';
import { distinct } from './summary.ts';
import { waiverText } from './waiver-text.ts';

export interface SarifOptions {
  /** The tool's version. */
  readonly version: string;
  readonly exitCode: number;
  /** What the rules say of themselves; those that found something are listed. */
  readonly rules: readonly Pick<RuleText, 'id' | 'why' | 'formula'>[];
}

/** Writes a report as SARIF 2.1.0. Ends with a line break. */
export function renderSarif(report: Report, options: SarifOptions): string {
  return `${escaped(JSON.stringify(sarifLog(report, options), undefined, 2))}\n`;
}

function sarifLog(report: Report, { version, exitCode, rules }: SarifOptions): Log {
  const ids = distinct([...report.findings, ...report.notes].map(({ rule }) => rule));
  const descriptors = ids.map((id) =>
    descriptorOf(
      id,
      report,
      rules.find((each) => each.id === id),
    ),
  );
  const identities = identitiesOf(report.findings);
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'storystick', version, language: 'en', rules: descriptors } },
        invocations: [{ executionSuccessful: exitCode !== 3, exitCode }],
        artifacts: [{ location: { uri: uriOf(report.file) }, sourceLanguage: 'yaml' }],
        columnKind: 'utf16CodeUnits',
        results: [
          ...report.findings.map((finding, at) =>
            resultOf(report, finding, ids.indexOf(finding.rule), identities[at] ?? ''),
          ),
          ...report.notes.map((note) => noteResult(report, note, ids.indexOf(note.rule))),
        ],
      },
    ],
  };
}

/** A rule as a reader meets it. Its cautions are those of all its findings: limits bring cautions of their own. */
function descriptorOf(
  id: string,
  { findings, notes }: Report,
  said: SarifOptions['rules'][number] | undefined,
): ReportingDescriptor {
  const items = [...findings, ...notes].filter(({ rule }) => rule === id);
  const [first] = items;
  const title = first?.title ?? id;
  const sources = distinct(items.flatMap((item) => item.sources.map(sourceText)));
  const cautions = distinct(items.flatMap((item) => item.cautions));
  const paragraphs: readonly (readonly [label: string, texts: readonly string[]])[] = [
    ['', said ? [said.why] : []],
    ['Formula', said ? [said.formula] : []],
    ['Source', sources],
    ['Caution', cautions],
  ];
  return {
    id,
    shortDescription: { text: title },
    fullDescription: { text: said?.why ?? title },
    help: {
      text: paragraphs
        .flatMap(([label, texts]) => texts.map((text) => (label === '' ? text : `${label}: ${text}`)))
        .join('\n\n'),
    },
    properties: { tags: first ? [first.topic] : [], cautions },
  };
}

/** "Not checked" is what SARIF calls open: there was not enough information to decide. */
const kinds: Readonly<Record<Verdict, Pick<Result, 'kind' | 'level'>>> = {
  fail: { kind: 'fail', level: 'error' },
  warn: { kind: 'fail', level: 'warning' },
  'not checked': { kind: 'open', level: 'none' },
  pass: { kind: 'pass', level: 'none' },
};

function resultOf(report: Report, finding: Finding, ruleIndex: number, identity: string): Result {
  const { units } = report;
  const { rule, verdict, topic, subject, remedy, worstState, waived, missing, assumptions } = finding;
  const cautions = distinct(finding.cautions);
  const sentences = [
    `${subject}: ${resultText(finding, units)}`,
    ...(remedy ? [`Do: ${sentenceOf(finding, remedy, units)}`] : []),
    ...(waived ? [`Waiver: ${waiverText(waived)}`] : []),
    ...cautions.map((caution) => `Caution: ${caution}`),
  ];
  return {
    ruleId: rule,
    ruleIndex,
    ...kinds[verdict],
    message: { text: messageText(sentences.join('\n\n')) },
    locations: [locationOf(report, finding.path)],
    ...suppressionsOf(report, finding),
    partialFingerprints: { 'storystick/v1': identity },
    properties: {
      verdict,
      topic,
      subject,
      ...filled(figuresOf(finding, units)),
      ...(finding.utilisation !== undefined &&
        Number.isFinite(finding.utilisation) && { utilisation: finding.utilisation }),
      ...(waived && { waived: { as: waived.as, reason: waived.reason, by: waived.by, until: waived.until } }),
      ...(worstState && { worstState: worstState.text }),
      ...(missing && { missing: [...missing] }),
      ...(assumptions && { assumptions: [...assumptions] }),
      sources: distinct(finding.sources.map(sourceText)),
      cautions,
    },
  };
}

/**
 * A waived finding is suppressed; one that is only acknowledged is not, or those who hide what is suppressed would hide
 * what may kill. Where one result of a run says so, all have to.
 */
function suppressionsOf(report: Report, { waived }: Finding): Pick<Result, 'suppressions'> {
  if (!report.findings.some((finding) => finding.waived?.as === 'waived')) return {};
  if (waived?.as !== 'waived') return { suppressions: [] };
  const { path } = waived;
  return {
    suppressions: [
      {
        kind: 'inSource',
        status: 'accepted',
        justification: waiverText(waived),
        location: locationOf(report, path),
      },
    ],
  };
}

const filled = (figures: ReturnType<typeof figuresOf>) =>
  Object.fromEntries(Object.entries(figures).filter(([, text]) => text !== ''));

/** A table of information: no verdict, and no place in the plan but the plan itself. */
function noteResult(report: Report, note: Note, ruleIndex: number): Result {
  const row = (cells: Note['rows'][number]) => cells.map((cell) => renderPhrase(cell, report.units));
  const cautions = distinct(note.cautions);
  const sentences = [
    `${note.title}.`,
    ...(note.text ? [renderPhrase(note.text, report.units)] : []),
    ...cautions.map((caution) => `Caution: ${caution}`),
  ];
  return {
    ruleId: note.rule,
    ruleIndex,
    kind: 'informational',
    level: 'none',
    message: { text: messageText(sentences.join('\n\n')) },
    locations: [{ physicalLocation: { artifactLocation: artifactOf(report) } }],
    ...(report.findings.some((finding) => finding.waived?.as === 'waived') && { suppressions: [] }),
    properties: { topic: note.topic, columns: [...note.columns], rows: note.rows.map(row), cautions },
  };
}

const artifactOf = ({ file }: Report) => ({ uri: uriOf(file), index: 0 });

function locationOf(report: Report, path: PlanPath): NonNullable<Result['locations']>[number] {
  const spot = report.spot(path);
  return {
    physicalLocation: {
      artifactLocation: artifactOf(report),
      ...(spot && { region: { startLine: spot.line, startColumn: spot.column } }),
    },
    logicalLocations: [{ fullyQualifiedName: path.join('.') }],
  };
}

/** In a message braces stand for arguments and brackets before a parenthesis for a link; a plan's names mean neither. */
const messageText = (text: string): string =>
  text.replace(/[{}]/g, (brace) => brace + brace).replace(/\[(?=[^[\]]*\]\()/g, '\\[');

/** A file as it was named, as a URI: relative as it is, or of the scheme `file`. */
export function uriOf(file: string): string {
  const path = file.replaceAll('\\', '/').replace(/\p{Cs}/gu, '\ufffd');
  const [drive = ''] = /^[A-Za-z]:(?=\/)/.exec(path) ?? [];
  const encoded = path.slice(drive.length).split('/').map(encodeURIComponent).join('/');
  if (drive !== '') return `file:///${drive}${encoded}`;
  return encoded.startsWith('/') ? `file://${encoded}` : encoded;
}
