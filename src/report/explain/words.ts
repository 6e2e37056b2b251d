import type { ExplainedLimit, Explanation } from '../../engine/explanation.ts';
import { formatMeasure, type Units } from '../format-measure.ts';

/** "at least 972 mm clear above the seat or mattress, to sit up straight (published guide)" */
export function limitText({ value, sense, of, force, codes }: ExplainedLimit, units: Units): string {
  const number = formatMeasure(value, units);
  const what =
    value.kind === 'share'
      ? `${number} of ${of.replace(/^of /, '')}`
      : value.kind === 'factor'
        ? `${number}: ${of}`
        : `${number} ${of.replace(/^kg /, '')}`;
  const where = codes.length === 0 ? '' : `, ${codes.join(' and ')}`;
  return `${sense} ${what} (${force}${where})`;
}

/** Where the limit comes from if no row of the tables is behind it. */
export const withoutRow =
  'No row of the tables of limits: it comes from the plan (its plate, or what a maker says), or from the formula and the sources.';

export const waiverWords: Readonly<Record<Explanation['waivable'], string>> = {
  waivable:
    'A failure or warning can be waived in the plan for a while, with a reason; it stays in every report.',
  'acknowledged only':
    'It is about life and limb: a waiver in the plan acknowledges a failure, which still fails.',
  'not at all': 'It cannot be waived.',
};

export const settableText = ({ id, settable }: Explanation): string | undefined =>
  settable === undefined
    ? undefined
    : `The plan may set a limit of its own, with a reason: \`rules: {${id}: {limit: …, reason: …}}\`.`;
