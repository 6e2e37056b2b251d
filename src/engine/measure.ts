/**
 * A number that knows what it is. The value is in SI (kg, m, m², m³, kg/m²) or a plain ratio; which unit a reader
 * sees (kg or lb, mm or in) is the renderer's business.
 */
export type Kind =
  | 'mass'
  | 'length'
  | 'area'
  | 'volume'
  | 'areal mass'
  | 'density'
  /** A part of a whole, shown in per cent. */
  | 'share'
  /** A bare number, such as a stability factor. */
  | 'factor'
  /** A number of things. */
  | 'count';

export interface Measure {
  readonly kind: Kind;
  readonly value: number;
}

export const mass = (massKg: number): Measure => ({ kind: 'mass', value: massKg });
export const length = (lengthM: number): Measure => ({ kind: 'length', value: lengthM });
export const area = (areaM2: number): Measure => ({ kind: 'area', value: areaM2 });
export const volume = (volumeM3: number): Measure => ({ kind: 'volume', value: volumeM3 });
export const arealMass = (kgPerM2: number): Measure => ({ kind: 'areal mass', value: kgPerM2 });
export const density = (kgPerM3: number): Measure => ({ kind: 'density', value: kgPerM3 });
export const share = (fraction: number): Measure => ({ kind: 'share', value: fraction });
export const factor = (value: number): Measure => ({ kind: 'factor', value });
export const count = (value: number): Measure => ({ kind: 'count', value });
