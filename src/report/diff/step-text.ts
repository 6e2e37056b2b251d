import type { Measure } from '../../engine/measure.ts';
import { formatMeasure, formatStep, type StepText, type Units } from '../format-measure.ts';

/** A number as it was printed. */
interface Printed {
  readonly value: number;
  readonly decimals: number;
  readonly unit: string;
}

/**
 * Writes a value that went from one to another, and by how much, so that a reader who takes one from the other gets the
 * change that is printed. Each rounded by itself, 2532.3 mm, 2559.7 mm and the 27.4 mm between them would read
 * "2532 mm → 2560 mm, +27 mm": then all three get one decimal more, and the change is that between the two printed values.
 */
export function stepText(from: Measure, to: Measure, change: Measure, units: Units): StepText {
  const usual = formatStep(from, to, change, units);
  const [first, second, by] = [printed(usual.from), printed(usual.to), printed(usual.change)];
  // Feet and inches are no numbers that anybody takes from each other in his head.
  if (!first || !second || !by || addsUp(first, second, by)) return usual;
  const finest = Math.max(first.decimals, second.decimals, by.decimals);
  for (const digits of [finest, finest + 1]) {
    const texts = [from, to].map((measure) => formatMeasure(measure, units, digits));
    const [before, after] = texts.map(printed);
    if (!before || !after || before.unit !== first.unit || after.unit !== first.unit) break;
    const difference = differenceOf(before, after);
    const isNear = difference.value.toFixed(by.decimals) === by.value.toFixed(by.decimals);
    if (isNear || digits > finest) {
      return { from: texts[0] ?? '', to: texts[1] ?? '', change: written(difference) };
    }
  }
  return { ...usual, change: written(differenceOf(first, second)) };
}

/** Whether the change is what a reader gets from the two printed values, in the digits that both have. */
function addsUp(first: Printed, second: Printed, by: Printed): boolean {
  const difference = differenceOf(first, second);
  const digits = Math.min(difference.decimals, by.decimals);
  return difference.value.toFixed(digits) === by.value.toFixed(digits);
}

function differenceOf(first: Printed, second: Printed): Printed {
  const decimals = Math.max(first.decimals, second.decimals);
  // Through text, since 0.3 - 0.1 is not 0.2 to a machine.
  return { value: Number((second.value - first.value).toFixed(decimals)), decimals, unit: first.unit };
}

function printed(text: string): Printed | undefined {
  const [, number, decimals = '', unit = ''] = /^(-?[\d,]+(?:\.(\d+))?)((?: [^\d\s]\S*)*)$/.exec(text) ?? [];
  if (number === undefined) return undefined;
  return { value: Number(number.replaceAll(',', '')), decimals: decimals.length, unit };
}

const commaFrom = /\B(?=(?:\d{3})+(?!\d))/g;

function written({ value, decimals, unit }: Printed): string {
  const [whole = '', ...rest] = value.toFixed(decimals).split('.');
  return `${[whole.replace(commaFrom, ','), ...rest].join('.')}${unit}`;
}
