import type { Finding } from '../engine/finding.ts';
import type { Measure } from '../engine/measure.ts';
import type { Phrase } from '../engine/phrase.ts';
import { formatMeasure, formatNonZero, formatPair, renderPhrase, type Units } from './format-measure.ts';

/** The numbers of a finding as they are printed; empty where the finding has none. */
export interface Figures {
  /** With its tolerance, if it has one: "1,980 ± 24 kg". */
  readonly measured: string;
  /** "at most 2,240 kg" */
  readonly limit: string;
  readonly margin: string;
}

export function figuresOf(finding: Finding, units: Units): Figures {
  const { measured, limit, margin, tolerance } = finding;
  const pair =
    measured && limit
      ? formatPair(measured, limit.measure, units)
      : {
          measured: measured ? formatMeasure(measured, units) : '',
          limit: limit ? formatMeasure(limit.measure, units) : '',
        };
  return {
    measured: tolerance ? withTolerance(pair.measured, tolerance, units) : pair.measured,
    limit: limit ? `${limit.sense} ${pair.limit}` : '',
    margin: margin ? formatNonZero(margin, units) : '',
  };
}

/** Writes a sentence of a finding, its numbers with as many digits as the finding's own figures have. */
export function sentenceOf({ measured, limit }: Finding, phrase: Phrase, units: Units): string {
  const figures = [measured, limit?.measure].filter((figure) => figure !== undefined);
  return renderPhrase(phrase, units, figures);
}

/** Joins a value and its tolerance, naming the unit once: "1,980 ± 24 kg", but "6 ft 2.0 in ± 0.4 in". */
function withTolerance(measured: string, tolerance: Measure, units: Units): string {
  const band = formatMeasure(tolerance, units);
  // A band too narrow to show would read "± 0.0 kg", which claims more than anyone knows.
  if (measured === '' || !/[1-9]/.test(band)) return measured;
  const [value = '', unit, ...more] = measured.split(' ');
  const sameUnit = unit !== undefined && more.length === 0 && band.endsWith(` ${unit}`);
  return sameUnit ? `${value} ± ${band}` : `${measured} ± ${band}`;
}
