import type { Kind, Measure } from '../engine/measure.ts';
import type { Phrase } from '../engine/phrase.ts';

export type Units = 'metric' | 'imperial';

/** The most decimals that are ever printed. */
const mostDigits = 6;

/** How a kind of number is written: the factor from SI to the shown unit, its name, and its usual decimals. */
interface Scale {
  readonly perSi: number;
  readonly unit: string;
  readonly digits: (shown: number) => number;
  /** Whether thousands are set off by a comma. */
  readonly commas?: true;
  /** Where the scale has its nothing, in SI. */
  readonly from?: number;
}

const fixed = (digits: number) => () => digits;

/** One decimal below ten, none above; what would round up to 10.0 is written as 10. */
const wholeFromTen = (shown: number): number => (Number(Math.abs(shown).toFixed(1)) >= 10 ? 0 : 1);

/** Exact by definition: international avoirdupois pound and international foot (1959). */
const kgPerLb = 0.45359237;
const mPerFt = 0.3048;
const mPerIn = mPerFt / 12;

// Litres are printed in both systems: a gallon is 3.785 L in the United States and 4.546 L in Britain, and a reader
// who takes one for the other is wrong by a fifth of his water.
const litres: Scale = { perSi: 1000, unit: 'L', digits: wholeFromTen };
const percent: Scale = { perSi: 100, unit: '%', digits: wholeFromTen };
const ratio: Scale = { perSi: 1, unit: '', digits: fixed(2) };
const number: Scale = { perSi: 1, unit: '', digits: (shown) => tenthUnlessWhole(shown) };

/** One decimal of what is not whole to a tenth. */
const tenthUnlessWhole = (shown: number): number => (Number.isInteger(Number(shown.toFixed(1))) ? 0 : 1);

/** One decimal below two of what is not whole to a tenth: a wall of 0.8 mm is no wall of 1 mm. */
const tenthBelowTwo = (shown: number): number => (Math.abs(shown) < 2 ? tenthUnlessWhole(shown) : 0);

/** As many decimals as a size of a conductor has: 0.75, 2.5, 10. */
const decimalsOf = (shown: number): number => {
  const text = String(Number(shown.toFixed(2)));
  return text.includes('.') ? text.length - text.indexOf('.') - 1 : 0;
};

/** As `wholeFromTen`, and three decimals of what would have none left that says something. */
const finerBelowTenth = (shown: number): number =>
  shown !== 0 && Math.abs(shown) < 0.1 ? 3 : wholeFromTen(shown);

/** Two decimals below one, as many as is usual from there on. */
const hundredthsBelowOne = (shown: number): number =>
  shown !== 0 && Math.abs(shown) < 1 ? 2 : wholeFromTen(shown);

/** Three figures, as tables of conductors have: 0.386, 7.98, 13.3. */
const threeFigures = (shown: number): number => (Math.abs(shown) < 1 ? 3 : Math.abs(shown) < 10 ? 2 : 1);

/** Two decimals below one, one above. */
const finerBelowOne = (shown: number): number => (shown !== 0 && Math.abs(shown) < 1 ? 2 : 1);

/** Written alike in both systems. */
const alike = {
  current: { perSi: 1, unit: 'A', digits: finerBelowTenth },
  voltage: { perSi: 1, unit: 'V', digits: fixed(2) },
  power: { perSi: 1, unit: 'W', digits: wholeFromTen, commas: true },
  energy: { perSi: 1 / 3600, unit: 'Wh', digits: wholeFromTen, commas: true },
  charge: { perSi: 1 / 3600, unit: 'Ah', digits: wholeFromTen },
  resistance: { perSi: 1000, unit: 'mohm', digits: (shown) => (Math.abs(shown) < 1 ? 2 : 1) },
  'resistance per metre': { perSi: 1000, unit: 'mohm a metre', digits: threeFigures },
  'cross-section': { perSi: 1e6, unit: 'mm²', digits: decimalsOf },
  flow: { perSi: 60_000, unit: 'L/min', digits: wholeFromTen },
  wait: { perSi: 1, unit: 's', digits: fixed(0) },
  transmittance: { perSi: 1, unit: 'W/m²K', digits: fixed(2) },
  'small volume': { ...litres, digits: hundredthsBelowOne },
  conductance: { perSi: 1, unit: 'W/K', digits: finerBelowOne },
  'heat resistance': { perSi: 1, unit: 'm²K/W', digits: fixed(3) },
  'heat capacity': { perSi: 1 / 3600, unit: 'Wh/K', digits: fixed(1) },
  'specific heat': { perSi: 1 / 3600, unit: 'Wh/kgK', digits: fixed(3) },
  draught: { perSi: 1, unit: 'Pa', digits: finerBelowOne },
  concentration: { perSi: 1e6, unit: 'ppm', digits: fixed(0), commas: true },
} as const satisfies Partial<Record<Kind, Scale>>;

