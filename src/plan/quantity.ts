import { refusalOfHabit } from './habits.ts';
import { nearest } from './nearest.ts';
import { quote } from './quote.ts';
import {
  type Dimension,
  type DimensionName,
  dimensionCalled,
  dimensions,
  parseUnit,
  sameDimension,
  unitHints,
  unitLetters,
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
  /** A temperature on a scale that begins elsewhere than at nothing, and not a difference of two; its value is in K. */
  readonly onScale?: boolean;
}

/** Why a text is no quantity. */
export interface Refusal {
  readonly message: string;
  readonly expected?: string;
  readonly meant?: string;
  /** The text is an expression: it takes the calculator to read it. */
  readonly needsCalculator?: boolean;
  /** The unit that is not known, if that is the trouble. */
  readonly unit?: string;
  /** Only the consequence of a trouble that is reported elsewhere: not to be reported itself. */
  readonly follows?: boolean;
}

export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Refusal };

export const understood = <T>(value: T): Reading<T> => ({ ok: true, value });
export const refused = (refusal: Refusal): Reading<never> => ({ ok: false, refusal });

/** What a text may refer to, and how one side of the ± sign is evaluated when it is more than a number with a unit. */
export interface Expressions {
  readonly isParameter: (name: string) => boolean;
  readonly calculate: (text: string) => Reading<Measured>;
}

/** Stands in until the calculator is loaded; most plans never need it. */
export const withoutCalculator = (isParameter: Expressions['isParameter']): Expressions => ({
  isParameter,
  calculate: () => refused({ message: 'is an expression', needsCalculator: true }),
});

/** More than any quantity needs, and little enough to be read quickly whatever it is. */
export const longestQuantity = 200;

const literalPattern = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s;
const unitFactor = `[${unitLetters}]+(?:\\^?[1-4]|[²³])?`;
const unitWord = new RegExp(`^${unitFactor}(?:\\s*[/*·]\\s*${unitFactor})*$`, 'u');
const plusMinus = /\s*(?:±|\+\/-|\+-)\s*/;

/** Reads `38 kg`, `38 kg ± 2 kg`, `38 kg +- 5 %`, `38 ± 2 kg`, or an expression on either side. */
export function readMeasured(text: string, expressions: Expressions): Reading<Measured> {
  const trimmed = text.trim().replaceAll('−', '-');
  if (trimmed === '') return refused({ message: 'is empty' });
  if (trimmed.length > longestQuantity) {
    return refused({
      message: `is an expression of ${trimmed.length} characters`,
      expected: `at most ${longestQuantity}; name its parts in \`params\``,
    });
  }
  const sides = trimmed.split(plusMinus);
  const [nominalText = '', toleranceText] = sides;
  if (sides.length > 2)
    return refused({ message: 'has more than one tolerance', expected: 'one, such as `38 kg ± 2 kg`' });
  if (toleranceText === undefined) return readSide(nominalText, expressions);
  if (nominalText === '' || toleranceText === '') {
    return refused({
      message: 'has a tolerance sign with nothing on one side',
      expected: 'both, such as `38 kg ± 2 kg`',
    });
  }
  return withTolerance(nominalText, toleranceText, expressions);
}

const inKelvins = 'it in kelvins, which are as large as degrees Celsius: `-8 degC ± 2 K`';

