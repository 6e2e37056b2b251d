import { nearest } from './nearest.ts';
import {
  type Dimension,
  type DimensionName,
  dimensionCalled,
  dimensions,
  parseUnit,
  sameDimension,
  unitHints,
  units,
} from './units.ts';

/** A part of a quantity's tolerance that comes from a parameter and so is shared by all that use it. */
export interface SharedError {
  readonly source: string;
  /** Change of the value when the parameter is at the upper end of its own tolerance. */
  readonly halfWidth: number;
}

/** A value in SI with its tolerance as the user stated it: the value lies within ± halfWidth. */
export interface Quantity {
  readonly value: number;
  readonly halfWidth: number;
  readonly shared: readonly SharedError[];
}

/** A quantity whose dimension is not yet checked against what its key asks for. */
export interface Measured extends Quantity {
  readonly dimension: Dimension;
  /** Written with a per cent sign. */
  readonly percent?: boolean;
}

/** Why a text is no quantity. */
export interface Refusal {
  readonly message: string;
  readonly expected?: string;
  readonly meant?: string;
  /** The text is an expression: it takes the calculator to read it. */
  readonly needsCalculator?: boolean;
}

export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Refusal };

export const understood = <T>(value: T): Reading<T> => ({ ok: true, value });
export const refused = (refusal: Refusal): Reading<never> => ({ ok: false, refusal });

/** Evaluates one side of the ± sign when it is more than a number with a unit. */
export type Calculate = (text: string) => Reading<Measured>;

export const needsCalculator: Calculate = () =>
  refused({ message: 'this is an expression', needsCalculator: true });