/** A tenth of a degree, unless somebody typed a whole one. */
const closeDigits = (shown: number): number => (Math.abs(shown - Math.round(shown)) < 1e-6 ? 0 : 1);

const celsius: Scale = { perSi: 1, unit: '°C', digits: fixed(0), from: 273.15 };
const fahrenheit: Scale = { perSi: 9 / 5, unit: '°F', digits: fixed(0), from: 459.67 / 1.8 };

const scales: Record<Units, Record<Exclude<Kind, 'length' | 'pressure' | 'duration'>, Scale>> = {
  metric: {
    ...alike,
    temperature: celsius,
    'close temperature': { ...celsius, digits: closeDigits },
    mass: { perSi: 1, unit: 'kg', digits: wholeFromTen, commas: true },
    area: { perSi: 1, unit: 'm²', digits: fixed(2) },
    volume: litres,
    'areal mass': { perSi: 1, unit: 'kg/m²', digits: fixed(1) },
    density: { perSi: 1, unit: 'kg/m³', digits: wholeFromTen },
    share: percent,
    factor: ratio,
    count: number,
    'air flow': { perSi: 3600, unit: 'm³/h', digits: wholeFromTen },
    'air volume': { perSi: 1, unit: 'm³', digits: fixed(2) },
    'mass flow': { perSi: 3.6e6, unit: 'g/h', digits: fixed(0) },
    'temperature difference': { perSi: 1, unit: 'K', digits: fixed(1) },
    'free area': { perSi: 1e4, unit: 'cm²', digits: wholeFromTen },
    condensate: { perSi: 1000, unit: 'g/m²', digits: wholeFromTen },
    'small mass': { perSi: 1000, unit: 'g', digits: wholeFromTen, commas: true },
    'water pressure': { perSi: 1e-5, unit: 'bar', digits: fixed(3) },
  },
  imperial: {
    ...alike,
    temperature: fahrenheit,
    'close temperature': { ...fahrenheit, digits: closeDigits },
    mass: { perSi: 1 / kgPerLb, unit: 'lb', digits: wholeFromTen, commas: true },
    area: { perSi: 1 / mPerFt ** 2, unit: 'ft²', digits: fixed(1) },
    volume: litres,
    'areal mass': { perSi: mPerFt ** 2 / kgPerLb, unit: 'lb/ft²', digits: fixed(2) },
    density: { perSi: mPerFt ** 3 / kgPerLb, unit: 'lb/ft³', digits: wholeFromTen },
    share: percent,
    factor: ratio,
    count: number,
    'air flow': { perSi: 60 / mPerFt ** 3, unit: 'ft³/min', digits: wholeFromTen },
    'air volume': { perSi: 1 / mPerFt ** 3, unit: 'ft³', digits: wholeFromTen },
    'mass flow': { perSi: 3600 / kgPerLb, unit: 'lb/h', digits: fixed(2) },
    'temperature difference': { perSi: 9 / 5, unit: '°F apart', digits: fixed(1) },
    'free area': { perSi: 1 / mPerIn ** 2, unit: 'in²', digits: wholeFromTen },
    condensate: { perSi: (mPerFt ** 2 / kgPerLb) * 16, unit: 'oz/ft²', digits: fixed(3) },
    'small mass': { perSi: 16 / kgPerLb, unit: 'oz', digits: fixed(2) },
    'water pressure': { perSi: mPerIn ** 2 / (kgPerLb * 9.80665), unit: 'psi', digits: fixed(2) },
  },
};

const millimetres: Scale = { perSi: 1000, unit: 'mm', digits: tenthBelowTwo };
const metres: Scale = { perSi: 1, unit: 'm', digits: fixed(2) };
const inches: Scale = { perSi: 1 / mPerIn, unit: 'in', digits: fixed(1) };

/** Millimetres below 10 m, metres from there on. */
const metricLength = (lengthM: number): Scale =>
  Math.round(Math.abs(lengthM) * 1000) >= 10_000 ? metres : millimetres;

const bars: Scale = { perSi: 1e-5, unit: 'bar', digits: fixed(2) };
const millibars: Scale = { perSi: 1e-2, unit: 'mbar', digits: fixed(2) };
const pascals: Scale = { perSi: 1, unit: 'Pa', digits: fixed(1) };
const poundsPerSquareInch: Scale = {
  perSi: mPerIn ** 2 / (kgPerLb * 9.80665),
  unit: 'psi',
  digits: fixed(1),
};