function withTolerance(
  nominalText: string,
  toleranceText: string,
  expressions: Expressions,
): Reading<Measured> {
  const tolerance = readSide(toleranceText, expressions);
  if (!tolerance.ok) return tolerance;
  // "38 ± 2 kg": the unit stands once, at the end.
  const unit = literalPattern.exec(toleranceText)?.[2] ?? '';
  const bare = literalPattern.exec(nominalText)?.[2] === '';
  const nominal = readSide(bare && unitWord.test(unit) ? `${nominalText} ${unit}` : nominalText, expressions);
  if (!nominal.ok) return nominal;
  const { value, dimension } = nominal.value;
  if (tolerance.value.onScale)
    return refused({
      message: `the tolerance ${quote(toleranceText)} is a temperature, not a difference of two`,
      expected: inKelvins,
    });
  const relative = tolerance.value.percent === true && nominal.value.percent !== true;
  if (relative && nominal.value.onScale)
    return refused({ message: 'has a tolerance in per cent of a temperature', expected: inKelvins });
  if (!relative && !sameDimension(tolerance.value.dimension, dimension)) {
    return refused({
      message: `the tolerance ${quote(toleranceText)} is ${dimensionCalled(tolerance.value.dimension)}, but ${quote(nominalText)} is ${dimensionCalled(dimension)}`,
      expected: 'a tolerance in the same kind of unit, or in per cent, such as `38 kg ± 5 %`',
    });
  }
  if (tolerance.value.value < 0)
    return refused({
      message: 'has a negative tolerance',
      expected: 'it without the minus: it counts both ways',
    });
  const halfWidth = relative ? Math.abs(value) * tolerance.value.value : tolerance.value.value;
  if (!Number.isFinite(halfWidth)) return refused(tooLarge);
  return understood({ ...nominal.value, halfWidth });
}

/** One side of a quantity: a number with a unit, or else an expression. */
function readSide(text: string, expressions: Expressions): Reading<Measured> {
  const literal = literalPattern.exec(text);
  const number = Number(literal?.[1]);
  const unitText = literal?.[2]?.trim() ?? '';
  if (literal && unitText === '') return plain(number, dimensions.number.dimension);
  if (literal && unitText === '%') {
    const share = plain(number / 100, dimensions.share.dimension);
    return share.ok ? understood({ ...share.value, percent: true }) : share;
  }
  const scale = literal && scales.get(unitText);
  if (scale) {
    const kelvin = plain((number + scale.offset) * scale.kelvins, dimensions.temperature.dimension);
    return kelvin.ok ? understood({ ...kelvin.value, onScale: true }) : kelvin;
  }
  if (literal && (unitWord.test(unitText) || unitHints.has(unitText))) {
    const unit = parseUnit(unitText);
    if (!('unknown' in unit)) return plain(number * unit.factor, unit.dimension);
    // "2 shelf_mass" is a product, but only where there is such a parameter.
    if (!unitText.split(/[^\p{L}\d_]+/u).some(expressions.isParameter))
      return refused(unknownUnit(unit.unknown));
  }
  const habit = refusalOfHabit(text);
  if (habit) return refused(habit);
  if (unitWord.test(text) && !('unknown' in parseUnit(text)))
    return refused({
      message: `${quote(text)} has no number`,
      expected: `a number before it: \`1 ${text}\``,
    });
  return expressions.calculate(text);
}

/** A degree in kelvins, and how far the scale's nothing lies above that of the absolute scale, in its own degrees. */
const scales: ReadonlyMap<string, { readonly kelvins: number; readonly offset: number }> = new Map([
  ['degC', { kelvins: 1, offset: 273.15 }],
  ['degF', { kelvins: 5 / 9, offset: 459.67 }],
]);

const tooLarge: Refusal = { message: 'is too large a number' };

function plain(value: number, dimension: Dimension): Reading<Measured> {
  if (!Number.isFinite(value)) return refused(tooLarge);
  return understood(exact(value, dimension));
}

export const exact = (value: number, dimension: Dimension): Measured => ({
  value,
  halfWidth: 0,
  shared: [],
  dimension,
});

