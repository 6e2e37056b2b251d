/**
 * A number that knows what it is. The value is in SI (kg, m, m², m³, kg/m²) or a plain ratio; which unit a reader
 * sees (kg or lb, mm or in) is the renderer's business.
 */
export type Kind =
  | 'mass'
  | 'length'
  | 'area'
  | 'volume'
  /** What stands in a pipe: in litres too, and closer below one. */
  | 'small volume'
  | 'areal mass'
  | 'density'
  /** A part of a whole, shown in per cent. */
  | 'share'
  /** A bare number, such as a stability factor. */
  | 'factor'
  /** A number of things. */
  | 'count'
  | 'current'
  | 'voltage'
  | 'power'
  /** In watt-hours as a reader sees it. */
  | 'energy'
  /** In ampere-hours as a reader sees it. */
  | 'charge'
  | 'resistance'
  /** Of a metre of conductor, in as many digits as tables have. */
  | 'resistance per metre'
  | 'duration'
  /** On the Celsius or Fahrenheit scale as a reader sees it. */
  | 'temperature'
  /** The same in a sum, where tenths of a degree decide what comes out. */
  | 'close temperature'
  /** Of a conductor. */
  | 'cross-section'
  | 'pressure'
  /** Of water in pipes, in bars however small, so that a sum of them keeps one unit. */
  | 'water pressure'
  /** Of water. */
  | 'flow'
  /** Of air. */
  | 'air flow'
  /** Of air in a room, which nobody counts in litres. */
  | 'air volume'
  /** Between a room and the outside: in pascals, however much it is. */
  | 'draught'
  /** Of gas. */
  | 'mass flow'
  /** A time that is counted in seconds. */
  | 'wait'
  /** How far two temperatures are apart. */
  | 'temperature difference'
  /** A U-value. */
  | 'transmittance'
  /** Heat lost for each kelvin. */
  | 'conductance'
  /** How well a square metre holds heat back. */
  | 'heat resistance'
  /** Heat that something takes up for each kelvin, in watt-hours so that W/K make hours of it. */
  | 'heat capacity'
  /** The same of a kilogram. */
  | 'specific heat'
  /** A vent's free area. */
  | 'free area'
  /** A gas in the air, by volume. */
  | 'concentration'
  /** Water on or in a surface. */
  | 'condensate'
  /** In grams as a reader sees it, where a kilogram is too much. */
  | 'small mass';

export interface Measure {
  readonly kind: Kind;
  readonly value: number;
}

export const mass = (massKg: number): Measure => ({ kind: 'mass', value: massKg });
export const length = (lengthM: number): Measure => ({ kind: 'length', value: lengthM });
export const area = (areaM2: number): Measure => ({ kind: 'area', value: areaM2 });
export const volume = (volumeM3: number): Measure => ({ kind: 'volume', value: volumeM3 });
export const smallVolume = (volumeM3: number): Measure => ({ kind: 'small volume', value: volumeM3 });
export const arealMass = (kgPerM2: number): Measure => ({ kind: 'areal mass', value: kgPerM2 });
export const density = (kgPerM3: number): Measure => ({ kind: 'density', value: kgPerM3 });
export const share = (fraction: number): Measure => ({ kind: 'share', value: fraction });
export const factor = (value: number): Measure => ({ kind: 'factor', value });
export const count = (value: number): Measure => ({ kind: 'count', value });
export const current = (currentA: number): Measure => ({ kind: 'current', value: currentA });
export const voltage = (voltageV: number): Measure => ({ kind: 'voltage', value: voltageV });
export const power = (powerW: number): Measure => ({ kind: 'power', value: powerW });
export const energyWh = (wattHours: number): Measure => ({ kind: 'energy', value: wattHours * 3600 });
export const chargeAh = (ampereHours: number): Measure => ({ kind: 'charge', value: ampereHours * 3600 });
export const resistance = (ohm: number): Measure => ({ kind: 'resistance', value: ohm });
export const resistancePerMetre = (ohmPerM: number): Measure => ({
  kind: 'resistance per metre',
  value: ohmPerM,
});
export const duration = (seconds: number): Measure => ({ kind: 'duration', value: seconds });
export const temperatureC = (celsius: number): Measure => ({ kind: 'temperature', value: celsius + 273.15 });
export const closeC = (celsius: number): Measure => ({ kind: 'close temperature', value: celsius + 273.15 });
export const crossSectionMm2 = (areaMm2: number): Measure => ({
  kind: 'cross-section',
  value: areaMm2 * 1e-6,
});
export const pressure = (pascals: number): Measure => ({ kind: 'pressure', value: pascals });
export const waterPressure = (pascals: number): Measure => ({ kind: 'water pressure', value: pascals });
export const flow = (m3PerS: number): Measure => ({ kind: 'flow', value: m3PerS });
export const airFlow = (m3PerS: number): Measure => ({ kind: 'air flow', value: m3PerS });
export const airVolume = (volumeM3: number): Measure => ({ kind: 'air volume', value: volumeM3 });
export const draught = (pascals: number): Measure => ({ kind: 'draught', value: pascals });
export const massFlow = (kgPerS: number): Measure => ({ kind: 'mass flow', value: kgPerS });
export const wait = (seconds: number): Measure => ({ kind: 'wait', value: seconds });
export const kelvins = (difference: number): Measure => ({
  kind: 'temperature difference',
  value: difference,
});
export const transmittance = (wPerM2K: number): Measure => ({ kind: 'transmittance', value: wPerM2K });
export const conductance = (wPerK: number): Measure => ({ kind: 'conductance', value: wPerK });
export const heatResistance = (m2KPerW: number): Measure => ({ kind: 'heat resistance', value: m2KPerW });
export const heatCapacity = (joulesPerK: number): Measure => ({ kind: 'heat capacity', value: joulesPerK });
export const specificHeat = (jPerKgK: number): Measure => ({ kind: 'specific heat', value: jPerKgK });
export const freeArea = (areaM2: number): Measure => ({ kind: 'free area', value: areaM2 });
export const concentration = (fraction: number): Measure => ({ kind: 'concentration', value: fraction });
export const condensate = (kgPerM2: number): Measure => ({ kind: 'condensate', value: kgPerM2 });
export const smallMass = (massKg: number): Measure => ({ kind: 'small mass', value: massKg });