/** What moves air is told in pascals, gas in millibars, water in bars. */
const pressureScale = (pressurePa: number, units: Units): Scale => {
  const size = Math.abs(pressurePa);
  if (size < 50) return pascals;
  if (size < 10_000) return millibars;
  return units === 'metric' ? bars : poundsPerSquareInch;
};

const hours: Scale = { perSi: 1 / 3600, unit: 'h', digits: wholeFromTen };
const minutes: Scale = { perSi: 1 / 60, unit: 'min', digits: fixed(0) };

/** Less than an hour in whole minutes. */
const durationScale = (seconds: number): Scale =>
  Math.abs(seconds) > 0 && Math.round(Math.abs(seconds) / 60) < 60 ? minutes : hours;

const scaleOf = ({ kind, value }: Measure, units: Units): Scale => {
  if (kind === 'duration') return durationScale(value);
  if (kind === 'pressure') return pressureScale(value, units);
  if (kind !== 'length') return scales[units][kind];
  return units === 'metric' ? metricLength(value) : inches;
};

const shownValue = (value: number, { perSi, from = 0 }: Scale): number => (value - from) * perSi;

/** The decimals that a value has on a scale unless more are asked for. */
const usualDigits = (value: number, scale: Scale): number => scale.digits(shownValue(value, scale));

const withCommas = (digits: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/g, ',');

/** Inches below a yard, feet and inches from there on: "35.9 in", "3 ft 0.5 in". */
function feetAndInches(shownIn: number, digits: number): string {
  if (Number(shownIn.toFixed(1)) < 36) return `${shownIn.toFixed(digits)} in`;
  // Rounded before it is split, or 47.96 in would come out as "3 ft 12.0 in".
  const rounded = Number(shownIn.toFixed(digits));
  const feet = Math.floor(rounded / 12);
  return `${feet} ft ${(rounded - 12 * feet).toFixed(digits)} in`;
}

function unsigned(shown: number, digits: number, scale: Scale): string {
  if (scale === inches) return feetAndInches(shown, digits);
  const [whole = '', decimals] = shown.toFixed(digits).split('.');
  const text = `${scale.commas ? withCommas(whole) : whole}${decimals === undefined ? '' : `.${decimals}`}`;
  return scale.unit === '' ? text : `${text} ${scale.unit}`;
}

/**
 * Writes a measure in the reader's units, with a plain "-" before a negative one so that a copied number stays a
 * number. `digits` overrides the usual number of decimals of the unit shown.
 */
export const formatMeasure = (measure: Measure, units: Units, digits?: number): string =>
  onScale(measure.value, scaleOf(measure, units), digits);

function onScale(value: number, scale: Scale, digits = usualDigits(value, scale)): string {
  const shown = shownValue(value, scale);
  const text = unsigned(Math.abs(shown), digits, scale);
  // A negative number that rounds to nothing loses its sign: "-0 kg" says nothing.
  return shown < 0 && saysSomething.test(text) ? `-${text}` : text;
}

/**
 * Writes measures that are read side by side: two of one kind that differ but would print alike get more decimals,
 * up to six, until they differ. So "2,240.02 kg" does not break a limit of "2,240 kg" by looking the same.
 */
export const formatTogether = (measures: readonly Measure[], units: Units): string[] =>
  apart(measures, (measure) => scaleOf(measure, units));

/** Writes measures, each on its scale, so that no two of a kind look the same that are not. */
function apart(measures: readonly Measure[], scaleFor: (measure: Measure) => Scale): string[] {
  const usual = measures.map((measure) => onScale(measure.value, scaleFor(measure)));
  return measures.map((measure, index) => {
    const plain = usual[index] ?? '';
    const rivals = measures.filter(
      (other, at) => other.kind === measure.kind && other.value !== measure.value && usual[at] === plain,
    );
    if (rivals.length === 0) return plain;
    const scale = scaleFor(measure);
    for (let digits = usualDigits(measure.value, scale) + 1; digits <= mostDigits; digits += 1) {
      const text = onScale(measure.value, scale, digits);
      if (rivals.every((rival) => onScale(rival.value, scaleFor(rival), digits) !== text)) return text;
    }
    return plain;
  });
}

/** One scale for each kind, that of its greatest value: what is compared is read in one unit. */
function commonScale(measures: readonly Measure[], units: Units): (measure: Measure) => Scale {
  const greatest = new Map<Kind, Measure>();
  for (const measure of measures) {
    const { kind, value } = measure;
    if (Math.abs(value) >= Math.abs(greatest.get(kind)?.value ?? 0)) greatest.set(kind, measure);
  }
  return (measure) => scaleOf(greatest.get(measure.kind) ?? measure, units);
}