/** The words for a unit that is not in the table, and the units that there are for such a quantity. */
export function unknownUnit(symbol: string, kinds: readonly DimensionName[] = []): Refusal {
  const hint = unitHints.get(symbol) ?? unitHints.get(symbol.toLowerCase());
  const fitting = kinds.flatMap((kind) => dimensions[kind].units);
  const known = fitting.length > 0 ? fitting : [...units.keys()].filter((unit) => !otherSpellings.has(unit));
  const meant = hint === undefined ? nearest(symbol, known) : undefined;
  return {
    message: `${quote(symbol)} is not a unit that is known here`,
    expected: hint ?? `${known.length > 1 ? 'one of ' : ''}${known.join(', ')}`,
    unit: symbol,
    ...(meant === undefined ? {} : { meant }),
  };
}

const otherSpellings = new Set(['inch', 'l', 'mL']);

/** What a key asks for, with an example of each kind: "a mass, such as `38 kg`". */
export const examplesOf = (kinds: readonly DimensionName[]): string =>
  kinds.map((kind) => `${dimensions[kind].called}, such as \`${dimensions[kind].example}\``).join(', or ');

/** Checks that a measured text is of the kind its key asks for. */
export function ofKind(
  measured: Measured,
  text: string,
  wanted: readonly DimensionName[],
): Reading<Quantity & { kind: DimensionName }> {
  const percent = measured.percent === true;
  const fitting = wanted.filter((name) => sameDimension(dimensions[name].dimension, measured.dimension));
  // A share and a number differ only by the per cent sign.
  const kind = fitting.find((name) => name === (percent ? 'share' : 'number')) ?? fitting[0];
  if (kind === undefined) {
    const bare = sameDimension(measured.dimension, dimensions.number.dimension) && !percent;
    const is = percent ? 'a share in per cent' : dimensionCalled(measured.dimension);
    return refused({
      message: bare ? `${quote(text)} has no unit` : `${quote(text)} is ${is}`,
      expected: examplesOf(wanted) + (bare ? perhaps(text, measured.value, wanted[0]) : ''),
    });
  }
  if (kind === 'temperature' && measured.onScale !== true) {
    return refused({
      message: `${quote(text)} is so many kelvins, as a difference of two temperatures is`,
      expected: examplesOf(wanted),
    });
  }
  if (kind === 'number' && percent) {
    return refused({ message: `${quote(text)} is a share in per cent`, expected: examplesOf(wanted) });
  }
  if (kind === 'share' && !percent && measured.value !== 0) {
    const share = measured.value <= 1 ? Number((100 * measured.value).toPrecision(12)) : measured.value;
    const meant = measured.value === 1 ? '`100 %` or `1 %`' : `\`${share} %\``;
    return refused({
      message: `${quote(text)} has no per cent sign`,
      expected: `${examplesOf(['share'])}${/^[\d.]+$/.test(text.trim()) ? ` (perhaps ${meant})` : ''}`,
    });
  }
  return understood({ value: measured.value, halfWidth: measured.halfWidth, shared: measured.shared, kind });
}

/** The bare number with the unit that was most likely meant; of short lengths nobody can tell. */
function perhaps(text: string, value: number, kind: DimensionName | undefined): string {
  if (!/^[-−+]?[\d.]+(?:\s*(?:±|\+\/?-)\s*[\d.]+)?$/.test(text.trim())) return '';
  const usual: Partial<Record<DimensionName, readonly string[]>> = {
    mass: ['kg'],
    length: Math.abs(value) >= 10 ? ['mm'] : ['m', 'mm'],
    area: ['m2'],
    volume: ['L'],
    arealMass: ['kg/m2'],
    density: ['kg/m3'],
    current: ['A'],
    voltage: ['V'],
    power: ['W'],
    energy: ['Wh'],
    irradiation: ['kWh/m2'],
    charge: ['Ah'],
    resistance: ['mohm'],
    duration: value > 24 ? ['h', 'd'] : ['h'],
    temperature: ['degC'],
  };
  const offers = (kind && usual[kind])?.map((unit) => `\`${text.trim()} ${unit}\``) ?? [];
  return offers.length > 0 ? ` (perhaps ${offers.join(' or ')})` : '';
}
