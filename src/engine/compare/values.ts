import { type Quantity, readMeasured, withoutCalculator } from '../../plan/quantity.ts';
import { type DimensionName, dimensions, sameDimension } from '../../plan/units.ts';
import type { PlanPath } from '../finding.ts';
import type { Kind, Measure } from '../measure.ts';
import { isSection } from './entries.ts';

/** A quantity of a plan, and what kind of number it is. */
export type KindOfQuantity = Quantity & { readonly kind: DimensionName };

/** The value at a path in a plan that was read: expressions are worked out there. */
export function quantityAt(plan: unknown, path: PlanPath): KindOfQuantity | undefined {
  let value: unknown = plan;
  for (const key of path) {
    if (Array.isArray(value)) value = value[Number(key)];
    else if (isSection(value) && Object.hasOwn(value, key)) value = value[key];
    else return undefined;
  }
  // What `params` hold is read where it is used.
  return typeof value === 'string' && path[0] === 'params' ? literal(value) : asQuantity(value);
}

function literal(text: string): KindOfQuantity | undefined {
  const read = readMeasured(
    text,
    withoutCalculator(() => true),
  );
  if (!read.ok) return undefined;
  const { value } = read;
  const kind = kindNames.find(
    (name) =>
      name !== 'number' &&
      (name === 'share') === (value.percent === true) &&
      sameDimension(dimensions[name].dimension, value.dimension),
  );
  return { ...value, kind: kind ?? 'number' };
}

const kindNames = Object.keys(dimensions).filter((name): name is DimensionName => name in dimensions);

function asQuantity(value: unknown): KindOfQuantity | undefined {
  if (!isSection(value) || typeof value.value !== 'number' || typeof value.halfWidth !== 'number')
    return undefined;
  const kind = kindNames.find((name) => name === value.kind);
  return kind && { value: value.value, halfWidth: value.halfWidth, shared: [], kind };
}

/** Numbers of a plan are the same if they differ by no more than the last digits of a conversion. */
export const isSameNumber = (one: number, other: number): boolean =>
  Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));

export const isSameQuantity = (one: KindOfQuantity, other: KindOfQuantity): boolean =>
  one.kind === other.kind &&
  isSameNumber(one.value, other.value) &&
  isSameNumber(one.halfWidth, other.halfWidth);

/** What a reader is shown such a quantity as; some kinds are never shown. */
const kinds: Readonly<Partial<Record<DimensionName, Kind>>> = {
  mass: 'mass',
  length: 'length',
  area: 'area',
  volume: 'volume',
  arealMass: 'areal mass',
  density: 'density',
  duration: 'duration',
  current: 'current',
  voltage: 'voltage',
  power: 'power',
  energy: 'energy',
  charge: 'charge',
  resistance: 'resistance',
  temperature: 'temperature',
  pressure: 'pressure',
  massFlow: 'mass flow',
  thermalTransmittance: 'transmittance',
  share: 'share',
  number: 'factor',
};

/** Sections whose flows are of air. */
const airy: readonly unknown[] = ['air', 'heat'];
/** Areas up to this are of vents and openings, which people know in square centimetres, m². */
const mostOpeningM2 = 0.1;

function kindOf(quantity: KindOfQuantity, mostValue: number, [section]: PlanPath): Kind | undefined {
  if (quantity.kind === 'flow') return airy.includes(section) ? 'air flow' : 'flow';
  if (quantity.kind === 'area' && mostValue <= mostOpeningM2) return 'free area';
  return kinds[quantity.kind];
}

/** A quantity that was edited: what it was, what it is, and the second less the first. */
export interface Step {
  readonly from: Measure;
  readonly to: Measure;
  readonly change: Measure;
}

/** How much greater the second is; undefined where that cannot be said, or is nothing. */
export function stepBetween(before: KindOfQuantity, after: KindOfQuantity, path: PlanPath): Step | undefined {
  const kind = kindOf(after, Math.max(Math.abs(before.value), Math.abs(after.value)), path);
  if (before.kind !== after.kind || kind === undefined || isSameNumber(before.value, after.value))
    return undefined;
  const measure = (value: number): Measure => ({ kind, value });
  return {
    from: measure(before.value),
    to: measure(after.value),
    change: measure(after.value - before.value),
  };
}