/** A value on a scale, with at least so many decimals, and enough that it does not look like nothing. */
function notNothing(value: number, scale: Scale, least = 0): string {
  for (let digits = Math.max(least, usualDigits(value, scale)); digits <= mostDigits; digits += 1) {
    const text = onScale(value, scale, digits);
    if (value === 0 || saysSomething.test(text)) return text;
  }
  return onScale(value, scale);
}

const saysSomething = /[1-9]|Infinity/;

/** Writes values that stand in one row, each kind in one unit: with the usual digits, or enough that they differ. */
export function formatRow(
  measures: readonly Measure[],
  units: Units,
): { readonly usual: readonly string[]; readonly apart: readonly string[] } {
  const scaleFor = commonScale(measures, units);
  return {
    usual: measures.map((measure) => notNothing(measure.value, scaleFor(measure))),
    apart: apart([...measures, ...measures.map(nothingLike)], scaleFor).slice(0, measures.length),
  };
}

const nothingLike = ({ kind }: Measure): Measure => ({ kind, value: 0 });

export interface StepText {
  readonly from: string;
  readonly to: string;
  /** With a plain "-" where it is less: "-1.3 kg". */
  readonly change: string;
}

/**
 * Writes a value that went from one to another of its kind, and by how much. All three are in one unit, that of the
 * greater value, so that a reader can take one from the other: 0.32 bar less than 0.4 bar are 0.08 bar, not 80 mbar.
 */
export function formatStep(from: Measure, to: Measure, change: Measure, units: Units): StepText {
  const scale = commonScale([from, to], units)(to);
  const [before = '', after = ''] = apart([from, to, nothingLike(from)], () => scale);
  // Nor has the change fewer decimals than it took to tell the two apart.
  const tookMore = onScale(from.value, scale) !== before || onScale(to.value, scale) !== after;
  const least = tookMore ? Math.max(decimalsIn(before), decimalsIn(after)) : 0;
  return { from: before, to: after, change: notNothing(change.value, ofDifferences(scale), least) };
}

/** A difference has no place on a scale that begins elsewhere than at nothing, and is told more closely there. */
const ofDifferences = (scale: Scale): Scale =>
  scale.from === undefined ? scale : { ...scale, from: 0, digits: fixed(1) };

/** The decimals that nobody types more of. */
const mostTyped = 3;

/**
 * By how much a quantity that somebody typed was changed, in the unit of both: such a number has few digits, and those
 * that it has are shown. 2.5 mm more is not 3 mm more.
 */
export function formatTypedStep(from: Measure, to: Measure, change: Measure, units: Units): string {
  const scale = ofDifferences(commonScale([from, to], units)(to));
  const shown = shownValue(change.value, scale);
  const isWhole = (number: number): boolean => Math.abs(number - Math.round(number)) < 1e-6;
  let typed = 0;
  while (typed <= mostTyped && !isWhole(shown * 10 ** typed)) typed += 1;
  // What was typed in other units has no end: of millimetres two decimals, of all else the usual ones.
  const digits = typed <= mostTyped ? typed : scale === millimetres ? 2 : 0;
  return notNothing(change.value, scale, digits)
    .replace(/(\.\d*?)0+(?!\d)/, '$1')
    .replace(/\.(?!\d)/, '');
}

const decimalsIn = (text: string): number => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;

/** Whether values that are compared look the same in the digits that are usually printed. */
export function looksAlike(one: Measure, other: Measure, units: Units): boolean {
  const scaleFor = commonScale([one, other], units);
  return onScale(one.value, scaleFor(one)) === onScale(other.value, scaleFor(other));
}

export interface Pair {
  readonly measured: string;
  readonly limit: string;
}

/** Writes a measured value and its limit with enough digits that they never look equal when they are not. */
export function formatPair(measured: Measure, limit: Measure, units: Units): Pair {
  const [first = '', second = ''] = formatTogether([measured, limit], units);
  return { measured: first, limit: second };
}

/** Writes a measure with enough digits that it never looks like nothing when it is something. */
export const formatNonZero = (measure: Measure, units: Units): string =>
  formatPair(measure, { kind: measure.kind, value: 0 }, units).measured;

/**
 * Joins a phrase to a sentence in the reader's units. Measures in one sentence never look equal when they differ, nor
 * like the measures `beside` it, which the reader sees in the same place.
 */
export function renderPhrase(phrase: Phrase, units: Units, beside: readonly Measure[] = []): string {
  const measures = phrase.filter((part) => typeof part !== 'string');
  const texts = formatTogether([...measures, ...beside], units).values();
  return phrase.map((part) => (typeof part === 'string' ? part : texts.next().value)).join('');
}
