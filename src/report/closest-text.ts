import { share } from '../engine/measure.ts';
import type { Report } from '../engine/report.ts';
import { figuresOf } from './figures.ts';
import { formatNonZero, formatPair } from './format-measure.ts';
import type { Utilised } from './summary.ts';

/**
 * "closest to its limit: rear axle, 96 % of 2,240 kg, 85 kg left"; with a lower limit "front axle, 43 %, at least
 * 40 %, 3.0 % to spare". A limit that is itself a share is no measure to take a share of: "mild night, 100 %, at most
 * 80 %, 20 % over".
 */
export function closestText(finding: Utilised, units: Report['units']): string {
  const { rule, subject, limit, margin, utilisation } = finding;
  const figures = figuresOf(finding, units);
  const upper = limit?.sense !== 'at least';
  const isTakenOf = upper && limit?.measure.kind !== 'share' && Number.isFinite(utilisation);
  const used = isTakenOf ? formatPair(share(utilisation), share(1), units).measured : '';
  const opening = utilisation > 1 ? 'furthest past its limit' : 'closest to its limit';
  const parts = [
    `${opening}: ${subject}`,
    isTakenOf ? `${used} of ${figures.limit.replace(/^at most /, '') || 'its limit'}` : figures.measured,
    isTakenOf ? '' : figures.limit,
  ];
  if (margin) {
    const distance = formatNonZero({ ...margin, value: Math.abs(margin.value) }, units);
    const words = upper ? (['left', 'over'] as const) : (['to spare', 'short'] as const);
    parts.push(`${distance} ${words[margin.value < 0 ? 1 : 0]}`);
  }
  return `${parts.filter((part) => part !== '').join(', ')} (${rule})`;
}
