/**
 * The units a plan may be written in, as multiples of SI. This table is the only source of unit values: literals
 * are read with it directly, and expressions get the same symbols through the calculator's scope.
 *
 * Sources, all exact by definition (psi with the standard acceleration 9.80665 m/s²): the pound, the ounce, the litre and the tonne are in the UK's Weights and Measures
 * Act 1985, schedule 1 (read); inch, foot and yard in the US 16 CFR 500.19 (read); the imperial gallon of 4.54609 L, its
 * eight pints and the stone of 14 pounds in a table of the UK system (read); the US gallon of 231 cubic inches from
 * memory, and it agrees with the 3.78541 L of 16 CFR 500.19. The addresses are in tests/plan/units.test.ts.
 */

/** Exponents of the SI base units, e.g. kg/m³ is { kg: 1, m: -3, s: 0, a: 0, k: 0 }. */
export interface Dimension {
  readonly kg: number;
  readonly m: number;
  readonly s: number;
  readonly a: number;
  readonly k: number;
}

const baseUnits = ['kg', 'm', 's', 'a', 'k'] as const;

/** A dimension by its exponents that are not zero. */
const made = (exponents: Partial<Dimension>): Dimension => ({ kg: 0, m: 0, s: 0, a: 0, k: 0, ...exponents });

export const bare = made({});

/** Works on the exponents of two dimensions one by one. */
export const combined = (
  one: Dimension,
  other: Dimension,
  combine: (a: number, b: number) => number,
): Dimension => made(Object.fromEntries(baseUnits.map((base) => [base, combine(one[base], other[base])])));

export interface Unit {
  readonly factor: number;
  readonly dimension: Dimension;
}

const pound = 0.45359237;
const inch = 0.0254;
const litre = 1e-3;

const add = (a: number, b: number): number => a + b;
const second = made({ s: 1 });
const watt = made({ kg: 1, m: 2, s: -3 });
const volt = made({ kg: 1, m: 2, s: -3, a: -1 });
const ohm = made({ kg: 1, m: 2, s: -3, a: -2 });
const pascal = made({ kg: 1, m: -1, s: -2 });

const unitsOf = (dimension: Dimension, factors: Record<string, number>): [string, Unit][] =>
  Object.entries(factors).map(([symbol, factor]) => [symbol, { factor, dimension }]);

export const units: ReadonlyMap<string, Unit> = new Map([
  ...unitsOf(made({ kg: 1 }), { kg: 1, g: 1e-3, t: 1000, lb: pound, oz: pound / 16, st: 14 * pound }),
  ...unitsOf(made({ m: 1 }), {
    m: 1,
    mm: 1e-3,
    cm: 1e-2,
    in: inch,
    inch: inch,
    ft: 12 * inch,
    yd: 36 * inch,
  }),
  ...unitsOf(made({ m: 3 }), {
    L: litre,
    l: litre,
    ml: 1e-3 * litre,
    mL: 1e-3 * litre,
    cl: 1e-2 * litre,
    gal_imp: 4.54609 * litre,
    gal_us: 231 * inch ** 3,
    pt_imp: (4.54609 / 8) * litre,
    pt_us: (231 / 8) * inch ** 3,
  }),
  ...unitsOf(made({ s: 1 }), { s: 1, min: 60, h: 3600, d: 86400 }),
  ...unitsOf(made({ a: 1 }), { A: 1, mA: 1e-3 }),
  ...unitsOf(volt, { V: 1, mV: 1e-3 }),
  ...unitsOf(watt, { W: 1, kW: 1000 }),
  ...unitsOf(combined(watt, second, add), { Wh: 3600, kWh: 3.6e6 }),
  ...unitsOf(made({ a: 1, s: 1 }), { Ah: 3600, mAh: 3.6 }),
  ...unitsOf(ohm, { ohm: 1, mohm: 1e-3 }),
  ...unitsOf(made({ k: 1 }), { K: 1 }),
  ...unitsOf(pascal, { Pa: 1, kPa: 1000, mbar: 100, bar: 1e5, psi: (pound * 9.80665) / inch ** 2 }),
]);

