import type { Citation, Provenance } from '../catalogue/citation.ts';
import type { Finding } from '../engine/finding.ts';
import { share } from '../engine/measure.ts';
import type { Report } from '../engine/report.ts';
import { sentenceOf } from './figures.ts';
import { formatMeasure } from './format-measure.ts';
import { missingText } from './missing-text.ts';
import type { Pen } from './pen.ts';
import { placeText } from './place.ts';
import { sourceText } from './source-text.ts';
import { visible } from './visible.ts';
import { verdictText, waiverText } from './waiver-text.ts';
import { hanging } from './wrap.ts';

/** As wide as "fail" and the gap after it. */
const indent = 6;
const labelWidth = 'assumes: '.length;

/** Says when a limit may or may not be broken; near certainty either way is not worth a line. */
function chanceText(probability: number | undefined): string[] {
  if (probability === undefined || !(probability > 0.001 && probability < 0.999)) return [];
  if (probability > 0.99) return ['more than 99 % that the limit is broken'];
  return [`${formatMeasure(share(probability), 'metric')} that the limit is broken`];
}

/** All sources with `detail`; otherwise the first, which is the limit's, and those that no one has looked up. */
const shownSources = ({ sources }: Finding, detail: boolean): readonly Citation[] =>
  detail ? sources : sources.filter(({ provenance }, at) => at === 0 || !lookedUp.includes(provenance));

const lookedUp: readonly Provenance[] = ['read', 'computed'];

/** What a finding says in words: the reason, and under it what to know and what to do about it. */
export function findingBlock(
  report: Report,
  finding: Finding,
  pen: Pen,
  { width, detail }: { readonly width: number; readonly detail: boolean },
): string[] {
  const { verdict, subject, reason, remedy, assumptions = [], worstState, waived } = finding;
  const labelled = (label: string, texts: readonly string[]): string[] =>
    texts.flatMap((text, at) => {
      const shown = at === 0 ? `${label}:` : '';
      const [first = '', ...rest] = hanging(
        ' '.repeat(indent) + shown.padEnd(labelWidth) + visible(text),
        indent + labelWidth,
        width,
      );
      return [first.replace(shown, pen.faint(shown)), ...rest];
    });
  // Of a check that could not even begin, the keys to add are all there is to say.
  const bare = verdict === 'not checked' && finding.measured === undefined && !detail;
  const lacking = `${missingText(finding)} (${finding.rule})`;
  const sentence = visible(sentenceOf(finding, reason, report.units) + (bare ? lacking : ''));
  const opening = `${verdictText(finding)}  ${visible(subject)}: ${sentence}`;
  const [first = '', ...rest] = hanging(opening, indent, width);
  return [
    pen.verdict[verdict](verdict) + first.slice(verdict.length),
    ...rest,
    ...labelled('state', worstState ? [worstState.text] : []),
    ...labelled('do', remedy && !bare ? [sentenceOf(finding, remedy, report.units)] : []),
    ...labelled('waiver', waived ? [waiverText(waived)] : []),
    ...labelled('assumes', assumptions),
    ...labelled('chance', chanceText(finding.probability)),
    ...labelled('source', bare ? [] : shownSources(finding, detail).map(sourceText)),
    ...labelled('where', bare ? [] : [`${placeText(report, finding.path)}, check ${finding.rule}`]),
  ];
}
