import type { Measure } from '../../engine/measure.ts';
import { formatNonZero, type Units } from '../format-measure.ts';

/** A difference of two measures with its sign: "+14 kg", "-0.4 points". */
export function changeText(change: Measure, units: Units): string {
  const text = differenceText(change, units);
  return change.value > 0 ? `+${text}` : text;
}

function differenceText(change: Measure, units: Units): string {
  // A difference of temperatures has no place on a scale that begins elsewhere than at nothing.
  if (change.kind === 'temperature') {
    return units === 'metric'
      ? `${withoutMinusZero(change.value)} °C`
      : `${withoutMinusZero((change.value * 9) / 5)} °F`;
  }
  const text = formatNonZero(change, units);
  // "+5 %" could be taken for a twentieth of the value before.
  return change.kind === 'share' ? text.replace(/ %$/, ' points') : text;
}

const withoutMinusZero = (value: number): string => value.toFixed(1).replace(/^-(?=0\.0$)/, '');