const hints: readonly (readonly [hint: string, ...names: string[]])[] = [
  ['a gallon is `gal_imp` (4.546 L) or `gal_us` (3.785 L)', 'gal', 'gals', 'gallon', 'gallons'],
  ['a pint is `pt_imp` (568 ml) or `pt_us` (473 ml)', 'pt', 'pts', 'pint', 'pints'],
  ['write `t` for 1000 kg, or give the mass in `kg` or `lb`', 'ton', 'tons'],
  ['write `t`', 'tonne', 'tonnes'],
  ['write `kg`', 'kilo', 'kilos', 'kgs', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'],
  ['write `g`', 'gr', 'gram', 'grams', 'gramme', 'grammes'],
  ['write `lb`', 'lbs', 'pound', 'pounds'],
  ['write `oz`', 'ounce', 'ounces'],
  ['write `st`', 'stone', 'stones'],
  ['write `m`', 'metre', 'metres', 'meter', 'meters'],
  ['write `cm`', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  ['write `mm`', 'mms', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  ['write a part of a millimetre as a decimal, such as `0.08 mm`', 'µm', 'μm', 'um', 'micron', 'microns'],
  ['write inches as `in`', '"', '″', '”', "''", 'inches', 'ins'],
  ['write feet as `ft`', "'", '′', '’', 'foot', 'feet'],
  ['write `yd`', 'yard', 'yards', 'yds'],
  ['write `L`', 'litre', 'litres', 'liter', 'liters', 'ltr', 'ltrs'],
  ['write `ml`', 'millilitre', 'millilitres', 'milliliter', 'milliliters', 'cc'],
  ['write tenths of a litre as a decimal, such as `0.5 L`', 'dl', 'dL'],
  ['write `m2`', 'sqm', 'qm'],
  ['write `ft2`', 'sqft'],
  ['write `in2`', 'sqin'],
  ['write `m3`', 'cbm', 'cum'],
  ['write `A`', 'amp', 'amps', 'ampere', 'amperes'],
  ['write `V`', 'volt', 'volts'],
  ['write `W`', 'watt', 'watts'],
  ['the power in `W`, which its data sheet gives too and which is less', 'VA', 'va', 'kVA'],
  ['write `Ah`', 'ah', 'AH', 'A/h'],
  ['write `Wh`', 'wh', 'WH'],
  ['write `ohm` or `mohm`', 'Ω', 'Ohm', 'ohms', 'mΩ', 'mOhm', 'mohms'],
  ['write `h`', 'hr', 'hrs', 'hour', 'hours', 'std'],
  ['write `min`', 'mins', 'minute', 'minutes'],
  ['write `Pa`, `mbar` or `bar`', 'hPa', 'pascal', 'mb', 'bars', 'barg'],
  ['write litres a minute as `L/min`', 'lpm', 'LPM'],
  ['write gallons a minute as `gal_us/min` or `gal_imp/min`', 'gpm', 'GPM'],
  ['write `m3/h`, or cubic feet a minute as `ft3/min`', 'cfm', 'CFM', 'cmh'],
  ['watts, as `W`: 1000 of them are 3412 of the other', 'BTU', 'btu', 'Btu'],
  ['write `degC`, such as `-8 degC`', '°', '°C', 'C', 'celsius', 'Celsius'],
  ['write `degF`, such as `18 degF`', '°F', 'F', 'fahrenheit', 'Fahrenheit'],
];

/** Unit names that mean two things, or are written otherwise here, with what to write instead. */
export const unitHints: ReadonlyMap<string, string> = new Map(
  hints.flatMap(([hint, ...names]) => names.map((name) => [name, hint] as const)),
);

/** A kind of quantity that a key may ask for, with an example that would be right. */
export const dimensions = {
  mass: {
    dimension: made({ kg: 1 }),
    called: 'a mass',
    example: '38 kg',
    units: ['kg', 'g', 't', 'lb', 'oz', 'st'],
  },
  length: {
    dimension: made({ m: 1 }),
    called: 'a length',
    example: '1.2 m',
    units: ['mm', 'cm', 'm', 'in', 'ft', 'yd'],
  },
  /** Still air that resists vapour as a layer does: a foil is as good as a hundred metres of it. */
  airLayer: {
    dimension: made({ m: 1 }),
    called: 'a length of air',
    example: '50 m',
    units: ['m', 'mm', 'ft'],
  },
  area: {
    dimension: made({ m: 2 }),
    called: 'an area',
    example: '4.5 m2',
    units: ['m2', 'cm2', 'mm2', 'ft2', 'in2'],
  },
  volume: {
    dimension: made({ m: 3 }),
    called: 'a volume',
    example: '70 L',
    units: ['L', 'ml', 'cl', 'm3', 'gal_imp', 'gal_us', 'pt_imp', 'pt_us'],
  },
  arealMass: {
    dimension: made({ kg: 1, m: -2 }),
    called: 'a mass per area',
    example: '3.4 kg/m2',
    units: ['kg/m2', 'g/m2', 'lb/ft2', 'oz/ft2'],
  },
  linearMass: {
    dimension: made({ kg: 1, m: -1 }),
    called: 'a mass per length',
    example: '0.09 kg/m',
    units: ['kg/m', 'g/m', 'lb/ft', 'oz/ft'],
  },
  density: {
    dimension: made({ kg: 1, m: -3 }),
    called: 'a density',
    example: '680 kg/m3',
    units: ['kg/m3', 'g/cm3', 'kg/L', 'lb/ft3'],
  },
  duration: { dimension: second, called: 'a time', example: '4 h', units: ['h', 'min', 's', 'd'] },
  current: { dimension: made({ a: 1 }), called: 'a current', example: '7 A', units: ['A', 'mA'] },
  voltage: { dimension: volt, called: 'a voltage', example: '12.8 V', units: ['V', 'mV'] },
  power: { dimension: watt, called: 'a power', example: '45 W', units: ['W', 'kW'] },
  energy: {
    dimension: combined(watt, second, add),
    called: 'an energy',
    example: '600 Wh',
    units: ['Wh', 'kWh'],
  },
  irradiation: {
    dimension: combined(combined(watt, second, add), made({ m: 2 }), (a, b) => a - b),
    called: 'an energy per area',
    example: '1.2 kWh/m2',
    units: ['kWh/m2', 'Wh/m2'],
  },
  charge: { dimension: made({ a: 1, s: 1 }), called: 'a charge', example: '100 Ah', units: ['Ah', 'mAh'] },
  resistance: { dimension: ohm, called: 'a resistance', example: '3 mohm', units: ['mohm', 'ohm'] },
  voltagePerKelvin: {
    dimension: combined(volt, made({ k: 1 }), (a, b) => a - b),
    called: 'a voltage per kelvin',
    example: '-65 mV/K',
    units: ['mV/K', 'V/K'],
  },
  pressure: {
    dimension: pascal,
    called: 'a pressure',
    example: '2.4 bar',
    units: ['bar', 'mbar', 'kPa', 'Pa', 'psi'],
  },
  flow: {
    dimension: made({ m: 3, s: -1 }),
    called: 'a flow',
    example: '10 L/min',
    units: ['L/min', 'L/h', 'm3/h', 'gal_imp/min', 'gal_us/min', 'ft3/min'],
  },
  massFlow: {
    dimension: made({ kg: 1, s: -1 }),
    called: 'a mass per time',
    example: '230 g/h',
    units: ['g/h', 'kg/h', 'lb/h'],
  },
  thermalTransmittance: {
    dimension: made({ kg: 1, s: -3, k: -1 }),
    called: 'a U-value',
    example: '2.8 W/m2/K',
    units: ['W/m2/K'],
  },
  thermalConductivity: {
    dimension: made({ kg: 1, m: 1, s: -3, k: -1 }),
    called: 'a thermal conductivity',
    example: '0.035 W/m/K',
    units: ['W/m/K'],
  },
  temperature: {
    dimension: made({ k: 1 }),
    called: 'a temperature',
    example: '-8 degC',
    units: ['degC', 'degF'],
  },
  share: { dimension: made({}), called: 'a share in per cent', example: '50 %', units: ['%'] },
  number: { dimension: made({}), called: 'a number', example: '4', units: [] },
} as const;

export type DimensionName = keyof typeof dimensions;

export const sameDimension = (a: Dimension, b: Dimension): boolean =>
  baseUnits.every((base) => a[base] === b[base]);

/** What a dimension is called in plain words, for "this is a length". */
export function dimensionCalled(dimension: Dimension): string {
  const found = Object.values(dimensions).find((entry) => sameDimension(entry.dimension, dimension));
  if (found === dimensions.share) return 'a bare number';
  return found ? found.called : 'no kind of quantity that a plan holds';
}

/** What a unit may be made of, besides letters: the marks for inches and feet, to say what to write instead. */
export const unitLetters = '\\p{L}_"″”\'′’';
const factorPattern = new RegExp(`^([${unitLetters}]+)(?:\\^?([1-4])|([²³]))?$`, 'u');

/**
 * Reads a unit such as `kg`, `m2`, `m²`, `kg/m2` or `g/cm^3`. Returns the unit, or the part of the text that is
 * not a known unit.
 */
export function parseUnit(text: string): Unit | { readonly unknown: string } {
  let factor = 1;
  let dimension = bare;
  const pieces = text.split(/\s*([/*·])\s*/);
  for (let index = 0; index < pieces.length; index += 2) {
    const piece = pieces[index] ?? '';
    const match = factorPattern.exec(piece);
    const unit = match?.[1] === undefined ? undefined : units.get(match[1]);
    if (!match || !unit) return { unknown: match?.[1] ?? piece };
    const power = match[3] === '²' ? 2 : match[3] === '³' ? 3 : Number(match[2] ?? 1);
    const exponent = pieces[index - 1] === '/' ? -power : power;
    factor *= unit.factor ** exponent;
    dimension = combined(dimension, unit.dimension, (sum, of) => sum + of * exponent);
  }
  return { factor, dimension };
}
