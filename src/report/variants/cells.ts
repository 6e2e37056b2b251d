import type { VariantRow } from '../../engine/compare/variants.ts';
import type { Finding } from '../../engine/finding.ts';
import { formatRow, looksAlike, type Units } from '../format-measure.ts';
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

/** As many digits as usual, or enough that values with different verdicts do not look the same; in one unit. */
function measuredTexts(findings: VariantRow['findings'], units: Units): readonly string[] {
  const { usual, apart } = formatRow(
    findings.flatMap((finding) => finding?.measured ?? []),
    units,
  );
  const plain = inTheirPlaces(findings, usual);
  const areClear = findings.every((one, at) =>
    findings.every((other, index) => one?.verdict === other?.verdict || plain[at] !== plain[index]),
  );
  return areClear ? plain : inTheirPlaces(findings, apart);
}

/** The texts of the values that were measured, and none where there is no value. */
function inTheirPlaces(findings: VariantRow['findings'], texts: readonly string[]): readonly string[] {
  const left = texts.values();
  return findings.map((finding) => (finding?.measured ? (left.next().value ?? '') : ''));
}

/** Whether a reader who sees the usual digits sees no difference between the variants. */
export function looksTheSame({ findings }: VariantRow, units: Units): boolean {
  const [first] = findings;
  return findings.every(
    (finding) =>
      finding && first && verdictText(finding) === verdictText(first) && isAlike(finding, first, units),
  );
}

const isAlike = ({ measured: one }: Finding, { measured: other }: Finding, units: Units): boolean =>
  one && other ? looksAlike(one, other, units) : one === other;
