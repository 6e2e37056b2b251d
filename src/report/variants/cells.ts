import type { VariantRow } from '../../engine/compare/variants.ts';
import type { Finding } from '../../engine/finding.ts';
import { formatMeasure, formatTogether, type Units } from '../format-measure.ts';
import { verdictText } from '../waiver-text.ts';

/** What a row says of each variant: "3,213 kg best", "3,551 kg fail", "not checked"; "-" where there is no such finding. */
export function cellsOf({ findings, best }: VariantRow, units: Units): readonly string[] {
  const texts = measuredTexts(findings, units);
  const plain = findings.map((finding, at) => {
    if (!finding) return '-';
    const value = texts[at] ?? '';
    if (value === '') return verdictText(finding);
    return finding.verdict === 'pass' ? value : `${value} ${verdictText(finding)}`;
  });
  // What looks like the best to a reader is as good as the best.
  const bestTexts = new Set(best.map((at) => plain[at] ?? ''));
  if (plain.every((text) => text === '-' || bestTexts.has(text))) return plain;
  return plain.map((text) => (bestTexts.has(text) ? `${text} best` : text));
}

/** As many digits as usual, or enough that values with different verdicts do not look the same. */
function measuredTexts(findings: VariantRow['findings'], units: Units): readonly string[] {
  const usual = findings.map((finding) => (finding?.measured ? formatMeasure(finding.measured, units) : ''));
  const areClear = findings.every((one, at) =>
    findings.every((other, index) => one?.verdict === other?.verdict || usual[at] !== usual[index]),
  );
  if (areClear) return usual;
  const texts = formatTogether(
    findings.flatMap((finding) => finding?.measured ?? []),
    units,
  ).values();
  return findings.map((finding) => (finding?.measured ? (texts.next().value ?? '') : ''));
}

/** Whether a reader who sees the usual digits sees no difference between the variants. */
export function looksTheSame({ findings }: VariantRow, units: Units): boolean {
  const looks = (finding: Finding): string =>
    `${verdictText(finding)} ${finding.measured ? formatMeasure(finding.measured, units) : ''}`;
  const [first] = findings;
  return findings.every((finding) => finding && first && looks(finding) === looks(first));
}
