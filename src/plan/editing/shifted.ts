import { type Measured, readMeasured, withoutCalculator } from '../quantity.ts';

/** A distance as it was typed, such as `40cm`, and in metres. */
export interface Distance {
  readonly written: string;
  readonly lengthM: number;
}

/**
 * A place's text with a distance added to it (`sign` 1) or taken off (-1): `1.20 m` and 40 cm make `1.60 m`, in the unit
 * that the plan uses and with its tolerance. An expression has the distance appended.
 */
export function shifted(text: string, sign: 1 | -1, by: Distance): string {
  const [, space = '', nominal = '', rest = ''] = /^(\s*)(.*?)(\s*(?:±|\+\/-|\+-).*)?$/s.exec(text) ?? [];
  const literal = /^([+\-−]?(?:\d+(?:\.\d*)?|\.\d+))(\s*)(\p{L}+)?$/u.exec(nominal);
  if (literal) {
    const [, number = '', gap = '', unit] = literal;
    // "38 ± 2 mm": the unit stands once, at the end.
    const symbol = unit ?? /\p{L}+\s*$/u.exec(rest)?.[0].trim() ?? '';
    const metres = metresIn(symbol);
    if (metres !== undefined) {
      const value = Number(number.replace('−', '-')) + (sign * by.lengthM) / metres;
      return `${space}${decimal(value, decimalsOf(number))}${unit === undefined ? '' : gap + unit}${rest}`;
    }
  }
  return `${space}${nominal} ${sign > 0 ? '+' : '-'} ${spaced(by.written)}${rest}`;
}

function metresIn(unit: string): number | undefined {
  const read = readMeasured(
    `1 ${unit}`,
    withoutCalculator(() => false),
  );
  return read.ok && isLength(read.value) ? read.value.value : undefined;
}

const isLength = ({ dimension }: Measured): boolean =>
  dimension.m === 1 && dimension.kg === 0 && dimension.s === 0 && dimension.a === 0 && dimension.k === 0;

const decimalsOf = (number: string): number => number.split('.')[1]?.length ?? 0;

/** A millionth of the unit is less than any tape shows; at least as many decimals as the plan had. */
function decimal(value: number, decimals: number): string {
  const shown = Number(value.toFixed(6));
  const needed = String(Math.abs(shown)).includes('e') ? 6 : decimalsOf(String(shown));
  return (Object.is(shown, -0) ? 0 : shown).toFixed(Math.max(decimals, needed));
}

/** `40cm` as a plan writes it. */
const spaced = (written: string): string => written.trim().replace(/^([\d.]+)\s*(?=\p{L})/u, '$1 ');