const literalPattern = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s;
const unitWord = /^[\p{L}_"″'′]+(?:\^?[1-4]|[²³])?(?:\s*[/*·]\s*[\p{L}_"″'′]+(?:\^?[1-4]|[²³])?)*$/u;
const plusMinus = /\s*(?:±|\+\/-|\+-)\s*/;

/** Reads `38 kg`, `38 kg ± 2 kg`, `38 kg +- 5 %`, `38 ± 2 kg`, or an expression on either side. */
export function readMeasured(text: string, calculate: Calculate): Reading<Measured> {
  const trimmed = text.trim();
  if (trimmed === '') return refused({ message: 'is empty' });
  const sides = trimmed.split(plusMinus);
  const [nominalText = '', toleranceText] = sides;
  if (sides.length > 2)
    return refused({ message: 'has more than one tolerance', expected: 'one, such as `38 kg ± 2 kg`' });
  if (toleranceText === undefined) return readSide(nominalText, calculate);
  if (nominalText === '' || toleranceText === '') {
    return refused({
      message: 'has a tolerance sign with nothing on one side',
      expected: 'both, such as `38 kg ± 2 kg`',
    });
  }
  return withTolerance(nominalText, toleranceText, calculate);
}

function withTolerance(nominalText: string, toleranceText: string, calculate: Calculate): Reading<Measured> {
  const tolerance = readSide(toleranceText, calculate);
  if (!tolerance.ok) return tolerance;
  // "38 ± 2 kg": the unit stands once, at the end.
  const unit = /^\d[\d.]*\s*([^\d\s].*)$/.exec(toleranceText)?.[1];
  const bare = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(nominalText);
  const nominal = readSide(bare && unit && unit !== '%' ? `${nominalText} ${unit}` : nominalText, calculate);
  if (!nominal.ok) return nominal;
  const { value, dimension } = nominal.value;
  const relative = tolerance.value.percent === true && nominal.value.percent !== true;
  if (!relative && !sameDimension(tolerance.value.dimension, dimension)) {
    return refused({
      message: `the tolerance \`${toleranceText}\` is ${dimensionCalled(tolerance.value.dimension)}, but \`${nominalText}\` is ${dimensionCalled(dimension)}`,
      expected: 'a tolerance in the same kind of unit, or in per cent, such as `38 kg ± 5 %`',
    });
  }
  if (tolerance.value.value < 0) return refused({ message: 'has a negative tolerance' });
  const halfWidth = relative ? Math.abs(value) * tolerance.value.value : tolerance.value.value;
  return understood({ ...nominal.value, halfWidth });
}

/** One side of a quantity: a number with a unit, or else an expression. */
function readSide(text: string, calculate: Calculate): Reading<Measured> {
  const literal = literalPattern.exec(text);
  const number = Number(literal?.[1]);
  const unitText = literal?.[2]?.trim() ?? '';
  if (literal && unitText === '') return plain(number, { kg: 0, m: 0 });
  if (literal && unitText === '%')
    return understood({ ...exact(number / 100, { kg: 0, m: 0 }), percent: true });
  if (literal && /^[,']\d/.test(unitText)) return refused(commaRefusal(text));
  if (literal && (unitWord.test(unitText) || unitHints.has(unitText))) {
    const unit = parseUnit(unitText);
    if (!('unknown' in unit)) return plain(number * unit.factor, unit.dimension);
    if (!/[/*·]/.test(unitText) || units.has(unitText.split(/\s*[/*·]/)[0] ?? '')) {
      const calculated = calculate(text);
      if (calculated.ok || calculated.refusal.needsCalculator === true) return calculated;
      return refused(unknownUnit(unit.unknown));
    }
  }
  return calculate(text);
}

function plain(value: number, dimension: Dimension): Reading<Measured> {
  if (!Number.isFinite(value)) return refused({ message: 'is too large a number' });
  return understood(exact(value, dimension));
}

export const exact = (value: number, dimension: Dimension): Measured => ({
  value,
  halfWidth: 0,
  shared: [],
  dimension,
});

function commaRefusal(text: string): Refusal {
  const thousands = /^[+-]?\d{1,3}(?:[,']\d{3})+(?!\d)/.test(text);
  return {
    message: `\`${text}\` has a comma in the number`,
    expected: thousands
      ? `no separator between thousands: \`${text.replace(/[,']/g, '')}\` (a decimal needs a point)`
      : `a decimal point: \`${text.replace(',', '.')}\``,
  };
}

/** The words for a unit that is not in the table. */
export function unknownUnit(symbol: string): Refusal {
  const hint = unitHints.get(symbol) ?? unitHints.get(symbol.toLowerCase());
  const meant = hint === undefined ? nearest(symbol, units.keys()) : undefined;
  return {
    message: `\`${symbol}\` is not a unit that is known here`,
    expected:
      hint ?? `one of ${[...units.keys()].filter((unit) => unit !== 'inch' && unit !== 'l').join(', ')}`,
    ...(meant === undefined ? {} : { meant }),
  };
}

/** Checks that a measured text is of the kind its key asks for. */
export function ofKind(
  measured: Measured,
  text: string,
  wanted: readonly DimensionName[],
): Reading<Quantity & { kind: DimensionName }> {
  const kind = wanted.find((name) => sameDimension(dimensions[name].dimension, measured.dimension));
  const expected = wanted
    .map((name) => `${dimensions[name].called}, such as \`${dimensions[name].example}\``)
    .join(', or ');
  if (kind === undefined) {
    const bare = sameDimension(measured.dimension, dimensions.number.dimension);
    const first =
      wanted[0] === undefined ? undefined : dimensions[wanted[0]].example.replace(/^[\d.]+/, '').trim();
    return refused(
      bare && measured.percent !== true
        ? {
            message: `\`${text}\` has no unit`,
            expected: `${expected}${first && /^[\d.]+$/.test(text.trim()) ? ` (perhaps \`${text.trim()} ${first}\`)` : ''}`,
          }
        : {
            message: `\`${text}\` is ${measured.percent === true ? 'a share in per cent' : dimensionCalled(measured.dimension)}`,
            expected,
          },
    );
  }
  if (kind === 'share' && measured.percent !== true && !wanted.includes('number') && measured.value !== 0) {
    return refused({
      message: `\`${text}\` has no per cent sign`,
      expected: 'a share in per cent, such as `50 %`',
    });
  }
  return understood({ value: measured.value, halfWidth: measured.halfWidth, shared: measured.shared, kind });
}
